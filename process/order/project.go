package order

// project returns the model that sees only the given slots and the operations
// that set one of them whichever way they are done. From every state of m its
// cheapest order costs no more than what any order of m spends on these slots
// and on the ways of the operations in charged, which are taken out of it.
// Operations of the same free modes that follow each other and nothing else are
// taken as one, which counts as done when the last of them is; last tells for
// each operation which that is.
func (m *model) project(slots []int, charged set) (p *model, last []int) {
	p = &model{}
	to := renumbered(slots, len(m.slots))
	starts := make([]int, len(slots))
	for k, s := range slots {
		p.slots = append(p.slots, m.slots[s])
		starts[k] = m.slots[s].of(m.start)
	}
	m.closeLeftOut(p, to)
	p.pack(starts)
	var kept []int // operations of m
	var acts []rawAct
	name := make([]int, m.n) // new number of an operation, or -1
	for i := range m.n {
		name[i] = -1
		ways := m.projectWays(i, to)
		if ways == nil {
			continue
		}
		name[i] = len(kept)
		for _, a := range ways {
			a.op = name[i]
			if !charged.has(i) {
				a.cost = 0
			}
			acts = append(acts, a)
		}
		charged.remove(i)
		kept = append(kept, i)
	}
	before := make([][]int, len(kept))
	for k, i := range kept {
		m.below[i].each(func(b int) {
			if name[b] >= 0 {
				before[k] = append(before[k], name[b])
			}
		})
	}
	p.setPrecedence(before)
	p.setActs(acts)
	last = p.contract()
	for k, i := range last {
		last[k] = kept[i]
	}
	return p, last
}

// closeLeftOut gives slots of p costs that take any short cuts there may be by
// way of what left out operations set.
func (m *model) closeLeftOut(p *model, to []int) {
	short := newSet(len(p.slots))
	for i := range m.n {
		if m.free[i] || m.projectWays(i, to) != nil {
			continue
		}
		for _, a := range m.ways[i] {
			for _, v := range m.modes[m.acts[a].mode].set {
				if k := to[v.slot]; k >= 0 && !m.slots[v.slot].metric[v.value] {
					short.add(k)
				}
			}
		}
	}
	short.each(func(k int) {
		p.slots[k].cost = shortest(p.slots[k].cost)
		p.slots[k].findMetric()
	})
}

// projectWays returns what the ways of an operation set of the slots that have
// a new number, or nil if one of them sets none.
func (m *model) projectWays(i int, to []int) []rawAct {
	var ways []rawAct
	for _, k := range m.ways[i] {
		a := rawAct{cost: m.acts[k].cost}
		for _, v := range m.modes[m.acts[k].mode].set {
			if to[v.slot] >= 0 {
				a.set = append(a.set, assign{to[v.slot], v.value})
			}
		}
		if len(a.set) == 0 {
			return nil
		}
		ways = append(ways, a)
	}
	return ways
}

// contract joins each operation with the one that follows it and nothing else
// where both can be done in the same free modes at no cost besides, and returns
// the last old one of each new.
func (m *model) contract() []int {
	head := make([]int, m.n) // the first operation of each chain, by operation
	last := make([]int, m.n) // the last one, by head
	for _, i := range topological(m.pred) {
		head[i] = i
		if len(m.pred[i]) == 1 {
			b := m.pred[i][0]
			if len(m.succ[b]) == 1 && m.sameFreely(b, i) {
				head[i] = head[b]
			}
		}
		last[head[i]] = i
	}
	name := make([]int, m.n)
	var lasts []int
	var heads []int
	var acts []rawAct
	for i := range m.n {
		if head[i] == i {
			name[i] = len(heads)
			for _, a := range m.ways[i] {
				acts = append(acts, rawAct{op: name[i], cost: m.acts[a].cost, set: m.modes[m.acts[a].mode].set})
			}
			heads = append(heads, i)
			lasts = append(lasts, last[i])
		}
	}
	before := make([][]int, len(heads))
	for k, i := range heads {
		for _, b := range m.pred[i] {
			before[k] = append(before[k], name[head[b]])
		}
	}
	m.acts, m.modes = nil, nil
	m.setPrecedence(before)
	m.setActs(acts)
	return lasts
}

// sameFreely reports whether two operations can be done in the same free modes,
// at no cost besides that of coming into them.
func (m *model) sameFreely(b, i int) bool {
	if !m.free[i] || len(m.ways[b]) != len(m.ways[i]) {
		return false
	}
	for k, a := range m.ways[b] {
		x, y := m.acts[a], m.acts[m.ways[i][k]]
		if x.mode != y.mode || x.cost+y.cost > 0 {
			return false
		}
	}
	return true
}
