package seams_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/seams"
)

func TestMachines(t *testing.T) {
	s := load(t)
	n := 0
	for _, m := range s.Machines {
		if m.Kind != "machine" {
			continue
		}
		n++
		if m.NeedleSystem == "" && m.Name != "blindstitcher" || m.MaxSpeed == 0 || m.MaxThickness < 2 {
			t.Errorf("%s: %+v", m.Name, m)
		}
		threads, bobbin := 0, false
		for _, name := range m.Forms {
			st, err := s.Stitch(name)
			if err != nil || st.Hand {
				t.Errorf("%s forms %s: %v", m.Name, name, err)
				continue
			}
			threads = max(threads, st.Needles+st.Loopers+st.Covers)
			bobbin = bobbin || st.Bobbins > 0
		}
		if bobbin != (m.Bobbin > 0) {
			t.Errorf("%s: a bobbin stitch %v, a bobbin of %v m", m.Name, bobbin, m.Bobbin)
		}
		// Spools to change are those of its fullest stitch; a twin machine has one for each needle, and a machine
		// that fells has two rows.
		twin := strings.Contains(m.Needles, "two at a set distance") || m.Name == "feed-off-arm"
		if !twin && m.Threads != threads {
			t.Errorf("%s has %d spools, its stitches want %d", m.Name, m.Threads, threads)
		}
	}
	if n < 16 {
		t.Errorf("%d machines", n)
	}
	// A workroom names these.
	for _, name := range []string{"straight-stitcher", "zigzag-machine", "overlocker-3", "overlocker-4", "coverstitch", "blindstitcher", "iron", "dry-iron", "hand"} {
		if m, err := s.Machine(name); err != nil || m.Industrial {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Stitches a minute, published: domestic lockstitch 250 to 1,000 (a page on
// stitches per minute), most 1,000 to 1,200 and the fastest about 1,500 at full
// speed (comparison of power and home machines, 2022); domestic overlock up to
// 1,500 (a page on home overlockers); industrial lockstitch 3,000 to 6,000 (the
// comparison), single-needle up to 5,000 (Consumption formula for single needle
// lockstitch, 2015); industrial machines of all kinds 1,000 to 5,500 and over.
func TestMachineSpeeds(t *testing.T) {
	s := load(t)
	for _, c := range []struct {
		machines  []string
		low, high float64 // rated
	}{
		{[]string{"straight-stitcher", "treadle", "zigzag-machine", "zigzag-computer"}, 250, 1500},
		{[]string{"hand-crank"}, 0, 1000},
		{[]string{"overlocker-3", "overlocker-4", "overlocker-5", "coverstitch", "coverstitch-top"}, 0, 1500},
		{[]string{"industrial-lockstitch"}, 3000, 5000},
		{[]string{"twin-needle-lockstitch", "industrial-zigzag", "chainstitcher"}, 1000, 6000},
		// From memory: overlock 6,000 to 8,500, coverstitch 5,000 to 6,000, blindstitch 1,500 to 3,000.
		{[]string{"industrial-overlocker", "industrial-overlocker-4", "safety-stitcher"}, 6000, 8500},
		{[]string{"industrial-coverstitch"}, 5000, 6000},
		{[]string{"industrial-blindstitcher"}, 1500, 3000},
	} {
		for _, name := range c.machines {
			m, err := s.Machine(name)
			if err != nil || m.MaxSpeed < c.low || m.MaxSpeed > c.high || m.Speed > m.MaxSpeed {
				t.Errorf("%s runs at %v of %v, want a rated speed of %v to %v, %v", name, m.Speed, m.MaxSpeed, c.low, c.high, err)
			}
		}
	}
}

// What is said to help where a stitch cannot be formed: machines of the house
// before those of the factory, and not the whole shelf.
func TestMachinesThatWouldHelp(t *testing.T) {
	overlocked := strings.ReplaceAll(ownJoins, `"406"`, `"504"`)
	basted := strings.NewReplacer(`"301"`, `"101"`, "zz-plain", "zz-chained", "aa-plain", "aa-chained", "mm-covered", "mm-other").Replace(ownJoins)
	s := load(t, seams.File{Name: "mine.yaml", Data: []byte(overlocked + basted)})
	verdicts, err := s.Weigh("join", "seam", seams.Facts{Cloth: seams.ClothFacts{Weight: 120, Thickness: 0.3, Knit: true}})
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"mm-covered": "nothing in the room forms the stitch 504 (three-thread overlock); a three-thread overlocker or a four-thread overlocker would",
		"zz-chained": "nothing in the room forms the stitch 101 (single-thread chainstitch); an industrial basting machine would",
	} {
		i := slices.IndexFunc(verdicts, func(v seams.Verdict) bool { return v.Construction.Name == name })
		if i < 0 || !slices.Contains(verdicts[i].RuledOut, want) {
			t.Errorf("%s: %q", name, verdicts[max(0, i)].RuledOut)
		}
	}
}

func TestTools(t *testing.T) {
	s := load(t)
	if len(s.Tools) < 12 {
		t.Errorf("%d tools", len(s.Tools))
	}
	for _, c := range []struct{ tool, caution string }{
		{"rotary cutter", "blade"}, {"pinking shears", "blade"}, {"sleeve board", "iron"}, {"pins", "pins"}, {"hand needles", "hand-needle"}, {"bodkin", ""},
	} {
		tool, err := s.Tool(c.tool)
		if err != nil || tool.Caution != c.caution {
			t.Errorf("%s: %+v, %v", c.tool, tool, err)
		}
	}
	if _, err := s.Tool("sleave board"); err == nil || !strings.Contains(err.Error(), `did you mean "sleeve board"?`) {
		t.Errorf("%v", err)
	}
}
