package order

import "math/bits"

// A set is a bitset over operation indexes.
type set []uint64

// setWords is the length of a set over n operations.
func setWords(n int) int { return (n + 63) / 64 }

func newSet(n int) set { return make(set, setWords(n)) }

func (s set) has(i int) bool { return s[i>>6]>>(i&63)&1 != 0 }
func (s set) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s set) remove(i int)   { s[i>>6] &^= 1 << (i & 63) }

// fullSet is the set of 0 to n-1.
func fullSet(n int) set {
	s := newSet(n)
	for i := range n {
		s.add(i)
	}
	return s
}

// within reports whether every element of s is in t.
func (s set) within(t set) bool {
	for k, w := range s {
		if w&^t[k] != 0 {
			return false
		}
	}
	return true
}

func (s set) meets(t set) bool {
	for k, w := range s {
		if w&t[k] != 0 {
			return true
		}
	}
	return false
}

func (s set) union(t set) {
	for k, w := range t {
		s[k] |= w
	}
}

func (s set) count() int {
	n := 0
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

// each calls f for every element in rising order.
func (s set) each(f func(i int)) {
	for k, w := range s {
		for ; w != 0; w &= w - 1 {
			f(k<<6 + bits.TrailingZeros64(w))
		}
	}
}
