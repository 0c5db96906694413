package order

import (
	"context"
	"slices"
)

// A cluster is a plan for a projection: its slots, the clusters that bound it,
// and the operations whose ways it charges for.
type cluster struct {
	slots   []int // of the whole model, rising
	parts   []*cluster
	charged set // of the whole model's operations
}

func joined(a, b *cluster) *cluster {
	c := &cluster{
		slots: slices.Sorted(slices.Values(slices.Concat(a.slots, b.slots))), parts: []*cluster{a, b},
		charged: slices.Clone(a.charged),
	}
	c.charged.union(b.charged)
	return c
}

// build makes the projection of an outer model whose slots are the given ones
// of the whole model. It takes the operations that it charges for out of
// charged.
func (c *cluster) build(outer *model, whole []int, charged set) *projection {
	at := make([]int, len(c.slots))
	for k, s := range c.slots {
		at[k] = slices.Index(whole, s)
	}
	p := newProjection(outer, at, charged)
	inner := fullSet(p.e.m.n)
	for _, part := range c.parts {
		p.parts = append(p.parts, part.build(p.e.m, c.slots, inner))
	}
	return p
}

// clusters returns the smallest clusters that see what operations do in every
// way. Slots of which an operation sets one or the other, such as the same
// attribute of two machines, are seen together.
func (m *model) clusters() []*cluster {
	group := upTo(len(m.slots)) // of each slot, its least slot
	size := func(g int) (n int) {
		for _, h := range group {
			if h == g {
				n++
			}
		}
		return n
	}
	for i := range m.n {
		sets := m.differing(i)
		for k, other := range sets[1:] {
			for at := range min(len(sets[0]), len(other)) {
				a, b := group[sets[0][at]], group[sets[k+1][at]]
				if a != b && size(a)+size(b) <= maxCluster {
					for s, g := range group {
						if g == max(a, b) {
							group[s] = min(a, b)
						}
					}
				}
			}
		}
	}
	left := fullSet(m.n)
	var clusters []*cluster
	for g := range group {
		c := &cluster{charged: newSet(m.n)}
		for s, of := range group {
			if of == g {
				c.slots = append(c.slots, s)
			}
		}
		if len(c.slots) == 0 {
			continue
		}
		if len(c.slots) > 1 {
			for _, s := range c.slots {
				c.parts = append(c.parts, &cluster{slots: []int{s}})
			}
		}
		for i := range m.n {
			if left.has(i) && m.projectWays(i, renumbered(c.slots, len(m.slots))) != nil {
				c.charged.add(i)
				left.remove(i)
			}
		}
		clusters = append(clusters, c)
	}
	return clusters
}

// differing lists for each way of operation i the slots that it sets and some
// other way does not, rising.
func (m *model) differing(i int) [][]int {
	count := map[int]int{}
	for _, a := range m.ways[i] {
		for _, v := range m.modes[m.acts[a].mode].set {
			count[v.slot]++
		}
	}
	sets := make([][]int, len(m.ways[i]))
	for k, a := range m.ways[i] {
		for _, v := range m.modes[m.acts[a].mode].set {
			if count[v.slot] < len(sets) {
				sets[k] = append(sets[k], v.slot)
			}
		}
	}
	return sets
}

// renumbered gives each of n slots its place among those listed, or -1.
func renumbered(slots []int, n int) []int {
	to := slices.Repeat([]int{-1}, n)
	for k, s := range slots {
		to[s] = k
	}
	return to
}

// share makes the projection and its parts live on the same allowance.
func (p *projection) share(left *int) {
	p.left, p.grant = left, 0
	for _, q := range p.parts {
		q.share(left)
	}
}

// maxCluster is the most slots that a strengthened bound sees together.
const maxCluster = 5

// A candidate is a cluster with its projection and what that says of samples.
type candidate struct {
	*cluster
	p      *projection
	values []int64
}

// strengthened returns a bound with clusters of slots, or nil if none does any
// good, or the context ends: time and again the two that gain most on the sample keys when seen
// together are joined. The clusters' projections live on an allowance of grant
// expansions a call besides a first one, so that a dear one gains little, and
// are not tried where more than most operations set their slots.
func (b *bound) strengthened(ctx context.Context, samples [][]uint64, grant, most int) *bound {
	try := func(c *cluster) candidate {
		n := candidate{cluster: c, p: c.build(b.m, upTo(len(b.m.slots)), slices.Clone(c.charged))}
		if len(c.parts) > 0 {
			n.p.share(new(int))
			*n.p.left, n.p.grant = projectionStart/10, grant
		}
		for _, key := range samples {
			n.values = append(n.values, n.p.bound(key))
		}
		return n
	}
	var parts []candidate
	smallest := b.m.clusters()
	for _, c := range smallest {
		parts = append(parts, try(c))
	}
	type pair struct{ a, b *cluster }
	tried := map[pair]candidate{}
	for {
		var best candidate
		var gained int64
		var x, y int
		for i := range parts {
			for j := range i {
				if len(parts[i].slots)+len(parts[j].slots) > min(maxCluster, len(b.m.slots)-1) ||
					max(parts[i].p.ops.count(), parts[j].p.ops.count()) > most {
					continue
				}
				p := pair{parts[j].cluster, parts[i].cluster}
				c, ok := tried[p]
				if !ok {
					if ctx.Err() != nil {
						return nil
					}
					c = try(joined(p.a, p.b))
					tried[p] = c
				}
				var gain int64
				for k, v := range c.values {
					gain += max(0, v-parts[i].values[k]-parts[j].values[k])
				}
				if gain > gained {
					best, gained, x, y = c, gain, i, j
				}
			}
		}
		if gained == 0 {
			break
		}
		parts[y] = best
		parts = slices.Delete(parts, x, x+1)
	}
	if len(parts) == len(smallest) {
		return nil
	}
	s := &bound{m: b.m, values: make([]int64, len(parts))}
	for _, c := range parts {
		s.parts = append(s.parts, c.p)
	}
	return s
}
