package order

import "slices"

// A bound is a sum of projections that share no slot, so that no cost is
// counted twice. A model of which one projection would be all is bounded by a
// chain, and where it applies an assignment.
type bound struct {
	m      *model
	parts  []*projection
	values []int64 // by part, of the key last given to at

	chain      *chain
	assignment *assignment
	exactly    bool // the assignment is to be exact for every key
}

// newBound returns the bound with one projection for each slot, or for a few
// that can stand in for each other.
func newBound(m *model) *bound {
	b := &bound{m: m}
	if len(m.slots) == 1 && !slices.ContainsFunc(m.modes, func(md mode) bool { return len(md.set) == 0 }) {
		b.chain, b.assignment = newChain(m), newAssignment(m)
		return b
	}
	for _, c := range m.clusters() {
		b.parts = append(b.parts, c.build(m, upTo(len(m.slots)), c.charged))
	}
	b.values = make([]int64, len(b.parts))
	return b
}

// at returns the bound for a key.
func (b *bound) at(key []uint64) int64 {
	if b.chain != nil {
		return b.whole(key)
	}
	var sum int64
	for k, p := range b.parts {
		b.values[k] = p.bound(key)
		sum += b.values[k]
	}
	return sum
}

// after returns the bound for a key reached from the one last given to at.
func (b *bound) after(from, key []uint64) int64 {
	if b.chain != nil {
		return b.whole(key)
	}
	var sum int64
	for k, p := range b.parts {
		if p.touched(from, key) {
			sum += p.bound(key)
		} else {
			sum += b.values[k]
		}
	}
	return sum
}

func (b *bound) whole(key []uint64) int64 {
	switch {
	case b.assignment == nil:
		return b.chain.bound(key)
	case b.exactly:
		return b.assignment.exact(key)
	}
	return max(b.chain.bound(key), b.assignment.bound(key))
}

// memory returns about how many bytes the bound holds.
func (b *bound) memory() int64 {
	var total int64
	for _, p := range b.parts {
		total += p.memory()
	}
	return total
}
