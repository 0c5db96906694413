package order

import (
	"fmt"
)

// A Breakdown is the cost of a sequence and where it falls.
type Breakdown struct {
	Total   int64
	Moves   int64 // the part of Total spent on moves between stations
	Changes int64 // the part spent on changes of attributes
	Steps   []Step
}

// A Step is one operation of a replayed sequence and what it costs there.
type Step struct {
	Operation int
	From      int   // the station before, or Nowhere
	Move      int64 // cost of coming from there; 0 when it is the same station
	Changes   []Change
}

// A Change is an attribute of the step's station set to another value.
type Change struct {
	Attribute int
	From      int // the value before, or Unset
	To        int
	Cost      int64
}

// A SequenceError says why a sequence is not an order of all operations.
type SequenceError struct {
	Position  int // index in the sequence; its length when operations are missing
	Operation int
	What      string
}

func (e *SequenceError) Error() string {
	return fmt.Sprintf("sequence position %d, operation %d: %s", e.Position, e.Operation, e.What)
}

// Cost replays the sequence and returns its cost with one step for each
// operation. The sequence must hold every operation of p once, each after its
// predecessors; otherwise the error is a [*SequenceError]. An error of
// [Validate] is returned as it is.
func Cost(p Problem, sequence []int) (Breakdown, error) {
	if err := Validate(p); err != nil {
		return Breakdown{}, err
	}
	if err := checkSequence(p, sequence); err != nil {
		return Breakdown{}, err
	}
	return replay(p, sequence), nil
}

func checkSequence(p Problem, sequence []int) error {
	done := make([]bool, len(p.Operations))
	for at, i := range sequence {
		if i < 0 || i >= len(done) {
			return &SequenceError{at, i, fmt.Sprintf("no such operation, want 0 to %d", len(done)-1)}
		}
		if done[i] {
			return &SequenceError{at, i, "comes a second time"}
		}
		for _, b := range p.Operations[i].After {
			if !done[b] {
				return &SequenceError{at, i, fmt.Sprintf("comes before operation %d, which it must follow", b)}
			}
		}
		done[i] = true
	}
	for i, d := range done {
		if !d {
			return &SequenceError{len(sequence), i, "is missing"}
		}
	}
	return nil
}

// replay prices a sequence that is known to be sound.
func replay(p Problem, sequence []int) Breakdown {
	values := make([][]int, len(p.Stations))
	for s, st := range p.Stations {
		values[s] = make([]int, len(st.Attributes))
		for a, at := range st.Attributes {
			values[s][a] = at.Start
		}
	}
	b := Breakdown{Steps: make([]Step, 0, len(sequence))}
	at := p.Start
	for _, i := range sequence {
		op := p.Operations[i]
		step := Step{Operation: i, From: at}
		if at != Nowhere && at != op.Station && p.Moves != nil {
			step.Move = p.Moves[at][op.Station]
		}
		at = op.Station
		b.Moves += step.Move
		for a, to := range op.Setting {
			from := values[at][a]
			if to == Any || to == from {
				continue
			}
			attribute := p.Stations[at].Attributes[a]
			change := Change{Attribute: a, From: from, To: to}
			if from != Unset {
				change.Cost = attribute.Change[from][to]
			} else if attribute.First != nil {
				change.Cost = attribute.First[to]
			}
			values[at][a] = to
			step.Changes = append(step.Changes, change)
			b.Changes += change.Cost
		}
		b.Steps = append(b.Steps, step)
	}
	b.Total = b.Moves + b.Changes
	return b
}
