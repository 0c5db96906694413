package outline

import (
	"math"
	"slices"
)

// Segment is a straight line, a quadratic or cubic Bézier curve, or a circular
// arc. Build it with [Line], [Quadratic], [Cubic], [Arc] or [Bow]; it is a value
// and compares with ==.
type Segment struct {
	degree int
	p      [4]Point // p[0] .. p[degree]; of an arc its start, centre and end
	span   float64  // radians, of an arc; 0 for all else
}

// Line returns the straight line from a to b.
func Line(a, b Point) Segment { return Segment{degree: 1, p: [4]Point{a, b}} }

// Quadratic returns the curve from a to b with one control point.
func Quadratic(a, c, b Point) Segment { return Segment{degree: 2, p: [4]Point{a, c, b}} }

// Cubic returns the curve from a to b with two control points.
func Cubic(a, c1, c2, b Point) Segment { return Segment{degree: 3, p: [4]Point{a, c1, c2, b}} }

// From returns where the segment starts.
func (s Segment) From() Point { return s.p[0] }

// To returns where the segment ends.
func (s Segment) To() Point { return s.p[s.degree] }

// At returns the place at the parameter t from 0 to 1, which is a share of the
// length on lines and arcs only.
func (s Segment) At(t float64) Point {
	if s.arc() {
		return s.arcAt(t)
	}
	q := s.p
	for n := s.degree; n > 0; n-- {
		for i := range n {
			q[i] = q[i].Toward(q[i+1], t)
		}
	}
	return q[0]
}

// velocity returns the derivative by t.
func (s Segment) velocity(t float64) Point {
	if s.arc() {
		return s.arcVelocity(t)
	}
	return s.hodograph().At(t)
}

// hodograph returns the derivative of a Bézier curve as a curve of its own.
func (s Segment) hodograph() Segment {
	h := Segment{degree: s.degree - 1}
	for i := range s.degree {
		h.p[i] = s.p[i+1].Sub(s.p[i]).Scale(float64(s.degree))
	}
	return h
}

// Tangent returns the unit direction at t. Where the speed is zero (a control
// point lying on its end, a cusp) it is the direction in which the curve goes on
// from there, or at t = 1 the direction in which it arrives.
func (s Segment) Tangent(t float64) Point {
	switch {
	case s.arc():
		return s.arcVelocity(min(max(t, 0), 1)).Unit()
	case t <= 0:
		return s.starts()
	case t >= 1:
		return s.Reverse().starts().Scale(-1)
	}
	if v := s.velocity(t); v.Norm() > 1e-12*s.reach() {
		return v.Unit()
	}
	_, after := s.Split(t)
	return after.starts()
}

// starts returns the direction towards the first control point that is not the
// start itself.
func (s Segment) starts() Point {
	size := s.reach()
	for i := range s.degree {
		if d := s.p[i+1].Sub(s.p[0]); d.Norm() > 1e-9*size {
			return d.Unit()
		}
	}
	return Point{}
}

// reach is the length of the control polygon, an upper bound of the length; of
// an arc the length.
func (s Segment) reach() float64 {
	if s.arc() {
		return s.radius() * math.Abs(s.span)
	}
	var sum float64
	for i := range s.degree {
		sum += s.p[i].Distance(s.p[i+1])
	}
	return sum
}

// Split cuts the segment at t in two of the same kind.
func (s Segment) Split(t float64) (before, after Segment) {
	if s.arc() {
		return s.splitArc(t)
	}
	q, n := s.p, s.degree
	before, after = Segment{degree: n}, Segment{degree: n}
	for k := range n + 1 {
		before.p[k] = q[0]
		after.p[n-k] = q[n-k]
		for i := range n - k {
			q[i] = q[i].Toward(q[i+1], t)
		}
	}
	return before, after
}

// Reverse returns the same curve run the other way.
func (s Segment) Reverse() Segment {
	slices.Reverse(s.p[:s.degree+1])
	s.span = -s.span
	return s
}

// Map returns the segment with f applied to every point. The result is the true
// image for shifts, turns, reflections and scaling; a Bézier curve is carried
// truly by every affine map, an arc must go through [Segment.Beziers] first.
func (s Segment) Map(f func(Point) Point) Segment {
	if s.arc() {
		return s.mapArc(f)
	}
	for i := range s.degree + 1 {
		s.p[i] = f(s.p[i])
	}
	return s
}

// Bounds returns the smallest upright box round the segment.
func (s Segment) Bounds() Box {
	if s.arc() {
		return s.arcBounds()
	}
	b := Box{s.From(), s.From()}.with(s.To())
	x, y := s.polynomials()
	for _, t := range roots(x.derivative()) {
		b = b.with(s.At(t))
	}
	for _, t := range roots(y.derivative()) {
		b = b.with(s.At(t))
	}
	return b
}

// polynomials returns the coordinates of a Bézier curve as polynomials in t.
func (s Segment) polynomials() (x, y polynomial) {
	choose := [4][4]float64{1: {1, 1}, 2: {1, 2, 1}, 3: {1, 3, 3, 1}}[s.degree]
	x, y = make(polynomial, s.degree+1), make(polynomial, s.degree+1)
	d := s.p
	for k := range s.degree + 1 {
		// d[0] is the k-th forward difference of the control points
		x[k], y[k] = choose[k]*d[0].X, choose[k]*d[0].Y
		for i := range s.degree - k {
			d[i] = d[i+1].Sub(d[i])
		}
	}
	return x, y
}
