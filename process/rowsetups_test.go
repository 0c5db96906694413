package process

import (
	"math"
	"testing"

	"bodkin/process/crew/balance"
	"bodkin/seams"
	"bodkin/seams/form"
)

// What setting up costs each garment at a table, added up by hand beside each row: a
// change for every value that differs from the one before at that machine, and at
// the end back to what the next garment wants first. The minutes are invented, a
// number of its own for each thing.
func TestSetupsByHand(t *testing.T) {
	r := &room{begin: -1, house: map[string]float64{}, move: 17, stations: []station{
		{Station: Station{Name: "stitcher", Kind: "machine", Machine: "stitcher"}, minutes: seams.Changes{Thread: 7, Bobbin: 19, Needle: 11, Foot: 5, Stitch: 13}},
		{Station: Station{Name: "overlocker", Kind: "machine", Machine: "overlocker"}, minutes: seams.Changes{Thread: 4, Loopers: 6}},
		{Station: Station{Name: ironStation, Kind: "iron", Machine: ironStation}, minutes: seams.Changes{Hotter: 2, Cooler: 3}},
		{Station: Station{Name: tableStation, Kind: "table"}},
		{Station: Station{Name: handStation, Kind: "hand"}, minutes: seams.Changes{Thread: 1}},
	}}
	sew := func(thread, needle, foot string, mm float64) op {
		return op{station: 0, Operation: Operation{Setting: Setting{Thread: thread, Needle: needle, Foot: foot, Stitch: "301", StitchMM: mm}}}
	}
	over := func(thread, loopers string) op {
		return op{station: 1, Operation: Operation{Setting: Setting{Thread: thread, Loopers: loopers}}}
	}
	bobbin := func(n op, colour string) op {
		n.Setting.Bobbin = colour
		return n
	}
	press := func(dots int) op { return op{station: 2, Operation: Operation{Setting: Setting{HeatDots: dots}}} }
	pin := op{station: 3}
	green, blue := sew("green", "70", "plain", 2), sew("blue", "70", "plain", 2)
	for _, tt := range []struct {
		name string
		ops  []op
		want float64 // minutes
	}{
		{"one row and back to itself", []op{green}, 0},
		{"rows alike", []op{green, pin, green, press(2), green}, 0},
		{"another colour, and back for the next garment", []op{green, blue}, 7 + 7},
		{"two stretches of it", []op{green, blue, green, blue, blue}, 7 + 7 + 7 + 7},
		{"what lies between at another place changes nothing", []op{green, press(1), blue, pin, press(1)}, 7 + 7},
		{"needle, foot and stitch besides", []op{green, sew("green", "80", "plain", 2), sew("green", "80", "zip", 3)}, 11 + 5 + 13 + (11 + 5 + 13)},
		{"all at once", []op{green, sew("blue", "80", "zip", 3)}, 2 * (7 + 11 + 5 + 13)},
		{"what a row does not mind stays", []op{sew("green", "", "", 2), sew("green", "80", "zip", 2), sew("green", "", "", 2)}, 0},
		{"the iron heats by the dot and cools by the dot", []op{press(1), press(3)}, 2*2 + 2*3},
		{"up and down twice", []op{press(1), press(2), press(1), press(3)}, 1*2 + 1*3 + 2*2 + 2*3},
		{"round by way of the middle", []op{press(3), press(2), press(1)}, 1*3 + 1*3 + 2*2},
		{"the loopers stay", []op{over("green", "white"), over("blue", "white")}, 4 + 4},
		{"the loopers change too", []op{over("green", "green"), over("blue", "blue")}, 4 + 6 + (4 + 6)},
		{"thick thread above, the bobbin stays", []op{bobbin(green, "green"), bobbin(sew("thick", "70", "plain", 2), "green")}, 7 + 7},
		{"the bobbin with the needle", []op{bobbin(green, "green"), bobbin(blue, "blue")}, 7 + 19 + (7 + 19)},
		{"by hand", []op{{station: 4, Operation: Operation{Setting: Setting{Thread: "green"}}}, {station: 4, Operation: Operation{Setting: Setting{Thread: "blue"}}}}, 1 + 1},
		{"two machines by themselves", []op{green, over("green", ""), blue, over("green", "")}, 7 + 7},
		{"a sleeveless top with contrasting bindings", []op{green, green, press(3), green, sew("green", "80", "plain", 2.5), green, sew("green", "80", "plain", 2.5),
			sew("blue", "80", "plain", 2.5), green, sew("blue", "80", "plain", 2.5), press(3)}, 4*7 + 6*11 + 6*13},
	} {
		o := &operator{room: r, ops: tt.ops}
		l := balance.Line{}
		var ops, tasks []int
		for i := range tt.ops {
			o.ops[i].line = -1
			l.Times = append(l.Times, 30) // three minutes
			ops, tasks = append(ops, i), append(tasks, i)
		}
		y := &seating{o: o, l: l, ops: ops, people: []RoomPerson{{Name: form.Text{Value: "Ada"}}}}
		_, y.attrs = o.problem()
		if got := minutesFrom(y.setups(tasks)); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%s: %g minutes, want %g", tt.name, got, tt.want)
		}
		// Setting up takes everyone the same; the work goes by the pace.
		for _, pace := range []float64{1, 2} {
			if got, want := minutesFrom(y.takes(tasks, pace)), 3*pace*float64(len(tasks))+tt.want; math.Abs(got-want) > 1e-9 {
				t.Errorf("%s at a pace of %g: %g minutes, want %g", tt.name, pace, got, want)
			}
		}
	}
}
