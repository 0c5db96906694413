package order

import (
	"context"
	"math/rand/v2"
)

// An improver betters an order by large steps (P. Shaw, Using constraint
// programming and local search methods to solve vehicle routing problems,
// Principles and Practice of Constraint Programming, 1998): it frees some
// operations, keeps the others in their sequence, and solves what that leaves
// exactly. The choice of what to free is pseudo-random from a fixed seed.
type improver struct {
	m        *model
	random   *rand.Rand
	size     int // operations to free
	expanded int
}

func newImprover(m *model) *improver {
	return &improver{m: m, random: rand.New(rand.NewPCG(1, 2)), size: 16}
}

// step tries once and returns a cheaper order, or nil.
func (v *improver) step(ctx context.Context, sequence []int, cost int64) []int {
	const effort = 500
	if len(sequence) == 0 {
		return nil
	}
	m := v.m.loosened(sequence, v.choose(sequence))
	s := newSearch(m, newBound(m), cost)
	finished := s.run(ctx, effort, 1<<30)
	v.expanded += s.expanded + 20 // setting up is worth about as much
	switch {
	case !finished:
		v.size = max(8, v.size*7/8)
	case s.expanded < effort/4:
		v.size = min(v.m.n, v.size+1)
	}
	return s.sequence()
}

// choose frees a stretch of the sequence, or all operations of some modes.
func (v *improver) choose(sequence []int) set {
	free, n := newSet(v.m.n), 0
	add := func(i int) {
		if !free.has(i) {
			free.add(i)
			n++
		}
	}
	if v.random.IntN(2) == 0 {
		at := v.random.IntN(len(sequence))
		for n < v.size && at < len(sequence) {
			add(v.m.acts[sequence[at]].op)
			at++
		}
		return free
	}
	for tries := 0; n < v.size && tries < 4*v.size; tries++ {
		like := v.m.ways[v.random.IntN(v.m.n)]
		for i, ways := range v.m.ways {
			if v.m.acts[ways[0]].mode == v.m.acts[like[0]].mode && n < v.size {
				add(i)
			}
		}
	}
	return free
}

// loosened returns the model with all operations but the free ones held in
// the sequence given.
func (m *model) loosened(sequence []int, free set) *model {
	l := *m
	before := make([][]int, m.n)
	for i := range m.n {
		before[i] = append(before[i], m.pred[i]...)
	}
	last := -1
	for _, a := range sequence {
		i := m.acts[a].op
		if free.has(i) {
			continue
		}
		if last >= 0 {
			before[i] = append(before[i], last)
		}
		last = i
	}
	l.setPrecedence(before)
	return &l
}
