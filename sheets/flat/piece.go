package flat

import (
	"math"
	"slices"
	"strings"

	"bodkin/process"
)

// foldEdge is what the plan calls the seam of an edge on the fold.
const foldEdge = "fold"

// cloth is a piece on its way into the drawing: its sides as they are cut, drawn in
// where they are gathered.
type cloth struct {
	process.Piece
	sides []Side
	lines []Line
	fold  int // side on the fold, -1 where none
	mid   int // side that lies on the middle: on the fold, or straight and sewn to its own mirror image
	bent  int // side that is sewn to its own mirror image and is not straight
}

func newCloth(p process.Piece) (*cloth, bool) {
	c := &cloth{Piece: p, fold: -1, mid: -1, bent: -1}
	n := len(p.Edges)
	for k, e := range p.Edges {
		from, to := e.Begins, len(p.Net)
		if k+1 < n {
			to = p.Edges[k+1].Begins
		}
		if from < 0 || to <= from || to > len(p.Net) {
			return nil, false // of a plan that does not tell where edges begin
		}
		c.sides = append(c.sides, Side{Edge: e.Name, To: e.Length, Points: append(slices.Clone(p.Net[from:to]), p.Net[to%len(p.Net)])})
		if e.Seam == foldEdge {
			c.fold, c.mid = k, k
		}
	}
	for _, d := range p.Drawn {
		c.lines = append(c.lines, Line{Kind: d.Kind, Name: d.Name, From: d.From, To: d.To})
	}
	return c, n > 0
}

func (c *cloth) side(edge string) (Side, bool) {
	k := slices.IndexFunc(c.sides, func(s Side) bool { return s.Edge == edge })
	if k < 0 {
		return Side{}, false
	}
	return c.sides[k], true
}

func (c *cloth) outline() []process.Point { return Shape{Sides: c.sides}.Outline() }

// area is twice... signed, mm²: above 0 where the outline runs clockwise on the page.
func area(line []process.Point) float64 {
	sum := 0.0
	for i, a := range line {
		b := line[(i+1)%len(line)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum / 2
}

func (c *cloth) whole() float64 {
	a := math.Abs(area(c.outline()))
	if c.fold >= 0 {
		a *= 2
	}
	return a
}

// inside is a point well within: the middle of the outline's box is enough to tell
// which side of a fold the cloth lies on.
func (c *cloth) middle() process.Point {
	b := boxOf(c.outline())
	return process.Point{X: (b[0] + b[2]) / 2, Y: (b[1] + b[3]) / 2}
}

// boxOf is left, top, right, bottom.
func boxOf(line []process.Point) [4]float64 {
	b := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range line {
		b = [4]float64{min(b[0], p.X), min(b[1], p.Y), max(b[2], p.X), max(b[3], p.Y)}
	}
	return b
}

// drawIn takes a stretch of the outline in to a part of its length, and what lies
// away from it the less the further it lies, down to nothing at the far end. What
// lies on the middle, or is open there, stays.
func (c *cloth) drawIn(points []process.Point, part float64, open bool) {
	a, b := points[0], points[len(points)-1]
	l := distance(a, b)
	if l == 0 {
		return
	}
	ux, uy := (b.X-a.X)/l, (b.Y-a.Y)/l
	mx, my := (a.X+b.X)/2, (a.Y+b.Y)/2
	if open {
		mx, my = a.X, a.Y
		if b.X < a.X {
			mx, my = b.X, b.Y
		}
	}
	if c.mid >= 0 {
		f := c.sides[c.mid].Points
		d, e := distance(f[0], a), distance(f[0], b)
		mx, my = a.X, a.Y
		if g := f[len(f)-1]; min(e, distance(g, b)) < min(d, distance(g, a)) {
			mx, my = b.X, b.Y
		}
	}
	far := 1e-9
	for _, p := range c.outline() {
		far = max(far, math.Abs((p.Y-my)*ux-(p.X-mx)*uy))
	}
	by := func(p process.Point) process.Point {
		along, off := (p.X-mx)*ux+(p.Y-my)*uy, (p.Y-my)*ux-(p.X-mx)*uy
		along *= part + (1-part)*min(math.Abs(off)/far, 1)
		return process.Point{X: mx + along*ux - off*uy, Y: my + along*uy + off*ux}
	}
	for k := range c.sides {
		c.sides[k].Points = moved(c.sides[k].Points, by)
	}
	for k, d := range c.lines {
		c.lines[k].From, c.lines[k].To = by(d.From), by(d.To)
	}
}

// lies is the piece where a motion brings it.
func (c *cloth) lies(m motion, inside bool) Shape {
	s := Shape{Piece: c.Name, Inside: inside, Opened: c.fold >= 0, twice: c.fold >= 0 || c.Cut == "pair"}
	for _, d := range c.sides {
		d.Points = moved(d.Points, m.point)
		if s.Opened && d.Edge == c.sides[c.fold].Edge {
			d.Edge = ""
		}
		s.Sides = append(s.Sides, d)
	}
	for _, l := range c.lines {
		l.From, l.To = m.point(l.From), m.point(l.To)
		s.Lines = append(s.Lines, l)
	}
	return s
}

// view is where a piece is seen.
type view int

const (
	either view = iota
	front
	back
)

// viewOf reads from a piece's name or title where it is seen.
func (w Words) viewOf(p process.Piece) view {
	says := func(word string) bool {
		return word != "" && (strings.Contains(strings.ToLower(p.Name), word) || strings.Contains(strings.ToLower(p.Title), word))
	}
	switch f, b := says(w.Front), says(w.Back); {
	case f && !b:
		return front
	case b && !f:
		return back
	}
	return either
}

// Words are those by which a piece is known as one of the front or the back, in
// small letters.
type Words struct{ Front, Back string }
