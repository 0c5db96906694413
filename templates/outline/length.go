package outline

import "math"

const (
	lengthTolerance = 1e-8 // mm, of one whole segment
	deepestHalving  = 40   // an interval of 2^-40 of a segment is far below the tolerance
)

// Length returns the arc length, mm: exact for lines and circular arcs, to within
// 1e-7 mm for other curves of human size.
func (s Segment) Length() float64 { return s.lengthTo(1) }

// lengthTo returns the arc length from 0 to the parameter t.
//
// The speed is the absolute value of a vector: smooth, but with a sharp valley
// where it nearly vanishes. The range is divided at the valleys first, so that
// each lies at the end of a panel, where halving finds it.
func (s Segment) lengthTo(t float64) float64 {
	if s.degree == 1 || s.arc() {
		return t * s.reach()
	}
	x, y := s.polynomials()
	vx, vy := x.derivative(), y.derivative()
	valleys := roots(vx.times(vx).plus(1, vy.times(vy)).derivative())
	h := s.hodograph()
	var sum, from float64
	for _, to := range append(valleys, 1) {
		if to = min(to, t); to <= from {
			break
		}
		const panels = 4 // so that no chance agreement of two estimates ends it at once
		step := (to - from) / panels
		for i := range panels {
			a, b := from+float64(i)*step, from+float64(i+1)*step
			sum += h.speedOver(a, b, h.gauss(a, b), lengthTolerance/8, deepestHalving)
		}
		from = to
	}
	return sum
}

// speedOver integrates the speed over [a, b], where whole is the estimate in one
// go. It halves until one estimate and the sum of two agree.
func (h Segment) speedOver(a, b, whole, tolerance float64, depth int) float64 {
	m := a + (b-a)/2
	left, right := h.gauss(a, m), h.gauss(m, b)
	sum := left + right
	// below 1e-13 of itself the difference is rounding, which halving cannot mend
	if math.Abs(sum-whole) <= max(tolerance, 1e-13*sum) || depth == 0 {
		return sum
	}
	return h.speedOver(a, m, left, tolerance/2, depth-1) + h.speedOver(m, b, right, tolerance/2, depth-1)
}

// gauss is the integral of |h| over [a, b] by Gauss–Legendre quadrature with
// eight points. Nodes and weights: Abramowitz and Stegun, Handbook of
// Mathematical Functions, National Bureau of Standards, 1964, table 25.4.
func (h Segment) gauss(a, b float64) float64 {
	half, mid := (b-a)/2, (a+b)/2
	var sum float64
	for _, g := range [4]struct{ node, weight float64 }{
		{0.183434642495650, 0.362683783378362},
		{0.525532409916329, 0.313706645877887},
		{0.796666477413627, 0.222381034453374},
		{0.960289856497536, 0.101228536290376},
	} {
		before, after := h.At(mid-half*g.node), h.At(mid+half*g.node)
		// a plain root: the guard of Hypot against overflow is not wanted here
		sum += g.weight * (math.Sqrt(before.Dot(before)) + math.Sqrt(after.Dot(after)))
	}
	return half * sum
}

// parameterAt returns the t at which the arc length from the start is d, which
// is held between 0 and the whole length, known to the caller.
func (s Segment) parameterAt(d, whole float64) float64 {
	switch {
	case d <= 0 || whole == 0:
		return 0
	case d >= whole:
		return 1
	case s.degree == 1 || s.arc():
		return d / whole
	}
	lo, hi, t := 0.0, 1.0, d/whole
	for range 60 {
		miss := s.lengthTo(t) - d
		if math.Abs(miss) < lengthTolerance {
			break
		}
		if miss > 0 {
			hi = t
		} else {
			lo = t
		}
		next := t - miss/s.velocity(t).Norm()
		if !(next > lo && next < hi) {
			next = lo + (hi-lo)/2
		}
		t = next
	}
	return t
}
