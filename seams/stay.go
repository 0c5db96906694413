package seams

import (
	"cmp"
	"slices"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Stay asks for what holds a line: a tape where it would grow, or a strip of
// interfacing where a hem is folded. It says when, and why; what tape it is,
// [Shelf.WeighTapes] tells, what strip [Shelf.WeighInterfacings]. Of several that
// hold the first is taken.
type Stay struct {
	Name    string    `yaml:"stay,required"`
	Title   string    `yaml:"title,required"`
	For     []string  `yaml:"for,required"` // kinds of construction: seam, hem, binding, in-seam-pocket
	With    string    `yaml:"with"`         // tape, or strip; tape where left out
	In      []string  `yaml:"in"`           // the constructions that have room for it; all of the kinds where left out
	Past    float64   `yaml:"past"`         // mm of a strip beyond the fold and beyond the edge that is turned in, each
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
	for i, name := range st.In {
		var names []string
		for k := range s.Constructions {
			names = append(names, s.Constructions[k].Name)
		}
		l.listed(n.At("in").Items()[i], "construction", name, names)
	}
	if st.With != "" {
		l.listed(n.At("with"), "way to hold a line", st.With, []string{StayTape, HemStrip})
	}
	if st.Past < 0 || st.Past > 50 || st.Past > 0 && st.With != HemStrip {
		l.fault(n.At("past"), "", "write how far a strip reaches past the fold, from 0 to 50 mm; a tape has none", "a strip cannot reach %g mm past the fold", st.Past)
	}
}

// What holds a line.
const (
	StayTape = "tape"
	HemStrip = "strip"
)

// StayFor is the first rule that asks for a tape, or for a strip, along a line
// that is made by a construction, as the facts are; nil where none does. The
// error is a [form.Fault] in a rule.
func (s *Shelf) StayFor(with string, c *Construction, facts Facts) (*Stay, error) {
	values := formula.ValuesOf(facts.usable())
	for i := range s.Stays {
		st := &s.Stays[i]
		if cmp.Or(st.With, StayTape) != with || !slices.Contains(st.For, c.Kind) || len(st.In) > 0 && !slices.Contains(st.In, c.Name) {
			continue
		}
		if ok, err := st.rule.Holds(values); err != nil || ok {
			return st, err
		}
	}
	return nil, nil
}
