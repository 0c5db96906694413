package process

import (
	"slices"
	"strconv"
	"strings"
)

// tell writes the arranged operations into the plan: steps, the changes before
// them, the checks after them, and what the order costs.
func (o *operator) tell(plan *Plan, a *arrangement) {
	plan.Operations, plan.Steps, plan.Changes, plan.Checks = []Operation{}, []Step{}, []Change{}, []Check{}
	plan.Stations = o.usedStations()
	stepOf := map[int]int{}
	for at, i := range a.sequence {
		n := o.ops[i].Operation
		n.After = []After{}
		for _, need := range o.ops[i].after {
			n.After = append(n.After, After{ID: o.ops[need.op].ID, Because: need.because})
		}
		plan.Operations = append(plan.Operations, n)
		cost := a.cost.Steps[at]
		if k := len(plan.Steps); k > 0 && cost.Move == 0 && len(cost.Changes) == 0 &&
			plan.Steps[k-1].Station == n.Station && sameNeedle(plan.Steps[k-1].Setting, n.Setting) {
			s := &plan.Steps[k-1]
			s.Operations, s.Minutes = append(s.Operations, n.ID), s.Minutes+n.Minutes
			s.Setting = s.Setting.with(n.Setting)
		} else {
			plan.Steps = append(plan.Steps, Step{Number: k + 1, Station: n.Station, Setting: n.Setting,
				Operations: []string{n.ID}, Minutes: n.Minutes})
			o.changes(plan, a, at, i)
		}
		stepOf[i] = len(plan.Steps)
	}
	for k := range plan.Steps {
		s := &plan.Steps[k]
		s.Title = o.stepTitle(s.Operations, 3, "; ")
		o.whose(plan, s)
		if plan.Begun != nil {
			s.Paper = plan.Begun.paperSteps(s.Operations)
			s.Title += formerly(s.Paper)
		}
	}
	o.checks(plan, stepOf)
	o.price(plan, a)
}

// sameNeedle reports whether one needle serves both. A hand needle is taken up in
// no time, so that the order does not mind it, but a step names one.
func sameNeedle(s, t Setting) bool { return s.Needle == t.Needle || s.Needle == "" || t.Needle == "" }

// with fills in what the setting leaves open: at the iron an operation may not
// mind the heat.
func (s Setting) with(t Setting) Setting {
	if s.HeatDots == 0 {
		s.HeatDots, s.Steam = t.HeatDots, t.Steam
	}
	if s.Needle == "" {
		s.Needle = t.Needle
	}
	return s
}

func (o *operator) usedStations() []Station {
	out := []Station{}
	for k, st := range o.room.stations {
		if slices.ContainsFunc(o.ops, func(n op) bool { return n.station == k }) {
			out = append(out, st.Station)
		}
	}
	return out
}

// changes lists what must be altered before the step that was just begun.
func (o *operator) changes(plan *Plan, a *arrangement, at, i int) {
	number := len(plan.Steps)
	cost := a.cost.Steps[at]
	st := o.ops[i].station
	if cost.Move > 0 {
		plan.Changes = append(plan.Changes, Change{BeforeStep: number, Station: o.ops[i].Station, What: "move",
			From: o.room.stations[cost.From].Name, To: o.ops[i].Station, Minutes: float64(cost.Move) / 60})
	}
	for _, c := range cost.Changes {
		at := a.attributes[st][c.Attribute]
		from := ""
		if c.From >= 0 {
			from = at.values[c.From]
		}
		plan.Changes = append(plan.Changes, Change{BeforeStep: number, Station: o.ops[i].Station, What: at.what,
			From: from, To: at.values[c.To], Minutes: float64(c.Cost) / 60})
	}
}

// stepTitle says what is done to what, in so many acts or fewer, with a sign between
// them: "Stitch shoulder seams and side seams".
func (o *operator) stepTitle(ids []string, most int, between string) string {
	var acts []string
	parts := map[string][]string{}
	for _, id := range ids {
		n := o.byID(id)
		verb := o.verb(n)
		if !slices.Contains(acts, verb) {
			acts = append(acts, verb)
		}
		if n.Does != scrapTest && !slices.Contains(parts[verb], n.Part) {
			parts[verb] = append(parts[verb], n.Part)
		}
	}
	var say []string
	for _, v := range acts {
		p := parts[v]
		if len(p) > 3 {
			p = append(slices.Clone(p[:2]), strconv.Itoa(len(p)-2)+" more")
		}
		say = append(say, strings.TrimSpace(v+" "+listWords(p, "and")))
	}
	if len(say) > most {
		say = append(say[:most-1:most-1], "and more")
	}
	return upperFirst(strings.Join(say, between))
}

func (o *operator) byID(id string) op {
	return o.ops[slices.IndexFunc(o.ops, func(n op) bool { return n.ID == id })]
}

func (o *operator) verb(n op) string {
	if n.act.Title != "" {
		return lowerFirst(n.act.Title)
	}
	return n.Does
}

func (o *operator) checks(plan *Plan, stepOf map[int]int) {
	for k, c := range o.checked() {
		c.AfterStep = stepOf[k]
		title := o.lines[o.ops[k].line].title
		c.What = upperFirst(o.inStep(plan.Steps[c.AfterStep-1], title, o.ops[k].Garment)) + strings.TrimPrefix(c.What, upperFirst(title))
		plan.Checks = append(plan.Checks, c)
	}
	slices.SortStableFunc(plan.Checks, func(a, b Check) int { return a.AfterStep - b.AfterStep })
}

// threaded reports whether what is changed is a thread; those that are changed
// at once, as in needle and bobbin, count as one change of it.
func threaded(what string) bool { return what == "thread" || what == "bobbin" || what == "loopers" }

// price adds up what the order costs, and what seam by seam would have cost.
func (o *operator) price(plan *Plan, a *arrangement) {
	plan.Order = Order{
		ChangeMinutes: float64(a.cost.Total-wishSeconds(a.cost)) / 60,
		BoundMinutes:  float64(max(a.bound-wishSeconds(a.cost), 0)) / 60,
		Proved:        a.result.Proved, Explored: a.result.Expanded,
		SeamBySeamMinutes: a.seamBySeam.minutes, SeamBySeamMoves: a.seamBySeam.moves,
		SeamBySeamThreadChanges: a.seamBySeam.threads,
	}
	plan.Order.Textbook, plan.Order.Wishes = a.book, o.tellWishes(a.cost)
	t := Totals{Operations: len(plan.Operations), Steps: len(plan.Steps), ChangeMinutes: plan.Order.ChangeMinutes}
	for _, n := range plan.Operations {
		t.SewMinutes += n.Minutes
	}
	rethreaded := 0 // the last step that was
	for _, c := range plan.Changes {
		switch {
		case c.What == "move":
			t.StationMoves++
		case threaded(c.What) && c.From != "":
			if c.BeforeStep != rethreaded {
				t.ThreadChanges++
			}
			rethreaded = c.BeforeStep
		case c.What == "needle" && c.From != "":
			t.NeedleChanges++
		}
	}
	plan.Totals = t
	plan.Order.Forced = o.forced(plan, a)
	for i, l := range o.lines {
		for _, k := range o.span[i] {
			l.minutes += o.ops[k].Minutes / float64(o.quantity)
		}
	}
}
