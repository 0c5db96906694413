package sheets

import (
	"math"
	"testing"

	"bodkin/process"
)

// Of every garment each tape, each strip in a hem and each turned-in band lies on the
// piece map along the edges of its line. A band of a width w along a line of a length L
// has the area w·L, and beside the line w²/2 more or less for each radian that it turns
// (Steiner's formula for parallel curves); slanting ends take or add a little.
func TestInterfacingAlongEdges(t *testing.T) {
	tapes, hems, turned := 0, 0, 0
	for _, n := range ofEveryGarment(t) {
		c := newComposer(n.plan, Options{})
		got := map[string]float64{}
		for _, p := range n.plan.Pieces {
			for _, b := range c.bandsOn(p) {
				got[b.by.Name] += b.long
				wide := b.by.Cut[0]
				if area := math.Abs(signedArea(b.points)); math.Abs(area-wide*b.long) > 1.6*wide*wide+1 {
					t.Errorf("%s: %s along %s has %.0f mm², %.0f mm by %.0f are cut", n.name, b.by.Name, p.Name, area, wide, b.long)
				}
			}
		}
		for _, f := range n.plan.Interfacing {
			s, ok := c.seams[f.Piece]
			switch {
			case !ok || len(s.Course.Own) > 0 && !f.Tape:
				continue
			case f.Tape:
				tapes++
			case f.Part == "hem":
				hems++
			case f.Part == "whole" && s.Kind == "front-band":
				turned++
			default:
				continue
			}
			if got[f.Name] == 0 {
				t.Errorf("%s: %s lies nowhere on the map", n.name, f.Name)
			}
		}
	}
	if tapes < 4 || hems < 2 || turned < 2 {
		t.Errorf("only %d tapes, %d strips in hems, %d turned-in bands", tapes, hems, turned)
	}
}

// The band along the lower edge of a slanting piece ends at the lines of its sides.
// Worked by hand: a trapezium 100 wide below and 60 above, 40 high, whose sides slant
// by 20 in 40; 10 within the lower edge it is 90 wide.
func TestBandEndsAtTheSides(t *testing.T) {
	p := process.Piece{
		Net:   []process.Point{{X: 0, Y: 40}, {X: 100, Y: 40}, {X: 80, Y: 0}, {X: 20, Y: 0}},
		Edges: []process.Edge{{Name: "hem", Begins: 0}, {Name: "right", Begins: 1}, {Name: "top", Begins: 2}, {Name: "left", Begins: 3}},
	}
	for _, k := range []struct{ from, to, area float64 }{{-10, 0, 950}, {0, 10, 1050}, {-10, 10, 2000}} {
		if got := math.Abs(signedArea(bandAlong(p, 0, edgeLine(p, 0), k.from, k.to))); math.Abs(got-k.area) > 1e-6 {
			t.Errorf("from %g to %g: %g mm², not %g", k.from, k.to, got, k.area)
		}
	}
}
