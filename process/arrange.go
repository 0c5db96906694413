package process

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
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
	seamBySeam tallied
	book       *Textbook     // nil where none fits
	attributes [][]attribute // of each station
	bound      int64         // seconds that no order's changes take less than
}

// tallied is what another order costs.
type tallied struct {
	minutes        float64
	moves, threads int
}

// attribute is one thing about a station that is set for an operation.
type attribute struct {
	what   string // as the settings and the changes call it
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
	p, attrs := o.problem()
	unit := o.spread(&p, attrs, o.kindred())
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
	if err != nil {
		return err
	}
	cost, err := order.CostWith(p, r.Sequence, r.Ways)
	own.FreeMinutes, own.FreeProved = minutesOfChange(cost, attrs, unit), r.Proved
	return err
}

// arrange finds the order of the operations with the fewest minutes of change.
// Of several machines of one kind it settles which does what. What the maker's
// own order costs is told in own, if there is one.
func (o *operator) arrange(ctx context.Context, garment string, own *OwnOrder, opts order.Options) (*arrangement, error) {
	p, attrs := o.problem()
	bySeam, err := o.teach(&p)
	if c, ok := errors.AsType[*order.CycleError](err); ok {
		return nil, o.circle(garment, c.Cycles[0])
	}
	if err != nil {
		return nil, err
	}
	a := &arrangement{attributes: attrs}
	kinds := o.kindred()
	unit := o.spread(&p, attrs, kinds)
	o.loosenTests(p)
	if err := o.priceOthers(p, bySeam, a, unit); err != nil {
		return nil, err
	}
	if a.result, err = order.Solve(ctx, p, opts); err != nil {
		return nil, err
	}
	if own != nil {
		if err := o.priceOwn(ctx, own, opts); err != nil {
			return nil, err
		}
	}
	a.sequence = o.seat(a.result, p, kinds)
	if len(kinds) > 0 {
		p, a.attributes = o.problem()
	}
	o.settleTests(p, a.sequence)
	if a.cost, err = order.Cost(p, a.sequence); err != nil {
		return nil, err
	}
	a.bound = min(a.result.Bound/unit-(a.result.Cost/unit-a.cost.Total), a.cost.Total)
	return a, nil
}

// priceOthers finds what it costs to go seam by seam, and in a published order.
func (o *operator) priceOthers(p order.Problem, bySeam []int, a *arrangement, unit int64) error {
	cost, err := cheapest(p, bySeam)
	if err != nil {
		return err
	}
	a.seamBySeam.minutes = minutesOfChange(cost, a.attributes, unit)
	a.seamBySeam.moves, a.seamBySeam.threads = tally(cost, a.attributes)
	book, sequence, err := o.textbook()
	if err != nil || book == nil {
		return err
	}
	if cost, err = cheapest(p, sequence); err != nil {
		return err
	}
	book.ChangeMinutes = minutesOfChange(cost, a.attributes, unit)
	book.StationMoves, book.ThreadChanges = tally(cost, a.attributes)
	a.book = book
	return nil
}

// cheapest prices a sequence, done at the machines where it costs least.
func cheapest(p order.Problem, sequence []int) (order.Breakdown, error) {
	choice := slices.ContainsFunc(p.Operations, func(q order.Operation) bool { return len(q.Or) > 0 })
	if !choice {
		return order.Cost(p, sequence)
	}
	chain := p
	chain.Operations = slices.Clone(p.Operations)
	for at, i := range sequence[1:] {
		q := &chain.Operations[i]
		q.After = append(slices.Clone(q.After), sequence[at])
	}
	r, err := order.Solve(context.Background(), chain, order.Options{Nodes: chainNodes})
	if err != nil {
		return order.Breakdown{}, err
	}
	return order.CostWith(p, r.Sequence, r.Ways)
}

// chainNodes bounds the search for the cheapest machines of a given sequence.
const chainNodes = 20_000

// minutesOfChange is what moves and changes take, at machines that are used, of
// costs with so many units in a second.
func minutesOfChange(cost order.Breakdown, attributes [][]attribute, unit int64) float64 {
	used := map[int]bool{}
	sum := cost.Moves
	for _, s := range cost.Steps {
		used[s.Station] = true
		for _, c := range s.Changes {
			if c.Attribute < len(attributes[s.Station]) {
				sum += c.Cost
			}
		}
	}
	for _, e := range cost.Ends {
		if used[e.Station] {
			sum += e.Cost
		}
	}
	return float64(sum/unit) / 60
}

// loosenTests lets a test row be sewn with whatever comes first at its machine:
// it must not force a colour.
func (o *operator) loosenTests(p order.Problem) {
	for i := range p.Operations {
		if o.ops[i].trial() {
			for k := range p.Operations[i].Ways() {
				for a := range p.Operations[i].Way(k).Setting {
					p.Operations[i].Way(k).Setting[a] = order.Any
				}
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
		q := order.Operation{Station: n.station, Setting: settings[i], Group: n.line} // of no line: order.NoGroup
		for _, need := range n.after {
			q.After = append(q.After, need.op)
		}
		p.Operations = append(p.Operations, q)
	}
	o.addWishes(&p)
	return p, attrs
}

func attributeNames(kind string) []string {
	switch kind {
	case "machine":
		return []string{"thread", "bobbin", "loopers", "needle", "foot", "stitch"}
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
	case "bobbin":
		return s.Bobbin
	case "loopers":
		return s.Loopers
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
		"thread": st.minutes.Thread, "bobbin": st.minutes.Bobbin, "loopers": st.minutes.Loopers,
		"needle": st.minutes.Needle, "foot": st.minutes.Foot, "stitch": st.minutes.Stitch,
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
