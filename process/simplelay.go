package process

import (
	"math"
	"slices"

	cutter "bodkin/templates/cutting"
)

// between is the room left between two pieces on the cloth, mm: enough for a
// blade. Common practice, no source.
const between = 10

// simpleLay lays what is cut from a cloth row by row on the folded cloth, all
// pieces the same way up, and then the strips, side by side.
func (o *operator) simpleLay(c clothIn, plan *Plan) (cutter.Estimate, error) {
	var pieces []cutter.Laid
	for k, p := range plan.Pieces {
		if p.Cloth != c.role {
			continue
		}
		if at := slices.IndexFunc(o.narrow, func(n narrow) bool { return n.piece == k }); at >= 0 && !o.narrow[at].across {
			pieces = append(pieces, o.narrow[at].panels(&p)...)
			continue
		} else if at >= 0 {
			pieces = append(pieces, cutter.Laid{Name: p.Title, Across: p.Height, Along: p.Width, Area: p.AreaMM2, Count: p.Count, Place: cutter.Single})
			continue
		}
		l := cutter.Laid{Name: p.Title, Across: p.Width, Along: p.Height, Area: p.AreaMM2, Count: p.Count, Place: cutter.Single}
		switch {
		case p.Bias:
			l.Across, l.Along = aslant(p)
		case p.Cut == "pair":
			l.Place = cutter.Paired
		case p.Cut == "fold" && foldsUpright(p):
			l.Place = cutter.OnFold
		}
		pieces = append(pieces, l)
	}
	e, err := cutter.Lay(pieces, c.width, between)
	if err != nil {
		return e, err
	}
	var longest, bias float64 // of the strips at 45 degrees, all beside each other
	for _, s := range plan.Strips {
		if s.Cloth != c.role {
			continue
		}
		widths := s.CutWidth * float64(s.Lengths*s.Count)
		if s.On == "bias" {
			longest, bias = max(longest, s.EachLength), bias+widths
		} else {
			e.Lay += widths
		}
	}
	if bias > 0 {
		e.Lay += cutter.BiasAlong(longest, bias)
	}
	return e, nil
}

// aslant is the box of a piece that is laid at 45 degrees, opened out.
func aslant(p Piece) (across, along float64) {
	var a, b []float64 // along the two threads of the cloth
	add := func(q Point) { a, b = append(a, (q.X-q.Y)/math.Sqrt2), append(b, (q.X+q.Y)/math.Sqrt2) }
	for _, q := range p.CutLine {
		add(q)
		if p.Cut == "fold" {
			add(Point{-q.X, q.Y}) // the fold lies at x 0
		}
	}
	return slices.Max(a) - slices.Min(a), slices.Max(b) - slices.Min(b)
}

// foldsUpright reports whether a piece lies with its fold along the grain: then
// its width was doubled when it was opened out.
func foldsUpright(p Piece) bool {
	least, most := p.Net[0].X, p.Net[0].X
	for _, q := range p.Net {
		least, most = min(least, q.X), max(most, q.X)
	}
	return p.NetWidth > 1.5*(most-least)
}
