package seams_test

import (
	"math"
	"testing"

	"bodkin/seams"
)

// Which hand needle for which cloth and stitch.
func TestHandNeedles(t *testing.T) {
	s := load(t)
	const (
		krolik = "S. E. Krolik, Hand Sewing Lessons, 1901"
		domes  = "Needles, Text-Book on Domestic Art"
		iasri  = "Sewing Equipment and Tools, e-course, lesson 2"
	)
	for _, c := range []struct {
		cloth, stitch string
		basting       bool
		kind          string
		low, high     int
		source        string
	}{
		{"silk-georgette", "fell", false, "sharps", 9, 10, "Sheers, EC 69-458, Nebraska, 1969"},
		{"silk-chiffon", "rolled", false, "sharps", 9, 10, "the same"},
		{"silk-satin", "slip", false, "sharps", 8, 10, "common practice, no source"},
		{"cotton-poplin", "slip", false, "sharps", 1, 12, domes + ": sharps for all ordinary sewing"},
		{"wool-coating", "204", false, "betweens", 1, 12, krolik + ": betweens for heavy weight cloth"},
		{"denim", "fell", false, "betweens", 1, 12, krolik},
		{"cotton-jersey", "204", false, "ballpoint", 5, 10, iasri + ": 5 to 10 for jersey and tricot"},
		{"ponte", "slip", false, "ballpoint", 5, 10, iasri},
		{"linen-medium", "205", true, "milliner's", 3, 10, domes + ": milliner's for basting, 3 to 10"},
		{"wool-coating", "205", true, "milliner's", 3, 10, domes},
		{"silk-organza", "205", true, "milliner's", 9, 10, domes + "; Sheers, EC 69-458, Nebraska, 1969"},
		{"faux-leather", "slip", false, "glover's", 1, 12, "common practice, no source"},
		{"cotton-poplin", "purl", false, "sharps", 1, 12, "common practice, no source"},
	} {
		h, err := s.HandNeedleFor(seams.Facts{Cloth: clothFacts(t, s, c.cloth), Workroom: roomWithIron()}, seams.Row{Layers: 2, Stitch: c.stitch, Basting: c.basting})
		if err != nil || h.Kind != c.kind || h.Size < c.low || h.Size > c.high {
			t.Errorf("%s, %s: %v, %v; want %s %d to %d (%s)", c.cloth, c.stitch, h, err, c.kind, c.low, c.high, c.source)
		}
	}
}

// The needle goes with the thread: by Krolik, Hand Sewing Lessons, 1901, No. 7 for
// cotton thread 30 and 40, 8 for 40 and 50, 9 for 60 and 70, 10 for 80 and 90, 11
// for 90 and 100. Thread of number N is as thick as three strands of cotton count N
// (tex = 3 × 590.5 / N, which is arithmetic). For every cloth, with the thread that
// it takes, the needle lies within one number of that; the rules are all used.
func TestHandNeedleGoesWithItsThread(t *testing.T) {
	s := load(t)
	table := []struct{ thread, needle float64 }{{30, 7}, {40, 7.5}, {50, 8}, {60, 9}, {70, 9}, {80, 10}, {90, 10.5}, {100, 11}}
	used := map[string]bool{}
	for _, cloth := range s.Cloths {
		for _, row := range []seams.Row{{Layers: 2, Stitch: "fell"}, {Layers: 2, Stitch: "purl"}, {Layers: 2, Stitch: "205", Basting: true}} {
			facts := seams.Facts{Cloth: cloth.Facts(), Workroom: roomWithIron()}
			h, err := s.HandNeedleFor(facts, row)
			if err != nil {
				t.Fatal(err)
			}
			used[h.Name] = true
			if row.Stitch != "fell" || cloth.Coated {
				continue
			}
			thread, err := s.ThreadForRow(facts, row)
			if err != nil {
				t.Fatal(err)
			}
			number := 3 * 590.5 / thread.Tex
			nearest := table[0]
			for _, r := range table {
				if math.Abs(r.thread-number) < math.Abs(nearest.thread-number) {
					nearest = r
				}
			}
			if math.Abs(float64(h.Size)-nearest.needle) > 1 {
				t.Errorf("%s: %s with thread of tex %g, which is No. %.0f; the table has needle %g", cloth.Name, h.Words(), thread.Tex, number, nearest.needle)
			}
		}
	}
	for _, h := range s.HandNeedles {
		if !used[h.Name] {
			t.Errorf("no cloth of the shelf takes %s", h.Name)
		}
	}
}
