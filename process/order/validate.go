package order

import (
	"fmt"
)

// Caps on a problem. They keep every sum of costs inside an int64 and refuse
// input that no search of this kind could serve.
const (
	MaxOperations = 4096
	MaxStations   = 256
	MaxAttributes = 64   // of one station
	MaxValues     = 4096 // of one attribute
	MaxWays       = 256  // of one operation
	MaxWishes     = 1 << 16
	MaxCost       = 1 << 36 // of one move, change, way, pick or wish
)

// An InvalidError says what in a problem is out of range.
type InvalidError struct {
	Where string // the place in the problem, such as "operation 3"
	What  string // what is wrong there
}

func (e *InvalidError) Error() string { return e.Where + ": " + e.What }

func invalid(where, format string, args ...any) error {
	return &InvalidError{Where: where, What: fmt.Sprintf(format, args...)}
}

// Validate reports the first thing wrong with p, in the order stations, moves,
// pick, operations, wishes, what is done, as an [*InvalidError]; predecessors
// that lead round in a circle are a [*CycleError]. It takes time in proportion
// to the size of p.
func Validate(p Problem) error {
	if len(p.Stations) > MaxStations {
		return invalid("problem", "%d stations, at most %d are possible", len(p.Stations), MaxStations)
	}
	if len(p.Operations) > MaxOperations {
		return invalid("problem", "%d operations, at most %d are possible", len(p.Operations), MaxOperations)
	}
	for s, st := range p.Stations {
		if err := validateStation(st, fmt.Sprintf("station %d", s)); err != nil {
			return err
		}
	}
	if p.Moves != nil {
		if err := validateMatrix(p.Moves, len(p.Stations), "moves"); err != nil {
			return err
		}
	}
	if p.Start != Nowhere && (p.Start < 0 || p.Start >= len(p.Stations)) && len(p.Stations)+len(p.Operations) > 0 {
		return invalid("problem", "start is station %d, want %d for nowhere or 0 to %d", p.Start, Nowhere, len(p.Stations)-1)
	}
	if p.Pick < 0 || p.Pick > MaxCost {
		return invalid("problem", "the cost of a pick is %d, want 0 to %d", p.Pick, int64(MaxCost))
	}
	for i, op := range p.Operations {
		if err := validateOperation(p, op, fmt.Sprintf("operation %d", i)); err != nil {
			return err
		}
	}
	if err := validateWishes(p); err != nil {
		return err
	}
	if err := validateDone(p); err != nil {
		return err
	}
	if cycles := findCycles(p.Operations); len(cycles) > 0 {
		return &CycleError{Cycles: cycles}
	}
	return nil
}

func validateStation(st Station, where string) error {
	if len(st.Attributes) > MaxAttributes {
		return invalid(where, "%d attributes, at most %d are possible", len(st.Attributes), MaxAttributes)
	}
	for a, at := range st.Attributes {
		here := fmt.Sprintf("%s, attribute %d", where, a)
		n := len(at.Change)
		if n > MaxValues {
			return invalid(here, "%d values, at most %d are possible", n, MaxValues)
		}
		if err := validateMatrix(at.Change, n, here); err != nil {
			return err
		}
		if at.First != nil && len(at.First) != n {
			return invalid(here, "%d first costs for %d values", len(at.First), n)
		}
		for v, c := range at.First {
			if c < 0 || c > MaxCost {
				return invalid(here, "first cost of value %d is %d, want 0 to %d", v, c, int64(MaxCost))
			}
		}
		if at.Start != Unset && (at.Start < 0 || at.Start >= n) {
			return invalid(here, "start is value %d, want %d for unset or 0 to %d", at.Start, Unset, n-1)
		}
	}
	if st.End != nil && len(st.End) != len(st.Attributes) {
		return invalid(where, "%d ends for its %d attributes", len(st.End), len(st.Attributes))
	}
	for a, v := range st.End {
		if n := len(st.Attributes[a].Change); v != Any && (v < 0 || v >= n) {
			return invalid(where, "end of attribute %d is %d, want %d for any or 0 to %d", a, v, Any, n-1)
		}
	}
	return nil
}

func validateMatrix(m [][]int64, n int, where string) error {
	if len(m) != n {
		return invalid(where, "%d rows of costs, want %d", len(m), n)
	}
	for i, row := range m {
		if len(row) != n {
			return invalid(where, "row %d has %d costs, want %d", i, len(row), n)
		}
		for j, c := range row {
			if i != j && (c < 0 || c > MaxCost) {
				return invalid(where, "cost from %d to %d is %d, want 0 to %d", i, j, c, int64(MaxCost))
			}
		}
	}
	return nil
}

func validateOperation(p Problem, op Operation, where string) error {
	if op.Ways() > MaxWays {
		return invalid(where, "%d ways, at most %d are possible", op.Ways(), MaxWays)
	}
	for k := range op.Ways() {
		here := where
		if k > 0 {
			here = fmt.Sprintf("%s, way %d", where, k)
		}
		if err := validateWay(p, op.Way(k), here); err != nil {
			return err
		}
	}
	for _, b := range op.After {
		if b < 0 || b >= len(p.Operations) {
			return invalid(where, "comes after operation %d, want 0 to %d", b, len(p.Operations)-1)
		}
	}
	if op.Group < NoGroup {
		return invalid(where, "group is %d, want %d for none or more", op.Group, NoGroup)
	}
	return nil
}

func validateWay(p Problem, way Way, where string) error {
	if way.Station < 0 || way.Station >= len(p.Stations) {
		return invalid(where, "station is %d, want 0 to %d", way.Station, len(p.Stations)-1)
	}
	attributes := p.Stations[way.Station].Attributes
	if way.Setting != nil && len(way.Setting) != len(attributes) {
		return invalid(where, "%d settings for the %d attributes of station %d", len(way.Setting), len(attributes), way.Station)
	}
	for a, v := range way.Setting {
		if n := len(attributes[a].Change); v != Any && (v < 0 || v >= n) {
			return invalid(where, "setting of attribute %d is %d, want %d for any or 0 to %d", a, v, Any, n-1)
		}
	}
	if way.Cost < 0 || way.Cost > MaxCost {
		return invalid(where, "cost is %d, want 0 to %d", way.Cost, int64(MaxCost))
	}
	return nil
}

func validateWishes(p Problem) error {
	if len(p.Wishes) > MaxWishes {
		return invalid("problem", "%d wishes, at most %d are possible", len(p.Wishes), MaxWishes)
	}
	for k, w := range p.Wishes {
		here := fmt.Sprintf("wish %d", k)
		for _, i := range []int{w.First, w.Then} {
			if i < 0 || i >= len(p.Operations) {
				return invalid(here, "names operation %d, want 0 to %d", i, len(p.Operations)-1)
			}
		}
		if w.First == w.Then {
			return invalid(here, "wants operation %d before itself", w.First)
		}
		if w.Cost < 0 || w.Cost > MaxCost {
			return invalid(here, "cost is %d, want 0 to %d", w.Cost, int64(MaxCost))
		}
	}
	return nil
}

func validateDone(p Problem) error {
	done := make([]bool, len(p.Operations))
	for _, i := range p.Done {
		switch {
		case i < 0 || i >= len(p.Operations):
			return invalid("done", "names operation %d, want 0 to %d", i, len(p.Operations)-1)
		case done[i]:
			return invalid("done", "names operation %d twice", i)
		}
		for _, b := range p.Operations[i].After {
			if !done[b] {
				return invalid("done", "operation %d is done, and operation %d, which it must follow, is not done before it", i, b)
			}
		}
		done[i] = true
	}
	return nil
}
