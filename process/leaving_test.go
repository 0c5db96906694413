package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// A machine that is to be left in a colour is left in it: the last thing done at
// it, paid only where the last row was in another colour.
func TestLeftAsTheRoomWants(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	j := jobFor(g, "quilting-cotton", "cotton-lawn")
	room := func(threaded, leave string) *process.Workroom {
		w := roomOf("steam", "straight-stitcher", "overlocker-4")
		w.Machines[1].Threaded, w.Machines[1].Leave = threaded, leave
		w.Machines[0].Foot = text("zip foot")
		return w
	}
	cost := map[string]float64{}
	for _, tt := range []struct{ threaded, leave string }{{"", ""}, {"white", "white"}, {"reed green", "reed green"}, {"", "white"}} {
		w := room(tt.threaded, tt.leave)
		p := plan(t, j, w, shelf)
		checkOrder(t, p)
		checkCost(t, p, w, shelf)
		checkWords(t, p)
		cost[tt.threaded+">"+tt.leave] = p.Order.ChangeMinutes
		var there []process.Operation
		for _, o := range p.Operations {
			if o.Station == "overlocker-4" {
				there = append(there, o)
			}
		}
		if last := there[len(there)-1]; tt.leave != "" && (last.ID != "leave.overlocker-4" || last.Setting.Thread != tt.leave) {
			t.Errorf("%v: the last at the overlocker is %s in %s", tt, last.ID, last.Setting.Thread)
		}
		if tt.leave == "" && slices.ContainsFunc(there, func(o process.Operation) bool { return strings.HasPrefix(o.ID, "leave.") }) {
			t.Errorf("%v: nobody asked how it is left", tt)
		}
	}
	m, err := shelf.Machine("overlocker-4")
	if err != nil {
		t.Fatal(err)
	}
	// White at both ends round seams in green takes two changes, green none.
	if got, want := cost["white>white"]-cost["reed green>reed green"], 2*m.Minutes.Thread; got < want-1e-6 || got > want+1e-6 {
		t.Errorf("white at both ends costs %.2f minutes more, want %.2f", got, want)
	}
	if cost[">white"] > cost["white>white"]+1e-9 {
		t.Errorf("unthreaded at first it costs %.2f, in white %.2f", cost[">white"], cost["white>white"])
	}
}
