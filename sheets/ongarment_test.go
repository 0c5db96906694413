package sheets

import (
	"math"
	"slices"
	"testing"

	"bodkin/process"
	"bodkin/sheets/figure"
	"bodkin/sheets/flat"
)

func laidOut(t *testing.T, n named) flat.Garment {
	t.Helper()
	c := newComposer(n.plan, Options{})
	g, ok := c.laidFlat()
	if !ok {
		t.Fatalf("%s does not lie flat: %.2f of it is covered", n.name, g.Overlap)
	}
	return g
}

// Every garment lies flat, and one sees where each of its seams is.
func TestOnTheGarment(t *testing.T) {
	all := ofEveryGarment(t)
	t.Run("every seam is seen", func(t *testing.T) { everySeamIsSeen(t, all) })
	t.Run("seams are heavy", func(t *testing.T) { seamsAreHeavy(t, all) })
	t.Run("joined edges meet", func(t *testing.T) { joinedEdgesMeet(t, all) })
}

// Of every garment, laid flat, each edge of each seam is drawn in front, behind or
// beside, all of its length; or, of a band or collar, as a strip along the edge of the
// garment that it is sewn to. What is drawn heavy lies on the outline of its piece.
func everySeamIsSeen(t *testing.T, all []named) {
	for _, n := range all {
		g := laidOut(t, n)
		shapes := slices.Concat(g.Front, g.Back, g.Loose)
		for _, s := range n.plan.Seams {
			strip := slices.ContainsFunc(shapes, func(x flat.Shape) bool { return x.Strip == s.Name })
			for _, p := range n.plan.Pieces {
				for _, e := range p.Edges {
					if e.Seam != s.Name || strip && slices.Contains(s.Course.Own, p.Name) {
						continue
					}
					if seen := seenOf(shapes, p.Name, e.Name); seen < e.Length-1e-6 {
						t.Errorf("%s: of %s, %.0f mm of %s, %.0f are seen", n.name, s.Name, e.Length, p.Name+"."+e.Name, seen)
					}
				}
			}
			for _, x := range shapes {
				for _, line := range g.On(x, s.Name) {
					for _, q := range line {
						if x.Strip == "" && away(x, q) > 1e-6 {
							t.Errorf("%s: %s is drawn %.1f mm off the outline of %s", n.name, s.Name, away(x, q), x.Piece)
						}
					}
				}
			}
		}
	}
}

// seenOf is how much of an edge is drawn, each stretch once.
func seenOf(shapes []flat.Shape, piece, edge string) float64 {
	var seen [][2]float64
	for _, x := range shapes {
		for _, d := range x.Sides {
			if x.Piece == piece && d.Edge == edge {
				seen = append(seen, [2]float64{d.From, d.To})
			}
		}
	}
	slices.SortFunc(seen, func(a, b [2]float64) int { return int(math.Copysign(1, a[0]-b[0])) })
	sum, end := 0.0, 0.0
	for _, s := range seen {
		sum, end = sum+max(s[1]-max(s[0], end), 0), max(end, s[1])
	}
	return sum
}

// away is how far a point lies from a shape's outline and its lines.
func away(x flat.Shape, q process.Point) float64 {
	p, least := figure.Point{X: q.X, Y: q.Y}, math.Inf(1)
	try := func(a, b process.Point) {
		least = min(least, distance(p, foot(p, figure.Point{X: a.X, Y: a.Y}, figure.Point{X: b.X, Y: b.Y})))
	}
	for _, d := range x.Sides {
		for k := 1; k < len(d.Points); k++ {
			try(d.Points[k-1], d.Points[k])
		}
	}
	for _, l := range x.Lines {
		try(l.From, l.To)
	}
	return least
}

// A drawing has as many heavy lines as the seam has stretches on what is drawn, each
// as long at the drawing's scale: the figure hides none and adds none.
func seamsAreHeavy(t *testing.T, all []named) {
	measure := &measurer{}
	for _, n := range all {
		g := laidOut(t, n)
		c := newComposer(n.plan, Options{FiguresAt: "f/"})
		c.measure = measure
		for _, s := range n.plan.Seams {
			c.figures(c.whereFigure(s)...)
			var want, got, outline, drawn float64
			for _, x := range slices.Concat(g.Front, g.Back) {
				for _, line := range g.On(x, s.Name) {
					want += lineLength(line)
				}
				for _, d := range x.Sides {
					if d.Edge != "" || !x.Opened {
						outline += lineLength(d.Points)
					}
				}
			}
			if want == 0 || len(c.drawings) == 0 {
				continue
			}
			d := c.drawings[len(c.drawings)-1]
			if slices.ContainsFunc(g.Loose, func(x flat.Shape) bool { return len(g.On(x, s.Name)) > 0 }) {
				continue // more is drawn than the two views
			}
			for _, it := range d.Figure.Items {
				p, ok := it.(figure.Path)
				switch {
				case !ok || p.Closed:
				case p.Stroke.Width == whereLine || p.Stroke.Width == figure.Bold:
					got += strokeLength(p)
				case p.Stroke.Width == figure.Thin || len(p.Stroke.Dash) > 0:
					drawn += strokeLength(p)
				}
			}
			if math.Abs(got/drawn-want/outline) > 1e-3 {
				t.Errorf("%s: %s is %.4f of all outlines as drawn, %.4f as it lies", n.name, s.Name, got/drawn, want/outline)
			}
		}
		for _, d := range c.drawings {
			wellFormed(t, d)
			apart(t, d, measure)
			if d.Figure.Width > 180 || d.Figure.Height > whereHigh+10 {
				t.Errorf("%s %s is %.0f by %.0f mm", n.name, d.Address, d.Figure.Width, d.Figure.Height)
			}
		}
	}
}

func lineLength(line []process.Point) float64 {
	sum := 0.0
	for k := 1; k < len(line); k++ {
		sum += math.Hypot(line[k].X-line[k-1].X, line[k].Y-line[k-1].Y)
	}
	return sum
}

func strokeLength(p figure.Path) float64 {
	sum, at := 0.0, p.Start
	for _, s := range p.Segments {
		sum, at = sum+distance(at, s.To), s.To
	}
	return sum
}

// Where two pieces of the body are joined and lie in one view, their edges lie on one
// another. They may stand apart by what cannot lie flat: a dart that is open in the
// drawing, a curve sewn to another, ease. No piece is stretched: an edge that is not
// drawn in is as long as it is cut.
func joinedEdgesMeet(t *testing.T, all []named) {
	const open, stretched = 25, 0.02 // mm on the average; part of the length
	met := 0
	for _, n := range all {
		g := laidOut(t, n)
		fuller := map[string]bool{}
		for _, s := range n.plan.Seams {
			if a, b := runsLong(n.plan, s.Course.A), runsLong(n.plan, s.Course.B); a > 0 && b > 0 && math.Abs(a-b) > 0.05*a && math.Abs(2*a-b) > 0.05*b {
				for _, r := range slices.Concat(s.Course.A, s.Course.B) {
					fuller[r.Piece] = true
				}
			}
		}
		for _, v := range g.Views() {
			for _, x := range v {
				for _, d := range x.Sides {
					if l := lineLength(d.Points); x.Strip == "" && !fuller[x.Piece] && d.Edge != "" && !halved(x) && math.Abs(l-(d.To-d.From)) > stretched*l {
						t.Errorf("%s: %s of %s is drawn %.0f mm long, not %.0f", n.name, d.Edge, x.Piece, l, d.To-d.From)
					}
				}
			}
			for _, s := range n.plan.Seams {
				c := s.Course
				if c.In != "" || len(c.Own) > 0 || len(c.A) != len(c.B) {
					continue
				}
				for k := range c.A {
					long := runsLong(n.plan, c.A[k:k+1])
					if c.A[k] == c.B[k] || fuller[c.A[k].Piece] || fuller[c.B[k].Piece] || math.Abs(long-runsLong(n.plan, c.B[k:k+1])) > stretched*long {
						continue
					}
					a, b := walkedAt(v, c.A[k]), walkedAt(v, c.B[k])
					if a == nil || b == nil {
						continue
					}
					met++
					sum := 0.0
					for i := range a {
						sum += math.Hypot(a[i].X-b[i].X, a[i].Y-b[i].Y) / float64(len(a))
					}
					if sum > open {
						t.Errorf("%s: the two sides of %s lie %.0f mm apart", n.name, s.Name, sum)
					}
				}
			}
		}
	}
	if met < 5 {
		t.Errorf("only %d joins within a view", met)
	}
}

// halved reports a piece that is folded in half, whose joined edge lies on another's.
func halved(x flat.Shape) bool {
	return !x.Opened && slices.ContainsFunc(x.Sides, func(d flat.Side) bool { return d.Edge == "" })
}

func runsLong(p *process.Plan, runs []process.Run) float64 {
	sum := 0.0
	for _, r := range runs {
		for _, q := range p.Pieces {
			for _, e := range q.Edges {
				if q.Name == r.Piece && e.Name == r.Edge {
					sum += e.Length
				}
			}
		}
	}
	return sum
}

// walkedAt are nine points along a run in a view, as it is walked; nil where it is not
// whole in it.
func walkedAt(v []flat.Shape, r process.Run) []process.Point {
	for _, x := range v {
		for _, d := range x.Sides {
			if x.Twin || x.Piece != r.Piece || d.Edge != r.Edge || d.From != 0 || halved(x) {
				continue
			}
			line := slices.Clone(d.Points)
			if r.Back {
				slices.Reverse(line)
			}
			var out []process.Point
			whole := lineLength(line)
			for k := range 9 {
				way := whole * float64(k) / 8
				for i := 1; i < len(line); i++ {
					l := lineLength(line[i-1 : i+1])
					if way <= l+1e-9 {
						out = append(out, process.Point{X: line[i-1].X + (line[i].X-line[i-1].X)*way/l, Y: line[i-1].Y + (line[i].Y-line[i-1].Y)*way/l})
						break
					}
					way -= l
				}
			}
			return out
		}
	}
	return nil
}
