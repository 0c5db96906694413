package process_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
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
	if got, want := cost["white>white"]-cost["reed green>reed green"], 2*(m.Minutes.Thread+m.Minutes.Loopers); got < want-1e-6 || got > want+1e-6 {
		t.Errorf("white at both ends costs %.2f minutes more, want %.2f", got, want)
	}
	if cost[">white"] > cost["white>white"]+1e-9 {
		t.Errorf("unthreaded at first it costs %.2f, in white %.2f", cost[">white"], cost["white>white"])
	}
}

// What a job says of a machine goes over what the workroom says: the plan is that
// of a room which says so itself. A machine or a foot that is not there is a fault
// at its place.
func TestMachinesAsTheJobFindsThem(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	said, silent := jobFor(g, "quilting-cotton", "cotton-lawn"), jobFor(g, "quilting-cotton", "cotton-lawn")
	said.Machines = form.Pairs[process.Standing]{
		{Key: text("overlocker-4"), Value: process.Standing{Threaded: "white", Leave: "white"}},
		{Key: text("By the window"), Value: process.Standing{Foot: text("zip foot")}},
	}
	plain, told := roomOf("steam", "straight-stitcher", "overlocker-4"), roomOf("steam", "straight-stitcher", "overlocker-4")
	plain.Machines[0].Name, told.Machines[0].Name = "By the window", "By the window"
	plain.Machines[1].Threaded = "navy" // the job knows better
	told.Machines[1].Threaded, told.Machines[1].Leave, told.Machines[0].Foot = "white", "white", text("zip foot")
	if diff := cmp.Diff(plan(t, silent, told, shelf), plan(t, said, plain, shelf)); diff != "" {
		t.Errorf("(-room says +job says)\n%s", diff)
	}
	for _, tt := range []struct{ machines, want string }{
		{"machines: {overloker-4: {threaded: white}}", `job.yaml:2:12: no machine "overloker-4" in the workroom`},
		{"machines: {straight-stitcher: {foot: zipper foot}}", `job.yaml:2:38: straight-stitch machine has no "zipper foot"`},
	} {
		j, err := process.ParseJob("job.yaml", []byte("make: shell-top\n"+tt.machines+"\n"))
		if err != nil {
			t.Fatal(err)
		}
		j.Cloth = said.Cloth
		_, err = process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: roomOf("steam", "straight-stitcher", "overlocker-4"), Shelf: shelf}, order.Options{})
		if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.Contains(err.Error(), "did you mean") {
			t.Errorf("%s: error %v", tt.machines, err)
		}
	}
}
