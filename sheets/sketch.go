package sheets

import (
	"bodkin/seams/length"
	"bodkin/sheets/figure"
	"bodkin/templates"
	"bodkin/templates/outline"
)

// Sizes of a sketch on paper, in mm.
const (
	sketchWide = 90 // as wide as a piece may get
	sketchHigh = 120
	sketchGap  = 46 // between pieces, for the words at their edges
	sketchFlat = 1  // mm of the garment that a flattened curve may lose
)

// Sketch draws the pieces of a garment that has faults, as far as it could be
// understood: every edge with its name and length, and heavy, with what is amiss,
// those that do not match or of which nothing becomes. Lengths are written in
// style.
func Sketch(pieces []templates.SketchedPiece, style length.Style) figure.Figure {
	m := &measurer{}
	var lines, words []figure.Item
	wide, high := 0.0, 0.0
	for _, p := range pieces {
		b := p.Outline.Bounds()
		wide, high = max(wide, b.Width()), max(high, b.Height())
	}
	scale := min(sketchWide/max(wide, 1), sketchHigh/max(high, 1))
	left := 0.0
	for _, p := range pieces {
		b := p.Outline.Bounds()
		at := func(q outline.Point) figure.Point {
			return figure.Point{X: left + (q.X-b.Min.X)*scale, Y: (b.Max.Y - q.Y) * scale}
		}
		for k, e := range p.Outline.Edges {
			s := figure.Stroke{Width: figure.Thin}
			label := e.Name + ", " + length.Format(length.MM(e.Length()), style)
			if k < len(p.Edges) && p.Edges[k].Amiss != "" {
				s = figure.Stroke{Width: 2 * figure.Bold, Round: true}
				label += ": " + p.Edges[k].Amiss
			}
			var line []figure.Point
			for _, q := range e.Flatten(sketchFlat) {
				line = append(line, at(q))
			}
			lines = append(lines, figure.Polyline(s, line...))
			middle, _ := e.At(e.Length() / 2)
			words = append(words, figure.Backed(figure.Text{At: at(middle), Size: mapType, Anchor: figure.Middle, Words: label}, m)...)
		}
		words = append(words, figure.Text{At: figure.Point{X: left + b.Width()*scale/2, Y: b.Height()*scale + 9}, Size: 1.2 * mapType, Anchor: figure.Middle, Bold: true, Words: p.Title})
		left += b.Width()*scale + sketchGap
	}
	return figure.Fit("sketch", english().figures.sketchAlt, append(lines, words...), 2, m)
}
