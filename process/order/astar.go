package order

import "context"

// A search is A* over the closed keys of a model (P. E. Hart, N. J. Nilsson
// and B. Raphael, A formal basis for the heuristic determination of minimum
// cost paths, IEEE Transactions on Systems Science and Cybernetics 4, 1968).
// Keys that cannot beat the best order known or are dominated are dropped.
type search struct {
	m     *model
	e     *expander
	bound *bound
	front *front // nil where dominance does not hold

	nodes  *store
	g, h   []int64
	parent []int32
	via    []int32 // the act by which a node was come to
	open   queue

	strong  *bound // dearer and better, for nodes about to be expanded
	weighed []bool // by node, that strong has been asked

	best     int64 // only orders below this cost are looked for
	goal     int32 // the node that completes the best order found, or -1
	low      int64 // no order costs less, unless it costs best or more
	expanded int
}

// newSearch returns a search for orders of m that cost less than best.
func newSearch(m *model, b *bound, best int64) *search {
	s := &search{m: m, e: newExpander(m), bound: b, best: best - m.constant, goal: -1}
	if m.allFree {
		s.front = newFront(m)
	}
	if b.assignment != nil {
		s.strong = &bound{m: m, chain: b.chain, assignment: b.assignment, exactly: true}
	}
	s.nodes = newStore(s.e.width)
	root := s.e.root()
	s.add(root, 0, b.at(root), 0, -1, -1)
	return s
}

// add stores a new node and opens it; no order by way of it costs less than
// low.
func (s *search) add(key []uint64, g, h, low int64, parent, via int32) {
	id, _ := s.nodes.number(key)
	s.g, s.h = append(s.g, g), append(s.h, h)
	s.parent, s.via = append(s.parent, parent), append(s.via, via)
	s.weighed = append(s.weighed, false)
	s.reach(id, key, g, low)
}

// reach opens a node that has been come to at cost g.
func (s *search) reach(id int32, key []uint64, g, low int64) {
	if s.e.complete(key) {
		if g < s.best {
			s.best, s.goal = g, id
		}
		return
	}
	s.open.push(openNode{max(low, g+s.h[id]), g, id})
}

// beat tells the search of an order found elsewhere.
func (s *search) beat(cost int64) {
	if cost -= s.m.constant; cost < s.best {
		s.best, s.goal = cost, -1
	}
}

// lower returns a cost that no order is below.
func (s *search) lower() int64 { return min(s.low, s.best) + s.m.constant }

// run expands up to count nodes, while fewer than limit are stored and the
// context lasts. It reports whether the search is finished: then no order
// costs less than best.
func (s *search) run(ctx context.Context, count, limit int) bool {
	for last := s.expanded + count; s.expanded < last; {
		if s.nodes.count >= limit || s.expanded%16 == 0 && ctx.Err() != nil {
			return false
		}
		if len(s.open) == 0 || s.open[0].f >= s.best {
			s.low = s.best
			return true
		}
		n := s.open.pop()
		if n.g != s.g[n.id] {
			continue // since come to at less cost
		}
		s.low = max(s.low, n.f)
		key := s.nodes.key(n.id)
		if s.front != nil && s.front.dominated(key, n.g) {
			continue
		}
		if s.strong != nil && !s.weighed[n.id] && s.weigh(n, key) {
			continue
		}
		s.expanded++
		s.expand(n)
	}
	return false
}

// strengthen gives the search a dearer bound, see bound.strengthened, chosen by
// what it says of some open nodes.
func (s *search) strengthen(ctx context.Context, grant, most int) {
	const samples = 8
	var keys [][]uint64
	for at := 0; at < len(s.open) && len(keys) < samples; at += 1 + len(s.open)/(4*samples) {
		keys = append(keys, s.nodes.key(s.open[at].id))
	}
	s.strong = s.bound.strengthened(ctx, keys, grant, most)
	clear(s.weighed)
}

// weigh asks the strong bound and reports whether that puts the node off.
func (s *search) weigh(n openNode, key []uint64) bool {
	s.weighed[n.id] = true
	s.h[n.id] = max(s.h[n.id], s.strong.at(key))
	n.f = n.g + s.h[n.id]
	if n.f <= s.low {
		return false
	}
	if n.f < s.best {
		s.open.push(n)
	}
	return true
}

func (s *search) expand(n openNode) {
	from := append([]uint64(nil), s.nodes.key(n.id)...) // the store may move
	s.bound.at(from)
	s.e.expand(from)
	for k, c := range s.e.kids {
		key, g := s.e.key(k), n.g+c.cost
		if g >= s.best {
			continue
		}
		if id := s.nodes.find(key); id >= 0 {
			if g < s.g[id] && g+s.h[id] < s.best {
				s.g[id], s.parent[id], s.via[id] = g, n.id, int32(c.via)
				s.reach(id, key, g, n.f)
			}
			continue
		}
		if h := s.bound.after(from, key); g+h < s.best {
			s.add(key, g, h, n.f, n.id, int32(c.via))
		}
	}
}

// sequence returns the best order found, or nil if none below best was.
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

// memory returns about how many bytes the search holds.
func (s *search) memory() int64 {
	perNode := int64(8*s.nodes.width + 60) // key, columns, queue and table
	total := int64(s.nodes.count)*perNode + s.bound.memory()
	if s.strong != nil {
		total += s.strong.memory()
	}
	if s.front != nil {
		total += int64(s.expanded) * int64(8*s.e.setW+16)
	}
	return total
}
