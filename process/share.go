package process

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"bodkin/process/crew"
	"bodkin/process/order"
)

// ShareSchema is the version of a share's JSON form.
const ShareSchema = "bodkin-share-1"

// Share is the work of a job shared out among the people of a room. Times are
// minutes from the beginning, which is when the first of them comes. Slices are
// never nil.
type Share struct {
	Schema   string       `json:"schema"`
	Garment  string       `json:"garment"`
	Title    string       `json:"title"`
	Workroom string       `json:"workroom"`
	Begins   string       `json:"begins"` // time of day
	Finish   float64      `json:"finish_minutes"`
	Alone    float64      `json:"alone_minutes"` // the maker by herself, the same hours; 0 where she cannot
	Bound    float64      `json:"bound_minutes"` // no plan ends sooner
	Proved   bool         `json:"proved"`        // the finish is the soonest there is
	Fewest   bool         `json:"fewest"`        // and no plan that ends then has fewer hand-overs
	People   []Bench      `json:"people"`
	Machines []MachineRow `json:"machines"`
	Handed   []HandOver   `json:"hand_overs"` // in time
	Extras   []Extra      `json:"extras"`
	GiveAway []Given      `json:"give_away"`     // to each of the others, alone with the maker
	Plan     *Plan        `json:"plan"`          // the work in one pair of hands, not searched for the best order; what is cut and how seams are sewn is the same
	Row      *RowWork     `json:"row,omitempty"` // where many of the garment were asked for
	Begun    *Begun       `json:"begun,omitempty"`
	Notices  []Notice     `json:"notices"`
}

// Bench is one person's part.
type Bench struct {
	Name    string  `json:"name"`
	From    float64 `json:"from_minutes"`
	Until   float64 `json:"until_minutes"`
	Busy    float64 `json:"busy_minutes"`
	Waiting float64 `json:"waiting_minutes"` // between tasks
	Turns   []Turn  `json:"turns"`
}

// Turn is an operation in one person's hands.
type Turn struct {
	Operation Operation `json:"operation"`
	Number    int       `json:"number"` // the same on every page, in the order of beginning
	Asked     []Asked   `json:"asked"`
	Begin     float64   `json:"begin_minutes"`
	Work      float64   `json:"work_minutes"` // when the machine is set up
	End       float64   `json:"end_minutes"`
	Machine   string    `json:"machine"` // title of the place
	Wait      *Waiting  `json:"wait,omitempty"`
	From      []Passing `json:"from"` // pieces that come from others
	To        []Passing `json:"to"`   // and go to others
}

// Waiting is time before a turn in which there is nothing to sew.
type Waiting struct {
	Minutes  float64 `json:"minutes"`
	For      string  `json:"for"`    // operation; empty where it is none
	Person   string  `json:"person"` // who does that
	Cause    string  `json:"cause"`  // earlier, coming, engaged, none
	Meantime string  `json:"meantime"`
}

// Passing is the other end of a hand-over.
type Passing struct {
	Operation string `json:"operation"`
	Number    int    `json:"number"`
	Person    string `json:"person"`
}

// HandOver is a piece going from one person to another.
type HandOver struct {
	At       float64 `json:"at_minutes"` // when it leaves
	Part     string  `json:"part"`
	From, To string
	After    string `json:"after"` // operation just done
	Next     string `json:"next"`  // operation that follows
}

// MachineRow is when a machine is in use.
type MachineRow struct {
	Title string `json:"title"`
	Turns []int  `json:"turns"` // numbers
}

// Extra is what one more of something would change.
type Extra struct {
	What   string  `json:"what"`
	Finish float64 `json:"finish_minutes"`
	Saves  float64 `json:"saves_minutes"`
}

// Cutters are the people who cut something out, in the order of the workroom.
func (s *Share) Cutters() []string {
	var out []string
	for _, b := range s.People {
		if slices.ContainsFunc(b.Turns, func(t Turn) bool { return t.Operation.Does == "cut" }) {
			out = append(out, b.Name)
		}
	}
	return out
}

// asideNodes is by how much less is tried for what would be otherwise: without
// help, with one more of something, with one helper only.
const asideNodes = 16

// tick is the unit of the search: a tenth of a minute.
const tick = 0.1

func ticks(minutes float64) int64 { return int64(math.Ceil(minutes/tick - 1e-9)) }
func minutesFrom(t int64) float64 { return math.Round(float64(t)*tick*10) / 10 }

// defaultHandover is the minutes it takes to hand a piece over, with a word on
// it: an estimate, no published figure; a house may set its own.
const defaultHandover = 1

// sharing is a problem for crew with what its numbers stand for.
type sharing struct {
	o        *operator
	people   []RoomPerson
	begins   int // minutes of the day
	handover float64
	asked    [][]Asked
	p        crew.Problem
	places   []string    // titles of the machines
	values   []attribute // of each kind one after another
	first    []int       // of each kind, in values
}

// ShareOut shares the work among the people of the workroom. The context limits
// the search only, nodes its work as [crew.Options] tell. Errors are those of
// [Work]; where nobody can do an operation a [form.Faults] names what would be
// needed; where the hours do not hold the work a [*CannotError] says so.
func ShareOut(ctx context.Context, in Input, nodes int) (*Share, error) {
	people := in.Workroom.People
	if len(people) == 0 {
		return nil, &CannotError{About: "garment with many hands", Why: []string{"the workroom names no people"}}
	}
	o, _, relations, err := prepare(in)
	if err != nil {
		return nil, err
	}
	o.precede(relations)
	if _, err := o.pin(in.Job); err != nil {
		return nil, err
	}
	if o.resume(in.Begun); len(o.ops) == 0 {
		return nil, &DoneError{Garment: in.Garment.Title}
	}
	problem, _ := o.problem()
	taught, err := o.teach(&problem)
	if c, ok := errors.AsType[*order.CycleError](err); ok {
		return nil, o.circle(in.Garment.Title, c.Cycles[0])
	}
	if err != nil {
		return nil, err
	}
	o.settleTests(problem, taught) // a trial row is sewn as what is usually sewn first
	s := &sharing{o: o, people: people, handover: defaultHandover}
	if v, ok := minutesOf(in.Workroom.Minutes.Handover); ok {
		s.handover = v
	}
	s.state()
	r, err := crew.Solve(ctx, s.p, crew.Options{Nodes: nodes})
	if n, ok := errors.AsType[*crew.NobodyError](err); ok {
		return nil, s.nobody(n)
	}
	if err != nil {
		return nil, err
	}
	if r.Places == nil {
		return nil, &CannotError{About: "garment in these hours", Why: []string{
			fmt.Sprintf("all of it takes at least until %s", s.time(max(r.Bound, 0))),
			"let somebody stay longer, or leave part of the work for another day"}}
	}
	out := s.tell(in, r)
	out.Begun = in.Begun
	if out.Plan, err = Work(ctx, in, order.Options{Nodes: order.NoSearch}); err != nil {
		return nil, err
	}
	s.extras(ctx, out, r, nodes)
	for q := 1; q < len(s.people); q++ {
		if given, ok := s.giveAway(ctx, q, max(nodes/asideNodes, 1)); ok {
			out.GiveAway = append(out.GiveAway, given)
		}
	}
	return out, nil
}

// time is a time of day.
func (s *sharing) time(t int64) string {
	m := s.begins + int(math.Ceil(float64(t)*tick))
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}
