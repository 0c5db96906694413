package process

import (
	"slices"

	"bodkin/templates"
)

// courseOf tells along which edges a line lies.
func (o *operator) courseOf(l *line) Course {
	c := Course{A: []Run{}, B: []Run{}, Own: append([]string{}, l.own...)}
	switch {
	case l.join != nil:
		c.A, c.B = runs(l.join.WaysA), runs(l.join.WaysB)
	case l.edge != nil:
		c.A, c.B = runs(l.edge.Ways), runs(l.edge.FitsWays)
	case l.detail != nil && l.detail.In != "":
		k := slices.IndexFunc(o.lines, func(x *line) bool { return x.join != nil && x.name == l.detail.In })
		if k < 0 {
			return c
		}
		j := o.lines[k].join
		c.A, c.B, c.In = runs(j.WaysA), runs(j.WaysB), j.Name
		c.From, c.To = float64(l.detail.After), float64(l.detail.After+l.detail.Length)
		if l.detail.End == "to" {
			c.From, c.To = float64(j.LengthA-l.detail.Length), float64(j.LengthA)
		}
	case l.detail != nil:
		c.A, c.B = runs(l.detail.Ways), runs(l.detail.FitsWays)
	default:
		for _, e := range l.edges {
			c.A = append(c.A, Run{Piece: e.piece, Edge: e.edge})
		}
	}
	return c
}

func runs(ways []templates.Way) []Run {
	out := []Run{}
	for _, w := range ways {
		out = append(out, Run{Piece: w.Piece, Edge: w.Edge, Back: w.Back})
	}
	return out
}
