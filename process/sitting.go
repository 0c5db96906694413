package process

import (
	"context"
	"fmt"
	"slices"
	"strconv"

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

	InTurn       float64          `json:"in_turn_minutes"` // what the changes take where each garment is finished before the next is begun
	InTurnProved bool             `json:"in_turn_proved"`
	Thread       []ThreadTogether `json:"thread"`
	Cautions     []Caution        `json:"cautions"` // of any of the garments, each once
	Notices      []Notice         `json:"notices"`
}

// SittingGarment is one garment of a sitting, with its plan by itself: what is
// cut for it, how it is sewn, and what it takes.
type SittingGarment struct {
	Number int    `json:"number"` // from 1
	Label  string `json:"label"`  // in the titles of steps
	Plan   *Plan  `json:"plan"`
}

// Sit plans several garments in one sitting, in the room of the first. The
// context and the options limit each search for an order as in [Work], whose
// errors these are. What a job pins or wishes holds within its garment.
func Sit(ctx context.Context, ins []Input, opts order.Options) (*Sitting, error) {
	s := &Sitting{Schema: SittingSchema, Garments: []SittingGarment{}, Cautions: []Caution{}, Notices: []Notice{}}
	var all *operator
	var whose []int
	var thread Together
	for k, in := range ins {
		p, err := Work(ctx, in, opts)
		if err != nil {
			return nil, err
		}
		s.Garments = append(s.Garments, SittingGarment{Number: k + 1, Label: p.Title, Plan: p})
		thread.add(p)
		for _, c := range p.Cautions {
			if !slices.Contains(s.Cautions, c) {
				s.Cautions = append(s.Cautions, c)
			}
		}
		o, _, relations, err := prepare(in)
		if err != nil {
			return nil, err
		}
		o.precede(relations)
		if _, err := o.pin(in.Job); err != nil {
			return nil, err
		}
		if err := o.wishing(in.Job); err != nil {
			return nil, err
		}
		if all == nil {
			all = &operator{shelf: o.shelf, room: o.room, style: o.style, quantity: 1}
		} else if err := all.room.stand(in.Job.Machines); err != nil {
			return nil, err
		}
		whose = append(whose, slices.Repeat([]int{k}, all.join(o, k+1))...)
		s.Notices = append(s.Notices, o.lacking...)
	}
	s.label(all, whose)
	all.tests()
	all.leaveThreaded()
	all.scrapsFirst()
	all.testFirst()
	all.leaveLast()
	var err error
	if s.InTurn, s.InTurnProved, err = all.inTurn(ctx, whose, opts); err != nil {
		return nil, err
	}
	a, err := all.arrange(ctx, "the garments", nil, opts)
	if err != nil {
		return nil, err
	}
	all.tryEach()
	told := &Plan{}
	all.tell(told, a)
	s.Workroom, s.Units = ins[0].Workroom.Name, all.style.String()
	s.Stations, s.Operations, s.Steps, s.Changes, s.Checks = told.Stations, told.Operations, told.Steps, told.Changes, told.Checks
	s.Order, s.Totals, s.Thread = told.Order, told.Totals, thread.Thread
	return s, nil
}

// join takes in the work on one more garment, but for trial rows and leaving
// machines threaded, which all garments share. It returns how many operations it
// took.
func (o *operator) join(g *operator, number int) int {
	prefix := strconv.Itoa(number) + "/"
	at := make([]int, len(g.ops)) // where each operation goes, -1 where it is left out
	base := len(o.ops)
	for i, n := range g.ops {
		if at[i] = -1; n.trial() || n.Does == "thread" {
			continue
		}
		at[i] = len(o.ops)
		n.ID = prefix + n.ID
		if n.Seam != "" {
			n.Seam = prefix + n.Seam
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
		c.name = prefix + l.name
		o.lines = append(o.lines, &c)
	}
	for _, w := range g.wishes {
		if w.Wish == wishRegion {
			o.wishRegion(w)
			continue
		}
		w.Wish = prefix + w.Wish
		var pairs []order.Wish
		for _, x := range w.pairs {
			if x.First, x.Then = at[x.First], at[x.Then]; x.First >= 0 && x.Then >= 0 {
				pairs = append(pairs, x)
			}
		}
		w.pairs = pairs
		o.wishes = append(o.wishes, w)
	}
	o.cloths = append(o.cloths, g.cloths...)
	return len(o.ops) - base
}

// wishRegion takes in a wish to stay with one part at a time. It holds for all
// garments; of several it is worth the most that any asks for.
func (o *operator) wishRegion(w wishFor) {
	k := slices.IndexFunc(o.wishes, func(x wishFor) bool { return x.Wish == wishRegion })
	if k < 0 {
		o.wishes = append(o.wishes, w)
		return
	}
	o.wishes[k].Minutes = max(o.wishes[k].Minutes, w.Minutes)
}

// label tells in the words on each operation and line which garment it is of;
// garments of one title are told apart by their numbers.
func (s *Sitting) label(o *operator, whose []int) {
	for k := range s.Garments {
		g := &s.Garments[k]
		same := slices.ContainsFunc(s.Garments, func(x SittingGarment) bool {
			return x.Number != g.Number && x.Plan.Title == g.Label
		})
		if same {
			g.Label = fmt.Sprintf("%s, %d", g.Label, g.Number)
		}
	}
	for i, k := range whose {
		n := &o.ops[i]
		n.Part += " (" + s.Garments[k].Label + ")"
	}
	line := 0
	for _, g := range s.Garments {
		for range g.Plan.Seams {
			o.lines[line].title += " (" + g.Label + ")"
			line++
		}
	}
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

// inTurn finds the least that the changes take where each garment is finished
// before the next is begun, and whether that is proved.
func (o *operator) inTurn(ctx context.Context, whose []int, opts order.Options) (float64, bool, error) {
	p, attrs := o.problem()
	unit := o.spread(&p, attrs, o.kindred())
	for i := range whose {
		q := &p.Operations[i]
		q.After = slices.Clone(q.After)
		for j := range whose {
			// All is cut out first in either way.
			if whose[j] == whose[i]-1 && o.ops[i].Does != "cut" {
				q.After = append(q.After, j)
			}
		}
	}
	o.loosenTests(p)
	r, err := order.Solve(ctx, p, opts)
	if err != nil {
		return 0, false, err
	}
	cost, err := order.CostWith(p, r.Sequence, r.Ways)
	return minutesOfChange(cost, attrs, unit), r.Proved, err
}
