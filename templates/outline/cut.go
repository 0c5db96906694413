package outline

import (
	"fmt"
	"math"
)

// Manner says how an allowance lies when the piece is made up, which decides
// the shape of its corners.
type Manner int

const (
	// Plain allowances run on straight past the corner until they meet.
	Plain Manner = iota
	// Turned allowances fold back onto the piece along their edge, as a hem
	// does: at their ends the cut line is the neighbour's cut line mirrored in
	// the edge, so that the turned part lies flat however the neighbour slants.
	// Where two turned edges meet, the corner is mitred.
	Turned
	// Folded edges lie on the fold of the cloth: nothing is added and the
	// neighbours' cut lines end on the fold produced.
	Folded
)

// Allowance is what is added outside one edge.
type Allowance struct {
	Width  float64 // mm, 0 or more; 0 for a folded edge
	Manner Manner
	Mitre  float64 // mm, of the seam that joins two turned edges at a corner; 0 where they only touch
	First  bool    // a turned edge that is finished before those beside it are turned over its ends: no corner is mitred
}

// CutEdge is the cut line along one edge, as a polyline.
type CutEdge struct {
	Name   string
	Points []Point // from corner to corner, ends shared with the neighbours
}

// CutLine is the line to cut on: one polyline for each edge of the outline, in
// the outline's order, running anticlockwise.
type CutLine []CutEdge

const (
	// cutTolerance is how closely the polyline keeps to the true parallel, mm.
	cutTolerance = 0.05
	// mitreLimit is how far from the corner two produced lines may meet, in
	// allowances; beyond it the corner is blunted. 3 is an angle of 39 degrees.
	mitreLimit = 3
	// widest is the greatest allowance taken, mm.
	widest = 1000
)

// Cut returns the cut line: each edge moved outward by its own allowance, given
// in the outline's order of edges. Corners are squared (both lines produced
// until they meet) and blunted where they would run out to a long point; where
// allowances of different widths meet on a nearly straight line the cut line
// steps; a [Turned] edge mirrors its neighbours; two turned edges that meet are
// mitred, on the directions in which they reach the corner. It returns a
// [*ShapeError] naming the edges where an allowance is not a number from 0 to
// 1000, where a corner cannot be formed, or where the cut line would cross
// itself.
func (o Outline) Cut(allowances []Allowance) (CutLine, error) {
	if len(allowances) != len(o.Edges) {
		return nil, fmt.Errorf("%d allowances for %d edges", len(allowances), len(o.Edges))
	}
	var runs []*run
	for i, e := range o.Edges {
		a := allowances[i]
		if !(a.Width >= 0 && a.Width <= widest && a.Mitre >= 0 && a.Mitre <= widest) || a.Manner == Folded && a.Width != 0 {
			return nil, &ShapeError{[]string{e.Name}, fmt.Sprintf("an allowance of %g mm cannot be cut here", a.Width), e.From()}
		}
		smooth, err := smoothRuns(i, e, a)
		if err != nil {
			return nil, err
		}
		runs = append(runs, smooth...)
	}
	for i, r := range runs {
		if err := corner(r, runs[(i+1)%len(runs)]); err != nil {
			return nil, err
		}
	}
	cut := make(CutLine, len(o.Edges))
	for i, e := range o.Edges {
		cut[i].Name = e.Name
	}
	for _, r := range runs {
		cut[r.edge].Points = appendNew(cut[r.edge].Points, r.line...)
	}
	for i := range cut {
		cut[i].Points = straighten(cut[i].Points)
	}
	return cut, cut.check(o)
}

// Points returns the whole line as a polygon, first point not repeated.
func (c CutLine) Points() []Point {
	var all []Point
	for _, e := range c {
		all = appendNew(all, e.Points...)
	}
	if len(all) > 1 && all[0].Distance(all[len(all)-1]) < gap {
		all = all[:len(all)-1]
	}
	return all
}

// Area returns the area to be cut, mm².
func (c CutLine) Area() float64 {
	points := c.Points()
	var twice float64
	for i, p := range points {
		q := points[(i+1)%len(points)]
		twice += p.Sub(points[0]).Cross(q.Sub(points[0]))
	}
	return twice / 2
}

// Bounds returns the smallest upright box round the cut line.
func (c CutLine) Bounds() Box {
	b := Box{c[0].Points[0], c[0].Points[0]}
	for _, e := range c {
		for _, p := range e.Points {
			b = b.with(p)
		}
	}
	return b
}

// check refuses a cut line that crosses itself or does not go outward.
func (c CutLine) check(o Outline) error {
	var strokes []stroke
	for _, e := range c {
		for i := range len(e.Points) - 1 {
			strokes = append(strokes, stroke{e.Points[i], e.Points[i+1], e.Name})
		}
	}
	if one, other, at, crossed := firstCrossing(strokes); crossed {
		names := []string{one}
		if other != one {
			names = append(names, other)
		}
		return &ShapeError{names, "the cut line crosses itself: the allowance is too wide for the shape here", at}
	}
	if c.Area() < o.Area()-cutTolerance*o.Perimeter()-1 {
		return &ShapeError{[]string{c[0].Name}, "the cut line lies inside the shape", c[0].Points[0]}
	}
	return nil
}

// appendNew appends points that differ from the one before.
func appendNew(line []Point, points ...Point) []Point {
	for _, p := range points {
		if len(line) == 0 || line[len(line)-1].Distance(p) > gap {
			line = append(line, p)
		}
	}
	return line
}

// straighten drops the points that lie on a straight line between others.
func straighten(line []Point) []Point {
	kept := line[:1:1]
	for i := 1; i < len(line); i++ {
		if i+1 < len(line) {
			u, v := line[i].Sub(kept[len(kept)-1]).Unit(), line[i+1].Sub(line[i]).Unit()
			if math.Abs(u.Cross(v)) < 1e-9 && u.Dot(v) > 0 {
				continue
			}
		}
		kept = append(kept, line[i])
	}
	return kept
}

// run is the cut line along a part of an edge that has no corner in it.
type run struct {
	edge       int
	name       string
	allowance  Allowance
	from, to   Point // on the net line
	start, end Point // directions there
	line       []Point
	mitred     int // strokes at its one end that belong to a mitre and not to the parallel
}

// smoothRuns divides an edge at its corners and moves each part outward.
func smoothRuns(index int, e Edge, a Allowance) ([]*run, error) {
	var runs []*run
	backward := false
	for i, s := range e.Segments {
		if i == 0 || math.Abs(e.corner(i)) > kink {
			runs = append(runs, &run{
				edge: index, name: e.Name, allowance: a,
				from: s.From(), start: s.Tangent(0),
			})
		}
		r := runs[len(runs)-1]
		r.to, r.end = s.To(), s.Tangent(1)
		line, back := s.offset(a.Width, cutTolerance)
		r.line = appendNew(r.line, line...)
		backward = backward || back
	}
	untangled := false
	for _, r := range runs {
		before := len(r.line)
		r.line = untangle(r.line)
		untangled = untangled || len(r.line) != before
	}
	if backward && !untangled {
		return nil, &ShapeError{[]string{e.Name}, fmt.Sprintf("its hollow, of radius %.0f mm, is too tight for an allowance of %g mm", e.LeastRadius(), a.Width), e.From()}
	}
	return runs, nil
}

// untangle removes the loops that a parallel makes where its distance is more
// than the radius of a hollow bend: it goes straight on where the line meets
// itself.
func untangle(line []Point) []Point {
	for i := 0; i+2 < len(line); i++ {
		for j := len(line) - 2; j > i+1; j-- {
			if i == 0 && j == len(line)-2 && line[0].Distance(line[j+1]) < gap {
				continue // an edge that runs all the way round ends where it starts
			}
			if apart(stroke{a: line[i], b: line[i+1]}, stroke{a: line[j], b: line[j+1]}) {
				continue
			}
			if p, ok := intersect(line[i], line[i+1], line[j], line[j+1]); ok {
				rest := append([]Point{p}, line[j+1:]...)
				line = append(line[:i+1:i+1], rest...)
				break
			}
		}
	}
	return line
}
