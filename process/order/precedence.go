package order

import "slices"

// setPrecedence stores the transitive closure and reduction of before, which
// has no cycle.
func (m *model) setPrecedence(before [][]int) {
	m.n = len(before)
	m.below, m.above = make([]set, m.n), make([]set, m.n)
	m.pred, m.succ = make([][]int, m.n), make([][]int, m.n)
	for i := range m.n {
		m.below[i], m.above[i] = newSet(m.n), newSet(m.n)
	}
	for _, i := range topological(before) {
		for _, b := range before[i] {
			m.below[i].add(b)
			m.below[i].union(m.below[b])
		}
	}
	for i := range m.n {
		m.below[i].each(func(b int) { m.above[b].add(i) })
	}
	for i := range m.n {
		direct := slices.Clone(before[i])
		slices.Sort(direct)
		for _, b := range slices.Compact(direct) {
			if !m.above[b].meets(m.below[i]) {
				m.pred[i] = append(m.pred[i], b)
				m.succ[b] = append(m.succ[b], i)
			}
		}
	}
}

// topological returns the operations in an order that respects before.
func topological(before [][]int) []int {
	n := len(before)
	left := make([]int, n)
	after := make([][]int, n)
	for i, bs := range before {
		left[i] = len(bs)
		for _, b := range bs {
			after[b] = append(after[b], i)
		}
	}
	order := make([]int, 0, n)
	for i := range n {
		if left[i] == 0 {
			order = append(order, i)
		}
	}
	for at := 0; at < len(order); at++ {
		for _, i := range after[order[at]] {
			if left[i]--; left[i] == 0 {
				order = append(order, i)
			}
		}
	}
	return order
}
