package process

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"bodkin/process/order"
)

// SittingSchema is the version of a sitting's JSON form.
const SittingSchema = "bodkin-sitting-1"

// Sitting is several garments made in one go: one order over all of them, in
// which they share what the machines are set to. Names of operations and seams
// have the garment's number before them, as in 2/side.1; trial rows belong to
// all. Slices are never nil.
type Sitting struct {
	Schema   string           `json:"schema"`
	Workroom string           `json:"workroom"`
	Units    string           `json:"units"`
	Garments []SittingGarment `json:"garments"`

	Stations   []Station   `json:"stations"`
	Operations []Operation `json:"operations"` // in planned order
	Steps      []Step      `json:"steps"`
	Changes    []Change    `json:"changes"`
	Checks     []Check     `json:"checks"`
	Order      Order       `json:"order"` // seam by seam, and each garment before the next
	Totals     Totals      `json:"totals"`

	InTurn       float64     `json:"in_turn_minutes"` // what the changes take where each garment is finished before the next is begun
	InTurnProved bool        `json:"in_turn_proved"`
	Thread       []Thread    `json:"thread"`
	Bobbins      []BobbinUse `json:"bobbins"`
	Needles      []NeedleUse `json:"needles"`
	Tools        []Tool      `json:"tools"`
	Cautions     []Caution   `json:"cautions"` // of any of the garments, each once
	Notices      []Notice    `json:"notices"`
	Begun        *Begun      `json:"begun,omitempty"` // where the work has been begun
}

// SittingGarment is one garment of a sitting, with its plan by itself: what is
// cut for it, how it is sewn, and what it takes.
type SittingGarment struct {
	Number int    `json:"number"` // from 1
	Label  string `json:"label"`  // in the titles of steps
	Plan   *Plan  `json:"plan"`
}

// GarmentError is an error of one garment of a sitting.
type GarmentError struct {
	Garment int // from 0
	Err     error
}

func (e *GarmentError) Error() string { return e.Err.Error() }

// Unwrap is the error itself.
func (e *GarmentError) Unwrap() error { return e.Err }

// Sit plans several garments in one sitting, in the room of the first, from what
// is done already; nil where nothing is. The context and the options limit each
// search for an order as in [Work], whose errors these are, those of one garment
// in a [*GarmentError]; faults are those of all jobs together. What a job pins or
// wishes holds within its garment; how it finds and leaves the machines, and the
// cones that it counts, hold for all.
func Sit(ctx context.Context, ins []Input, begun *Begun, opts order.Options) (*Sitting, error) {
	ins, err := oneRoom(ins)
	if err != nil {
		return nil, err
	}
	ready, owns, err := readyAll(ins)
	if err != nil {
		return nil, err
	}
	s := &Sitting{Schema: SittingSchema, Garments: []SittingGarment{}, Begun: begun}
	all := &operator{shelf: ready[0].shelf, room: ready[0].room, style: ready[0].style, quantity: 1, labels: labelsOf(ins)}
	for k, o := range ready {
		all.join(o, k+1)
	}
	all.tests()
	all.leaveThreaded()
	all.scrapsFirst()
	all.testFirst()
	all.leaveLast()
	if all.resume(begun); len(all.ops) == 0 {
		return nil, &DoneError{Garment: listWords(all.labels, "and")}
	}
	turns := all.inTurn()
	own := all.owned(owns)
	a, err := all.arrange(ctx, "the garments", own, opts) // first, should time be short
	if err != nil {
		return nil, err
	}
	all.tryEach()
	if s.InTurn, s.InTurnProved, err = turns.least(ctx, opts); err != nil {
		return nil, err
	}
	for k, in := range ins {
		p, err := Work(ctx, in, opts)
		if err != nil {
			return nil, &GarmentError{k, err}
		}
		s.Garments = append(s.Garments, SittingGarment{Number: k + 1, Label: all.labels[k], Plan: p})
	}
	return s, all.tellSitting(s, a, own, ready)
}

// tellSitting writes the work in its order into the sitting.
func (o *operator) tellSitting(s *Sitting, a *arrangement, own *OwnOrder, each []*operator) error {
	told := &Plan{Begun: s.Begun}
	o.tell(told, a)
	told.Order.Own = own
	s.Workroom, s.Units = s.Garments[0].Plan.Workroom, o.style.String()
	s.Stations, s.Operations, s.Steps, s.Changes, s.Checks = told.Stations, told.Operations, told.Steps, told.Changes, told.Checks
	var err error
	if s.Thread, err = o.thread(); err != nil {
		return err
	}
	if told.Bobbins, err = o.bobbins(told, a); err != nil {
		return err
	}
	if s.Tools, err = o.tools(); err != nil {
		return err
	}
	s.Order, s.Totals = told.Order, told.Totals // winding included
	s.Bobbins, s.Needles = told.Bobbins, o.needles(told)
	s.Cautions, s.Notices = []Caution{}, []Notice{}
	for _, g := range s.Garments {
		for _, c := range g.Plan.Cautions {
			if !slices.Contains(s.Cautions, c) {
				s.Cautions = append(s.Cautions, c)
			}
		}
	}
	kinds, err := o.kindsOfThread()
	if err != nil {
		return err
	}
	s.Notices = slices.Concat(s.garmentNotices(each), kinds, o.orderNotices(told))
	return nil
}

// garmentNotices are those on single garments, each once, with the garments that it
// is of where it does not hold of all.
func (s *Sitting) garmentNotices(each []*operator) []Notice {
	var all [][]Notice
	for k, g := range s.Garments {
		all = append(all, each[k].garmentNotices(g.Plan))
	}
	out, told := []Notice{}, map[Notice]bool{}
	for _, list := range all {
		for _, n := range list {
			if told[n] {
				continue
			}
			told[n] = true
			var of []string
			for k, other := range all {
				if slices.Contains(other, n) {
					of = append(of, s.Garments[k].Label)
				}
			}
			if len(of) < len(all) {
				n.About = listWords(of, "and") + ", " + lowerFirst(n.About)
			}
			out = append(out, n)
		}
	}
	return out
}

// join takes in the work on one more garment, but for trial rows and leaving
// machines threaded, which all garments share.
func (o *operator) join(g *operator, number int) {
	at := make([]int, len(g.ops)) // where each operation goes, -1 where it is left out
	for i, n := range g.ops {
		if at[i] = -1; n.trial() || n.Does == "thread" {
			continue
		}
		at[i] = len(o.ops)
		n.ID = numbered(number, n.ID)
		n.Garment, n.many = number, g.quantity
		if n.Seam != "" {
			n.Seam = numbered(number, n.Seam)
		}
		if n.line >= 0 {
			n.line += len(o.lines)
		}
		o.ops = append(o.ops, n)
	}
	for i := range g.ops {
		if at[i] < 0 {
			continue
		}
		var after []need
		for _, n := range g.ops[i].after {
			if n.op = at[n.op]; n.op >= 0 {
				after = append(after, n)
			}
		}
		o.ops[at[i]].after = after
	}
	for _, span := range g.span {
		var moved []int
		for _, i := range span {
			moved = append(moved, at[i])
		}
		o.span = append(o.span, moved)
	}
	for _, l := range g.lines {
		c := *l
		c.raised = g.raised(l)
		c.name = numbered(number, l.name)
		o.lines = append(o.lines, &c)
	}
	for _, w := range g.wishes {
		if w.everyPick() {
			o.wishOnce(w)
			continue
		}
		w.Wish = o.labelled(w.Wish, number)
		w.pairs = moved(w.pairs, at)
		o.wishes = append(o.wishes, w)
	}
	o.cloths = append(o.cloths, g.cloths...)
	o.facings = append(o.facings, g.facings...)
}

// wishOnce takes in a wish to stay with one part at a time. It holds for all
// garments; of several it is worth the most that any asks for.
func (o *operator) wishOnce(w wishFor) {
	k := slices.IndexFunc(o.wishes, func(x wishFor) bool { return x.Wish == w.Wish })
	if k < 0 {
		o.wishes = append(o.wishes, w)
		return
	}
	o.wishes[k].Minutes = max(o.wishes[k].Minutes, w.Minutes)
}

// labelsOf are the names of the garments; those of one title are told apart by
// their numbers.
func labelsOf(ins []Input) []string {
	var titles []string
	for _, in := range ins {
		titles = append(titles, cmp.Or(in.Job.Title, in.Garment.Title))
	}
	labels := slices.Clone(titles)
	for k, title := range titles {
		if slices.Contains(titles[:k], title) || slices.Contains(titles[k+1:], title) {
			labels[k] = fmt.Sprintf("%s no. %d", title, k+1)
		}
	}
	return labels
}

// scrapsFirst makes every trial row wait for all that is cut, whose scraps it
// needs.
func (o *operator) scrapsFirst() {
	for t, n := range o.ops {
		if !n.trial() {
			continue
		}
		for i, c := range o.ops {
			if c.Does == "cut" && c.line < 0 {
				o.need(t, i, "all is cut first, and the trial needs a scrap of it")
			}
		}
	}
}

// tryEach asks for a trial row on every cloth that is sewn at a machine.
func (o *operator) tryEach() {
	for t := range o.ops {
		n := &o.ops[t]
		if !n.trial() || o.room.stations[n.station].Kind != "machine" {
			continue
		}
		var others []string
		for _, m := range o.ops {
			if m.station != n.station || m.trial() || m.Does == "thread" {
				continue
			}
			if w := lowerFirst(m.cloths[0].Title); w != lowerFirst(n.cloths[0].Title) && !slices.Contains(others, w) {
				others = append(others, w)
			}
		}
		if len(others) > 0 {
			n.Text += " Try " + listWords(others, "and") + " as well before the first row on it, with the setting of that step."
		}
	}
}

// inTurn is the problem of the operations where each garment is finished before the
// next is begun.
type inTurn struct {
	problem order.Problem
	attrs   [][]attribute
	unit    int64 // of its costs, in a second
}

func (o *operator) inTurn() inTurn {
	p, attrs := o.problem()
	unit := o.spread(&p, attrs, o.kindred())
	for i, n := range o.ops {
		q := &p.Operations[i]
		q.After = slices.Clone(q.After)
		for j, first := range o.ops {
			// All is cut out first in either way.
			if first.Garment > 0 && first.Garment < n.Garment && n.Does != "cut" {
				q.After = append(q.After, j)
			}
		}
	}
	o.loosenTests(p)
	return inTurn{p, attrs, unit}
}

// least is the least that the changes take so, and whether that is proved.
func (t inTurn) least(ctx context.Context, opts order.Options) (float64, bool, error) {
	r, err := order.Solve(ctx, t.problem, opts)
	if err != nil {
		return 0, false, err
	}
	cost, err := order.CostWith(t.problem, r.Sequence, r.Ways)
	return minutesOfChange(cost, t.attrs, t.unit), r.Proved, err
}
