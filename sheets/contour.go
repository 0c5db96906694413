package sheets

import (
	"math"
	"slices"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// contour is a closed outline on paper, in mm, without its first point again at
// the end.
type contour []figure.Point

func contourOf(points []process.Point, scale float64) contour {
	var out contour
	for _, p := range points {
		q := figure.Point{X: p.X * scale, Y: p.Y * scale}
		if len(out) == 0 || distance(out[len(out)-1], q) > 1e-6 {
			out = append(out, q)
		}
	}
	for len(out) > 1 && distance(out[0], out[len(out)-1]) <= 1e-6 {
		out = out[:len(out)-1]
	}
	return out
}

func distance(a, b figure.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// side is the i-th side, from point i to the next.
func (c contour) side(i int) (a, b figure.Point) { return c[i], c[(i+1)%len(c)] }

// box is the room the contour takes.
func (c contour) box() figure.Box {
	b := figure.Box{Left: math.Inf(1), Top: math.Inf(1), Right: math.Inf(-1), Bottom: math.Inf(-1)}
	for _, p := range c {
		b = figure.Box{Left: min(b.Left, p.X), Top: min(b.Top, p.Y), Right: max(b.Right, p.X), Bottom: max(b.Bottom, p.Y)}
	}
	return b
}

// moved is the contour shifted.
func (c contour) moved(dx, dy float64) contour {
	out := make(contour, len(c))
	for i, p := range c {
		out[i] = figure.Point{X: p.X + dx, Y: p.Y + dy}
	}
	return out
}

// nearest is the side nearest to a point, and how far away it is.
func (c contour) nearest(p figure.Point) (side int, away float64) {
	away = math.Inf(1)
	for i := range c {
		a, b := c.side(i)
		if d := distance(p, foot(p, a, b)); d < away {
			side, away = i, d
		}
	}
	return side, away
}

// foot is the point of a side nearest to p.
func foot(p, a, b figure.Point) figure.Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	l := dx*dx + dy*dy
	if l == 0 {
		return a
	}
	t := min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/l, 0), 1)
	return figure.Point{X: a.X + t*dx, Y: a.Y + t*dy}
}

// holds tells whether a point lies inside, by the even-odd rule.
func (c contour) holds(p figure.Point) bool {
	in := false
	for i := range c {
		a, b := c.side(i)
		if (a.Y <= p.Y) != (b.Y <= p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// span is the widest stretch inside along the level line at y.
func (c contour) span(y float64) (left, right float64) {
	var xs []float64
	for i := range c {
		a, b := c.side(i)
		if (a.Y <= y) != (b.Y <= y) {
			xs = append(xs, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
		}
	}
	slices.Sort(xs)
	for i := 1; i < len(xs); i += 2 {
		if xs[i]-xs[i-1] > right-left {
			left, right = xs[i-1], xs[i]
		}
	}
	return left, right
}

// clear tells whether a whole box lies inside, its corners and the middles of
// its sides taken for all of it.
func (c contour) clear(b figure.Box) bool {
	x, y := (b.Left+b.Right)/2, (b.Top+b.Bottom)/2
	for _, p := range []figure.Point{
		{X: b.Left, Y: b.Top}, {X: x, Y: b.Top}, {X: b.Right, Y: b.Top}, {X: b.Left, Y: y}, {X: b.Right, Y: y},
		{X: b.Left, Y: b.Bottom}, {X: x, Y: b.Bottom}, {X: b.Right, Y: b.Bottom},
	} {
		if !c.holds(p) {
			return false
		}
	}
	return true
}

// along is the direction of the outline about a point near it, taken over a
// stretch of the given length to either side, and the unit vector that points
// out of the outline there.
func (c contour) along(p figure.Point, stretch float64) (direction, outward figure.Point) {
	i, _ := c.nearest(p)
	a, b := c.side(i)
	q := foot(p, a, b)
	from, to := c.walk(q, i, stretch, -1, true), c.walk(q, i, stretch, 1, true)
	l := distance(from, to)
	if l == 0 {
		return figure.Point{X: 1}, figure.Point{Y: -1}
	}
	d := figure.Point{X: (to.X - from.X) / l, Y: (to.Y - from.Y) / l}
	n := figure.Point{X: d.Y, Y: -d.X}
	if c.holds(figure.Point{X: q.X + n.X*0.2, Y: q.Y + n.Y*0.2}) {
		n = figure.Point{X: -n.X, Y: -n.Y}
	}
	return d, n
}

// walk is the point reached from q on side i after a way along the outline,
// stopping at a sharp corner if asked to.
func (c contour) walk(q figure.Point, i int, way float64, step int, stop bool) figure.Point {
	n := len(c)
	for range n {
		a, b := c.side(i)
		end := b
		if step < 0 {
			end = a
		}
		l := distance(q, end)
		if l >= way {
			return figure.Point{X: q.X + (end.X-q.X)*way/l, Y: q.Y + (end.Y-q.Y)*way/l}
		}
		next := ((i+step)%n + n) % n
		if stop && sharp(c, i, next) {
			return end
		}
		way, q, i = way-l, end, next
	}
	return q
}

// sharp tells whether two neighbouring sides turn by more than 30 degrees: the
// end of an edge, not a bend in it.
func sharp(c contour, i, j int) bool {
	a, b := c.side(i)
	d, e := c.side(j)
	u, v := figure.Point{X: b.X - a.X, Y: b.Y - a.Y}, figure.Point{X: e.X - d.X, Y: e.Y - d.Y}
	dot, l := u.X*v.X+u.Y*v.Y, math.Hypot(u.X, u.Y)*math.Hypot(v.X, v.Y)
	return dot < l*math.Cos(math.Pi/6)
}
