package sheets

import (
	"math"

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
		below := 0.0
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
			said, under := sketchWords(e, label, at, b.Width()*scale, m)
			below = max(below, under-b.Height()*scale)
			words = append(words, said...)
		}
		words = append(words, figure.Text{At: figure.Point{X: left + b.Width()*scale/2, Y: b.Height()*scale + below + 7}, Size: 1.2 * mapType, Anchor: figure.Middle, Bold: true, Words: p.Title})
		left += b.Width()*scale + sketchGap
	}
	return figure.Fit("sketch", english().figures.sketchAlt, append(lines, words...), 2, m)
}

// sketchWords are the words at an edge, in lines, and how far down they reach: of an
// edge that lies across, outside of it, so that its line is seen; of one that runs up
// or down, over its line, on the left a little higher than on the right.
func sketchWords(e outline.Edge, label string, at func(outline.Point) figure.Point, wide float64, m *measurer) (items []figure.Item, under float64) {
	const lead = 1.15 * mapType // so close that the white behind the lines meets
	from, to := at(e.From()), at(e.To())
	across := math.Abs(to.X-from.X) > math.Abs(to.Y-from.Y)
	along, room := 0.5, sketchGap-4.0
	switch {
	case across:
		room += wide
	case to.Y > from.Y: // edges run anticlockwise, so that those on the left run down
		along = 0.42
	}
	place, _ := e.At(along * e.Length())
	p := at(place)
	said := m.wrapped(label, mapType, room)
	high := float64(len(said)-1) * lead
	switch {
	case across && to.X > from.X: // at the bottom
		p.Y += 1.6 * mapType
	case across:
		p.Y -= 0.8*mapType + high
	default:
		p.Y -= high / 2
	}
	for i, words := range said {
		t := figure.Text{At: figure.Point{X: p.X, Y: p.Y + float64(i)*lead}, Size: mapType, Anchor: figure.Middle, Words: words}
		items = append(items, figure.Backed(t, m)...)
		under = t.At.Y
	}
	return items, under
}
