package outline

import "math"

// offset returns points at the distance d to the right of the segment, both
// ends included, such that straight lines between them stay within tolerance of
// the true parallel curve. Where d is more than the radius of a right bend the
// line runs backwards there, which is reported; see [untangle].
func (s Segment) offset(d, tolerance float64) (line []Point, backward bool) {
	if s.arc() {
		return s.arcOffset(d, tolerance)
	}
	at := func(t float64) Point {
		if d == 0 {
			return s.At(t)
		}
		return s.At(t).Add(s.Tangent(t).right().Scale(d))
	}
	line = []Point{at(0)}
	if s.straight() {
		return append(line, at(1)), false
	}
	bound := 0.8 * tolerance // the farthest point may lie between those looked at
	var walk func(a, b float64, pa, pb Point, depth int)
	walk = func(a, b float64, pa, pb Point, depth int) {
		m := a + (b-a)/2
		pm := at(m)
		// a symmetrical double bend has its middle on the chord, so the quarters
		// are looked at as well
		flat := depth >= 2 &&
			clearance(pm, pa, pb) <= bound &&
			clearance(at(a+(b-a)/4), pa, pb) <= bound &&
			clearance(at(b-(b-a)/4), pa, pb) <= bound
		// nor may it have doubled back on the chord between two of them
		chord := pb.Sub(pa)
		flat = flat && s.velocity(a).Dot(chord) >= 0 && s.velocity(b).Dot(chord) >= 0
		if flat || depth >= 2 && max(chord.Norm(), pm.Distance(pa)) < bound/4 || depth >= 14 {
			line = append(line, pb)
			backward = backward || pb.Sub(pa).Dot(s.Tangent(m)) < 0
			return
		}
		walk(a, m, pa, pm, depth+1)
		walk(m, b, pm, pb, depth+1)
	}
	walk(0, 1, line[0], at(1), 0)
	return line, backward
}

// clearance returns the distance of p from the straight line from a to b, ends
// included.
func clearance(p, a, b Point) float64 {
	v := b.Sub(a)
	n := v.Dot(v)
	if n == 0 {
		return p.Distance(a)
	}
	return p.Distance(a.Toward(b, math.Max(0, math.Min(1, p.Sub(a).Dot(v)/n))))
}
