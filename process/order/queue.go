package order

// A queue holds open nodes, least f first, of equal ones the dearest so far,
// which is the furthest on, then the youngest. It is a heap of four branches.
type queue []openNode

type openNode struct {
	f, g int64
	id   int32
}

func (a openNode) before(b openNode) bool {
	if a.f != b.f {
		return a.f < b.f
	}
	if a.g != b.g {
		return a.g > b.g
	}
	return a.id > b.id
}

func (q *queue) push(n openNode) {
	h := append(*q, n)
	i := len(h) - 1
	for i > 0 {
		up := (i - 1) / 4
		if !n.before(h[up]) {
			break
		}
		h[i] = h[up]
		i = up
	}
	h[i] = n
	*q = h
}

func (q *queue) pop() openNode {
	h := *q
	top, last := h[0], len(h)-1
	n := h[last]
	h = h[:last]
	i := 0
	for {
		first := 4*i + 1
		if first >= last {
			break
		}
		least := first
		for c := first + 1; c < min(first+4, last); c++ {
			if h[c].before(h[least]) {
				least = c
			}
		}
		if !h[least].before(n) {
			break
		}
		h[i] = h[least]
		i = least
	}
	if last > 0 {
		h[i] = n
	}
	*q = h
	return top
}
