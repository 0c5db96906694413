package process_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/crew"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/templates"
)

// TestRowsSeatPeople: nobody sits twice, a table takes its operations at her
// pace and its set-ups besides, the row is as quick as its slowest table, and
// what is beyond her is told. Where a room has too few people the row goes at
// the pace of the plan.
func TestRowsSeatPeople(t *testing.T) {
	shelf := loadShelf(t)
	paces := map[string]float64{"": 1, "Ada": 1, "Bea": 1.2, "Cyd": 1.5}
	some := 0 // tables that are set up for each garment
	for _, name := range []string{"shell-top", "a-line-skirt", "pull-on-trousers"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		w := crewOf(t, 3)
		in := process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: w, Shelf: shelf}
		plan, err := process.Work(t.Context(), in, order.Options{Nodes: order.NoSearch})
		if err != nil {
			t.Fatal(err)
		}
		operation := map[string]process.Operation{}
		for _, o := range plan.Operations {
			operation[o.ID] = o
		}
		share, err := process.ShareOut(t.Context(), in, crew.NoSearch)
		if err != nil {
			t.Fatal(err)
		}
		asked := map[string][]process.Asked{}
		for _, b := range share.People {
			for _, turn := range b.Turns {
				asked[turn.Operation.ID] = turn.Asked
			}
		}
		rows, err := process.Row(t.Context(), in, process.Line{Garments: 10, PerHour: 1})
		if err != nil {
			t.Fatal(name, err)
		}
		for _, row := range append([]process.TableRow{*rows.Fewest}, rows.Rows...) {
			slowest, sits := 0.0, map[string]bool{}
			for k, table := range row.Tables {
				at := fmt.Sprintf("%s, table %d of %d", name, k+1, row.People)
				if sits[table.Person] && table.Person != "" || (table.Person == "") != (row.People > 3) {
					t.Errorf("%s: %q sits there, %v before her", at, table.Person, sits)
				}
				sits[table.Person] = true
				slowest = max(slowest, table.Minutes)
				low := table.Setups
				for _, id := range table.Operations {
					low += operation[id].Minutes * paces[table.Person]
				}
				if high := low + 0.4*float64(len(table.Operations)+1); table.Minutes < low-0.06 || table.Minutes > high {
					t.Errorf("%s: takes %g minutes, want %g to %g", at, table.Minutes, low, high)
				}
				changes := changesRound(table, operation)
				if changes == 0 && table.Setups != 0 {
					t.Errorf("%s: %g minutes of set-ups, and nothing changes", at, table.Setups)
				}
				if table.Setups > 0 {
					some++
				}
				for q := range w.People {
					if w.People[q].Name.Value != table.Person {
						continue
					}
					for _, id := range table.Operations {
						told := slices.Contains(row.Lacking, fmt.Sprintf("somebody at table %d for %s", k+1, id))
						if asks := beyond(asked[id], w.People[q]); asks != told {
							t.Errorf("%s: %s beyond %s is %v, told %v", at, id, table.Person, asks, told)
						}
					}
				}
			}
			if math.Abs(slowest-row.Every) > 1e-6 {
				t.Errorf("%s: %d people give one every %g minutes, the slowest table takes %g", name, row.People, row.Every, slowest)
			}
		}
		for _, row := range rows.Rows {
			if row.Bound > row.Every || row.Proved != (row.Bound == row.Every) {
				t.Errorf("%s: %d people give one every %g minutes, the bound is %g, proved %v", name, row.People, row.Every, row.Bound, row.Proved)
			}
		}
		if rows.Fewest.Every > 60 {
			t.Errorf("%s: one an hour was asked for, it gives one every %g minutes", name, rows.Fewest.Every)
		}
	}
	if some == 0 {
		t.Error("no table is set up for each garment")
	}
}

// changesRound counts how often a setting changes at a table from one garment
// to the next.
func changesRound(table process.Table, operation map[string]process.Operation) int {
	changes := 0
	for _, of := range []func(process.Operation) string{
		func(o process.Operation) string { return o.Setting.Thread }, func(o process.Operation) string { return o.Setting.Needle },
		func(o process.Operation) string { return o.Setting.Foot }, func(o process.Operation) string { return o.Setting.Stitch },
		func(o process.Operation) string { return fmt.Sprint(o.Setting.HeatDots) },
		func(o process.Operation) string { return o.Setting.Bobbin }, func(o process.Operation) string { return o.Setting.Loopers },
	} {
		at := map[string][]string{}
		for _, id := range table.Operations {
			o := operation[id]
			kind := strings.TrimRight(o.Station, "-0123456789") // machines of a kind are one at a table
			at[kind] = append(at[kind], of(o))
		}
		for _, values := range at {
			values = slices.DeleteFunc(values, func(v string) bool { return v == "" || v == "0" })
			for i, v := range values {
				if v != values[(i+1)%len(values)] {
					changes++
				}
			}
		}
	}
	return changes
}

// beyond reports whether something is asked that a person cannot.
func beyond(asked []process.Asked, q process.RoomPerson) bool {
	return slices.ContainsFunc(asked, func(a process.Asked) bool {
		return !slices.ContainsFunc(q.Can, func(c form.Pair[int]) bool { return c.Key.Value == a.Skill && c.Value >= a.Level })
	})
}

// TestRowsThatAreTooSlow: one person at a fifth of the pace keeps up with no
// rate that the plan's pace just holds.
func TestRowsThatAreTooSlow(t *testing.T) {
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	in := process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: crewOf(t, 1), Shelf: loadShelf(t)}
	quick, err := process.Row(t.Context(), in, process.Line{Garments: 10})
	if err != nil {
		t.Fatal(err)
	}
	in.Workroom.People[0].Pace.Value = "5"
	slow, err := process.Row(t.Context(), in, process.Line{Garments: 10})
	if err != nil {
		t.Fatal(err)
	}
	a, b := quick.Rows[0], slow.Rows[0]
	setups := a.Tables[0].Setups
	if want := 5*(a.Every-setups) + setups; math.Abs(b.Every-want) > 5 {
		t.Errorf("at a fifth of the pace one every %g minutes, want about %g", b.Every, want)
	}
}
