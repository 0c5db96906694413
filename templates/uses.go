package templates

import (
	"fmt"
	"slices"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// use notes what becomes of every edge and checks that it is one thing.
func (p *parser) use(t *topology) {
	g := p.g
	take := func(at form.Text, part ChainPart, use string) {
		if was, ok := t.uses[part]; ok && was != use {
			p.fault(at, fmt.Sprintf("the edge %s.%s is used for the %s already", part.Piece, part.Edge, was), "",
				"an edge is joined, treated, on the fold or the mouth of a dart: one of these")
			return
		}
		t.uses[part] = use
	}
	for i := range g.Drafts {
		d := &g.Drafts[i]
		if !d.Fold.IsZero() {
			take(d.Fold, ChainPart{d.Piece.Value, d.Fold.Value}, "fold")
		}
		for _, s := range d.Outline {
			if !s.Dart.IsZero() {
				take(s.Edge, ChainPart{d.Piece.Value, s.Edge.Value}, "dart "+s.Dart.Value)
			}
		}
	}
	for i, s := range g.Seams {
		j := t.joins[i]
		for k, part := range j.a.parts {
			take(s.A[k], part, "join "+s.Join.Value)
		}
		if j.mirrored() {
			continue
		}
		for k, part := range j.b.parts {
			if slices.Contains(j.a.parts, part) {
				p.fault(s.B[k], fmt.Sprintf("%s is on both sides of the join", s.B[k].Value), "", "name the edge it is sewn to")
			}
			take(s.B[k], part, "join "+s.Join.Value)
		}
	}
	for i, e := range g.Edges {
		for k, part := range t.edges[i].parts {
			take(e.Along[k], part, "edge "+e.Edge.Value)
		}
	}
	for i, d := range g.Details {
		if d.Kind.Value == hungLining { // what finishes the edge takes it
			fits, _ := g.chain(d.Fits)
			for k, part := range fits {
				take(d.Fits[k], part, "detail "+d.Detail.Value)
			}
			continue
		}
		for k, part := range t.details[i].parts {
			take(d.Along[k], part, "detail "+d.Detail.Value)
		}
	}
	p.owned(t, take)
	for i := range g.Drafts {
		d := &g.Drafts[i]
		for k, s := range d.Outline {
			if k > 0 && d.Outline[k-1].Edge.Value == s.Edge.Value {
				continue
			}
			if _, ok := t.uses[ChainPart{d.Piece.Value, s.Edge.Value}]; !ok {
				p.fault(s.Edge, fmt.Sprintf("nothing becomes of the edge %s.%s", d.Piece.Value, s.Edge.Value), "",
					"name it in a join or under edges:, or make it the fold")
			}
		}
	}
}

// owned notes the edges of pieces that belong to an edge or a detail, such as a
// facing's or a pocket's, where nothing else becomes of them.
func (p *parser) owned(t *topology, take func(form.Text, ChainPart, string)) {
	g := p.g
	own := func(pieces []form.Text, use string) {
		for _, at := range pieces {
			for _, e := range g.draft(at.Value).edges() {
				if part := (ChainPart{at.Value, e}); t.uses[part] == "" {
					take(at, part, use)
				}
			}
		}
	}
	for _, e := range g.Edges {
		own(e.Pieces, "edge "+e.Edge.Value)
	}
	for _, d := range g.Details {
		own(d.Pieces, "detail "+d.Detail.Value)
	}
}

// dart checks a dart against the outline that it opens into.
func (p *parser) dart(t *DetailDraft) {
	g := p.g
	for i := range g.Drafts {
		d := &g.Drafts[i]
		if d.Piece.Value != t.Piece.Value {
			continue
		}
		p.known(t.Point, "point", d.Points.Keys())
		k := slices.IndexFunc(d.Outline, func(s Stroke) bool { return s.Dart.Value == t.Detail.Value })
		if k >= 0 && d.changes() && p.g == p.whole {
			continue // what lies beside it differs; looked at choice by choice
		}
		if k < 0 {
			p.fault(t.Detail, fmt.Sprintf("no line of the piece %q is its mouth", t.Piece.Value), "",
				"draw the mouth in the outline, with dart: and this name")
			continue
		}
		n := len(d.Outline)
		beside := []string{d.Outline[(k+n-1)%n].Edge.Value, d.Outline[(k+1)%n].Edge.Value}
		if len(t.Between) != 2 {
			p.fault(t.Detail, "a dart lies between two edges", "", "write between: [one edge, the other]")
			continue
		}
		for _, e := range t.Between {
			p.known(e, "edge beside the mouth of the dart", beside)
		}
		p.known(t.Toward, "edge beside the mouth of the dart", beside)
	}
}

// mouths checks that every mouth in an outline has its dart.
func (p *parser) mouths() {
	g := p.g
	for i := range g.Drafts {
		for _, s := range g.Drafts[i].Outline {
			if !s.Dart.IsZero() {
				var darts []string
				for _, t := range g.Details {
					if t.Piece.Value == g.Drafts[i].Piece.Value {
						darts = append(darts, t.Detail.Value)
					}
				}
				p.known(s.Dart, "dart in this piece under details:", darts)
			}
		}
	}
}

// checks compiles the laws of the garment. A law in a part knows the part's
// lines by their names there.
func (p *parser) checks() {
	g := p.g
	names := make([]formula.Names, len(g.scopes))
	for i, s := range g.scopes {
		names[i] = s.all(p)
	}
	add := func(t form.Text, from origin) {
		names[0] = names[0].With(formula.Number, lengthName(t.Value))
		if from.under > 0 {
			names[from.under] = names[from.under].With(formula.Number, lengthName(from.local))
		}
	}
	for _, s := range g.Seams {
		add(s.Join, s.from)
	}
	for _, e := range g.Edges {
		add(e.Edge, e.from)
	}
	for _, t := range g.Details {
		add(t.Detail, t.from)
	}
	for _, c := range g.Checks {
		p.compile(c.Holds, formula.Condition, names[c.from.under])
	}
}
