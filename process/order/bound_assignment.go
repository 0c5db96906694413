package order

import "slices"

// An assignment bounds a model of one slot in which every operation sets a
// value of its own and no other, so that each operation left is entered from one other: the
// cheapest assignment of predecessors (H. W. Kuhn, The Hungarian method for
// the assignment problem, Naval Research Logistics Quarterly 2, 1955). Its
// dual prices suit the whole problem, hence every part of it, and are summed
// for each key; exact finds the prices that suit a key best.
type assignment struct {
	m     *model
	at    []int     // by value, the operation that sets it, or m.n for the start
	cost  [][]int64 // [from][to] less the prices; from m.n is the start, to m.n the end
	leave []int64   // price of leaving an operation, or the start
	enter []int64   // price of entering an operation, or of ending
	next  []int     // what the cheapest assignment enters from each

	rows, cols []int // scratch: what is left to leave and to enter
	match      matching
}

// unusable is the cost of entering one operation from another where no order
// can do so: more than any order costs.
const unusable = infinite / 64

// newAssignment returns nil where operations share values, or are so many that
// the prices would take too long.
func newAssignment(m *model) *assignment {
	a := &assignment{m: m, at: make([]int, len(m.slots[0].cost))}
	if m.n > maxCubic || len(m.acts) > m.n {
		return nil
	}
	for v := range a.at {
		a.at[v] = m.n
	}
	for i := range m.n {
		if a.at[a.value(i)] != m.n {
			return nil
		}
		a.at[a.value(i)] = i
	}
	for from := range m.n + 1 {
		row := make([]int64, m.n+1)
		for to := range row {
			row[to] = a.arc(from, to)
		}
		a.cost = append(a.cost, row)
		a.cols = append(a.cols, from)
	}
	a.rows = slices.Clone(a.cols)
	a.leave, a.enter = make([]int64, m.n+1), make([]int64, m.n+1)
	a.next = slices.Repeat([]int{-1}, m.n+1)
	a.match.solve(a.cost, a.rows, a.cols, a.next)
	for to, from := range a.match.row {
		a.next[from] = to
		a.enter[to] = a.match.price[to]
		a.leave[from] = a.cost[from][to] - a.enter[to]
	}
	for from, row := range a.cost {
		for to := range row {
			row[to] -= a.leave[from] + a.enter[to]
		}
	}
	return a
}

func (a *assignment) value(i int) int { return a.m.modes[a.m.onlyMode(i)].set[0].value }

// arc is the cost of doing one operation straight after another.
func (a *assignment) arc(from, to int) int64 {
	m := a.m
	s := &m.slots[0]
	switch {
	case from == to:
	case to == m.n: // the end
		if len(m.succ[from]) == 0 {
			return 0
		}
	case from == m.n: // the start
		if len(m.pred[to]) == 0 {
			return s.cost[a.value(to)][s.of(m.start)]
		}
	case !m.below[from].has(to) && !m.above[from].meets(m.below[to]):
		return s.cost[a.value(to)][a.value(from)]
	}
	return unusable
}

// last returns the operation done last in a key, or m.n for the start.
func (a *assignment) last(key []uint64) int {
	w := setWords(a.m.n)
	i := a.at[a.m.slots[0].of(key[w:])]
	if i < a.m.n && !set(key[:w]).has(i) {
		return a.m.n // its value was set from the start
	}
	return i
}

// bound returns the bound from the prices of the whole problem.
func (a *assignment) bound(key []uint64) int64 {
	done := set(key[:setWords(a.m.n)])
	sum, left := a.enter[a.m.n]+a.leave[a.last(key)], false
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

// exact returns the bound from the best prices for the key.
func (a *assignment) exact(key []uint64) int64 {
	done := set(key[:setWords(a.m.n)])
	a.rows, a.cols = append(a.rows[:0], a.last(key)), append(a.cols[:0], a.m.n)
	for i := range a.m.n {
		if !done.has(i) {
			a.rows, a.cols = append(a.rows, i), append(a.cols, i)
		}
	}
	if len(a.rows) == 1 {
		return 0
	}
	sum := a.match.solve(a.cost, a.rows, a.cols, a.next)
	for k := range a.rows {
		sum += a.leave[a.rows[k]] + a.enter[a.cols[k]]
	}
	return max(0, sum)
}
