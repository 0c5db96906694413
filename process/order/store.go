package order

import "slices"

// A store numbers distinct keys of a fixed width in the order in which they
// are first met.
type store struct {
	width int
	keys  []uint64
	table []int32 // open addressing; number+1, 0 is empty
	count int
}

func newStore(width int) *store {
	return &store{width: width, table: make([]int32, 1<<10)}
}

func (s *store) key(id int32) []uint64 {
	return s.keys[int(id)*s.width : (int(id)+1)*s.width]
}

func hash(key []uint64) uint64 {
	h := uint64(0x9e3779b97f4a7c15)
	for _, w := range key {
		h ^= w
		h *= 0xff51afd7ed558ccd
		h ^= h >> 32
	}
	return h
}

// find returns the number of the key, or -1.
func (s *store) find(key []uint64) int32 {
	mask := uint64(len(s.table) - 1)
	for at := hash(key) & mask; s.table[at] != 0; at = (at + 1) & mask {
		if id := s.table[at] - 1; slices.Equal(s.key(id), key) {
			return id
		}
	}
	return -1
}

// number returns the number of the key and whether it is new.
func (s *store) number(key []uint64) (int32, bool) {
	mask := uint64(len(s.table) - 1)
	at := hash(key) & mask
	for s.table[at] != 0 {
		id := s.table[at] - 1
		if slices.Equal(s.key(id), key) {
			return id, false
		}
		at = (at + 1) & mask
	}
	id := int32(s.count)
	s.keys = append(s.keys, key...)
	s.count++
	s.table[at] = id + 1
	if 2*s.count > len(s.table) {
		s.grow()
	}
	return id, true
}

func (s *store) grow() {
	s.table = make([]int32, 2*len(s.table))
	mask := uint64(len(s.table) - 1)
	for id := range int32(s.count) {
		at := hash(s.key(id)) & mask
		for s.table[at] != 0 {
			at = (at + 1) & mask
		}
		s.table[at] = id + 1
	}
}
