package order

import "slices"

// A projection bounds what an outer model still has to spend on some of its
// slots: by the least cost of the smaller problem that sees only these slots,
// solved exactly by searches that learn from each other. Other projections of
// the smaller problem, or a chain, bound it in turn. Work and memory are
// capped; where a cap cuts a search short the bound is weaker but still a bound.
type projection struct {
	ops   set      // of the outer model, that set one of the slots in any way
	mask  []uint64 // of the outer state, the slots
	slots []*slot  // of the outer model
	last  []int    // by inner operation, see project

	e     *expander
	parts []*projection // bound the inner problem together
	chain *chain        // bounds it where it has one slot

	raw      *store  // outer keys under ops and mask
	nodeOf   []int32 // their nodes
	nodes    *store  // closed inner keys
	known    []known
	kids     []projectionKid // of all nodes branched from
	branches [][2]int32      // by node, where its kids begin and end; zero if not found yet

	// Of the search under way.
	stamp  int32
	seen   []int32 // by node, the stamp at which it was last come to
	g      []int64
	parent []int32
	open   queue
	closed []int32

	scratch []uint64
	outer   []uint64
	left    *int // expansions until a cap cuts in; shared with the parts
	grant   int  // more of them with each call of bound
}

// What is known of a node: a lower bound, and how it was come by.
type known struct {
	low   int64
	stage int8
}

const (
	unseen  = int8(iota)
	bounded // by the parts
	exact
)

type projectionKid struct {
	cost int64
	id   int32
}

// Caps of one projection.
const (
	projectionBytes = 6 << 20 // of stored keys, and as many of raw ones
	projectionStart = 20_000  // expansions
	projectionGrant = 200     // more with each call of bound
)

// newProjection projects the outer model, see project.
func newProjection(outer *model, slots []int, charged set) *projection {
	slices.Sort(slots)
	inner, last := outer.project(slots, charged)
	p := &projection{
		ops: newSet(outer.n), mask: make([]uint64, outer.words), last: last,
		e: newExpander(inner),
	}
	for _, s := range slots {
		sl := &outer.slots[s]
		p.slots = append(p.slots, sl)
		p.mask[sl.word] |= sl.mask << sl.shift
	}
	to := renumbered(slots, len(outer.slots))
	for i := range outer.n {
		if outer.projectWays(i, to) != nil {
			p.ops.add(i)
		}
	}
	p.nodes = newStore(p.e.width)
	p.raw = newStore(len(p.ops) + len(p.mask))
	p.outer = make([]uint64, p.raw.width)
	p.scratch = make([]uint64, p.e.width)
	p.left, p.grant = new(int), projectionGrant
	*p.left = projectionStart
	if len(slots) == 1 {
		p.chain = newChain(inner)
	}
	return p
}

// touched reports whether the bound may differ between two outer keys.
func (p *projection) touched(a, b []uint64) bool {
	for w, mask := range p.ops {
		if (a[w]^b[w])&mask != 0 {
			return true
		}
	}
	a, b = a[len(p.ops):], b[len(p.ops):]
	for w, mask := range p.mask {
		if (a[w]^b[w])&mask != 0 {
			return true
		}
	}
	return false
}

// bound returns the bound for a key of the outer model.
func (p *projection) bound(key []uint64) int64 {
	w := len(p.ops)
	for k, mask := range p.ops {
		p.outer[k] = key[k] & mask
	}
	for k, mask := range p.mask {
		p.outer[w+k] = key[w+k] & mask
	}
	if p.isFull(p.raw) && p.raw.find(p.outer) < 0 {
		return p.unstored(p.inner(p.outer))
	}
	id, isNew := p.raw.number(p.outer)
	if isNew {
		p.nodeOf = append(p.nodeOf, p.node(p.inner(p.outer)))
	}
	*p.left += p.grant
	return p.solve(p.nodeOf[id])
}

// isFull reports whether a store has come to its cap.
func (p *projection) isFull(s *store) bool { return s.count*(8*s.width+24) > projectionBytes }

// unstored returns the bound that is known of an inner key, or can be had at
// once, without storing it.
func (p *projection) unstored(key []uint64) int64 {
	if id := p.nodes.find(key); id >= 0 && p.known[id].stage != unseen {
		return p.known[id].low
	}
	if p.chain != nil && !p.e.complete(key) {
		return p.chain.bound(key)
	}
	return 0
}

// inner returns the closed inner key of an outer one.
func (p *projection) inner(outer []uint64) []uint64 {
	key := p.scratch
	clear(key)
	for k, i := range p.last {
		if set(outer).has(i) {
			set(key).add(k)
		}
	}
	for k, s := range p.slots {
		p.e.m.slots[k].put(key[p.e.setW:], s.of(outer[len(p.ops):]))
	}
	p.e.close(key)
	return key
}

// node numbers a closed inner key.
func (p *projection) node(key []uint64) int32 {
	id, isNew := p.nodes.number(key)
	if isNew {
		k := known{}
		switch {
		case p.e.complete(key):
			k.stage = exact
		case p.chain != nil:
			k.low, k.stage = p.chain.bound(key), bounded
		}
		p.known = append(p.known, k)
	}
	return id
}

// solve returns the least cost from the node, or a lower bound of it when a cap
// is reached. It is A*; what it learns of the nodes on its way is kept (R. C.
// Holte, M. B. Perez, R. M. Zimmer and A. J. MacDonald, Hierarchical A*:
// searching abstraction hierarchies efficiently, AAAI 1996).
func (p *projection) solve(start int32) int64 {
	if k := p.known[start]; k.stage == exact {
		return k.low
	}
	p.stamp++
	p.open, p.closed = p.open[:0], p.closed[:0]
	p.come(start, -1, 0)
	for len(p.open) > 0 {
		n := p.open.pop()
		if n.g != p.g[n.id] {
			continue // since come to at less cost
		}
		k := &p.known[n.id]
		if f := n.g + k.low; f > n.f {
			p.open.push(openNode{f, n.g, n.id})
			continue
		}
		if k.stage == exact {
			p.learn(n.f)
			for id := n.id; id != start; {
				id = p.parent[id]
				p.known[id].stage = exact
			}
			return p.known[start].low
		}
		if k.stage == unseen {
			k.stage = bounded
			if low := p.sum(n.id); low > k.low {
				k.low = low
				p.open.push(openNode{n.g + low, n.g, n.id})
				continue
			}
		}
		if *p.left <= 0 || p.isFull(p.nodes) {
			p.learn(n.f)
			return max(p.known[start].low, n.f)
		}
		*p.left--
		p.closed = append(p.closed, n.id)
		first, last := p.branch(n.id)
		low := p.known[n.id].low
		for _, c := range p.kids[first:last] {
			if k := &p.known[c.id]; k.stage != exact {
				k.low = max(k.low, low-c.cost)
			}
			p.come(c.id, n.id, n.g+c.cost)
		}
	}
	return p.known[start].low
}

// sum returns the bound by the parts.
func (p *projection) sum(id int32) int64 {
	var low int64
	for _, q := range p.parts {
		low += q.bound(p.nodes.key(id))
	}
	return low
}

// come opens a node come to from its parent at a cost.
func (p *projection) come(id, parent int32, g int64) {
	for len(p.g) < p.nodes.count {
		p.g, p.parent, p.seen = append(p.g, 0), append(p.parent, 0), append(p.seen, 0)
	}
	if p.seen[id] == p.stamp && p.g[id] <= g {
		return
	}
	p.seen[id], p.g[id], p.parent[id] = p.stamp, g, parent
	p.open.push(openNode{g + p.known[id].low, g, id})
}

// learn raises what is known of the nodes that were closed: no way by them
// costs less than f from the start.
func (p *projection) learn(f int64) {
	for _, id := range p.closed {
		k := &p.known[id]
		k.low = max(k.low, f-p.g[id])
	}
}

// branch returns where the kids of a node stand, which it finds once.
func (p *projection) branch(id int32) (first, last int32) {
	for len(p.branches) < p.nodes.count {
		p.branches = append(p.branches, [2]int32{})
	}
	if b := p.branches[id]; b[1] > 0 {
		return b[0], b[1]
	}
	first = int32(len(p.kids))
	p.e.expand(p.nodes.key(id))
	for i, c := range p.e.kids {
		kid := p.node(p.e.key(i))
		p.kids = append(p.kids, projectionKid{c.cost, kid})
	}
	last = int32(len(p.kids))
	p.branches[id] = [2]int32{first, last}
	return first, last
}

// memory returns about how many bytes the projection holds.
func (p *projection) memory() int64 {
	total := int64(p.nodes.count)*int64(8*p.nodes.width+24) + int64(p.raw.count)*int64(8*p.raw.width+12)
	for _, q := range p.parts {
		total += q.memory()
	}
	return total
}
