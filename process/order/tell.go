package order

import (
	"cmp"
	"slices"
)

// A teller puts an order of least cost into the sequence in which one would
// tell it. It keeps the phases of the order, a phase being what is done
// between two changes that matter to the cost, and so the cost. Within that
// freedom it does two things. First each operation that could as well be done
// in another phase moves there if the phases then hold fewer groups in all, or
// as many and fewer pairs of operations against their ranks. Then each phase
// is told from its beginning, and of what is ready comes next what needs no
// other station or setting, then what is of the same group, then the lowest
// rank, then the lowest number.
//
// Moving is left out for very long work, where it would take too long. The
// outcome is judged as a whole, see telling, and the order as it was found
// is kept when it is the better one.
type teller struct {
	t     *task
	m     *model
	act   []int      // by which each operation is done
	state [][]uint64 // by phase, that all its operations leave
	phase []int      // of each operation
	lists [][]int    // operations of each phase
}

// tell returns the acts in the sequence in which they should be told, at no
// more cost.
func tell(t *task, m *model, acts []int) []int {
	l := newTeller(t, m, acts)
	best, value := acts, t.judge(m, acts)
	for range 2 {
		told := l.sequence()
		if v := t.judge(m, told); v.compare(value) < 0 {
			best, value = told, v
		}
		l.gather()
	}
	return best
}

func newTeller(t *task, m *model, acts []int) *teller {
	l := &teller{t: t, m: m, act: make([]int, m.n), phase: make([]int, m.n)}
	state := slices.Clone(m.start)
	for _, a := range acts {
		i := m.acts[a].op
		if len(l.lists) == 0 || !m.fits(state, m.acts[a].mode) {
			m.enter(state, m.acts[a].mode)
			l.state = append(l.state, slices.Clone(state))
			l.lists = append(l.lists, nil)
		}
		l.act[i] = a
		l.phase[i] = len(l.lists) - 1
		l.lists[l.phase[i]] = append(l.lists[l.phase[i]], i)
	}
	return l
}

// gather moves single operations to other phases while that does any good.
func (t *teller) gather() {
	const passes, most = 8, 30_000_000
	if t.m.n*t.m.n*len(t.lists) > most {
		return
	}
	for range passes {
		moved := false
		for i := range t.m.n {
			if to := t.better(i); to != t.phase[i] {
				from := t.phase[i]
				t.lists[from] = slices.DeleteFunc(t.lists[from], func(x int) bool { return x == i })
				t.lists[to] = append(t.lists[to], i)
				t.phase[i] = to
				moved = true
			}
		}
		if !moved {
			break
		}
	}
}

// better returns the best phase for operation i while all others stay.
func (t *teller) better(i int) int {
	now := t.phase[i]
	if t.m.isWished(i) || t.isEnd(i) || t.holds(i, now) {
		return now
	}
	first, last := 0, len(t.lists)-1
	for _, b := range t.m.pred[i] {
		first = max(first, t.phase[b])
	}
	for _, a := range t.m.succ[i] {
		last = min(last, t.phase[a])
	}
	best, groups, against := now, t.strangers(i, now), t.against(i, now)
	for to := first; to <= last; to++ {
		if to == now || !t.m.fits(t.state[to], t.mode(i)) {
			continue
		}
		g, a := t.strangers(i, to), t.against(i, to)
		if cmp.Or(cmp.Compare(g, groups), cmp.Compare(a, against)) < 0 {
			best, groups, against = to, g, a
		}
	}
	return best
}

// holds reports whether the phase needs operation i to come about: something
// that the phase before left otherwise is set by nothing else in it.
func (t *teller) holds(i, phase int) bool {
	before := t.m.start
	if phase > 0 {
		before = t.state[phase-1]
	}
	for _, a := range t.m.modes[t.mode(i)].set {
		if s := &t.m.slots[a.slot]; s.of(before) == a.value {
			continue
		}
		held := slices.ContainsFunc(t.lists[phase], func(x int) bool {
			return x != i && slices.Contains(t.m.modes[t.mode(x)].set, a)
		})
		if !held {
			return true
		}
	}
	return false
}

// strangers is 1 if operation i is the only one of its group in the phase.
func (t *teller) strangers(i, phase int) int {
	for _, x := range t.lists[phase] {
		if x != i && t.group(x) == t.group(i) {
			return 0
		}
	}
	return 1
}

// against counts the operations that operation i, in the phase, would come
// before or after against their ranks.
func (t *teller) against(i, phase int) int {
	n, rank := 0, t.t.p.Operations[i].Rank
	for x, op := range t.t.p.Operations {
		at, r := t.phase[x], op.Rank
		if at < phase && r > rank || at > phase && r < rank {
			n++
		}
	}
	return n
}

// sequence tells the phases one after another.
func (t *teller) sequence() []int {
	r := newReplayer(t.t.p)
	done := newSet(t.m.n)
	left := make([]int, t.m.n)
	for i, b := range t.m.pred {
		left[i] = len(b)
	}
	acts := make([]int, 0, t.m.n)
	last := -1
	for _, list := range t.lists {
		list = slices.Clone(list)
		for len(list) > 0 {
			next := -1
			var least telling
			for k, i := range list {
				if left[i] > 0 {
					continue
				}
				key := telling{cost: t.m.due(done, i)}
				if !t.isEnd(i) {
					key.against = t.t.p.Operations[i].Rank
					if r.needs(i, t.m.acts[t.act[i]].way) {
						key.runs = 1
					}
				}
				if last >= 0 && t.group(last) != t.group(i) {
					key.groups = 1
				}
				if next < 0 || cmp.Or(key.compare(least), cmp.Compare(i, list[next])) < 0 {
					next, least = k, key
				}
			}
			i := list[next]
			list = slices.Delete(list, next, next+1)
			for _, s := range t.m.succ[i] {
				left[s]--
			}
			if !t.isEnd(i) {
				r.do(i, t.m.acts[t.act[i]].way)
			}
			done.add(i)
			acts = append(acts, t.act[i])
			last = i
		}
	}
	return acts
}

// isEnd reports whether i brings about the ends of the stations.
func (t *teller) isEnd(i int) bool { return i == len(t.t.p.Operations) }

func (t *teller) mode(i int) int { return t.m.acts[t.act[i]].mode }

func (t *teller) group(i int) int {
	if t.isEnd(i) {
		return NoGroup
	}
	return t.t.p.Operations[i].Group
}
