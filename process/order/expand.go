package order

import "math/bits"

// An expander walks the search space of a model. A key is the set of done
// operations followed by the packed state. It is closed when nothing is left
// that may be done at once or may wait for something else (see fold).
type expander struct {
	m     *model
	setW  int      // words of the done set
	width int      // words of a key
	need  []uint64 // direct predecessors, setW words for each operation
	mask  []uint64 // of each act's mode, m.words words each
	value []uint64
	open  [][]int // by operation, the acts that may be done as soon as they cost nothing
	folds *folds

	ready []int // what can be done next, in the key last looked at
	after []int // the same once do or flow has been at work
	stack []int
	seen  []int // by mode, the stamp at which it was last branched on
	stamp int
	kids  []kid
	keys  []uint64 // of kids, one after another
}

// A kid is one branch from a key.
type kid struct {
	via  int // the act done first, whose mode is entered
	cost int64
}

func newExpander(m *model) *expander {
	w := setWords(m.n)
	e := &expander{m: m, setW: w, width: w + m.words, seen: make([]int, len(m.modes))}
	for i := range m.n {
		need := newSet(m.n)
		for _, b := range m.pred[i] {
			need.add(b)
		}
		e.need = append(e.need, need...)
		e.open = append(e.open, m.openWays(i))
	}
	for _, a := range m.acts {
		md := &m.modes[a.mode]
		e.mask = append(e.mask, md.mask...)
		e.value = append(e.value, md.value...)
	}
	e.folds = newFolds(m)
	return e
}

// openWays lists the acts of an operation that may be done as soon as they cost
// nothing: coming into no mode of the operation is a short cut, and no other of
// its ways is cheaper.
func (m *model) openWays(i int) []int {
	if !m.free[i] {
		return nil
	}
	ways := m.ways[i]
	for k, a := range ways {
		if m.acts[a].cost > 0 {
			return ways[:k]
		}
	}
	return ways
}

// root returns the closed start key.
func (e *expander) root() []uint64 {
	key := make([]uint64, e.width)
	copy(key[e.setW:], e.m.start)
	e.close(key)
	return key
}

func (e *expander) key(kid int) []uint64 {
	return e.keys[kid*e.width : (kid+1)*e.width]
}

// complete reports whether everything is done.
func (e *expander) complete(key []uint64) bool {
	n := 0
	for _, w := range key[:e.setW] {
		n += bits.OnesCount64(w)
	}
	return n == e.m.n
}

func (e *expander) isReady(done []uint64, i int) bool {
	for w, need := range e.need[i*e.setW : (i+1)*e.setW] {
		if need&^done[w] != 0 {
			return false
		}
	}
	return true
}

// atOnce reports whether a ready operation may be done now at no loss.
func (e *expander) atOnce(done set, state []uint64, i int) bool {
	for _, a := range e.open[i] {
		if e.fits(state, a) {
			return e.m.due(done, i) == 0
		}
	}
	return false
}

// fits reports whether the state is in the mode of an act already.
func (e *expander) fits(state []uint64, a int) bool {
	at := a * len(state)
	for w, s := range state {
		if s&e.mask[at+w] != e.value[at+w] {
			return false
		}
	}
	return true
}

// findReady lists the operations that can be done next, rising.
func (e *expander) findReady(done []uint64) {
	e.ready = e.ready[:0]
	for k, w := range done {
		open := ^w
		if rest := e.m.n - k<<6; rest < 64 {
			open &= 1<<rest - 1
		}
		for ; open != 0; open &= open - 1 {
			if i := k<<6 + bits.TrailingZeros64(open); e.isReady(done, i) {
				e.ready = append(e.ready, i)
			}
		}
	}
}

// expand fills kids and keys with the branches from a closed key: for every
// mode in which a ready operation can be done, enter it and close. Acts that
// are not open, or cost something by what is not done, branch one by one.
func (e *expander) expand(key []uint64) {
	e.kids, e.keys = e.kids[:0], e.keys[:0]
	done := set(key[:e.setW])
	e.findReady(done)
	e.stamp++
	for _, i := range e.ready {
		due := e.m.due(done, i)
		for at, a := range e.m.ways[i] {
			k := e.m.acts[a].mode
			if due == 0 && at < len(e.open[i]) {
				if e.seen[k] == e.stamp {
					continue
				}
				e.seen[k] = e.stamp
			}
			e.kids = append(e.kids, kid{a, e.m.cost(key[e.setW:], k) + e.m.acts[a].cost + due})
			e.keys = append(e.keys, key...)
			e.do(e.key(len(e.kids)-1), a)
		}
	}
}

// do does an act in a key whose ready operations have been found, and closes
// the key.
func (e *expander) do(key []uint64, a int) {
	done, state := set(key[:e.setW]), key[e.setW:]
	i := e.m.acts[a].op
	e.m.enter(state, e.m.acts[a].mode)
	done.add(i)
	e.stack = append(e.stack[:0], i)
	e.after = e.after[:0]
	for _, r := range e.ready {
		if r != i {
			e.take(done, state, r)
		}
	}
	e.flow(done, state)
}

// close does everything free in a key.
func (e *expander) close(key []uint64) {
	done, state := set(key[:e.setW]), key[e.setW:]
	e.findReady(done)
	e.stack, e.after = e.stack[:0], e.after[:0]
	for _, r := range e.ready {
		e.take(done, state, r)
	}
	e.flow(done, state)
}

// take does a ready operation if it may be done at once, or notes that it is
// ready still.
func (e *expander) take(done set, state []uint64, i int) {
	if e.atOnce(done, state, i) {
		done.add(i)
		e.stack = append(e.stack, i)
	} else {
		e.after = append(e.after, i)
	}
}

// flow takes what the operations on the stack have made ready, and leaves out
// what may wait.
func (e *expander) flow(done set, state []uint64) {
	for len(e.stack) > 0 {
		top := len(e.stack) - 1
		i := e.stack[top]
		e.stack = e.stack[:top]
		for _, s := range e.m.succ[i] {
			if !done.has(s) && e.isReady(done, s) {
				e.take(done, state, s)
			}
		}
	}
	for _, x := range e.after {
		e.folds.apply(x, done)
	}
}
