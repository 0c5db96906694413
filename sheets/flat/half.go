package flat

import (
	"slices"

	"bodkin/process"
)

// folded is the half of a piece that is joined to itself, such as a sleeve, that is
// seen in a view: from the edge that is joined to where it is folded.
func (y *layer) folded(c *cloth, v view) ([]Side, bool) {
	k1, k2 := y.closing(c)
	if k1 < 0 {
		return nil, false
	}
	one, two := y.arc(c, k1, k2), y.arc(c, k2, k1)
	first := one.first
	if first == either {
		first = two.last
	}
	if first == either {
		return nil, false
	}
	before, after := one.split(), two.split()
	var out []Side
	if first == v {
		out = append(out, c.sides[k1])
		out = append(out, one.between(0, before)...)
		rest := two.between(after, two.long)
		return append(append(out, crease(out, rest)), rest...), true
	}
	out = append(out, c.sides[k2])
	out = append(out, two.between(0, after)...)
	rest := one.between(before, one.long)
	return append(append(out, crease(out, rest)), rest...), true
}

// crease is the fold between two runs of sides.
func crease(before, after []Side) Side {
	last := before[len(before)-1].Points
	return Side{Points: []process.Point{last[len(last)-1], after[0].Points[0]}}
}

// closing are the two sides of a piece that are sewn to each other, in the order of
// the outline; -1 where there are none.
func (y *layer) closing(c *cloth) (k1, k2 int) {
	for i := range y.plan.Seams {
		for _, l := range y.links(&y.plan.Seams[i]) {
			if l.a.Piece == c.Name && l.b.Piece == c.Name && l.seam.Course.In == "" {
				a := slices.IndexFunc(c.sides, func(d Side) bool { return d.Edge == l.a.Edge })
				b := slices.IndexFunc(c.sides, func(d Side) bool { return d.Edge == l.b.Edge })
				return min(a, b), max(a, b)
			}
		}
	}
	return -1, -1
}

// arc is the outline of a piece from one side to another, neither included, and
// what of it is joined to pieces of which view.
type arc struct {
	sides       []Side
	long        float64
	first, last view    // of what is joined to it nearest to its beginning and its end
	ends, goes  float64 // where that of the first view ends and that of the other begins
}

func (y *layer) arc(c *cloth, from, to int) arc {
	a := arc{}
	n := len(c.sides)
	for k := (from + 1) % n; k != to; k = (k + 1) % n {
		d := c.sides[k]
		l := lengthOf(d.Points)
		type joined struct {
			v        view
			from, to float64
		}
		var on []joined
		for i := range y.plan.Seams {
			if s := &y.plan.Seams[i]; s.Course.In == "" && len(s.Course.Own) == 0 {
				for _, x := range y.links(s) {
					for _, x := range []link{x, x.other()} {
						if v := y.views[x.b.Piece]; x.a.Piece == c.Name && x.a.Edge == d.Edge && v != either {
							f, t := x.af, x.at
							if x.a.Back {
								f, t = 1-t, 1-f
							}
							on = append(on, joined{v, a.long + f*l, a.long + t*l})
						}
					}
				}
			}
		}
		slices.SortStableFunc(on, func(p, q joined) int {
			if p.from < q.from {
				return -1
			}
			return 1
		})
		for _, j := range on {
			if a.first == either {
				a.first = j.v
			}
			if j.v == a.first {
				a.ends = j.to
			} else if a.last != j.v {
				a.goes = j.from
			}
			a.last = j.v
		}
		a.sides, a.long = append(a.sides, d), a.long+l
	}
	return a
}

// split is where the arc is folded.
func (a arc) split() float64 {
	if a.first != either && a.last != a.first {
		return (a.ends + a.goes) / 2
	}
	return a.long / 2
}

// between is a part of the arc.
func (a arc) between(from, to float64) []Side {
	var out []Side
	at := 0.0
	for _, d := range a.sides {
		l := lengthOf(d.Points)
		f, t := max(from-at, 0), min(to-at, l)
		if t > f+1e-9 {
			whole := d.To - d.From
			out = append(out, Side{Edge: d.Edge, From: d.From + whole*f/l, To: d.From + whole*t/l, Points: Stretch(d.Points, f/l, t/l)})
		}
		at += l
	}
	return out
}

// sewn are the points of a side of a folded piece: where it is joined, on the line to
// which it is sewn, so that a rounded cap closes the armhole.
func (y *layer) sewn(c *cloth, d Side, m motion, laid map[string]motion) []process.Point {
	rigid := moved(d.Points, m.point)
	whole, ok := c.side(d.Edge)
	if !ok {
		return rigid
	}
	const steps = 24
	var out []process.Point
	found := false
	for k := range steps + 1 {
		u := (d.From + (d.To-d.From)*float64(k)/steps) / whole.To
		p := at(rigid, float64(k)/steps)
		for _, l := range y.all {
			for _, l := range []link{l, l.other()} {
				first, placed := laid[l.a.Piece]
				if l.b.Piece != c.Name || l.b.Edge != d.Edge || !placed || l.a.Piece == c.Name {
					continue
				}
				w := u
				if l.b.Back {
					w = 1 - u
				}
				if w < l.bf-1e-6 || w > l.bt+1e-6 {
					continue
				}
				f := l.af + (l.at-l.af)*(w-l.bf)/(l.bt-l.bf)
				p, found = first.point(y.samples(l.a, f, f)[0]), true
			}
		}
		out = append(out, p)
	}
	if !found {
		return rigid
	}
	return out
}
