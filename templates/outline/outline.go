package outline

import (
	"fmt"
	"math"
	"strings"
)

// Outline is a closed shape: edges in order, each starting where the one before
// ends. Make it with [New], which refuses what is not a shape.
type Outline struct{ Edges []Edge }

// ShapeError says what is wrong with an outline or its cut line, and at which
// edges.
type ShapeError struct {
	Edges []string
	What  string
	At    Point
}

func (e *ShapeError) Error() string {
	quoted := make([]string, len(e.Edges))
	for i, name := range e.Edges {
		quoted[i] = fmt.Sprintf("%q", name)
	}
	return fmt.Sprintf("edge %s: %s (near %.1f, %.1f mm)", strings.Join(quoted, " and "), e.What, e.At.X, e.At.Y)
}

const (
	// gap is the distance up to which two ends count as one place, mm.
	gap = 1e-6
	// shortest is the length below which an edge is held for a mistake, mm.
	shortest = 0.1
	// crossingTolerance is how finely an outline is flattened to look for
	// crossings, mm: far below the width of a drawn line.
	crossingTolerance = 0.02
)

// New returns the outline of these edges, run anticlockwise whichever way they
// came: given clockwise, the whole is reversed, first edge kept first. It
// returns a [*ShapeError] where an edge is nameless, named twice, empty, shorter
// than 0.1 mm or not finite, where two edges do not meet, where the outline
// crosses itself, or where it encloses nothing.
func New(edges ...Edge) (Outline, error) {
	if len(edges) == 0 {
		return Outline{}, &ShapeError{What: "there are no edges"}
	}
	seen := map[string]bool{}
	for i, e := range edges {
		if err := sound(e, seen); err != nil {
			return Outline{}, err
		}
		seen[e.Name] = true
		before := edges[(i+len(edges)-1)%len(edges)]
		if len(before.Segments) > 0 && before.To().Distance(e.From()) > gap {
			return Outline{}, &ShapeError{[]string{before.Name, e.Name}, "the end of the one is not the start of the other", e.From()}
		}
	}
	o := Outline{edges}
	if err := o.simple(); err != nil {
		return Outline{}, err
	}
	if math.Abs(o.Area()) < shortest*shortest {
		return Outline{}, &ShapeError{[]string{edges[0].Name}, "the outline encloses nothing", edges[0].From()}
	}
	if o.Area() < 0 {
		o = o.Reverse()
	}
	return o, nil
}

// sound checks one edge by itself.
func sound(e Edge, seen map[string]bool) error {
	fail := func(what string, at Point) error { return &ShapeError{[]string{e.Name}, what, at} }
	switch {
	case e.Name == "":
		return fail("an edge has no name", Point{})
	case len(e.Segments) == 0:
		return fail("it has no segments", Point{})
	case seen[e.Name]:
		return fail("two edges have this name", e.From())
	}
	for i, s := range e.Segments {
		if s.degree < 1 {
			return fail("a segment of it is empty", Point{})
		}
		for _, p := range s.p {
			if !p.finite() {
				return fail("a point of it is not a finite number", Point{})
			}
		}
		if i > 0 && e.Segments[i-1].To().Distance(s.From()) > gap {
			return fail("its segments do not join", s.From())
		}
		if s.reach() < gap {
			return fail("a segment of it has no length", s.From())
		}
	}
	if l := e.Length(); l < shortest {
		return fail(fmt.Sprintf("it is only %.3f mm long", l), e.From())
	}
	return nil
}

// Edge returns the edge of that name, and false where there is none.
func (o Outline) Edge(name string) (Edge, bool) {
	for _, e := range o.Edges {
		if e.Name == name {
			return e, true
		}
	}
	return Edge{}, false
}

// Corner is a place where two edges meet.
type Corner struct {
	At            Point
	Before, After string  // edges in the outline's order
	Inside        float64 // degrees within the shape: 90 for a square corner, over 180 where it is hollow
}

// Corners returns where each edge ends and the next begins, in order; the last
// closes the outline.
func (o Outline) Corners() []Corner {
	corners := make([]Corner, len(o.Edges))
	for i, e := range o.Edges {
		next := o.Edges[(i+1)%len(o.Edges)]
		turn := degrees(angle(e.Segments[len(e.Segments)-1].Tangent(1), next.Segments[0].Tangent(0)))
		corners[i] = Corner{e.To(), e.Name, next.Name, 180 - turn}
	}
	return corners
}

// Perimeter returns the length all round, mm.
func (o Outline) Perimeter() float64 {
	var sum float64
	for _, e := range o.Edges {
		sum += e.Length()
	}
	return sum
}

// Area returns the enclosed area, mm², positive for an anticlockwise outline,
// exact but for rounding.
func (o Outline) Area() float64 {
	if len(o.Edges) == 0 {
		return 0
	}
	origin := o.Edges[0].From() // near the shape, so that no digits cancel
	var twice float64
	for _, e := range o.Edges {
		for _, s := range e.Segments {
			s = s.Map(func(p Point) Point { return p.Sub(origin) })
			if s.arc() {
				twice += s.sectorTwice()
				continue
			}
			x, y := s.polynomials()
			turn := x.times(y.derivative()).plus(-1, y.times(x.derivative()))
			for k, c := range turn {
				twice += c / float64(k+1)
			}
		}
	}
	return twice / 2
}

// Box is an upright rectangle.
type Box struct{ Min, Max Point }

// Width returns the extent along x, mm.
func (b Box) Width() float64 { return b.Max.X - b.Min.X }

// Height returns the extent along y, mm.
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

func (b Box) with(p Point) Box {
	return Box{
		Point{min(b.Min.X, p.X), min(b.Min.Y, p.Y)},
		Point{max(b.Max.X, p.X), max(b.Max.Y, p.Y)},
	}
}

// Bounds returns the smallest upright box round the outline.
func (o Outline) Bounds() Box {
	b := o.Edges[0].Segments[0].Bounds()
	for _, e := range o.Edges {
		for _, s := range e.Segments {
			inner := s.Bounds()
			b = b.with(inner.Min).with(inner.Max)
		}
	}
	return b
}

// Flatten returns the outline as a polygon, first point not repeated, within
// tolerance mm of the true line.
func (o Outline) Flatten(tolerance float64) []Point {
	var line []Point
	for _, e := range o.Edges {
		part := e.Flatten(tolerance)
		line = append(line, part[:len(part)-1]...)
	}
	return line
}
