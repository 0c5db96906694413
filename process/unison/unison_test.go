package unison_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"bodkin/process/order"
	"bodkin/process/unison"
)

// Two places to work: a machine with a thread, and an iron.
const (
	machine = iota
	iron
)

// maker reads "side: pin@iron stitch@red" with a part on each line: each act
// with the thread it wants at the machine, or at the iron. An act waits for the
// one before it in its part; "after side" as first word for all of that part.
func maker(lines ...string) unison.Maker {
	colours := []string{"red", "blue"}
	m := unison.Maker{Problem: order.Problem{
		Stations: []order.Station{{Attributes: []order.Attribute{{Change: order.Uniform(2, 5), Start: order.Unset}}}, {}},
		Moves:    order.Uniform(2, 1), Start: order.Nowhere,
	}}
	last := map[string]int{}
	for _, line := range lines {
		part, acts, _ := strings.Cut(line, ": ")
		before := -1
		if name, rest, ok := strings.Cut(strings.TrimPrefix(acts, "after "), "; "); ok {
			before, acts = last[name], rest
		}
		for _, a := range strings.Fields(acts) {
			does, at, _ := strings.Cut(a, "@")
			op := order.Operation{Station: iron, Rank: len(m.Acts)}
			if k := slices.Index(colours, at); k >= 0 {
				op.Station, op.Setting = machine, []int{k}
			}
			if before >= 0 {
				op.After = []int{before}
			}
			before = len(m.Acts)
			m.Acts = append(m.Acts, unison.Act{Part: part, Does: does})
			m.Problem.Operations = append(m.Problem.Operations, op)
		}
		last[part] = before
	}
	return m
}

func join(t testing.TB, makers []unison.Maker, held ...string) unison.Result {
	t.Helper()
	r, err := unison.Join(t.Context(), makers, held, order.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func keys(r unison.Result) []string {
	var out []string
	for _, n := range r.Numbers {
		out = append(out, n.Key)
	}
	return out
}

func TestTwoWaysOfOneSeamShareWhatTheyCan(t *testing.T) {
	plain := maker("side: pin stitch@red press", "hem: after side; fold stitch@red")
	french := maker("side: pin stitch@red trim press pin stitch@red press", "hem: after side; fold stitch@red")
	r := join(t, []unison.Maker{plain, french})
	var side []string
	for _, n := range r.Numbers {
		if strings.HasPrefix(n.Key, "side") {
			side = append(side, fmt.Sprintln(n.Key, n.Of[0] >= 0, n.Of[1] >= 0))
		}
	}
	want := []string{"side.pin.1 true true\n", "side.stitch.1 true true\n", "side.trim.1 false true\n", "side.press.1 true true\n",
		"side.pin.2 false true\n", "side.stitch.2 false true\n", "side.press.2 false true\n"}
	if diff := cmp.Diff(want, side); diff != "" {
		t.Error(diff)
	}
}

// Where two makers work the same parts the other way round, no sequence of
// shared numbers suits both, and each gets numbers of her own.
func TestPartsAreTakenApartWhereTheyMust(t *testing.T) {
	a := maker("hem: stitch@red", "side: after hem; stitch@red")
	b := maker("side: stitch@red", "hem: after side; stitch@red")
	r := join(t, []unison.Maker{a, b})
	if got := keys(r); len(got) != 4 || !slices.Contains(got, "hem@1.stitch.1") || !slices.Contains(got, "hem@2.stitch.1") {
		t.Errorf("numbers %v", got)
	}
}

func TestHeldNumbersStay(t *testing.T) {
	plain := maker("side: pin stitch@red press", "neck: fold stitch@red")
	held := keys(join(t, []unison.Maker{plain}))
	french := maker("side: pin stitch@blue trim press pin stitch@blue press", "neck: fold stitch@blue")
	got := keys(join(t, []unison.Maker{french, plain}, held...))
	var old []string
	for _, k := range got {
		if slices.Contains(held, k) {
			old = append(old, k)
		}
	}
	if diff := cmp.Diff(held, old); diff != "" {
		t.Errorf("held numbers have moved:\n%s", diff)
	}
	if len(got) != len(held)+4 {
		t.Errorf("%d numbers, want four more than %d", len(got), len(held))
	}
}

func TestHeldNumbersThatCannotStay(t *testing.T) {
	a := maker("hem: stitch@red", "side: after hem; stitch@red")
	_, err := unison.Join(t.Context(), []unison.Maker{a}, []string{"side.stitch.1", "hem.stitch.1"}, order.Options{})
	h, ok := errors.AsType[*unison.HeldError](err)
	if !ok || h.First != "hem.stitch.1" || h.Then != "side.stitch.1" || h.Maker != 0 {
		t.Errorf("error %v", err)
	}
}

func drawn(t *rapid.T) []unison.Maker {
	parts := []string{"side", "neck", "hem"}
	var makers []unison.Maker
	for range rapid.IntRange(1, 3).Draw(t, "makers") {
		var lines []string
		for k, part := range rapid.Permutation(parts).Draw(t, "parts") {
			acts := rapid.SliceOfN(rapid.SampledFrom([]string{"pin@iron", "stitch@red", "stitch@blue", "press@iron"}), 0, 4).Draw(t, "acts")
			if len(acts) == 0 {
				continue
			}
			line := part + ": "
			if k > 0 && len(lines) > 0 && rapid.Bool().Draw(t, "waits") {
				before, _, _ := strings.Cut(lines[len(lines)-1], ":")
				line += "after " + before + "; "
			}
			lines = append(lines, line+strings.Join(acts, " "))
		}
		makers = append(makers, maker(lines...))
	}
	return makers
}

// TestLaws: a number is one act on one part; each operation has one number;
// each maker can keep the sequence, and it costs her what is said, which is no
// less than what she could do by herself; alone she does as well as she can.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		makers := drawn(t)
		r, err := unison.Join(t.Context(), makers, nil, order.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var total, bounds int64
		for m, mk := range makers {
			var own []int
			for _, n := range r.Numbers {
				i := n.Of[m]
				if i < 0 {
					continue
				}
				a := mk.Acts[i]
				part, rest, _ := strings.Cut(n.Key, ".")
				part, _, _ = strings.Cut(part, "@")
				if does, _, _ := strings.Cut(rest, "."); part != a.Part || does != a.Does {
					t.Fatalf("number %s is %v for maker %d", n.Key, a, m)
				}
				for _, b := range mk.Problem.Operations[i].After {
					if !slices.Contains(own, b) {
						t.Fatalf("maker %d: %d before %d", m, i, b)
					}
				}
				own = append(own, i)
			}
			if len(own) != len(mk.Acts) {
				t.Fatalf("maker %d does %d of %d", m, len(own), len(mk.Acts))
			}
			alone, err := order.Solve(t.Context(), mk.Problem, order.Options{})
			if err != nil {
				t.Fatal(err)
			}
			cost, err := order.Cost(mk.Problem, own)
			if err != nil || cost.Total != r.Cost[m] {
				t.Fatalf("maker %d: cost %d, said to be %d (%v)", m, cost.Total, r.Cost[m], err)
			}
			if r.Cost[m] < alone.Bound || r.Alone[m] > alone.Cost || len(makers) == 1 && r.Cost[m] != alone.Cost {
				t.Fatalf("maker %d: cost %d, alone %d, alone it can be %d", m, r.Cost[m], r.Alone[m], alone.Cost)
			}
			total, bounds = total+r.Cost[m], bounds+alone.Bound
		}
		if len(makers) == 1 && !r.Cheapest || total == bounds && !r.Cheapest {
			t.Fatalf("not said to be cheapest: %d", total)
		}
		again, err := unison.Join(t.Context(), makers, keys(r), order.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(keys(r), keys(again)); diff != "" {
			t.Fatalf("held to its own numbers it has others:\n%s", diff)
		}
	})
}
