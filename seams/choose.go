package seams

import (
	"cmp"
	"errors"
	"slices"

	"bodkin/seams/formula"
)

func (r *NeedleRule) prepare(facts formula.Names) {
	r.rule = formula.New(r.When, formula.Condition, rowNames(facts))
}

func (r *NeedleRule) formulas() []*formula.Formula { return given(r.rule) }

func (t *Thread) prepare(facts formula.Names) {
	t.rule = formula.New(t.When, formula.Condition, rowNames(facts))
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

// Row is a row of stitching, as needle and thread rules may ask about it.
type Row struct {
	Layers    int    // plies under the foot
	Stitch    string // ISO 4915 type, or a hand stitch
	Topstitch bool   // meant to be seen
	Twin      bool   // two needles in one holder
	Basting   bool   // it comes out again
}

// plainRow is a seam of two plies in lockstitch.
func plainRow() Row { return Row{Layers: 2, Stitch: "301"} }

// rowNames are the names of rules on a row: the facts, and layers, stitch,
// topstitch, twin, basting.
func rowNames(facts formula.Names) formula.Names {
	return facts.With(formula.Number, "layers").With(formula.Words, "stitch").With(formula.Condition, "topstitch", "twin", "basting")
}

func (r Row) values(facts Facts) formula.Values {
	values := formula.ValuesOf(facts.usable())
	values["layers"], values["stitch"] = float64(r.Layers), r.Stitch
	values["topstitch"], values["twin"], values["basting"] = r.Topstitch, r.Twin, r.Basting
	return values
}

// NeedleFor is the machine needle for a plain seam in the cloth of the facts:
// the first rule that holds. The error is a [form.Fault] in a rule, or
// [ErrNoRule].
func (s *Shelf) NeedleFor(facts Facts) (*NeedleRule, error) { return s.NeedleForRow(facts, plainRow()) }

// NeedleForRow is the machine needle for a row of stitching, as [Shelf.NeedleFor].
func (s *Shelf) NeedleForRow(facts Facts, row Row) (*NeedleRule, error) {
	values := row.values(facts)
	for i := range s.Needles {
		if ok, err := s.Needles[i].rule.Holds(values); err != nil || ok {
			return &s.Needles[i], err
		}
	}
	return nil, ErrNoRule
}

// HandNeedleFor is the needle for hand stitches: the first rule that holds. The
// error is a [form.Fault] in a rule, or [ErrNoRule].
func (s *Shelf) HandNeedleFor(facts Facts, row Row) (*HandNeedle, error) {
	values := row.values(facts)
	for i := range s.HandNeedles {
		if ok, err := s.HandNeedles[i].rule.Holds(values); err != nil || ok {
			return &s.HandNeedles[i], err
		}
	}
	return nil, ErrNoRule
}

// ThreadFor is the sewing thread for a plain seam in the cloth of the facts:
// the first rule that holds. The error is a [form.Fault] in a rule, or
// [ErrNoRule].
func (s *Shelf) ThreadFor(facts Facts) (*Thread, error) { return s.ThreadForRow(facts, plainRow()) }

// ThreadForRow is the thread for a row of stitching, as [Shelf.ThreadFor].
func (s *Shelf) ThreadForRow(facts Facts, row Row) (*Thread, error) {
	values := row.values(facts)
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

// WeighInterfacings judges every interfacing for pieces of the garment's cloth
// in the facts. All are returned: the allowed before the ruled out, then the
// highest score, then by name. The error is a [form.Fault] in a rule.
func (s *Shelf) WeighInterfacings(facts Facts) ([]InterfacingVerdict, error) {
	return s.weighInterfacings(facts, false)
}

// WeighTapes judges the tapes that hold a seam line or an edge, as
// [Shelf.WeighInterfacings] does what is for pieces.
func (s *Shelf) WeighTapes(facts Facts) ([]InterfacingVerdict, error) {
	return s.weighInterfacings(facts, true)
}

// Tape reports whether the interfacing is for a line and not for a piece.
func (i Interfacing) Tape() bool { return i.For == "seam" }

func (s *Shelf) weighInterfacings(facts Facts, tapes bool) ([]InterfacingVerdict, error) {
	values := formula.ValuesOf(facts.usable())
	var verdicts []InterfacingVerdict
	for i := range s.Interfacings {
		in := &s.Interfacings[i]
		if in.Tape() != tapes {
			continue
		}
		v := InterfacingVerdict{Interfacing: in}
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
		verdicts = append(verdicts, v)
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
