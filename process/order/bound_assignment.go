package order

import "slices"

// An assignment bounds a model of one slot in which every operation sets a
// value of its own, so that each operation left is entered from one other: the
// cheapest assignment of predecessors, relaxed to its dual prices. Prices that
// suit the whole problem suit every part of it, so they are found once (H. W.
// Kuhn, The Hungarian method for the assignment problem, Naval Research
// Logistics Quarterly 2, 1955) and summed for each key.
type assignment struct {
	m      *model
	leave  []int64 // price of leaving an operation; the last is for the start
	enter  []int64 // price of entering an operation
	finish int64   // price of ending
	at     []int   // by value, the operation that sets it
}

// newAssignment returns nil where operations share values, or are so many that
// the prices would take too long.
func newAssignment(m *model) *assignment {
	if m.n > maxCubic {
		return nil
	}
	a := &assignment{m: m, at: make([]int, len(m.slots[0].cost))}
	for v := range a.at {
		a.at[v] = m.n // the start
	}
	for i, k := range m.mode {
		v := m.modes[k].set[0].value
		if a.at[v] != m.n {
			return nil
		}
		a.at[v] = i
	}
	cost := make([][]int64, m.n+1) // [from][to]; from n is the start, to n the end
	for from := range cost {
		cost[from] = make([]int64, m.n+1)
		for to := range cost[from] {
			cost[from][to] = a.arc(from, to)
		}
	}
	a.leave, a.enter = hungarian(cost)
	a.finish = a.enter[m.n]
	return a
}

// arc is the cost of doing one operation straight after another, infinite
// where no order can have that.
func (a *assignment) arc(from, to int) int64 {
	m := a.m
	s := &m.slots[0]
	switch {
	case from == to:
		return infinite / 64
	case to == m.n: // the end
		if len(m.succ[from]) > 0 {
			return infinite / 64
		}
		return 0
	case from == m.n: // the start
		if len(m.pred[to]) > 0 {
			return infinite / 64
		}
		return s.cost[m.modes[m.mode[to]].set[0].value][s.of(m.start)]
	case m.below[from].has(to), m.above[from].meets(m.below[to]):
		return infinite / 64
	}
	return s.cost[m.modes[m.mode[to]].set[0].value][m.modes[m.mode[from]].set[0].value]
}

func (a *assignment) bound(key []uint64) int64 {
	w := setWords(a.m.n)
	done := set(key[:w])
	last := a.at[a.m.slots[0].of(key[w:])]
	if last < a.m.n && !done.has(last) {
		last = a.m.n // what it sets was set from the start
	}
	sum := a.finish + a.leave[last]
	left := false
	for i := range a.m.n {
		if !done.has(i) {
			sum += a.leave[i] + a.enter[i]
			left = true
		}
	}
	if !left {
		return 0
	}
	return max(0, sum)
}

// hungarian returns prices u of rows and v of columns of a square matrix, with
// u[i]+v[j] never above cost[i][j] and the sum of all prices the cost of the
// cheapest assignment.
func hungarian(cost [][]int64) (u, v []int64) {
	n := len(cost)
	u, v = make([]int64, n), make([]int64, n+1)
	row := slices.Repeat([]int{-1}, n+1) // assigned to a column; n is a column to start from
	way := make([]int, n+1)
	for i := range n {
		row[n] = i
		j0 := n
		least := slices.Repeat([]int64{infinite}, n)
		used := make([]bool, n+1)
		for row[j0] >= 0 {
			used[j0] = true
			i0, j1, delta := row[j0], -1, int64(infinite)
			for j := range n {
				if used[j] {
					continue
				}
				if c := cost[i0][j] - u[i0] - v[j]; c < least[j] {
					least[j], way[j] = c, j0
				}
				if least[j] < delta {
					j1, delta = j, least[j]
				}
			}
			for j := range n + 1 {
				if used[j] {
					u[row[j]] += delta
					v[j] -= delta
				} else if j < n {
					least[j] -= delta
				}
			}
			j0 = j1
		}
		for j0 != n {
			j1 := way[j0]
			row[j0] = row[j1]
			j0 = j1
		}
	}
	return u, v[:n]
}
