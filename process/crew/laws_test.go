package crew_test

import (
	"context"
	"slices"
	"testing"

	"bodkin/process/crew"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// drawn is a problem of up to n tasks with all that a problem may have.
func drawn(t *rapid.T, n, most int64) crew.Problem {
	draw := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
	p := crew.Problem{Handover: int64(draw("handover", 0, 2))}
	for range draw("kinds", 0, 1) {
		p.Kinds = []crew.Kind{{}}
		for range draw("attributes", 0, 1) {
			a := crew.Attribute{Change: [][]int64{{0, 1}, {2, 0}}}
			if draw("first", 0, 1) == 1 {
				a.First = []int64{1, 0}
			}
			p.Kinds[0].Attributes = append(p.Kinds[0].Attributes, a)
		}
		for range draw("machines", 1, 2) {
			m := crew.Machine{}
			if len(p.Kinds[0].Attributes) > 0 && draw("started", 0, 1) == 1 {
				m.Start = []int{draw("start", -1, 1)}
			}
			p.Machines = append(p.Machines, m)
		}
	}
	for range draw("resources", 0, 1) {
		p.Resources = []int64{int64(draw("capacity", 1, 3))}
	}
	for range draw("people", 1, 2) {
		q := crew.Person{Skills: []int{1, draw("skill", 0, 2)}, Pace: 50 * draw("pace", 0, 3)}
		if draw("timed", 0, 3) == 0 {
			from := int64(draw("from", 0, 3))
			q.Hours = []crew.Span{{From: from, Until: from + int64(draw("long", 4, 8))}}
			if draw("break", 0, 1) == 1 {
				back := q.Hours[0].Until + 1
				q.Hours = append(q.Hours, crew.Span{From: back, Until: back + 40})
			}
		}
		p.People = append(p.People, q)
	}
	for i := range draw("tasks", 1, int(n)) {
		task := crew.Task{Time: int64(draw("time", 1, int(most))), Kind: crew.None}
		if draw("needs", 0, 5) > 0 {
			task.Needs = []crew.Need{{Skill: draw("needed", 0, 1), Level: draw("level", 0, 1)}}
			if draw("two", 0, 4) == 0 {
				task.Needs = append(task.Needs, crew.Need{Skill: 0})
			}
		}
		if len(p.Kinds) > 0 && draw("machined", 0, 2) > 0 {
			task.Kind = 0
			if len(p.Kinds[0].Attributes) > 0 {
				task.Setting = []int{draw("setting", -1, 1)}
			}
		}
		if len(p.Resources) > 0 {
			task.Uses = []int64{int64(draw("uses", 0, int(p.Resources[0])))}
		}
		for b := range i {
			switch draw("arc", 0, 5) {
			case 0:
				task.After = append(task.After, b)
			case 1:
				task.From = append(task.From, b)
			}
		}
		p.Tasks = append(p.Tasks, task)
	}
	return p
}

// solved solves a problem that is small enough to be proved; false where
// nobody can do some task.
func solved(t *rapid.T, p crew.Problem) (crew.Result, bool) {
	r, err := crew.Solve(context.Background(), p, crew.Options{})
	if _, ok := err.(*crew.NobodyError); ok {
		return r, false
	}
	if err != nil {
		t.Fatal(err)
	}
	if !r.Proved || !r.Fewest {
		t.Fatalf("not proved: %+v", r)
	}
	if r.Places != nil {
		finish, hands, err := sound(p, r.Places)
		if err != nil || finish != r.Finish || hands != r.Handovers {
			t.Fatalf("finish %d, hand-overs %d, %v; said %+v", finish, hands, err, r)
		}
	}
	low, err := crew.LowerBound(p)
	if err != nil || r.Places != nil && low > r.Finish {
		t.Fatalf("bound %d above finish %d, %v", low, r.Finish, err)
	}
	return r, true
}

// brute tries all begins, people and machines, and has the independent checker
// judge each plan. It returns the soonest finish up to last and the fewest
// hand-overs with it.
func brute(p crew.Problem, last int64) (finish int64, hands int, ok bool) {
	places := make([]crew.Place, len(p.Tasks))
	finish, hands = last+1, 0
	var try func(i int)
	try = func(i int) {
		if i == len(p.Tasks) {
			settle(p, places)
			f, h, err := sound(p, places)
			if err == nil && (f < finish || f == finish && h < hands) {
				finish, hands, ok = f, h, true
			}
			return
		}
		for team := range 1 << len(p.People) {
			var people []int
			for q := range p.People {
				if team>>q&1 == 1 {
					people = append(people, q)
				}
			}
			if staffed(p, p.Tasks[i], people) != nil {
				continue
			}
			machines := []int{crew.None}
			if p.Tasks[i].Kind != crew.None {
				machines = nil
				for q := range p.Machines {
					machines = append(machines, q)
				}
			}
			for _, machine := range machines {
				for begin := int64(0); begin < finish; begin++ {
					places[i] = crew.Place{Begin: begin, People: people, Machine: machine}
					try(i + 1)
				}
			}
		}
	}
	try(0)
	return finish, hands, ok
}

// settle gives places their times for setting up, from their begins.
func settle(p crew.Problem, places []crew.Place) {
	state := make([][]int, len(p.Machines))
	for q, m := range p.Machines {
		if state[q] = slices.Clone(m.Start); m.Start == nil {
			state[q] = slices.Repeat([]int{crew.Unset}, len(p.Kinds[0].Attributes))
		}
	}
	list := make([]int, len(places))
	for i := range list {
		list[i] = i
	}
	slices.SortStableFunc(list, func(i, j int) int { return int(places[i].Begin - places[j].Begin) })
	for _, i := range list {
		at, task := &places[i], p.Tasks[i]
		at.Work = at.Begin
		for a, v := range task.Setting {
			attribute, s := p.Kinds[0].Attributes[a], state[at.Machine]
			if v != crew.Any && v != s[a] {
				if s[a] != crew.Unset {
					at.Work += attribute.Change[s[a]][v]
				} else if attribute.First != nil {
					at.Work += attribute.First[v]
				}
				s[a] = v
			}
		}
		pace := int64(0)
		for _, q := range at.People {
			pace = max(pace, int64(p.People[q].Pace))
			if p.People[q].Pace == 0 {
				pace = max(pace, 100)
			}
		}
		if len(at.People) == 0 {
			pace = 100
		}
		at.End = at.Work + (task.Time*pace+99)/100
	}
}

func TestBestEqualsBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t, 3, 2)
		r, ok := solved(t, p)
		if !ok {
			return
		}
		last := int64(14)
		if r.Places != nil {
			last = r.Finish
		}
		finish, hands, found := brute(p, last)
		if r.Places == nil {
			if found {
				t.Fatalf("a plan that ends at %d was not found", finish)
			}
			return
		}
		if quick, err := crew.Solve(context.Background(), p, crew.Options{Nodes: crew.NoSearch}); err != nil || quick.Bound > finish {
			t.Fatalf("without search the bound is %d, the best ends at %d (%v)", quick.Bound, finish, err)
		}
		if !found || finish != r.Finish || hands != r.Handovers {
			t.Fatalf("got %d with %d hand-overs, brute force %d with %d (%v)", r.Finish, r.Handovers, finish, hands, found)
		}
	})
}

func TestMorePeopleAreNeverLater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t, 6, 5)
		one, ok := solved(t, p)
		if !ok || one.Places == nil {
			return
		}
		p.People = append(p.People, crew.Person{Skills: []int{1, rapid.IntRange(0, 2).Draw(t, "skill of one more")}})
		two, _ := solved(t, p)
		if two.Finish > one.Finish {
			t.Fatalf("%d with one more, %d without", two.Finish, one.Finish)
		}
	})
}

func TestOneMoreArrowIsNeverEarlier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t, 6, 5)
		free, ok := solved(t, p)
		if !ok || free.Places == nil || len(p.Tasks) < 2 {
			return
		}
		i := rapid.IntRange(1, len(p.Tasks)-1).Draw(t, "later")
		p.Tasks[i].After = append(p.Tasks[i].After, rapid.IntRange(0, i-1).Draw(t, "earlier"))
		bound, _ := solved(t, p)
		if bound.Places != nil && bound.Finish < free.Finish {
			t.Fatalf("%d with one more arrow, %d without", bound.Finish, free.Finish)
		}
	})
}

func TestOtherNumbersChangeNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t, 6, 5)
		was, ok := solved(t, p)
		n := len(p.Tasks)
		to := rapid.Permutation(numbers(n)).Draw(t, "tasks")
		who := rapid.Permutation(numbers(len(p.People))).Draw(t, "people")
		q := p
		q.Tasks, q.People = make([]crew.Task, n), make([]crew.Person, len(p.People))
		for i, task := range p.Tasks {
			task.After, task.From = slices.Clone(task.After), slices.Clone(task.From)
			for k := range task.After {
				task.After[k] = to[task.After[k]]
			}
			for k := range task.From {
				task.From[k] = to[task.From[k]]
			}
			q.Tasks[to[i]] = task
		}
		for i, person := range p.People {
			q.People[who[i]] = person
		}
		now, ok2 := solved(t, q)
		if ok != ok2 || was.Finish != now.Finish || was.Handovers != now.Handovers || (was.Places == nil) != (now.Places == nil) {
			t.Fatalf("%d with %d hand-overs, other numbers: %d with %d", was.Finish, was.Handovers, now.Finish, now.Handovers)
		}
	})
}

func numbers(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

func TestPlansAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t, 20, 9)
		o := crew.Options{Nodes: rapid.SampledFrom([]int{crew.NoSearch, 1, 300}).Draw(t, "nodes")}
		r, err := crew.Solve(context.Background(), p, o)
		if _, ok := err.(*crew.NobodyError); ok {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if r.Places != nil {
			finish, hands, err := sound(p, r.Places)
			if err != nil || finish != r.Finish || hands != r.Handovers || r.Bound > finish {
				t.Fatalf("finish %d, hand-overs %d, %v; said %+v", finish, hands, err, r)
			}
			account, err := crew.Check(p, r.Places)
			if err != nil || account.Finish != finish || len(account.Handed) != hands {
				t.Fatalf("checked: %+v, %v", account, err)
			}
		}
		again, err := crew.Solve(context.Background(), p, o)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(r, again); diff != "" {
			t.Fatalf("a second time otherwise:\n%s", diff)
		}
	})
}
