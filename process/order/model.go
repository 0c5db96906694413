package order

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
	"strconv"
	"strings"
)

// A model is a problem with the stations dissolved: the state is a vector of
// slots, one for each attribute of each station, one for where the work is and
// one for what is in hand, and an act, which is one way of doing one operation,
// sets some of the slots. Searches and bounds work on models; a bound's model
// has fewer slots and operations. Sequences are of acts.
type model struct {
	n     int    // operations
	slots []slot // their values are packed into words
	words int    // of the packed state
	start []uint64
	modes []mode
	acts  []act
	ways  [][]int // acts of each operation, the cheapest first, which costs 0
	free  []bool  // by operation: all modes of its acts are free
	pred  [][]int // direct predecessors
	succ  [][]int // direct successors
	below []set   // all predecessors
	above []set   // all successors

	allFree bool    // all operations are free
	dues    [][]due // by operation, what doing it costs
	dueOps  set     // operations that have dues
	wished  set     // operations that dues have to do with; nil if there are none

	constant int64 // part of every order's cost that the rest does not show
}

// An act is one way of doing one operation.
type act struct {
	op, mode int
	cost     int64 // besides that of coming into the mode
	way      int   // of the operation, as the problem numbers them
}

// A due is to be paid when an operation is done while another is not.
type due struct {
	while int // the other is not done
	cost  int64
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

// A mode is a partial assignment of slots, shared by all acts that ask for the
// same.
type mode struct {
	set   []assign
	mask  []uint64 // over the packed state
	value []uint64
	free  bool // all values are metric: coming into the mode is never a short cut
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

// due returns what doing operation i costs by what is not done yet.
func (m *model) due(done set, i int) int64 {
	if m.dues == nil {
		return 0
	}
	var c int64
	for _, d := range m.dues[i] {
		if !done.has(d.while) {
			c += d.cost
		}
	}
	return c
}

// price returns the cost of a sequence that does every operation.
func (m *model) price(acts []int) int64 {
	state, done := slices.Clone(m.start), newSet(m.n)
	total := m.constant
	for _, k := range acts {
		a := m.acts[k]
		total += m.cost(state, a.mode) + a.cost + m.due(done, a.op)
		m.enter(state, a.mode)
		done.add(a.op)
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

// setActs stores the acts, of several of one operation and mode the cheapest,
// and numbers their modes by first appearance.
func (m *model) setActs(raw []rawAct) {
	m.ways, m.free = make([][]int, m.n), make([]bool, m.n)
	m.allFree = true
	known := map[string]int{}
	for _, r := range raw {
		k, ok := known[modeKey(r.set)]
		if !ok {
			k = len(m.modes)
			known[modeKey(r.set)] = k
			m.modes = append(m.modes, m.newMode(r.set))
		}
		a := act{op: r.op, mode: k, cost: r.cost, way: r.way}
		at := slices.IndexFunc(m.ways[r.op], func(b int) bool { return m.acts[b].mode == k })
		switch {
		case at < 0:
			m.ways[r.op] = append(m.ways[r.op], len(m.acts))
			m.acts = append(m.acts, a)
		case r.cost < m.acts[m.ways[r.op][at]].cost:
			m.acts[m.ways[r.op][at]] = a
		}
	}
	for i, ways := range m.ways {
		slices.SortStableFunc(ways, func(a, b int) int { return cmp.Compare(m.acts[a].cost, m.acts[b].cost) })
		m.free[i] = !slices.ContainsFunc(ways, func(a int) bool { return !m.modes[m.acts[a].mode].free })
		m.allFree = m.allFree && m.free[i]
	}
}

func modeKey(set []assign) string {
	var key strings.Builder
	for _, a := range set {
		key.WriteString(strconv.Itoa(a.slot) + ":" + strconv.Itoa(a.value) + " ")
	}
	return key.String()
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

// onlyMode returns the mode of an operation that can be done in one way, or -1.
func (m *model) onlyMode(i int) int {
	if len(m.ways[i]) > 1 {
		return -1
	}
	return m.acts[m.ways[i][0]].mode
}

// within reports whether what is in mode k is in mode x.
func (m *model) within(k, x int) bool {
	a, b := &m.modes[x], &m.modes[k]
	for w, mask := range a.mask {
		if mask&^b.mask[w] != 0 || b.value[w]&mask != a.value[w] {
			return false
		}
	}
	return true
}
