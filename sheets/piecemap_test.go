package sheets

import (
	"math"
	"testing"

	"bodkin/seams"
	"bodkin/sheets/figure"
)

// The words at the edges stand outside the piece: no side of the cutting line
// runs through them.
func TestAllowancesHideNoLine(t *testing.T) {
	m := &measurer{}
	for _, n := range plans(t) {
		for _, units := range []string{"cm", "in"} {
			c := newComposer(n.plan, Options{Units: units})
			scale, places := layPieces(n.plan.Pieces, mapHigh)
			for i, p := range n.plan.Pieces {
				f := newPieceFigure(c, p, scale, places[i])
				f.lines()
				f.points()
				f.title()
				for _, it := range f.allowances() {
					words := it.(figure.Text)
					for k := range f.cut {
						a, b := f.cut.side(k)
						if through(words, a, b, m) {
							t.Errorf("%s, %s, %s: the cutting line runs through %q", n.name, units, p.Name, words.Words)
							break
						}
					}
				}
			}
		}
	}
}

// through tells whether a line runs through the letters of a text, tried at
// points no farther apart than a tenth of a millimetre.
func through(t figure.Text, a, b figure.Point, m figure.Measurer) bool {
	half := m.TextWidth(t.Words, t.Size, t.Bold) / 2
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	steps := int(distance(a, b)/0.1) + 1
	for i := range steps + 1 {
		k := float64(i) / float64(steps)
		x, y := a.X+(b.X-a.X)*k-t.At.X, a.Y+(b.Y-a.Y)*k-t.At.Y
		along, up := x*cos-y*sin, -x*sin-y*cos
		if math.Abs(along) < half && up > 0 && up < 0.7*t.Size {
			return true
		}
	}
	return false
}

// Every piece is drawn at one scale and none over another.
func TestPiecesLieApart(t *testing.T) {
	for _, n := range plans(t) {
		scale, places := layPieces(n.plan.Pieces, mapHigh)
		var boxes []figure.Box
		for i, p := range n.plan.Pieces {
			b := contourOf(p.CutLine, scale).moved(places[i].X, places[i].Y).box()
			if got := b.Width() / scale; p.Cut != "fold" && math.Abs(got-p.Width) > 0.5 {
				t.Errorf("%s: %s is drawn %.1f mm wide, not %.1f", n.name, p.Name, got, p.Width)
			}
			for _, other := range boxes {
				if other.Overlaps(b) {
					t.Errorf("%s: %s lies over another piece", n.name, p.Name)
				}
			}
			boxes = append(boxes, b)
		}
	}
}

// Edges that only the mouths of darts part have their allowance once; no words at
// the edges of a piece lie over each other, as of trousers with two darts in each
// quarter, and no two rings of its marks meet.
func TestAllowanceOnceBesideDarts(t *testing.T) {
	m := &measurer{}
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	const room = "name: Back room\nmachines: [{is: straight-stitcher}]\niron: steam"
	all := plans(t)
	for name, job := range map[string]string{
		"darted trousers":  "make: darted-trousers\ncloth: {main: {is: denim, colour: ink}, lining: {is: cotton-lawn, colour: grey}}",
		"pull-on trousers": "make: pull-on-trousers\nchoices: {pockets: slanted}\ncloth: {main: {is: linen-medium, colour: flax}}",
		"skirt":            "make: a-line-skirt\ncloth: {main: {is: wool-flannel, colour: grey}}",
		"waistcoat":        "make: lined-waistcoat\ncloth: {main: {is: wool-flannel, colour: grey}, lining: {is: cotton-lawn, colour: ink}}",
	} {
		all = append(all, named{name, worked(t, shelf, job, room)})
	}
	for _, n := range all {
		c := newComposer(n.plan, Options{Units: "cm"})
		scale, places := layPieces(n.plan.Pieces, mapHigh)
		for i, p := range n.plan.Pieces {
			mouths := 0
			for _, e := range p.Edges {
				if c.seams[e.Seam].Kind == dartKind {
					mouths++
				}
			}
			f := newPieceFigure(c, p, scale, places[i])
			f.lines()
			ringsApart(t, n.name+", "+p.Name, f.points())
			f.title()
			words := f.allowances()
			if most := len(p.Edges) - 2*mouths; mouths > 0 && len(words) > most+1 {
				t.Errorf("%s, %s: %d allowances beside %d mouths of %d edges", n.name, p.Name, len(words), mouths, len(p.Edges))
			}
			for a := range words {
				for b := range words[:a] {
					if figure.TextBox(words[a].(figure.Text), m).Overlaps(figure.TextBox(words[b].(figure.Text), m)) {
						t.Errorf("%s, %s: %q lies over %q", n.name, p.Name, words[a].(figure.Text).Words, words[b].(figure.Text).Words)
					}
				}
			}
		}
	}
}

// ringsApart asserts that no two rings of marks meet.
func ringsApart(t *testing.T, piece string, marks []figure.Item) {
	t.Helper()
	var rings []figure.Circle
	for _, it := range marks {
		c, ok := it.(figure.Circle)
		if !ok {
			continue
		}
		for _, other := range rings {
			if d := distance(c.Centre, other.Centre); d < c.Radius+other.Radius && d > 2*markLeast {
				t.Errorf("%s: rings of %.2f and %.2f mm are %.2f mm apart", piece, c.Radius, other.Radius, d)
			}
		}
		rings = append(rings, c)
	}
}
