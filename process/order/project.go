package order

import "slices"

// project returns the model that sees only the given slots and the operations
// that set one of them. From every state of m its cheapest order costs no more
// than what any order of m spends on these slots. Operations of one free mode
// that follow each other and nothing else are taken as one, which counts as
// done when the last of them is; last tells for each operation which that is.
func (m *model) project(slots []int) (p *model, last []int) {
	p = &model{}
	to := make([]int, len(m.slots)) // new number of a slot, or -1
	for k := range to {
		to[k] = slices.Index(slots, k)
	}
	starts := make([]int, len(slots))
	for k, s := range slots {
		old := &m.slots[s]
		p.slots = append(p.slots, slot{cost: old.cost, metric: old.metric})
		starts[k] = old.of(m.start)
	}
	p.pack(starts)
	var kept []int // operations of m
	var wants [][]assign
	name := make([]int, m.n) // new number of an operation, or -1
	for i := range m.n {
		var w []assign
		for _, a := range m.modes[m.mode[i]].set {
			if to[a.slot] >= 0 {
				w = append(w, assign{to[a.slot], a.value})
			}
		}
		name[i] = -1
		if len(w) > 0 {
			name[i] = len(kept)
			kept = append(kept, i)
			wants = append(wants, w)
		}
	}
	p.setModes(wants)
	before := make([][]int, len(kept))
	for k, i := range kept {
		m.below[i].each(func(b int) {
			if name[b] >= 0 {
				before[k] = append(before[k], name[b])
			}
		})
	}
	p.setPrecedence(before)
	last = p.contract()
	for k, i := range last {
		last[k] = kept[i]
	}
	return p, last
}

// contract joins each operation with the one that follows it and nothing else
// where both have one free mode, and returns the last old one of each new.
func (m *model) contract() []int {
	head := make([]int, m.n) // the first operation of each chain, by operation
	last := make([]int, m.n) // the last one, by head
	for _, i := range topological(m.pred) {
		head[i] = i
		if len(m.pred[i]) == 1 {
			b := m.pred[i][0]
			if len(m.succ[b]) == 1 && m.mode[b] == m.mode[i] && m.modes[m.mode[i]].free {
				head[i] = head[b]
			}
		}
		last[head[i]] = i
	}
	name := make([]int, m.n)
	var lasts, modes []int
	var heads []int
	for i := range m.n {
		if head[i] == i {
			name[i] = len(heads)
			heads = append(heads, i)
			modes = append(modes, m.mode[i])
			lasts = append(lasts, last[i])
		}
	}
	before := make([][]int, len(heads))
	for k, i := range heads {
		for _, b := range m.pred[i] {
			before[k] = append(before[k], name[head[b]])
		}
	}
	m.mode = modes
	m.setPrecedence(before)
	return lasts
}
