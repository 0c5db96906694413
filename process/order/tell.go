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
	p     Problem
	m     *model
	state [][]uint64 // by phase, that all its operations leave
	phase []int      // of each operation
	lists [][]int    // operations of each phase
}

// tell returns the sequence as it should be told, at no more cost.
func tell(p Problem, m *model, sequence []int) []int {
	t := newTeller(p, m, sequence)
	best, value := sequence, judge(p, sequence)
	for range 2 {
		told := t.sequence()
		if v := judge(p, told); v.compare(value) < 0 {
			best, value = told, v
		}
		t.gather()
	}
	return best
}

func newTeller(p Problem, m *model, sequence []int) *teller {
	t := &teller{p: p, m: m, phase: make([]int, m.n)}
	state := slices.Clone(m.start)
	for _, i := range sequence {
		if len(t.lists) == 0 || !m.fits(state, m.mode[i]) {
			m.enter(state, m.mode[i])
			t.state = append(t.state, slices.Clone(state))
			t.lists = append(t.lists, nil)
		}
		t.phase[i] = len(t.lists) - 1
		t.lists[t.phase[i]] = append(t.lists[t.phase[i]], i)
	}
	return t
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
	if t.holds(i, now) {
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
		if to == now || !t.m.fits(t.state[to], t.m.mode[i]) {
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
	for _, a := range t.m.modes[t.m.mode[i]].set {
		if s := &t.m.slots[a.slot]; s.of(before) == a.value {
			continue
		}
		held := slices.ContainsFunc(t.lists[phase], func(x int) bool {
			return x != i && slices.Contains(t.m.modes[t.m.mode[x]].set, a)
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
		if x != i && t.p.Operations[x].Group == t.p.Operations[i].Group {
			return 0
		}
	}
	return 1
}

// against counts the operations that operation i, in the phase, would come
// before or after against their ranks.
func (t *teller) against(i, phase int) int {
	n, rank := 0, t.p.Operations[i].Rank
	for x, at := range t.phase {
		r := t.p.Operations[x].Rank
		if at < phase && r > rank || at > phase && r < rank {
			n++
		}
	}
	return n
}

// sequence tells the phases one after another.
func (t *teller) sequence() []int {
	w := newWorkplace(t.p)
	left := make([]int, t.m.n)
	for i, b := range t.m.pred {
		left[i] = len(b)
	}
	sequence := make([]int, 0, t.m.n)
	for _, list := range t.lists {
		list = slices.Clone(list)
		for len(list) > 0 {
			next := -1
			var least [4]int
			for k, i := range list {
				if left[i] > 0 {
					continue
				}
				op := t.p.Operations[i]
				key := [4]int{w.changes(i), 0, op.Rank, i}
				if len(sequence) > 0 && t.p.Operations[sequence[len(sequence)-1]].Group != op.Group {
					key[1] = 1
				}
				if next < 0 || slices.Compare(key[:], least[:]) < 0 {
					next, least = k, key
				}
			}
			i := list[next]
			list = slices.Delete(list, next, next+1)
			for _, s := range t.m.succ[i] {
				left[s]--
			}
			w.do(i)
			sequence = append(sequence, i)
		}
	}
	return sequence
}
