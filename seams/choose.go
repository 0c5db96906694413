package seams

import (
	"cmp"
	"errors"
	"slices"

	"bodkin/seams/formula"
)

func (r *NeedleRule) prepare(facts formula.Names) {
	r.rule = formula.New(r.When, formula.Condition, facts)
}

func (r *NeedleRule) formulas() []*formula.Formula { return given(r.rule) }

func (t *Thread) prepare(facts formula.Names) {
	t.rule = formula.New(t.When, formula.Condition, facts)
}

func (t *Thread) formulas() []*formula.Formula { return given(t.rule) }

func (c *Caution) prepare(facts formula.Names) {
	c.rule = formula.New(c.When, formula.Condition, facts)
}

func (c *Caution) formulas() []*formula.Formula { return given(c.rule) }

func (i *Interfacing) prepare(facts formula.Names) {
	names := facts.With(formula.Number, "weight", "heat_dots")
	i.ruledOut, i.speaksFor = conditions(i.RuledOut, names), conditions(i.SpeaksFor, names)
}

func (i *Interfacing) formulas() []*formula.Formula { return slices.Concat(i.ruledOut, i.speaksFor) }

// given is the formula, unless its text was left out.
func given(f *formula.Formula) []*formula.Formula {
	if f.Text().IsZero() {
		return nil
	}
	return []*formula.Formula{f}
}

// ErrNoRule says that no rule of a table holds for a cloth; ours end in a rule
// that always does.
var ErrNoRule = errors.New("no rule of the table holds")

// NeedleFor is the machine needle for the facts: the first rule that holds.
// The error is a [form.Fault] in a rule, or [ErrNoRule].
func (s *Shelf) NeedleFor(facts Facts) (*NeedleRule, error) {
	values := formula.ValuesOf(facts.usable())
	for i := range s.Needles {
		if ok, err := s.Needles[i].rule.Holds(values); err != nil || ok {
			return &s.Needles[i], err
		}
	}
	return nil, ErrNoRule
}

// ThreadFor is the sewing thread for the facts: the first rule that holds. The
// error is a [form.Fault] in a rule, or [ErrNoRule].
func (s *Shelf) ThreadFor(facts Facts) (*Thread, error) {
	values := formula.ValuesOf(facts.usable())
	for i := range s.Threads {
		if ok, err := s.Threads[i].rule.Holds(values); err != nil || ok {
			return &s.Threads[i], err
		}
	}
	return nil, ErrNoRule
}

// InterfacingVerdict is what the rules say of an interfacing for a cloth.
type InterfacingVerdict struct {
	Interfacing *Interfacing
	RuledOut    []string
	Score       float64
	For         []Reason
}

// Allowed reports whether nothing rules the interfacing out.
func (v InterfacingVerdict) Allowed() bool { return len(v.RuledOut) == 0 }

// WeighInterfacings judges every interfacing for the garment's cloth in the
// facts. All are returned: the allowed before the ruled out, then the highest
// score, then by name. The error is a [form.Fault] in a rule.
func (s *Shelf) WeighInterfacings(facts Facts) ([]InterfacingVerdict, error) {
	values := formula.ValuesOf(facts.usable())
	verdicts := make([]InterfacingVerdict, len(s.Interfacings))
	for i := range s.Interfacings {
		in, v := &s.Interfacings[i], &verdicts[i]
		v.Interfacing = in
		values["weight"], values["heat_dots"] = in.Weight, float64(in.HeatDots)
		if in.Self {
			values["weight"] = facts.Cloth.Weight
		}
		out, err := holding(in.RuledOut, in.ruledOut, values)
		if err != nil {
			return nil, err
		}
		for _, r := range out {
			v.RuledOut = append(v.RuledOut, r.Because)
		}
		if v.For, err = holding(in.SpeaksFor, in.speaksFor, values); err != nil {
			return nil, err
		}
		for _, r := range v.For {
			v.Score += r.Worth
		}
	}
	slices.SortFunc(verdicts, func(a, b InterfacingVerdict) int {
		return cmp.Or(
			min(1, len(a.RuledOut))-min(1, len(b.RuledOut)),
			cmp.Compare(b.Score, a.Score),
			cmp.Compare(a.Interfacing.Name, b.Interfacing.Name))
	})
	return verdicts, nil
}

// CautionsFor are the cautions that the facts call for and those of the acts
// done, in the order of the shelf, each once. The error is a [form.Fault] in a
// rule, or an [*UnknownError] for an act.
func (s *Shelf) CautionsFor(facts Facts, acts []string) ([]*Caution, error) {
	values := formula.ValuesOf(facts.usable())
	var wanted []string
	for _, name := range acts {
		a, err := s.Act(name)
		if err != nil {
			return nil, err
		}
		wanted = append(wanted, a.Caution)
	}
	var out []*Caution
	for i := range s.Cautions {
		c := &s.Cautions[i]
		called := slices.Contains(wanted, c.Name)
		if !called && !c.When.IsZero() {
			var err error
			if called, err = c.rule.Holds(values); err != nil {
				return nil, err
			}
		}
		if called {
			out = append(out, c)
		}
	}
	return out, nil
}
