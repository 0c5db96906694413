package figure

import "math"

// Polylines is the path as straight lines, one slice a part, no farther than
// tolerance mm from the curve. A closed part repeats its first point at the end.
func (p Path) Polylines(tolerance float64) [][]Point {
	var parts [][]Point
	part := []Point{p.Start}
	finish := func() {
		if len(part) < 2 {
			return
		}
		if p.Closed && part[0] != part[len(part)-1] {
			part = append(part, part[0])
		}
		parts = append(parts, part)
	}
	for _, s := range p.Segments {
		switch s.Step {
		case LineTo:
			part = append(part, s.To)
		case CubicTo:
			part = flattenCubic(part, part[len(part)-1], s, tolerance)
		case MoveTo:
			finish()
			part = []Point{s.To}
		}
	}
	finish()
	return parts
}

// flattenCubic appends the curve in equal parameter steps. With n steps a cubic
// strays from its chords by at most d/(8 n²), d being the largest second
// derivative: 6 times the larger second difference of the control points.
func flattenCubic(to []Point, from Point, s Segment, tolerance float64) []Point {
	second := func(a, b, c Point) float64 { return a.minus(b.times(2)).plus(c).length() }
	d := 6 * max(second(from, s.C1, s.C2), second(s.C1, s.C2, s.To))
	n := 1
	if tolerance > 0 && d > 0 {
		n = int(min(max(math.Ceil(math.Sqrt(d/(8*tolerance))), 1), 400))
	}
	for i := 1; i < n; i++ {
		to = append(to, cubicAt(from, s, float64(i)/float64(n)))
	}
	return append(to, s.To)
}

func cubicAt(p0 Point, s Segment, t float64) Point {
	u := 1 - t
	a, b, c, d := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{a*p0.X + b*s.C1.X + c*s.C2.X + d*s.To.X, a*p0.Y + b*s.C1.Y + c*s.C2.Y + d*s.To.Y}
}

// Length is the path's length in mm, curves to within about 0.01 mm; a closed
// part counts its closing line.
func (p Path) Length() float64 {
	sum := 0.0
	for _, part := range p.Polylines(0.001) {
		for i := 1; i < len(part); i++ {
			sum += part[i].minus(part[i-1]).length()
		}
	}
	return sum
}
