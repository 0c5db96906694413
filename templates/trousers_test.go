package templates_test

import (
	"fmt"
	"testing"

	"bodkin/templates"
)

// The inseams of front and back walk equally long, and the crotch seam runs over
// them in one sweep: at the fork the two pieces make a straight line together
// (geometry; that it must is common practice, no source).
func TestForksMeetInOneSweep(t *testing.T) {
	for _, name := range []string{"pull-on-trousers", "darted-trousers"} {
		for _, body := range [][2]string{{"82 cm", "60 cm"}, {"98 cm", "76 cm"}, {"125 cm", "105 cm"}} {
			for _, hem := range []string{"38 cm", "50 cm", "60 cm"} {
				m := makeIt(t, name, pairs("hip", body[0], "waist", body[1]), pairs("hem", hem))
				what := fmt.Sprintf("%s, hip %s, hem %s", name, body[0], hem)
				near(t, what+": inseams", edge(t, m, "front", "inseam").Length(), edge(t, m, "back", "inseam").Length(), 0.1)
				near(t, what+": both forks", fork(t, m, "front")+fork(t, m, "back"), 180, 0.5)
			}
		}
	}
}

// The waist of the trousers goes on over the pocket's side piece in one sweep, as
// the band does that is sewn to it; the side seam is as long with it as the back.
func TestWaistGoesOnOverTheSidePiece(t *testing.T) {
	m := makeIt(t, "darted-trousers", nil, nil)
	for _, d := range m.Details {
		switch d.Kind {
		case "waistband":
			if d.TightestRadius < 60 {
				t.Errorf("the waist bends to %.0f mm", d.TightestRadius)
			}
			near(t, "waist with 16 mm of ease", float64(d.Length), 776, 6)
		case "slanted-pocket":
			near(t, "mouth", float64(d.Length), edge(t, m, "pocket-bag", "mouth").Length(), 0.1)
		}
	}
	front := edge(t, m, "front", "side").Length() + edge(t, m, "pocket-side", "side").Length()
	near(t, "side", front, edge(t, m, "back", "side").Length(), 0.1)
}

// fork is the angle inside a piece between its crotch and its inseam, degrees.
func fork(t fataler, m *templates.Made, name string) float64 {
	t.Helper()
	for _, c := range piece(t, m, name).Corners {
		if c.Before == "crotch" && c.After == "inseam" || c.Before == "inseam" && c.After == "crotch" {
			return c.Inside
		}
	}
	t.Fatalf("%s has no fork", name)
	return 0
}
