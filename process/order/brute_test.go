package order_test

import (
	"context"
	"errors"
	"slices"
	"testing"

	"bodkin/process/order"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// price replays a sequence by its own few lines, so that Cost and Solve are
// checked against something that shares no code with them. It fails the test
// when the sequence is not an order of all operations.
func price(t rapid.TB, p order.Problem, sequence, ways []int) int64 {
	t.Helper()
	if len(sequence) != len(p.Operations)-len(p.Done) || len(ways) != len(sequence) {
		t.Fatalf("%d operations and %d ways in the sequence, want %d", len(sequence), len(ways), len(p.Operations)-len(p.Done))
	}
	type slot struct{ station, attribute int }
	set := map[slot]int{}
	for s, st := range p.Stations {
		for a, at := range st.Attributes {
			set[slot{s, a}] = at.Start
		}
	}
	turn := func(s, a, want int) int64 {
		have := set[slot{s, a}]
		if want < 0 || want == have {
			return 0
		}
		set[slot{s, a}] = want
		switch attribute := p.Stations[s].Attributes[a]; {
		case have >= 0:
			return attribute.Change[have][want]
		case attribute.First != nil:
			return attribute.First[want]
		}
		return 0
	}
	position := map[int]int{}
	hand := -1
	for k, i := range slices.Concat(p.Done, sequence) {
		position[i] = k + 1
	}
	if len(position) != len(p.Operations) {
		t.Fatalf("an operation comes twice in %v", sequence)
	}
	for _, i := range p.Done {
		if g := p.Operations[i].Group; g >= 0 {
			hand = g
		}
	}
	total, at := int64(0), p.Start
	for k, i := range sequence {
		op := p.Operations[i]
		for _, b := range op.After {
			if position[b] == 0 || position[b] > position[i] {
				t.Fatalf("operation %d at %d does not come after %d", i, k, b)
			}
		}
		w := order.Way{Station: op.Station, Setting: op.Setting, Cost: op.Cost}
		if ways[k] > 0 {
			w = op.Or[ways[k]-1]
		}
		total += w.Cost
		if at >= 0 && at != w.Station && p.Moves != nil {
			total += p.Moves[at][w.Station]
		}
		at = w.Station
		for a, want := range w.Setting {
			total += turn(at, a, want)
		}
		if op.Group >= 0 {
			if hand >= 0 && hand != op.Group {
				total += p.Pick
			}
			hand = op.Group
		}
	}
	for s, st := range p.Stations {
		for a, want := range st.End {
			total += turn(s, a, want)
		}
	}
	begun := map[int]bool{}
	for _, i := range p.Done {
		begun[i] = true
	}
	for _, w := range p.Wishes {
		if position[w.Then] < position[w.First] && !begun[w.First] {
			total += w.Cost
		}
	}
	return total
}

// brute returns the least cost over all linear extensions and all ways.
func brute(t rapid.TB, p order.Problem) int64 {
	least := int64(-1)
	done := make([]bool, len(p.Operations))
	for _, i := range p.Done {
		done[i] = true
	}
	n := len(p.Operations) - len(p.Done)
	var sequence, ways []int
	var extend func()
	extend = func() {
		if len(sequence) == n {
			if c := price(t, p, sequence, ways); least < 0 || c < least {
				least = c
			}
			return
		}
	next:
		for i, op := range p.Operations {
			if done[i] {
				continue
			}
			for _, b := range op.After {
				if !done[b] {
					continue next
				}
			}
			done[i] = true
			sequence = append(sequence, i)
			for w := range 1 + len(op.Or) {
				ways = append(ways, w)
				extend()
				ways = ways[:len(ways)-1]
			}
			sequence = sequence[:len(sequence)-1]
			done[i] = false
		}
	}
	extend()
	return least
}

// problems draws small problems of every kind: few or many stations, costs
// that obey the triangle inequality or break it, chains, trees and loose work,
// with and without choices of way, ends, picks, wishes and a beginning made.
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
			if rapid.IntRange(0, 2).Draw(t, "has end") == 0 {
				for _, at := range st.Attributes {
					st.End = append(st.End, rapid.IntRange(-1, len(at.Change)-1).Draw(t, "end"))
				}
			}
			p.Stations = append(p.Stations, st)
		}
		if rapid.Bool().Draw(t, "has moves") {
			p.Moves = matrix(stations, "move")
		}
		p.Start = rapid.IntRange(-1, stations-1).Draw(t, "start")
		way := func() (w order.Way) {
			w.Station = rapid.IntRange(0, stations-1).Draw(t, "station")
			for _, at := range p.Stations[w.Station].Attributes {
				w.Setting = append(w.Setting, rapid.IntRange(-1, len(at.Change)-1).Draw(t, "setting"))
			}
			if rapid.Bool().Draw(t, "has cost") {
				w.Cost = rapid.Int64Range(0, 9).Draw(t, "cost")
			}
			return w
		}
		if rapid.IntRange(0, 2).Draw(t, "has pick") == 0 {
			p.Pick = rapid.Int64Range(0, 5).Draw(t, "pick")
		}
		choosy := rapid.IntRange(0, 3).Draw(t, "choosy")
		n := rapid.IntRange(0, maxOperations).Draw(t, "operations")
		density := rapid.IntRange(0, 4).Draw(t, "density")
		for i := range n {
			own := way()
			op := order.Operation{
				Station: own.Station, Setting: own.Setting, Cost: own.Cost,
				Rank:  rapid.IntRange(0, n).Draw(t, "rank"),
				Group: rapid.IntRange(-1, 2).Draw(t, "group"),
			}
			for rapid.IntRange(0, 9).Draw(t, "or") < choosy && len(op.Or) < 3 {
				op.Or = append(op.Or, way())
			}
			for b := range i {
				if rapid.IntRange(0, 5).Draw(t, "after") < density {
					op.After = append(op.After, b)
				}
			}
			p.Operations = append(p.Operations, op)
		}
		if n > 1 && rapid.IntRange(0, 2).Draw(t, "wishful") == 0 {
			for range rapid.IntRange(0, 6).Draw(t, "wishes") {
				first, then := rapid.IntRange(0, n-1).Draw(t, "first"), rapid.IntRange(0, n-2).Draw(t, "then")
				if then >= first {
					then++
				}
				p.Wishes = append(p.Wishes, order.Wish{First: first, Then: then, Cost: rapid.Int64Range(0, 9).Draw(t, "wish")})
			}
		}
		if n > 0 && rapid.IntRange(0, 5).Draw(t, "begun") == 0 {
			p.Done = indexes(rapid.IntRange(0, n).Draw(t, "done"))
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
	wishes, done := p.Wishes, p.Done
	p.Wishes, p.Done = nil, nil
	for _, w := range wishes {
		p.Wishes = append(p.Wishes, order.Wish{First: name[w.First], Then: name[w.Then], Cost: w.Cost})
	}
	for _, i := range done {
		p.Done = append(p.Done, name[i])
	}
	return p
}

func solve(t rapid.TB, p order.Problem, o order.Options) order.Result {
	t.Helper()
	r, err := order.Solve(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	if got := price(t, p, r.Sequence, r.Ways); got != r.Cost {
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
		sequence := slices.DeleteFunc(rapid.Permutation(indexes(len(p.Operations))).Draw(t, "sequence"), func(i int) bool {
			return slices.Contains(p.Done, i)
		})
		if rapid.Bool().Draw(t, "sound") {
			sequence = sound(p, sequence)
		}
		ways := make([]int, len(sequence))
		for k, i := range sequence {
			ways[k] = rapid.IntRange(0, len(p.Operations[i].Or)).Draw(t, "way")
		}
		b, err := order.CostWith(p, sequence, ways)
		if breaksPrecedence(p, sequence) {
			if _, told := errors.AsType[*order.SequenceError](err); !told {
				t.Fatalf("got %v for a sequence that breaks precedence", err)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if want := price(t, p, sequence, ways); b.Total != want {
			t.Fatalf("total %d, want %d", b.Total, want)
		}
		sum := order.Breakdown{Total: b.Total, Steps: b.Steps, Ends: b.Ends, Wishes: b.Wishes}
		for _, s := range b.Steps {
			sum.Moves, sum.Own, sum.Picks = sum.Moves+s.Move, sum.Own+s.Cost, sum.Picks+s.Pick
			for _, c := range s.Changes {
				sum.Changes += c.Cost
			}
		}
		for _, e := range b.Ends {
			sum.Ending += e.Cost
		}
		for _, w := range b.Wishes {
			sum.Unkept += p.Wishes[w].Cost
		}
		if diff := cmp.Diff(sum, b); diff != "" {
			t.Fatalf("the steps do not add up (-sum +said):\n%s", diff)
		}
		if sum.Moves+sum.Changes+sum.Own+sum.Picks+sum.Unkept+sum.Ending != b.Total {
			t.Fatalf("the parts do not add up: %+v", b)
		}
	})
}

// A beginning and what it leaves cost together what the whole does.
func TestBeginAgainstCost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(9).Draw(t, "problem")
		r := solve(t, p, order.Options{})
		n := rapid.IntRange(0, len(r.Sequence)).Draw(t, "done")
		rest, err := order.Begin(p, r.Sequence[:n], r.Ways[:n])
		if err != nil {
			t.Fatal(err)
		}
		whole, err := order.CostWith(p, r.Sequence, r.Ways)
		if err != nil {
			t.Fatal(err)
		}
		left := whole.Total
		for _, s := range whole.Steps[:n] {
			left -= s.Move + s.Cost + s.Pick
			for _, c := range s.Changes {
				left -= c.Cost
			}
		}
		for _, w := range whole.Wishes { // those whose first is done are paid
			if slices.Contains(r.Sequence[:n], p.Wishes[w].First) {
				left -= p.Wishes[w].Cost
			}
		}
		if got := price(t, rest, r.Sequence[n:], r.Ways[n:]); got != left {
			t.Fatalf("what is left costs %d, want %d", got, left)
		}
		if best := solve(t, rest, order.Options{}); best.Cost != left {
			t.Fatalf("the rest of the cheapest order costs %d, and could cost %d", left, best.Cost)
		}
	})
}

// sound puts the sequence in an order that respects what must come before,
// otherwise keeping it where it can.
func sound(p order.Problem, sequence []int) []int {
	var out []int
	done := map[int]bool{}
	for _, i := range p.Done {
		done[i] = true
	}
	for len(out) < len(sequence) {
		for _, i := range sequence {
			if !done[i] && !slices.ContainsFunc(p.Operations[i].After, func(b int) bool { return !done[b] }) {
				done[i] = true
				out = append(out, i)
				break
			}
		}
	}
	return out
}

func breaksPrecedence(p order.Problem, sequence []int) bool {
	seen := map[int]bool{}
	for _, i := range p.Done {
		seen[i] = true
	}
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
