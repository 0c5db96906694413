package seams

import (
	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// works are the formulas of a construction by which it is judged and sized, in
// the places of its texts; nil where a text was left out.
type works struct {
	sizes                              []*formula.Formula
	allowance, allowanceB, finished    *formula.Formula
	stripWidth, stripEnds              *formula.Formula
	elasticWidth, elasticLength        *formula.Formula
	ruledOut, speaksFor, speaksAgainst []*formula.Formula

	names formula.Names // that the making may ask for
	made  *making       // nil where it is read later
}

// making is how a construction is made, once it is chosen, with its formulas.
type making struct {
	Passes []Pass
	Checks []Check
	Figure []FigureItem
	Stages []Stage
	Differ []Difference
	Source string

	passWhen, passStitch        []*formula.Formula
	checkExpect, checkTolerance []*formula.Formula
	figure                      []drawnBy
	stages                      [][]drawnBy
}

// drawnBy is what a line of a section is drawn by: whether it is there, and its
// points, x and y each.
type drawnBy struct {
	when    *formula.Formula
	through [][]*formula.Formula
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
	w.names = names
	if c.later == nil {
		w.made = newMaking(making{Passes: c.Passes, Checks: c.Checks, Figure: c.Figure, Stages: c.Stages, Differ: c.Differ, Source: c.Source}, names)
	}
	return w
}

func newMaking(how making, names formula.Names) *making {
	m := &how
	for _, p := range m.Passes {
		m.passWhen = append(m.passWhen, formula.New(p.When, formula.Condition, names))
		m.passStitch = append(m.passStitch, number(p.Length, names))
	}
	for _, k := range m.Checks {
		m.checkExpect = append(m.checkExpect, number(k.Expect, names))
		m.checkTolerance = append(m.checkTolerance, number(k.Tolerance, names))
	}
	m.figure = drawing(m.Figure, names)
	for _, s := range m.Stages {
		m.stages = append(m.stages, drawing(s.Shows, names))
	}
	return m
}

func drawing(items []FigureItem, names formula.Names) []drawnBy {
	var out []drawnBy
	for _, item := range items {
		line := drawnBy{when: formula.New(item.When, formula.Condition, names)}
		for _, point := range item.Through {
			var xy []*formula.Formula
			for _, coordinate := range point {
				xy = append(xy, number(coordinate, names))
			}
			line.through = append(line.through, xy)
		}
		out = append(out, line)
	}
	return out
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
func (w *works) all(m *making) []*formula.Formula {
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
	add(m.passWhen...)
	add(m.passStitch...)
	add(m.checkExpect...)
	add(m.checkTolerance...)
	for _, lines := range append([][]drawnBy{m.figure}, m.stages...) {
		for _, line := range lines {
			add(line.when)
			for _, xy := range line.through {
				add(xy...)
			}
		}
	}
	return out
}

func (c *Construction) prepare(facts formula.Names) {
	if c.later != nil {
		c.later.facts = facts
		return
	}
	c.works = newWorks(c, facts)
}

// formulas are those of a construction whose making was read with it.
func (c *Construction) formulas() []*formula.Formula {
	w := c.ready()
	return w.all(w.made)
}

// ready are the formulas; made here where the construction was not loaded.
func (c *Construction) ready() *works {
	if c.works != nil {
		return c.works
	}
	return newWorks(c, formula.NamesOf(Facts{}))
}

// Compile compiles every rule and formula of the construction now, which
// otherwise happens at first use. The error is [form.Faults], all of them.
func (c *Construction) Compile() error {
	c, err := c.whole()
	if err != nil {
		return err
	}
	m, err := c.making()
	if err != nil {
		return err
	}
	return compile(c.ready().all(m))
}

// making is how the construction is made, read now where that was put off. The
// error is [form.Faults].
func (c *Construction) making() (*making, error) {
	w := c.ready()
	if w.made != nil {
		return w.made, nil
	}
	return c.later.how(w.names)
}

func compile(fs []*formula.Formula) error {
	var faults form.Faults
	for _, f := range fs {
		if err := f.Check(); err != nil {
			faults = append(faults, err.(form.Fault))
		}
	}
	return faults.Err()
}
