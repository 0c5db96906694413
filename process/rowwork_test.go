package process_test

import (
	"fmt"
	"math"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

// TestRowsOfTables: every operation once, none at a table before what it waits
// for, no table slower than the row, no row quicker than the mean of the work
// or the longest operation (A. Scholl, Balancing and Sequencing of Assembly
// Lines, 2nd ed. 1999, the lower bounds of both types), and the fewest people
// for a row's own rate are no more than it has.
func TestRowsOfTables(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range []string{"shell-top", "pull-on-skirt", "open-jacket"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		in := process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: crewOf(t, 2), Shelf: shelf}
		plan, err := process.Work(t.Context(), in, order.Options{Nodes: order.NoSearch})
		if err != nil {
			t.Fatal(err)
		}
		w, err := process.Row(t.Context(), in, process.Line{Garments: 10, PerHour: 1.5})
		if err != nil {
			t.Fatal(name, err)
		}
		longest := 0.0
		for _, o := range plan.Operations {
			longest = max(longest, o.Minutes)
		}
		for _, row := range append([]process.TableRow{*w.Fewest}, w.Rows...) {
			if err := lawfulRow(plan, row); err != nil {
				t.Errorf("%s, %d people: %v", name, row.People, err)
			}
			if row.Every < math.Max(w.Work/float64(row.People), longest)-0.11 {
				t.Errorf("%s: %d people give one every %g minutes; the work is %g, the longest operation %g", name, row.People, row.Every, w.Work, longest)
			}
			if want := row.Every * float64(10+row.People-1); math.Abs(row.All-want) > 0.06 {
				t.Errorf("%s: ten take %g minutes, want %g", name, row.All, want)
			}
		}
		if w.Fewest.Every > 40 || w.Fewest.Bound > float64(w.Fewest.People) {
			t.Errorf("%s: a row for 1.5 an hour gives one every %g minutes with %d people, bound %g", name, w.Fewest.Every, w.Fewest.People, w.Fewest.Bound)
		}
		for _, row := range w.Rows {
			if row.Every <= 40 && row.People < w.Fewest.People {
				t.Errorf("%s: %d people do for 1.5 an hour, said to be %d", name, row.People, w.Fewest.People)
			}
		}
	}
}

// lawfulRow checks a row by the plan's own words.
func lawfulRow(plan *process.Plan, row process.TableRow) error {
	at := map[string]int{}
	operation := map[string]process.Operation{}
	all := 0
	for _, o := range plan.Operations {
		operation[o.ID] = o
		if o.Does != "test" {
			all++
		}
	}
	place := 0
	for k, table := range row.Tables {
		sum := 0.0
		for _, id := range table.Operations {
			if _, twice := at[id]; twice {
				return fmt.Errorf("%s twice", id)
			}
			at[id] = k
			place++
			sum += operation[id].Minutes
			for _, a := range operation[id].After {
				if _, done := at[a.ID]; !done && operation[a.ID].Does != "test" {
					return fmt.Errorf("%s before %s", id, a.ID)
				}
			}
		}
		if sum > table.Minutes+1e-6 || table.Minutes > row.Every+1e-6 {
			return fmt.Errorf("table %d takes %g, said to be %g, in a row of %g", k, sum, table.Minutes, row.Every)
		}
	}
	if place != all || len(row.Tables) != row.People {
		return fmt.Errorf("%d operations of %d at %d tables", place, all, len(row.Tables))
	}
	return nil
}
