package order

import (
	"maps"
	"slices"
)

// setWishes stores what wishes cost as dues. A wish that every order keeps is
// left out, what one costs that none keeps goes into the constant.
func (m *model) setWishes(wishes []Wish) {
	type pair struct{ first, then int }
	sum := map[pair]int64{}
	for _, w := range wishes {
		switch {
		case w.Cost == 0 || m.below[w.Then].has(w.First):
		case m.below[w.First].has(w.Then):
			m.constant += w.Cost
		default:
			sum[pair{w.First, w.Then}] += w.Cost
		}
	}
	if len(sum) == 0 {
		return
	}
	m.dues = make([][]due, m.n)
	for _, p := range slices.SortedFunc(maps.Keys(sum), func(a, b pair) int {
		return slices.Compare([]int{a.then, a.first}, []int{b.then, b.first})
	}) {
		m.dues[p.then] = append(m.dues[p.then], due{p.first, sum[p]})
	}
	m.findWished()
}

// findWished notes the operations that dues have to do with.
func (m *model) findWished() {
	m.dueOps, m.wished = newSet(m.n), newSet(m.n)
	for i, dues := range m.dues {
		for _, d := range dues {
			m.dueOps.add(i)
			m.wished.add(i)
			m.wished.add(d.while)
		}
	}
}

func (m *model) isWished(i int) bool { return m.wished != nil && m.wished.has(i) }
