package order_test

import (
	"encoding/binary"
	"testing"

	"bodkin/process/order"

	"pgregory.net/rapid"
)

// plain returns the least cost by dynamic programming over (operations done,
// station, settings), with no bounds, no rules and no code of the package (M.
// Held and R. M. Karp, A dynamic programming approach to sequencing problems,
// Journal of the SIAM 10, 1962). At most 64 operations and far fewer ideals.
func plain(p order.Problem) int64 {
	type node struct {
		done     uint64
		at, hand int
		values   []int
		cost     int64
	}
	var slots []int // first slot of each station
	start := node{at: p.Start, hand: -1}
	for _, st := range p.Stations {
		slots = append(slots, len(start.values))
		for _, a := range st.Attributes {
			start.values = append(start.values, a.Start)
		}
	}
	for _, i := range p.Done {
		start.done |= 1 << i
		if g := p.Operations[i].Group; g >= 0 {
			start.hand = g
		}
	}
	for _, w := range p.Wishes {
		if start.done>>w.Then&1 != 0 && start.done>>w.First&1 == 0 {
			start.cost += w.Cost
		}
	}
	key := func(n node) string {
		b := binary.LittleEndian.AppendUint64(nil, n.done)
		b = append(b, byte(n.at), byte(n.hand))
		for _, v := range n.values {
			b = append(b, byte(v))
		}
		return string(b)
	}
	turn := func(n *node, s, a, want int) {
		attribute := p.Stations[s].Attributes[a]
		was := &n.values[slots[s]+a]
		switch {
		case want < 0 || want == *was:
			return
		case *was >= 0:
			n.cost += attribute.Change[*was][want]
		case attribute.First != nil:
			n.cost += attribute.First[want]
		}
		*was = want
	}
	layer := map[string]node{key(start): start}
	for range len(p.Operations) - len(p.Done) {
		next := map[string]node{}
		for _, n := range layer {
		operations:
			for i, op := range p.Operations {
				if n.done>>i&1 != 0 {
					continue
				}
				for _, b := range op.After {
					if n.done>>b&1 == 0 {
						continue operations
					}
				}
				for _, w := range append([]order.Way{{Station: op.Station, Setting: op.Setting, Cost: op.Cost}}, op.Or...) {
					m := node{n.done | 1<<i, w.Station, n.hand, append([]int(nil), n.values...), n.cost + w.Cost}
					if n.at >= 0 && n.at != w.Station && p.Moves != nil {
						m.cost += p.Moves[n.at][w.Station]
					}
					for a, v := range w.Setting {
						turn(&m, w.Station, a, v)
					}
					if op.Group >= 0 {
						if n.hand >= 0 && n.hand != op.Group {
							m.cost += p.Pick
						}
						m.hand = op.Group
					}
					for _, wish := range p.Wishes {
						if wish.Then == i && n.done>>wish.First&1 == 0 {
							m.cost += wish.Cost
						}
					}
					k := key(m)
					if old, ok := next[k]; !ok || m.cost < old.cost {
						next[k] = m
					}
				}
			}
		}
		layer = next
	}
	least := int64(-1)
	for _, n := range layer {
		n.values = append([]int(nil), n.values...)
		for s, st := range p.Stations {
			for a, v := range st.End {
				turn(&n, s, a, v)
			}
		}
		if least < 0 || n.cost < least {
			least = n.cost
		}
	}
	return least
}

// everyWay solves a problem by each part of the package alone and compares.
func everyWay(t rapid.TB, p order.Problem, want int64) {
	t.Helper()
	cost := func(o *order.Order) int64 { return price(t, p, o.Sequence, o.Ways) }
	for _, back := range []bool{false, true} {
		for _, strong := range []bool{false, true} {
			for _, above := range []bool{false, true} {
				how := order.Search{Backwards: back, Strong: strong, Above: above}
				found, bound, finished := order.SearchAlone(p, how, want)
				if !finished || found == nil || bound != want || cost(found) != want {
					t.Fatalf("%+v: finished %v, bound %d, order %v, want %d", how, finished, bound, found, want)
				}
			}
		}
		for _, width := range []int{1, 3, 1000} {
			found, bound := order.BeamAlone(p, width, back)
			if cost := cost(found); bound > want || cost < want || width == 1000 && cost != want {
				t.Fatalf("beam of %d, backwards %v: cost %d, bound %d, want %d", width, back, cost, bound, want)
			}
		}
	}
	before, after, told := order.ImproveAlone(p, 5)
	if cost(after) > cost(before) || cost(after) < want || cost(told) > cost(after) {
		t.Fatalf("found at %d, improved to %d, told at %d, optimum %d", cost(before), cost(after), cost(told), want)
	}
}

func TestEveryWayAgainstPlainProgramming(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(9).Draw(t, "problem")
		everyWay(t, p, plain(p))
	})
}

func TestChainsAgainstPlainProgramming(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(4, 18).Draw(t, "operations")
		seed := rapid.Uint64Range(0, 1000).Draw(t, "seed")
		p := garment(seed, n)
		if rapid.Bool().Draw(t, "rough") {
			p = rough(seed, n)
		}
		everyWay(t, p, plain(p))
	})
}

func TestPlainProgrammingAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(6).Draw(t, "problem")
		if a, b := plain(p), brute(t, p); a != b {
			t.Fatalf("%d by dynamic programming, %d by brute force", a, b)
		}
	})
}
