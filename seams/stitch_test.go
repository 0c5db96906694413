package seams_test

import (
	"testing"

	"bodkin/seams"
)

func threads(s seams.Stitch) int { return s.Needles + s.Loopers + s.Bobbins + s.Covers }

// Threads of each type, all together, where a source told them.
func TestStitchThreads(t *testing.T) {
	s := load(t)
	const (
		guide   = "a thread maker's stitch type classification guide"
		slides  = "slide deck, Different stitches (FED-STD-751A classes)"
		apparel = "ISO stitch types 300-400, apparelscience.com"
		course  = "Indian agricultural e-course on stitch classes"
	)
	for _, c := range []struct {
		stitch  string
		threads int
		source  string
	}{
		{"101", 1, guide}, {"102", 2, slides}, {"103", 1, guide}, {"104", 1, slides}, {"209", 1, guide},
		{"301", 2, apparel}, {"304", 2, apparel}, {"401", 2, apparel}, {"503", 2, course}, {"504", 3, course}, {"514", 4, course},
	} {
		st, err := s.Stitch(c.stitch)
		if err != nil || threads(*st) != c.threads {
			t.Errorf("%s: %+v, %v; want %d threads (%s)", c.stitch, st, err, c.threads, c.source)
		}
	}
}

// What each class is: a thread maker's and a machine maker's texts and two
// courses on ISO 4915 and FED-STD-751A.
func TestStitchClasses(t *testing.T) {
	s := load(t)
	seen := map[byte]int{}
	for _, st := range s.Stitches {
		if st.MadeBy == "" {
			t.Errorf("%s: what forms it?", st.Name)
		}
		if len(st.Name) != 3 || st.Name[0] < '1' || st.Name[0] > '7' {
			continue
		}
		seen[st.Name[0]]++
		var right bool
		switch st.Name[0] {
		case '1': // chain stitches of needle threads alone
			right = st.Needles >= 1 && threads(st) == st.Needles && !st.Hand
		case '2': // began as hand stitches
			right = st.Hand && threads(st) == 1
		case '3': // needle thread held by a bobbin thread
			right = st.Bobbins == 1 && st.Loopers+st.Covers == 0
		case '4': // needle loops held by looper threads
			right = st.Loopers >= 1 && st.Bobbins+st.Covers == 0
		case '5': // overedge; safety stitches add a row of 401
			right = st.Loopers >= 1 && st.Bobbins+st.Covers == 0 && threads(st) <= 5
		case '6': // two to four needles, usually one looper, one or two covers
			right = st.Needles >= 2 && st.Needles <= 4 && st.Loopers == 1 && st.Covers >= 1 && st.Covers <= 2
		}
		if !right {
			t.Errorf("%s is not made as its class is: %+v", st.Name, st)
		}
	}
	for class := byte('1'); class <= '6'; class++ {
		if seen[class] < 2 {
			t.Errorf("class %c00: %d types", class, seen[class])
		}
	}
}

// A safety stitch is two rows sewn at once, so it draws what they draw: our own
// sum, beside 20 for 516 in the table that thread makers reprint (from memory).
func TestSafetyStitchIsTwoRows(t *testing.T) {
	s := load(t)
	ratio := func(name string) float64 {
		st, err := s.Stitch(name)
		if err != nil {
			t.Fatal(err)
		}
		return st.Ratio
	}
	if got := ratio("401") + ratio("503"); !near(ratio("515"), got, 1e-9) {
		t.Errorf("515 draws %v, its rows %v", ratio("515"), got)
	}
	if got := ratio("401") + ratio("504"); !near(ratio("516"), got, 0.05*got) {
		t.Errorf("516 draws %v, its rows %v", ratio("516"), got)
	}
	// 301 uses the least thread of the common types (a machine maker's 301 manual).
	for _, st := range s.Stitches {
		if !st.Hand && st.Name != "301" && st.Ratio <= ratio("301") {
			t.Errorf("%s draws no more than 301", st.Name)
		}
	}
}
