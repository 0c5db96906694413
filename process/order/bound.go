package order

// A bound is a sum of projections that share no slot, so that no cost is
// counted twice.
type bound struct {
	parts  []*projection
	values []int64 // by part, of the key last given to at
}

// newBound returns the bound with one projection for each slot.
func newBound(m *model) *bound {
	b := &bound{}
	for s := range m.slots {
		b.parts = append(b.parts, newProjection(m, []int{s}))
	}
	b.values = make([]int64, len(b.parts))
	return b
}

// at returns the bound for a key.
func (b *bound) at(key []uint64) int64 {
	var sum int64
	for k, p := range b.parts {
		b.values[k] = p.bound(key)
		sum += b.values[k]
	}
	return sum
}

// after returns the bound for a key reached from the one last given to at.
func (b *bound) after(from, key []uint64) int64 {
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
