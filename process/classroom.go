package process

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"bodkin/process/order"
	"bodkin/process/unison"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

// ClassInput is everything a class is worked out from.
type ClassInput struct {
	Class   *Class
	Garment *templates.Garment
	Shelf   *seams.Shelf
}

// RenumberError says that numbers held on paper already cannot stay as they
// are.
type RenumberError struct {
	First, Then string // numbers: Then is held before First
	Student     string
	Why         []string // why First must come before Then
}

func (e *RenumberError) Error() string {
	return fmt.Sprintf("number %s must come before number %s for %s: %s", e.First, e.Then, e.Student, strings.Join(e.Why, "; "))
}

// learner is a student with her work prepared.
type learner struct {
	Student
	in    Input
	o     *operator
	made  *templates.Made
	p     order.Problem
	attrs [][]attribute
	teach []int // her operations as a teacher tells them
	pace  float64
}

// Teach works the class out. The context limits only the searches. Errors are
// those of [Work], with the student's name; [*RenumberError]; and a
// [*CannotError] where a stretch of work is longer than a session.
func Teach(ctx context.Context, in ClassInput, opts order.Options) (*ClassPlan, error) {
	t := &teacher{class: in.Class, in: in}
	for _, s := range in.Class.Students {
		l, err := t.prepare(s)
		if err != nil {
			return nil, named(s, err)
		}
		t.learners = append(t.learners, l)
	}
	if err := t.join(ctx, opts); err != nil {
		return nil, err
	}
	for m := range t.learners {
		if err := t.write(m); err != nil {
			return nil, err
		}
	}
	t.number()
	if err := t.meet(ctx); err != nil {
		return nil, err
	}
	t.materials()
	t.notices()
	return t.plan, nil
}

// teacher is a class on its way to its plan.
type teacher struct {
	class    *Class
	in       ClassInput
	learners []*learner
	joined   unison.Result
	labels   []string // of each number
	plan     *ClassPlan
}

func (t *teacher) prepare(s Student) (*learner, error) {
	l := &learner{Student: s, in: Input{Job: t.class.job(s), Garment: t.in.Garment, Workroom: t.class.workroom(), Shelf: t.in.Shelf}}
	l.pace, _ = s.pace()
	if err := t.atHome(s); err != nil {
		return nil, err
	}
	var relations []relation
	var err error
	if l.o, l.made, relations, err = prepare(l.in); err != nil {
		return nil, err
	}
	l.o.precede(relations)
	l.p, l.attrs = l.o.problem()
	if l.teach, err = l.o.teach(&l.p); err != nil {
		if c, ok := errors.AsType[*order.CycleError](err); ok {
			return nil, l.o.circle(t.in.Garment.Title, c.Cycles[0])
		}
		return nil, err
	}
	l.o.loosenTests(l.p)
	return l, nil
}

// atHome looks for machines that a student cannot have.
func (t *teacher) atHome(s Student) error {
	var faults form.Faults
	names := append(machineNames(t.in.Shelf), ironStation)
	for _, m := range s.AtHome {
		if !slices.Contains(names, m.Value) {
			faults = append(faults, form.FaultAt(m.At, "no machine "+strconv.Quote(m.Value)+" on the shelf",
				form.Nearest(m.Value, names), "bodkin list machines shows what there is; an iron is iron"))
		}
	}
	return faults.Err()
}

// named puts the student's name before what is wrong with her work.
func named(s Student, err error) error {
	who := "for " + s.Name.Value + ": "
	if faults, ok := errors.AsType[form.Faults](err); ok {
		faults = slices.Clone(faults)
		for i := range faults {
			faults[i].Message = who + faults[i].Message
			if faults[i].Place == (form.Place{}) {
				faults[i].Place = s.Name.At
			}
		}
		return faults
	}
	if c, ok := errors.AsType[*CannotError](err); ok {
		return &CannotError{About: c.About, Why: append([]string{"this is " + who + "give her another cloth or construction, or the room the machine"}, c.Why...)}
	}
	return fmt.Errorf("%s%w", who, err)
}

// join finds the common sequence and its numbers.
func (t *teacher) join(ctx context.Context, opts order.Options) error {
	var makers []unison.Maker
	for _, l := range t.learners {
		m := unison.Maker{Problem: l.p}
		for _, n := range l.o.ops {
			part := n.Seam
			if n.line < 0 {
				part = strings.ReplaceAll(n.ID, ".", "/")
			}
			m.Acts = append(m.Acts, unison.Act{Part: part, Does: n.Does})
		}
		makers = append(makers, m)
	}
	var held []string
	for _, n := range t.class.Numbers {
		held = append(held, n.Value.Value)
	}
	var err error
	t.joined, err = unison.Join(ctx, makers, held, opts)
	if h, ok := errors.AsType[*unison.HeldError](err); ok {
		return t.renumber(h)
	}
	if err != nil {
		return err
	}
	t.labels = labels(t.joined.Numbers, t.class.Numbers)
	return nil
}

// labels numbers a sequence. Numbers that are held stay; what is new between
// them has the number before it and a letter.
func labels(numbers []unison.Number, held form.Pairs[form.Text]) []string {
	known := map[string]string{}
	taken := map[string]bool{}
	for _, h := range held {
		known[h.Value.Value], taken[h.Key.Value] = h.Key.Value, true
	}
	var out []string
	last, most := 0, 0 // the whole number before, and the greatest held
	for _, h := range held {
		most = max(most, wholeNumber(h.Key.Value))
	}
	for _, n := range numbers {
		label, ok := known[n.Key]
		switch {
		case ok:
			last = wholeNumber(label)
		case last >= most:
			last++
			label = strconv.Itoa(last)
		default:
			for k := 0; ; k++ {
				if label = strconv.Itoa(max(last, 1)) + letters(k); !taken[label] {
					break
				}
			}
		}
		taken[label] = true
		out = append(out, label)
	}
	return out
}

func wholeNumber(label string) int {
	n, _ := strconv.Atoi(strings.TrimRight(label, "abcdefghijklmnopqrstuvwxyz"))
	return n
}

// letters counts a, b, … z, aa, ab, …
func letters(k int) string {
	if k < 26 {
		return string(rune('a' + k))
	}
	return letters(k/26-1) + string(rune('a'+k%26))
}

func (t *teacher) renumber(h *unison.HeldError) error {
	e := &RenumberError{Student: "somebody", Why: []string{"the held numbers contradict each other"}}
	for _, n := range t.class.Numbers {
		switch n.Value.Value {
		case h.First:
			e.First = n.Key.Value
		case h.Then:
			e.Then = n.Key.Value
		}
	}
	if h.Maker < 0 {
		return e
	}
	l := t.learners[h.Maker]
	e.Student, e.Why = l.Name.Value, nil
	if h.Before == h.After {
		e.Why = []string{"it has another place in her work now"}
		return e
	}
	for _, r := range l.o.chain(h.After, h.Before) {
		if r.Because != nextPass {
			e.Why = append(e.Why, r.Because)
		}
	}
	if len(e.Why) == 0 {
		e.Why = []string{"it is the earlier pass of the same work"}
	}
	return e
}

// write makes a student's plan in the order of the class.
func (t *teacher) write(m int) error {
	l := t.learners[m]
	var sequence []int
	for _, n := range t.joined.Numbers {
		if n.Of[m] >= 0 {
			sequence = append(sequence, n.Of[m])
		}
	}
	a := &arrangement{attributes: l.attrs, sequence: sequence, bound: t.joined.Bound[m]}
	l.o.settleTests(l.p, l.teach)
	bySeam, err := order.Cost(l.p, l.teach)
	if err != nil {
		return err
	}
	a.seamBySeam.minutes = minutesOfChange(bySeam, l.attrs, 1)
	a.seamBySeam.moves, a.seamBySeam.threads = tally(bySeam, l.attrs)
	l.o.loosenTests(l.p)
	l.o.settleTests(l.p, sequence)
	if a.cost, err = order.Cost(l.p, sequence); err != nil {
		return err
	}
	a.result = order.Result{Sequence: sequence, Cost: a.cost.Total, Bound: t.joined.Bound[m], Proved: a.cost.Total == t.joined.Bound[m]}
	plan, err := l.o.write(l.in, l.made, a, nil)
	if err != nil {
		return named(l.Student, err)
	}
	if t.plan == nil {
		t.plan = &ClassPlan{Schema: ClassSchema, Title: t.class.Title.Value, Garment: t.in.Garment.Name, GarmentName: t.in.Garment.Title,
			Room: t.class.workroom().Name, Units: plan.Units, Notes: t.class.Notes,
			Students: []StudentPlan{}, Numbers: []ClassNumber{}, Sessions: []ClassSession{}, Buy: []ClassCloth{}, Thread: []ClassThread{}, Notices: []Notice{}}
	}
	s := StudentPlan{Name: l.Name.Value, Pace: l.pace, Plan: plan, Turns: []ClassTurn{}, Free: []string{},
		Change: float64(t.joined.Cost[m]) / 60, Alone: float64(t.joined.Alone[m]) / 60, AloneProved: t.joined.Alone[m] == t.joined.Bound[m]}
	at := 0
	for k, n := range t.joined.Numbers {
		if n.Of[m] < 0 {
			s.Free = append(s.Free, t.labels[k])
			continue
		}
		step := a.cost.Steps[at]
		change := step.Move
		for _, c := range step.Changes {
			change += c.Cost
		}
		op := l.o.ops[n.Of[m]]
		s.Turns = append(s.Turns, ClassTurn{Number: t.labels[k], Operation: op.ID, Minutes: tenths((l.o.standard(&op) + float64(change)/60) * l.pace)})
		at++
	}
	t.plan.Students = append(t.plan.Students, s)
	return nil
}

// number tells the numbers with their variants.
func (t *teacher) number() {
	for k, n := range t.joined.Numbers {
		out := ClassNumber{Number: t.labels[k], Key: n.Key, Variants: []ClassVariant{}, Free: []string{}}
		for m, l := range t.learners {
			if n.Of[m] < 0 {
				out.Free = append(out.Free, l.Name.Value)
				continue
			}
			op := l.o.ops[n.Of[m]]
			if out.Title == "" {
				out.Title, out.Seam = upperFirst(l.o.verb(op)+" "+op.Part), op.Seam
				if op.trial() {
					out.Title = upperFirst(l.o.verb(op)) + ": " + lowerFirst(l.o.room.stations[op.station].Title)
				}
				out.Station = l.o.room.stations[op.station].Title
			}
			v := t.variant(m, op)
			same := slices.IndexFunc(out.Variants, func(o ClassVariant) bool {
				return o.Text == v.Text && o.Good == v.Good && o.Construction == v.Construction && o.Station == v.Station &&
					o.Setting.HeatDots == v.Setting.HeatDots && slices.Equal(o.Checks, v.Checks)
			})
			if same >= 0 {
				o := &out.Variants[same]
				o.Students, o.Setting = append(o.Students, l.Name.Value), o.Setting.common(v.Setting)
			} else {
				out.Variants = append(out.Variants, v)
			}
			out.Minutes = max(out.Minutes, t.turn(m, t.labels[k]).Minutes)
		}
		t.plan.Numbers = append(t.plan.Numbers, out)
	}
	t.plan.Order = ClassOrder{Cheapest: t.joined.Cheapest, Held: len(t.class.Numbers) > 0}
	for _, s := range t.plan.Students {
		t.plan.Order.Change += s.Change
		t.plan.Order.Alone += s.Alone
	}
}

func (t *teacher) variant(m int, n op) ClassVariant {
	l := t.learners[m]
	v := ClassVariant{Students: []string{l.Name.Value}, Station: l.o.room.stations[n.station].Title, Setting: n.Setting,
		Text: n.Text, Good: n.Good, Checks: []Check{}}
	v.Setting.Thread, v.Setting.Bobbin, v.Setting.Loopers, v.Setting.Needle = "", "", "", ""
	switch {
	case n.line >= 0:
		v.Construction = l.o.lines[n.line].construction.Title
	case n.Does == "cut":
		_, handling, _ := strings.Cut(n.Text, keepScraps)
		v.Text = "Cut out your own pieces, to the sizes on your page." + keepScraps + handling
	case n.trial() && l.o.room.stations[n.station].Kind == "machine":
		v.Text = "On a double scrap of your own cloth sew a row, with the thread, needle and stitch length on your page. Adjust tension and length until it lies flat."
	}
	for _, c := range t.plan.Students[m].Plan.Checks {
		if c.AfterOperation == n.ID {
			c.AfterStep = 0
			v.Checks = append(v.Checks, c)
		}
	}
	return v
}

// common is what two settings have alike.
func (s Setting) common(t Setting) Setting {
	if s.Stitch != t.Stitch {
		s.Stitch = ""
	}
	if s.StitchMM != t.StitchMM {
		s.StitchMM = 0
	}
	if s.Foot != t.Foot {
		s.Foot = ""
	}
	s.Steam = s.Steam && t.Steam
	return s
}

// turn is a number as a student does it; of no minutes where she does not.
func (t *teacher) turn(m int, label string) ClassTurn {
	for _, turn := range t.plan.Students[m].Turns {
		if turn.Number == label {
			return turn
		}
	}
	return ClassTurn{}
}

// materials adds up what the class needs.
func (t *teacher) materials() {
	for _, s := range t.plan.Students {
		for _, c := range s.Plan.Cloths {
			t.plan.Buy = append(t.plan.Buy, ClassCloth{Student: s.Name, Title: c.Title, Colour: c.Colour, WidthMM: c.WidthMM, LengthMM: c.LengthMM})
		}
		for _, th := range s.Plan.Thread {
			k := slices.IndexFunc(t.plan.Thread, func(o ClassThread) bool { return o.Colour == th.Colour && o.Kind == th.Kind })
			if k < 0 {
				k = len(t.plan.Thread)
				t.plan.Thread = append(t.plan.Thread, ClassThread{Colour: th.Colour, Kind: th.Kind})
			}
			t.plan.Thread[k].Metres += th.Metres
			t.plan.Thread[k].Bobbins += th.Bobbins
		}
	}
	slices.SortStableFunc(t.plan.Thread, func(a, b ClassThread) int { return cmp.Compare(a.Colour, b.Colour) })
}

// notices say what the figures rest on, and what the reader should know.
func (t *teacher) notices() {
	add := func(about, text string) { t.plan.Notices = append(t.plan.Notices, Notice{About: about, Text: text}) }
	add("Minutes", "The minutes of every number are estimates, at each student's pace, with the changes that her own cloth and thread ask for; no home figure is published. They are good for comparing, not for promising an hour.")
	rests := t.learners[0].o.restNotice()
	add("Rests", rests.Text)
	add("Waiting", fmt.Sprintf("Waiting is what %d simulated runs of each session gave, in which every time varies by about %.0f%% by chance; whoever comes first is served first.", queueRuns, 100*queueSpread))
	for _, s := range t.plan.Students {
		if more := s.Change - s.Alone; more >= 0.5 {
			add(s.Name, fmt.Sprintf("In the order of the class %s spends %.0f minutes on changes; sewing by herself she could do with %.0f.", s.Name, math.Round(s.Change), math.Round(s.Alone)))
		}
	}
	type notice struct{ about, text string }
	var all []notice
	who := map[notice][]string{}
	for _, s := range t.plan.Students {
		for _, n := range s.Plan.Notices {
			k := notice{n.About, n.Text}
			if who[k] == nil {
				all = append(all, k)
			}
			who[k] = append(who[k], s.Name)
		}
	}
	for _, n := range all {
		if len(who[n]) < len(t.plan.Students) {
			n.text, n.about = "For "+listWords(who[n], "and")+": "+n.text, upperFirst(n.about)
		}
		add(n.about, n.text)
	}
}
