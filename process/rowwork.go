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
// Minutes are at the pace of the plan.
type RowWork struct {
	Garments int        `json:"garments"`
	Work     float64    `json:"work_minutes"` // on one garment
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
	Minutes    float64  `json:"minutes"`
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
// Trial rows are done once for all and left out, and so is setting machines up
// between garments. Errors are those of [Work]; a [*CannotError] where an
// operation is longer than the rate leaves it.
func Row(ctx context.Context, in Input, want Line) (*RowWork, error) {
	o, _, relations, err := prepare(in)
	if err != nil {
		return nil, err
	}
	o.precede(relations)
	l, ops := o.line()
	out := &RowWork{Garments: want.Garments, Rate: want.PerHour, Rows: []TableRow{}}
	var sum int64
	for _, t := range l.Times {
		sum += t
	}
	out.Work = minutesFrom(sum)
	tell := func(r balance.Row, cycle int64) TableRow {
		row := TableRow{People: len(r.Stations), Every: minutesFrom(cycle), PerHour: math.Round(600/minutesFrom(cycle)) / 10,
			All: minutesFrom(cycle * int64(want.Garments+len(r.Stations)-1)), Bound: minutesFrom(r.Bound), Proved: r.Proved, Tables: []Table{}}
		o.tables(&row, r, l, ops)
		return row
	}
	for k := 1; k <= max(mostTables, len(in.Workroom.People)); k++ {
		r, err := balance.Quickest(ctx, l, k, balance.Options{Width: rowWidth})
		if err != nil {
			return nil, err
		}
		if n := len(out.Rows); n > 0 && out.Rows[n-1].Every <= minutesFrom(r.Cycle) {
			break // more people do not help: one operation is as long
		}
		out.Rows = append(out.Rows, tell(r, r.Cycle))
	}
	if want.PerHour > 0 {
		cycle := int64(math.Floor(60/want.PerHour/tick + 1e-9))
		r, err := balance.Fewest(ctx, l, cycle, balance.Options{Width: rowWidth})
		if wrong, ok := errors.AsType[*balance.InvalidError](err); ok {
			n := o.ops[ops[wrong.Task]]
			return nil, &CannotError{About: fmt.Sprintf("garment in a row that gives %g an hour", want.PerHour), Why: []string{
				fmt.Sprintf("%s takes %.1f minutes, and a garment would have to leave every %.1f", n.ID, minutesFrom(l.Times[wrong.Task]), 60/want.PerHour),
				"ask for a lower rate, or set up two rows of half the rate each"}}
		}
		if err != nil {
			return nil, err
		}
		fewest := r
		if r, err = balance.Quickest(ctx, l, len(fewest.Stations), balance.Options{Width: rowWidth}); err != nil {
			return nil, err
		}
		if r.Cycle > cycle || len(r.Stations) != len(fewest.Stations) {
			r, r.Cycle = fewest, cycle
		}
		row := tell(r, r.Cycle)
		row.Bound, row.Proved = float64(fewest.Bound), fewest.Proved
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
func (o *operator) tables(row *TableRow, r balance.Row, l balance.Line, ops []int) {
	row.Lacking = []string{}
	wants := map[string]int{}
	for _, tasks := range r.Stations {
		t := Table{Operations: []string{}, Places: []string{}}
		var sum int64
		for _, k := range tasks {
			n := o.ops[ops[k]]
			sum += l.Times[k]
			t.Operations = append(t.Operations, n.ID)
			if st := o.room.stations[n.station]; !slices.Contains(t.Places, st.Title) {
				t.Places = append(t.Places, st.Title)
			}
		}
		t.Minutes = minutesFrom(sum)
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
