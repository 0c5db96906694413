package figure

import "math"

// Line is a straight line from a to b.
func Line(a, b Point, s Stroke) Path { return Polyline(s, a, b) }

// Polyline is an open path through the points; fewer than one gives an empty path.
func Polyline(s Stroke, points ...Point) Path {
	p := Path{Stroke: s}
	for i, q := range points {
		if i == 0 {
			p.Start = q
			continue
		}
		p.Segments = append(p.Segments, Segment{Step: LineTo, To: q})
	}
	return p
}

// Polygon is a closed path through the points.
func Polygon(s Stroke, f Fill, points ...Point) Path {
	p := Polyline(s, points...)
	p.Closed, p.Fill = true, f
	return p
}

// Rect is a box with its top left corner at at.
func Rect(at Point, width, height float64, s Stroke, f Fill) Path {
	return Polygon(s, f, at, Point{at.X + width, at.Y}, Point{at.X + width, at.Y + height}, Point{at.X, at.Y + height})
}

// Curve adds a cubic curve to the end of the path and returns the longer path.
func (p Path) Curve(c1, c2, to Point) Path {
	p.Segments = append(p.Segments[:len(p.Segments):len(p.Segments)], Segment{Step: CubicTo, C1: c1, C2: c2, To: to})
	return p
}

// Line adds a straight line to the end of the path and returns the longer path.
func (p Path) Line(to Point) Path {
	p.Segments = append(p.Segments[:len(p.Segments):len(p.Segments)], Segment{Step: LineTo, To: to})
	return p
}

// kappa places the control points of a cubic quarter circle so that its middle
// lies on the circle: 4/3 (sqrt 2 - 1).
const kappa = 4.0 / 3 * (math.Sqrt2 - 1)

// Outline is the circle as four cubic curves, within 0.03 % of its radius.
func (c Circle) Outline() Path {
	r, k, m := c.Radius, c.Radius*kappa, c.Centre
	at := func(dx, dy float64) Point { return Point{m.X + dx, m.Y + dy} }
	p := Path{Start: at(r, 0), Closed: true, Stroke: c.Stroke, Fill: c.Fill}
	p = p.Curve(at(r, k), at(k, r), at(0, r))
	p = p.Curve(at(-k, r), at(-r, k), at(-r, 0))
	p = p.Curve(at(-r, -k), at(-k, -r), at(0, -r))
	return p.Curve(at(k, -r), at(r, -k), at(r, 0))
}

// Shift returns copies of the items moved by dx and dy mm.
func Shift(items []Item, dx, dy float64) []Item {
	move := func(p Point) Point { return Point{p.X + dx, p.Y + dy} }
	out := make([]Item, 0, len(items))
	for _, it := range items {
		switch it := it.(type) {
		case Path:
			segs := make([]Segment, len(it.Segments))
			for i, s := range it.Segments {
				segs[i] = Segment{Step: s.Step, C1: move(s.C1), C2: move(s.C2), To: move(s.To)}
			}
			it.Start, it.Segments = move(it.Start), segs
			out = append(out, it)
		case Circle:
			it.Centre = move(it.Centre)
			out = append(out, it)
		case Text:
			it.At = move(it.At)
			out = append(out, it)
		}
	}
	return out
}

func (p Point) plus(q Point) Point        { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) minus(q Point) Point       { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) times(k float64) Point     { return Point{p.X * k, p.Y * k} }
func (p Point) length() float64           { return math.Hypot(p.X, p.Y) }
func between(a, b Point, t float64) Point { return a.plus(b.minus(a).times(t)) }

// towards is the unit vector from a to b, or (1, 0) when they coincide.
func towards(a, b Point) Point {
	d := b.minus(a)
	n := d.length()
	if n == 0 {
		return Point{1, 0}
	}
	return d.times(1 / n)
}

// left is the unit vector turned a quarter anticlockwise as seen on paper.
func (p Point) left() Point { return Point{p.Y, -p.X} }
