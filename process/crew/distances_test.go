package crew

import (
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// sewn is a problem like those of a garment: pieces go from hand to hand, often
// all from the first task and to the last, machines are set up, people are slow
// or cannot do everything.
func sewn(t *rapid.T, most int) Problem {
	draw := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
	p := Problem{Handover: int64(draw("handover", 0, 3))}
	for k := range draw("kinds", 0, 2) {
		var kind Kind
		for range draw("attributes", 1, 2) {
			n := draw("values", 1, 3)
			a := Attribute{Change: [][]int64{{0, 1, 4}, {2, 0, 3}, {1, 1, 0}}[:n], First: []int64{int64(draw("first", 0, 4)), 1, 2}[:n]}
			for v := range a.Change {
				a.Change[v] = a.Change[v][:n]
			}
			kind.Attributes = append(kind.Attributes, a)
		}
		p.Kinds = append(p.Kinds, kind)
		for range draw("machines", 1, 2) {
			m := Machine{Kind: k}
			for range kind.Attributes {
				m.Start = append(m.Start, draw("start", -1, 0))
			}
			p.Machines = append(p.Machines, m)
		}
	}
	for range draw("people", 2, 3) {
		q := Person{Skills: []int{1, draw("skill", 0, 1)}, Pace: 50 * draw("pace", 0, 4)}
		if draw("late", 0, 3) == 0 {
			q.Hours = []Span{{From: int64(draw("from", 0, 6)), Until: 500}}
		}
		p.People = append(p.People, q)
	}
	p.People[0].Skills[1] = 1
	n := draw("tasks", 3, most)
	fan, join := draw("fan", 0, 2) > 0, draw("join", 0, 2) > 0
	for i := range n {
		k := Task{Time: int64(draw("time", 0, 6)), Kind: None, Needs: []Need{{Skill: draw("needed", 0, 1)}}}
		if draw("pair", 0, 9) == 0 {
			k.Needs = append(k.Needs, Need{})
		}
		if len(p.Kinds) > 0 && draw("machined", 0, 2) > 0 {
			k.Kind = draw("kind", 0, len(p.Kinds)-1)
			for _, a := range p.Kinds[k.Kind].Attributes {
				k.Setting = append(k.Setting, draw("setting", -1, len(a.Change)-1))
			}
		}
		for b := range i {
			switch a := draw("arc", 0, 7); {
			case b == 0 && fan || i == n-1 && join || a == 0:
				k.From = append(k.From, b)
			case a == 1:
				k.After = append(k.After, b)
			}
		}
		p.Tasks = append(p.Tasks, k)
	}
	return p
}

// TestDistancesHoldInEveryPlan: in whatever plan, told from lists in any order
// with anybody who can, no two tasks are nearer to one another than is said.
func TestDistancesHoldInEveryPlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := sewn(t, 12)
		if Validate(p) != nil {
			return
		}
		m := compile(p)
		eased := m.eased()
		eased.stretches()
		b := eased.distances()
		chance := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "chance"), 1))
		d := newDecoder(m)
		for range 20 {
			key, want := make([]int64, m.n), make([]int, m.n)
			for i := range key {
				key[i], want[i] = chance.Int64N(100), Any
				if chance.IntN(2) == 0 {
					want[i] = chance.IntN(len(m.teams[i]))
				}
			}
			draft := d.run(m.inOrder(key), want, nil)
			if draft.value.finish >= infinite {
				continue
			}
			begin := func(i int) int64 { return draft.place[i].end - eased.teams[i][draft.place[i].team].lasts }
			for i := range m.n {
				if at := begin(i); at < eased.head[i] || draft.value.finish-at < eased.tail[i] {
					t.Fatalf("task %d begins at %d of %d; said: from %d on, at the latest %d before the end", i, at, draft.value.finish, eased.head[i], eased.tail[i])
				}
				for j := range m.n {
					if far := b.apart[b.places[i]][b.places[j]]; far != never && begin(j)-draft.place[i].end < far {
						t.Fatalf("%d to %d: %d, said at least %d", i, j, begin(j)-draft.place[i].end, far)
					}
				}
			}
		}
	})
}

// walked is a small problem with its best plan of all, walked without any bound
// but the longest path; nil where there is none.
func walked(t *rapid.T) (Problem, *model, *draft) {
	p := sewn(t, 7)
	if Validate(p) != nil {
		return p, nil, nil
	}
	m := compile(p)
	w := newBrancher(t.Context(), m, worst, 0, 20_000)
	if !w.run() {
		return p, m, nil
	}
	return p, m, w.found
}

// TestBoundIsNeverAboveTheBest: the bound of small problems against all plans.
func TestBoundIsNeverAboveTheBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, m, found := walked(t)
		if found == nil {
			return
		}
		if low := m.eased().lower(false); low > found.value.finish {
			t.Fatalf("bound %d, a plan ends at %d: %+v", low, found.value.finish, p)
		}
	})
}

// TestRaisedBoundIsNeverAboveTheBest: asked for ends from the bound on to some
// that are possible, it refuses none that is.
func TestRaisedBoundIsNeverAboveTheBest(t *testing.T) {
	raised := 0
	rapid.Check(t, func(t *rapid.T) {
		p, m, found := walked(t)
		if found == nil {
			return
		}
		best := found.clone()
		best.value.finish += int64(rapid.IntRange(0, 6).Draw(t, "later"))
		eased := m.eased()
		r := &raiser{m: eased, full: m, low: eased.lower(false), loose: infinite}
		low := r.low
		r.run(t.Context(), best, 3000)
		if r.low > found.value.finish {
			t.Fatalf("bound %d, a plan ends at %d: %+v", r.low, found.value.finish, p)
		}
		if r.low > low {
			raised++
		}
	})
	if raised == 0 {
		t.Error("no bound was raised")
	}
}

// TestOneMoreMachineIsSetUp: two of 10 at machines that take 9 to set up, two
// machines and two people: side by side one is set up for each, 19, one after
// the other 29. With what comes before, 5 for one of them, the other's person is
// free and yet sets up no sooner: 5 + 19.
func TestOneMoreMachineIsSetUp(t *testing.T) {
	p := Problem{
		Kinds:    []Kind{{Attributes: []Attribute{{Change: [][]int64{{0}}, First: []int64{9}}}}},
		Machines: make([]Machine, 2),
		People:   []Person{{Skills: []int{1}}, {Skills: []int{1}}},
	}
	need := []Need{{}}
	for range 2 {
		p.Tasks = append(p.Tasks, Task{Time: 10, Setting: []int{0}, Needs: need})
	}
	for _, want := range []int64{19, 24} {
		r, err := Solve(t.Context(), p, Options{})
		if err != nil || r.Finish != want || !r.Proved {
			t.Errorf("%d, proved %t, want %d (%v)", r.Finish, r.Proved, want, err)
		}
		p.Tasks = append(p.Tasks, Task{Time: 5, Kind: None, Needs: need})
		p.Tasks[0].After, p.Tasks[1].After = []int{2}, []int{2}
	}
}

// TestSettingAgainIsProved: one after the other 10 each, set to 0, 1 and 0 again,
// 4 from nothing, 5 from 0 to 1 and 6 back: 30 + 4 + 5 + 6. First settings alone
// come to 39 at most.
func TestSettingAgainIsProved(t *testing.T) {
	p := Problem{
		Kinds:    []Kind{{Attributes: []Attribute{{Change: [][]int64{{0, 5}, {6, 0}}, First: []int64{4, 4}}}}},
		Machines: make([]Machine, 1),
		People:   []Person{{Skills: []int{1}}},
	}
	for i, v := range []int{0, 1, 0} {
		k := Task{Time: 10, Setting: []int{v}, Needs: []Need{{}}}
		if i > 0 {
			k.After = []int{i - 1}
		}
		p.Tasks = append(p.Tasks, k)
	}
	m := compile(p)
	w := newBrancher(t.Context(), m, worst, 0, 20_000)
	if !w.run() || w.found.value.finish != 45 {
		t.Fatalf("the best ends at %d, want 45", w.found.value.finish)
	}
	best := w.found.clone()
	best.value.finish += 3
	eased := m.eased()
	r := &raiser{m: eased, full: m, low: eased.lower(false), loose: infinite}
	if r.low > 39 {
		t.Errorf("at first the bound is %d, want 39 at most", r.low)
	}
	if r.run(t.Context(), best, 3000); r.low != 45 {
		t.Errorf("bound raised to %d, want 45", r.low)
	}
}

// TestLoadsRefuseAtOnce: four of 6 for two people, one at half the pace, in 15:
// they do 15 and 7.5 of 24. Each of the four has room for itself; that there is
// none for all is seen without any trial.
func TestLoadsRefuseAtOnce(t *testing.T) {
	p := Problem{People: []Person{{Skills: []int{1}}, {Skills: []int{1}, Pace: 200}}}
	for range 4 {
		p.Tasks = append(p.Tasks, Task{Time: 6, Kind: None, Needs: []Need{{}}})
	}
	m := compile(p)
	d := newDecoder(m).run(m.sorted(), nil, nil)
	s := newTimetable(m, 15, d, m.setting).s
	if got := s.search(t.Context(), nil, 1); got != impossible || s.depth() > 0 {
		t.Errorf("in 15: %v after trials, want %v at once", got, impossible)
	}
	if got := newTimetable(m, 18, d, m.setting).s.search(t.Context(), nil, 1000); got != possible {
		t.Errorf("in 18, three and one: %v, want %v", got, possible)
	}
}

// TestHandsAndSettingUpCountBetween: after one task and before another lie six
// of 10 each for three people. Two of them are handed what they begin with, and
// hand on what they end with, 4 each time: 80 + 2×4 of 3×far. At machines that
// take 9 to set up, one is 9 + 60 long, too long by far, two are 2×9 + 60 of
// work for the people: 94 of 3×far.
func TestHandsAndSettingUpCountBetween(t *testing.T) {
	p := Problem{Handover: 4}
	for range 3 {
		p.People = append(p.People, Person{Skills: []int{1}})
	}
	need := []Need{{}}
	p.Tasks = append(p.Tasks, Task{Time: 1, Kind: None, Needs: need})
	for range 6 {
		p.Tasks = append(p.Tasks, Task{Time: 10, Kind: None, Needs: need, From: []int{0}})
	}
	p.Tasks = append(p.Tasks, Task{Time: 1, Kind: None, Needs: need, From: []int{1, 2, 3, 4, 5, 6}})
	if low, err := LowerBound(p); err != nil || low != 2+(60+4*4+2)/3 {
		t.Errorf("bound %d, want %d (%v)", low, 2+(60+4*4+2)/3, err)
	}
	p.Kinds = []Kind{{Attributes: []Attribute{{Change: [][]int64{{0}}, First: []int64{9}}}}}
	p.Machines = slices.Repeat([]Machine{{}}, 2)
	for i := range p.Tasks[1:7] {
		p.Tasks[i+1].Kind, p.Tasks[i+1].Setting = 0, []int{0}
	}
	r, err := Solve(t.Context(), p, Options{Nodes: NoSearch})
	if err != nil || r.Bound < 2+(60+18+4*4+2)/3 {
		t.Errorf("bound %d, want at least %d (%v)", r.Bound, 2+(60+18+4*4+2)/3, err)
	}
}
