package process_test

import (
	"errors"
	"slices"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

func workOn(t testing.TB, in process.Input) *process.Plan {
	t.Helper()
	p, err := process.Work(t.Context(), in, order.Options{Nodes: 200_000})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// brokenOff breaks a plan off after a step and plans the rest: what was paid
// before and what is paid after cost no more than the whole, every operation
// stands in one of the parts, and the paper held is referred to rightly.
func brokenOff(t *testing.T, in process.Input, whole *process.Plan, upto int) {
	t.Helper()
	var done []string
	paid := 0.0
	for _, s := range whole.Steps[:upto] {
		done = append(done, s.Operations...)
	}
	for _, c := range whole.Changes {
		if c.BeforeStep <= upto {
			paid += c.Minutes
		}
	}
	in.Begun = whole.Begin(done)
	rest := workOn(t, in)
	checkOrder(t, rest)
	checkCost(t, rest, in.Workroom, in.Shelf)
	if got := paid + rest.Order.ChangeMinutes; got > whole.Order.ChangeMinutes+1e-6 {
		t.Errorf("%s broken off after step %d: %.2f minutes of change and %.2f, the whole %.2f", in.Garment.Name, upto, paid, rest.Order.ChangeMinutes, whole.Order.ChangeMinutes)
	}
	checkPaper(t, whole, rest)
	for _, o := range rest.Operations {
		if slices.Contains(done, o.ID) {
			t.Errorf("%s: %s is done, and planned again", in.Garment.Name, o.ID)
		}
	}
	if got, want := len(rest.Operations)+len(done), len(whole.Operations); got != want {
		t.Errorf("%s broken off after step %d: %d operations in both parts, want %d", in.Garment.Name, upto, got, want)
	}
}

// Wherever the work is broken off, the rest is planned so that the whole costs
// no more than it would have: what was paid before, and what is paid after, add
// up to the plan that was never broken off.
func TestResumed(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		room := rooms()[3]
		in := process.Input{Job: jobFor(g, "cotton-lawn", "cotton-poplin"), Garment: g, Workroom: room, Shelf: shelf}
		whole := workOn(t, in)
		if !whole.Order.Proved {
			continue
		}
		for _, upto := range []int{1, len(whole.Steps) / 2, len(whole.Steps) - 1} {
			brokenOff(t, in, whole, upto)
		}
		in.Begun = whole.Begin([]string{whole.Operations[len(whole.Operations)-1].ID})
		for _, o := range whole.Operations {
			for _, a := range o.After {
				if slices.Contains(in.Begun.Done, o.ID) && !slices.Contains(in.Begun.Done, a.ID) {
					t.Errorf("%s: %s is done, but not %s that it waits for", name, o.ID, a.ID)
				}
			}
		}
		var all []string
		for _, o := range whole.Operations {
			all = append(all, o.ID)
		}
		in.Begun = whole.Begin(all)
		if _, err := process.Work(t.Context(), in, order.Options{}); !isDone(err) {
			t.Errorf("%s with everything done: %v", name, err)
		}
	}
}

func isDone(err error) bool {
	_, ok := errors.AsType[*process.DoneError](err)
	return ok
}

// checkPaper looks the steps of the rest up on the paper of the whole: each names
// just those that held its operations.
func checkPaper(t *testing.T, whole, rest *process.Plan) {
	t.Helper()
	for _, s := range rest.Steps {
		if len(s.Paper) == 0 {
			t.Errorf("step %d does not say which step it was", s.Number)
		}
		for _, n := range whole.Steps {
			held := slices.ContainsFunc(n.Operations, func(id string) bool { return slices.Contains(s.Operations, id) })
			if held != slices.Contains(s.Paper, n.Number) {
				t.Errorf("step %d says it was %v; that it shares work with step %d is %v", s.Number, s.Paper, n.Number, held)
			}
		}
	}
}
