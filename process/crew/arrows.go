package crew

// An arrow keeps one number at least so far above another, if all that it is
// given for is true.
type arrow struct {
	from, to int
	far      int64
	given    [4]lit
}

// apart lets number j be at least so far above i, given some plain literals, at
// most four.
func (s *prover) apart(i, j int, far int64, given ...lit) {
	a := arrow{from: i, to: j, far: far}
	k := int32(len(s.arrows))
	n := 0
	for _, g := range given {
		if g == lie {
			return
		}
		if g == truth {
			continue
		}
		a.given[n] = g
		n++
		for len(s.givens) <= int(g.v()) {
			s.givens = append(s.givens, nil)
		}
		s.givens[g.v()] = append(s.givens[g.v()], k)
	}
	s.arrows = append(s.arrows, a)
	s.out[i], s.in[j] = append(s.out[i], k), append(s.in[j], k)
	if c := s.pull(k); c != nil {
		s.failed = true
	}
}

// pull moves bounds along an arrow; it returns a clause that is broken, or nil.
func (s *prover) pull(k int32) *clause {
	a := &s.arrows[k]
	far := s.low[a.from] + a.far
	over := far > s.high[a.to]
	open := lie
	for _, g := range a.given {
		if g == truth {
			break
		}
		switch v := s.val(g); {
		case v < 0:
			return nil
		case v == 0:
			if !over || open != lie {
				return nil
			}
			open = g
		}
	}
	why := cause{arrow: k + 1}
	switch {
	case over && open != lie:
		s.enqueue(open.not(), why)
	case over:
		lits := []lit{s.by(a.from, s.low[a.from]-1), s.by(a.to, far-1).not()}
		return &clause{lits: s.since(lits, a, lie)}
	default:
		if far > s.low[a.to] {
			s.enqueue(s.by(a.to, far-1).not(), why)
		}
		if to := s.high[a.to] - a.far; to < s.high[a.from] {
			s.enqueue(s.by(a.from, to), why)
		}
	}
	return nil
}

// since adds to literals what an arrow is given for, false, one left out.
func (s *prover) since(lits []lit, a *arrow, but lit) []lit {
	for _, g := range a.given {
		if g != truth && g != but {
			lits = append(lits, g.not())
		}
	}
	return lits
}

// because returns the false literals from which a true one follows, which the
// step at a place made true; they are overwritten by the next.
func (s *prover) because(at int32, l lit) []lit {
	e := &s.trail[at]
	lits := s.gathered[:0]
	if e.why.c != nil {
		for _, q := range e.why.c.lits {
			if q != e.l {
				lits = append(lits, q)
			}
		}
		s.gathered = lits
		return lits
	}
	a := &s.arrows[e.why.arrow-1]
	i, t := int(s.owner[l.v()]), s.when[l.v()]
	switch {
	case i < 0: // what it is given for is false: the bounds as they were then
		low := s.low[a.from]
		for p := s.last[1][a.from]; p > at; p = s.trail[p].past {
			low = s.trail[p].was
		}
		lits = s.since(append(lits, s.by(a.from, low-1), s.by(a.to, low+a.far-1).not()), a, e.l.not())
	case l&1 == 1:
		lits = s.since(append(lits, s.by(a.from, t-a.far)), a, lie)
	default:
		lits = s.since(append(lits, s.by(a.to, t+a.far).not()), a, lie)
	}
	s.gathered = lits
	return lits
}
