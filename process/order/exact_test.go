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
		done   uint64
		at     int
		values []int
		cost   int64
	}
	var slots []int // first slot of each station
	start := node{at: p.Start}
	for _, st := range p.Stations {
		slots = append(slots, len(start.values))
		for _, a := range st.Attributes {
			start.values = append(start.values, a.Start)
		}
	}
	key := func(n node) string {
		b := binary.LittleEndian.AppendUint64(nil, n.done)
		b = append(b, byte(n.at))
		for _, v := range n.values {
			b = append(b, byte(v))
		}
		return string(b)
	}
	layer := map[string]node{key(start): start}
	for range p.Operations {
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
				m := node{n.done | 1<<i, op.Station, append([]int(nil), n.values...), n.cost}
				if n.at >= 0 && n.at != op.Station && p.Moves != nil {
					m.cost += p.Moves[n.at][op.Station]
				}
				for a, v := range op.Setting {
					attribute := p.Stations[op.Station].Attributes[a]
					was := &m.values[slots[op.Station]+a]
					switch {
					case v < 0 || v == *was:
						continue
					case *was >= 0:
						m.cost += attribute.Change[*was][v]
					case attribute.First != nil:
						m.cost += attribute.First[v]
					}
					*was = v
				}
				k := key(m)
				if old, ok := next[k]; !ok || m.cost < old.cost {
					next[k] = m
				}
			}
		}
		layer = next
	}
	least := int64(-1)
	for _, n := range layer {
		if least < 0 || n.cost < least {
			least = n.cost
		}
	}
	return least
}

// everyWay solves a problem by each part of the package alone and compares.
func everyWay(t rapid.TB, p order.Problem, want int64) {
	t.Helper()
	for _, back := range []bool{false, true} {
		for _, strong := range []bool{false, true} {
			for _, above := range []bool{false, true} {
				how := order.Search{Backwards: back, Strong: strong, Above: above}
				sequence, bound, finished := order.SearchAlone(p, how, want)
				if !finished || sequence == nil || bound != want || price(t, p, sequence) != want {
					t.Fatalf("%+v: finished %v, bound %d, order %v, want %d", how, finished, bound, sequence, want)
				}
			}
		}
		for _, width := range []int{1, 3, 1000} {
			sequence, bound := order.BeamAlone(p, width, back)
			if cost := price(t, p, sequence); bound > want || cost < want || width == 1000 && cost != want {
				t.Fatalf("beam of %d, backwards %v: cost %d, bound %d, want %d", width, back, cost, bound, want)
			}
		}
	}
	sequence, _ := order.BeamAlone(p, 1, false)
	cost := price(t, p, sequence)
	if better := price(t, p, order.ImproveAlone(p, sequence, 5)); better > cost || better < want {
		t.Fatalf("improved from %d to %d, optimum %d", cost, better, want)
	}
	if told := price(t, p, order.Tell(p, sequence)); told > cost {
		t.Fatalf("told at %d, found at %d", told, cost)
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
