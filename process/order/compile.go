package order

// compile turns a task into a model of the same operations and, where
// attributes have ends, one more that comes after all and brings them about.
func compile(t *task) *model {
	m := &model{constant: t.owed}
	acts, least := rawActs(t.p)
	m.constant += least
	var starts []int
	var settings [][]int // by slot, what each act sets
	for _, r := range rawSlots(t, acts) {
		s, start, value := r.reduce()
		if s == nil {
			m.constant += r.constant()
			continue
		}
		if at, to := companion(settings, value, starts, start); at >= 0 {
			m.slots[at].join(s, to)
			continue
		}
		settings = append(settings, value)
		for k, v := range value {
			if v != Any {
				acts[k].set = append(acts[k].set, assign{len(m.slots), v})
			}
		}
		m.slots = append(m.slots, *s)
		starts = append(starts, start)
	}
	m.pack(starts)
	before := make([][]int, len(t.p.Operations), len(t.p.Operations)+1)
	for i, op := range t.p.Operations {
		before[i] = op.After
	}
	if last := len(acts) - 1; last >= 0 && acts[last].station == Nowhere {
		before = append(before, upTo(len(before)))
	}
	m.setPrecedence(before)
	m.setActs(acts)
	m.setWishes(t.p.Wishes)
	return m
}

// A rawAct is one way of doing one operation, as the problem states it; or the
// bringing about of the ends, which is done nowhere.
type rawAct struct {
	op, way int
	station int // or Nowhere
	setting []int
	cost    int64 // above the operation's cheapest way
	set     []assign
}

// rawActs lists all ways of all operations, and last the ends if there are
// any. It returns also what the cheapest ways cost together.
func rawActs(p Problem) (acts []rawAct, least int64) {
	for i, op := range p.Operations {
		cheapest := op.Cost
		for _, w := range op.Or {
			cheapest = min(cheapest, w.Cost)
		}
		least += cheapest
		for k := range op.Ways() {
			w := op.Way(k)
			acts = append(acts, rawAct{op: i, way: k, station: w.Station, setting: w.Setting, cost: w.Cost - cheapest})
		}
	}
	for _, st := range p.Stations {
		for _, v := range st.End {
			if v != Any {
				return append(acts, rawAct{op: len(p.Operations), station: Nowhere}), least
			}
		}
	}
	return acts, least
}

// rawSlots lists where the work is, what is in hand, then every attribute of
// every station.
func rawSlots(t *task, acts []rawAct) []rawSlot {
	slot := func(cost [][]int64, first []int64, start int, value func(rawAct) int) rawSlot {
		r := rawSlot{cost: cost, first: first, start: start}
		for _, a := range acts {
			r.op, r.value = append(r.op, a.op), append(r.value, value(a))
		}
		return r
	}
	var raw []rawSlot
	if t.p.Moves != nil {
		raw = append(raw, slot(t.p.Moves, nil, t.p.Start, func(a rawAct) int { return a.station }))
	}
	if t.p.Pick > 0 {
		raw = append(raw, t.grouped(slot))
	}
	for s, st := range t.p.Stations {
		for k, at := range st.Attributes {
			raw = append(raw, slot(at.Change, at.First, at.Start, func(a rawAct) int {
				switch {
				case a.station == s && a.setting != nil:
					return a.setting[k]
				case a.station == Nowhere && st.End != nil:
					return st.End[k]
				}
				return Any
			}))
		}
	}
	return raw
}

// grouped is the slot of what is in hand. The groups are numbered anew.
func (t *task) grouped(slot func([][]int64, []int64, int, func(rawAct) int) rawSlot) rawSlot {
	known := map[int]int{NoGroup: Any}
	number := func(g int) int {
		k, ok := known[g]
		if !ok {
			k = len(known) - 1
			known[g] = k
		}
		return k
	}
	start := number(t.hand)
	for _, op := range t.p.Operations {
		number(op.Group)
	}
	return slot(Uniform(len(known)-1, t.p.Pick), nil, start, func(a rawAct) int {
		if a.station == Nowhere {
			return Any
		}
		return number(t.p.Operations[a.op].Group)
	})
}

// upTo lists 0 to n-1.
func upTo(n int) []int {
	s := make([]int, n)
	for i := range s {
		s[i] = i
	}
	return s
}
