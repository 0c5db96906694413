package crew

import (
	"cmp"
	"fmt"
	"slices"
)

// An Account tells what happens in a plan.
type Account struct {
	Finish int64
	Handed []Handed // by arrival, then by task
	Waits  []Wait   // by person, then in time
	Busy   []int64  // by person: time at tasks, setting up included
}

// Handed is a piece going from some people to others.
type Handed struct {
	From, To       int // tasks
	Leaves, Arrive int64
}

// A Wait is time in which a person is there and has nothing to do before her
// next task.
type Wait struct {
	Person      int
	From, Until int64
	Next        int   // the task that comes after the wait
	Cause       Cause // what the task waits for at the end of it
	For         int   // task that causes it, or None
}

// Cause says what a task waits for.
type Cause int

const (
	Nothing  Cause = iota // it could begin sooner
	Earlier               // For must end first
	Coming                // the piece from For is under way
	Engaged               // the machine is taken by For
	Taken                 // somebody who does it too is taken by For
	Away                  // somebody who does it is not there
	Shortage              // a resource is used up; For ends just then
)

// A PlanError says why places are not a plan.
type PlanError struct {
	Task int
	What string
}

func (e *PlanError) Error() string { return fmt.Sprintf("task %d: %s", e.Task, e.What) }

// Check walks through a plan for p and tells its waits and hand-overs. Places
// that break a rule are a [*PlanError] with the first task in question; an
// error of [Validate] is returned as it is. O(tasks²).
func Check(p Problem, places []Place) (Account, error) {
	if err := Validate(p); err != nil {
		return Account{}, err
	}
	if len(places) != len(p.Tasks) {
		return Account{}, &PlanError{len(places), fmt.Sprintf("%d places for %d tasks", len(places), len(p.Tasks))}
	}
	m := compile(p)
	c := &walk{m: m, places: places, teams: make([]team, m.n)}
	for i := range places {
		if err := c.task(i); err != nil {
			return Account{}, err
		}
	}
	if err := c.clashes(); err != nil {
		return Account{}, err
	}
	if err := c.settings(); err != nil {
		return Account{}, err
	}
	return c.account(), nil
}

// A walk goes through a plan.
type walk struct {
	m      *model
	places []Place
	teams  []team // of each task, as placed
}

func (c *walk) task(i int) error {
	m, at := c.m, c.places[i]
	wrong := func(format string, args ...any) error { return &PlanError{i, fmt.Sprintf(format, args...)} }
	var mask uint64
	for _, q := range at.People {
		if q < 0 || q >= m.people {
			return wrong("no such person as %d", q)
		}
		mask |= 1 << q
	}
	k := slices.IndexFunc(m.teams[i], func(t team) bool { return t.mask == mask && len(t.people) == len(at.People) })
	if k < 0 {
		return wrong("people %v do not meet its needs", at.People)
	}
	c.teams[i] = m.teams[i][k]
	if at.Begin < 0 || at.Work < at.Begin || at.End-at.Work != c.teams[i].lasts {
		return wrong("takes from %d to %d, set up from %d; its people take %d", at.Work, at.End, at.Begin, c.teams[i].lasts)
	}
	if m.kind[i] == None && at.Machine != None || m.kind[i] != None && !slices.Contains(m.machines[m.kind[i]], at.Machine) {
		return wrong("is at machine %d, wants kind %d", at.Machine, m.kind[i])
	}
	for _, q := range at.People {
		if t, ok := m.hours[q].fits(at.Begin, at.End-at.Begin); !ok || t != at.Begin {
			return wrong("person %d is not there from %d to %d", q, at.Begin, at.End)
		}
	}
	return nil
}

// clashes looks for two tasks in one place, and tasks before their time.
func (c *walk) clashes() error {
	m := c.m
	for i, at := range c.places {
		for _, a := range m.pred[i] {
			if t := c.arrives(i, a); t > at.Begin {
				return &PlanError{i, fmt.Sprintf("begins at %d, task %d lets it begin at %d", at.Begin, a.task, t)}
			}
		}
		for j, b := range c.places[:i] {
			if at.Begin >= b.End || b.Begin >= at.End {
				continue
			}
			if at.Begin == at.End || b.Begin == b.End { // of no time: only where nothing is set
				if at.Machine != None && at.Machine == b.Machine && len(m.kinds[m.kind[i]].Attributes) > 0 {
					return &PlanError{i, fmt.Sprintf("is at machine %d while task %d is", at.Machine, j)}
				}
				continue
			}
			if at.Machine != None && at.Machine == b.Machine {
				return &PlanError{i, fmt.Sprintf("is at machine %d while task %d is", at.Machine, j)}
			}
			if both := c.teams[i].mask & c.teams[j].mask; both != 0 {
				return &PlanError{i, fmt.Sprintf("shares people with task %d at one time", j)}
			}
		}
		for _, u := range m.uses[i] {
			if at.Begin < at.End && c.used(u.resource, at.Begin) > m.caps[u.resource] {
				return &PlanError{i, fmt.Sprintf("takes more of resource %d than there is", u.resource)}
			}
		}
	}
	return nil
}

func (c *walk) used(resource int, t int64) int64 {
	var sum int64
	for j, b := range c.places {
		for _, u := range c.m.uses[j] {
			if u.resource == resource && b.Begin <= t && t < b.End {
				sum += u.amount
			}
		}
	}
	return sum
}

// arrives is when task i may begin as far as one arc is concerned.
func (c *walk) arrives(i int, a arc) int64 {
	t := c.places[a.task].End
	if a.piece && apart(c.teams[i].mask, c.teams[a.task].mask) {
		t += c.m.handover
	}
	return t
}

// settings replays each machine.
func (c *walk) settings() error {
	for q, start := range c.m.start {
		state := slices.Clone(start)
		for _, i := range c.inTime(func(i int) bool { return c.places[i].Machine == q }) {
			want := c.m.change(c.m.kind[i], state, c.m.setting[i])
			if got := c.places[i].Work - c.places[i].Begin; got != want {
				return &PlanError{i, fmt.Sprintf("is set up for in %d, want %d", got, want)}
			}
		}
	}
	return nil
}

// inTime lists some tasks as they begin, ties by end, then number.
func (c *walk) inTime(which func(i int) bool) []int {
	var list []int
	for i := range c.places {
		if which(i) {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(i, j int) int {
		a, b := c.places[i], c.places[j]
		return cmp.Or(cmp.Compare(a.Begin, b.Begin), cmp.Compare(a.End, b.End))
	})
	return list
}

func (c *walk) account() Account {
	out := Account{Busy: make([]int64, c.m.people)}
	for i, at := range c.places {
		out.Finish = max(out.Finish, at.End)
		for _, a := range c.m.pred[i] {
			if a.piece && apart(c.teams[i].mask, c.teams[a.task].mask) {
				out.Handed = append(out.Handed, Handed{a.task, i, c.places[a.task].End, c.arrives(i, a)})
			}
		}
	}
	slices.SortFunc(out.Handed, func(a, b Handed) int {
		return cmp.Or(cmp.Compare(a.Arrive, b.Arrive), cmp.Compare(a.To, b.To), cmp.Compare(a.From, b.From))
	})
	for q := range c.m.people {
		var t int64
		for _, i := range c.inTime(func(i int) bool { return slices.Contains(c.places[i].People, q) }) {
			at := c.places[i]
			out.Busy[q] += at.End - at.Begin
			for _, s := range c.m.present(q, t, at.Begin) {
				w := Wait{Person: q, From: s.From, Until: s.Until, Next: i, For: None}
				w.Cause, w.For = c.cause(i)
				out.Waits = append(out.Waits, w)
			}
			t = max(t, at.End)
		}
	}
	return out
}

// present are the parts of a time in which a person is there.
func (m *model) present(q int, from, until int64) []Span {
	if from >= until {
		return nil
	}
	if m.hours[q] == nil {
		return []Span{{from, until}}
	}
	return hours{{from, until}}.and(m.hours[q])
}

// cause finds what held a task until its begin: of several causes the first in
// the order of the constants, of several tasks the lowest.
func (c *walk) cause(i int) (Cause, int) {
	m, at := c.m, c.places[i]
	for _, a := range m.pred[i] {
		if c.places[a.task].End == at.Begin {
			return Earlier, a.task
		}
	}
	for _, a := range m.pred[i] {
		if c.arrives(i, a) == at.Begin {
			return Coming, a.task
		}
	}
	for j, b := range c.places {
		if b.End == at.Begin && b.Begin < b.End && at.Machine != None && at.Machine == b.Machine {
			return Engaged, j
		}
	}
	for j, b := range c.places {
		if b.End == at.Begin && b.Begin < b.End && c.teams[i].mask&c.teams[j].mask != 0 && len(at.People) > 1 {
			return Taken, j
		}
	}
	for _, q := range at.People {
		for _, h := range m.hours[q] {
			if h.From == at.Begin {
				return Away, None
			}
		}
	}
	for j, b := range c.places {
		for _, u := range m.uses[i] {
			if b.End == at.Begin && slices.ContainsFunc(m.uses[j], func(w use) bool { return w.resource == u.resource }) {
				return Shortage, j
			}
		}
	}
	return Nothing, None
}
