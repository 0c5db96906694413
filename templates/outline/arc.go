package outline

import "math"

// Arc returns a circular arc from the angle start (degrees, anticlockwise from
// the x axis) through sweep degrees, which is negative for an arc run clockwise
// and at most a whole turn. Its length is exact: radius times sweep.
func Arc(centre Point, radius, start, sweep float64) Segment {
	at := func(angle float64) Point { return centre.Add(Point{radius, 0}).Rotate(centre, angle) }
	s := Segment{degree: 2, p: [4]Point{at(start), centre, at(start + sweep)}, span: sweep * math.Pi / 180}
	if math.Abs(sweep) == 360 {
		s.p[2] = s.p[0]
	}
	return s
}

// Bow returns the arc of a circle from a to b whose middle lies rise mm to the
// right of the straight line, which is outward in an anticlockwise outline; a
// negative rise hollows it. With a rise of less than 1e-4 mm it is the line.
func Bow(a, b Point, rise float64) Segment {
	chord := b.Sub(a)
	half := chord.Norm() / 2
	if math.Abs(rise) < 1e-4 || half == 0 {
		return Line(a, b)
	}
	// sagitta and half chord give the half angle: tan(sweep/4) = rise/half
	sweep := 4 * math.Atan(rise/half)
	deep := half / math.Tan(sweep/2)
	centre := a.Toward(b, 0.5).Sub(chord.Unit().right().Scale(deep))
	return Segment{degree: 2, p: [4]Point{a, centre, b}, span: sweep}
}

// Circle returns the circle that an arc is part of and its sweep in degrees,
// and false for any other segment.
func (s Segment) Circle() (centre Point, radius, sweep float64, ok bool) {
	if !s.arc() {
		return Point{}, 0, 0, false
	}
	return s.p[1], s.radius(), degrees(s.span), true
}

// arc reports whether the segment is a circular arc: then p holds its start,
// its centre and its end.
func (s Segment) arc() bool { return s.span != 0 }

func (s Segment) radius() float64 { return s.p[0].Distance(s.p[1]) }

// arcAt returns the place at the share t of an arc.
func (s Segment) arcAt(t float64) Point {
	switch t {
	case 0:
		return s.p[0]
	case 1:
		return s.p[2]
	}
	return s.p[0].Rotate(s.p[1], degrees(s.span)*t)
}

// arcVelocity returns the derivative by t.
func (s Segment) arcVelocity(t float64) Point {
	return s.arcAt(t).Sub(s.p[1]).right().Scale(-s.span)
}

func (s Segment) splitArc(t float64) (before, after Segment) {
	middle := s.arcAt(t)
	before, after = s, s
	before.p[2], before.span = middle, s.span*t
	after.p[0], after.span = middle, s.span*(1-t)
	return before, after
}

// mapArc maps an arc by a map that keeps shapes similar; which way the arc then
// runs is read off the image of a right angle.
func (s Segment) mapArc(f func(Point) Point) Segment {
	centre := f(s.p[1])
	x, y := f(s.p[1].Add(Point{1, 0})).Sub(centre), f(s.p[1].Add(Point{0, 1})).Sub(centre)
	if x.Cross(y) < 0 {
		s.span = -s.span
	}
	s.p = [4]Point{f(s.p[0]), centre, f(s.p[2])}
	return s
}

// arcBounds takes in the quarter points of the circle that the arc passes.
func (s Segment) arcBounds() Box {
	b := Box{s.p[0], s.p[0]}.with(s.p[2])
	r := s.radius()
	v := s.p[0].Sub(s.p[1])
	start := math.Atan2(v.Y, v.X)
	lo, hi := min(start, start+s.span), max(start, start+s.span)
	for k := math.Ceil(lo / (math.Pi / 2)); k*math.Pi/2 <= hi; k++ {
		sin, cos := math.Sincos(k * math.Pi / 2)
		b = b.with(s.p[1].Add(Point{r * cos, r * sin}))
	}
	return b
}

// sectorTwice is the integral of x dy - y dx along an arc: twice the area swept
// from the origin.
func (s Segment) sectorTwice() float64 {
	r := s.radius()
	return r*r*s.span + s.p[1].Cross(s.p[2].Sub(s.p[0]))
}

// arcOffset is [Segment.offset] for an arc: a circle whose radius is greater or
// smaller by d. Where d is more than the radius of an arc that bends to the
// right, the parallel runs backward round the other side of the centre.
func (s Segment) arcOffset(d, tolerance float64) (line []Point, backward bool) {
	r := s.radius()
	wide := r + math.Copysign(d, s.span) // s.span > 0 bends to the left
	n := 1.0
	if w := math.Abs(wide); w > tolerance {
		n = math.Ceil(math.Abs(s.span) / (4 * math.Asin(math.Sqrt(tolerance/w/2)))) // by the sagitta
	}
	n = max(n, math.Ceil(math.Abs(s.span)/(math.Pi/2))) // so that even a tiny ring is no spike
	for i := range int(n) + 1 {
		p := s.arcAt(float64(i) / n)
		if d != 0 {
			p = s.p[1].Toward(p, wide/r)
		}
		line = append(line, p)
	}
	return line, wide < 0
}

// Beziers returns the segment as Bézier curves: itself, or for an arc cubics of
// at most 30 degrees each, which keep within 4e-7 of its radius (the rule of
// tangent lengths k = 4/3 tan(sweep/4), common practice of computer graphics).
func (s Segment) Beziers() []Segment {
	if !s.arc() {
		return []Segment{s}
	}
	n := max(1, int(math.Ceil(math.Abs(degrees(s.span))/30-1e-9)))
	k := 4.0 / 3 * math.Tan(s.span/float64(4*n)) / s.span
	out := make([]Segment, n)
	for i := range n {
		ta, tb := float64(i)/float64(n), float64(i+1)/float64(n)
		a, b := s.arcAt(ta), s.arcAt(tb)
		out[i] = Cubic(a, a.Add(s.arcVelocity(ta).Scale(k)), b.Sub(s.arcVelocity(tb).Scale(k)), b)
	}
	return out
}
