package seams

import (
	"slices"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Stay asks for a tape along a line that would grow: when, and why. What tape
// it is, [Shelf.WeighTapes] tells. Of several that hold the first is taken.
type Stay struct {
	Name    string    `yaml:"stay,required"`
	Title   string    `yaml:"title,required"`
	For     []string  `yaml:"for,required"` // kinds of construction: seam, hem, binding, in-seam-pocket
	When    form.Text `yaml:"when,required"`
	Because string    `yaml:"because,required"`
	Source  string    `yaml:"source,required"`

	rule *formula.Formula
}

func (s *Stay) prepare(facts formula.Names) {
	s.rule = formula.New(s.When, formula.Condition, facts)
}

func (s *Stay) formulas() []*formula.Formula { return given(s.rule) }

// stay refuses a kind that no construction of the shelf makes.
func (l *loader) stay(st Stay, n *form.Node, s *Shelf) {
	var kinds []string
	for i := range s.Constructions {
		kinds = append(kinds, s.Constructions[i].Kind)
	}
	for i, kind := range st.For {
		l.listed(n.At("for").Items()[i], "kind of construction", kind, kinds)
	}
}

// StayFor is the first rule that asks for a tape along a line of a kind, as the
// facts are; nil where none does. The error is a [form.Fault] in a rule.
func (s *Shelf) StayFor(kind string, facts Facts) (*Stay, error) {
	values := formula.ValuesOf(facts.usable())
	for i := range s.Stays {
		st := &s.Stays[i]
		if !slices.Contains(st.For, kind) {
			continue
		}
		if ok, err := st.rule.Holds(values); err != nil || ok {
			return st, err
		}
	}
	return nil, nil
}
