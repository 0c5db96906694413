package templates

import (
	"fmt"
	"math"
	"strings"

	"bodkin/seams/form"
	"bodkin/templates/outline"
)

// SketchedPiece is a piece of a garment in which something is amiss, as far as it
// can be drawn at its usual measures.
type SketchedPiece struct {
	Title   string
	Outline outline.Outline
	Edges   []SketchedEdge // in the order of the outline
}

// SketchedEdge is an edge of it: what becomes of it, and what is amiss with it, in
// a few words; empty where nothing is.
type SketchedEdge struct {
	Name  string
	Use   string
	Amiss string
}

// Sketch draws those pieces of a garment's file that can be drawn though it has
// faults: of one whose names and formulas are right, up to the first piece whose
// outline fails. It is empty where nothing can be drawn, and for a file without
// faults it is all pieces.
func Sketch(file string, data []byte) []SketchedPiece {
	p := &parser{g: &Garment{}}
	if err := form.Decode(file, data, p.g); err != nil {
		return nil
	}
	if p.read(); len(p.faults) > 0 {
		return nil
	}
	g := p.g
	in, err := g.take(nil, nil)
	if err != nil {
		return nil
	}
	v := g
	if g.varies {
		if v, err = g.sift(in.scopes); err != nil {
			return nil
		}
	} else {
		whole := *g
		v = &whole
	}
	t := &topology{uses: map[ChainPart]string{}}
	v.topology = t
	for i := range v.Drafts {
		d := &v.Drafts[i]
		t.uses[ChainPart{d.Piece.Value, d.Fold.Value}] = "fold"
		for _, s := range d.Outline {
			if !s.Dart.IsZero() {
				t.uses[ChainPart{d.Piece.Value, s.Edge.Value}] = "dart " + s.Dart.Value
			}
		}
	}
	note := func(chain []form.Text, use string) (parts []ChainPart) {
		parts, _ = v.chain(chain)
		for _, c := range parts {
			t.uses[c] = use
		}
		return parts
	}
	for _, e := range v.Edges {
		note(e.Along, "edge "+e.Edge.Value)
	}
	for _, d := range v.Details {
		note(d.Along, "detail "+d.Detail.Value)
	}
	sides := make([][2][]ChainPart, len(v.Seams))
	for i, s := range v.Seams {
		sides[i] = [2][]ChainPart{note(s.A, "join "+s.Join.Value), note(s.B, "join "+s.Join.Value)}
	}
	own := func(pieces []form.Text, use string) {
		for _, at := range pieces {
			d := v.draft(at.Value)
			if d == nil {
				continue
			}
			for _, e := range d.edges() {
				if c := (ChainPart{at.Value, e}); t.uses[c] == "" {
					t.uses[c] = use
				}
			}
		}
	}
	for _, e := range v.Edges {
		own(e.Pieces, "edge "+e.Edge.Value)
	}
	for _, d := range v.Details {
		own(d.Pieces, "detail "+d.Detail.Value)
	}
	w := &workshop{g: v, whole: g, in: in, made: &Made{Garment: v}, shortened: map[ChainPart]float64{}}
	_ = w.draw() // the first outline that fails ends the sketch
	amiss := map[ChainPart]string{}
	for i, s := range v.Seams {
		a, b := sides[i][0], sides[i][1]
		if !w.has(a) || !w.has(b) {
			continue
		}
		before := len(w.faults)
		w.fit(fitted{at: s.Join, title: s.Title, scope: s.from.scope, a: a, b: b,
			lengthA: w.sideLength(a, s.Across), lengthB: w.sideLength(b, s.Across), ease: s.Ease, gather: s.Gather, tolerance: s.Tolerance})
		if len(w.faults) > before {
			for _, c := range append(a, b...) {
				amiss[c] = "the two sides of the " + strings.ToLower(s.Title) + " do not fit"
				if len(s.Gather) == 0 {
					amiss[c] += fmt.Sprintf(", %.1f mm apart", math.Abs(w.sideLength(a, s.Across)-w.sideLength(b, s.Across)))
				}
			}
		}
	}
	for c, words := range narrowOpenings(file, data) {
		if amiss[c] == "" {
			amiss[c] = words
		}
	}
	var out []SketchedPiece
	for _, m := range w.made.Pieces {
		x := SketchedPiece{Title: m.Title, Outline: m.Outline}
		for _, e := range m.Edges {
			c := ChainPart{m.Name, e.Name}
			s := SketchedEdge{Name: e.Name, Use: t.uses[c], Amiss: amiss[c]}
			if s.Use == "" {
				s.Amiss = "nothing becomes of it"
			}
			x.Edges = append(x.Edges, s)
		}
		out = append(out, x)
	}
	return out
}

// narrowOpenings are the edges, in words, of what does not go over the part of the
// body that it must, at the usual measures: of a garment that can be read and drawn.
func narrowOpenings(file string, data []byte) map[ChainPart]string {
	g, err := Parse(file, data)
	if err != nil {
		return nil
	}
	in, err := g.take(nil, nil)
	if err != nil {
		return nil
	}
	v, err := g.variant(in)
	if err != nil {
		return nil
	}
	w := &workshop{g: v, whole: g, in: in, made: &Made{Garment: v}, shortened: map[ChainPart]float64{}}
	if err := w.draw(); err != nil {
		return nil
	}
	w.shorten()
	out := map[ChainPart]string{}
	note := func(t walked, pass func()) {
		before := len(w.faults)
		if pass(); len(w.faults) > before {
			for _, c := range t.parts {
				out[c] = w.faults[before].Message
			}
		}
	}
	for i := range v.Seams {
		t := v.topology.joins[i].a
		note(t, func() { w.joinPasses(i) })
	}
	for i := range v.Edges {
		t := v.topology.edges[i]
		note(t, func() { w.edgePasses(i) })
	}
	return out
}

// has reports whether every edge of a chain is drawn.
func (w *workshop) has(parts []ChainPart) bool {
	for _, c := range parts {
		drawn := false
		for _, p := range w.made.Pieces {
			if _, ok := p.Outline.Edge(c.Edge); ok && p.Name == c.Piece {
				drawn = true
			}
		}
		if !drawn {
			return false
		}
	}
	return len(parts) > 0
}
