package crew

func (s *prover) rescale() {
	for v := range s.activity {
		s.activity[v] *= 1e-100
	}
	s.bump *= 1e-100
}

// touch makes a variable more active.
func (s *prover) touch(v int32) {
	if i := s.owner[v]; i == s.aside && i >= 0 {
		return
	} else if i >= 0 && s.activity[v] == 0 {
		s.touched[i] = append(s.touched[i], v)
	}
	s.activity[v] += s.bump
	if s.at[v] >= 0 {
		s.up(int(s.at[v]))
	}
}

// decision is what to try next: the open variable of most activity, lowest
// number first, and after them the numbers, that which was least the last time
// first. False means that nothing is open.
func (s *prover) decision() (lit, bool) {
	for len(s.heap) > 0 {
		v := s.heap[0]
		last := len(s.heap) - 1
		s.swap(0, last)
		s.heap = s.heap[:last]
		s.at[v] = -1
		if last > 0 {
			s.down(0)
		}
		l := lit(2 * v)
		if s.val(l) != 0 {
			continue
		}
		first := s.phase[v]
		if i := s.owner[v]; i >= 0 {
			first = s.saved[i] <= s.when[v]
		}
		if !first {
			l = l.not()
		}
		return l, true
	}
	next := -1
	for i := range s.low {
		if s.low[i] < s.high[i] && i != int(s.aside) && (next < 0 || s.saved[i] < s.saved[next]) {
			next = i
		}
	}
	if next < 0 {
		return 0, false
	}
	switch at := s.saved[next]; {
	case at <= s.low[next]:
		return s.by(next, s.low[next]), true
	case at < s.high[next]:
		return s.by(next, at), true
	}
	return s.by(next, s.high[next]-1).not(), true
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
