package outline

import (
	"fmt"
	"math"
	"slices"
)

// Slash is a straight cut across a piece from a place on one edge to a place on
// another, at which the part after it, as the outline runs, is moved away.
type Slash struct {
	From, To Spot
	// Open is how far the cut opens at either end, mm: alike for a pleat, one of
	// them 0 for a wedge of fullness, different for a pleat that tapers.
	OpenFrom, OpenTo float64
}

// Spot is a place on an edge.
type Spot struct {
	Edge string
	At   float64 // mm along it
}

// Spread slashes the piece and spreads it: the part that follows From as the
// outline runs, up to To, is turned and shifted so that the cut opens by the
// given widths; new straight lines across the opening join the edges, which keep
// their names. The fixed part stays where it is. A wedge turns about its closed
// end. It returns a [*ShapeError] where there is no such edge or place, where
// the cut is not inside the piece, where it would open by less than nothing or
// by widths that no rigid move can give, or where the result crosses itself.
func (o Outline) Spread(s Slash) (Outline, error) {
	fail := func(what string) (Outline, error) {
		return Outline{}, &ShapeError{Edges: []string{s.From.Edge, s.To.Edge}, What: what}
	}
	i, j := o.index(s.From.Edge), o.index(s.To.Edge)
	if i < 0 || j < 0 || i == j {
		return fail("a slash goes from one edge to another")
	}
	first, moved, okA := o.Edges[i].SplitAt(s.From.At)
	reaching, last, okB := o.Edges[j].SplitAt(s.To.At)
	if !okA || !okB {
		return fail(fmt.Sprintf("there is no place %.1f and %.1f mm along them", s.From.At, s.To.At))
	}
	p, q := moved.From(), reaching.To()
	if !(s.OpenFrom >= 0 && s.OpenTo >= 0) || math.IsInf(s.OpenFrom+s.OpenTo, 1) {
		return fail("a slash cannot open by less than nothing")
	}
	if !o.within(p, q) {
		return fail("the slash does not stay inside the piece")
	}
	move, ok := opening(p, q, s.OpenFrom, s.OpenTo)
	if !ok {
		return fail("the slash cannot open so unequally")
	}
	// from the place on the first edge on: the moved part, then the fixed one
	n := len(o.Edges)
	var edges []Edge
	gone := func(e Edge) Edge { return e.Map(move) }
	moved, reaching = gone(moved), gone(reaching)
	start := Edge{Name: first.Name, Segments: slices.Concat(first.Segments, across(p, moved.From()), moved.Segments)}
	finish := Edge{Name: last.Name, Segments: slices.Concat(reaching.Segments, across(reaching.To(), q), last.Segments)}
	edges = append(edges, start)
	for k := (i + 1) % n; k != j; k = (k + 1) % n {
		edges = append(edges, gone(o.Edges[k]))
	}
	edges = append(edges, finish)
	for k := (j + 1) % n; k != i; k = (k + 1) % n {
		edges = append(edges, o.Edges[k])
	}
	// the edges keep the order of the piece
	at := slices.IndexFunc(edges, func(e Edge) bool { return e.Name == o.Edges[0].Name })
	return New(slices.Concat(edges[at:], edges[:at])...)
}

// across is the line over an opening, none where it is shut.
func across(a, b Point) []Segment {
	if a.Distance(b) < gap {
		return nil
	}
	return []Segment{Line(a, b)}
}

// opening is the move that takes the part on the right of the line from p to q
// so far away from it at either end: a turn about the place where the opening
// would shut, or a shift where it is alike at both.
func opening(p, q Point, atP, atQ float64) (func(Point) Point, bool) {
	long := p.Distance(q)
	out := q.Sub(p).Unit().right()
	sin := (atQ - atP) / (2 * long) // of half the turn
	switch {
	case atP == atQ:
		return func(x Point) Point { return x.Add(out.Scale(atP)) }, true
	case math.Abs(sin) >= math.Sqrt2/2:
		return nil, false
	}
	// every point moves by 2 r sin(turn/2), so the widths grow along the line
	// from the centre, which lies on it beyond the narrower end
	pivot := p.Toward(q, atP/(atP-atQ))
	turn := -2 * degrees(math.Asin(sin))
	return func(x Point) Point { return x.Rotate(pivot, turn) }, true
}

// index returns the place of an edge in the outline, or -1.
func (o Outline) index(name string) int {
	return slices.IndexFunc(o.Edges, func(e Edge) bool { return e.Name == name })
}

// within reports whether the straight line between two places on the outline
// stays inside, its ends left out.
func (o Outline) within(p, q Point) bool {
	line := o.Flatten(crossingTolerance)
	const hair = 0.5 // mm at either end, far more than the flattened line is off
	short := hair / max(p.Distance(q), 2*hair)
	a, b := p.Toward(q, short), q.Toward(p, short)
	for i, c := range line {
		if _, crossed := intersect(a, b, c, line[(i+1)%len(line)]); crossed {
			return false
		}
	}
	return inside(line, a.Toward(b, 0.5))
}

// inside reports whether a place lies in a polygon, by the even-odd rule.
func inside(line []Point, p Point) bool {
	in := false
	for i, a := range line {
		b := line[(i+1)%len(line)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}
