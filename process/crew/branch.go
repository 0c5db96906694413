package crew

import (
	"cmp"
	"context"
	"encoding/binary"
	"slices"
)

// A brancher tries all plans in which tasks are put down in the order of their
// begins, each as soon as it can be after the one before. Some best plan is
// among them: told in the order of its begins with its own people and
// machines, no task comes later than it did, since all that came before still
// ends no later. What lies ahead depends only on the front of the plan (what is
// done, who is free when, how the machines are set, which pieces are where), so
// a front that was met before with no more hand-overs is not walked again.
type brancher struct {
	m      *model
	best   value // to be bettered in finish or hand-overs
	found  *draft
	low    int64
	nodes  int
	most   int
	ctx    context.Context
	seen   map[string]int
	done   []bool
	left   []int
	place  []spot
	free   []int64 // of each person
	engine []int64 // when each machine is free
	state  [][]int
	count  int
	last   int64 // latest begin
	finish int64
	hands  int
	out    bool // a limit was reached
	key    []byte
}

func newBrancher(ctx context.Context, m *model, best value, low int64, nodes int) *brancher {
	b := &brancher{
		m: m, best: best, low: low, most: nodes, ctx: ctx, seen: map[string]int{},
		done: make([]bool, m.n), left: make([]int, m.n), place: make([]spot, m.n),
		free: make([]int64, m.people), engine: make([]int64, len(m.start)),
	}
	for _, s := range m.start {
		b.state = append(b.state, slices.Clone(s))
	}
	for i, p := range m.pred {
		b.left[i] = len(p)
	}
	return b
}

// run walks all plans; true means that none is better than what was found.
func (b *brancher) run() bool {
	b.walk()
	return !b.out
}

type choice struct {
	task  int
	spot  spot
	hands int
}

func (b *brancher) walk() {
	if b.count == b.m.n {
		v := value{finish: b.finish, hands: b.hands}
		for _, s := range b.place {
			v.sum += s.end
		}
		if v.finish < b.best.finish || v.finish == b.best.finish && v.hands < b.best.hands {
			b.best = v
			b.found = &draft{place: slices.Clone(b.place), value: v}
		}
		return
	}
	if b.nodes++; b.nodes > b.most || b.nodes%256 == 0 && b.ctx.Err() != nil {
		b.out = true
		return
	}
	if b.hopeless(b.bound()) || b.known() {
		return
	}
	for _, c := range b.choices() {
		if b.hopelessWith(c) {
			continue
		}
		b.take(c)
		if b.out {
			return
		}
	}
}

// hopeless reports whether a plan that ends no sooner than t cannot be better.
func (b *brancher) hopeless(t int64) bool {
	return t > b.best.finish || t == b.best.finish && b.hands >= b.best.hands ||
		b.best.finish <= b.low && b.hands >= b.best.hands
}

func (b *brancher) hopelessWith(c choice) bool {
	m := b.m
	t := max(b.finish, c.spot.end, c.spot.end-m.least[c.task]+m.tail[c.task])
	return t > b.best.finish || t == b.best.finish && b.hands+c.hands >= b.best.hands
}

// bound is the soonest end of all from here.
func (b *brancher) bound() int64 {
	m, t := b.m, b.finish
	for i := range m.n {
		if b.done[i] {
			continue
		}
		at := max(b.last, m.head[i])
		for _, a := range m.pred[i] {
			if b.done[a.task] {
				at = max(at, b.place[a.task].end+m.lag(a))
			}
		}
		t = max(t, at+m.tail[i])
	}
	return t
}

// known reports whether this front was met before, and remembers it.
func (b *brancher) known() bool {
	const most = 2_000_000
	k := b.key[:0]
	for i := range b.m.n {
		k = append(k, 0)
		if b.done[i] {
			k[len(k)-1] = 1
		}
	}
	put := func(t int64) { k = binary.AppendVarint(k, t) }
	put(b.last)
	put(max(b.finish, b.last))
	for _, t := range b.free {
		put(max(t, b.last))
	}
	for q, t := range b.engine {
		put(max(t, b.last))
		for _, v := range b.state[q] {
			put(int64(v))
		}
	}
	for i := range b.m.n {
		if !b.done[i] {
			continue
		}
		open := false
		for _, a := range b.m.succ[i] {
			if !b.done[a.task] {
				open = true
				if a.piece {
					put(int64(b.place[i].team))
					put(max(b.place[i].end+b.m.handover, b.last))
				}
			}
		}
		if open || len(b.m.uses[i]) > 0 {
			put(max(b.place[i].end, b.last))
		}
	}
	b.key = k
	if was, ok := b.seen[string(k)]; ok && was <= b.hands {
		return true
	}
	if len(b.seen) < most {
		b.seen[string(k)] = b.hands
	}
	return false
}

// choices are the ways to go on, soonest begin first, then longest rest, fewest
// hand-overs, lowest task, team and machine.
func (b *brancher) choices() []choice {
	m := b.m
	var all []choice
	for i := range m.n {
		if b.done[i] || b.left[i] > 0 {
			continue
		}
		for k := range m.teams[i] {
			if m.kind[i] == None {
				all = b.add(all, i, k, None)
				continue
			}
			for x, q := range m.machines[m.kind[i]] {
				twin := slices.ContainsFunc(m.machines[m.kind[i]][:x], func(p int) bool {
					return max(b.engine[p], b.last) == max(b.engine[q], b.last) && slices.Equal(b.state[p], b.state[q])
				})
				if !twin {
					all = b.add(all, i, k, q)
				}
			}
		}
	}
	slices.SortStableFunc(all, func(x, y choice) int {
		return cmp.Or(cmp.Compare(x.spot.begin, y.spot.begin), cmp.Compare(m.tail[y.task], m.tail[x.task]),
			cmp.Compare(x.hands, y.hands))
	})
	return all
}

func (b *brancher) add(all []choice, i, k, machine int) []choice {
	m := b.m
	t := b.last
	hands := 0
	for _, a := range m.pred[i] {
		s := &b.place[a.task]
		at := s.end
		if a.piece && apart(m.teams[i][k].mask, m.teams[a.task][s.team].mask) {
			at += m.handover
			hands++
		}
		t = max(t, at)
	}
	var setup int64
	if machine != None {
		setup = m.change(m.kind[i], slices.Clone(b.state[machine]), m.setting[i])
	}
	lasts := setup + m.teams[i][k].lasts
	if machine != None && (lasts > 0 || len(m.kinds[m.kind[i]].Attributes) > 0) {
		t = max(t, b.engine[machine])
	}
	for again := true; again; {
		again = false
		for _, q := range m.teams[i][k].people {
			at := t
			if lasts > 0 {
				at = max(t, b.free[q])
			}
			at, ok := m.hours[q].fits(at, lasts)
			if !ok {
				return all
			}
			if at > t {
				t, again = at, true
			}
		}
		if at := b.room(i, t, lasts); at > t {
			t, again = at, true
		}
	}
	return append(all, choice{i, spot{begin: t, work: t + setup, end: t + lasts, team: k, machine: machine}, hands})
}

// room is the first time from t on, t not before the last begin, when the
// resources have room for task i. From there on less and less is in use.
func (b *brancher) room(i int, t, lasts int64) int64 {
	if lasts == 0 {
		return t
	}
	for _, u := range b.m.uses[i] {
		for {
			var sum int64
			next := int64(infinite)
			for j := range b.m.n {
				if s := &b.place[j]; b.done[j] && s.end > t && s.begin < s.end {
					for _, w := range b.m.uses[j] {
						if w.resource == u.resource {
							sum += w.amount
							next = min(next, s.end)
						}
					}
				}
			}
			if sum+u.amount <= b.m.caps[u.resource] {
				break
			}
			t = next
		}
	}
	return t
}

// take puts a task down, walks on, and takes it up again.
func (b *brancher) take(c choice) {
	m, i, s := b.m, c.task, c.spot
	last, finish := b.last, b.finish
	b.done[i], b.place[i] = true, s
	b.count++
	b.last, b.finish, b.hands = s.begin, max(b.finish, s.end), b.hands+c.hands
	for _, a := range m.succ[i] {
		b.left[a.task]--
	}
	people := m.teams[i][s.team].people
	was := make([]int64, len(people))
	for x, q := range people {
		was[x] = b.free[q]
		if s.end > s.begin {
			b.free[q] = s.end
		}
	}
	var wasEngine int64
	var wasState []int
	if s.machine != None {
		wasEngine, wasState = b.engine[s.machine], slices.Clone(b.state[s.machine])
		b.engine[s.machine] = max(wasEngine, s.end)
		m.change(m.kind[i], b.state[s.machine], m.setting[i])
	}

	b.walk()

	if s.machine != None {
		b.engine[s.machine] = wasEngine
		copy(b.state[s.machine], wasState)
	}
	for x, q := range people {
		b.free[q] = was[x]
	}
	for _, a := range m.succ[i] {
		b.left[a.task]++
	}
	b.count--
	b.last, b.finish, b.hands = last, finish, b.hands-c.hands
	b.done[i] = false
}
