package order_test

import (
	"context"
	"errors"
	"testing"

	"bodkin/process/order"

	"pgregory.net/rapid"
)

// price replays a sequence by its own few lines, so that Cost and Solve are
// checked against something that shares no code with them. It fails the test
// when the sequence is not an order of all operations.
func price(t rapid.TB, p order.Problem, sequence []int) int64 {
	t.Helper()
	if len(sequence) != len(p.Operations) {
		t.Fatalf("%d operations in the sequence, want %d", len(sequence), len(p.Operations))
	}
	type slot struct{ station, attribute int }
	set := map[slot]int{}
	for s, st := range p.Stations {
		for a, at := range st.Attributes {
			set[slot{s, a}] = at.Start
		}
	}
	position := map[int]int{}
	for at, i := range sequence {
		position[i] = at + 1
	}
	total, at := int64(0), p.Start
	for k, i := range sequence {
		op := p.Operations[i]
		for _, b := range op.After {
			if position[b] == 0 || position[b] > k {
				t.Fatalf("operation %d at %d does not come after %d", i, k, b)
			}
		}
		if at >= 0 && at != op.Station && p.Moves != nil {
			total += p.Moves[at][op.Station]
		}
		at = op.Station
		for a, want := range op.Setting {
			have := set[slot{at, a}]
			switch attribute := p.Stations[at].Attributes[a]; {
			case want < 0 || want == have:
				continue
			case have >= 0:
				total += attribute.Change[have][want]
			case attribute.First != nil:
				total += attribute.First[want]
			}
			set[slot{at, a}] = want
		}
	}
	if len(position) != len(sequence) {
		t.Fatalf("an operation comes twice in %v", sequence)
	}
	return total
}

// brute returns the least cost over all linear extensions.
func brute(t rapid.TB, p order.Problem) int64 {
	n := len(p.Operations)
	least := int64(-1)
	done := make([]bool, n)
	sequence := make([]int, 0, n)
	var extend func()
	extend = func() {
		if len(sequence) == n {
			if c := price(t, p, sequence); least < 0 || c < least {
				least = c
			}
			return
		}
	next:
		for i := range n {
			if done[i] {
				continue
			}
			for _, b := range p.Operations[i].After {
				if !done[b] {
					continue next
				}
			}
			done[i] = true
			sequence = append(sequence, i)
			extend()
			sequence = sequence[:len(sequence)-1]
			done[i] = false
		}
	}
	extend()
	return least
}

// problems draws small problems of every kind: few or many stations, costs
// that obey the triangle inequality or break it, chains, trees and loose work.
func problems(maxOperations int) *rapid.Generator[order.Problem] {
	return rapid.Custom(func(t *rapid.T) order.Problem {
		var p order.Problem
		metric := rapid.Bool().Draw(t, "metric")
		matrix := func(n int, name string) [][]int64 {
			if metric {
				return order.Uniform(n, rapid.Int64Range(0, 9).Draw(t, name))
			}
			m := order.Uniform(n, 0)
			for i := range m {
				for j := range m[i] {
					m[i][j] = rapid.Int64Range(0, 9).Draw(t, name)
				}
			}
			return m
		}
		stations := rapid.IntRange(1, 3).Draw(t, "stations")
		for range stations {
			var st order.Station
			for range rapid.IntRange(0, 2).Draw(t, "attributes") {
				n := rapid.IntRange(1, 3).Draw(t, "values")
				at := order.Attribute{Change: matrix(n, "change"), Start: rapid.IntRange(-1, n-1).Draw(t, "start")}
				if rapid.Bool().Draw(t, "has first") {
					at.First = rapid.SliceOfN(rapid.Int64Range(0, 9), n, n).Draw(t, "first")
				}
				st.Attributes = append(st.Attributes, at)
			}
			p.Stations = append(p.Stations, st)
		}
		if rapid.Bool().Draw(t, "has moves") {
			p.Moves = matrix(stations, "move")
		}
		p.Start = rapid.IntRange(-1, stations-1).Draw(t, "start")
		n := rapid.IntRange(0, maxOperations).Draw(t, "operations")
		density := rapid.IntRange(0, 4).Draw(t, "density")
		for i := range n {
			op := order.Operation{
				Station: rapid.IntRange(0, stations-1).Draw(t, "station"),
				Rank:    rapid.IntRange(0, n).Draw(t, "rank"),
				Group:   rapid.IntRange(0, 2).Draw(t, "group"),
			}
			for _, at := range p.Stations[op.Station].Attributes {
				op.Setting = append(op.Setting, rapid.IntRange(-1, len(at.Change)-1).Draw(t, "setting"))
			}
			for b := range i {
				if rapid.IntRange(0, 5).Draw(t, "after") < density {
					op.After = append(op.After, b)
				}
			}
			p.Operations = append(p.Operations, op)
		}
		return shuffled(p, rapid.Permutation(indexes(n)).Draw(t, "names"))
	})
}

func indexes(n int) []int {
	s := make([]int, n)
	for i := range s {
		s[i] = i
	}
	return s
}

// shuffled returns p with operation i called name[i].
func shuffled(p order.Problem, name []int) order.Problem {
	ops := make([]order.Operation, len(p.Operations))
	for i, op := range p.Operations {
		var after []int
		for _, b := range op.After {
			after = append(after, name[b])
		}
		op.After = after
		ops[name[i]] = op
	}
	p.Operations = ops
	return p
}

func solve(t rapid.TB, p order.Problem, o order.Options) order.Result {
	t.Helper()
	r, err := order.Solve(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	if got := price(t, p, r.Sequence); got != r.Cost {
		t.Fatalf("cost is said to be %d, replay gives %d", r.Cost, got)
	}
	if r.Bound > r.Cost || r.Proved != (r.Bound == r.Cost) {
		t.Fatalf("cost %d, bound %d, proved %v", r.Cost, r.Bound, r.Proved)
	}
	return r
}

func TestSolveAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(7).Draw(t, "problem")
		r := solve(t, p, order.Options{})
		if want := brute(t, p); !r.Proved || r.Cost != want {
			t.Fatalf("cost %d, proved %v, want %d", r.Cost, r.Proved, want)
		}
	})
}

func TestCostAgainstReplay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(12).Draw(t, "problem")
		sequence := rapid.Permutation(indexes(len(p.Operations))).Draw(t, "sequence")
		b, err := order.Cost(p, sequence)
		if _, wrong := errors.AsType[*order.SequenceError](err); wrong {
			if breaksPrecedence(p, sequence) {
				return
			}
		}
		if err != nil {
			t.Fatal(err)
		}
		if want := price(t, p, sequence); b.Total != want {
			t.Fatalf("total %d, want %d", b.Total, want)
		}
		var moves, changes int64
		for _, s := range b.Steps {
			moves += s.Move
			for _, c := range s.Changes {
				changes += c.Cost
			}
		}
		if moves != b.Moves || changes != b.Changes || moves+changes != b.Total {
			t.Fatalf("steps add up to %d and %d, want %d and %d of %d", moves, changes, b.Moves, b.Changes, b.Total)
		}
	})
}

func breaksPrecedence(p order.Problem, sequence []int) bool {
	seen := map[int]bool{}
	for _, i := range sequence {
		for _, b := range p.Operations[i].After {
			if !seen[b] {
				return true
			}
		}
		seen[i] = true
	}
	return false
}
