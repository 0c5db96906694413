package order

import "slices"

// A rawSlot is a component of the state as the problem states it.
type rawSlot struct {
	cost  [][]int64 // [from][to]
	first []int64   // from nothing; nil is free
	start int       // or Unset
	op    []int     // of each act, the operation that it does
	value []int     // what each act sets, or Any
}

// between is the cost of going from one value, or Unset, to another.
func (r rawSlot) between(from, to int) int64 {
	switch {
	case from == to:
		return 0
	case from != Unset:
		return r.cost[from][to]
	case r.first != nil:
		return r.first[to]
	}
	return 0
}

// settable lists the values that acts set, rising.
func (r rawSlot) settable() []int {
	var values []int
	for _, v := range r.value {
		if v != Any {
			values = append(values, v)
		}
	}
	slices.Sort(values)
	return slices.Compact(values)
}

// constant is the cost of a slot that reduce finds to leave no choice.
func (r rawSlot) constant() int64 {
	if values := r.settable(); len(values) > 0 && r.forced() {
		return r.between(r.start, values[0])
	}
	return 0
}

// forced reports whether some operation sets the slot in all its ways.
func (r rawSlot) forced() bool {
	spared := map[int]bool{} // operations with a way that does not
	for k, v := range r.value {
		if v == Any {
			spared[r.op[k]] = true
		}
	}
	for _, i := range r.op {
		if !spared[i] {
			return true
		}
	}
	return false
}

// reduce returns the slot over the values in use, its start value, and what
// each act sets, with values that cost the same in every respect and
// nothing between them merged into one. The slot is nil when its cost is the
// same in every order: when one value is all that is ever set, and it must be or
// costs nothing.
func (r rawSlot) reduce() (*slot, int, []int) {
	values := r.settable()
	settable := len(values)
	if !slices.Contains(values, r.start) {
		values = append(values, r.start) // it is only ever left
	}
	var kept []int // one value of each class; those that are set come first
	class := map[int]int{}
	classes := 0 // that are set
	for k, v := range values {
		at := -1
		if k < settable && settable <= maxCubic {
			at = slices.IndexFunc(kept, func(u int) bool { return r.alike(v, u, values, settable) })
		}
		if at < 0 {
			at = len(kept)
			kept = append(kept, v)
		}
		class[v] = at
		if k < settable {
			classes = len(kept)
		}
	}
	if classes == 0 || classes == 1 && (r.forced() || r.between(r.start, values[0]) == 0) {
		return nil, 0, nil
	}
	value := make([]int, len(r.value))
	for i, v := range r.value {
		value[i] = Any
		if v != Any {
			value[i] = class[v]
		}
	}
	return r.over(kept, classes), class[r.start], value
}

// alike reports whether it makes no difference which of two values is set.
func (r rawSlot) alike(a, b int, values []int, settable int) bool {
	if r.between(a, b) != 0 || r.between(b, a) != 0 {
		return false
	}
	for k, v := range values {
		if r.between(v, a) != r.between(v, b) || k < settable && r.between(a, v) != r.between(b, v) {
			return false
		}
	}
	return true
}

// over returns the slot with the values kept, of which the first settable ones
// are ever set.
func (r rawSlot) over(kept []int, settable int) *slot {
	s := &slot{cost: make([][]int64, len(kept))}
	for to := range kept {
		s.cost[to] = make([]int64, len(kept))
		for from := range kept {
			s.cost[to][from] = infinite
			if to == from || to < settable {
				s.cost[to][from] = r.between(kept[from], kept[to])
			}
		}
	}
	s.findMetric()
	return s
}

// companion returns a slot that every act sets along with one of these settings
// and this start, value for value, and for each of its values that of the other:
// the two never part, so that they cost together what one does. It returns -1 if
// there is none.
func companion(settings [][]int, value, starts []int, start int) (at int, to map[int]int) {
	for at, other := range settings {
		to, back := map[int]int{starts[at]: start}, map[int]int{start: starts[at]}
		if !slices.ContainsFunc(upTo(len(value)), func(k int) bool {
			v, w := other[k], value[k]
			if v == Any || w == Any {
				return v != w
			}
			if _, ok := to[v]; !ok {
				to[v] = w
			}
			if _, ok := back[w]; !ok {
				back[w] = v
			}
			return to[v] != w || back[w] != v
		}) {
			return at, to
		}
	}
	return -1, nil
}

// join adds to the slot the costs of one that is always set along with it.
func (s *slot) join(other *slot, to map[int]int) {
	for v, row := range s.cost {
		for from := range row {
			if row[from] < infinite {
				row[from] += other.cost[to[v]][to[from]]
			}
		}
	}
	s.findMetric()
}

// maxCubic is the most values of a slot for which work cubic in their number
// is done; what it would find out is then taken to be false, which is safe.
const maxCubic = 600

// findMetric notes for every value whether going by way of it never costs less
// than going straight.
func (s *slot) findMetric() {
	n := len(s.cost)
	s.metric = make([]bool, n)
	if n > maxCubic {
		return
	}
	for x := range n {
		s.metric[x] = s.noShortCut(x)
	}
}

func (s *slot) noShortCut(x int) bool {
	for to := range s.cost {
		if s.cost[to][x] >= infinite {
			continue // never set
		}
		for from, direct := range s.cost[to] {
			if direct > s.cost[x][from]+s.cost[to][x] {
				return false
			}
		}
	}
	return true
}
