package process

import (
	"math"
	"slices"

	"bodkin/templates"
	"bodkin/templates/outline"
)

// onLine is how near a mark must lie to the seam line to be a notch, mm.
const onLine = 0.1

// carried are the lines drawn on a cut piece: a notch for each mark on a seam
// line with an allowance, and the legs of its darts, both out to the cutting
// line, so that they can be found again when the allowance is all that shows;
// and the lines along which pleats and other details lie.
func carried(p templates.Piece, details []templates.Detail, allowances []outline.Allowance, cut outline.CutLine) ([]Drawn, error) {
	var m outline.Marks
	for _, d := range details {
		if d.Piece == p.Name && d.Kind == "dart" {
			m.Darts = append(m.Darts, outline.DartMark{Name: d.Name, Ends: d.Ends, Point: d.Point})
		}
	}
	for _, mark := range p.Marks {
		at := outline.Point{X: mark.X, Y: mark.Y}
		if slices.ContainsFunc(m.Darts, func(d outline.DartMark) bool { return slices.Contains(d.Ends[:], at) }) {
			continue
		}
		least, spot := math.Inf(1), outline.Spot{}
		for i, e := range p.Outline.Edges {
			if along, away := e.Nearest(at); allowances[i].Width > 0 && away < min(least, onLine) {
				least, spot = away, outline.Spot{Edge: e.Name, At: along}
			}
		}
		if spot.Edge != "" {
			m.Notches = append(m.Notches, outline.Notch{Name: mark.Name, Place: spot})
		}
	}
	c, err := p.Outline.Carry(cut, allowances, m)
	if err != nil {
		return nil, err
	}
	out := []Drawn{}
	for kind, strokes := range [][]outline.Stroke{c.Notches, c.Legs} {
		for _, s := range strokes {
			out = append(out, Drawn{Kind: [...]string{"notch", "leg"}[kind], Name: s.Name, From: pointOf(s.From), To: pointOf(s.To)})
		}
	}
	for _, d := range details {
		if d.Piece == p.Name {
			for _, line := range d.Lines {
				out = append(out, Drawn{Kind: "line", Name: d.Name, From: pointOf(line[0]), To: pointOf(line[1])})
			}
		}
	}
	return out, nil
}
