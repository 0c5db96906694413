package templates

import (
	"iter"
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
	"bodkin/seams/length"
)

// compile takes a text in as a formula, unless it is a length with its unit.
func (p *parser) compile(t form.Text, kind formula.Kind, names formula.Names) {
	if _, err := length.Parse(t.Value); err == nil && kind == formula.Number {
		return
	}
	f := formula.New(t, kind, names)
	if err := f.Check(); err != nil {
		p.faults = append(p.faults, faults(err)...)
		return
	}
	p.g.formulas[t.At] = f
}

// number is what a text of the file comes to: a length with its unit, or a
// formula over the values; 0 where it was left out.
func (g *Garment) number(t form.Text, v formula.Values) (float64, error) {
	if t.IsZero() {
		return 0, nil
	}
	if f, ok := g.formulas[t.At]; ok {
		return f.Number(v)
	}
	mm, err := length.Parse(t.Value)
	return float64(mm), err
}

// values declares and orders the named formulas.
func (p *parser) values() {
	g := p.g
	for _, v := range g.Values {
		if why := p.names.Refuses(v.Key.Value); why != "" {
			p.fault(v.Key, why, "", "choose another name")
			continue
		}
		p.names = p.names.With(formula.Number, v.Key.Value)
	}
	for _, v := range g.Values {
		p.compile(v.Value, formula.Number, p.names)
	}
	const unseen, open, done = 0, 1, 2
	state := make([]int, len(g.Values))
	var path []string
	var visit func(i int) bool
	visit = func(i int) bool {
		name := g.Values[i].Key.Value
		switch state[i] {
		case done:
			return true
		case open:
			loop := append(path[slices.Index(path, name):], name)
			p.fault(g.Values[i].Key, "the values go round in a circle: "+strings.Join(loop, " needs "), "",
				"work one of them out from measures and choices alone")
			return false
		}
		state[i] = open
		path = append(path, name)
		for used := range identifiers(g.Values[i].Value.Value) {
			if j := slices.IndexFunc(g.Values, func(v form.Pair[form.Text]) bool { return v.Key.Value == used }); j >= 0 {
				if !visit(j) {
					return false
				}
			}
		}
		path = path[:len(path)-1]
		state[i] = done
		g.order = append(g.order, i)
		return true
	}
	for i := range g.Values {
		if !visit(i) {
			return
		}
	}
}

// identifiers yields the words of a formula outside quotes.
func identifiers(s string) iter.Seq[string] {
	const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ_0123456789"
	return func(yield func(string) bool) {
		for s != "" {
			if q := s[0]; q == '\'' || q == '"' {
				_, rest, _ := strings.Cut(s[1:], string(q))
				s = rest
				continue
			}
			word := s[:len(s)-len(strings.TrimLeft(s, letters))]
			if word == "" {
				s = s[1:]
				continue
			}
			if !yield(word) {
				return
			}
			s = s[len(word):]
		}
	}
}
