package templates

import (
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// scope is what formulas may ask about by name: in the garment's own file, or in
// one included part.
type scope struct {
	names formula.Names  // known before anything is drawn
	defs  []definition   // in an order in which each can be worked out
	waits map[string]int // names that wait for pieces, with the last of these by index
}

// definition is a name with its formula, or with the chain whose length it is.
type definition struct {
	name    form.Text
	formula form.Text
	in      int // the scope in which the formula is read
	chain   []form.Text
}

// before are the names that the piece of this index may use.
func (s *scope) before(piece int) formula.Names {
	var drawn []string
	for _, d := range s.defs {
		if last, late := s.waits[d.name.Value]; late && last < piece {
			drawn = append(drawn, d.name.Value)
		}
	}
	if len(drawn) == 0 {
		return s.names
	}
	return s.names.With(formula.Number, drawn...)
}

// all are the names that may be used once everything is drawn.
func (s *scope) all(p *parser) formula.Names { return s.before(len(p.g.Drafts)) }

// define declares the values, wants and lengths of every scope, finds out which
// of them wait for a piece, and puts them in order.
func (p *parser) define() {
	g := p.g
	own := g.scopes[0]
	own.names = p.names
	for _, v := range g.Values {
		own.defs = append(own.defs, definition{name: v.Key, formula: v.Value})
	}
	for _, l := range g.Lengths {
		own.defs = append(own.defs, definition{name: l.Key, chain: l.Value})
	}
	for i, s := range g.scopes {
		s.waits = map[string]int{}
		seen := s.names
		for _, d := range s.defs {
			if why := seen.Refuses(d.name.Value); why != "" {
				p.fault(d.name, why, "", "choose another name")
			}
			seen = seen.With(formula.Number, d.name.Value)
			p.chainExists(d)
		}
		s.defs = p.inOrder(s.defs, i)
		var early []string
		for _, d := range s.defs {
			if _, late := s.waits[d.name.Value]; !late {
				early = append(early, d.name.Value)
			}
		}
		s.names = s.names.With(formula.Number, early...)
	}
	all := make([]formula.Names, len(g.scopes))
	for i, s := range g.scopes {
		all[i] = s.all(p)
	}
	for _, s := range g.scopes {
		for _, d := range s.defs {
			if d.chain == nil {
				p.compile(d.formula, formula.Number, all[d.in])
			}
		}
	}
}

func (p *parser) chainExists(d definition) {
	if d.chain != nil {
		p.chainNames(d.name, d.chain)
	}
}

// inOrder sorts definitions so that each follows those it uses, and notes which
// of them wait for pieces to be drawn.
func (p *parser) inOrder(defs []definition, number int) []definition {
	s := p.g.scopes[number]
	const unseen, open, done = 0, 1, 2
	state := make([]int, len(defs))
	var path []string
	var order []definition
	var visit func(i int) bool
	visit = func(i int) bool {
		d := defs[i]
		switch state[i] {
		case done:
			return true
		case open:
			loop := append(path[slices.Index(path, d.name.Value):], d.name.Value)
			p.fault(d.name, "the values go round in a circle: "+strings.Join(loop, " needs "), "",
				"work one of them out from measures and choices alone")
			return false
		}
		state[i] = open
		path = append(path, d.name.Value)
		wait := -1
		for _, part := range d.chain {
			piece, _, _ := strings.Cut(part.Value, ".")
			for k := range p.g.Drafts {
				if p.g.Drafts[k].Piece.Value == piece {
					wait = max(wait, k)
				}
			}
		}
		for used := range identifiers(d.formula.Value) {
			if d.in != number { // handed over from the garment, which is ordered already
				if w, late := p.g.scopes[d.in].waits[used]; late {
					wait = max(wait, w)
				}
				continue
			}
			if j := slices.IndexFunc(defs, func(o definition) bool { return o.name.Value == used }); j >= 0 {
				if !visit(j) {
					return false
				}
				if w, late := s.waits[used]; late {
					wait = max(wait, w)
				}
			}
		}
		path = path[:len(path)-1]
		state[i] = done
		if wait >= 0 {
			s.waits[d.name.Value] = wait
		}
		order = append(order, d)
		return true
	}
	for i := range defs {
		if !visit(i) {
			break
		}
	}
	for i, d := range defs { // after a circle the rest is declared too, or every use of it would be a fault
		if state[i] != done {
			order = append(order, d)
		}
	}
	return order
}

// settle works out what can be worked out once these pieces are drawn. A piece
// that the garment does without at these choices has edges of no length.
func (g *Garment) settle(in *given, w *workshop) error {
	for i, s := range g.scopes {
		values := in.scopes[i]
		for _, d := range s.defs {
			if _, ok := values[d.name.Value]; ok {
				continue
			}
			if last, late := s.waits[d.name.Value]; late && !w.past(last) {
				continue
			}
			x := 0.0
			if d.chain != nil {
				x = w.chainLength(d.chain)
			} else {
				var err error
				if x, err = g.number(d.formula, in.scopes[d.in]); err != nil {
					return faults(err)
				}
			}
			values[d.name.Value] = x
		}
	}
	return nil
}

// past reports whether everything up to the piece of this index is drawn.
func (w *workshop) past(piece int) bool { return w.drawn > piece }

func (w *workshop) chainLength(chain []form.Text) float64 {
	sum := 0.0
	parts, _ := w.g.chain(chain)
	for _, c := range parts {
		if p := w.piece(c.Piece); p != nil {
			if e, ok := p.Outline.Edge(c.Edge); ok {
				sum += e.Length()
			}
		}
	}
	return sum
}
