package order

// compile turns a valid problem into a model of the same operations.
func compile(p Problem) *model {
	m := &model{}
	n := len(p.Operations)
	wants := make([][]assign, n)
	var starts []int
	for _, r := range rawSlots(p) {
		s, start, value := r.reduce()
		if s == nil {
			m.constant += r.constant()
			continue
		}
		for i, v := range value {
			if v != Any {
				wants[i] = append(wants[i], assign{len(m.slots), v})
			}
		}
		m.slots = append(m.slots, *s)
		starts = append(starts, start)
	}
	m.pack(starts)
	m.setModes(wants)
	before := make([][]int, n)
	for i, op := range p.Operations {
		before[i] = op.After
	}
	m.setPrecedence(before)
	return m
}

// rawSlots lists where the work is, then every attribute of every station.
func rawSlots(p Problem) []rawSlot {
	var raw []rawSlot
	if p.Moves != nil {
		place := rawSlot{cost: p.Moves, start: p.Start, value: make([]int, len(p.Operations))}
		for i, op := range p.Operations {
			place.value[i] = op.Station
		}
		raw = append(raw, place)
	}
	for s, st := range p.Stations {
		for a, at := range st.Attributes {
			r := rawSlot{cost: at.Change, first: at.First, start: at.Start, value: make([]int, len(p.Operations))}
			for i, op := range p.Operations {
				r.value[i] = Any
				if op.Station == s && op.Setting != nil {
					r.value[i] = op.Setting[a]
				}
			}
			raw = append(raw, r)
		}
	}
	return raw
}
