package order

import "context"

// A search is A* over the closed keys of a model (P. E. Hart, N. J. Nilsson
// and B. Raphael, A formal basis for the heuristic determination of minimum
// cost paths, IEEE Transactions on Systems Science and Cybernetics 4, 1968),
// with keys dropped that cannot beat the best order known or are dominated.
type search struct {
	m      *model
	e      *expander
	bound  *bound
	front  *front // nil where dominance does not hold
	nodes  *store
	g, h   []int64
	parent []int32
	via    []int32 // the operation by which a node was come to
	open   queue
	best   int64 // only orders below this cost are looked for
	goal   int32 // the node that completes the best order found, or -1
	low    int64 // no order costs less, unless it costs best or more

	expanded int
}

func newSearch(m *model, best int64) *search {
	s := &search{m: m, e: newExpander(m), bound: newBound(m), best: best - m.constant, goal: -1}
	if m.free {
		s.front = newFront(m)
	}
	s.nodes = newStore(s.e.width)
	root := s.e.root()
	s.add(root, 0, s.bound.at(root), -1, -1)
	return s
}

// add stores a new node and opens it.
func (s *search) add(key []uint64, g, h int64, parent, via int32) {
	id, _ := s.nodes.number(key)
	s.g, s.h = append(s.g, g), append(s.h, h)
	s.parent, s.via = append(s.parent, parent), append(s.via, via)
	s.reach(id, key, g)
}

// reach opens a node that has been come to at cost g.
func (s *search) reach(id int32, key []uint64, g int64) {
	if s.e.complete(key) {
		if g < s.best {
			s.best, s.goal = g, id
		}
		return
	}
	s.open.push(openNode{max(g+s.h[id], s.low), g, id})
}

// lower returns a cost that no order is below.
func (s *search) lower() int64 { return min(s.low, s.best) + s.m.constant }

// run expands up to count nodes while fewer than limit are stored, and reports
// whether the search is finished: then no order costs less than best.
func (s *search) run(ctx context.Context, count, limit int) bool {
	for range count {
		if s.nodes.count >= limit || s.expanded%256 == 0 && ctx.Err() != nil {
			return false
		}
		var n openNode
		for {
			if len(s.open) == 0 {
				s.low = s.best
				return true
			}
			n = s.open.pop()
			if n.g == s.g[n.id] {
				break
			}
		}
		s.low = max(s.low, n.f)
		if s.low >= s.best {
			s.low = s.best
			return true
		}
		s.expand(n)
	}
	return false
}

func (s *search) expand(n openNode) {
	key := s.nodes.key(n.id)
	if s.front != nil && s.front.dominated(key, n.g) {
		return
	}
	s.expanded++
	s.bound.at(key)
	s.e.expand(key)
	from := append([]uint64(nil), key...)
	for k, c := range s.e.kids {
		key, g := s.e.key(k), n.g+c.cost
		if g >= s.best {
			continue
		}
		if id := s.nodes.find(key); id >= 0 {
			if g < s.g[id] && g+s.h[id] < s.best {
				s.g[id], s.parent[id], s.via[id] = g, n.id, int32(c.via)
				s.reach(id, key, g)
			}
			continue
		}
		if h := s.bound.after(from, key); g+h < s.best {
			s.add(key, g, h, n.id, int32(c.via))
		}
	}
}

// sequence returns the best order found, or nil.
func (s *search) sequence() []int {
	if s.goal < 0 {
		return nil
	}
	var vias []int
	for id := s.goal; s.parent[id] >= 0; id = s.parent[id] {
		vias = append(vias, int(s.via[id]))
	}
	return s.m.unfold(vias)
}
