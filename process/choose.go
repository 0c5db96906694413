package process

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bodkin/seams"
	"bodkin/seams/form"
)

// choose gives every line its construction: rule out, score the rest, take the
// best, keep the others with why they lost. What the job insists on is taken
// unless a rule excludes it and she did not say anyway.
func choose(lines []*line, j *Job, shelf *seams.Shelf, r *room) error {
	faults := unknownSeams(lines, j)
	for _, l := range lines {
		verdicts, err := shelf.Weigh(l.work.forWhat(), l.kind, l.facts)
		if err != nil {
			return err
		}
		if len(verdicts) == 0 {
			return &CannotError{About: l.title, Why: []string{"nothing on the shelf makes a " + l.kind}}
		}
		name, anyway, at, insisted := l.insistence(j)
		if !insisted {
			if !verdicts[0].Allowed() {
				return cannotMake(l, verdicts)
			}
			l.take(verdicts, 0)
			continue
		}
		k := slices.IndexFunc(verdicts, func(v seams.Verdict) bool { return v.Construction.Name == name })
		switch {
		case k < 0:
			faults = append(faults, form.FaultAt(at, "no construction "+strconv.Quote(name)+" for the "+l.title,
				form.Nearest(name, constructionNames(verdicts)),
				"it can be "+listWords(constructionNames(verdicts), "or")))
			continue
		case verdicts[k].Allowed():
		case !anyway:
			faults = append(faults, form.FaultAt(at, fmt.Sprintf("the %s cannot be a %s: %s", l.title,
				lowerFirst(verdicts[k].Construction.Title), strings.Join(verdicts[k].RuledOut, "; ")), "",
				"choose another, or write "+strconv.Quote(name+" anyway")+" to do it all the same"+instead(verdicts)))
			continue
		case !r.canMake(verdicts[k].Construction, shelf):
			faults = append(faults, form.FaultAt(at, fmt.Sprintf("the %s cannot be a %s in this room: %s", l.title,
				lowerFirst(verdicts[k].Construction.Title), strings.Join(verdicts[k].RuledOut, "; ")), "",
				"no wish replaces a machine that is not there"+instead(verdicts)))
			continue
		}
		l.insisted, l.anyway = true, !verdicts[k].Allowed()
		l.take(verdicts, k)
	}
	if len(faults) > 0 {
		return faults
	}
	return nil
}

func (l *line) take(verdicts []seams.Verdict, k int) {
	l.chosen, l.construction = verdicts[k], verdicts[k].Construction
	l.others = slices.Delete(slices.Clone(verdicts), k, k+1)
}

// insistence is the construction that the job, or else the garment's design,
// asks for.
func (l *line) insistence(j *Job) (name string, anyway bool, at form.Place, ok bool) {
	for _, p := range j.Seams {
		if p.Key.Value == l.name {
			name, anyway, _ = insistence(p.Value.Value)
			return name, anyway, p.Value.At, true
		}
	}
	switch {
	case l.join != nil && l.join.Insist != "":
		return l.join.Insist, true, j.Make.At, true
	case l.edge != nil && l.edge.Insist != "":
		return l.edge.Insist, true, j.Make.At, true
	}
	return "", false, form.Place{}, false
}

func unknownSeams(lines []*line, j *Job) form.Faults {
	var names []string
	for _, l := range lines {
		names = append(names, l.name)
	}
	var faults form.Faults
	for _, p := range j.Seams {
		if !slices.Contains(names, p.Key.Value) {
			faults = append(faults, form.FaultAt(p.Key.At, "this garment has no seam or edge "+strconv.Quote(p.Key.Value),
				form.Nearest(p.Key.Value, names), "it has "+listWords(names, "and")))
		}
	}
	return faults
}

func constructionNames(vs []seams.Verdict) []string {
	var out []string
	for _, v := range vs {
		out = append(out, v.Construction.Name)
	}
	return out
}

func instead(vs []seams.Verdict) string {
	if len(vs) > 0 && vs[0].Allowed() {
		return "; left to itself it would be " + vs[0].Construction.Name
	}
	return ""
}

// CannotError says that the input was right but the work cannot be done.
type CannotError struct {
	About string
	Why   []string
}

func (e *CannotError) Error() string {
	return "cannot make the " + e.About + ": " + strings.Join(e.Why, "; ")
}

func cannotMake(l *line, vs []seams.Verdict) error {
	e := &CannotError{About: l.title}
	for _, v := range vs {
		e.Why = append(e.Why, v.Construction.Title+" is ruled out because "+strings.Join(v.RuledOut, " and "))
	}
	return e
}

// measure sizes what was chosen: allowances, widths, passes, checks.
func measure(lines []*line) error {
	allowance := map[edgeOf]float64{}
	for _, l := range slices.Backward(lines) {
		if l.kind == "staystitch" { // comes before what it holds, so it is met after it here
			l.facts.Edge.Allowance = allowance[l.edges[0]]
		}
		if l.edge != nil && l.edge.Kind == "hem" {
			l.settleFullness()
		}
		sized, err := l.construction.Measure(l.facts)
		if err != nil {
			return err
		}
		l.sized = sized
		for _, e := range l.edges {
			if l.work == treating {
				allowance[e] = sized.Allowance
			}
		}
	}
	return nil
}

// settleFullness puts the fullness of the hem's own depth where choosing had to
// go by a usual one.
func (l *line) settleFullness() {
	sized, err := l.construction.Measure(l.facts)
	if err != nil {
		return // measure reports it
	}
	l.facts.Edge.Fullness = l.edge.Flare * sized.Finished
}

// canMake reports whether the room has the machines and the iron that a
// construction cannot do without.
func (r *room) canMake(c *seams.Construction, shelf *seams.Shelf) bool {
	for _, name := range c.Stitches {
		if st, err := shelf.Stitch(name); err != nil || !st.Hand && !r.forms(name) {
			return false
		}
	}
	return r.iron || !c.Iron
}
