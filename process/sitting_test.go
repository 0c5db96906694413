package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

// A sitting has every operation of each garment once, keeps all that they wait
// for, and costs no more than one garment after the other; with two alike
// garments in two colours no colour is threaded more often than for one.
func TestSitting(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct {
		garments []string
		machines []string
	}{
		{[]string{"shell-top", "shell-top"}, []string{"straight-stitcher"}},
		{[]string{"shell-top", "pull-on-skirt"}, []string{"straight-stitcher", "overlocker-3"}},
		{[]string{"shell-top", "open-jacket"}, []string{"straight-stitcher", "straight-stitcher"}},
		{[]string{"apron", "pull-on-skirt", "circle-skirt"}, []string{"straight-stitcher"}},
	} {
		name := strings.Join(tt.garments, " and ")
		w := roomOf("steam", tt.machines...)
		var ins []process.Input
		for _, garment := range tt.garments {
			g, err := templates.Load(garment)
			if err != nil {
				t.Fatal(err)
			}
			ins = append(ins, process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g, Workroom: w, Shelf: shelf})
		}
		s, err := process.Sit(t.Context(), ins, order.Options{Nodes: 50_000})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		joint := &process.Plan{Stations: s.Stations, Operations: s.Operations, Steps: s.Steps, Changes: s.Changes,
			Checks: s.Checks, Order: s.Order, Totals: s.Totals, Quantity: 1}
		checkOrder(t, joint)
		checkCost(t, joint, w, shelf)
		var have, want []string
		for _, o := range s.Operations {
			if o.Does != "test" || o.Seam != "" {
				have = append(have, o.ID)
			}
		}
		checks := 0
		for k, g := range s.Garments {
			for _, o := range g.Plan.Operations {
				if o.Does != "test" || o.Seam != "" {
					want = append(want, string(rune('1'+k))+"/"+o.ID)
				}
			}
			checks += len(g.Plan.Checks)
		}
		slices.Sort(have)
		slices.Sort(want)
		if !slices.Equal(have, want) {
			t.Errorf("%s: operations %v, want %v", name, have, want)
		}
		if len(s.Checks) != checks {
			t.Errorf("%s: %d checks, want %d", name, len(s.Checks), checks)
		}
		if s.Order.ChangeMinutes > s.InTurn+1e-6 && s.Order.Proved {
			t.Errorf("%s: %.2f minutes of change together, %.2f in turn", name, s.Order.ChangeMinutes, s.InTurn)
		}
		if tt.garments[0] == tt.garments[1] && s.Totals.ThreadChanges > s.Garments[0].Plan.Totals.ThreadChanges {
			t.Errorf("%s: %d changes of thread, %d for one", name, s.Totals.ThreadChanges, s.Garments[0].Plan.Totals.ThreadChanges)
		}
		if s.Garments[0].Label == s.Garments[1].Label {
			t.Errorf("%s: both are called %q", name, s.Garments[0].Label)
		}
	}
}
