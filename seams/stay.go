package seams

import (
	"slices"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Stay asks for a tape along a line that would grow, or for a strip of interfacing
// in a hem: when, and why. What tape or interfacing it is, [Shelf.WeighTapes] and
// [Shelf.WeighInterfacings] tell. Of several that hold the first is taken.
type Stay struct {
	Name    string      `yaml:"stay,required"`
	Title   string      `yaml:"title,required"`
	For     []string    `yaml:"for,required"` // kinds of construction: seam, hem, binding, in-seam-pocket
	With    string      `yaml:"with" oneof:"tape strip"`
	MadeAs  []form.Text `yaml:"made_as"` // of a strip: the constructions that hide it
	Cut     string      `yaml:"cut" oneof:"bias straight"`
	Below   float64     `yaml:"below"` // mm of the strip that lie beyond the hem's fold
	Above   float64     `yaml:"above"` // mm of it that reach beyond the hem's upper edge
	Text    string      `yaml:"text"`  // where the strip lies
	When    form.Text   `yaml:"when,required"`
	Because string      `yaml:"because,required"`
	Source  string      `yaml:"source,required"`

	rule *formula.Formula
}

// Strip reports whether it asks for a strip of interfacing, not for a tape.
func (s *Stay) Strip() bool { return s.With == "strip" }

func (s *Stay) prepare(facts formula.Names) {
	s.rule = formula.New(s.When, formula.Condition, facts)
}

func (s *Stay) formulas() []*formula.Formula { return given(s.rule) }

// stay refuses a kind that no construction of the shelf makes, a construction
// that is not of these kinds, and a strip that does not say how it is cut.
func (l *loader) stay(st Stay, n *form.Node, s *Shelf) {
	var kinds, made []string
	for i := range s.Constructions {
		kinds = append(kinds, s.Constructions[i].Kind)
		if slices.Contains(st.For, s.Constructions[i].Kind) {
			made = append(made, s.Constructions[i].Name)
		}
	}
	for i, kind := range st.For {
		l.listed(n.At("for").Items()[i], "kind of construction", kind, kinds)
	}
	for i, name := range st.MadeAs {
		l.listed(n.At("made_as").Items()[i], "construction of these kinds", name.Value, made)
	}
	for _, k := range []struct {
		key string
		has bool
	}{{"made_as", len(st.MadeAs) > 0}, {"cut", st.Cut != ""}, {"text", st.Text != ""}} {
		switch {
		case st.Strip() && !k.has:
			l.fault(n.At("stay"), "", "say with made_as: which constructions hide it, with cut: bias or straight, with text: where it lies",
				"%s asks for a strip and has no %s", st.Name, k.key)
		case !st.Strip() && k.has:
			l.fault(n.At(k.key), "", "write with: strip, or leave it out", "%s: is for a strip, and %s asks for a tape", k.key, st.Name)
		}
	}
	l.within(n, "below", st.Below, 0, 50, " mm")
	l.within(n, "above", st.Above, 0, 50, " mm")
}

// StayFor is the first rule that asks for a tape along a line of a kind, as the
// facts are; nil where none does. The error is a [form.Fault] in a rule.
func (s *Shelf) StayFor(kind string, facts Facts) (*Stay, error) {
	return s.stayed(facts, func(st *Stay) bool { return !st.Strip() && slices.Contains(st.For, kind) })
}

// StripFor is the first rule that asks for a strip of interfacing in a line of
// this construction, as the facts are; nil where none does. The error is a
// [form.Fault] in a rule.
func (s *Shelf) StripFor(c *Construction, facts Facts) (*Stay, error) {
	return s.stayed(facts, func(st *Stay) bool {
		return st.Strip() && slices.ContainsFunc(st.MadeAs, func(t form.Text) bool { return t.Value == c.Name })
	})
}

func (s *Shelf) stayed(facts Facts, asks func(*Stay) bool) (*Stay, error) {
	values := formula.ValuesOf(facts.usable())
	for i := range s.Stays {
		st := &s.Stays[i]
		if !asks(st) {
			continue
		}
		if ok, err := st.rule.Holds(values); err != nil || ok {
			return st, err
		}
	}
	return nil, nil
}
