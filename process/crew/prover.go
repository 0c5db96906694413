package crew

import "slices"

// A lit is a variable or its negation: 2v or 2v+1.
type lit int32

func (l lit) not() lit { return l ^ 1 }
func (l lit) v() int32 { return int32(l >> 1) }

const (
	truth = lit(0) // variable 0 is true
	lie   = lit(1)
)

// A clause is literals of which one must be true; the first two are watched.
type clause struct {
	lits    []lit
	deleted bool
	levels  int // decision levels among its literals when it was learnt
	use     float64
}

type watcher struct {
	c     *clause
	other lit // if it is true the clause need not be looked at
}

// A prover decides whether clauses can be true together, learning a clause
// from each failure (J. Marques-Silva, K. Sakallah, IEEE Transactions on
// Computers 48, 1999; the watching of two literals and the choice by activity
// are those of M. Moskewicz and others, DAC 2001). Beside plain variables there
// are numbers between a low and a high bound, and for each number and value the
// variable "it is no more": these follow from the bounds, and only moves of
// bounds are written down (lazy clause generation; O. Ohrimenko, P. Stuckey, M.
// Codish, Propagation via lazy clause generation, Constraints 14, 2009). Arrows
// keep numbers apart; a theory adds clauses when they are wanted.
type prover struct {
	low, high []int64 // of each number now
	lo, hi    []int64 // at first
	base      []lit   // of each number: it is no more than lo
	owner     []int32 // by variable: its number, or -1
	when      []int64 // by variable: its value
	value     []int8  // by literal of plain variables: 1 true, -1 false, 0 open
	place     []int32 // by plain variable: its place in the trail
	last      [2][]int32

	trail   []step
	limits  []int // length of the trail at each decision
	head    int
	watches [][]watcher
	arrows  []arrow
	out, in [][]int32 // by number: arrows
	givens  [][]int32 // by variable: arrows that it is given for

	activity []float64
	bump     float64
	phase    []bool
	saved    []int64   // by number: its value when last it had one
	touched  [][]int32 // by number: its variables that may be chosen
	aside    int32     // a number never chosen, or -1
	heap     []int32   // open variables by activity
	at       []int32   // place in the heap, or -1
	learnts  []*clause
	useBump  float64
	failed   bool // false already without any decision
	failures int
	keep     int // how many learnt clauses before half are forgotten

	known    []bool   // by plain variable: wanted while learning
	want     [2][]lit // by number: the bound wanted while learning, or none
	wantAt   [2][]int32
	wanted   []lit
	depths   []int32 // scratch
	theory   theory
	gathered []lit
}

// A step is something made true.
type step struct {
	l    lit
	why  cause
	was  int64 // bound of the number before
	past int32 // place in the trail of the move before of the same bound, or -1
	deep int32 // how many decisions there were
}

// A cause is why a step was made; neither is for decisions.
type cause struct {
	c     *clause
	arrow int32 // from 1
}

// A theory watches assignments and gives clauses that they break or that force
// a literal.
type theory interface {
	assigned(l lit)
	// next returns clauses of each of which at most one literal is not false, none
	// when there are none. An empty clause says that nothing can be true.
	next() [][]lit
}

func newProver(t theory) *prover {
	s := &prover{bump: 1, useBump: 1, keep: 4000, aside: -1}
	s.variable(true)
	s.enqueue(truth, cause{})
	s.theory = t
	return s
}

// extend adds so many variables, of a number with values from one on, or plain.
func (s *prover) extend(n int, owner int32, when int64) int32 {
	v := int32(len(s.owner))
	s.owner, s.when = slices.Grow(s.owner, n), slices.Grow(s.when, n)
	s.at, s.place = slices.Grow(s.at, n), slices.Grow(s.place, n)
	for k := range n {
		s.owner, s.when = append(s.owner, owner), append(s.when, when+int64(k))
		s.at, s.place = append(s.at, -1), append(s.place, -1)
	}
	s.value, s.watches = lengthen(s.value, 2*n), lengthen(s.watches, 2*n)
	s.activity, s.phase, s.known = lengthen(s.activity, n), lengthen(s.phase, n), lengthen(s.known, n)
	return v
}

func lengthen[T any](s []T, n int) []T { return slices.Grow(s, n)[:len(s)+n] }

// variable makes a plain one that is tried first with the value given.
func (s *prover) variable(first bool) lit {
	v := s.extend(1, -1, 0)
	s.phase[v] = first
	s.insert(v)
	return lit(2 * v)
}

// number makes one between two bounds, tried first with the value given.
func (s *prover) number(lo, hi, first int64) int {
	i := len(s.low)
	s.low, s.high, s.lo, s.hi = append(s.low, lo), append(s.high, hi), append(s.lo, lo), append(s.hi, hi)
	s.base = append(s.base, lit(2*len(s.owner)))
	s.saved = append(s.saved, first)
	s.touched = append(s.touched, nil)
	s.out, s.in = append(s.out, nil), append(s.in, nil)
	for side := range s.last {
		s.last[side] = append(s.last[side], -1)
		s.want[side], s.wantAt[side] = append(s.want[side], -1), append(s.wantAt[side], -1)
	}
	s.extend(int(max(hi-lo, 0)), int32(i), lo)
	return i
}

// by is the literal "number i is t or less".
func (s *prover) by(i int, t int64) lit {
	switch {
	case t < s.lo[i]:
		return lie
	case t >= s.hi[i]:
		return truth
	}
	return s.base[i] + lit(2*(t-s.lo[i]))
}

// val is 1 if a literal is true, -1 if it is false, 0 if it is open.
func (s *prover) val(l lit) int8 {
	i := s.owner[l>>1]
	if i < 0 {
		return s.value[l]
	}
	t := s.when[l>>1]
	r := int8(0)
	if s.high[i] <= t {
		r = 1
	} else if s.low[i] > t {
		r = -1
	}
	if l&1 == 1 {
		return -r
	}
	return r
}

// stands is the place in the trail of the step that made a true literal true,
// -1 if it was so from the first.
func (s *prover) stands(l lit) int32 {
	v := l.v()
	i := s.owner[v]
	if i < 0 {
		return s.place[v]
	}
	t := s.when[v]
	p := s.last[l&1][i]
	for p >= 0 {
		e := &s.trail[p]
		if l&1 == 0 && e.was > t || l&1 == 1 && e.was <= t {
			return p
		}
		p = e.past
	}
	return -1
}

// deep is how many decisions a true literal rests on at most.
func (s *prover) deep(l lit) int32 {
	p := s.stands(l)
	if p < 0 {
		return 0
	}
	return s.trail[p].deep
}

func (s *prover) depth() int32 { return int32(len(s.limits)) }

// enqueue makes an open literal true.
func (s *prover) enqueue(l lit, why cause) {
	v := l.v()
	e := step{l: l, why: why, past: -1, deep: s.depth()}
	if i := s.owner[v]; i >= 0 {
		side := l & 1
		e.past = s.last[side][i]
		s.last[side][i] = int32(len(s.trail))
		if side == 0 {
			e.was, s.high[i] = s.high[i], s.when[v]
		} else {
			e.was, s.low[i] = s.low[i], s.when[v]+1
		}
	} else {
		s.value[l], s.value[l.not()] = 1, -1
		s.place[v] = int32(len(s.trail))
	}
	s.trail = append(s.trail, e)
	if s.theory != nil {
		s.theory.assigned(l)
	}
}

// add puts a clause in before the search.
func (s *prover) add(lits ...lit) {
	if s.failed {
		return
	}
	kept := make([]lit, 0, len(lits))
	for _, l := range lits {
		switch v := s.val(l); {
		case v > 0 || slices.Contains(kept, l.not()):
			return
		case v < 0 || slices.Contains(kept, l):
		default:
			kept = append(kept, l)
		}
	}
	switch len(kept) {
	case 0:
		s.failed = true
	case 1:
		s.enqueue(kept[0], cause{})
	default:
		s.watch(&clause{lits: kept})
	}
}

func (s *prover) watch(c *clause) {
	s.watches[c.lits[0].not()] = append(s.watches[c.lits[0].not()], watcher{c, c.lits[1]})
	s.watches[c.lits[1].not()] = append(s.watches[c.lits[1].not()], watcher{c, c.lits[0]})
}

// cut takes back all decisions above a level.
func (s *prover) cut(level int) {
	if level >= len(s.limits) {
		return
	}
	to := s.limits[level]
	for k := len(s.trail) - 1; k >= to; k-- {
		e := &s.trail[k]
		v := e.l.v()
		i := s.owner[v]
		if i < 0 {
			s.value[e.l], s.value[e.l.not()] = 0, 0
			s.phase[v] = e.l&1 == 0
			if s.at[v] < 0 {
				s.insert(v)
			}
			continue
		}
		if s.low[i] == s.high[i] {
			s.saved[i] = s.low[i]
		}
		side := e.l & 1
		s.last[side][i] = e.past
		if side == 0 {
			s.high[i] = e.was
		} else {
			s.low[i] = e.was
		}
		for _, v := range s.touched[i] {
			if s.at[v] < 0 {
				s.insert(v)
			}
		}
	}
	s.trail = s.trail[:to]
	s.limits = s.limits[:level]
	s.head = min(s.head, to)
}
