package process_test

import (
	"math"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/templates"
)

// skirtUnderStrain is a skirt whose side seams are under a strain, its order not
// looked for.
func skirtUnderStrain(t testing.TB, shelf *seams.Shelf, cloth string, strain int) *process.Plan {
	t.Helper()
	g, err := templates.Load("pull-on-skirt")
	if err != nil {
		t.Fatal(err)
	}
	g.Seams[0].Strain = strain
	p, err := process.Work(t.Context(), process.Input{Job: jobFor(g, cloth, "cotton-lawn"), Garment: g, Workroom: rooms()[0], Shelf: shelf},
		order.Options{Nodes: order.NoSearch})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The strength told is that of the published formula: stitches to the cm ×
// thread × 1.5 for 301 (a thread maker's bulletin, Stitches per inch: what you
// should know), with 2.2 lbf at Tex 27 for spun polyester (a thread maker's
// booklet, p. 33). Only where a seam is pulled too hard for one row is it warned of.
func TestSeamStrengthInThePlan(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct {
		cloth  string
		strain int
		tex    float64 // of the thread that the shelf gives to the cloth; 0 where nothing is told
		weak   bool
	}{
		{"cotton-lawn", 0, 0, false},
		{"cotton-lawn", 1, 18.75, false},
		{"linen-medium", 2, 25, false},
		{"cotton-canvas", 3, 25, true},
		{"denim", 3, 40, false},
		{"cotton-jersey", 3, 0, false}, // the formula is for woven cloth
	} {
		p := skirtUnderStrain(t, shelf, tt.cloth, tt.strain)
		s := seamOf(t, p, "side").Strength
		if tt.tex == 0 {
			if s != nil {
				t.Errorf("%s, strain %d: %+v", tt.cloth, tt.strain, s)
			}
			continue
		}
		if s == nil {
			t.Errorf("%s, strain %d: no strength is told", tt.cloth, tt.strain)
			continue
		}
		const newtons = 4.4482216
		if want := 10 / s.StitchMM * tt.tex / 27 * 2.2 * newtons * 1.5; s.Stitch != "301" || math.Abs(s.Bears-want) > 0.051 {
			t.Errorf("%s, strain %d: %+v, want %.2f", tt.cloth, tt.strain, s, want)
		}
		said := noticeOf(p, "Side seam")
		if weak := strings.Contains(said, "One row is reckoned to bear"); weak != tt.weak || weak != (s.Bears < s.Wanted) {
			t.Errorf("%s, strain %d: %+v, %q", tt.cloth, tt.strain, s, said)
		}
	}
}
