package process_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

// rateOf asks a row for a rate, with so many people of a pace.
func rateOf(t *testing.T, people int, pace, rate float64) (*process.RowWork, error) {
	t.Helper()
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	var text strings.Builder
	text.WriteString("machines: [{is: straight-stitcher}]\niron: steam\npeople:\n")
	for k := range people {
		fmt.Fprintf(&text, "  - {name: P%d, can: %s, pace: %g, from: \"8:00\", until: \"20:00\"}\n", k, everything, pace)
	}
	w, err := process.ParseWorkroom("w.yaml", []byte(text.String()))
	if err != nil {
		t.Fatal(err)
	}
	return process.Row(t.Context(), process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: w, Shelf: loadShelf(t)},
		process.Line{Garments: 10, PerHour: rate})
}

// longestOf is the longest operation of that job, trials left out, by its plan.
func longestOf(t *testing.T) (string, float64) {
	t.Helper()
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	p, err := process.Work(t.Context(), process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: crewOf(t, 1), Shelf: loadShelf(t)},
		order.Options{Nodes: order.NoSearch})
	if err != nil {
		t.Fatal(err)
	}
	id, minutes := "", 0.0
	for _, o := range p.Operations {
		if o.Does != "test" && o.Minutes > minutes {
			id, minutes = o.ID, o.Minutes
		}
	}
	return id, minutes
}

// A rate that leaves less time than one operation takes is refused by its name, at
// the pace of the quickest who is there: no row is quicker than its longest task
// (A. Scholl, Balancing and Sequencing of Assembly Lines, 2nd ed. 1999).
func TestRateBeyondTheLongestOperation(t *testing.T) {
	id, minutes := longestOf(t)
	for _, tt := range []struct{ pace, rate float64 }{{1, 60}, {1, 60/minutes + 0.5}, {2, 60}, {0.5, 200}, {0.5, 2*60/minutes + 1}} {
		_, err := rateOf(t, 1, tt.pace, tt.rate)
		e, ok := errors.AsType[*process.RateError](err)
		if !ok {
			t.Fatalf("%+v: %v", tt, err)
		}
		quickest := math.Min(tt.pace, 1) * minutes
		if e.Operation != id || math.Abs(e.Takes-quickest) > 0.1 || e.Rate != tt.rate || math.Abs(e.Leave-60/tt.rate) > 1e-9 {
			t.Errorf("%+v: %+v, want %s of %g minutes", tt, e, id, quickest)
		}
		if e.Most*e.Takes > 60+1e-6 || e.Most < 0.9*60/e.Takes || e.Most >= tt.rate {
			t.Errorf("%+v: %g an hour at the most, where it takes %g minutes", tt, e.Most, e.Takes)
		}
		for _, w := range []string{id, fmt.Sprintf("%.1f minutes", e.Takes), fmt.Sprintf("leave every %.1f", e.Leave)} {
			if !strings.Contains(e.Error(), w) {
				t.Errorf("%q does not say %q", e, w)
			}
		}
	}
}

// A rate that the plan's pace holds, and nobody who is there, is refused with what
// the quickest row gives; that much is given.
func TestRateBeyondThePeople(t *testing.T) {
	id, minutes := longestOf(t)
	rate := 60 / (3.5 * minutes) // by four people at the plan's pace, so that all rows that are tried are seated
	if w, err := rateOf(t, 12, 1, rate); err != nil || w.Fewest == nil {
		t.Fatalf("at the plan's pace %g an hour: %v", rate, err)
	}
	_, err := rateOf(t, 12, 4, rate)
	e, ok := errors.AsType[*process.RateError](err)
	if !ok || e.Operation != "" {
		t.Fatalf("%v", err)
	}
	if e.Takes < 4*minutes-0.1 {
		t.Errorf("%s alone takes %g minutes at that pace, and a row gives one every %g", id, 4*minutes, e.Takes)
	}
	w, err := rateOf(t, 12, 4, e.Most)
	if err != nil || w.Fewest == nil || w.Fewest.Every > 60/e.Most {
		t.Errorf("%g an hour, the most that was said: %v", e.Most, err)
	}
}
