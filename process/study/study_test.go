package study_test

import (
	"math"
	"testing"

	"bodkin/process/study"
)

// Published worked examples of basic time, to the hundredth that is printed:
// "Standard minute value", an article of 2016.
func TestBasicTimes(t *testing.T) {
	for _, tt := range []struct{ seen, rating, want float64 }{
		{0.25, 80, 0.20}, {0.31, 90, 0.28}, {0.09, 110, 0.10}, {0.22, 105, 0.23},
	} {
		got := study.Element{Seen: []float64{tt.seen}, Rating: tt.rating, PerCycle: 1}.Basic()
		if math.Abs(got-tt.want) > 0.005 {
			t.Errorf("%g at %g: %g, want %g", tt.seen, tt.rating, got, tt.want)
		}
	}
}

// Published exercises of standard time with one element: a question bank of a
// university, and a time-standard exercise.
func TestStandardTimes(t *testing.T) {
	for _, tt := range []struct {
		seen                          []float64
		rating, basic, rest, standard float64
	}{
		{[]float64{27, 19, 20, 21, 13}, 120, 24, 0.20, 28.8},
		{[]float64{30, 25, 35, 30, 30}, 125, 37.5, 0.20, 45},
	} {
		e := study.Element{Seen: tt.seen, Rating: tt.rating, PerCycle: 1, Rest: tt.rest}
		if math.Abs(e.Basic()-tt.basic) > 1e-9 {
			t.Errorf("basic %g, want %g", e.Basic(), tt.basic)
		}
		if got := study.Total([]study.Element{e}, 0); math.Abs(got-tt.standard) > 1e-9 {
			t.Errorf("standard %g, want %g", got, tt.standard)
		}
	}
}

// A published study of seven elements, each with its rating, how often it is
// done in a cycle and its rest. The basic times are printed with the exercise;
// the totals are computed from them by hand.
func TestSevenElements(t *testing.T) {
	var all []study.Element
	for _, r := range []struct{ seen, rating, basic, perCycle, rest float64 }{
		{0.88, 100, 0.880, 1, 0.10},
		{2.04, 75, 1.530, 1, 0.08},
		{1.57, 80, 1.256, 1, 0.11},
		{0.33, 110, 0.363, 2, 0.09},
		{1.44, 85, 1.224, 0.5, 0.12},
		{1.09, 95, 1.036, 1, 0.09},
		{0.72, 100, 0.720, 1, 0.10},
	} {
		e := study.Element{Seen: []float64{r.seen}, Rating: r.rating, PerCycle: r.perCycle, Rest: r.rest}
		if math.Abs(e.Basic()-r.basic) > 0.0006 {
			t.Errorf("%g at %g: basic %g, want %g", r.seen, r.rating, e.Basic(), r.basic)
		}
		all = append(all, e)
	}
	sum := 0.0
	for _, e := range all {
		sum += e.Selected()
	}
	for _, tt := range []struct{ got, want float64 }{
		{sum, 6.760}, {study.Total(all, 0), 7.413}, {study.Total(all, 0.06), 7.857},
	} {
		if math.Abs(tt.got-tt.want) > 0.001 {
			t.Errorf("total %.4f, want %.3f", tt.got, tt.want)
		}
	}
}

// Rests are given on the work of the hands only, not on machine time (S. Konz,
// as above, after the International Labour Organization); 5 % is a common
// contingency ("How to estimate the allowances for a given work").
func TestRestsAreForHands(t *testing.T) {
	a := study.Allowances{Hands: 0.11, All: 0.05}
	if got, want := a.Standard(study.Work{Machine: 2}), 2.1; math.Abs(got-want) > 1e-12 {
		t.Errorf("machine time alone: %g, want %g", got, want)
	}
	if got, want := a.Standard(study.Work{Hands: 1, Machine: 2}), (1.11+2)*1.05; math.Abs(got-want) > 1e-12 {
		t.Errorf("hands and machine: %g, want %g", got, want)
	}
}
