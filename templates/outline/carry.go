package outline

import (
	"fmt"
	"math"
	"slices"
)

// Marks are what is drawn on a net piece besides its edges.
type Marks struct {
	Notches []Notch
	Darts   []DartMark
	Drills  []Drill
	Grain   Point // direction on the piece; the zero vector draws no grain line
}

// Notch is a place on an edge that is matched with another.
type Notch struct {
	Name  string
	Place Spot
}

// DartMark is a dart or, with its point far away, a pleat: two legs from the
// ends of its mouth on the net line to its point.
type DartMark struct {
	Name  string
	Ends  [2]Point
	Point Point
}

// Drill is a point inside the piece that is marked by a hole or a thread.
type Drill struct {
	Name string
	At   Point
}

// Stroke is a straight line to draw on a cut piece.
type Stroke struct {
	Name     string
	From, To Point
}

// Carried are the marks of a piece as they lie on the cut piece.
type Carried struct {
	Notches []Stroke // from the cut line square in to the net line
	Legs    []Stroke // two a dart, from the cut line to its point
	Drills  []Drill
	Folds   []Stroke // of edges on the fold, and the lines that straight turned edges turn on, out to the cut line
	Grain   Stroke   // the longest line inside the net piece along the grain, a tenth shorter at either end
}

// Carry brings the marks of a net piece out onto its cut piece. It returns a
// [*ShapeError] with the name of the edge or the mark where there is no such
// edge or place, or where a point lies outside the piece.
func (o Outline) Carry(cut CutLine, allowances []Allowance, m Marks) (Carried, error) {
	if len(cut) != len(o.Edges) || len(allowances) != len(o.Edges) {
		return Carried{}, fmt.Errorf("%d cut edges and %d allowances for %d edges", len(cut), len(allowances), len(o.Edges))
	}
	var c Carried
	line := cut.Points()
	net := o.Flatten(crossingTolerance)
	for _, n := range m.Notches {
		k := o.index(n.Place.Edge)
		if k < 0 || !(n.Place.At >= 0 && n.Place.At <= o.Edges[k].Length()+gap) {
			return Carried{}, &ShapeError{Edges: []string{n.Place.Edge}, What: fmt.Sprintf("the notch %q at %.1f mm is not on it", n.Name, n.Place.At)}
		}
		at, along := o.Edges[k].At(n.Place.At)
		out := at
		if allowances[k].Width > 0 {
			out = produced(line, at, along.right())
		}
		c.Notches = append(c.Notches, Stroke{n.Name, out, at})
	}
	for _, d := range m.Darts {
		if !inside(net, d.Point) {
			return Carried{}, &ShapeError{[]string{d.Name}, "its point lies outside the piece", d.Point}
		}
		for _, end := range d.Ends {
			c.Legs = append(c.Legs, Stroke{d.Name, produced(line, end, end.Sub(d.Point)), d.Point})
		}
	}
	for _, d := range m.Drills {
		if !inside(net, d.At) {
			return Carried{}, &ShapeError{[]string{d.Name}, "it lies outside the piece", d.At}
		}
		c.Drills = append(c.Drills, d)
	}
	for k, e := range o.Edges {
		switch bent, _ := e.Turning(); {
		case allowances[k].Manner == Folded:
			points := cut[k].Points
			c.Folds = append(c.Folds, Stroke{e.Name, points[0], points[len(points)-1]})
		case allowances[k].Manner == Turned && bent < 1e-6:
			from, start := e.At(0)
			to, end := e.At(e.Length())
			c.Folds = append(c.Folds, Stroke{e.Name, produced(line, from, start.Scale(-1)), produced(line, to, end)})
		}
	}
	if m.Grain != (Point{}) {
		a, b := longest(net, m.Grain.Unit())
		c.Grain = Stroke{"grain", a.Toward(b, 0.1), b.Toward(a, 0.1)}
	}
	return c, nil
}

// produced is where a ray first meets a polygon; where it does not, the ray
// lies on the line already and its start stays.
func produced(line []Point, from, along Point) Point {
	if clearanceOf(line, from) < gap {
		return from
	}
	box := Box{from, from}
	for _, p := range line {
		box = box.with(p)
	}
	far := from.Add(along.Unit().Scale(box.Width() + box.Height() + 1))
	best, away := from, math.Inf(1)
	for i, a := range line {
		p, ok := intersect(from, far, a, line[(i+1)%len(line)])
		if d := p.Distance(from); ok && d > gap && d < away {
			best, away = p, d
		}
	}
	return best
}

// clearanceOf is the distance of a place from a closed line.
func clearanceOf(line []Point, p Point) float64 {
	least := math.Inf(1)
	for i, a := range line {
		least = min(least, clearance(p, a, line[(i+1)%len(line)]))
	}
	return least
}

// longest returns the longest stretch inside a polygon along a direction, as far
// as 64 lines evenly spaced across it tell.
func longest(line []Point, along Point) (a, b Point) {
	across := along.right()
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range line {
		lo, hi = min(lo, p.Dot(across)), max(hi, p.Dot(across))
	}
	const lines = 64
	var best float64
	for k := range lines {
		x := lo + (hi-lo)*(float64(k)+0.5)/lines
		var met []float64
		for i, p := range line {
			q := line[(i+1)%len(line)]
			px, qx := p.Dot(across), q.Dot(across)
			if (px > x) != (qx > x) {
				met = append(met, p.Toward(q, (x-px)/(qx-px)).Dot(along))
			}
		}
		slices.Sort(met)
		for i := 0; i+1 < len(met); i += 2 {
			if d := met[i+1] - met[i]; d > best {
				best = d
				a = across.Scale(x).Add(along.Scale(met[i]))
				b = across.Scale(x).Add(along.Scale(met[i+1]))
			}
		}
	}
	return a, b
}
