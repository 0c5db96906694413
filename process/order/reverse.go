package order

// reversed returns the model of the same work told backwards: an order of it,
// read from its end, is an order of m of the same cost. It begins with every
// slot free to be anything, and one more operation, the last by number and in
// every order, brings all slots to where m starts.
func (m *model) reversed() *model {
	r := &model{constant: m.constant}
	starts := make([]int, len(m.slots))
	var last []assign
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
		last = append(last, assign{k, s.of(m.start)})
	}
	r.pack(starts)
	before := make([][]int, m.n+1)
	for i := range m.n {
		before[i] = m.succ[i]
		before[m.n] = append(before[m.n], i)
	}
	r.setPrecedence(before)
	var acts []rawAct
	for _, a := range m.acts {
		acts = append(acts, rawAct{op: a.op, way: a.way, cost: a.cost, set: m.modes[a.mode].set})
	}
	r.setActs(append(acts, rawAct{op: m.n, set: last}))
	r.reverseDues(m)
	return r
}

// reverseDues makes what is paid by being before another be paid by being
// after it.
func (m *model) reverseDues(of *model) {
	if of.dues == nil {
		return
	}
	m.dues = make([][]due, m.n)
	for i, dues := range of.dues {
		for _, d := range dues {
			m.dues[d.while] = append(m.dues[d.while], due{i, d.cost})
		}
	}
	m.findWished()
}

// backwards turns an order of m.reversed() into one of m. Acts have the same
// numbers in both.
func backwards(acts []int) []int {
	n := len(acts) - 1 // the last brings the slots to their start
	turned := make([]int, n)
	for k, a := range acts[:n] {
		turned[n-1-k] = a
	}
	return turned
}
