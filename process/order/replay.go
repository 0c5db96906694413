package order

import (
	"fmt"
)

// A Breakdown is the cost of a sequence and where it falls. All costs are in
// the problem's unit.
type Breakdown struct {
	Total   int64 // Moves + Changes + Own + Picks + Unkept + Ending
	Moves   int64 // spent on moves between stations
	Changes int64 // spent on changes of attributes for operations
	Own     int64 // what the operations cost in themselves
	Picks   int64 // spent on taking up another group
	Unkept  int64 // what wishes cost that the sequence does not keep
	Ending  int64 // spent on bringing about the ends of the stations

	Steps  []Step
	Ends   []End
	Wishes []int // indexes of the wishes that the sequence does not keep, rising
}

// A Step is one operation of a replayed sequence and what it costs there.
type Step struct {
	Operation int
	Way       int   // of the operation, see [Operation.Way]
	Station   int   // where it is done
	From      int   // the station before, or Nowhere
	Move      int64 // cost of coming from there; 0 when it is the same station
	Changes   []Change
	Cost      int64 // of the way
	Pick      int64 // cost of taking up its group
}

// A Change is an attribute of the step's station set to another value.
type Change struct {
	Attribute int
	From      int // the value before, or Unset
	To        int
	Cost      int64
}

// An End is a change made when all is done, see [Station.End].
type End struct {
	Station int
	Change
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

// Cost is [CostWith] where each operation is done in its own way.
func Cost(p Problem, sequence []int) (Breakdown, error) {
	return CostWith(p, sequence, nil)
}

// CostWith replays the sequence and returns its cost with one step for each
// operation. The sequence must hold every operation of p that is not done once,
// each after its predecessors, and ways the way in which each is done, or be
// nil where each is done in its own; otherwise the error is a [*SequenceError].
// An error of [Validate] is returned as it is. It takes time in proportion to
// the size of p.
//
// To find the cheapest ways for a given sequence, let each operation come after
// the one before it and [Solve] that.
func CostWith(p Problem, sequence, ways []int) (Breakdown, error) {
	if err := Validate(p); err != nil {
		return Breakdown{}, err
	}
	if err := checkSequence(p, sequence, ways, true); err != nil {
		return Breakdown{}, err
	}
	return replay(p, sequence, ways), nil
}

// Begin returns what p leaves to be done when the operations of the sequence,
// which need not be all, have been done: they are among those done, and the
// starts say how the stations were left. Errors are those of [CostWith].
func Begin(p Problem, sequence, ways []int) (Problem, error) {
	if err := Validate(p); err != nil {
		return Problem{}, err
	}
	if err := checkSequence(p, sequence, ways, false); err != nil {
		return Problem{}, err
	}
	r := newReplayer(p)
	for k, i := range sequence {
		r.do(i, wayAt(ways, k))
	}
	begun := p
	begun.Start = r.at
	begun.Done = append(append([]int(nil), p.Done...), sequence...)
	begun.Stations = append([]Station(nil), p.Stations...)
	for s, values := range r.values {
		attributes := append([]Attribute(nil), p.Stations[s].Attributes...)
		for a, v := range values {
			attributes[a].Start = v
		}
		begun.Stations[s].Attributes = attributes
	}
	return begun, nil
}

// checkSequence checks a sequence that is to hold what is left of p, or, where
// it need not be whole, the beginning of it.
func checkSequence(p Problem, sequence, ways []int, whole bool) error {
	if ways != nil && len(ways) != len(sequence) {
		return &SequenceError{min(len(sequence), len(ways)), -1, fmt.Sprintf("%d ways for %d operations", len(ways), len(sequence))}
	}
	done := make([]bool, len(p.Operations))
	for _, i := range p.Done {
		done[i] = true
	}
	for at, i := range sequence {
		if i < 0 || i >= len(done) {
			return &SequenceError{at, i, fmt.Sprintf("no such operation, want 0 to %d", len(done)-1)}
		}
		if done[i] {
			return &SequenceError{at, i, "comes a second time"}
		}
		if w := wayAt(ways, at); w < 0 || w >= p.Operations[i].Ways() {
			return &SequenceError{at, i, fmt.Sprintf("no way %d, want 0 to %d", w, p.Operations[i].Ways()-1)}
		}
		for _, b := range p.Operations[i].After {
			if !done[b] {
				return &SequenceError{at, i, fmt.Sprintf("comes before operation %d, which it must follow", b)}
			}
		}
		done[i] = true
	}
	for i, d := range done {
		if !d && whole {
			return &SequenceError{len(sequence), i, "is missing"}
		}
	}
	return nil
}

func wayAt(ways []int, k int) int {
	if ways == nil {
		return 0
	}
	return ways[k]
}

// replay prices a sequence that is known to be sound.
func replay(p Problem, sequence, ways []int) Breakdown {
	r := newReplayer(p)
	b := Breakdown{Steps: make([]Step, 0, len(sequence))}
	for k, i := range sequence {
		step := r.do(i, wayAt(ways, k))
		b.Moves += step.Move
		b.Own += step.Cost
		b.Picks += step.Pick
		for _, c := range step.Changes {
			b.Changes += c.Cost
		}
		b.Steps = append(b.Steps, step)
	}
	for s, st := range p.Stations {
		for a, to := range st.End {
			if c, changed := r.change(s, a, to); changed {
				b.Ends = append(b.Ends, End{s, c})
				b.Ending += c.Cost
			}
		}
	}
	for k, w := range p.Wishes {
		if r.place[w.Then] < r.place[w.First] && r.place[w.First] > 0 {
			b.Wishes = append(b.Wishes, k)
			b.Unkept += w.Cost
		}
	}
	b.Total = b.Moves + b.Changes + b.Own + b.Picks + b.Unkept + b.Ending
	return b
}

// A replayer does operations one after another.
type replayer struct {
	p      Problem
	at     int
	hand   int     // group in hand, or NoGroup
	values [][]int // by station and attribute
	place  []int   // of each operation in the sequence from 1; 0 while it is not done, below that if it was from the start
	done   int
}

func newReplayer(p Problem) *replayer {
	r := &replayer{p: p, at: p.Start, hand: NoGroup, place: make([]int, len(p.Operations))}
	for _, st := range p.Stations {
		values := make([]int, len(st.Attributes))
		for a, at := range st.Attributes {
			values[a] = at.Start
		}
		r.values = append(r.values, values)
	}
	for _, i := range p.Done {
		r.place[i] = -1
		r.hold(i)
	}
	return r
}

// hold takes an operation's group in hand and reports whether that is another
// than the one before.
func (r *replayer) hold(i int) bool {
	g, before := r.p.Operations[i].Group, r.hand
	if g == NoGroup {
		return false
	}
	r.hand = g
	return before != NoGroup && before != g
}

// change sets an attribute and says what that changes, if anything.
func (r *replayer) change(station, attribute, to int) (Change, bool) {
	from := r.values[station][attribute]
	if to == Any || to == from {
		return Change{}, false
	}
	c := Change{Attribute: attribute, From: from, To: to}
	if at := r.p.Stations[station].Attributes[attribute]; from != Unset {
		c.Cost = at.Change[from][to]
	} else if at.First != nil {
		c.Cost = at.First[to]
	}
	r.values[station][attribute] = to
	return c, true
}

func (r *replayer) do(i, way int) Step {
	w := r.p.Operations[i].Way(way)
	step := Step{Operation: i, Way: way, Station: w.Station, From: r.at, Cost: w.Cost}
	if r.at != Nowhere && r.at != w.Station && r.p.Moves != nil {
		step.Move = r.p.Moves[r.at][w.Station]
	}
	r.at = w.Station
	if r.hold(i) {
		step.Pick = r.p.Pick
	}
	for a, to := range w.Setting {
		if c, changed := r.change(w.Station, a, to); changed {
			step.Changes = append(step.Changes, c)
		}
	}
	r.done++
	r.place[i] = r.done
	return step
}
