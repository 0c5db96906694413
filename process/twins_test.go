package process_test

import (
	"slices"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/templates"
)

// Two machines of one kind, two colours that come in turns, and threading is dear:
// each keeps its own, and nothing is rethreaded. Where that takes no more than
// threading a second machine one is enough, but no order takes longer for there
// being a second. The laws of a plan hold, looked at by code of the tests' own.
func TestTwoMachinesOfOneKind(t *testing.T) {
	shelf := loadShelf(t)
	one, two := roomOf("steam", "straight-stitcher"), roomOf("steam", "straight-stitcher", "straight-stitcher")
	for k, name := range []string{"open-jacket", "shell-top", "open-jacket", "circle-skirt"} {
		dear := k == 0
		one.Minutes.Thread, two.Minutes.Thread = form.Text{}, form.Text{}
		if dear {
			one.Minutes.Thread, two.Minutes.Thread = text("12"), text("12")
		}
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		alone := plan(t, jobFor(g, "cotton-poplin", "cotton-lawn"), one, shelf)
		p := plan(t, jobFor(g, "cotton-poplin", "cotton-lawn"), two, shelf)
		checkOrder(t, p)
		if !dear { // the replay knows the shelf's own minutes
			checkCost(t, p, two, shelf)
		}
		checkSeams(t, p, shelf)
		checkWords(t, p)
		if p.Order.ChangeMinutes > alone.Order.ChangeMinutes+1e-9 {
			t.Errorf("%s: %.2f minutes of change with two machines, %.2f with one", name, p.Order.ChangeMinutes, alone.Order.ChangeMinutes)
		}
		colours := map[string][]string{}
		for _, o := range p.Operations {
			if th := o.Setting.Thread; th != "" && !slices.Contains(colours[o.Station], th) {
				colours[o.Station] = append(colours[o.Station], th)
			}
		}
		if n := p.Totals.ThreadChanges; n > 0 && dear {
			t.Errorf("%s: %d rethreadings with two machines: %v", name, n, colours)
		}
	}
}

// A machine that is threaded already is taken for its colour.
func TestThreadedMachineIsTakenForItsColour(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	room := roomOf("steam", "straight-stitcher", "straight-stitcher")
	room.Minutes.Thread = text("12")
	room.Machines[0].Threaded, room.Machines[1].Threaded = "dusk blue", "reed green"
	p := plan(t, jobFor(g, "cotton-poplin", "cotton-lawn"), room, shelf)
	for _, c := range p.Changes {
		if c.What == "thread" {
			t.Errorf("before step %d %s is threaded from %s to %s", c.BeforeStep, c.Station, c.From, c.To)
		}
	}
	if !slices.ContainsFunc(p.Operations, func(o process.Operation) bool {
		return o.Station == "straight-stitcher-2" && o.Setting.Thread == "reed green"
	}) {
		t.Error("the machine threaded with reed green sews nothing in it")
	}
}

// BenchmarkTwoMachines plans a top in two colours with two machines of one kind.
func BenchmarkTwoMachines(b *testing.B) {
	shelf := loadShelf(b)
	g, err := templates.Load("shell-top")
	if err != nil {
		b.Fatal(err)
	}
	in := process.Input{Job: jobFor(g, "cotton-poplin", "cotton-lawn"), Garment: g, Shelf: shelf,
		Workroom: roomOf("steam", "straight-stitcher", "straight-stitcher", "overlocker-3", "overlocker-3")}
	for b.Loop() {
		p, err := process.Work(b.Context(), in, order.Options{})
		if err != nil || !p.Order.Proved {
			b.Fatal(err)
		}
	}
}
