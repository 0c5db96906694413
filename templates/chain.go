package templates

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// chain reads edges written piece.edge; bad is the first that is not one.
func (g *Garment) chain(texts []form.Text) (parts []ChainPart, bad int) {
	for i, t := range texts {
		piece, edge, ok := strings.Cut(t.Value, ".")
		if !ok {
			return nil, i
		}
		parts = append(parts, ChainPart{piece, edge})
	}
	return parts, -1
}

// draft returns the draft of a piece, or nil.
func (g *Garment) draft(piece string) *PieceDraft {
	i := slices.IndexFunc(g.Drafts, func(d PieceDraft) bool { return d.Piece.Value == piece })
	if i < 0 {
		return nil
	}
	return &g.Drafts[i]
}

// chainNames checks that a chain names edges that exist.
func (p *parser) chainNames(at form.Text, texts []form.Text) {
	if len(texts) == 0 {
		p.fault(at, "it names no edges", "", "write [piece.edge]")
	}
	var all []string
	for i := range p.g.Drafts {
		for _, e := range p.g.Drafts[i].edges() {
			all = append(all, p.g.Drafts[i].Piece.Value+"."+e)
		}
	}
	for _, t := range texts {
		p.known(t, "edge", all)
	}
}

// joinsAndEdges checks names, formulas and words of joins and edges.
func (p *parser) joinsAndEdges() {
	for i := range p.g.Seams {
		s := &p.g.Seams[i]
		p.spelt(s.Join, "join")
		p.chainNames(s.Join, s.A)
		p.chainNames(s.Join, s.B)
		p.strain(s.Join, s.Strain)
		p.fullness(s.Join, s.Ease, s.Gather)
		for _, t := range slices.Concat(s.Ease, s.Gather, []form.Text{s.Tolerance, s.GoesOver}) {
			p.optional(t, s.from.scope)
		}
		if s.Across && s.EachSide {
			p.fault(s.Join, "a join that goes on over the centre does not occur on each side", "", "keep across or each_side, not both")
		}
	}
	for i := range p.g.Edges {
		e := &p.g.Edges[i]
		p.spelt(e.Edge, "edge")
		p.chainNames(e.Edge, e.Along)
		if len(e.Fits) > 0 {
			p.chainNames(e.Edge, e.Fits)
		}
		for _, t := range e.Pieces {
			p.known(t, "piece", p.pieceNames())
		}
		p.strain(e.Edge, e.Strain)
		for _, t := range []form.Text{e.Depth, e.Elastic, e.Grip, e.GoesOver, e.Stretch} {
			p.optional(t, e.from.scope)
		}
		if !e.Cloth.IsZero() {
			p.known(e.Cloth, "cloth", p.g.Cloths.Keys())
		}
		if e.Across && e.EachSide {
			p.fault(e.Edge, "an edge that goes on over the centre does not occur on each side", "", "keep across or each_side, not both")
		}
	}
}

// fullness checks how ease and gathers are written.
func (p *parser) fullness(at form.Text, ease, gather []form.Text) {
	if len(ease) != 0 && len(ease) != 2 {
		p.fault(at, "ease has two figures", "", "write the least and the most, such as [0 mm, 3 mm]")
	}
	if len(gather) != 0 && len(gather) != 2 {
		p.fault(at, "gather has two figures", "", "write the least and the most, such as [1.5, 2.5]")
	}
	if len(ease) > 0 && len(gather) > 0 {
		p.fault(at, "it has ease and gathers", "", "keep one: ease is taken up without a fold, gathers are not")
	}
}

func (p *parser) pieceNames() []string {
	var names []string
	for i := range p.g.Drafts {
		names = append(names, p.g.Drafts[i].Piece.Value)
	}
	return names
}

func (p *parser) joinNames() []string {
	var names []string
	for i := range p.g.Seams {
		names = append(names, p.g.Seams[i].Join.Value)
	}
	return names
}

func (p *parser) optional(t form.Text, scope int) {
	if !t.IsZero() {
		p.compile(t, formula.Number, p.g.scopes[scope].all(p))
	}
}

// sides checks that what lies on pieces with a left and a right says so.
func (p *parser) sides(at form.Text, texts []form.Text, eachSide, across bool) {
	parts, bad := p.g.chain(texts)
	if bad >= 0 {
		return
	}
	twice, single := false, false
	for _, c := range parts {
		if d := p.g.draft(c.Piece); d != nil {
			twice = twice || d.Cut != "one"
			single = single || d.Cut == "one" && d.Count <= 1
		}
	}
	switch {
	case twice && !eachSide && !across:
		p.fault(at, "it lies on a piece that has a left and a right", "", "add each_side: true, or across: true where it goes on over the centre")
	case single && !twice && (eachSide || across):
		p.fault(at, "it lies on a piece that is cut once, and occurs once", "", "leave each_side and across out")
	}
}

// ending is what is said of a chain that something runs along.
type ending struct {
	at             form.Text
	title          string
	across, closed bool
	closedBy       form.Text
}

// ends checks where a chain starts and stops against what is said of it.
func (p *parser) ends(e ending, w walked, c *corners, t *topology) {
	round := c.round(w, e.across)
	switch {
	case e.across && !c.central(w.from) && !c.central(w.to):
		p.fault(e.at, "it goes on across the centre, but neither of its ends is there", "",
			"let it end at the fold, or write each_side: true")
	case e.closed && !round:
		p.fault(e.at, "it is said to be closed, but its ends do not meet", "",
			"name all edges it runs along, or leave closed out")
	case !e.closed && round:
		p.fault(e.at, "its ends meet, so it runs all the way round", "", "add closed: true")
	}
	if e.closedBy.IsZero() {
		return
	}
	var joins []string
	for i, s := range p.g.Seams {
		joins = append(joins, s.Join.Value)
		if s.Join.Value != e.closedBy.Value {
			continue
		}
		j := t.joins[i]
		if !e.closed {
			p.fault(e.closedBy, "no join closes an edge that is not closed", "", "leave closed_by out, or add closed: true")
		}
		if !closes(j, w, c) {
			p.fault(e.closedBy, fmt.Sprintf("the join %q does not end on the %s", s.Join.Value, e.title), "",
				"name the join that closes it last")
		}
	}
	p.known(e.closedBy, "join", joins)
}

// closes reports whether a join ends at a corner of the chain.
func closes(j joined, w walked, c *corners) bool {
	for _, n := range []int{j.a.from, j.a.to} {
		for k, part := range w.parts {
			if c.same(n, c.end(part, w.backward[k])) || c.same(n, c.end(part, !w.backward[k])) {
				return true
			}
		}
	}
	return false
}
