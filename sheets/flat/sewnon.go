package flat

import (
	"math"
	"slices"

	"bodkin/process"
)

// sewnOn are the pieces that are sewn to the body of a view: bands and collars as
// strips along their edges, facings and linings inside, pockets where their line is.
func (y *layer) sewnOn(at map[string]motion, body []Shape) []Shape {
	var out []Shape
	for i := range y.plan.Seams {
		s := &y.plan.Seams[i]
		if len(s.Course.Own) == 0 {
			continue
		}
		switch s.Kind {
		case "waistband", "cuff", "stand-collar", "shirt-collar", "flat-collar", "band":
			out = append(out, y.strips(s, body)...)
		case "in-seam-pocket":
			out = append(out, y.bags(s, at)...)
		case "patch-pocket":
			out = append(out, y.pockets(s, at, body)...)
		default:
			out = append(out, y.under(s, at)...)
		}
	}
	return out
}

// under are the pieces that lie inside along the edges that they are sewn to.
func (y *layer) under(s *process.Seam, at map[string]motion) []Shape {
	var out []Shape
	done := map[string]bool{}
	for _, l := range y.links(s) {
		first, placed := at[l.a.Piece]
		if !placed || done[l.b.Piece] || y.pieces[l.b.Piece] == nil {
			continue
		}
		if m, ok := y.beside(l, first, true); ok {
			done[l.b.Piece] = true
			out = append(out, y.pieces[l.b.Piece].lies(m, true))
		}
	}
	return out
}

// strips are a band along each edge of the body that it is sewn to.
func (y *layer) strips(s *process.Seam, body []Shape) []Shape {
	deep := s.Finished
	if deep <= 0 {
		for _, o := range s.Course.Own {
			if c := y.pieces[o]; c != nil {
				b := boxOf(c.outline())
				deep = max(deep, min(b[2]-b[0], b[3]-b[1]))
			}
		}
	}
	var out []Shape
	for _, sh := range body {
		for _, line := range y.along(sh, s) {
			a, b := line[0], line[len(line)-1]
			l := max(distance(a, b), 1e-9)
			n := process.Point{X: (b.Y - a.Y) / l, Y: -(b.X - a.X) / l}
			if area(sh.Outline()) < 0 {
				n = process.Point{X: -n.X, Y: -n.Y}
			}
			if n.Y < -0.5 { // it stands up
				n = process.Point{Y: -1}
			}
			up := func(p process.Point) process.Point { return process.Point{X: p.X + n.X*deep, Y: p.Y + n.Y*deep} }
			far := moved(line, up)
			slices.Reverse(far)
			out = append(out, Shape{Piece: s.Course.Own[0], Strip: s.Name, twice: sh.twice, Sides: []Side{
				{Points: line}, {Points: []process.Point{b, up(b)}}, {Points: far}, {Points: []process.Point{up(a), a}}}})
		}
	}
	return out
}

// along are the lines of a shape along which a band is sewn, on past the mouths of
// darts, which are sewn shut.
func (y *layer) along(sh Shape, s *process.Seam) [][]process.Point {
	n := len(sh.Sides)
	on := make([]bool, n)
	for k, d := range sh.Sides {
		on[k] = slices.ContainsFunc(s.Course.A, func(r process.Run) bool { return r.Piece == sh.Piece && r.Edge == d.Edge })
	}
	for k := range n {
		if !on[k] && on[(k+n-1)%n] && on[(k+1)%n] {
			on[k] = slices.ContainsFunc(y.pieces[sh.Piece].Edges, func(e process.Edge) bool { return e.Name == sh.Sides[k].Edge && y.darts[e.Seam] })
		}
	}
	var out [][]process.Point
	for k := range n {
		if !on[k] || on[(k+n-1)%n] {
			continue
		}
		var line []process.Point
		for i := k; on[i%n] && i < k+n; i++ {
			line = append(line, sh.Sides[i%n].Points...)
		}
		out = append(out, line)
	}
	return out
}

// bridged are pieces that go on for the body where its edges end, such as the side
// of a slanted pocket: they lie where two of their corners meet the body's.
func (y *layer) bridged(v view, at map[string]motion) []Shape {
	var out []Shape
	for _, p := range y.plan.Pieces {
		c := y.pieces[p.Name]
		if !y.own[p.Name] {
			continue
		}
		var from, to []process.Point
		mirror := false
		for i := range y.plan.Seams {
			x := y.plan.Seams[i].Course
			for _, runs := range [][]process.Run{x.A, x.B} {
				for k := 1; k < len(runs); k++ {
					q, r, finish := runs[k], runs[k-1], 1.0
					if q.Piece != p.Name {
						q, r, finish = r, q, 0
					}
					first, laid := at[r.Piece]
					if q.Piece != p.Name || !laid || y.views[r.Piece] != v {
						continue
					}
					from = append(from, y.samples(q, 1-finish, 1-finish)[0])
					to = append(to, first.point(y.samples(r, finish, finish)[0]))
					mirror = (y.hand(r) != first.mirror) != y.hand(q)
				}
			}
		}
		if len(from) < 2 || math.Abs(distance(from[0], from[1])-distance(to[0], to[1])) > near {
			continue
		}
		at[p.Name] = onto(from[:2], to[:2], mirror)
		out = append(out, c.lies(at[p.Name], false))
	}
	return out
}

// bags are the bags of a pocket in a seam, hanging inside from their mouth.
func (y *layer) bags(s *process.Seam, at map[string]motion) []Shape {
	c := y.pieces[s.Course.Own[0]]
	long := s.Course.To - s.Course.From
	k := slices.IndexFunc(c.sides, func(d Side) bool { return math.Abs(d.To-long) < 0.1*long })
	if k < 0 {
		return nil
	}
	var out []Shape
	for _, p := range y.plan.Pieces {
		first, laid := at[p.Name]
		for _, q := range y.parts[s.Name] {
			if q.Piece != p.Name || !laid {
				continue
			}
			d, _ := y.pieces[q.Piece].side(q.Edge)
			line := Stretch(d.Points, q.From/d.To, q.To/d.To)
			mouth := c.sides[k].Points
			ends := []process.Point{mouth[0], mouth[len(mouth)-1]}
			to := moved([]process.Point{line[0], line[len(line)-1]}, first.point)
			var best motion
			for n, way := range [][]process.Point{to, {to[1], to[0]}} {
				run := process.Run{Piece: q.Piece, Edge: q.Edge}
				own := process.Run{Piece: c.Name, Edge: c.sides[k].Edge, Back: n == 1}
				m := onto(ends, way, (y.hand(run) != first.mirror) != y.hand(own))
				if n == 0 || m.point(c.middle()).Y > best.point(c.middle()).Y {
					best = m
				}
			}
			out = append(out, c.lies(best, true))
		}
	}
	return out
}

// pockets are patch pockets with that edge on their line that is as long.
func (y *layer) pockets(s *process.Seam, at map[string]motion, body []Shape) []Shape {
	c := y.pieces[s.Course.Own[0]]
	if c == nil {
		return nil
	}
	var out []Shape
	for _, sh := range body {
		for _, l := range y.mouths(s, sh, at[sh.Piece]) {
			wide := distance(l.From, l.To)
			edge := slices.MinFunc(c.sides, func(p, q Side) int {
				if math.Abs(p.To-wide) < math.Abs(q.To-wide) {
					return -1
				}
				return 1
			})
			if math.Abs(edge.To-wide) > 0.1*wide {
				continue
			}
			ends := []process.Point{edge.Points[0], edge.Points[len(edge.Points)-1]}
			for _, to := range [][]process.Point{{l.From, l.To}, {l.To, l.From}} {
				m := onto(ends, to, false)
				if m.point(c.middle()).Y > (l.From.Y+l.To.Y)/2 {
					p := c.lies(m, false)
					p.Opened, p.twice = false, sh.twice && s.Copies > 1
					out = append(out, p)
					break
				}
			}
		}
	}
	return out
}

// mouths are the lines on a shape where a pocket may lie: its own, or from one mark to
// another of the same name.
func (y *layer) mouths(s *process.Seam, sh Shape, m motion) []Line {
	var out []Line
	for _, l := range sh.Lines {
		if l.Name == s.Name && l.Kind != "notch" {
			out = append(out, l)
		}
	}
	marks := y.pieces[sh.Piece].Marks
	for i, p := range marks {
		for _, q := range marks[i+1:] {
			if p.Name == q.Name && len(out) == 0 {
				out = append(out, Line{From: m.point(process.Point{X: p.X, Y: p.Y}), To: m.point(process.Point{X: q.X, Y: q.Y})})
			}
		}
	}
	return out
}
