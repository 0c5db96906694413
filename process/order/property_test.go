package order_test

import (
	"context"
	"encoding/json"
	"errors"
	"runtime"
	"slices"
	"testing"
	"time"

	"bodkin/process/order"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestMorePrecedenceNeverCostsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(9).Draw(t, "problem")
		p.Done = nil
		before := solve(t, p, order.Options{})
		n := len(p.Operations)
		if n < 2 {
			return
		}
		// any precedence that the cheapest order of another drawing allows
		names := sound(p, rapid.Permutation(indexes(n)).Draw(t, "order"))
		a := rapid.IntRange(0, n-2).Draw(t, "first")
		b := rapid.IntRange(a+1, n-1).Draw(t, "then")
		op := &p.Operations[names[b]]
		op.After = append(slices.Clone(op.After), names[a])
		if after := solve(t, p, order.Options{}); after.Cost < before.Cost {
			t.Fatalf("%d, and with %d before %d no more than %d", before.Cost, names[a], names[b], after.Cost)
		}
	})
}

// Merging two values of an attribute never makes the order dearer where changes
// all cost the same; where they do not, the merged value may be dear to come to.
func TestFewerValuesNeverCostMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := garment(rapid.Uint64Range(0, 1000).Draw(t, "seed"), rapid.IntRange(4, 24).Draw(t, "operations"))
		if rapid.Bool().Draw(t, "choosy") {
			p = choosy(rapid.Uint64Range(0, 1000).Draw(t, "seed"), rapid.IntRange(4, 16).Draw(t, "operations"))
		}
		before := solve(t, p, order.Options{})
		a, b := rapid.IntRange(0, 2).Draw(t, "value"), rapid.IntRange(0, 2).Draw(t, "into")
		merge := func(setting []int) []int {
			setting = slices.Clone(setting)
			if setting[0] == a {
				setting[0] = b
			}
			return setting
		}
		for i := range p.Operations {
			op := &p.Operations[i]
			if op.Station == machine {
				op.Setting = merge(op.Setting)
				op.Or = slices.Clone(op.Or)
				for k := range op.Or {
					op.Or[k].Setting = merge(op.Or[k].Setting)
				}
			}
		}
		if after := solve(t, p, order.Options{}); after.Cost > before.Cost {
			t.Fatalf("%d, and with value %d merged into %d %d", before.Cost, a, b, after.Cost)
		}
	})
}

func TestNamesChangeNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(10).Draw(t, "problem")
		q := shuffled(p, rapid.Permutation(indexes(len(p.Operations))).Draw(t, "names"))
		if a, b := solve(t, p, order.Options{}), solve(t, q, order.Options{}); a.Cost != b.Cost {
			t.Fatalf("%d by one set of names, %d by another", a.Cost, b.Cost)
		}
	})
}

// What is always set along with something else, as the bobbin with the thread of
// the needle, costs what brute force says.
func TestSettingsThatNeverPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(7).Draw(t, "problem")
		s := rapid.IntRange(0, len(p.Stations)-1).Draw(t, "station")
		if len(p.Stations[s].Attributes) == 0 {
			return
		}
		a := rapid.IntRange(0, len(p.Stations[s].Attributes)-1).Draw(t, "attribute")
		name := rapid.Permutation(indexes(len(p.Stations[s].Attributes[a].Change))).Draw(t, "names")
		one, two := alongside(p, s, a, name, rapid.Int64Range(0, 9).Draw(t, "change"))
		x, y, want := solve(t, one, order.Options{}), solve(t, two, order.Options{}), brute(t, two)
		if x.Cost != want || y.Cost != want {
			t.Fatalf("as one %d, as two %d, want %d", x.Cost, y.Cost, want)
		}
	})
}

// It takes no more search than the two as one either.
func TestSettingsThatNeverPartTakeNoMoreSearch(t *testing.T) {
	for seed := range uint64(12) {
		one, two := alongside(garment(seed, 30), machine, 0, []int{2, 0, 1}, 3)
		x, y := solve(t, one, order.Options{}), solve(t, two, order.Options{})
		if x.Cost != y.Cost || x.Expanded != y.Expanded {
			t.Errorf("seed %d: as one %d in %d nodes, as two %d in %d", seed, x.Cost, x.Expanded, y.Cost, y.Expanded)
		}
	}
}

// alongside returns the problem with a further attribute at a station that is
// always set along with attribute a, to values that name gives for those of a,
// each change at one cost; in the first as a itself at the cost of both.
func alongside(p order.Problem, s, a int, name []int, cost int64) (one, two order.Problem) {
	own := order.Attribute{Change: order.Uniform(len(name), cost), Start: p.Stations[s].Attributes[a].Start}
	if own.Start >= 0 {
		own.Start = name[own.Start]
	}
	one, two = with(p, s, a), with(p, s, a)
	for from, row := range one.Stations[s].Attributes[a].Change {
		for to := range row {
			if from != to {
				row[to] += cost
			}
		}
	}
	also := func(setting []int) []int {
		if setting == nil {
			return nil
		}
		v := setting[a]
		if v >= 0 {
			v = name[v]
		}
		return append(slices.Clone(setting), v)
	}
	st := &two.Stations[s]
	st.Attributes, st.End = append(slices.Clone(st.Attributes), own), also(st.End)
	for i := range two.Operations {
		op := &two.Operations[i]
		if op.Station == s {
			op.Setting = also(op.Setting)
		}
		op.Or = slices.Clone(op.Or)
		for k := range op.Or {
			if op.Or[k].Station == s {
				op.Or[k].Setting = also(op.Or[k].Setting)
			}
		}
	}
	return one, two
}

// with is the problem with its stations, and the changes of one attribute, of
// their own.
func with(p order.Problem, s, a int) order.Problem {
	p.Stations, p.Operations = slices.Clone(p.Stations), slices.Clone(p.Operations)
	st := &p.Stations[s]
	st.Attributes = slices.Clone(st.Attributes)
	rows := slices.Clone(st.Attributes[a].Change)
	for k := range rows {
		rows[k] = slices.Clone(rows[k])
	}
	st.Attributes[a].Change = rows
	return p
}

// Two operations that nothing tells apart change places in any order at the
// same cost.
func TestTwinsSwapFreely(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problems(8).Draw(t, "problem")
		p.Done = nil
		n := len(p.Operations)
		if n == 0 {
			return
		}
		twin := rapid.IntRange(0, n-1).Draw(t, "twin")
		p.Operations = append(p.Operations, p.Operations[twin])
		for i := range p.Operations[:n] {
			if op := &p.Operations[i]; slices.Contains(op.After, twin) {
				op.After = append(slices.Clone(op.After), n)
			}
		}
		for _, w := range p.Wishes {
			if w.First == twin {
				p.Wishes = append(p.Wishes, order.Wish{First: n, Then: w.Then, Cost: w.Cost})
			} else if w.Then == twin {
				p.Wishes = append(p.Wishes, order.Wish{First: w.First, Then: n, Cost: w.Cost})
			}
		}
		r := solve(t, p, order.Options{})
		swapped := slices.Clone(r.Sequence)
		a, b := slices.Index(swapped, twin), slices.Index(swapped, n)
		swapped[a], swapped[b] = swapped[b], swapped[a]
		if cost := price(t, p, swapped, r.Ways); cost != r.Cost {
			t.Fatalf("%d, and with the twins swapped %d", r.Cost, cost)
		}
	})
}

// Whatever the limits, what is found is no cheaper than what is proved, what
// bounds it no dearer, and the same again the next time.
func TestLimitsKeepToWhatIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rough(rapid.Uint64Range(0, 1000).Draw(t, "seed"), rapid.IntRange(4, 40).Draw(t, "operations"))
		o := order.Options{Nodes: rapid.IntRange(-1, 300).Draw(t, "nodes")}
		limited := solve(t, p, o)
		if diff := cmp.Diff(limited, solve(t, p, o)); diff != "" {
			t.Fatalf("not the same again:\n%s", diff)
		}
		proved := solve(t, p, order.Options{})
		if !proved.Proved || limited.Cost < proved.Cost || limited.Bound > proved.Cost {
			t.Fatalf("limited to cost %d, bound %d; proved %v at %d", limited.Cost, limited.Bound, proved.Proved, proved.Cost)
		}
	})
}

// A context that is over leaves a whole order, and nothing running.
func TestOverBeforeItBegins(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	before := runtime.NumGoroutine()
	p := rough(1, 80)
	r, err := order.Solve(ctx, p, order.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if cost := price(t, p, r.Sequence, r.Ways); cost != r.Cost || r.Bound > r.Cost {
		t.Errorf("cost %d, bound %d, replayed %d", r.Cost, r.Bound, cost)
	}
	if !r.Proved && r.Stopped != order.Cancelled {
		t.Errorf("stopped by %v", r.Stopped)
	}
	for wait := 0; runtime.NumGoroutine() > before; wait++ {
		if wait == 100 {
			t.Fatalf("%d goroutines, %d before", runtime.NumGoroutine(), before)
		}
		time.Sleep(10 * time.Millisecond)
	}
}

func TestNothingToDo(t *testing.T) {
	for _, tt := range []struct {
		name string
		p    order.Problem
		cost int64
	}{
		{"no problem", order.Problem{}, 0},
		{"all done", order.Problem{Stations: make([]order.Station, 1), Operations: make([]order.Operation, 2), Done: []int{1, 0}}, 0},
		{"all done but the end", order.Problem{
			Stations:   []order.Station{{Attributes: []order.Attribute{{Change: order.Uniform(2, 7)}}, End: []int{1}}},
			Operations: make([]order.Operation, 1), Done: []int{0},
		}, 7},
		{"all done against a wish", order.Problem{
			Stations: make([]order.Station, 1), Operations: make([]order.Operation, 2), Done: []int{1},
			Wishes: []order.Wish{{First: 0, Then: 1, Cost: 3}},
		}, 3},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := solve(t, tt.p, order.Options{})
			if !r.Proved || r.Cost != tt.cost {
				t.Errorf("cost %d, proved %v, want %d", r.Cost, r.Proved, tt.cost)
			}
		})
	}
}

func TestInvalid(t *testing.T) {
	station := order.Station{Attributes: []order.Attribute{{Change: order.Uniform(2, 1), Start: order.Unset}}}
	with := func(change func(*order.Problem)) order.Problem {
		p := order.Problem{Stations: []order.Station{station}, Operations: make([]order.Operation, 3)}
		change(&p)
		return p
	}
	for _, tt := range []struct {
		want string
		p    order.Problem
	}{
		{"operation 1, way 1: station is 4, want 0 to 0", with(func(p *order.Problem) { p.Operations[1].Or = []order.Way{{Station: 4}} })},
		{"operation 0: cost is -1, want 0 to 68719476736", with(func(p *order.Problem) { p.Operations[0].Cost = -1 })},
		{"operation 0: group is -2, want -1 for none or more", with(func(p *order.Problem) { p.Operations[0].Group = -2 })},
		{"station 0: 2 ends for its 1 attributes", with(func(p *order.Problem) { p.Stations[0].End = []int{0, 0} })},
		{"station 0: end of attribute 0 is 2, want -1 for any or 0 to 1", with(func(p *order.Problem) { p.Stations[0].End = []int{2} })},
		{"problem: the cost of a pick is -1, want 0 to 68719476736", with(func(p *order.Problem) { p.Pick = -1 })},
		{"wish 0: names operation 3, want 0 to 2", with(func(p *order.Problem) { p.Wishes = []order.Wish{{First: 3}} })},
		{"wish 0: wants operation 1 before itself", with(func(p *order.Problem) { p.Wishes = []order.Wish{{First: 1, Then: 1}} })},
		{"done: names operation 2 twice", with(func(p *order.Problem) { p.Done = []int{2, 2} })},
		{"done: operation 1 is done, and operation 0, which it must follow, is not done before it", with(func(p *order.Problem) {
			p.Operations[1].After = []int{0}
			p.Done = []int{1}
		})},
		{"operations wait for each other in a circle: 0 before 1 before 0", with(func(p *order.Problem) {
			p.Operations[1].After, p.Operations[0].After = []int{0}, []int{1}
		})},
	} {
		t.Run(tt.want, func(t *testing.T) {
			if _, err := order.Solve(t.Context(), tt.p, order.Options{}); err == nil || err.Error() != tt.want {
				t.Errorf("got %v", err)
			}
		})
	}
}

// FuzzProblem reads problems as JSON: what is refused is refused with an error
// of the package, and what is not is solved.
func FuzzProblem(f *testing.F) {
	for seed := range uint64(4) {
		for _, p := range []order.Problem{rough(seed, 8), choosy(seed, 8), regional(seed, 9)} {
			text, err := json.Marshal(p)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		var p order.Problem
		if json.Unmarshal(text, &p) != nil || len(p.Operations) > 50 {
			return
		}
		r, err := order.Solve(t.Context(), p, order.Options{Nodes: 100})
		if err != nil {
			_, invalid := errors.AsType[*order.InvalidError](err)
			_, cycle := errors.AsType[*order.CycleError](err)
			if !invalid && !cycle {
				t.Fatalf("refused with %T: %v", err, err)
			}
			return
		}
		if cost := price(t, p, r.Sequence, r.Ways); cost != r.Cost || r.Bound > r.Cost {
			t.Fatalf("cost %d, bound %d, replayed %d", r.Cost, r.Bound, cost)
		}
	})
}
