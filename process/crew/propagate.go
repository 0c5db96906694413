package crew

import (
	"cmp"
	"slices"
)

// propagate follows all that is forced; it returns a clause that is broken, or
// nil.
func (s *prover) propagate() *clause {
	for s.head < len(s.trail) {
		e := &s.trail[s.head]
		s.head++
		l, was := e.l, e.was
		v := l.v()
		i := s.owner[v]
		if i < 0 {
			if c := s.visit(l); c != nil {
				return c
			}
			if int(v) < len(s.givens) {
				for _, a := range s.givens[v] {
					if c := s.pull(a); c != nil {
						return c
					}
				}
			}
			continue
		}
		from, until, along := l, s.base[i]+lit(2*(was-1-s.lo[i])), s.in[i]
		if l&1 == 1 {
			from, until, along = s.base[i]+lit(2*(was-s.lo[i]))+1, l, s.out[i]
		}
		for p := from; p <= until; p += 2 {
			if len(s.watches[p]) == 0 {
				continue
			}
			if c := s.visit(p); c != nil {
				return c
			}
		}
		for _, a := range along {
			if c := s.pull(a); c != nil {
				return c
			}
		}
	}
	return nil
}

// visit looks at the clauses that watch the opposite of a true literal.
func (s *prover) visit(p lit) *clause {
	list := s.watches[p]
	kept := list[:0]
	no := p.not()
	for k := 0; k < len(list); k++ {
		w := list[k]
		if s.val(w.other) > 0 {
			kept = append(kept, w)
			continue
		}
		c := w.c
		if c.deleted {
			continue
		}
		if c.lits[0] == no {
			c.lits[0], c.lits[1] = c.lits[1], c.lits[0]
		}
		first := c.lits[0]
		there := s.val(first)
		if there > 0 {
			kept = append(kept, watcher{c, first})
			continue
		}
		moved := false
		for x := 2; x < len(c.lits); x++ {
			if s.val(c.lits[x]) >= 0 {
				c.lits[1], c.lits[x] = c.lits[x], c.lits[1]
				q := c.lits[1].not()
				s.watches[q] = append(s.watches[q], watcher{c, first})
				moved = true
				break
			}
		}
		if moved {
			continue
		}
		kept = append(kept, watcher{c, first})
		if there < 0 {
			kept = append(kept, list[k+1:]...)
			s.watches[p] = kept
			s.head = len(s.trail)
			return c
		}
		s.enqueue(first, cause{c: c})
	}
	s.watches[p] = kept
	return nil
}

// deduce propagates clauses, and theory if it is asked, in turn until neither has
// more to say.
func (s *prover) deduce(asked bool) *clause {
	for {
		if c := s.propagate(); c != nil || !asked {
			return c
		}
		found := s.theory.next()
		if len(found) == 0 {
			return nil
		}
		for _, lits := range found {
			if c := s.adopt(lits); c != nil {
				return c
			}
		}
	}
}

// adopt takes up a clause of the theory; it returns it if it is broken.
func (s *prover) adopt(lits []lit) *clause {
	c := &clause{lits: lits, levels: len(lits), use: s.useBump}
	if len(lits) == 0 {
		s.cut(0)
		return c
	}
	// The two literals that were, or are, decided last come first.
	slices.SortStableFunc(lits, func(a, b lit) int { return cmp.Compare(s.rank(b), s.rank(a)) })
	if len(lits) > 1 {
		s.watch(c)
		s.learnts = append(s.learnts, c)
	}
	if v := s.val(lits[0]); v < 0 {
		s.cut(int(s.deep(lits[0].not())))
		return c
	} else if v == 0 && (len(lits) == 1 || s.val(lits[1]) < 0) {
		s.enqueue(lits[0], cause{c: c})
	}
	return nil
}

func (s *prover) rank(l lit) int32 {
	if s.val(l) >= 0 {
		return 1 << 30
	}
	return s.deep(l.not())
}
