package templates

import (
	"fmt"
	"slices"

	"bodkin/seams/form"
)

// topology is what meets what, whatever the size.
type topology struct {
	joins   []joined // as Garment.Seams
	edges   []walked // as Garment.Edges
	details []walked // as Garment.Details; of those along no edge, empty
	corners *corners
	uses    map[ChainPart]string
}

// walked is a chain with the way each of its edges is run.
type walked struct {
	parts    []ChainPart
	backward []bool // against the draft's from and to
	from, to int    // corners where it starts and ends
}

type joined struct{ a, b walked }

// mirrored reports a seam between a piece and its own mirror image, such as a
// centre back seam.
func (j joined) mirrored() bool { return slices.Equal(j.a.parts, j.b.parts) }

// corners numbers the corners of all pieces and keeps which of them come
// together when the joins are sewn and the darts shut.
type corners struct {
	g        *Garment
	first    []int // number of each piece's first corner
	together []int // union-find
	centre   map[int]bool
	laid     map[int]bool // where a piece that lies underneath goes on for the one on it
}

func newCorners(g *Garment) *corners {
	c := &corners{g: g, centre: map[int]bool{}, laid: map[int]bool{}}
	for i := range g.Drafts {
		c.first = append(c.first, len(c.together))
		for range g.Drafts[i].edges() {
			c.together = append(c.together, len(c.together))
		}
	}
	for i := range g.Drafts {
		d := &g.Drafts[i]
		for _, e := range d.edges() {
			part := ChainPart{d.Piece.Value, e}
			if _, ok := d.isMouth(e); ok {
				c.join(c.end(part, false), c.end(part, true))
			}
			if e == d.Fold.Value {
				c.centre[c.end(part, false)], c.centre[c.end(part, true)] = true, true
			}
		}
	}
	return c
}

// end returns the corner at the start of an edge, or at its finish.
func (c *corners) end(p ChainPart, finish bool) int {
	i := slices.IndexFunc(c.g.Drafts, func(d PieceDraft) bool { return d.Piece.Value == p.Piece })
	edges := c.g.Drafts[i].edges()
	k := slices.Index(edges, p.Edge)
	if finish {
		k = (k + 1) % len(edges)
	}
	return c.first[i] + k
}

func (c *corners) find(n int) int {
	for c.together[n] != n {
		n = c.together[n]
	}
	return n
}

func (c *corners) join(a, b int) { c.together[c.find(b)] = c.find(a) }

func (c *corners) same(a, b int) bool { return c.find(a) == c.find(b) }

// central reports whether a corner lies on a fold or on a seam along the centre.
func (c *corners) central(n int) bool {
	for k := range c.centre {
		if c.same(k, n) {
			return true
		}
	}
	return false
}

// connect follows all chains from corner to corner and checks that every edge
// is used once.
func (p *parser) connect() *topology {
	g := p.g
	c := newCorners(g)
	t := &topology{joins: make([]joined, len(g.Seams)), edges: make([]walked, len(g.Edges)),
		details: make([]walked, len(g.Details)), corners: c, uses: map[ChainPart]string{}}
	p.layBeyond(c)
	p.walkJoins(c, t)
	if len(p.faults) > 0 {
		return nil
	}
	for i := range g.Edges {
		e := &g.Edges[i]
		parts, _ := g.chain(e.Along)
		w, bad := c.walk(parts, false)
		if bad > 0 {
			p.apart(e.Along, bad)
			continue
		}
		t.edges[i] = w
		e.Closed = e.Closed || e.from.under > 0 && c.round(w, e.Across)
		p.ends(ending{e.Edge, e.Title, e.Across, e.Closed, e.ClosedBy}, w, c, t)
	}
	for i := range g.Details {
		d := &g.Details[i]
		if len(d.Along) == 0 {
			continue
		}
		parts, _ := g.chain(d.Along)
		w, bad := c.walk(parts, false)
		if bad > 0 {
			p.apart(d.Along, bad)
			continue
		}
		t.details[i] = w
		d.Closed = d.Closed || d.from.under > 0 && c.round(w, d.Across)
		p.ends(ending{d.Detail, d.Title, d.Across, d.Closed, d.ClosedBy}, w, c, t)
	}
	p.use(t)
	return t
}

// layBeyond brings together the ends of an edge and those of the chain that goes
// on for it on a piece underneath, as the side piece of a slanted pocket does.
func (p *parser) layBeyond(c *corners) {
	for _, d := range p.g.Details {
		if len(d.Beyond) == 0 {
			continue
		}
		along, _ := p.g.chain(d.Along)
		beyond, _ := p.g.chain(d.Beyond)
		a, bad := c.walk(along, false)
		if bad > 0 {
			continue // told where the detail is followed
		}
		b, bad := c.walk(beyond, false)
		if bad > 0 {
			p.apart(d.Beyond, bad)
			continue
		}
		c.join(a.from, b.from)
		c.join(a.to, b.to)
		c.laid[a.from], c.laid[a.to] = true, true
	}
}

// overlaid reports a corner where a piece underneath goes on.
func (c *corners) overlaid(n int) bool {
	for k := range c.laid {
		if c.same(k, n) {
			return true
		}
	}
	return false
}

// walkJoins walks the joins; one may need the corners that another brings
// together, so those that cannot be walked yet wait.
func (p *parser) walkJoins(c *corners, t *topology) {
	g := p.g
	waiting := make([]int, len(g.Seams))
	for i := range waiting {
		waiting[i] = i
	}
	for len(waiting) > 0 {
		var still []int
		for _, i := range waiting {
			if j, bad := c.walkJoin(g, &g.Seams[i]); bad == nil {
				t.joins[i] = j
			} else {
				still = append(still, i)
			}
		}
		if len(still) == len(waiting) {
			for _, i := range still {
				_, bad := c.walkJoin(g, &g.Seams[i])
				p.apart(bad.chain, bad.part)
			}
			return
		}
		waiting = still
	}
}

// gapIn is a chain that breaks off before one of its parts.
type gapIn struct {
	chain []form.Text
	part  int
}

func (c *corners) walkJoin(g *Garment, s *JoinDraft) (joined, *gapIn) {
	pa, _ := g.chain(s.A)
	pb, _ := g.chain(s.B)
	// A chain of one edge has no way of its own and runs as its partner does.
	a, bad := c.walk(pa, false)
	if bad > 0 {
		return joined{}, &gapIn{s.A, bad}
	}
	b, bad := c.walk(pb, a.backward[0] != s.Opposite)
	if bad > 0 {
		return joined{}, &gapIn{s.B, bad}
	}
	if len(pa) == 1 {
		a, _ = c.walk(pa, b.backward[0] != s.Opposite)
	}
	j := joined{a, b}
	if j.mirrored() {
		c.centre[a.from], c.centre[a.to] = true, true
		return j, nil
	}
	c.join(a.from, b.from)
	if s.Across && c.whole(pb) && !c.whole(pa) {
		c.join(a.from, b.to) // b comes round to where it began; a's other end lies on the fold
		return j, nil
	}
	c.join(a.to, b.to)
	return j, nil
}

// whole reports a chain on pieces that are drawn whole, not as halves.
func (c *corners) whole(parts []ChainPart) bool {
	return !slices.ContainsFunc(parts, func(part ChainPart) bool { return c.g.draft(part.Piece).Cut != "one" })
}

// walk runs along a chain. A chain of one edge is run backward where asked. bad
// is the index of the part that does not meet the one before, or 0.
func (c *corners) walk(parts []ChainPart, backward bool) (w walked, bad int) {
	w = walked{parts: parts, backward: make([]bool, len(parts))}
	w.backward[0] = backward
	at := c.end(parts[0], !backward)
	if len(parts) > 1 {
		start, finish := c.end(parts[1], false), c.end(parts[1], true)
		meets := func(n int) bool { return c.same(n, start) || c.same(n, finish) }
		w.backward[0] = !meets(c.end(parts[0], true))
		at = c.end(parts[0], !w.backward[0])
	}
	w.from = c.end(parts[0], w.backward[0])
	for k := 1; k < len(parts); k++ {
		switch {
		case c.same(at, c.end(parts[k], false)):
		case c.same(at, c.end(parts[k], true)):
			w.backward[k] = true
		default:
			return w, k
		}
		at = c.end(parts[k], !w.backward[k])
	}
	w.to = at
	return w, 0
}

// round reports whether something that is sewn along a chain runs all the way
// round. A part need not say so: it does not know the edges that it is given.
func (c *corners) round(w walked, across bool) bool {
	if across {
		return c.central(w.from) && c.central(w.to)
	}
	return c.same(w.from, w.to)
}

// apart reports two parts of a chain that do not meet.
func (p *parser) apart(chain []form.Text, part int) {
	p.fault(chain[part], fmt.Sprintf("%s does not go on where %s ends", chain[part].Value, chain[part-1].Value), "",
		"write the edges in the order of walking along them; edges of two pieces meet where a join ends")
}
