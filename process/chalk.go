package process

import (
	"bodkin/templates"
	cutter "bodkin/templates/cutting"
	"bodkin/templates/outline"
)

// chalkWithin is how closely a piece marked with chalk keeps to its cutting
// line, mm: about the breadth of the chalk's own line. Common practice, no source.
const chalkWithin = 2

// strokes are the plan's words for how a point is come to.
func strokes(s cutter.Stroke) string {
	return [...]string{cutter.Begin: "begin", cutter.Straight: "straight", cutter.Bowed: "bow", cutter.Smooth: "smooth"}[s]
}

// chalk tells how a piece is marked straight on the cloth.
func chalk(p templates.Piece, cut outline.CutLine) (Chalk, error) {
	out := Chalk{Fold: p.FoldEdge, Within: chalkWithin, Points: []ChalkPoint{}, Marks: []ChalkPoint{}}
	rows, err := cutter.Chalk(cut, p.FoldEdge, chalkWithin)
	if err != nil {
		return out, err
	}
	for _, r := range rows {
		out.Points = append(out.Points, ChalkPoint{Number: r.Number, Before: r.Before, After: r.After,
			Down: r.Down, In: r.In, By: strokes(r.By), Depth: r.Depth})
	}
	for _, m := range p.Marks {
		down, in, err := cutter.ChalkPlace(cut, p.FoldEdge, outline.Point{X: m.X, Y: m.Y})
		if err != nil {
			return out, err
		}
		out.Marks = append(out.Marks, ChalkPoint{Name: m.Name, Down: down, In: in})
	}
	return out, nil
}
