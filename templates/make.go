package templates

import (
	"fmt"
	"strings"

	"bodkin/seams/form"
	"bodkin/templates/outline"
)

// Make draws the garment to measures and choices, given by name as they stand
// in a job: lengths with units, plain numbers, words. What is not given is taken
// from the garment's defaults and marked so. Errors are [form.Faults]: names
// that the garment does not have, lengths outside its range, outlines that cross
// themselves at this size, joins whose two sides differ, laws of the garment
// that this size breaks.
func (g *Garment) Make(size, choices form.Pairs[form.Text]) (*Made, error) {
	in, err := g.take(size, choices)
	if err != nil {
		return nil, err
	}
	v, err := g.variant(in)
	if err != nil {
		return nil, err
	}
	m := &Made{Garment: v, Measures: in.measures, Choices: in.choices}
	w := &workshop{g: v, whole: g, in: in, made: m, shortened: map[ChainPart]float64{}}
	if err := w.draw(); err != nil {
		return nil, err
	}
	w.shorten()
	for i := range v.Seams {
		w.join(i)
	}
	for i := range v.Details {
		if v.Details[i].Kind.Value != "dart" {
			w.detailMade(i)
		}
	}
	for i := range v.Edges {
		w.treat(i)
	}
	w.opens()
	w.check()
	if err := w.faults.Err(); err != nil {
		return nil, err
	}
	return m, nil
}

// draw draws the pieces, and between them works out what waits for their
// lengths. The pieces of the whole garment are counted, those of the variant
// drawn.
func (w *workshop) draw() error {
	next := 0
	for k := range w.whole.Drafts {
		d := w.whole.Drafts[k]
		if next < len(w.g.Drafts) && w.g.Drafts[next].Piece == d.Piece {
			next++
			s, err := w.g.lay(&w.g.Drafts[next-1], w.in.scopes[d.from.scope])
			if err != nil {
				return faults(err)
			}
			if err := w.raise(s); err != nil {
				return err
			}
			p, err := w.g.piece(s, w.g.topology)
			if err != nil {
				return faults(err)
			}
			w.sheets = append(w.sheets, s)
			w.insideOut(s)
			w.made.Pieces = append(w.made.Pieces, p)
			for i := range w.g.Details {
				t := &w.g.Details[i]
				if shape, ok := s.darts[t.Detail.Value]; ok && t.Piece.Value == p.Name {
					if !p.Outline.Holds(shape.point) {
						w.fault(t.Point, fmt.Sprintf("the %s is longer than its piece: its point lies outside the %s", strings.ToLower(t.Title), strings.ToLower(p.Title)),
							"bring its point nearer to its mouth")
					}
					w.made.Details = append(w.made.Details, shape.made(t))
				}
			}
		}
		w.drawn = k + 1
		if err := w.g.settle(w.in, w); err != nil {
			return err
		}
	}
	return nil
}

// workshop holds what is made so far.
type workshop struct {
	g         *Garment // of these choices
	whole     *Garment // with what they leave out
	in        *given
	made      *Made
	sheets    []*sheet
	drawn     int                   // pieces of the whole garment that are drawn or left out
	shortened map[ChainPart]float64 // mm that pleats and tucks take from an edge, as drawn
	faults    form.Faults
	usual     bool // it only draws the garment at its usual measures, to compare
	turned    bool // a piece that is turned inside out has been reported
}

// sheet returns the drafting table of a piece, or nil.
func (w *workshop) sheet(piece string) *sheet {
	for _, s := range w.sheets {
		if s.draft.Piece.Value == piece {
			return s
		}
	}
	return nil
}

// shorten notes what pleats and tucks take from the edges.
func (w *workshop) shorten() {
	for i := range w.g.Details {
		t := &w.g.Details[i]
		if len(t.Takes) == 0 {
			continue
		}
		parts, _ := w.g.chain(t.Takes)
		if t.Kind.Value == "gathers" {
			w.drawUp(t, parts)
			continue
		}
		taken := 2 * w.number(t.Depth, t.from.scope) * w.number(t.Count, t.from.scope)
		for _, c := range parts {
			w.shortened[c] += taken
		}
	}
}

// drawUp notes what gathers take from their edges: each its part of the length.
func (w *workshop) drawUp(t *DetailDraft, parts []ChainPart) {
	whole, drawn := w.chainLength(t.Takes), w.length(t.Length, t.from.scope)
	if drawn <= 0 || drawn >= whole {
		w.fault(t.Length, fmt.Sprintf("the %s cannot draw an edge of %s up to %s", t.Title, said(whole), said(drawn)),
			"give the length that it has when it is drawn up")
		return
	}
	for _, c := range parts {
		if p := w.piece(c.Piece); p != nil {
			if e, ok := p.Outline.Edge(c.Edge); ok {
				w.shortened[c] += e.Length() * (1 - drawn/whole)
			}
		}
	}
}

// piece returns a made piece by name.
func (w *workshop) piece(name string) *Piece {
	for i := range w.made.Pieces {
		if w.made.Pieces[i].Name == name {
			return &w.made.Pieces[i]
		}
	}
	return nil
}

// edges returns the outlines' edges of a chain.
func (w *workshop) edges(parts []ChainPart) []outline.Edge {
	edges := make([]outline.Edge, len(parts))
	for i, p := range parts {
		edges[i], _ = w.piece(p.Piece).Outline.Edge(p.Edge)
	}
	return edges
}

// number evaluates a text of the garment file, reporting its fault.
func (w *workshop) number(t form.Text, scope int) float64 {
	x, err := w.g.number(t, w.in.scopes[scope])
	if err != nil {
		w.faults = append(w.faults, faults(err)...)
	}
	return x
}

// length evaluates a text of the garment file that cannot be less than nothing,
// reporting its fault.
func (w *workshop) length(t form.Text, scope int) float64 {
	x := w.number(t, scope)
	if x < 0 {
		w.fault(t, fmt.Sprintf("this comes out as %s, less than nothing", said(x)),
			"look again at the measures and choices; if they are right, the formula must be changed for them")
	}
	return x
}

func (w *workshop) fault(at form.Text, message, mend string) {
	w.faults = append(w.faults, at.Fault(0, len([]rune(at.Value)), message, "", mend))
}
