package templates

import (
	"iter"
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
