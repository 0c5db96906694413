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
// rows are done once for all and left out. Errors are those of [Work]; a
// [*CannotError] where an operation is longer than the rate leaves it, or no row
// keeps up with the rate.
func Row(ctx context.Context, in Input, want Line) (*RowWork, error) {
	o, _, relations, err := prepare(in)
	if err != nil {
		return nil, err
	}
	o.precede(relations)
	l, ops := o.line()
	y := o.seating(in.Workroom.People, l, ops)
	out := &RowWork{Garments: want.Garments, Rate: want.PerHour, Rows: []TableRow{}}
	var sum int64
	for _, t := range l.Times {
		sum += t
	}
	out.Work = minutesFrom(sum)
	tell := func(r balance.Row) TableRow {
		seats, cycle := y.seat(r.Stations)
		bound := y.bound(r.Bound, sum, len(r.Stations))
		row := TableRow{People: len(r.Stations), Every: minutesFrom(cycle), PerHour: math.Round(600/minutesFrom(cycle)) / 10,
			All: minutesFrom(cycle * int64(want.Garments+len(r.Stations)-1)), Bound: minutesFrom(bound), Proved: cycle <= bound, Tables: []Table{}}
		o.tables(&row, r, ops)
		y.name(&row, r, seats)
		return row
	}
	for k := 1; k <= max(mostTables, len(in.Workroom.People)); k++ {
		r, err := balance.Quickest(ctx, l, k, balance.Options{Width: rowWidth})
		if err != nil {
			return nil, err
		}
		row := tell(r)
		if n := len(out.Rows); n > 0 && out.Rows[n-1].Every <= row.Every {
			break // more people do not help: one operation is as long, or they are slow
		}
		out.Rows = append(out.Rows, row)
	}
	if want.PerHour > 0 {
		cannot := func(why ...string) error {
			return &CannotError{About: fmt.Sprintf("garment in a row that gives %g an hour", want.PerHour), Why: why}
		}
		cycle := int64(math.Floor(60/want.PerHour/tick + 1e-9))
		// Those who are quicker than the plan do more of it in that time.
		r, err := balance.Fewest(ctx, l, int64(float64(cycle)/min(y.quickest(), 1)), balance.Options{Width: rowWidth})
		if wrong, ok := errors.AsType[*balance.InvalidError](err); ok {
			n := o.ops[ops[wrong.Task]]
			return nil, cannot(
				fmt.Sprintf("%s takes %.1f minutes, and a garment would have to leave every %.1f", n.ID, minutesFrom(l.Times[wrong.Task]), 60/want.PerHour),
				"ask for a lower rate, or set up two rows of half the rate each")
		}
		if err != nil {
			return nil, err
		}
		keeps := func(row TableRow) bool { return row.Every <= minutesFrom(cycle) }
		var row TableRow
		best := math.Inf(1)
		for k := len(r.Stations); ; k++ {
			q, err := balance.Quickest(ctx, l, k, balance.Options{Width: rowWidth})
			if err != nil {
				return nil, err
			}
			if row = tell(q); !keeps(row) && k == len(r.Stations) {
				row = tell(r)
			}
			if best = min(best, row.Every); keeps(row) {
				break
			}
			if k == len(r.Stations)+mostTables || len(q.Stations) < k {
				return nil, cannot(
					fmt.Sprintf("with setting up, at the pace of those who sit there, the quickest row that was found gives one every %.1f minutes, and a garment would have to leave every %.1f", best, 60/want.PerHour),
					"ask for a lower rate, or set up two rows of half the rate each")
			}
		}
		row.Bound, row.Proved = float64(r.Bound), float64(row.People) <= float64(r.Bound)
		out.Fewest = &row
	}
	return out, nil
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
