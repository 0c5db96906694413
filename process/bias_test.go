package process_test

import (
	"math"
	"strings"
	"testing"
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
}
