// Package flat lays the pieces of a garment together as they lie when it is
// finished and spread on a table: in goes a [process.Plan], out come a front and a
// back, each a handful of outlines in mm.
//
// The one idea: every piece is laid by a motion that changes no length. The
// largest piece of a view lies with its centre on the middle line; each other one
// is turned and moved until its edge lies on that to which it is joined. What
// cannot lie flat is helped: an edge that is gathered or pleated is drawn in, a
// sleeve is folded in half, a band or collar becomes a strip along its edge, a
// facing lies inside. What is left over is loose and is drawn by itself.
//
// Whether a piece is seen in front or behind is read from its name or title, and
// of a piece that tells nothing from what it is sewn to. [Lay] measures how much
// pieces cover one another, so that a drawing that would mislead is not made.
package flat

import (
	"math"

	"bodkin/process"
)

// Garment is a garment that lies flat. y grows downwards, x = 0 is its middle.
type Garment struct {
	Front, Back []Shape // in the order of drawing: what lies below first
	Loose       []Shape // in neither, as they are cut
	// Overlap is how much of the cloth of a half lies under other outer cloth, 0 to 1,
	// in the worse of the two views.
	Overlap float64

	parts map[string][]Part // of each seam
}

// Views are the front and, where there is one, the back.
func (g Garment) Views() [][]Shape {
	out := [][]Shape{g.Front}
	if len(g.Back) > 0 {
		out = append(out, g.Back)
	}
	return out
}

// Shape is a piece as it lies, or its mirror image.
type Shape struct {
	Piece  string
	Inside bool   // it is not seen from outside
	Twin   bool   // the mirror image of another
	Opened bool   // of a piece on the fold, one half
	Strip  string // the seam whose band it is, drawn along an edge; its sides are no edges
	Sides  []Side
	Lines  []Line

	twice bool // it has a twin
}

// Side is what is seen of an edge of a piece. The sides of a shape go round it.
type Side struct {
	Edge     string  // empty where the piece is folded or cut short
	From, To float64 // which part of the edge, mm as it is cut
	Points   []process.Point
}

// Line is a line on a piece: the leg of a dart, where a pocket lies.
type Line struct {
	Kind, Name string
	From, To   process.Point
}

// Outline is the closed outline of a shape, without its first point again.
func (s Shape) Outline() []process.Point {
	var out []process.Point
	for _, d := range s.Sides {
		out = append(out, d.Points[:len(d.Points)-1]...)
	}
	return out
}

// mirrored is the shape on the other side of the middle.
func (s Shape) mirrored() Shape {
	out := s
	out.Twin, out.Sides, out.Lines = true, nil, nil
	for _, d := range s.Sides {
		d.Points = moved(d.Points, func(q process.Point) process.Point { return process.Point{X: -q.X, Y: q.Y} })
		out.Sides = append(out.Sides, d)
	}
	for _, l := range s.Lines {
		l.From.X, l.To.X = -l.From.X, -l.To.X
		out.Lines = append(out.Lines, l)
	}
	return out
}

// Part is a stretch of an edge along which a seam lies, mm from the edge's first
// point.
type Part struct {
	Piece, Edge string
	From, To    float64
}

// On are the lines of a shape along which a seam lies.
func (g Garment) On(s Shape, seam string) [][]process.Point {
	var out [][]process.Point
	if s.Strip == seam && seam != "" {
		o := s.Outline()
		out = append(out, append(o, o[0]))
	}
	for _, p := range g.parts[seam] {
		for _, d := range s.Sides {
			if d.Edge == "" || s.Piece != p.Piece || d.Edge != p.Edge {
				continue
			}
			if from, to := max(p.From, d.From), min(p.To, d.To); to > from+1e-6 {
				l := max(d.To-d.From, 1e-9)
				out = append(out, Stretch(d.Points, (from-d.From)/l, (to-d.From)/l))
			}
		}
	}
	for _, l := range s.Lines {
		if l.Name == seam && l.Kind != "notch" {
			out = append(out, []process.Point{l.From, l.To})
		}
	}
	return out
}

// Parts tells along which edges each seam lies: those that have its allowance, of
// what lies in a part of a join that part of both its sides, and else those of its
// course.
func Parts(plan *process.Plan) map[string][]Part {
	out := map[string][]Part{}
	lengths := map[[2]string]float64{}
	for _, p := range plan.Pieces {
		for _, e := range p.Edges {
			lengths[[2]string{p.Name, e.Name}] = e.Length
			out[e.Seam] = append(out[e.Seam], Part{p.Name, e.Name, 0, e.Length})
		}
	}
	for _, s := range plan.Seams {
		if s.Course.In == "" {
			if _, ok := out[s.Name]; !ok { // a row of stitches along an edge of another seam
				for _, r := range s.Course.A {
					out[s.Name] = append(out[s.Name], Part{r.Piece, r.Edge, 0, lengths[[2]string{r.Piece, r.Edge}]})
				}
			}
			continue
		}
		for _, runs := range [][]process.Run{s.Course.A, s.Course.B} {
			at := 0.0
			for _, r := range runs {
				l := lengths[[2]string{r.Piece, r.Edge}]
				from, to := s.Course.From-at, s.Course.To-at
				if r.Back {
					from, to = l-to, l-from
				}
				if from, to = max(from, 0), min(to, l); to > from {
					out[s.Name] = append(out[s.Name], Part{r.Piece, r.Edge, from, to})
				}
				at += l
			}
		}
	}
	return out
}

func moved(in []process.Point, by func(process.Point) process.Point) []process.Point {
	out := make([]process.Point, len(in))
	for k, q := range in {
		out[k] = by(q)
	}
	return out
}

func distance(a, b process.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// lengthOf is the length of a line.
func lengthOf(line []process.Point) float64 {
	sum := 0.0
	for k := 1; k < len(line); k++ {
		sum += distance(line[k-1], line[k])
	}
	return sum
}

// at is the point of a line so far along it, 0 to 1.
func at(line []process.Point, along float64) process.Point {
	way := along * lengthOf(line)
	for k := 1; k < len(line); k++ {
		l := distance(line[k-1], line[k])
		if l >= way && l > 0 {
			t := max(way, 0) / l
			return process.Point{X: line[k-1].X + t*(line[k].X-line[k-1].X), Y: line[k-1].Y + t*(line[k].Y-line[k-1].Y)}
		}
		way -= l
	}
	return line[len(line)-1]
}

// Stretch is a line from one place along it to another, 0 to 1 each.
func Stretch(line []process.Point, from, to float64) []process.Point {
	whole := lengthOf(line)
	out := []process.Point{at(line, from)}
	sum := 0.0
	for k := 1; k < len(line); k++ {
		sum += distance(line[k-1], line[k])
		if sum > from*whole+1e-9 && sum < to*whole-1e-9 {
			out = append(out, line[k])
		}
	}
	return append(out, at(line, to))
}
