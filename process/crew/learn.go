package crew

// learn works out from a broken clause what to learn, to the first point that
// alone leads to it, and the level to go back to. Of a number the strongest bound
// wanted stands for all that are weaker.
func (s *prover) learn(c *clause) ([]lit, int) {
	c.use += s.useBump
	s.wanted = s.wanted[:0]
	now := int32(s.limits[len(s.limits)-1])
	open := 0
	for _, q := range c.lits {
		open += s.need(q.not(), now)
	}
	at := int32(len(s.trail) - 1)
	var first lit
	for {
		for !s.needed(at) {
			at--
		}
		e := &s.trail[at]
		l := s.forget(e.l)
		if open--; open == 0 {
			first = l
			break
		}
		if e.why.c != nil {
			e.why.c.use += s.useBump
		}
		for _, q := range s.because(at, l) {
			open += s.need(q.not(), now)
		}
		at--
	}
	learnt := append(s.wanted[:0:0], first.not())
	// What the others force already is left out.
	for _, l := range s.wanted {
		if l = s.still(l); l != lie && !s.follows(l) {
			learnt = append(learnt, l.not())
		}
	}
	for _, l := range s.wanted {
		s.forget(l)
	}
	back := int32(0)
	for k := 1; k < len(learnt); k++ {
		if d := s.deep(learnt[k].not()); d > back {
			back = d
			learnt[1], learnt[k] = learnt[k], learnt[1]
		}
	}
	return learnt, int(back)
}

// need wants a true literal explained; it returns by how many more steps of the
// last level are wanted.
func (s *prover) need(l lit, now int32) int {
	p := s.stands(l)
	if p < 0 || s.trail[p].deep == 0 {
		return 0
	}
	v := l.v()
	i := s.owner[v]
	if i < 0 {
		if s.known[v] {
			return 0
		}
		s.known[v] = true
		s.touch(v)
		s.wanted = append(s.wanted, l)
		if p >= now {
			return 1
		}
		return 0
	}
	side := l & 1
	was := s.want[side][i]
	if was >= 0 && (was == l || side == 0 && s.when[was.v()] <= s.when[v] || side == 1 && s.when[was.v()] >= s.when[v]) {
		return 0
	}
	s.touch(v)
	old := s.wantAt[side][i]
	s.want[side][i], s.wantAt[side][i] = l, p
	if was < 0 {
		s.wanted = append(s.wanted, l)
		old = -1
	}
	if p >= now && old < now {
		return 1
	}
	return 0
}

// needed reports whether a step is wanted.
func (s *prover) needed(at int32) bool {
	e := &s.trail[at]
	v := e.l.v()
	if i := s.owner[v]; i >= 0 {
		return s.want[e.l&1][i] >= 0 && s.wantAt[e.l&1][i] == at
	}
	return s.known[v]
}

// still is what is wanted of a literal's variable or number, told once; lie for
// nothing.
func (s *prover) still(l lit) lit {
	v := l.v()
	i := s.owner[v]
	if i < 0 {
		if !s.known[v] {
			return lie
		}
		return l
	}
	w := s.want[l&1][i]
	if w < 0 || s.wantAt[l&1][i] < 0 {
		return lie
	}
	s.wantAt[l&1][i] = -1
	return w
}

// forget wants a literal, or the bound it stands for, no longer, and returns
// it.
func (s *prover) forget(l lit) lit {
	v := l.v()
	i := s.owner[v]
	if i < 0 {
		s.known[v] = false
		return l
	}
	w := s.want[l&1][i]
	s.want[l&1][i], s.wantAt[l&1][i] = -1, -1
	return w
}

// follows reports whether a wanted literal follows from others that are wanted.
func (s *prover) follows(l lit) bool {
	p := s.stands(l)
	e := &s.trail[p]
	if e.why.c == nil && e.why.arrow == 0 {
		return false
	}
	for _, q := range s.because(p, l) {
		q = q.not()
		r := s.stands(q)
		if r < 0 || s.trail[r].deep == 0 {
			continue
		}
		v := q.v()
		i := s.owner[v]
		if i < 0 {
			if !s.known[v] {
				return false
			}
			continue
		}
		w := s.want[q&1][i]
		if w < 0 || q&1 == 0 && s.when[w.v()] > s.when[v] || q&1 == 1 && s.when[w.v()] < s.when[v] || s.stands(w) >= p {
			return false // or the stronger bound came later, perhaps from this
		}
	}
	return true
}
