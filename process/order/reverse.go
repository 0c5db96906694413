package order

// reversed returns the model of the same work told backwards: an order of it,
// read from its end, is an order of m of the same cost. It begins with every
// slot free to be anything, and one more operation, the last by number and in
// every order, brings all slots to where m starts.
func (m *model) reversed() *model {
	r := &model{constant: m.constant}
	starts := make([]int, len(m.slots))
	wants := make([][]assign, m.n+1)
	for k := range m.slots {
		s := &m.slots[k]
		n := len(s.cost)
		cost := make([][]int64, n+1)
		for to := range n + 1 {
			cost[to] = make([]int64, n+1)
			for from := range n {
				cost[to][from] = infinite // nothing is ever free again
				if to < n {
					cost[to][from] = s.cost[from][to]
				}
			}
		}
		r.slots = append(r.slots, slot{cost: cost, metric: append(append([]bool{}, s.metric...), true)})
		starts[k] = n
		wants[m.n] = append(wants[m.n], assign{k, s.of(m.start)})
	}
	for i := range m.n {
		wants[i] = m.modes[m.mode[i]].set
	}
	r.pack(starts)
	r.setModes(wants)
	before := make([][]int, m.n+1)
	for i := range m.n {
		before[i] = m.succ[i]
		before[m.n] = append(before[m.n], i)
	}
	r.setPrecedence(before)
	return r
}

// backwards turns an order of m.reversed() into one of m.
func backwards(sequence []int) []int {
	n := len(sequence) - 1 // the last brings the slots to their start
	turned := make([]int, n)
	for k, i := range sequence[:n] {
		turned[n-1-k] = i
	}
	return turned
}
