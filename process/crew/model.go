package crew

import (
	"math"
	"math/bits"
	"slices"
)

const infinite = math.MaxInt64 / 4

// A model is a problem made ready for searching: predecessors of both sorts in
// one list, teams worked out, tasks that a hand-over must part known.
type model struct {
	n        int
	pred     [][]arc
	succ     [][]arc
	teams    [][]team // of each task, at least one
	kind     []int
	setting  [][]int
	uses     [][]use
	caps     []int64
	kinds    []Kind
	machines [][]int // of each kind
	start    [][]int // setting of each machine at the beginning
	hours    []hours // of each person
	people   int
	handover int64

	time       []int64 // of each task at pace 100
	least      []int64 // shortest time of each task
	pace       []int64 // of each person
	head, tail []int64 // soonest begin; least time from the begin to the end of all
	handsLow   int     // hand-overs that no plan is without
	early      []int64 // times before which tasks do not begin; nil is none
	setups     bool    // some machine has attributes
	timed      bool    // somebody has hours

	// Of a model that is eased:
	setIn     []int64   // by task: how much of it is setting up for the first time
	standsFor [][]int   // by task: where it is setting up only, the tasks it may be done for
	fresh     [][]int64 // by kind: the least for setting up its machines at all, rising
	openings  []opening
	full      *model // with settings
}

// An arc leads to a task that must end before, or from one to a task that
// waits for it.
type arc struct {
	task  int
	piece bool // the piece is handed over if the people are others
	apart bool // and they are others in any case
}

// A team is people who can do a task together.
type team struct {
	mask   uint64
	people []int
	lasts  int64
}

type use struct {
	resource int
	amount   int64
}

func compile(p Problem) *model {
	n := len(p.Tasks)
	m := &model{
		n: n, pred: make([][]arc, n), succ: make([][]arc, n), teams: make([][]team, n),
		kind: make([]int, n), setting: make([][]int, n), uses: make([][]use, n),
		caps: p.Resources, kinds: p.Kinds, machines: make([][]int, len(p.Kinds)),
		people: len(p.People), handover: p.Handover, time: make([]int64, n), least: make([]int64, n),
	}
	for i, q := range p.Machines {
		m.machines[q.Kind] = append(m.machines[q.Kind], i)
		start := q.Start
		if start == nil {
			start = slices.Repeat([]int{Unset}, len(p.Kinds[q.Kind].Attributes))
		}
		m.start = append(m.start, start)
	}
	for _, q := range p.People {
		m.hours = append(m.hours, q.Hours)
		m.pace = append(m.pace, q.pace())
		m.timed = m.timed || q.Hours != nil
	}
	for i, t := range p.Tasks {
		m.kind[i], m.setting[i], m.time[i] = t.Kind, t.Setting, t.Time
		m.setups = m.setups || t.Setting != nil
		for r, u := range t.Uses {
			if u > 0 {
				m.uses[i] = append(m.uses[i], use{r, u})
			}
		}
		masks, _ := teamsOf(p, t)
		m.least[i] = infinite
		for _, mask := range masks {
			k := team{mask: mask, lasts: p.lasts(t, mask)}
			for left := mask; left != 0; left &= left - 1 {
				k.people = append(k.people, bits.TrailingZeros64(left))
			}
			m.teams[i] = append(m.teams[i], k)
			m.least[i] = min(m.least[i], k.lasts)
		}
	}
	for i, t := range p.Tasks {
		for _, b := range t.After {
			if !slices.Contains(t.From, b) {
				m.join(b, i, false)
			}
		}
		for _, b := range t.From {
			m.join(b, i, true)
		}
	}
	m.spread()
	return m
}

// join lets task i wait for task b, once.
func (m *model) join(b, i int, piece bool) {
	if slices.ContainsFunc(m.pred[i], func(a arc) bool { return a.task == b }) {
		return
	}
	apart := piece && m.alwaysApart(b, i)
	if apart {
		m.handsLow++
	}
	m.pred[i] = append(m.pred[i], arc{b, piece, apart})
	m.succ[b] = append(m.succ[b], arc{i, piece, apart})
}

// apart reports whether a piece goes from one set of people to another. Where
// one of the tasks needs nobody, nothing is handed over.
func apart(a, b uint64) bool { return a != 0 && b != 0 && a&b == 0 }

func (m *model) alwaysApart(b, i int) bool {
	for _, x := range m.teams[b] {
		for _, y := range m.teams[i] {
			if !apart(x.mask, y.mask) {
				return false
			}
		}
	}
	return true
}

// lag is the least time a piece is under way along an arc.
func (m *model) lag(a arc) int64 {
	if a.apart {
		return m.handover
	}
	return 0
}

// sorted returns the tasks, each after its predecessors, lowest number first.
func (m *model) sorted() []int {
	key := make([]int64, m.n)
	for i := range key {
		key[i] = int64(i)
	}
	return m.inOrder(key)
}

// inOrder returns the tasks, each after its predecessors, otherwise by rising
// key, ties by number.
func (m *model) inOrder(key []int64) []int {
	left := make([]int, m.n)
	var ready queue
	ready.key = key
	for i, p := range m.pred {
		if left[i] = len(p); left[i] == 0 {
			ready.push(i)
		}
	}
	list := make([]int, 0, m.n)
	for len(ready.tasks) > 0 {
		i := ready.pop()
		list = append(list, i)
		for _, a := range m.succ[i] {
			if left[a.task]--; left[a.task] == 0 {
				ready.push(a.task)
			}
		}
	}
	return list
}

// spread works out heads and tails along the paths.
func (m *model) spread() {
	m.head, m.tail = make([]int64, m.n), make([]int64, m.n)
	list := m.sorted()
	for _, i := range list {
		for _, a := range m.pred[i] {
			m.head[i] = max(m.head[i], m.head[a.task]+m.least[a.task]+m.lag(a))
		}
		if m.early != nil {
			m.head[i] = max(m.head[i], m.early[i])
		}
		soonest := int64(infinite)
		for _, k := range m.teams[i] {
			at := m.head[i]
			for again := true; again; { // until all of the team agree
				again = false
				for _, q := range k.people {
					t, ok := m.hours[q].fits(at, k.lasts)
					if !ok {
						at, again = infinite, false
						break
					}
					if t > at {
						at, again = t, true
					}
				}
			}
			soonest = min(soonest, at)
		}
		m.head[i] = max(m.head[i], min(soonest, infinite))
	}
	for _, i := range slices.Backward(list) {
		m.tail[i] = m.least[i]
		for _, a := range m.succ[i] {
			m.tail[i] = max(m.tail[i], m.least[i]+m.lag(a)+m.tail[a.task])
		}
	}
}

// change is how long it takes to set up for a setting, starting from a state;
// the state is altered.
func (m *model) change(kind int, state, setting []int) int64 {
	var sum int64
	for a, to := range setting {
		from := state[a]
		if to == Any || to == from {
			continue
		}
		at := &m.kinds[kind].Attributes[a]
		if from != Unset {
			sum += at.Change[from][to]
		} else if at.First != nil {
			sum += at.First[to]
		}
		state[a] = to
	}
	return sum
}

// A queue is a heap of tasks by key, ties by number.
type queue struct {
	key   []int64
	tasks []int
}

func (q *queue) less(a, b int) bool {
	if q.key[a] != q.key[b] {
		return q.key[a] < q.key[b]
	}
	return a < b
}

func (q *queue) push(i int) {
	q.tasks = append(q.tasks, i)
	for k := len(q.tasks) - 1; k > 0; {
		up := (k - 1) / 2
		if !q.less(q.tasks[k], q.tasks[up]) {
			break
		}
		q.tasks[k], q.tasks[up] = q.tasks[up], q.tasks[k]
		k = up
	}
}

func (q *queue) pop() int {
	top := q.tasks[0]
	last := len(q.tasks) - 1
	q.tasks[0] = q.tasks[last]
	q.tasks = q.tasks[:last]
	for k := 0; ; {
		c := 2*k + 1
		if c >= last {
			break
		}
		if c+1 < last && q.less(q.tasks[c+1], q.tasks[c]) {
			c++
		}
		if !q.less(q.tasks[c], q.tasks[k]) {
			break
		}
		q.tasks[k], q.tasks[c] = q.tasks[c], q.tasks[k]
		k = c
	}
	return top
}
