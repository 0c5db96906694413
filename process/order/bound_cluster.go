package order

import "slices"

// A cluster is a plan for a projection: its slots, and the clusters that
// bound it.
type cluster struct {
	slots []int // of the whole model, rising
	parts []*cluster
}

func joined(a, b *cluster) *cluster {
	return &cluster{slots: slices.Sorted(slices.Values(slices.Concat(a.slots, b.slots))), parts: []*cluster{a, b}}
}

// build makes the projection of an outer model whose slots are the given ones
// of the whole model.
func (c *cluster) build(outer *model, whole []int) *projection {
	at := make([]int, len(c.slots))
	for k, s := range c.slots {
		at[k] = slices.Index(whole, s)
	}
	p := newProjection(outer, at)
	for _, part := range c.parts {
		p.parts = append(p.parts, part.build(p.e.m, c.slots))
	}
	return p
}

// share makes the projection and its parts live on the same allowance.
func (p *projection) share(left *int) {
	p.left, p.grant = left, 0
	for _, q := range p.parts {
		q.share(left)
	}
}

// maxCluster is the most slots that a strengthened bound sees together.
const maxCluster = 4

// A candidate is a cluster with its projection and what that says of samples.
type candidate struct {
	*cluster
	p      *projection
	values []int64
}

// strengthened returns a bound with clusters of slots, or nil if none does any
// good: time and again the two that gain most on the sample keys when seen
// together are joined. The clusters' projections live on an allowance of grant
// expansions a call, so that a dear one gains little, and are not tried where
// more than most operations set their slots.
func (b *bound) strengthened(samples [][]uint64, grant, most int) *bound {
	try := func(c *cluster) candidate {
		n := candidate{cluster: c, p: c.build(b.m, allSlots(b.m))}
		if len(c.parts) > 0 {
			n.p.share(new(int))
			*n.p.left, n.p.grant = 60*len(samples)*grant, grant
		}
		for _, key := range samples {
			n.values = append(n.values, n.p.bound(key))
		}
		return n
	}
	var parts []candidate
	for k := range b.m.slots {
		parts = append(parts, try(&cluster{slots: []int{k}}))
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
	if len(parts) == len(b.m.slots) {
		return nil
	}
	s := &bound{m: b.m, values: make([]int64, len(parts))}
	for _, c := range parts {
		s.parts = append(s.parts, c.p)
	}
	return s
}
