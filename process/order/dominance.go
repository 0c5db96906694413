package order

// A front remembers, by state, which sets of operations were done at what
// cost. A key is dominated when one of the same state has done all that it has
// and more, at no greater cost: where costs obey the triangle inequality, what
// completes the former completes the latter at no greater cost. What has dues
// must be done in both or in neither, since by the one that has done it already
// it may cost something.
type front struct {
	setW   int
	due    set // operations that have dues, or nil
	states *store
	lists  [][]uint64 // by state: cost and done set, one after another
}

func newFront(m *model) *front {
	return &front{setW: setWords(m.n), due: m.dueOps, states: newStore(m.words)}
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
		other := set(list[at+1 : at+1+f.setW])
		if int64(list[at]) <= g && done.within(other) && f.alike(done, other) {
			return int64(list[at]) < g || !other.within(done)
		}
	}
	list = append(list, uint64(g))
	f.lists[id] = append(list, done...)
	return false
}

// alike reports whether both have done the same of what has dues.
func (f *front) alike(done, other set) bool {
	for w, due := range f.due {
		if (done[w]^other[w])&due != 0 {
			return false
		}
	}
	return true
}
