package order

import (
	"cmp"
	"context"
	"slices"
)

// A beam is a search that goes forward level by level, one branch deeper each
// time, and keeps only the most promising nodes of a level.
type beam struct {
	m     *model
	e     *expander
	bound *bound
	best  int64 // only orders below this cost are looked for

	// low is a cost that no order is below, unless it costs best or more:
	// the least promise of any node that was not kept.
	low      int64
	expanded int
}

type beamNode struct {
	key    []uint64
	g, f   int64
	parent int32 // index among the nodes kept on the level before
	via    int32 // act
}

func newBeam(m *model, b *bound, best int64) *beam {
	return &beam{m: m, e: newExpander(m), bound: b, best: best - m.constant}
}

// run searches with the width given and returns the best order found below
// best, or nil. It stops early when the context ends or count nodes have been
// expanded.
func (b *beam) run(ctx context.Context, width, count int) []int {
	b.low = b.best
	root := b.e.root()
	level := []beamNode{{key: root, f: b.bound.at(root), parent: -1}}
	if b.e.complete(root) && b.best > 0 {
		b.best, b.low = 0, 0
		return b.m.unfold(nil)
	}
	var levels [][]beamNode
	var sequence []int
	for len(level) > 0 {
		var next []beamNode
		known := newStore(b.e.width) // keys met on the next level
		var costs []int64
		for at, n := range level {
			if b.expanded%16 == 0 && ctx.Err() != nil || b.expanded >= count {
				b.low = min(b.low, least(level[at:]), least(next))
				return sequence
			}
			b.expanded++
			b.bound.at(n.key)
			b.e.expand(n.key)
			for k, c := range b.e.kids {
				key, g := b.e.key(k), n.g+c.cost
				if g >= b.best {
					continue
				}
				if b.e.complete(key) {
					b.best = g
					sequence = b.m.unfold(trace(append(levels, level), beamNode{parent: int32(at), via: int32(c.via)}))
					continue
				}
				id, isNew := known.number(key)
				if isNew {
					costs = append(costs, g)
				} else if costs[id] <= g {
					continue
				}
				costs[id] = g
				if f := max(n.f, g+b.bound.after(n.key, key)); f < b.best {
					next = append(next, beamNode{slices.Clone(key), g, f, int32(at), int32(c.via)})
				}
			}
		}
		slices.SortStableFunc(next, func(x, y beamNode) int {
			return cmp.Or(cmp.Compare(x.f, y.f), cmp.Compare(y.g, x.g))
		})
		if len(next) > width {
			b.low = min(b.low, least(next[width:]))
			next = next[:width]
		}
		levels = append(levels, level)
		level = next
	}
	b.low = min(b.low, b.best)
	return sequence
}

// least returns the least promise of the nodes.
func least(nodes []beamNode) int64 {
	f := int64(infinite)
	for _, n := range nodes {
		f = min(f, n.f)
	}
	return f
}

// trace lists the branches that led to n, last first, where n's parent is on
// the last level.
func trace(levels [][]beamNode, n beamNode) []int {
	vias := []int{int(n.via)}
	for _, level := range slices.Backward(levels) {
		n = level[n.parent]
		if n.parent < 0 {
			break
		}
		vias = append(vias, int(n.via))
	}
	return vias
}
