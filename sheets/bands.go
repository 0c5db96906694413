package sheets

import (
	"math"
	"slices"

	"bodkin/process"
	"bodkin/sheets/flat"
)

// steadiedBand is interfacing along an edge of a piece: a tape, the strip in a hem,
// what is turned in at a front edge.
type steadiedBand struct {
	by     process.Interfacing
	points []process.Point // its outline, mm of the piece as it is drafted
	long   float64         // of the edge that it lies along
	tint   float64
}

// bandsOn are the bands along the edges of a piece. A tape lies on the seam line, half
// of it to either side; the strip of a hem from so far beyond the hem line inwards;
// what is turned in lies beyond the edge, up to its inner fold.
func (c *composer) bandsOn(p process.Piece) []steadiedBand {
	var out []steadiedBand
	parts := flat.Parts(c.plan)
	for _, f := range c.plan.Interfacing {
		s, ok := c.seams[f.Piece]
		if !ok {
			continue
		}
		from, to, tint := 0.0, f.Cut[0], steadiedTint // outwards
		switch {
		case f.Tape:
			from, to, tint = -f.Cut[0]/2, f.Cut[0]/2, tapeTint
		case f.Part == "hem":
			from, to = f.Below-f.Cut[0], f.Below
		case len(s.Course.Own) > 0 || slices.ContainsFunc(c.plan.Pieces, func(q process.Piece) bool { return q.Name == f.Piece && steadies(f, q) }):
			continue // of a piece that has its name
		}
		on := s.Course.A
		if f.Tape && s.Kind == "seam" { // on the ply that the other is eased to
			on = s.Course.B
		}
		for k, e := range p.Edges {
			lies := slices.ContainsFunc(on, func(r process.Run) bool { return r.Piece == p.Name && r.Edge == e.Name })
			line := edgeLine(p, k)
			if !lies || line == nil {
				continue
			}
			if s.Course.In != "" { // a part of the edge
				for _, q := range parts[s.Name] {
					if q.Piece == p.Name && q.Edge == e.Name {
						part := flat.Stretch(line, q.From/e.Length, q.To/e.Length)
						across, back := offset(part, from, 0), offset(part, to, 0)
						slices.Reverse(back)
						out = append(out, steadiedBand{by: f, points: append(across, back...), long: q.To - q.From, tint: tint})
					}
				}
				continue
			}
			out = append(out, steadiedBand{by: f, points: bandAlong(p, k, line, from, to), long: e.Length, tint: tint})
		}
	}
	return out
}

// banded reports a piece with a tape along a seam line, or with another band.
func (c *composer) banded(p process.Piece, tape bool) bool {
	return slices.ContainsFunc(c.bandsOn(p), func(b steadiedBand) bool { return b.by.Tape == tape })
}

// steadies reports the interfacing of a piece itself.
func steadies(f process.Interfacing, p process.Piece) bool {
	return f.Piece == p.Name && !f.Tape && f.Cut[1] == p.NetHeight && (f.Part == "whole" || f.Part == "half")
}

// bandAlong is the area from one distance of a piece's k-th edge to another, counted
// outwards, ended by the lines of the edges beside it.
func bandAlong(p process.Piece, k int, line []process.Point, from, to float64) []process.Point {
	out := 1.0
	if signedArea(p.Net) < 0 {
		out = -1
	}
	reach := max(math.Abs(from), math.Abs(to))
	a, b := offset(line, from*out, reach), offset(line, to*out, reach)
	slices.Reverse(b)
	band := append(a, b...)
	n := len(p.Edges)
	before, after := edgeLine(p, (k+n-1)%n), edgeLine(p, (k+1)%n)
	middle := flat.Stretch(line, 0.5, 1)[0]
	if m := len(before); m > 1 {
		band = clipped(band, before[m-2], before[m-1], middle)
	}
	if m := len(after); m > 1 {
		band = clipped(band, after[0], after[1], middle)
	}
	return band
}

// signedArea is above 0 where an outline runs clockwise on the page, mm².
func signedArea(line []process.Point) float64 {
	sum := 0.0
	for i, a := range line {
		b := line[(i+1)%len(line)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum / 2
}

// offset is a line moved square to itself, to its right as seen on the page where the
// distance is below 0, its ends lengthened by a reach.
func offset(line []process.Point, by, reach float64) []process.Point {
	n := len(line)
	out := make([]process.Point, 0, n+2)
	normal := func(a, b process.Point) process.Point {
		l := max(math.Hypot(b.X-a.X, b.Y-a.Y), 1e-9)
		return process.Point{X: (b.Y - a.Y) / l, Y: -(b.X - a.X) / l}
	}
	for k, q := range line {
		u := normal(line[max(k-1, 0)], line[max(k, 1)])
		v := normal(line[min(k, n-2)], line[min(k+1, n-1)])
		m := process.Point{X: u.X + v.X, Y: u.Y + v.Y}
		s := by * 2 / max(m.X*m.X+m.Y*m.Y, 1) // as far from both sides
		moved := process.Point{X: q.X + m.X*s, Y: q.Y + m.Y*s}
		if k == 0 {
			out = append(out, process.Point{X: moved.X + u.Y*reach, Y: moved.Y - u.X*reach})
		}
		out = append(out, moved)
		if k == n-1 {
			out = append(out, process.Point{X: moved.X - v.Y*reach, Y: moved.Y + v.X*reach})
		}
	}
	return out
}

// clipped is what of an outline lies on the same side of the line through a and b as
// a point does (Sutherland and Hodgman, 1974).
func clipped(outline []process.Point, a, b, inside process.Point) []process.Point {
	side := func(q process.Point) float64 { return (b.X-a.X)*(q.Y-a.Y) - (b.Y-a.Y)*(q.X-a.X) }
	sign := 1.0
	if side(inside) < 0 {
		sign = -1
	}
	var out []process.Point
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		s, t := sign*side(p), sign*side(q)
		if s >= 0 {
			out = append(out, p)
		}
		if (s < 0) != (t < 0) {
			u := s / (s - t)
			out = append(out, process.Point{X: p.X + u*(q.X-p.X), Y: p.Y + u*(q.Y-p.Y)})
		}
	}
	return out
}
