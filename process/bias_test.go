package process_test

import (
	"math"
	"strings"
	"testing"

	"bodkin/seams/form"
)

// Laid at 45 degrees, the edges that hang straight run near the bias, the pieces
// take room aslant, and the plan says how they are cut and sewn.
func TestPiecesOnTheBias(t *testing.T) {
	made, err := garmentOf(t, "bias-slip").Make(nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, piece := range made.Pieces {
		for _, e := range piece.Edges {
			if e.Name == "centre" && math.Abs(e.Bias-45) > 1e-6 {
				t.Errorf("the centre of the %s lies %.1f degrees off the grain", piece.Title, e.Bias)
			}
		}
	}
	p := plan(t, jobFor(garmentOf(t, "bias-slip"), "silk-crepe-de-chine", "silk-satin"), rooms()[0], loadShelf(t))
	laid := 0
	for _, piece := range p.Pieces {
		if !piece.Bias {
			continue
		}
		laid++
		if !strings.Contains(piece.Grain, "45 degrees") {
			t.Errorf("%s: its grain is %q", piece.Title, piece.Grain)
		}
		// a straight line of the piece's height takes that much of the cloth at 45 degrees
		if high := piece.Height / math.Sqrt2; p.Cloths[0].LeastMM < high {
			t.Errorf("%s takes %.0f mm at least, and the cloth is said to do with %.0f", piece.Title, high, p.Cloths[0].LeastMM)
		}
	}
	if laid != 2 {
		t.Errorf("%d pieces on the bias, want front and back", laid)
	}
	told := false
	for _, n := range p.Notices {
		told = told || strings.Contains(n.About, "on the bias") && strings.Contains(n.Text, "side seam")
	}
	if !told {
		t.Error("nothing is told of pieces on the bias")
	}
	for _, cloth := range []string{"cotton-poplin", "silk-crepe-de-chine"} {
		p := plan(t, jobFor(garmentOf(t, "bias-slip"), cloth, "silk-satin"), rooms()[0], loadShelf(t))
		for _, n := range p.Notices {
			if strings.Contains(n.About, "on the bias") && (!strings.Contains(n.Text, "grows by ") || !strings.Contains(n.Text, "24 hours") || !strings.Contains(n.Text, "common practice, no source")) {
				t.Errorf("%s: %q", cloth, n.Text)
			}
		}
	}
}

// A body cut for a drop measures, hung, what it should: as much longer as the drop
// says, and so much narrower that length squared and width squared of a square of
// the cloth are two (geometry of threads that keep their length).
func TestBiasBodyCutForItsDrop(t *testing.T) {
	across, down := map[string]float64{}, map[string]float64{}
	for _, drop := range []string{"0 mm", "30 mm"} {
		m, err := garmentOf(t, "bias-slip").Make(nil, form.Pairs[form.Text]{pair("drop", drop), pair("length", "75 cm")})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range m.Pieces {
			if p.Name == "back" {
				side, _ := p.Outline.Edge("side")
				across[drop] = side.To().X
				down[drop] = side.To().Y
			}
		}
	}
	if got := down["30 mm"] * 1.03; math.Abs(got-750) > 1e-6 {
		t.Errorf("hung it is %.2f mm long to the underarm, want 750", got)
	}
	wide := math.Sqrt(2 - 1.03*1.03)
	if got := across["30 mm"] * wide; math.Abs(got-across["0 mm"]) > 1e-6 {
		t.Errorf("hung it is %.2f mm wide at the underarm, want %.2f", got, across["0 mm"])
	}
}

// A piece on the bias is cut wider at its sides and its hem, to 25 mm and by 20 mm
// more (common practice, no source), hangs before it is sewn, and is cut to what
// its seam takes; a knit, whose threads do not turn, and a piece on the straight
// grain are not.
func TestRoomForTheDrop(t *testing.T) {
	for _, x := range []struct {
		garment, cloth string
		side, hem      bool
	}{
		{"bias-slip", "silk-crepe-de-chine", true, true},
		{"bias-slip", "viscose-jersey", false, false},
		{"circle-skirt", "silk-crepe-de-chine", false, false},
		{"pull-on-skirt", "silk-crepe-de-chine", false, false},
	} {
		p := plan(t, jobFor(garmentOf(t, x.garment), x.cloth, x.cloth), rooms()[0], loadShelf(t))
		spare := map[string]float64{}
		for _, piece := range p.Pieces {
			for _, e := range piece.Edges {
				spare[e.Seam] = max(spare[e.Seam], e.Spare)
				if e.Seam == "side" && x.side && e.Allowance != 25 {
					t.Errorf("%s: its side is cut with %.1f mm, want 25", x.garment, e.Allowance)
				}
				if (e.Spare > 0) != (e.Because != "") {
					t.Errorf("%s: %.1f mm to spare, because %q", x.garment, e.Spare, e.Because)
				}
			}
		}
		if (spare["side"] > 0) != x.side || (spare["hem"] == 20) != x.hem {
			t.Errorf("%s in %s: %v to spare", x.garment, x.cloth, spare)
		}
		at := map[string]int{}
		for i, o := range p.Operations {
			if _, ok := at[o.ID]; !ok {
				at[o.ID] = i + 1
			}
		}
		hang, trim, sewn := at["hang.main"], at["trim.main"], at["side.1"]
		if (hang > 0) != x.side || x.side && !(hang < trim && trim < sewn) {
			t.Errorf("%s in %s: hung at %d, cut off at %d, the side begun at %d", x.garment, x.cloth, hang, trim, sewn)
		}
	}
}
