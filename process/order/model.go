package order

import (
	"math"
	"math/bits"
	"slices"
	"strconv"
	"strings"
)

// A model is a problem with the stations dissolved: the state is a vector of
// slots, one for each attribute of each station and one for where the work is,
// and an operation sets some of the slots. Searches and bounds work on models;
// a bound's model has fewer slots and operations.
type model struct {
	n     int    // operations
	slots []slot // their values are packed into words
	words int    // of the packed state
	start []uint64
	modes []mode
	mode  []int   // of each operation
	pred  [][]int // direct predecessors
	succ  [][]int // direct successors
	below []set   // all predecessors
	above []set   // all successors
	free  bool    // all modes are free

	constant int64 // part of every order's cost that the slots do not show
}

// A slot is one component of the state.
type slot struct {
	cost   [][]int64 // [to][from], square over all values
	metric []bool    // by value: going by way of it is never a short cut
	word   int       // where it is packed
	shift  uint
	mask   uint64 // after shifting
}

// infinite is the cost of a value that cannot be set: more than any order
// costs, and small enough that a sum over slots does not overflow.
const infinite = math.MaxInt64 / 64

// of returns the slot's value in a packed state.
func (s *slot) of(state []uint64) int { return int(state[s.word] >> s.shift & s.mask) }

// put sets the slot's value in a packed state.
func (s *slot) put(state []uint64, value int) {
	state[s.word] = state[s.word]&^(s.mask<<s.shift) | uint64(value)<<s.shift
}

// A mode is a partial assignment of slots, shared by all operations that ask
// for the same.
type mode struct {
	set   []assign
	mask  []uint64 // over the packed state
	value []uint64
	free  bool // an operation of this mode may be done as soon as it costs nothing
}

type assign struct {
	slot, value int
}

// cost returns what bringing the state into mode k costs.
func (m *model) cost(state []uint64, k int) int64 {
	var c int64
	for _, a := range m.modes[k].set {
		s := &m.slots[a.slot]
		c += s.cost[a.value][s.of(state)]
	}
	return c
}

// fits reports whether the state is in mode k already.
func (m *model) fits(state []uint64, k int) bool {
	md := &m.modes[k]
	for w, mask := range md.mask {
		if state[w]&mask != md.value[w] {
			return false
		}
	}
	return true
}

// enter brings the state into mode k.
func (m *model) enter(state []uint64, k int) {
	md := &m.modes[k]
	for w, mask := range md.mask {
		state[w] = state[w]&^mask | md.value[w]
	}
}

// price returns the cost of a sequence of all operations.
func (m *model) price(sequence []int) int64 {
	state := slices.Clone(m.start)
	total := m.constant
	for _, i := range sequence {
		total += m.cost(state, m.mode[i])
		m.enter(state, m.mode[i])
	}
	return total
}

// pack lays the slots into words and writes the start state.
func (m *model) pack(starts []int) {
	word, used := 0, uint(0)
	for k := range m.slots {
		s := &m.slots[k]
		width := uint(bits.Len(uint(len(s.cost) - 1)))
		if used+width > 64 {
			word, used = word+1, 0
		}
		s.word, s.shift, s.mask = word, used, 1<<width-1
		used += width
	}
	m.words = word + 1
	m.start = make([]uint64, m.words)
	for k, v := range starts {
		m.slots[k].put(m.start, v)
	}
}

// setModes gathers equal wishes into modes, numbered by first appearance.
func (m *model) setModes(wants [][]assign) {
	m.mode = make([]int, len(wants))
	m.free = true
	known := map[string]int{}
	for i, w := range wants {
		var key strings.Builder
		for _, a := range w {
			key.WriteString(strconv.Itoa(a.slot) + ":" + strconv.Itoa(a.value) + " ")
		}
		k, ok := known[key.String()]
		if !ok {
			k = len(m.modes)
			known[key.String()] = k
			m.modes = append(m.modes, m.newMode(w))
			m.free = m.free && m.modes[k].free
		}
		m.mode[i] = k
	}
}

func (m *model) newMode(set []assign) mode {
	md := mode{set: set, mask: make([]uint64, m.words), value: make([]uint64, m.words), free: true}
	for _, a := range set {
		s := &m.slots[a.slot]
		md.mask[s.word] |= s.mask << s.shift
		md.value[s.word] |= uint64(a.value) << s.shift
		md.free = md.free && s.metric[a.value]
	}
	return md
}

// serves reports whether an operation of mode x costs nothing right after or
// before one of mode k, and both may be done as soon as they cost nothing.
func (m *model) serves(k, x int) bool {
	a, b := &m.modes[x], &m.modes[k]
	if !a.free || !b.free {
		return false
	}
	for w, mask := range a.mask {
		if mask&^b.mask[w] != 0 || b.value[w]&mask != a.value[w] {
			return false
		}
	}
	return true
}
