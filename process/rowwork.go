package process

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"bodkin/process/crew/balance"
)

// RowWork is many of one garment moving down a row of tables, a person at each.
// Minutes of a table are at the pace of the person who sits there, setting its
// machines up from garment to garment counted; where the row is longer than the
// room has people nobody is named and they are at the pace of the plan.
type RowWork struct {
	Garments int        `json:"garments"`
	Work     float64    `json:"work_minutes"` // on one garment, at the pace of the plan, set-ups left out
	Rows     []TableRow `json:"rows"`         // of one person, two and so on
	Rate     float64    `json:"rate_per_hour"`
	Fewest   *TableRow  `json:"fewest,omitempty"` // for that rate, where one is asked for
}

// TableRow is one way to split the work.
type TableRow struct {
	People  int      `json:"people"`
	Every   float64  `json:"every_minutes"` // a garment leaves the row
	PerHour float64  `json:"per_hour"`
	All     float64  `json:"all_minutes"` // until the last garment leaves, the row empty at first
	Bound   float64  `json:"bound"`       // minutes that no row of so many beats; of the fewest, people
	Proved  bool     `json:"proved"`
	Tables  []Table  `json:"tables"`
	Lacking []string `json:"lacking"` // machines that the room has too few of
}

// Table is one person's part of a row.
type Table struct {
	Person     string   `json:"person"` // empty where the room has too few
	Minutes    float64  `json:"minutes"`
	Setups     float64  `json:"setup_minutes"` // of these, each garment: back to the first setting too
	Operations []string `json:"operations"`
	Places     []string `json:"places"` // titles
}

// Line asks for a row of tables.
type Line struct {
	Garments int
	PerHour  float64 // 0 asks for no rate
}

// rowWidth is the work of the search for a row: tenths of a second.
const rowWidth = 10

// mostTables is the longest row that is told where no rate asks for a longer.
const mostTables = 6

// Row splits the work on one garment among tables: the best rate for one person
// and up to six, or as many as the room has, and the fewest people for a rate.
// The split evens out the work; then people are seated so that each can do what
// is hers, if that can be, and the slowest table is as quick as it can be. Trial
// rows are done once for all and left out. Errors are those of [Work], and a
// [*RateError] where no row keeps up with the rate.
func Row(ctx context.Context, in Input, want Line) (*RowWork, error) {
	o, _, relations, err := prepare(in)
	if err != nil {
		return nil, err
	}
	o.precede(relations)
	l, ops := o.line()
	r := &rowing{seating: o.seating(in.Workroom.People, l, ops), want: want}
	for _, t := range l.Times {
		r.work += t
	}
	out := &RowWork{Garments: want.Garments, Work: minutesFrom(r.work), Rate: want.PerHour, Rows: []TableRow{}}
	for k := 1; k <= max(mostTables, len(in.Workroom.People)); k++ {
		q, err := r.quickestOf(ctx, k)
		if err != nil {
			return nil, err
		}
		row := r.tell(q)
		if n := len(out.Rows); n > 0 && out.Rows[n-1].Every <= row.Every {
			break // more people do not help: one operation is as long, or they are slow
		}
		out.Rows = append(out.Rows, row)
	}
	if want.PerHour > 0 {
		out.Fewest, err = r.fewest(ctx)
	}
	return out, err
}

// rowing is rows on their way.
type rowing struct {
	*seating
	want Line
	work int64 // ticks on one garment, set-ups left out
}

func (r *rowing) quickestOf(ctx context.Context, people int) (balance.Row, error) {
	return balance.Quickest(ctx, r.l, people, balance.Options{Width: rowWidth})
}

// tell seats people at a row's tables and says what it comes to.
func (r *rowing) tell(b balance.Row) TableRow {
	seats, cycle := r.seat(b.Stations)
	bound := r.bound(b.Bound, r.work, len(b.Stations))
	row := TableRow{People: len(b.Stations), Every: minutesFrom(cycle), PerHour: math.Round(600/minutesFrom(cycle)) / 10,
		All: minutesFrom(cycle * int64(r.want.Garments+len(b.Stations)-1)), Bound: minutesFrom(bound), Proved: cycle <= bound, Tables: []Table{}}
	r.o.tables(&row, b, r.ops)
	r.name(&row, b, seats)
	return row
}

// RateError says that no row was found that keeps up with a rate.
type RateError struct {
	Rate      float64 // garments an hour, asked for
	Leave     float64 // minutes after which a garment would have to leave
	Operation string  // that takes longer than that by itself; empty where set-ups and the people's pace make the row slow
	Takes     float64 // minutes: of that operation by the quickest person, or between the garments of the quickest row found
	Most      float64 // garments an hour, rounded down to two digits: more than this no row gives, or none that was found
}

func (e *RateError) Error() string {
	if e.Operation != "" {
		return fmt.Sprintf("no row gives %g an hour: %s alone takes %.1f minutes, and a garment would have to leave every %.1f", e.Rate, e.Operation, e.Takes, e.Leave)
	}
	return fmt.Sprintf("no row was found that gives %g an hour: with setting up, at the pace of those who sit there, the quickest gives one every %.1f minutes, and a garment would have to leave every %.1f",
		e.Rate, e.Takes, e.Leave)
}

// roundedDown is a number to two digits, not above it.
func roundedDown(x float64) float64 {
	unit := math.Pow(10, math.Floor(math.Log10(x))-1)
	return math.Floor(x/unit+1e-9) * unit
}

// fewest is the row of the fewest people that keeps up with the rate.
func (r *rowing) fewest(ctx context.Context) (*TableRow, error) {
	leave := 60 / r.want.PerHour
	cycle := int64(math.Floor(leave/tick + 1e-9))
	cannot := func(operation string, takes float64) error {
		return &RateError{Rate: r.want.PerHour, Leave: leave, Operation: operation, Takes: takes, Most: roundedDown(60 / takes)}
	}
	// Those who are quicker than the plan do more of it in that time.
	quick := min(r.quickest(), 1)
	b, err := balance.Fewest(ctx, r.l, int64(float64(cycle)/quick), balance.Options{Width: rowWidth})
	if _, ok := errors.AsType[*balance.InvalidError](err); ok {
		longest := 0
		for t := range r.l.Times {
			if r.l.Times[t] > r.l.Times[longest] {
				longest = t
			}
		}
		return nil, cannot(r.o.ops[r.ops[longest]].ID, quick*minutesFrom(r.l.Times[longest]))
	}
	if err != nil {
		return nil, err
	}
	best := math.Inf(1)
	for k := len(b.Stations); k <= max(len(b.Stations)+mostTables, len(r.people)); k++ { // slow people want more tables than the plan's pace
		q, err := r.quickestOf(ctx, k)
		if err != nil {
			return nil, err
		}
		row := r.tell(q)
		if k == len(b.Stations) && row.Every > minutesFrom(cycle) {
			row = r.tell(b)
		}
		if row.Every <= minutesFrom(cycle) {
			row.Bound, row.Proved = float64(b.Bound), float64(row.People) <= float64(b.Bound)
			return &row, nil
		}
		best = min(best, row.Every)
		if len(q.Stations) < k {
			break // no more tables than operations
		}
	}
	return nil, cannot("", best)
}

// line is the work on one garment as times and what comes before what, with the
// operation of each task.
func (o *operator) line() (balance.Line, []int) {
	var ops []int
	task := map[int]int{}
	for i, n := range o.ops {
		if n.Does != scrapTest {
			task[i] = len(ops)
			ops = append(ops, i)
		}
	}
	l := balance.Line{After: make([][]int, len(ops))}
	for k, i := range ops {
		l.Times = append(l.Times, ticks(o.standard(&o.ops[i])/float64(o.quantity)))
		for _, b := range o.ops[i].after {
			if at, ok := task[b.op]; ok && !slices.Contains(l.After[k], at) {
				l.After[k] = append(l.After[k], at)
			}
		}
	}
	return l, ops
}

// tables tells who does what, and what the room lacks for it.
func (o *operator) tables(row *TableRow, r balance.Row, ops []int) {
	row.Lacking = []string{}
	wants := map[string]int{}
	for _, tasks := range r.Stations {
		t := Table{Operations: []string{}, Places: []string{}}
		for _, k := range tasks {
			n := o.ops[ops[k]]
			t.Operations = append(t.Operations, n.ID)
			if st := o.room.stations[n.station]; !slices.Contains(t.Places, st.Title) {
				t.Places = append(t.Places, st.Title)
			}
		}
		for _, p := range t.Places {
			wants[p]++
		}
		row.Tables = append(row.Tables, t)
	}
	for k, st := range o.room.stations {
		if st.Kind != "machine" && st.Kind != "iron" || wants[st.Title] == 0 {
			continue
		}
		have := 0
		for _, twin := range o.room.stations {
			if twin.Kind == st.Kind && twin.Machine == st.Machine {
				have++
			}
		}
		first := slices.IndexFunc(o.room.stations, func(x station) bool { return x.Kind == st.Kind && x.Machine == st.Machine })
		if more := wants[st.Title] - have; first == k && more > 0 {
			row.Lacking = append(row.Lacking, fmt.Sprintf("%d more of %s", more, lowerFirst(st.Title)))
		}
	}
}
