package order

// A front remembers, by state, which sets of operations were done at what
// cost. A key is dominated when one of the same state has done all that it has
// and more, at no greater cost: where costs obey the triangle inequality, what
// completes the former completes the latter at no greater cost.
type front struct {
	setW   int
	states *store
	lists  [][]uint64 // by state: cost and done set, one after another
}

func newFront(m *model) *front {
	return &front{setW: setWords(m.n), states: newStore(m.words)}
}

// dominated reports whether the key at cost g is dominated by another, and
// remembers it otherwise.
func (f *front) dominated(key []uint64, g int64) bool {
	id, isNew := f.states.number(key[f.setW:])
	if isNew {
		f.lists = append(f.lists, nil)
	}
	list, done := f.lists[id], set(key[:f.setW])
	for at := 0; at < len(list); at += f.setW + 1 {
		if int64(list[at]) <= g && done.within(list[at+1:at+1+f.setW]) {
			return int64(list[at]) < g || !set(list[at+1:at+1+f.setW]).within(done)
		}
	}
	list = append(list, uint64(g))
	f.lists[id] = append(list, done...)
	return false
}
