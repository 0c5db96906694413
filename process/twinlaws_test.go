package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// With two straight stitchers the order says which does what: never dearer than
// with the first of them alone, each tried before it sews, each left as the room
// wants it; and where each holds one of the two colours nothing is rethreaded.
func TestTwoMachinesOfAKind(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range []string{"shell-top", "open-jacket"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, "silk-georgette", "silk-satin")
		for _, tt := range []struct{ threaded, leave [2]string }{
			{},
			{threaded: [2]string{"reed green", "dusk blue"}},
			{threaded: [2]string{"dusk blue", "reed green"}, leave: [2]string{"", "white"}},
			{threaded: [2]string{"black", "white"}, leave: [2]string{"white", "black"}},
		} {
			w := roomOf("steam", "straight-stitcher", "straight-stitcher")
			for k := range w.Machines {
				w.Machines[k].Threaded, w.Machines[k].Leave = tt.threaded[k], tt.leave[k]
			}
			p := plan(t, j, w, shelf)
			checkOrder(t, p)
			checkCost(t, p, w, shelf)
			checkWords(t, p)
			if !p.Order.Proved {
				t.Errorf("%s %v: not proved", name, tt)
			}
			one := roomOf("steam", "straight-stitcher")
			one.Machines[0] = w.Machines[0]
			if p1 := plan(t, j, one, shelf); p.Order.ChangeMinutes > p1.Order.ChangeMinutes+1e-6 {
				t.Errorf("%s %v: %.2f minutes of change with two machines, %.2f with one", name, tt, p.Order.ChangeMinutes, p1.Order.ChangeMinutes)
			}
			if tt.leave == [2]string{} && tt.threaded[0] == "reed green" && p.Totals.ThreadChanges != 0 {
				t.Errorf("%s: both colours are threaded, and %d times changed", name, p.Totals.ThreadChanges)
			}
			checkTriedAndLeft(t, p, tt.leave)
		}
	}
}

func checkTriedAndLeft(t *testing.T, p *process.Plan, leave [2]string) {
	t.Helper()
	for k, name := range []string{"straight-stitcher", "straight-stitcher-2"} {
		var there []process.Operation
		for _, o := range p.Operations {
			if o.Station == name {
				there = append(there, o)
			}
		}
		if len(there) == 0 {
			continue
		}
		if there[0].ID != "test."+name {
			t.Errorf("the first at %s is %s", name, there[0].ID)
		}
		last := there[len(there)-1]
		if leave[k] != "" && (last.ID != "leave."+name || last.Setting.Thread != leave[k]) {
			t.Errorf("the last at %s is %s in %s, want it left in %s", name, last.ID, last.Setting.Thread, leave[k])
		}
		if leave[k] == "" && slices.ContainsFunc(there, func(o process.Operation) bool { return strings.HasPrefix(o.ID, "leave.") }) {
			t.Errorf("nobody asked how %s is left", name)
		}
	}
}

// Work that is broken off at two machines goes on at both: no machine is tried
// again, and the whole costs no more than it would have.
func TestTwoMachinesResumed(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	w := roomOf("steam", "straight-stitcher", "straight-stitcher")
	w.Machines[0].Threaded, w.Machines[1].Threaded = "dusk blue", "reed green"
	in := process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: w, Shelf: shelf}
	whole := workOn(t, in)
	for upto := 1; upto < len(whole.Steps); upto += 4 {
		brokenOff(t, in, whole, upto)
	}
}
