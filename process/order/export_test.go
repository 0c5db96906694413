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

// SearchAlone runs A* by itself, without the beams that come before it and
// with no limit, and returns the order found.
func SearchAlone(p Problem, how Search, optimum int64) (sequence []int, bound int64, finished bool) {
	m := compile(p)
	if how.Backwards {
		m = m.reversed()
	}
	best := optimum + 1
	if how.Above {
		best = infinite
	}
	s := newSearch(m, newBound(m), best)
	if how.Strong && s.bound.chain == nil {
		s.strengthen(8, m.n)
	}
	finished = s.run(context.Background(), math.MaxInt/2, math.MaxInt)
	sequence = s.sequence()
	if how.Backwards && sequence != nil {
		sequence = backwards(sequence)
	}
	return sequence, s.lower(), finished
}

// BeamAlone runs one beam and returns the order found and its bound.
func BeamAlone(p Problem, width int, back bool) (sequence []int, bound int64) {
	m := compile(p)
	if back {
		m = m.reversed()
	}
	b := newBeam(m, newBound(m), infinite)
	sequence = b.run(context.Background(), width, math.MaxInt)
	if back {
		sequence = backwards(sequence)
	}
	return sequence, b.low + m.constant
}

// ImproveAlone tries steps of improvement on an order.
func ImproveAlone(p Problem, sequence []int, steps int) []int {
	m := compile(p)
	v := newImprover(m)
	for range steps {
		if better := v.step(context.Background(), sequence, m.price(sequence)); better != nil {
			sequence = better
		}
	}
	return sequence
}

// Tell puts an order into the sequence in which it is told.
func Tell(p Problem, sequence []int) []int { return tell(p, compile(p), sequence) }

// Reading returns the number of runs, changes of group and pairs against their
// ranks of a sequence.
func Reading(p Problem, sequence []int) (runs, groups, against int) {
	t := judge(p, sequence)
	return t.runs, t.groups, t.against
}
