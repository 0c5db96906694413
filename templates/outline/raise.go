package outline

import (
	"fmt"
	"math"
)

// steps is into how many parts a curve is cut to draw its parallel, each part as
// a cubic with the curve's own directions at its ends. Of a quarter circle the
// parallel is then true to within a thousandth of the distance.
const steps = 8

// Raise returns the edges of a closed outline with one of them moved inwards by
// so many mm, along its parallel, and the two beside it cut off where they meet
// it. The edges may run either way round. Where the parallel does not meet an
// edge beside it, or closes up in a bend tighter than it is moved by, it returns
// a [*ShapeError].
func Raise(edges []Edge, name string, by float64) ([]Edge, error) {
	n := len(edges)
	k := 0
	for k < n && edges[k].Name != name {
		k++
	}
	if k == n || n < 3 {
		return nil, &ShapeError{[]string{name}, "there is no such edge between two others", Point{}}
	}
	if by == 0 {
		return edges, nil
	}
	inward := by
	if (Outline{edges}).Area() < 0 {
		inward = -by
	}
	moved, err := parallel(edges[k], inward)
	if err != nil {
		return nil, err
	}
	out := make([]Edge, n)
	copy(out, edges)
	before, after := (k+n-1)%n, (k+1)%n
	cut, rest, err := meetParallel(edges[before].Reverse(), moved)
	if err != nil {
		return nil, err
	}
	out[before], moved = rest.Reverse(), cut
	cut, rest, err = meetParallel(edges[after], moved.Reverse())
	if err != nil {
		return nil, err
	}
	out[after], out[k] = rest, cut.Reverse()
	return out, nil
}

// parallel draws the line that lies so far to the left of an edge.
func parallel(e Edge, left float64) (Edge, error) {
	out := Edge{Name: e.Name}
	aside := func(s Segment, t float64) Point { return s.At(t).Add(s.Tangent(t).right().Scale(-left)) }
	for _, s := range e.Segments {
		if s.degree == 1 {
			out.Segments = append(out.Segments, Line(aside(s, 0), aside(s, 1)))
			continue
		}
		if s.LeastRadius() <= math.Abs(left) {
			return out, &ShapeError{[]string{e.Name}, fmt.Sprintf("it bends too tightly to be moved by %.1f mm", math.Abs(left)), s.From()}
		}
		for i := range steps {
			a, b := float64(i)/steps, float64(i+1)/steps
			from, to := aside(s, a), aside(s, b)
			u, v := s.Tangent(a), s.Tangent(b)
			// The handle of an arc that turns as far between two such points.
			turn := angle(u, v)
			handle := from.Distance(to) / (3 * math.Pow(math.Cos(turn/4), 2))
			out.Segments = append(out.Segments, Cubic(from, from.Add(u.Scale(handle)), to.Sub(v.Scale(handle)), to))
		}
	}
	return out, nil
}

// meetParallel cuts an edge off where the line at the start of a parallel meets
// it, and lets the parallel start there. The edge is given as it runs away from
// the parallel's side.
func meetParallel(beside, moved Edge) (parallel, rest Edge, err error) {
	from, u := moved.From(), moved.Segments[0].Tangent(0)
	off := func(d float64) float64 {
		at, _ := beside.At(d)
		return u.Cross(at.Sub(from))
	}
	a, b := 0.0, beside.Length()
	if off(a)*off(b) >= 0 {
		return moved, beside, &ShapeError{[]string{moved.Name, beside.Name}, "moved inwards the one does not meet the other", from}
	}
	for range 60 {
		if m := (a + b) / 2; off(a)*off(m) <= 0 {
			b = m
		} else {
			a = m
		}
	}
	_, rest, ok := beside.SplitAt(a)
	if !ok {
		return moved, beside, &ShapeError{[]string{beside.Name}, "nothing is left of it", from}
	}
	start := rest.From()
	parallel = Edge{Name: moved.Name, Segments: append([]Segment{}, moved.Segments...)}
	first := parallel.Segments[0]
	switch {
	case start.Distance(from) <= gap:
		parallel.Segments[0] = first.startingAt(start)
	case first.degree == 1:
		parallel.Segments[0] = Line(start, first.To())
	case start.Sub(from).Dot(u) < 0:
		parallel.Segments = append([]Segment{Line(start, from)}, parallel.Segments...)
	default:
		d, away := parallel.Nearest(start)
		_, after, ok := parallel.SplitAt(d)
		if !ok || away > 1 {
			return moved, beside, &ShapeError{[]string{moved.Name, beside.Name}, "moved inwards the one does not meet the other", from}
		}
		after.Segments[0] = after.Segments[0].startingAt(start)
		parallel = after
	}
	return parallel, rest, nil
}

// startingAt returns the segment with its start put where another ends, which is
// next to it.
func (s Segment) startingAt(p Point) Segment {
	s.p[0] = p
	return s
}
