package sheets

import (
	"slices"

	"bodkin/process"
)

// Reader is whom a sheet is for.
type Reader string

// The readers. The zero value means the maker.
const (
	Maker Reader = "maker" // everything, with its reasons
	Bench Reader = "bench" // an assistant's part, with nothing to look up elsewhere
	Class Reader = "class" // learners who work by the same numbers
)

// Readers are the words for them.
func Readers() []string { return []string{string(Maker), string(Bench), string(Class)} }

// TypeSize is the usual size of the type of a sheet, in points: a bench sheet is
// read from further away, a brief one should take few pages.
func (o Options) TypeSize() float64 {
	switch {
	case o.For == Bench:
		return 12
	case o.For == Class:
		return 11
	case o.Brief:
		return 9
	}
	return 10.5
}

// StepHead is how large the number is that the heading of a step begins with, in
// sizes of the body: a class calls its numbers out.
func (o Options) StepHead() float64 {
	if o.For == Class {
		return 2.2
	}
	return 1.12
}

// tellMaker is the maker's sheet.
func (c *composer) tellMaker() {
	c.opening()
	c.layOut()
	c.cautions()
	c.cutOut()
	c.glance()
	c.theSteps()
	if !c.brief { // whose opening tells what the changes come to and what was proved
		c.whyThisOrder()
	}
	c.notices()
	c.notes()
}

// tellBench is what an assistant needs to do her steps without asking.
func (c *composer) tellBench() {
	c.heading(1, plain(upper(c.title())))
	c.para(c.made())
	c.sizesOfTheJob()
	c.para(plain(c.say.bench.intro))
	c.layOut()
	c.cautions()
	if slices.ContainsFunc(c.told(), func(o process.Operation) bool { return o.Does == "cut" }) {
		c.cutOut()
	}
	c.theSteps()
	c.notes()
}

// tellClass is the handout that every learner has.
func (c *composer) tellClass() {
	c.heading(1, plain(upper(c.title())))
	c.para(c.made())
	c.sizesOfTheJob()
	c.toFill(c.say.class.name, 1)
	c.para(plain(c.say.class.intro))
	c.sidesFigure()
	c.clothTable()
	c.sizeTable()
	c.layOut()
	c.cautions()
	c.cutOut()
	c.theSteps()
	c.glossary()
	c.easeOfReading()
	c.notices()
	c.notes()
}

// easeOfReading says how easily the steps are read.
func (c *composer) easeOfReading() {
	if ease := easeOf(c.plan); ease > 0 {
		c.para(soft(say(c.say.class.ease, values{"figure": plain(number(int(ease))), "band": plain(c.easeWords(ease))})))
	}
}

// selected are the steps that the sheet tells.
func (c *composer) selected() []process.Step {
	if len(c.only) == 0 {
		return c.plan.Steps
	}
	var out []process.Step
	for _, s := range c.plan.Steps {
		if c.only[s.Number] {
			out = append(out, s)
		}
	}
	return out
}

// partly tells whether only some of the steps are told.
func (c *composer) partly() bool { return len(c.only) > 0 }

// told are the operations of the steps that the sheet tells, in their order.
func (c *composer) told() []process.Operation {
	if !c.partly() {
		return c.plan.Operations
	}
	var out []process.Operation
	for _, o := range c.plan.Operations {
		if c.only[c.stepOf[o.ID]] {
			out = append(out, o)
		}
	}
	return out
}
