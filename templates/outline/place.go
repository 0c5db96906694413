package outline

import "math"

// Map returns the outline with f applied to every point; see [Segment.Map]. It
// runs anticlockwise again where f is a reflection.
func (o Outline) Map(f func(Point) Point) Outline {
	m := Outline{make([]Edge, len(o.Edges))}
	for i, e := range o.Edges {
		m.Edges[i] = e.Map(f)
	}
	if m.Area() < 0 {
		return m.Reverse()
	}
	return m
}

// LaidOn returns the outline turned so that the grain, given as a direction on
// the piece, runs straight up the cloth. The zero vector turns nothing.
func (o Outline) LaidOn(grain Point) Outline {
	return o.Map(upright(grain))
}

// BoundsOn returns the smallest box round the outline with sides along and
// across the grain: what the piece takes of the cloth.
func (o Outline) BoundsOn(grain Point) Box { return o.LaidOn(grain).Bounds() }

// BoundsOn returns the smallest box round the cut line with sides along and
// across the grain.
func (c CutLine) BoundsOn(grain Point) Box {
	turn := upright(grain)
	first := turn(c[0].Points[0])
	b := Box{first, first}
	for _, e := range c {
		for _, p := range e.Points {
			b = b.with(turn(p))
		}
	}
	return b
}

// upright is the turn about the origin that brings a direction to point up.
func upright(grain Point) func(Point) Point {
	u := grain.Unit()
	if u == (Point{}) {
		return func(p Point) Point { return p }
	}
	return func(p Point) Point { return Point{p.Dot(u.right()), p.Dot(u)} }
}

// Stretch returns the outline made k times as wide along a direction, as cloth
// that will be gathered by k: lengths across the direction stay as they are.
// Arcs become cubics, which keep within 4e-7 of their radius. It returns a
// [*ShapeError] where k is not a number above 0 or there is no direction.
func (o Outline) Stretch(along Point, k float64) (Outline, error) {
	u := along.Unit()
	if !(k > 0) || math.IsInf(k, 1) || u == (Point{}) {
		return Outline{}, &ShapeError{What: "it can only be widened along a direction and by a number above 0"}
	}
	s := Outline{make([]Edge, len(o.Edges))}
	for i, e := range o.Edges {
		s.Edges[i].Name = e.Name
		for _, part := range e.Segments {
			s.Edges[i].Segments = append(s.Edges[i].Segments, part.Beziers()...)
		}
	}
	return s.Map(func(p Point) Point { return p.Add(u.Scale((k - 1) * p.Dot(u))) }), nil
}

// Sector returns a part of a ring: an arc of the inner radius, a straight side,
// an arc of the outer radius and a straight side back, named in this order; the
// inner arc runs clockwise about the origin, the first side lies along the
// negative y axis, so that a skirt hangs from its waist. It returns a
// [*ShapeError] unless 0 < inner < outer and the sweep lies between 0 and 360
// degrees; a whole ring is cut as two halves.
func Sector(inner, outer, sweep float64, names [4]string) (Outline, error) {
	if !(inner > 0 && outer > inner && sweep > 0 && sweep < 360) {
		return Outline{}, &ShapeError{Edges: names[:], What: "a part of a ring wants two radii above 0, the outer the greater, and a sweep below 360 degrees"}
	}
	at := func(r, turn float64) Point { return Point{0, -r}.Rotate(Point{}, turn) }
	return New(
		Edge{names[0], []Segment{Arc(Point{}, inner, sweep-90, -sweep)}},
		Edge{names[1], []Segment{Line(at(inner, 0), at(outer, 0))}},
		Edge{names[2], []Segment{Arc(Point{}, outer, -90, sweep)}},
		Edge{names[3], []Segment{Line(at(outer, sweep), at(inner, sweep))}},
	)
}

// Holds reports whether a point lies inside the outline.
func (o Outline) Holds(p Point) bool { return inside(o.Flatten(crossingTolerance), p) }
