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
// best, of equals the quickest, keep the others with why they lost. What the job, or the garment's
// design, insists on is taken unless a rule excludes it and she did not say
// anyway; what the room cannot make is never taken.
func choose(lines []*line, j *Job, shelf *seams.Shelf, r *room) error {
	faults := unknownSeams(lines, j)
	for _, l := range lines {
		verdicts, plain, err := l.weigh(shelf)
		if err != nil {
			return err
		}
		if len(verdicts) == 0 {
			return &CannotError{About: l.title, Why: []string{"nothing on the shelf makes a " + l.kind}}
		}
		w, insisted := l.wish(j)
		if !insisted {
			if err := r.free(l, verdicts, plain, shelf); err != nil {
				return err
			}
			continue
		}
		k := slices.IndexFunc(verdicts, func(v seams.Verdict) bool { return v.Construction.Name == w.construction })
		switch {
		case k < 0:
			faults = append(faults, form.FaultAt(w.at, "no construction "+strconv.Quote(w.construction)+" for the "+l.title,
				form.Nearest(w.construction, constructionNames(verdicts)),
				"it can be "+listWords(constructionNames(verdicts), "or")))
			continue
		case verdicts[k].Allowed():
		case !r.canMake(verdicts[k].Construction, shelf):
			faults = append(faults, l.refused(w, verdicts, k, " in this room", "no wish replaces a machine that is not there"))
			continue
		case !w.anyway:
			mend := "choose another, or write " + strconv.Quote(w.construction+" anyway") + " to do it all the same"
			if !w.job {
				mend = "under seams: in the job, write " + l.name + ": and another, or " + l.name + ": " + w.construction + " anyway to do it all the same"
			}
			faults = append(faults, l.refused(w, verdicts, k, "", mend))
			continue
		}
		l.insisted, l.byDesign, l.anyway = true, !w.job, !verdicts[k].Allowed()
		l.take(verdicts, k)
	}
	if len(faults) > 0 {
		return faults
	}
	return r.alike(lines, shelf)
}

// weigh judges what may be done with the line, as its facts are and as they
// would be if neither quick nor neat nor strong work were favoured; the reasons
// that the wish brings in say so.
func (l *line) weigh(shelf *seams.Shelf) (verdicts, plain []seams.Verdict, err error) {
	verdicts, err = shelf.Weigh(l.work.forWhat(), l.kind, l.facts)
	favour := l.facts.Workroom.Favour
	if err != nil || favour == "" {
		return verdicts, verdicts, err
	}
	facts := l.facts
	facts.Workroom.Favour = ""
	if plain, err = shelf.Weigh(l.work.forWhat(), l.kind, facts); err != nil {
		return nil, nil, err
	}
	favoured(verdicts, plain, favour)
	return verdicts, plain, nil
}

// free takes the construction of a line on which nobody insists: the best, of
// equals the quickest; where quick, neat or strong work is favoured it tells
// what it would be otherwise.
func (r *room) free(l *line, verdicts, plain []seams.Verdict, shelf *seams.Shelf) (err error) {
	if !verdicts[0].Allowed() {
		return cannotMake(l, verdicts)
	}
	if l.equals, err = r.equals(l, verdicts, shelf); err != nil {
		return err
	}
	l.take(verdicts, quickest(verdicts, l.equals))
	if r.favour == "" || !plain[0].Allowed() {
		return nil
	}
	even, err := r.equals(l, plain, shelf)
	if err != nil {
		return err
	}
	without := plain[quickest(plain, even)].Construction
	if r.favour == quick {
		if err := r.hasten(l, without, shelf); err != nil {
			return err
		}
	}
	if without != l.construction {
		l.otherwise = fmt.Sprintf("without the wish for %s work it would be: %s", r.favour, lowerFirst(without.Title))
	}
	return nil
}

func (l *line) take(verdicts []seams.Verdict, k int) {
	l.chosen, l.construction = verdicts[k], verdicts[k].Construction
	l.others = slices.Delete(slices.Clone(verdicts), k, k+1)
}

// wish is a construction that is insisted on.
type wish struct {
	construction string
	anyway       bool       // although rules speak against it
	job          bool       // of the job; else of the garment's design
	at           form.Place // where it is written; that of the garment's name where the design asks
}

// wish is the construction that the job, or else the garment's design, asks for.
func (l *line) wish(j *Job) (w wish, ok bool) {
	for _, p := range j.Seams {
		if p.Key.Value == l.name {
			name, anyway, _ := insistence(p.Value.Value)
			return wish{name, anyway, true, p.Value.At}, true
		}
	}
	design := ""
	switch {
	case l.join != nil:
		design = l.join.Insist
	case l.edge != nil:
		design = l.edge.Insist
	case l.detail != nil:
		design = l.detail.Insist
	}
	name, anyway, ok := insistence(design)
	return wish{name, anyway, false, j.Make.At}, ok
}

// refused is the fault of a wish that cannot be had.
func (l *line) refused(w wish, verdicts []seams.Verdict, k int, where, mend string) form.Fault {
	said := "the %s cannot be a %s%s: %s"
	if !w.job {
		said = "the garment's design asks for it, but the %s cannot be a %s%s: %s"
	}
	return form.FaultAt(w.at, fmt.Sprintf(said, l.title, lowerFirst(verdicts[k].Construction.Title), where,
		strings.Join(verdicts[k].RuledOut, "; ")), "", mend+instead(verdicts))
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
	if err := widen(lines); err != nil {
		return err
	}
	for _, l := range slices.Backward(lines) {
		if l.hangs() {
			continue
		}
		if l.kind == "staystitch" { // comes before what it holds, so it is met after it here
			l.facts.Edge.Allowance = allowance[l.edges[0]]
		}
		if l.draws != nil {
			l.facts.Join.Allowance = l.draws.sized.Allowance
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
	for _, l := range lines {
		if !l.hangs() {
			continue
		}
		for k, e := range l.edges { // it is cut as what it hangs from
			if width := widthAt(e, lines); k == 0 || width < l.facts.Join.Allowance {
				l.facts.Join.Allowance = width
			}
		}
		sized, err := l.construction.Measure(l.facts)
		if err != nil {
			return err
		}
		l.sized = sized
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
