package order

import (
	"context"
	"math"
)

// A Search says how SearchAlone looks for an order.
type Search struct {
	Backwards bool // from the end
	Strong    bool // with a strengthened bound from the start
	Above     bool // with no order known beforehand; else with the optimum + 1
}

// An Order is a sequence with the ways in which its operations are done.
type Order struct{ Sequence, Ways []int }

// SearchAlone runs A* by itself, without the beams that come before it and
// with no limit, and returns the order found, or nil.
func SearchAlone(p Problem, how Search, optimum int64) (found *Order, bound int64, finished bool) {
	t := newTask(p)
	m := compile(t)
	s := m
	if how.Backwards {
		s = m.reversed()
	}
	best := optimum + 1
	if how.Above {
		best = infinite
	}
	search := newSearch(s, newBound(s), best)
	if how.Strong && search.bound.chain == nil {
		search.strengthen(context.Background(), 8, s.n)
	}
	finished = search.run(context.Background(), math.MaxInt/2, math.MaxInt)
	return t.order(m, search.sequence(), how.Backwards), search.lower(), finished
}

func (t *task) order(m *model, acts []int, back bool) *Order {
	if acts == nil {
		return nil
	}
	if back {
		acts = backwards(acts)
	}
	sequence, ways := t.steps(m, acts)
	return &Order{sequence, ways}
}

// BeamAlone runs one beam and returns the order found and its bound.
func BeamAlone(p Problem, width int, back bool) (found *Order, bound int64) {
	t := newTask(p)
	m := compile(t)
	s := m
	if back {
		s = m.reversed()
	}
	b := newBeam(s, newBound(s), infinite)
	acts := b.run(context.Background(), width, math.MaxInt)
	return t.order(m, acts, back), b.low + m.constant
}

// ImproveAlone tries steps of improvement on the order that the narrowest beam
// finds, and returns it before and after, and after being told.
func ImproveAlone(p Problem, steps int) (before, after, told *Order) {
	t := newTask(p)
	m := compile(t)
	acts := newBeam(m, newBound(m), infinite).run(context.Background(), 1, math.MaxInt)
	before = t.order(m, acts, false)
	v := newImprover(m)
	for range steps {
		if better := v.step(context.Background(), acts, m.price(acts)); better != nil {
			acts = better
		}
	}
	return before, t.order(m, acts, false), t.order(m, tell(t, m, acts), false)
}

// Reading returns the number of runs, changes of group and pairs against their
// ranks of a sequence of operations that have one way each.
func Reading(p Problem, sequence []int) (runs, groups, against int) {
	t := newTask(p)
	m := compile(t)
	v := t.judge(m, t.actsOf(m, sequence))
	return v.runs, v.groups, v.against
}

// Tell puts an order of operations that have one way each into the sequence in
// which it is told.
func Tell(p Problem, sequence []int) []int {
	t := newTask(p)
	m := compile(t)
	return t.order(m, tell(t, m, t.actsOf(m, sequence)), false).Sequence
}

func (t *task) actsOf(m *model, sequence []int) []int {
	var acts []int
	for _, i := range sequence {
		acts = append(acts, m.ways[i][0])
	}
	for i := len(t.name); i < m.n; i++ {
		acts = append(acts, m.ways[i][0])
	}
	return acts
}
