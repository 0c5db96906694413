package process_test

import (
	"math"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

func timedRoom(t *testing.T, more string) *process.Workroom {
	t.Helper()
	w, err := process.ParseWorkroom("room.yaml", []byte(`machines: [{is: straight-stitcher}]
iron: steam
people:
  - {name: Ada, can: {press: 3, cut: 3, pin: 3, straight: 3, curves: 3, delicate: 3, hand: 3, fitting: 3}, from: "9:00", until: "17:00"}
`+more))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestTimedActs: what a clock saw stretches every operation of that act alike
// and no other. Pinning on the shelf takes 0.2 min and 1.2 min a metre, so 60 cm
// take 0.92; seen are 1.15 and 1.15 min at a rating of 80, which is 0.92 again,
// and twice that at a rating of 160.
func TestTimedActs(t *testing.T) {
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	minutes := func(timed string) *process.Plan {
		in := process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g, Workroom: timedRoom(t, timed), Shelf: loadShelf(t)}
		p, err := process.Work(t.Context(), in, order.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	plain := map[string]float64{}
	for _, o := range minutes("").Operations {
		plain[o.ID] = o.Minutes
	}
	for _, tt := range []struct {
		timed string
		times float64
	}{
		{"timed: [{act: pin, over: 60 cm, seen: [1.15 min, 69 s], rating: 80}]\n", 1},
		{"timed: [{act: pin, over: 60 cm, seen: [1.15 min, 69 s], rating: 160}]\n", 2},
		{"timed: [{act: pin, over: 60 cm, seen: [1.15 min]}]\n", 1.25},
	} {
		pinned := false
		for _, o := range minutes(tt.timed).Operations {
			want := plain[o.ID]
			if o.Does == "pin" {
				want *= tt.times
				pinned = true
				if !strings.Contains(o.Basis, "timed in this workroom over 60 cm") {
					t.Errorf("%s rests on %q", o.ID, o.Basis)
				}
			}
			if math.Abs(o.Minutes-want) > 1e-6 {
				t.Errorf("%s: %s takes %g min, want %g", tt.timed, o.ID, o.Minutes, want)
			}
		}
		if !pinned {
			t.Error("nothing is pinned")
		}
	}
}

// TestRestsInSharedWork: alone, with rests on everything and no machine in hand,
// the day grows by as much; on the hands alone it grows by less, since stitching
// has none.
func TestRestsInSharedWork(t *testing.T) {
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	busy := func(rests string) float64 {
		in := process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g, Workroom: timedRoom(t, rests), Shelf: loadShelf(t)}
		s, err := process.ShareOut(t.Context(), in, 1)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, turn := range s.People[0].Turns {
			sum += turn.End - turn.Work
		}
		return sum
	}
	none, all, hands := busy(""), busy("rests: {all: 20}\n"), busy("rests: {hands: 20}\n")
	slack := 0.1 * 60 // a tenth of a minute for each of the operations at most
	if math.Abs(all-1.2*none) > slack {
		t.Errorf("work of %g min grows to %g with 20 in a hundred on everything", none, all)
	}
	if hands <= none || hands >= all {
		t.Errorf("work of %g min, %g with rests for the hands, %g with rests on everything", none, hands, all)
	}
}

func TestWrongTiming(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"timed: [{act: pin, over: 60 cm, seen: [fast]}]", `1:40: cannot read "fast" as what a clock showed`},
		{"timed: [{act: pin, over: 60 cm, seen: []}]", `"pin" was not seen once`},
		{"timed: [{act: pin, over: 0 cm, seen: [70 s]}]", "over no length"},
		{"timed: [{act: pin, over: 60 cm, seen: [70 s], rating: brisk}]", `1:55: cannot read "brisk" as a rating`},
		{"timed: [{act: pin, over: 60 cm, seen: [70 s]}, {act: pin, over: 1 m, seen: [70 s]}]", `"pin" is timed twice`},
		{"rests: {hands: 1100}", `1:16: cannot read "1100" as rests`},
		{"rests: {all: NaN}", `cannot read "NaN" as rests`},
	} {
		_, err := process.ParseWorkroom("room.yaml", []byte(tt.text))
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want %q", tt.text, err, tt.want)
		}
	}
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ text, want string }{
		{"timed: [{act: pn, over: 60 cm, seen: [70 s]}]\n", `no act "pn"`},
		{"timed: [{act: pin, over: 60 cm, seen: [70 min]}]\n", "would take 76 times what the shelf has"},
	} {
		in := process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g, Workroom: timedRoom(t, tt.text), Shelf: loadShelf(t)}
		if _, err := process.Work(t.Context(), in, order.Options{}); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want %q", tt.text, err, tt.want)
		}
	}
}
