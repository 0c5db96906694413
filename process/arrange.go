package process

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"bodkin/process/order"
)

// secondsIn turns minutes into the whole seconds that the search counts in.
func secondsIn(minutes float64) int64 { return int64(math.Round(minutes * 60)) }

// arrangement is the order of the work and what it costs.
type arrangement struct {
	sequence   []int
	result     order.Result
	cost       order.Breakdown
	seamBySeam order.Breakdown
	book       *Textbook     // nil where none fits
	attributes [][]attribute // of each station
}

// attribute is one thing about a station that is set for an operation.
type attribute struct {
	what   string // thread, needle, foot, stitch, heat
	values []string
	index  map[string]int
}

// CycleError says that the work can have no order: the operations wait for one
// another in a circle.
type CycleError struct {
	Garment string
	Round   []string // each operation with the reason why it waits for the next
}

func (e *CycleError) Error() string {
	return "the work on " + e.Garment + " can have no order: " + strings.Join(e.Round, "; ")
}

// DoneError says that of work begun nothing is left.
type DoneError struct{ Garment string }

func (e *DoneError) Error() string { return "nothing is left to do on " + e.Garment }

// priceOwn finds what the changes would take without the maker's own order.
func (o *operator) priceOwn(ctx context.Context, own *OwnOrder, opts order.Options) error {
	p, _ := o.problem()
	for i, n := range o.ops {
		p.Operations[i].After = nil
		for _, need := range n.after {
			if !need.asked {
				p.Operations[i].After = append(p.Operations[i].After, need.op)
			}
		}
	}
	o.loosenTests(p)
	r, err := order.Solve(ctx, p, opts)
	own.FreeMinutes, own.FreeProved = float64(r.Cost)/60, r.Proved
	return err
}

// arrange finds the order of the operations with the fewest minutes of change.
func (o *operator) arrange(ctx context.Context, garment string, opts order.Options) (*arrangement, error) {
	p, attrs := o.problem()
	bySeam, err := o.teach(&p)
	if c, ok := errors.AsType[*order.CycleError](err); ok {
		return nil, o.circle(garment, c.Cycles[0])
	}
	if err != nil {
		return nil, err
	}
	a := &arrangement{attributes: attrs}
	o.settleTests(p, bySeam)
	if a.seamBySeam, err = order.Cost(p, bySeam); err != nil {
		return nil, err
	}
	if err := o.priceBook(p, a); err != nil {
		return nil, err
	}
	o.loosenTests(p)
	if a.result, err = order.Solve(ctx, p, opts); err != nil {
		return nil, err
	}
	a.sequence = a.result.Sequence
	o.settleTests(p, a.sequence)
	a.cost, err = order.Cost(p, a.sequence)
	return a, err
}

// priceBook finds what a published order costs.
func (o *operator) priceBook(p order.Problem, a *arrangement) error {
	book, sequence, err := o.textbook()
	if err != nil || book == nil {
		return err
	}
	o.settleTests(p, sequence)
	cost, err := order.Cost(p, sequence)
	if err != nil {
		return err
	}
	book.ChangeMinutes = float64(cost.Total) / 60
	book.StationMoves, book.ThreadChanges = o.tally(cost, a.attributes)
	a.book = book
	return nil
}

// loosenTests lets a test row be sewn with whatever comes first at its machine:
// it must not force a colour.
func (o *operator) loosenTests(p order.Problem) {
	for i := range p.Operations {
		if o.ops[i].trial() {
			for k := range p.Operations[i].Setting {
				p.Operations[i].Setting[k] = order.Any
			}
		}
	}
}

// settleTests sets every test up like the operation that follows it at its
// station in the sequence. That moves the first setting-up forward to the test
// and costs nothing more.
func (o *operator) settleTests(p order.Problem, sequence []int) {
	for at, i := range sequence {
		if !o.ops[i].trial() {
			continue
		}
		for _, next := range sequence[at+1:] {
			if o.ops[next].station == o.ops[i].station {
				o.ops[i].tryout(o.ops[next], o)
				copy(p.Operations[i].Setting, p.Operations[next].Setting)
				break
			}
		}
	}
}

// problem states the operations as numbers.
func (o *operator) problem() (order.Problem, [][]attribute) {
	p := order.Problem{Start: order.Nowhere}
	if o.room.begin >= 0 {
		p.Start = o.room.begin
	}
	attrs := make([][]attribute, len(o.room.stations))
	settings := make([][]int, len(o.ops))
	for k, st := range o.room.stations {
		names := attributeNames(st.Kind)
		attrs[k] = make([]attribute, len(names))
		for a, w := range names {
			attrs[k][a] = attribute{what: w, index: map[string]int{}}
			if v := st.held.value(w); v != "" {
				attrs[k][a].intern(v)
			}
		}
	}
	for i, n := range o.ops {
		settings[i] = make([]int, len(attrs[n.station]))
		for a := range attrs[n.station] {
			settings[i][a] = order.Any
			if v := n.Setting.value(attrs[n.station][a].what); v != "" {
				settings[i][a] = attrs[n.station][a].intern(v)
			}
		}
	}
	for k, st := range o.room.stations {
		var s order.Station
		for _, a := range attrs[k] {
			s.Attributes = append(s.Attributes, a.costs(st))
		}
		p.Stations = append(p.Stations, s)
	}
	p.Moves = o.moves()
	for i, n := range o.ops {
		q := order.Operation{Station: n.station, Setting: settings[i], Group: n.line + 1}
		for _, need := range n.after {
			q.After = append(q.After, need.op)
		}
		p.Operations = append(p.Operations, q)
	}
	return p, attrs
}

func attributeNames(kind string) []string {
	switch kind {
	case "machine":
		return []string{"thread", "needle", "foot", "stitch"}
	case "hand":
		return []string{"thread"}
	case "iron":
		return []string{"heat"}
	}
	return nil
}

// value is the setting of one attribute in words; empty where it is not set.
func (s Setting) value(what string) string {
	switch what {
	case "thread":
		return s.Thread
	case "needle":
		return s.Needle
	case "foot":
		return s.Foot
	case "stitch":
		if s.Stitch == "" {
			return ""
		}
		return s.Stitch + ", " + mmWords(s.StitchMM)
	case "heat":
		if s.HeatDots == 0 {
			return ""
		}
		return strconv.Itoa(s.HeatDots)
	}
	return ""
}

func (a *attribute) intern(v string) int {
	i, ok := a.index[v]
	if !ok {
		i = len(a.values)
		a.index[v], a.values = i, append(a.values, v)
	}
	return i
}

// costs are the seconds that changing the attribute takes. Setting it for the
// first time is paid like a change, except what the station holds already.
func (a *attribute) costs(st station) order.Attribute {
	n := len(a.values)
	out := order.Attribute{Start: order.Unset, First: make([]int64, n)}
	if v := st.held.value(a.what); v != "" {
		out.Start = a.index[v]
	}
	if a.what == "heat" {
		out.Change = order.Uniform(n, 0)
		for i, from := range a.values {
			f, _ := strconv.Atoi(from)
			out.First[i] = secondsIn(st.minutes.Hotter * float64(f))
			for j, to := range a.values {
				t, _ := strconv.Atoi(to)
				if t > f {
					out.Change[i][j] = secondsIn(st.minutes.Hotter * float64(t-f))
				} else if t < f {
					out.Change[i][j] = secondsIn(st.minutes.Cooler * float64(f-t))
				}
			}
		}
		return out
	}
	minutes := map[string]float64{
		"thread": st.minutes.Thread, "needle": st.minutes.Needle,
		"foot": st.minutes.Foot, "stitch": st.minutes.Stitch,
	}[a.what]
	out.Change = order.Uniform(n, secondsIn(minutes))
	for i := range out.First {
		out.First[i] = secondsIn(minutes)
	}
	if a.what == "foot" || a.what == "stitch" {
		for i := range out.First {
			out.First[i] = 0 // part of getting the machine out
		}
	}
	return out
}

// moves: going to another station takes the room's minutes; the hands work at
// the table, so between those two nobody gets up.
func (o *operator) moves() [][]int64 {
	m := order.Uniform(len(o.room.stations), secondsIn(o.room.move))
	t, h := o.room.at(tableStation), o.room.at(handStation)
	m[t][h], m[h][t] = 0, 0
	return m
}

// teach ranks the operations as a teacher would tell them, whole seams one
// after another in the garment's own order, and returns that order: the seam by
// seam way of working.
func (o *operator) teach(p *order.Problem) ([]int, error) {
	if err := order.Validate(*p); err != nil {
		return nil, err
	}
	key := make([]int, len(o.ops))
	for i, n := range o.ops {
		switch {
		case n.ID == trying:
			key[i] = len(o.lines) * 1000
			for l, line := range o.lines {
				if line.work == joining {
					key[i] = max((l+1)*1000+999, 0)
				}
			}
		case n.line < 0:
			key[i] = i
		default:
			key[i] = (n.line+1)*1000 + n.Pass
		}
	}
	seq := o.byKey(func(i int) int { return key[i] })
	for rank, i := range seq {
		p.Operations[i].Rank = rank
	}
	return seq, nil
}

// circle names the operations that wait for one another, and why.
func (o *operator) circle(garment string, cycle []int) error {
	e := &CycleError{Garment: garment}
	for k, first := range cycle {
		then := cycle[(k+1)%len(cycle)]
		for _, n := range o.ops[then].after {
			if n.op == first && n.because != nextPass {
				e.Round = append(e.Round, fmt.Sprintf("%s waits for %s because %s", o.ops[then].ID, o.ops[first].ID, n.because))
				break
			}
		}
	}
	return e
}
