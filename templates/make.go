package templates

import (
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
	m := &Made{Garment: g, Measures: in.measures, Choices: in.choices}
	w := &workshop{g: g, in: in, made: m}
	for i := range g.Drafts {
		s, err := g.lay(&g.Drafts[i], in.values)
		if err != nil {
			return nil, faults(err)
		}
		p, err := g.piece(s, g.topology)
		if err != nil {
			return nil, faults(err)
		}
		m.Pieces = append(m.Pieces, p)
		for k := range g.Details {
			if shape, ok := s.darts[g.Details[k].Detail.Value]; ok && g.Details[k].Piece.Value == p.Name {
				m.Details = append(m.Details, shape.made(&g.Details[k]))
			}
		}
	}
	for i := range g.Seams {
		w.join(i)
	}
	for i := range g.Edges {
		w.treat(i)
	}
	w.check()
	if err := w.faults.Err(); err != nil {
		return nil, err
	}
	return m, nil
}

// workshop holds what is made so far.
type workshop struct {
	g      *Garment
	in     *given
	made   *Made
	faults form.Faults
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
func (w *workshop) number(t form.Text) float64 {
	x, err := w.g.number(t, w.in.values)
	if err != nil {
		w.faults = append(w.faults, faults(err)...)
	}
	return x
}
