package unison

import (
	"cmp"
	"context"
	"slices"

	"bodkin/process/order"
)

// arrange finds the sequence: for each sort of work the order that is cheapest
// for its makers and that all can keep; of these the one that costs all together
// least, bettered by moving short stretches.
func (j *joint) arrange(ctx context.Context, o order.Options) (Result, error) {
	n := len(j.makers)
	r := Result{Cost: make([]int64, n), Alone: make([]int64, n), Bound: make([]int64, n)}
	before := j.closed()
	var best []int
	var least, bound int64
	for m := range j.makers {
		if j.alike[m] != m {
			continue
		}
		alone, err := order.Solve(ctx, j.makers[m].Problem, o)
		if err != nil {
			return r, err
		}
		common, err := order.Solve(ctx, j.restricted(m, before), o)
		if err != nil {
			return r, err
		}
		for k, like := range j.alike {
			if like == m {
				// An order that all can keep is one of hers.
				r.Alone[k], r.Bound[k] = min(alone.Cost, common.Cost), min(alone.Bound, common.Bound)
				bound += common.Bound
			}
		}
		sequence := j.filledIn(m, common.Sequence)
		if total := j.price(sequence); best == nil || total < least {
			best, least = sequence, total
		}
	}
	if least > bound {
		best, least = j.better(ctx, best, least, before)
	}
	r.Cheapest = least == bound
	for _, node := range best {
		r.Numbers = append(r.Numbers, j.nodes[node])
	}
	for m := range j.makers {
		r.Cost[m] = j.cost(m, best)
	}
	return r, nil
}

// closed returns for each node which others must come before it, at any remove.
func (j *joint) closed() [][]bool {
	n := len(j.nodes)
	before := make([][]bool, n)
	var visit func(i int)
	visit = func(i int) {
		if before[i] != nil {
			return
		}
		before[i] = make([]bool, n)
		for _, b := range j.after[i] {
			visit(b)
			before[i][b] = true
			for k, is := range before[b] {
				before[i][k] = before[i][k] || is
			}
		}
	}
	for i := range n {
		visit(i)
	}
	return before
}

// restricted is a maker's problem where her operations wait as all must.
func (j *joint) restricted(m int, before [][]bool) order.Problem {
	p := j.makers[m].Problem
	p.Operations = slices.Clone(p.Operations)
	for i := range p.Operations {
		var after []int
		for b := range p.Operations {
			if before[j.at[m][i]][j.at[m][b]] {
				after = append(after, b)
			}
		}
		p.Operations[i].After = after
	}
	return p
}

// filledIn puts what a maker has no operation for into her sequence, each right
// after what it waits for.
func (j *joint) filledIn(m int, sequence []int) []int {
	const step = 1 << 20
	place := make([]int, len(j.nodes))
	chain := make([]int, len(j.nodes)) // the node of hers before, or -1
	for i := range chain {
		place[i], chain[i] = -1, -1
	}
	for k, i := range sequence {
		place[j.at[m][i]] = (k + 1) * step
		if k > 0 {
			chain[j.at[m][i]] = j.at[m][sequence[k-1]]
		}
	}
	var late func(i int) int // where what it waits for ends
	late = func(i int) int {
		if place[i] < 0 {
			place[i] = 0
			for _, b := range j.after[i] {
				place[i] = max(place[i], late(b))
			}
			place[i]++
		}
		return place[i]
	}
	var out []int
	done := make([]bool, len(j.nodes))
	for len(out) < len(j.nodes) {
		next := -1
		for i := range j.nodes {
			if done[i] || chain[i] >= 0 && !done[chain[i]] || slices.ContainsFunc(j.after[i], func(b int) bool { return !done[b] }) {
				continue
			}
			if next < 0 || late(i) < late(next) {
				next = i
			}
		}
		done[next] = true
		out = append(out, next)
	}
	return out
}

// cost is what a sequence costs one maker.
func (j *joint) cost(m int, sequence []int) int64 {
	own := make([]int, 0, len(j.makers[m].Acts))
	for _, n := range sequence {
		if i := j.nodes[n].Of[m]; i >= 0 {
			own = append(own, i)
		}
	}
	b, err := order.Cost(j.makers[m].Problem, own)
	if err != nil {
		panic("unison: a sequence that a maker cannot keep: " + err.Error())
	}
	return b.Total
}

// price is what a sequence costs all together.
func (j *joint) price(sequence []int) int64 {
	var total int64
	costs := map[int]int64{}
	for m, like := range j.alike {
		if like == m {
			costs[m] = j.cost(m, sequence)
		}
		total += costs[like]
	}
	return total
}

// Limits of bettering.
const (
	longest  = 4   // stretch that is moved
	furthest = 24  // that it is moved
	looks    = 600 // sequences looked at
)

// better moves short stretches of the sequence while that saves something.
func (j *joint) better(ctx context.Context, sequence []int, cost int64, before [][]bool) ([]int, int64) {
	looked := 0
	for found := true; found; {
		found = false
		for long := 1; long <= longest; long++ {
			for a := 0; a+long <= len(sequence); a++ {
				for _, to := range targets(a, long, len(sequence)) {
					if looked >= looks || ctx.Err() != nil {
						return sequence, cost
					}
					moved := move(sequence, a, long, to)
					if !keeps(moved[min(a, to):max(a, to)+long], before) {
						continue
					}
					looked++
					if c := j.price(moved); c < cost {
						sequence, cost, found = moved, c, true
					}
				}
			}
		}
	}
	return sequence, cost
}

// targets are the places that a stretch may begin at instead, the nearest first.
func targets(a, long, n int) []int {
	var out []int
	for to := max(0, a-furthest); to+long <= min(n, a+long+furthest); to++ {
		if to != a {
			out = append(out, to)
		}
	}
	slices.SortStableFunc(out, func(x, y int) int { return cmp.Compare(max(x-a, a-x), max(y-a, a-y)) })
	return out
}

// move returns the sequence with the stretch from a on beginning at to.
func move(sequence []int, a, long, to int) []int {
	stretch := sequence[a : a+long]
	rest := slices.Delete(slices.Clone(sequence), a, a+long)
	return slices.Insert(rest, to, stretch...)
}

// keeps reports whether nothing in a stretch comes before what it waits for.
func keeps(stretch []int, before [][]bool) bool {
	for k, first := range stretch {
		for _, then := range stretch[k+1:] {
			if before[first][then] {
				return false
			}
		}
	}
	return true
}
