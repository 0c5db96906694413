package outline

import "math"

// Point is a place or a vector in the plane, mm. The y axis points up, so an
// outline of positive area runs anticlockwise.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the vector from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Scale returns k times p.
func (p Point) Scale(k float64) Point { return Point{k * p.X, k * p.Y} }

// Dot returns the inner product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Cross returns the z component of the outer product, positive where q lies to
// the left of p.
func (p Point) Cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Norm returns the length of the vector.
func (p Point) Norm() float64 { return math.Hypot(p.X, p.Y) }

// Distance returns the distance between two places, mm.
func (p Point) Distance(q Point) float64 { return p.Sub(q).Norm() }

// Toward returns the place a share k of the way from p to q: 0 is p, 1 is q.
func (p Point) Toward(q Point, k float64) Point {
	return Point{p.X + k*(q.X-p.X), p.Y + k*(q.Y-p.Y)}
}

// Unit returns the vector at length 1, or the zero vector for the zero vector.
func (p Point) Unit() Point {
	n := p.Norm()
	if n == 0 {
		return Point{}
	}
	return Point{p.X / n, p.Y / n}
}

// right is p turned a quarter clockwise: outward of an anticlockwise outline.
func (p Point) right() Point { return Point{p.Y, -p.X} }

// finite reports whether neither coordinate is NaN or infinite.
func (p Point) finite() bool {
	return !math.IsNaN(p.X-p.X) && !math.IsNaN(p.Y-p.Y)
}

// Reflect returns p mirrored in the line through a and b, which must differ.
func (p Point) Reflect(a, b Point) Point {
	u := b.Sub(a).Unit()
	v := p.Sub(a)
	return a.Add(u.Scale(2 * v.Dot(u))).Sub(v)
}

// Rotate returns p turned anticlockwise about c by so many degrees.
func (p Point) Rotate(c Point, degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	v := p.Sub(c)
	return Point{c.X + v.X*cos - v.Y*sin, c.Y + v.X*sin + v.Y*cos}
}

// angle returns the turn from direction p to direction q in radians, in (-π, π].
func angle(p, q Point) float64 { return math.Atan2(p.Cross(q), p.Dot(q)) }

// degrees converts from radians.
func degrees(radians float64) float64 { return radians * 180 / math.Pi }

// Meet returns where the line through a along u meets the line through b along
// v, and false where they are parallel to within a thousandth of a degree.
func Meet(a, u, b, v Point) (Point, bool) {
	u, v = u.Unit(), v.Unit()
	d := u.Cross(v)
	if math.Abs(d) < 2e-5 {
		return Point{}, false
	}
	return a.Add(u.Scale(b.Sub(a).Cross(v) / d)), true
}
