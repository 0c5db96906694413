package outline

import "math"

// LeastRadius returns the radius of the tightest bend, mm; +Inf where the
// segment is straight (a radius beyond 1e9 mm counts as straight) and 0 where it
// comes to a point.
//
// The extremes of curvature are roots of a polynomial of degree 5, all found, so
// a short tight bend is not missed between samples.
func (s Segment) LeastRadius() float64 {
	switch {
	case s.straight():
		return math.Inf(1)
	case s.arc():
		return s.radius()
	}
	x, y := s.polynomials()
	vx, vy := x.derivative(), y.derivative()
	ax, ay := vx.derivative(), vy.derivative()
	bend := vx.times(ay).plus(-1, vy.times(ax)) // v × a
	speed := vx.times(vx).plus(1, vy.times(vy)) // |v|²
	// d/dt of bend²/speed³ = 0 where 2 bend' speed - 3 bend speed' = 0
	extremes := bend.derivative().times(speed).plus(-1.5, bend.times(speed.derivative()))
	tightest := 0.0
	for _, t := range append(append(roots(extremes), roots(speed.derivative())...), 0, 1) {
		v := speed.at(t)
		if v <= 1e-18*s.reach()*s.reach() {
			return 0
		}
		tightest = max(tightest, math.Abs(bend.at(t))/(v*math.Sqrt(v)))
	}
	if tightest < 1e-9 {
		return math.Inf(1)
	}
	return 1 / tightest
}

// straight reports whether the segment is a line run once and in one direction.
func (s Segment) straight() bool {
	if s.degree == 1 || s.arc() {
		return s.degree == 1
	}
	chord := s.To().Sub(s.From())
	u := chord.Unit()
	for i := range s.degree {
		step := s.p[i+1].Sub(s.p[i])
		if math.Abs(u.Cross(step)) > 1e-9*chord.Norm() || u.Dot(step) < 0 {
			return false
		}
	}
	return u != Point{}
}

// Turning returns how far the direction turns along the segment, degrees:
// absolute adds all bends whichever way they go, signed counts a left bend
// positive and a right bend negative. A cusp is half a turn.
func (s Segment) Turning() (absolute, signed float64) {
	switch {
	case s.arc():
		return math.Abs(degrees(s.span)), degrees(s.span)
	case s.straight() || s.reach() == 0:
		return 0, 0
	}
	x, y := s.polynomials()
	vx, vy := x.derivative(), y.derivative()
	bend := vx.times(vy.derivative()).plus(-1, vy.times(vx.derivative()))
	rest, from, heading := s, 0.0, s.Tangent(0)
	for _, t := range append(roots(bend), 1) {
		part := rest
		if t < 1 {
			part, rest = rest.Split((t - from) / (1 - from))
		}
		first, last := part.Tangent(0), part.Tangent(1)
		turn := angle(heading, first) + part.sweep(first, last, 1e-10*s.reach())
		absolute += math.Abs(turn)
		signed += turn
		from, heading = t, last
	}
	return degrees(absolute), degrees(signed)
}

// sweep is the signed turn in radians, from the direction first to last, of a
// segment that bends one way only. It halves until the steps of the control
// polygon lie within a right angle of both, for then the turn cannot have gone
// round the back, or down to a tiny size where only rounding is left.
func (s Segment) sweep(first, last Point, tiny float64) float64 {
	within := first.Dot(last) > 0
	for i := range s.degree {
		step := s.p[i+1].Sub(s.p[i])
		within = within && first.Dot(step) >= 0 && last.Dot(step) >= 0
	}
	if within || s.reach() <= tiny {
		return angle(first, last)
	}
	a, b := s.Split(0.5)
	arrives, leaves := a.Tangent(1), b.Tangent(0)
	return a.sweep(first, arrives, tiny) + angle(arrives, leaves) + b.sweep(leaves, last, tiny)
}
