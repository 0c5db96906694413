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
	mask  []uint64 // of each operation's mode, m.words words each
	value []uint64
	free  []bool
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
	via  int // the operation done first, whose mode is entered
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
		md := &m.modes[m.mode[i]]
		e.need = append(e.need, need...)
		e.mask = append(e.mask, md.mask...)
		e.value = append(e.value, md.value...)
		e.free = append(e.free, md.free)
	}
	e.folds = newFolds(m)
	return e
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
func (e *expander) atOnce(state []uint64, i int) bool {
	if !e.free[i] {
		return false
	}
	at := i * len(state)
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
// mode that a ready operation asks for, enter it and close. Operations of a
// mode that is not free branch one by one.
func (e *expander) expand(key []uint64) {
	e.kids, e.keys = e.kids[:0], e.keys[:0]
	e.findReady(key[:e.setW])
	e.stamp++
	for _, i := range e.ready {
		k := e.m.mode[i]
		if e.free[i] {
			if e.seen[k] == e.stamp {
				continue
			}
			e.seen[k] = e.stamp
		}
		e.kids = append(e.kids, kid{i, e.m.cost(key[e.setW:], k)})
		e.keys = append(e.keys, key...)
		e.do(e.key(len(e.kids)-1), i)
	}
}

// do does operation i in a key whose ready operations have been found, and
// closes the key.
func (e *expander) do(key []uint64, i int) {
	done, state := set(key[:e.setW]), key[e.setW:]
	e.m.enter(state, e.m.mode[i])
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
	if e.atOnce(state, i) {
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
