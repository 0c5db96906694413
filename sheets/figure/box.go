package figure

import "math"

// Box is an upright rectangle in mm.
type Box struct{ Left, Top, Right, Bottom float64 }

// Width is the box's width in mm, 0 for an empty box.
func (b Box) Width() float64 { return max(b.Right-b.Left, 0) }

// Height is the box's height in mm, 0 for an empty box.
func (b Box) Height() float64 { return max(b.Bottom-b.Top, 0) }

// Overlaps tells whether two boxes share more than an edge.
func (b Box) Overlaps(c Box) bool {
	return b.Left < c.Right && c.Left < b.Right && b.Top < c.Bottom && c.Top < b.Bottom
}

func nothing() Box { return Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)} }

func (b Box) with(ps ...Point) Box {
	for _, p := range ps {
		b = Box{min(b.Left, p.X), min(b.Top, p.Y), max(b.Right, p.X), max(b.Bottom, p.Y)}
	}
	return b
}

func (b Box) grown(by float64) Box {
	return Box{b.Left - by, b.Top - by, b.Right + by, b.Bottom + by}
}

// How far letters reach above and below the baseline, in type sizes. From the
// tallest capitals with marks and the deepest tails of common sans-serif faces,
// rounded up; from memory.
const (
	rise = 0.95
	drop = 0.25
)

// TextBox is the room a text takes, measured with m.
func TextBox(t Text, m Measurer) Box {
	w := m.TextWidth(t.Words, t.Size, t.Bold)
	left := 0.0
	switch t.Anchor {
	case Middle:
		left = -w / 2
	case End:
		left = -w
	}
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	b := nothing()
	for _, c := range []Point{{left, -rise * t.Size}, {left + w, -rise * t.Size}, {left, drop * t.Size}, {left + w, drop * t.Size}} {
		b = b.with(t.At.plus(Point{c.X*cos + c.Y*sin, -c.X*sin + c.Y*cos}))
	}
	return b
}

// Bounds is the room all the items take, line widths included. Texts are
// measured with m. No items give an empty box at the origin.
func Bounds(items []Item, m Measurer) Box {
	b := nothing()
	join := func(c Box) { b = b.with(Point{c.Left, c.Top}, Point{c.Right, c.Bottom}) }
	for _, it := range items {
		switch it := it.(type) {
		case Path:
			part := nothing().with(it.Start)
			for _, line := range it.Polylines(0.02) {
				part = part.with(line...)
			}
			join(part.grown(it.Stroke.Width / 2))
		case Circle:
			join(nothing().with(it.Centre).grown(it.Radius + it.Stroke.Width/2))
		case Text:
			join(TextBox(it, m))
		}
	}
	if b.Left > b.Right {
		return Box{}
	}
	return b
}

// Fit makes a figure just large enough for the items and a margin of mm on
// every side, moving them so that the top left corner is the origin.
func Fit(name, title string, items []Item, margin float64, m Measurer) Figure {
	b := Bounds(items, m).grown(margin)
	return Figure{Name: name, Title: title, Width: b.Width(), Height: b.Height(), Items: Shift(items, -b.Left, -b.Top)}
}

// Backed is the text on a white ground, so that it stays legible over lines.
func Backed(t Text, m Measurer) []Item {
	level := t
	level.Turn = 0
	b := TextBox(level, m)
	pad := 0.15 * t.Size
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	var corners []Point
	for _, c := range []Point{{b.Left - pad, b.Top}, {b.Right + pad, b.Top}, {b.Right + pad, b.Bottom}, {b.Left - pad, b.Bottom}} {
		d := c.minus(t.At)
		corners = append(corners, t.At.plus(Point{d.X*cos + d.Y*sin, -d.X*sin + d.Y*cos}))
	}
	return []Item{Polygon(Stroke{}, Fill{White: true}, corners...), t}
}
