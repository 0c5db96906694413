package crew

import (
	"context"
	"math/rand/v2"
	"slices"
)

// An improver makes plans by rules and betters them: a few tasks, neighbours
// in time or anywhere, are taken out and put back in another order or with
// other people, and the list is told anew; then it is pushed as late as it can
// be and back again (double justification: V. Valls, F. Ballestín, S. Quintanilla, Justification and
// RCPSP, European Journal of Operational Research 165, 2005). Its chance comes
// from a fixed seed.
type improver struct {
	m       *model
	back    *model // told from its end
	forward *decoder
	later   *decoder
	scarce  []int64 // by person: how many tasks she could do
	chance  *rand.Rand
	tried   int // lists decoded

	best    *draft
	now     *draft
	idle    int // rounds since the best was bettered
	round   int
	past    []value // what was gone on from in the last rounds
	low     int64
	handLow int
}

func newImprover(m *model, low int64) *improver {
	v := &improver{
		m: m, back: m.mirrored(), forward: newDecoder(m), scarce: make([]int64, m.people),
		chance: rand.New(rand.NewPCG(1, 2)),
		best:   &draft{value: worst}, now: &draft{value: worst}, low: low, handLow: m.handsLow,
	}
	v.later = newDecoder(v.back)
	for i := range m.n {
		var all uint64
		for _, t := range m.teams[i] {
			all |= t.mask
		}
		for q := range v.scarce {
			v.scarce[q] += int64(all >> q & 1)
		}
	}
	return v
}

// enough reports whether the best plan cannot be bettered in finish or
// hand-overs.
func (v *improver) enough() bool {
	return v.best.value.finish <= v.low && v.best.value.hands <= v.handLow
}

// rules makes first plans: longest rest first, soonest latest begin, most that
// follow, longest task, order of numbers.
func (v *improver) rules(ctx context.Context) {
	m := v.m
	after := make([]int64, m.n)
	for _, i := range slices.Backward(m.sorted()) {
		for _, a := range m.succ[i] {
			after[i] += 1 + after[a.task]
		}
		after[i] = min(after[i], infinite)
	}
	rule := func(key func(i int) int64) {
		if v.enough() || v.tried > 0 && ctx.Err() != nil {
			return
		}
		keys := make([]int64, m.n)
		for i := range keys {
			keys[i] = key(i)
		}
		v.offer(v.push(v.forward.run(m.inOrder(keys), nil, v.scarce)))
		v.tried++
	}
	rule(func(i int) int64 { return -m.tail[i] })
	rule(func(i int) int64 { return -after[i] })
	rule(func(i int) int64 { return m.head[i] - m.tail[i] })
	rule(func(i int) int64 { return m.least[i] - m.tail[i] })
	rule(func(i int) int64 { return int64(i) })
}

// push pushes a draft late and early again while that betters it.
func (v *improver) push(d *draft) *draft {
	if d.value.finish >= infinite {
		return d
	}
	best := d.clone()
	for range 3 {
		want := teamsIn(best)
		late := v.later.run(v.back.byEnd(best), want, nil)
		v.tried++
		early := v.forward.run(v.m.byEnd(late), want, nil)
		v.tried++
		if early.value.compare(best.value) >= 0 {
			break
		}
		best = early.clone()
	}
	return best
}

// offer takes a draft as the one to go on from if it is better or as good, and
// as the best if it is.
func (v *improver) offer(d *draft) bool {
	if d.value.finish >= infinite {
		return false
	}
	better := d.value.compare(v.now.value) < 0
	if d.value.compare(v.now.value) <= 0 {
		v.now = d.clone()
	}
	if d.value.compare(v.best.value) < 0 {
		v.best = d.clone()
	}
	return better
}

// told offers a plan told from an order.
func (v *improver) told(o order) {
	v.forward.machine = o.machine
	v.offer(v.forward.run(o.list, o.team, nil))
	v.forward.machine = nil
	v.tried++
}

// run spends about so many lists, or fewer if nothing is left to better.
func (v *improver) run(ctx context.Context, lists int) {
	if v.now.place == nil {
		v.blind(ctx, lists)
		return
	}
	for last := v.tried + lists; v.tried < last && !v.enough() && v.m.n > 1; {
		if v.tried%64 < 4 && ctx.Err() != nil {
			return
		}
		list, want := v.shake()
		d := v.forward.run(list, want, v.scarce)
		v.tried++
		if v.promising(d) {
			d = v.push(d)
		}
		v.accept(d)
	}
}

// promising reports whether pushing a draft may make it worth going on from.
// Where machines are set up, pushing it late gives an order only, and betters
// little: the draft must end little later than what it is measured by.
func (v *improver) promising(d *draft) bool {
	const little = 32 // parts of a finish
	if !v.m.setups {
		return d.value.finish < infinite
	}
	limit := v.now.value.finish
	if v.past != nil {
		limit = max(limit, v.past[v.round%len(v.past)].finish)
	}
	return d.value.finish <= limit+limit/little
}

// accept takes a draft to go on from if it is no worse than now or than what
// was gone on from some rounds ago (late acceptance: E. Burke, Y. Bykov,
// European Journal of Operational Research 258, 2017). After long in vain it
// begins again at the best.
func (v *improver) accept(d *draft) {
	const late, patience = 60, 4000
	if v.past == nil {
		v.past = slices.Repeat([]value{v.now.value}, late)
	}
	at := v.round % late
	v.round++
	v.idle++
	if d.value.compare(v.best.value) < 0 {
		v.best, v.idle = d.clone(), 0
	}
	if d.value.finish < infinite && (d.value.compare(v.now.value) <= 0 || d.value.compare(v.past[at]) <= 0) {
		v.now = d.clone()
	}
	v.past[at] = v.now.value
	if v.idle > patience {
		v.now, v.idle, v.past = v.best.clone(), 0, nil
	}
}

// blind looks for any plan at all by lists in any order with any people.
func (v *improver) blind(ctx context.Context, lists int) {
	for last := v.tried + lists; v.tried < last && v.now.place == nil; v.tried++ {
		if v.tried%64 == 0 && ctx.Err() != nil {
			return
		}
		key, want := make([]int64, v.m.n), make([]int, v.m.n)
		for i := range key {
			key[i], want[i] = v.chance.Int64N(1<<20), Any
			if v.chance.IntN(3) == 0 {
				want[i] = v.chance.IntN(len(v.m.teams[i]))
			}
		}
		v.offer(v.forward.run(v.m.inOrder(key), want, v.scarce))
	}
}

// shake takes some tasks out and returns a list with teams for the rest.
func (v *improver) shake() (list, want []int) {
	m := v.m
	key := make([]int64, m.n)
	want = teamsIn(v.now)
	for i := range key {
		key[i] = v.now.place[i].begin * 4
	}
	const tries = 20 // to find a task before that time
	finish := v.now.value.finish
	if m.setups && v.chance.IntN(2) == 0 {
		finish = v.settled()
	}
	loose := make([]int, 0, m.n)
	switch v.chance.IntN(3) {
	case 0, 1: // neighbours in time
		wide := 1 + v.chance.Int64N(finish/2+1)
		at := v.chance.Int64N(finish+1) - wide/2
		for i, s := range v.now.place {
			if s.begin < at+wide && s.end > at {
				loose = append(loose, i)
			}
		}
		for _, i := range loose {
			if v.chance.IntN(2) == 0 {
				key[i] = (at + v.chance.Int64N(wide)) * 4
			}
		}
	case 2: // anywhere
		most := min(m.n, 1+v.chance.IntN(8))
		for range most {
			i := v.chance.IntN(m.n)
			for k := 0; k < tries && v.now.place[i].begin >= finish; k++ {
				i = v.chance.IntN(m.n)
			}
			loose = append(loose, i)
			key[i] += (v.chance.Int64N(finish/2+2) - finish/4 - 1) * 4
		}
	}
	free := v.chance.IntN(4)
	for _, i := range loose {
		switch {
		case len(m.teams[i]) == 1 || free == 0:
		case free == 1 && v.chance.IntN(3) == 0:
			want[i] = v.chance.IntN(len(m.teams[i]))
		case free > 1:
			want[i] = Any
		}
		if v.chance.IntN(4) == 0 {
			key[i] += v.chance.Int64N(9) - 4
		}
	}
	return m.inOrder(key), want
}

// settled is the first time at which a task begins whose rest takes until the
// finish by its path alone: only what lies before can make it end sooner.
func (v *improver) settled() int64 {
	t := v.now.value.finish
	for i, s := range v.now.place {
		if s.begin+v.m.tail[i] >= v.now.value.finish {
			t = min(t, s.begin)
		}
	}
	return max(t, 1)
}
