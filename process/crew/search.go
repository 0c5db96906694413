package crew

import (
	"cmp"
	"context"
	"slices"
)

// An answer is whether all clauses can be true.
type answer int

const (
	unknown answer = iota
	possible
	impossible
)

// search decides, with some literals taken for true, until there were so many
// failures in all; what was learnt stays. Where it is possible, the variables
// have their values.
func (s *prover) search(ctx context.Context, given []lit, most int) answer {
	rest := luby(1) * 100
	restarts := 1
	s.cut(0)
	taken := 0 // of those given
	for {
		if s.failed {
			return impossible
		}
		if c := s.deduce(taken == 0 || taken == len(given)); c != nil {
			s.failures++
			taken = 0
			if s.depth() == 0 {
				s.failed = true
				return impossible
			}
			lits, back := s.learn(c)
			s.cut(back)
			if len(lits) == 1 {
				s.enqueue(lits[0], cause{})
			} else {
				n := &clause{lits: slices.Clone(lits), levels: s.levels(lits), use: s.useBump}
				s.watch(n)
				s.learnts = append(s.learnts, n)
				s.enqueue(lits[0], cause{c: n})
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
			if s.failures >= most || s.failures%16 == 0 && ctx.Err() != nil {
				return unknown
			}
			if rest--; rest <= 0 {
				restarts++
				rest = luby(restarts) * 100
				s.cut(0)
				taken = 0
			}
			if len(s.learnts) > s.keep {
				s.reduce()
				s.keep += 300
			}
			continue
		}
		var l lit
		if taken < len(given) {
			l = given[taken]
			if taken++; s.val(l) < 0 {
				return impossible
			} else if s.val(l) > 0 {
				continue
			}
		} else {
			var ok bool
			if l, ok = s.decision(); !ok {
				return possible
			}
		}
		s.limits = append(s.limits, len(s.trail))
		s.enqueue(l, cause{})
	}
}

// levels is how many decision levels are among literals that are false, or
// were so before the last cut, the first aside.
func (s *prover) levels(lits []lit) int {
	s.depths = s.depths[:0]
	for _, l := range lits[1:] {
		d := s.deep(l.not())
		if !slices.Contains(s.depths, d) {
			s.depths = append(s.depths, d)
		}
	}
	return len(s.depths) + 1
}

// reduce forgets the half of what was learnt that is least used.
func (s *prover) reduce() {
	slices.SortStableFunc(s.learnts, func(a, b *clause) int { return cmp.Compare(b.use, a.use) })
	kept := s.learnts[:0]
	for k, c := range s.learnts {
		if k < len(s.learnts)/2 || len(c.lits) == 2 || c.levels <= 2 || s.locked(c) {
			kept = append(kept, c)
		} else {
			c.deleted = true
		}
	}
	s.learnts = kept
}

// locked reports whether something rests on a clause.
func (s *prover) locked(c *clause) bool {
	if s.val(c.lits[0]) <= 0 {
		return false
	}
	p := s.stands(c.lits[0])
	return p >= 0 && s.trail[p].why.c == c
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
