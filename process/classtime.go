package process

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"bodkin/process/crew/queue"
	"bodkin/seams/form"
)

// Chance of the waiting: our own judgement.
const (
	queueRuns   = 40
	queueSpread = 0.3
)

// meet cuts the sequence into sessions and tells what happens in each.
func (t *teacher) meet(ctx context.Context) error {
	l := t.lessons()
	work := t.class.Sessions.work()
	var cuts []lesson
	var rooms [][]queue.Expected
	// Waiting takes time as well: what a session holds is lessened until its
	// slowest student, waiting included, is done in time.
	for l.most = work; ; l.most -= work / 20 {
		var err error
		if cuts, err = l.cut(false); err == nil && len(cuts) > t.class.Sessions.Count {
			if withHome, err := l.cut(true); err == nil && len(withHome) <= t.class.Sessions.Count {
				cuts = withHome
			}
		}
		if e, ok := errors.AsType[*tooLongError](err); ok {
			if rooms != nil {
				break // the cuts before do as well as can be
			}
			return t.tooLong(e)
		}
		rooms = nil
		over := false
		for _, c := range cuts {
			one, err := t.queues(ctx, c)
			if err != nil {
				return err
			}
			rooms = append(rooms, one)
			over = over || one[0].End > work
		}
		if !over || l.most < work/2 {
			break
		}
	}
	for k, c := range cuts {
		t.plan.Sessions = append(t.plan.Sessions, t.session(k, c, l))
		if err := t.waiting(ctx, &t.plan.Sessions[k], c); err != nil {
			return err
		}
	}
	if free := t.class.Sessions.Count - len(cuts); free > 0 {
		t.plan.Notices = append(t.plan.Notices, Notice{About: "Sessions", Text: fmt.Sprintf(
			"The work fills %d of the class's %d sessions by these estimates; the rest is room for fitting, for mending and for those who missed one.", len(cuts), t.class.Sessions.Count)})
	}
	if extra := len(cuts) - t.class.Sessions.Count; extra > 0 {
		t.plan.Notices = append(t.plan.Notices, Notice{About: "Sessions", Text: fmt.Sprintf(
			"The work needs %d sessions of this length, and the class has %d. Give it %d more, or longer ones, or let students finish at home what they can.", len(cuts), t.class.Sessions.Count, extra)})
	}
	return nil
}

// lessons sets the sequence out for cutting.
func (t *teacher) lessons() lessons {
	n := len(t.labels)
	l := lessons{rest: slices.Repeat([]bool{true}, n), tidy: slices.Repeat([]bool{true}, n), home: slices.Repeat([]bool{true}, n)}
	for m, x := range t.learners {
		minutes := make([]float64, n)
		open := map[int]bool{} // seams of hers that are pinned and not yet sewn
		for k, node := range t.joined.Numbers {
			if i := node.Of[m]; i >= 0 {
				op := x.o.ops[i]
				minutes[k] = t.turn(m, t.labels[k]).Minutes
				open[op.line] = op.line >= 0 && slices.Contains(unsettled(), op.Does)
				l.tidy[k] = l.tidy[k] && (op.Does == "press" || op.Does == "cut" || op.line >= 0 && x.o.span[op.line][len(x.o.span[op.line])-1] == i)
				l.home[k] = l.home[k] && t.canAtHome(m, op)
			}
			for _, is := range open {
				l.rest[k] = l.rest[k] && !is
			}
		}
		l.minutes = append(l.minutes, minutes)
	}
	return l
}

// unsettled are acts after which cloth is held by pins or folds only and must
// not be put away.
func unsettled() []string { return []string{"pin", "place", "turn", "fold"} }

// canAtHome reports whether a student can do an operation at home.
func (t *teacher) canAtHome(m int, n op) bool {
	st := t.learners[m].o.room.stations[n.station]
	switch st.Kind {
	case "table", "hand":
		return n.Does != "fit"
	}
	return slices.ContainsFunc(t.learners[m].AtHome, func(h form.Text) bool { return h.Value == st.Machine || st.Kind == "iron" && h.Value == ironStation })
}

func (t *teacher) tooLong(e *tooLongError) error {
	return &CannotError{About: "class in sessions of this length", Why: []string{
		fmt.Sprintf("numbers %s to %s have to be done without a rest between, and take %s about %.0f minutes; a session has %.0f for work",
			t.labels[e.first], t.labels[e.last], t.learners[e.student].Name.Value, math.Ceil(e.minutes), t.class.Sessions.work()),
		"make the sessions longer, or let her cut out or prepare before the class"}}
}

// session tells one stretch.
func (t *teacher) session(k int, c lesson, l lessons) ClassSession {
	s := ClassSession{Number: k + 1, First: t.labels[c.first], Last: t.labels[c.last], Homework: []string{}, Work: t.class.Sessions.work(),
		Shown: []Demonstration{}, Queues: []ClassQueue{}, Groups: 1, Extra: k >= t.class.Sessions.Count}
	s.SettingUp, s.Clearing = t.class.Sessions.margins()
	if k < len(t.class.Sessions.Dates) {
		s.Date = t.class.Sessions.Dates[k].Value
	}
	for m, minutes := range l.minutes {
		sum := 0.0
		for i := c.first; i <= c.last; i++ {
			sum += minutes[i]
		}
		if sum > s.Needs {
			s.Needs, s.Slowest = tenths(sum), t.learners[m].Name.Value
		}
	}
	s.Rests = "nothing lies pinned or turned and unsewn"
	if l.tidy[c.last] {
		s.Rests = "the last work is pressed or finished, and nothing lies pinned and unsewn"
	}
	if c.last == len(t.labels)-1 {
		s.Rests = "the garment is finished"
	}
	for i := c.first; i <= c.home; i++ {
		t.plan.Numbers[i].Session, t.plan.Numbers[i].Homework = k+1, i > c.last
		if i > c.last {
			s.Homework = append(s.Homework, t.labels[i])
		}
	}
	s.Shown = t.demonstrations(c, l)
	s.Threading, s.Ready = t.threading(c), t.preparations(c)
	return s
}

// demonstrations are of every construction when it is first met, and of cutting
// out and fitting.
func (t *teacher) demonstrations(c lesson, l lessons) []Demonstration {
	up, _ := t.class.Sessions.margins()
	out := []Demonstration{}
	for i := c.first; i <= c.home; i++ {
		for _, v := range t.plan.Numbers[i].Variants {
			what := v.Construction
			if what == "" || slices.ContainsFunc(t.plan.Numbers[:i], func(n ClassNumber) bool {
				return slices.ContainsFunc(n.Variants, func(o ClassVariant) bool { return o.Construction == what })
			}) || slices.ContainsFunc(out, func(d Demonstration) bool { return d.What == what }) {
				continue
			}
			soonest := math.Inf(1)
			for _, minutes := range l.minutes {
				sum := 0.0
				for k := c.first; k < min(i, c.last+1); k++ {
					sum += minutes[k]
				}
				soonest = min(soonest, sum)
			}
			out = append(out, Demonstration{Before: t.labels[i], What: what, At: math.Floor(up + soonest), Minutes: t.showing(what)})
		}
	}
	return out
}

// showing is about as long as one copy of the shortest such seam takes.
func (t *teacher) showing(construction string) float64 {
	least := math.Inf(1)
	for _, s := range t.plan.Students {
		for _, x := range s.Plan.Seams {
			if x.ConstructionTitle == construction {
				least = min(least, x.Minutes/float64(max(x.Copies, 1)))
			}
		}
	}
	return math.Ceil(least)
}

// threading shares the machines of a kind among the colours that a session
// wants, by the number of students.
func (t *teacher) threading(c lesson) []Threading {
	out := []Threading{}
	for m, x := range t.learners {
		for i := c.first; i <= c.last; i++ {
			k := t.joined.Numbers[i].Of[m]
			if k < 0 || x.o.room.stations[x.o.ops[k].station].Kind != "machine" {
				continue
			}
			n := x.o.ops[k]
			title, colour := x.o.room.stations[n.station].Title, n.Setting.Thread
			at := slices.IndexFunc(out, func(o Threading) bool { return o.Station == title && o.Colour == colour })
			if at < 0 {
				at = len(out)
				out = append(out, Threading{Station: title, Colour: colour, Students: []string{}})
			}
			if !slices.Contains(out[at].Students, x.Name.Value) {
				out[at].Students = append(out[at].Students, x.Name.Value)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Threading) int {
		if a.Station != b.Station {
			return slices.IndexFunc(out, func(o Threading) bool { return o.Station == a.Station }) - slices.IndexFunc(out, func(o Threading) bool { return o.Station == b.Station })
		}
		return len(b.Students) - len(a.Students)
	})
	for i := range out {
		first := slices.IndexFunc(out, func(o Threading) bool { return o.Station == out[i].Station })
		if first != i {
			continue
		}
		var same []*Threading
		for j := i; j < len(out) && out[j].Station == out[i].Station; j++ {
			same = append(same, &out[j])
		}
		t.allot(same)
	}
	return out
}

// allot gives every colour a machine while there are any, the most wanted
// first, and the rest to where most students wait for one.
func (t *teacher) allot(colours []*Threading) {
	left := 0
	for _, st := range t.learners[0].o.room.stations {
		if st.Title == colours[0].Station {
			left = t.class.count(st.Station)
		}
	}
	for ; left > 0; left-- {
		var most *Threading
		share := func(c *Threading) float64 { return float64(len(c.Students)) / float64(c.Machines) }
		for _, c := range colours {
			if c.Machines < len(c.Students) && (most == nil || share(c) > share(most)) {
				most = c
			}
		}
		if most == nil {
			return
		}
		most.Machines++
	}
}

// queues simulates a session with all beginning at once.
func (t *teacher) queues(ctx context.Context, c lesson) ([]queue.Expected, error) {
	r, _ := t.room(c, 1, 0)
	e, err := queue.Repeat(ctx, r, t.chance(), queueRuns)
	return []queue.Expected{e}, err
}

func (t *teacher) chance() uint64 { return uint64(max(t.class.Chance, 1)) }

// room is a session as a queue: the stations that are shared, and each
// student's way between them. Students begin in groups, so many minutes apart.
func (t *teacher) room(c lesson, groups int, apart float64) (queue.Room, []station) {
	r := queue.Room{Spread: queueSpread}
	var stations []station
	at := func(st station) int {
		k := slices.IndexFunc(stations, func(o station) bool { return o.Title == st.Title })
		if k < 0 {
			k = len(stations)
			stations = append(stations, st)
			r.Stations = append(r.Stations, max(t.class.count(st.Station), 1))
		}
		return k
	}
	for m, x := range t.learners {
		var stays []queue.Stay
		before := apart * float64(m%groups)
		last := -1
		for i := c.first; i <= c.last; i++ {
			k := t.joined.Numbers[i].Of[m]
			if k < 0 {
				continue
			}
			st := x.o.room.stations[x.o.ops[k].station]
			minutes := t.turn(m, t.labels[i]).Minutes
			if st.Kind != "machine" && st.Kind != "iron" {
				before += minutes
				last = -1
				continue
			}
			if q := at(st); q == last && before == 0 {
				stays[len(stays)-1].Turn += minutes // she stays where she is
			} else {
				stays = append(stays, queue.Stay{Before: before, Station: q, Turn: minutes})
				last = q
			}
			before = 0
		}
		if before > 0 { // what is left at the table ends the way
			q := at(station{Station: Station{Title: "", Kind: "table"}})
			r.Stations[q] = MaxStudents
			stays = append(stays, queue.Stay{Before: before, Station: q})
		}
		r.Visitors = append(r.Visitors, stays)
	}
	return r, stations
}

// waiting tells the lines of a session, and whether beginning in groups would
// shorten them.
func (t *teacher) waiting(ctx context.Context, s *ClassSession, c lesson) error {
	r, stations := t.room(c, 1, 0)
	all, err := queue.Repeat(ctx, r, t.chance(), queueRuns)
	if err != nil {
		return err
	}
	total := func(e queue.Expected) (sum float64) {
		for _, w := range e.Waited {
			sum += w
		}
		return sum
	}
	best := all
	for groups := 2; groups <= 3 && groups <= len(t.learners); groups++ {
		for _, apart := range []float64{5, 10} {
			g, _ := t.room(c, groups, apart)
			e, err := queue.Repeat(ctx, g, t.chance(), queueRuns/4)
			if err != nil {
				return err
			}
			if e.End <= max(all.End, s.Work) && total(e) < 0.8*total(best) {
				best, s.Groups, s.Apart = e, groups, apart
			}
		}
	}
	if total(all) < float64(len(t.learners)) { // under a minute each is not worth a plan
		best, s.Groups, s.Apart = all, 1, 0
	}
	for q, st := range stations {
		if st.Kind == "table" {
			continue
		}
		l := all.Stations[q]
		s.Queues = append(s.Queues, ClassQueue{Station: st.Title, Count: r.Stations[q], Turns: l.Turns, Wait: tenths(l.Waits), Worst: tenths(l.Worst),
			Longest: l.Longest, Peak: tenths(l.Peak), Busy: math.Round(100*l.Busy) / 100, Staggered: tenths(best.Stations[q].Waits)})
	}
	return nil
}
