package crew

import (
	"cmp"
	"context"
	"slices"
)

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
	learnt  bool
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
// are those of M. Moskewicz and others, DAC 2001). A theory adds clauses when
// they are wanted.
type prover struct {
	value    []int8 // by literal: 1 true, -1 false, 0 open
	level    []int32
	reason   []*clause
	trail    []lit
	limits   []int // length of the trail at each decision
	head     int
	watches  [][]watcher
	activity []float64
	bump     float64
	phase    []bool
	heap     []int32 // open variables by activity
	at       []int32 // place in the heap, or -1
	learnts  []*clause
	useBump  float64
	seen     []bool
	marked   []int32
	failed   bool // false already without any decision
	failures int
	keep     int // how many learnt clauses before half are forgotten

	theory theory
}

// A theory watches assignments and gives clauses that they break or that force
// a literal.
type theory interface {
	assigned(l lit)
	undo(trail int) // the trail is cut to this length
	// next returns a clause of which at most one literal is not false, nil when
	// there is none. An empty clause says that nothing can be true.
	next() []lit
}

func newProver(t theory) *prover {
	s := &prover{bump: 1, useBump: 1, keep: 4000, theory: t}
	s.variable(true)
	s.enqueue(truth, nil)
	return s
}

// variable makes a new one that is tried first with the value given.
func (s *prover) variable(first bool) lit {
	v := int32(len(s.level))
	s.value = append(s.value, 0, 0)
	s.level = append(s.level, 0)
	s.reason = append(s.reason, nil)
	s.watches = append(s.watches, nil, nil)
	s.activity = append(s.activity, 0)
	s.phase = append(s.phase, first)
	s.seen = append(s.seen, false)
	s.at = append(s.at, -1)
	s.insert(v)
	return lit(2 * v)
}

func (s *prover) depth() int32 { return int32(len(s.limits)) }

func (s *prover) enqueue(l lit, c *clause) {
	s.value[l], s.value[l.not()] = 1, -1
	s.level[l.v()] = s.depth()
	s.reason[l.v()] = c
	s.trail = append(s.trail, l)
	if s.theory != nil && l != truth {
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
		switch {
		case s.value[l] > 0 || slices.Contains(kept, l.not()):
			return
		case s.value[l] < 0 || slices.Contains(kept, l):
		default:
			kept = append(kept, l)
		}
	}
	switch len(kept) {
	case 0:
		s.failed = true
	case 1:
		s.enqueue(kept[0], nil)
		s.failed = s.propagate() != nil
	default:
		s.watch(&clause{lits: kept})
	}
}

func (s *prover) watch(c *clause) {
	s.watches[c.lits[0].not()] = append(s.watches[c.lits[0].not()], watcher{c, c.lits[1]})
	s.watches[c.lits[1].not()] = append(s.watches[c.lits[1].not()], watcher{c, c.lits[0]})
}

// propagate follows all that is forced; it returns a clause that is broken, or
// nil.
func (s *prover) propagate() *clause {
	for s.head < len(s.trail) {
		p := s.trail[s.head]
		s.head++
		list := s.watches[p]
		kept := list[:0]
		for k := 0; k < len(list); k++ {
			w := list[k]
			if s.value[w.other] > 0 {
				kept = append(kept, w)
				continue
			}
			c := w.c
			if c.deleted {
				continue
			}
			if c.lits[0] == p.not() {
				c.lits[0], c.lits[1] = c.lits[1], c.lits[0]
			}
			first := c.lits[0]
			if s.value[first] > 0 {
				kept = append(kept, watcher{c, first})
				continue
			}
			moved := false
			for x := 2; x < len(c.lits); x++ {
				if s.value[c.lits[x]] >= 0 {
					c.lits[1], c.lits[x] = c.lits[x], c.lits[1]
					s.watches[c.lits[1].not()] = append(s.watches[c.lits[1].not()], watcher{c, first})
					moved = true
					break
				}
			}
			if moved {
				continue
			}
			kept = append(kept, watcher{c, first})
			if s.value[first] < 0 {
				kept = append(kept, list[k+1:]...)
				s.watches[p] = kept
				s.head = len(s.trail)
				return c
			}
			s.enqueue(first, c)
		}
		s.watches[p] = kept
	}
	return nil
}

// deduce propagates clauses and theory in turn until neither has more to say.
func (s *prover) deduce() *clause {
	for {
		if c := s.propagate(); c != nil {
			return c
		}
		lits := s.theory.next()
		if lits == nil {
			return nil
		}
		if len(lits) == 0 {
			s.cut(0)
			return &clause{}
		}
		// The two literals that were, or are, decided last come first.
		slices.SortStableFunc(lits, func(a, b lit) int { return cmp.Compare(s.rank(b), s.rank(a)) })
		c := &clause{lits: lits, learnt: true, levels: len(lits), use: s.useBump}
		if len(lits) > 1 {
			s.watch(c)
			s.learnts = append(s.learnts, c)
		}
		if s.value[lits[0]] < 0 {
			s.cut(int(s.level[lits[0].v()]))
			return c
		}
		if s.value[lits[0]] == 0 {
			s.enqueue(lits[0], c)
		}
	}
}

func (s *prover) rank(l lit) int32 {
	if s.value[l] >= 0 {
		return 1 << 30
	}
	return s.level[l.v()]
}

// cut takes back all decisions above a level.
func (s *prover) cut(level int) {
	if level >= len(s.limits) {
		return
	}
	to := s.limits[level]
	for k := len(s.trail) - 1; k >= to; k-- {
		l := s.trail[k]
		s.value[l], s.value[l.not()] = 0, 0
		s.phase[l.v()] = l&1 == 0
		s.reason[l.v()] = nil
		if s.at[l.v()] < 0 {
			s.insert(l.v())
		}
	}
	s.trail = s.trail[:to]
	s.limits = s.limits[:level]
	s.head = min(s.head, to)
	s.theory.undo(to)
}

// learn works out from a broken clause what to learn, to the first point that
// alone leads to it, and the level to go back to.
func (s *prover) learn(c *clause) ([]lit, int) {
	learnt := []lit{0}
	open := 0
	at := len(s.trail) - 1
	s.marked = s.marked[:0]
	var p lit = -1
	for {
		c.use += s.useBump
		for _, q := range c.lits {
			v := q.v()
			if q == p || s.seen[v] || s.level[v] == 0 {
				continue
			}
			s.seen[v] = true
			s.marked = append(s.marked, v)
			s.touch(v)
			if s.level[v] == s.depth() {
				open++
			} else {
				learnt = append(learnt, q)
			}
		}
		for !s.seen[s.trail[at].v()] {
			at--
		}
		p = s.trail[at]
		at--
		if open--; open == 0 {
			break
		}
		c = s.reason[p.v()]
	}
	learnt[0] = p.not()
	// What the others force already is left out.
	kept := learnt[:1]
	for _, q := range learnt[1:] {
		r := s.reason[q.v()]
		needed := r == nil
		if r != nil {
			for _, x := range r.lits {
				if x.v() != q.v() && !s.seen[x.v()] && s.level[x.v()] > 0 {
					needed = true
					break
				}
			}
		}
		if needed {
			kept = append(kept, q)
		}
	}
	for _, v := range s.marked {
		s.seen[v] = false
	}
	back := 0
	for k := 1; k < len(kept); k++ {
		if l := int(s.level[kept[k].v()]); l > back {
			back = l
			kept[1], kept[k] = kept[k], kept[1]
		}
	}
	return kept, back
}

// An answer is whether all clauses can be true.
type answer int

const (
	unknown answer = iota
	possible
	impossible
)

// search decides until there were so many failures in all; it may be asked to
// go on. Where it is possible, the variables have their values.
func (s *prover) search(ctx context.Context, most int) answer {
	rest := luby(1) * 100
	restarts := 1
	for {
		if s.failed {
			return impossible
		}
		if c := s.deduce(); c != nil {
			s.failures++
			if s.depth() == 0 {
				s.failed = true
				return impossible
			}
			lits, back := s.learn(c)
			s.cut(back)
			if len(lits) == 1 {
				s.enqueue(lits[0], nil)
			} else {
				n := &clause{lits: slices.Clone(lits), learnt: true, levels: s.levels(lits), use: s.useBump}
				s.watch(n)
				s.learnts = append(s.learnts, n)
				s.enqueue(lits[0], n)
			}
			s.bump /= 0.95
			s.useBump /= 0.999
			if s.bump > 1e100 {
				s.rescale()
			}
			if s.useBump > 1e100 {
				for _, c := range s.learnts {
					c.use *= 1e-100
				}
				s.useBump *= 1e-100
			}
			if s.failures >= most || s.failures%64 == 0 && ctx.Err() != nil {
				return unknown
			}
			if rest--; rest <= 0 {
				restarts++
				rest = luby(restarts) * 100
				s.cut(0)
			}
			if len(s.learnts) > s.keep {
				s.reduce()
				s.keep += 300
			}
			continue
		}
		v := s.choose()
		if v < 0 {
			return possible
		}
		s.limits = append(s.limits, len(s.trail))
		l := lit(2 * v)
		if !s.phase[v] {
			l = l.not()
		}
		s.enqueue(l, nil)
	}
}

func (s *prover) levels(lits []lit) int {
	seen := map[int32]bool{}
	for _, l := range lits {
		seen[s.level[l.v()]] = true
	}
	return len(seen)
}

// reduce forgets the half of what was learnt that is least used.
func (s *prover) reduce() {
	slices.SortStableFunc(s.learnts, func(a, b *clause) int { return cmp.Compare(b.use, a.use) })
	kept := s.learnts[:0]
	for k, c := range s.learnts {
		if k < len(s.learnts)/2 || len(c.lits) == 2 || c.levels <= 2 || s.reason[c.lits[0].v()] == c {
			kept = append(kept, c)
		} else {
			c.deleted = true
		}
	}
	s.learnts = kept
}

// luby is the k-th number, from 1, of the series of M. Luby, A. Sinclair, D.
// Zuckerman, Information Processing Letters 47, 1993.
func luby(k int) int {
	for size := 1; ; size = 2*size + 1 {
		if k == size {
			return (size + 1) / 2
		}
		if k < size {
			return luby(k - (size-1)/2)
		}
	}
}

func (s *prover) rescale() {
	for v := range s.activity {
		s.activity[v] *= 1e-100
	}
	s.bump *= 1e-100
}

func (s *prover) touch(v int32) {
	s.activity[v] += s.bump
	if s.at[v] >= 0 {
		s.up(int(s.at[v]))
	}
}

// choose takes the open variable of most activity, lowest number first.
func (s *prover) choose() int32 {
	for len(s.heap) > 0 {
		v := s.heap[0]
		last := len(s.heap) - 1
		s.swap(0, last)
		s.heap = s.heap[:last]
		s.at[v] = -1
		if last > 0 {
			s.down(0)
		}
		if s.value[2*v] == 0 {
			return v
		}
	}
	return -1
}

func (s *prover) before(a, b int32) bool {
	if s.activity[a] != s.activity[b] {
		return s.activity[a] > s.activity[b]
	}
	return a < b
}

func (s *prover) insert(v int32) {
	s.at[v] = int32(len(s.heap))
	s.heap = append(s.heap, v)
	s.up(len(s.heap) - 1)
}

func (s *prover) swap(a, b int) {
	s.heap[a], s.heap[b] = s.heap[b], s.heap[a]
	s.at[s.heap[a]], s.at[s.heap[b]] = int32(a), int32(b)
}

func (s *prover) up(k int) {
	for k > 0 && s.before(s.heap[k], s.heap[(k-1)/2]) {
		s.swap(k, (k-1)/2)
		k = (k - 1) / 2
	}
}

func (s *prover) down(k int) {
	for {
		c := 2*k + 1
		if c >= len(s.heap) {
			return
		}
		if c+1 < len(s.heap) && s.before(s.heap[c+1], s.heap[c]) {
			c++
		}
		if !s.before(s.heap[c], s.heap[k]) {
			return
		}
		s.swap(k, c)
		k = c
	}
}
