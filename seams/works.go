package seams

import (
	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// works are the formulas of a construction, in the places of its texts; nil
// where a text was left out.
type works struct {
	sizes                              []*formula.Formula
	allowance, allowanceB, finished    *formula.Formula
	stripWidth, stripEnds              *formula.Formula
	elasticWidth, elasticLength        *formula.Formula
	ruledOut, speaksFor, speaksAgainst []*formula.Formula
	passWhen, passStitch               []*formula.Formula
	checkExpect, checkTolerance        []*formula.Formula
	figure                             [][][]*formula.Formula
}

// allowanceName is the name under which later formulas may use the allowance,
// unless a size has it already.
const allowanceName = "allowance"

func newWorks(c *Construction, facts formula.Names) *works {
	w := &works{
		ruledOut:      conditions(c.RuledOut, facts),
		speaksFor:     conditions(c.SpeaksFor, facts),
		speaksAgainst: conditions(c.SpeaksAgainst, facts),
	}
	names := facts
	for _, s := range c.Sizes {
		w.sizes = append(w.sizes, number(s.Value, names))
		names = names.With(formula.Number, s.Key.Value)
	}
	w.allowance = number(c.Allowance, names)
	if names.Refuses(allowanceName) == "" {
		names = names.With(formula.Number, allowanceName)
	}
	w.allowanceB, w.finished = number(c.AllowanceB, names), number(c.Finished, names)
	if c.Strip != nil {
		w.stripWidth, w.stripEnds = number(c.Strip.Width, names), number(c.Strip.Ends, names)
	}
	if c.Elastic != nil {
		w.elasticWidth, w.elasticLength = number(c.Elastic.Width, names), number(c.Elastic.Length, names)
	}
	for _, p := range c.Passes {
		w.passWhen = append(w.passWhen, formula.New(p.When, formula.Condition, names))
		w.passStitch = append(w.passStitch, number(p.Length, names))
	}
	for _, k := range c.Checks {
		w.checkExpect = append(w.checkExpect, number(k.Expect, names))
		w.checkTolerance = append(w.checkTolerance, number(k.Tolerance, names))
	}
	for _, item := range c.Figure {
		var line [][]*formula.Formula
		for _, point := range item.Through {
			var xy []*formula.Formula
			for _, coordinate := range point {
				xy = append(xy, number(coordinate, names))
			}
			line = append(line, xy)
		}
		w.figure = append(w.figure, line)
	}
	return w
}

// number is a formula for a number, nil where the text was left out.
func number(text form.Text, names formula.Names) *formula.Formula {
	if text.IsZero() {
		return nil
	}
	return formula.New(text, formula.Number, names)
}

func conditions(rules []Rule, names formula.Names) []*formula.Formula {
	out := make([]*formula.Formula, len(rules))
	for i, r := range rules {
		out[i] = formula.New(r.When, formula.Condition, names)
	}
	return out
}

// all are the formulas in the order of the construction's keys.
func (w *works) all() []*formula.Formula {
	var out []*formula.Formula
	add := func(fs ...*formula.Formula) {
		for _, f := range fs {
			if f != nil && !f.Text().IsZero() {
				out = append(out, f)
			}
		}
	}
	add(w.sizes...)
	add(w.allowance, w.allowanceB, w.finished, w.stripWidth, w.stripEnds, w.elasticWidth, w.elasticLength)
	add(w.ruledOut...)
	add(w.speaksFor...)
	add(w.speaksAgainst...)
	add(w.passWhen...)
	add(w.passStitch...)
	add(w.checkExpect...)
	add(w.checkTolerance...)
	for _, line := range w.figure {
		for _, xy := range line {
			add(xy...)
		}
	}
	return out
}

func (c *Construction) prepare(facts formula.Names) { c.works = newWorks(c, facts) }

func (c *Construction) formulas() []*formula.Formula { return c.ready().all() }

// ready are the formulas; made here where the construction was not loaded.
func (c *Construction) ready() *works {
	if c.works != nil {
		return c.works
	}
	return newWorks(c, formula.NamesOf(Facts{}))
}

// Compile compiles every rule and formula of the construction now, which
// otherwise happens at first use. The error is [form.Faults], all of them.
func (c *Construction) Compile() error { return compile(c.formulas()) }

func compile(fs []*formula.Formula) error {
	var faults form.Faults
	for _, f := range fs {
		if err := f.Check(); err != nil {
			faults = append(faults, err.(form.Fault))
		}
	}
	return faults.Err()
}
