package flat

import (
	"math"

	"bodkin/process"
)

// motion turns, perhaps mirrors, and then moves.
type motion struct {
	cos, sin float64
	mirror   bool // x is turned round first
	dx, dy   float64
}

func (m motion) point(p process.Point) process.Point {
	if m.mirror {
		p.X = -p.X
	}
	return process.Point{X: m.cos*p.X - m.sin*p.Y + m.dx, Y: m.sin*p.X + m.cos*p.Y + m.dy}
}

// onto is the motion that brings points nearest to others, by least squares. With
// two sums of products the best turn is in closed form (the planar case of the
// orthogonal Procrustes problem).
func onto(from, to []process.Point, mirror bool) motion {
	m := motion{cos: 1, mirror: mirror}
	var a, b process.Point
	turned := moved(from, m.point)
	for k := range turned {
		a.X, a.Y, b.X, b.Y = a.X+turned[k].X, a.Y+turned[k].Y, b.X+to[k].X, b.Y+to[k].Y
	}
	n := float64(len(turned))
	a.X, a.Y, b.X, b.Y = a.X/n, a.Y/n, b.X/n, b.Y/n
	dot, cross := 0.0, 0.0
	for k, p := range turned {
		x, y, u, v := p.X-a.X, p.Y-a.Y, to[k].X-b.X, to[k].Y-b.Y
		dot, cross = dot+x*u+y*v, cross+x*v-y*u
	}
	if l := math.Hypot(dot, cross); l > 0 {
		m.cos, m.sin = dot/l, cross/l
	}
	m.dx, m.dy = b.X-(m.cos*a.X-m.sin*a.Y), b.Y-(m.sin*a.X+m.cos*a.Y)
	return m
}

// upright is the motion that brings an upright line from a to b onto the middle, with
// the point inside to its right, as high as brings points nearest to others.
func upright(a, b, inside process.Point, down bool, from, to []process.Point) motion {
	l := max(distance(a, b), 1e-9)
	ux, uy := (b.X-a.X)/l, (b.Y-a.Y)/l
	if !down {
		ux, uy = -ux, -uy
	}
	// The line's direction comes to point down the page: (ux, uy) to (0, 1).
	m := motion{cos: uy, sin: ux}
	if p := m.point(inside); p.X < m.point(a).X {
		// Mirrored first, the line has the direction (-ux, uy).
		m = motion{cos: uy, sin: -ux, mirror: true}
	}
	m.dx = -m.point(a).X
	sum := 0.0
	for k, p := range from {
		sum += to[k].Y - m.point(p).Y
	}
	if len(from) > 0 {
		m.dy = sum / float64(len(from))
	}
	return m
}

// apart is how far moved points lie from others, root of the mean square, mm.
func (m motion) apart(from, to []process.Point) float64 {
	sum := 0.0
	for k, p := range from {
		d := distance(m.point(p), to[k])
		sum += d * d
	}
	return math.Sqrt(sum / max(float64(len(from)), 1))
}
