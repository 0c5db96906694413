package crew

import (
	"fmt"
	"math/bits"
	"slices"
)

// Caps on a problem. They keep every sum of times inside an int64 and refuse
// input that no search of this kind could serve.
const (
	MaxTasks     = 4096
	MaxPeople    = 64
	MaxMachines  = 256
	MaxResources = 64
	MaxTime      = 1 << 26 // of one task, change or hand-over
	MaxCapacity  = 1 << 20 // of a resource
	MaxHour      = 1 << 40 // end of anybody's hours
	MaxTeams     = 4096    // ways to find the people for one task
)

// An InvalidError says what in a problem is out of range.
type InvalidError struct {
	Where string // the place in the problem, such as "task 3"
	What  string // what is wrong there
}

func (e *InvalidError) Error() string { return e.Where + ": " + e.What }

func invalid(where, format string, args ...any) error {
	return &InvalidError{Where: where, What: fmt.Sprintf(format, args...)}
}

// A NobodyError names a task that cannot be done however the work is shared.
type NobodyError struct {
	Task int
	Need int  // index of the need that is not met, or None where each is met but not all together
	Time bool // people with the skills are there, but for too short a time
}

func (e *NobodyError) Error() string {
	switch {
	case e.Time:
		return fmt.Sprintf("task %d: nobody who can do it is there for long enough", e.Task)
	case e.Need == None:
		return fmt.Sprintf("task %d: there are not enough people for all it needs at once", e.Task)
	}
	return fmt.Sprintf("task %d: nobody can do need %d", e.Task, e.Need)
}

// A CycleError names tasks that wait for one another in a circle, each for the
// one before it.
type CycleError struct {
	Tasks []int
}

func (e *CycleError) Error() string { return fmt.Sprintf("tasks wait in a circle: %v", e.Tasks) }

// Validate reports the first thing wrong with p, in the order people, kinds,
// machines, resources, tasks, as an [*InvalidError], a [*CycleError] or, where
// a task can be done by nobody, a [*NobodyError].
func Validate(p Problem) error {
	for _, c := range []struct {
		what      string
		have, cap int
	}{
		{"tasks", len(p.Tasks), MaxTasks}, {"people", len(p.People), MaxPeople},
		{"machines", len(p.Machines), MaxMachines}, {"resources", len(p.Resources), MaxResources},
	} {
		if c.have > c.cap {
			return invalid("problem", "%d %s, at most %d are possible", c.have, c.what, c.cap)
		}
	}
	if err := inTime("problem", "hand-over", p.Handover); err != nil {
		return err
	}
	for i, person := range p.People {
		if err := validatePerson(person, fmt.Sprintf("person %d", i)); err != nil {
			return err
		}
	}
	for i, k := range p.Kinds {
		if err := validateKind(k, fmt.Sprintf("kind %d", i)); err != nil {
			return err
		}
	}
	for i, m := range p.Machines {
		where := fmt.Sprintf("machine %d", i)
		if m.Kind < 0 || m.Kind >= len(p.Kinds) {
			return invalid(where, "kind is %d, want 0 to %d", m.Kind, len(p.Kinds)-1)
		}
		if err := validateSetting(p.Kinds[m.Kind], m.Start, where); err != nil {
			return err
		}
	}
	for r, c := range p.Resources {
		if c < 0 || c > MaxCapacity {
			return invalid(fmt.Sprintf("resource %d", r), "capacity is %d, want 0 to %d", c, int64(MaxCapacity))
		}
	}
	for i, t := range p.Tasks {
		if err := validateTask(p, t, fmt.Sprintf("task %d", i)); err != nil {
			return err
		}
	}
	if c := circle(p.Tasks); c != nil {
		return &CycleError{Tasks: c}
	}
	for i := range p.Tasks {
		if err := staffed(p, i); err != nil {
			return err
		}
	}
	return nil
}

func inTime(where, what string, t int64) error {
	if t < 0 || t > MaxTime {
		return invalid(where, "%s is %d, want 0 to %d", what, t, int64(MaxTime))
	}
	return nil
}

func validatePerson(p Person, where string) error {
	for s, level := range p.Skills {
		if level < 0 {
			return invalid(where, "level %d in skill %d, want 0 or more", level, s)
		}
	}
	if p.Pace != 0 && (p.Pace < 10 || p.Pace > 1000) {
		return invalid(where, "pace is %d, want 10 to 1000, or 0 for 100", p.Pace)
	}
	last := int64(0)
	for _, h := range p.Hours {
		if h.From < last || h.Until <= h.From || h.Until > MaxHour {
			return invalid(where, "hours from %d until %d do not follow %d", h.From, h.Until, last)
		}
		last = h.Until
	}
	if p.Hours != nil && len(p.Hours) == 0 {
		return invalid(where, "has no hours")
	}
	return nil
}

func validateKind(k Kind, where string) error {
	for a, at := range k.Attributes {
		here := fmt.Sprintf("%s, attribute %d", where, a)
		n := len(at.Change)
		for i, row := range at.Change {
			if len(row) != n {
				return invalid(here, "row %d has %d times, want %d", i, len(row), n)
			}
			for j, t := range row {
				if i != j && (t < 0 || t > MaxTime) {
					return invalid(here, "time from %d to %d is %d, want 0 to %d", i, j, t, int64(MaxTime))
				}
			}
		}
		if at.First != nil && len(at.First) != n {
			return invalid(here, "%d first times for %d values", len(at.First), n)
		}
		for v, t := range at.First {
			if t < 0 || t > MaxTime {
				return invalid(here, "first time of value %d is %d, want 0 to %d", v, t, int64(MaxTime))
			}
		}
	}
	return nil
}

func validateSetting(k Kind, setting []int, where string) error {
	if setting != nil && len(setting) != len(k.Attributes) {
		return invalid(where, "%d settings for %d attributes", len(setting), len(k.Attributes))
	}
	for a, v := range setting {
		if n := len(k.Attributes[a].Change); v != Any && (v < 0 || v >= n) {
			return invalid(where, "setting of attribute %d is %d, want %d or 0 to %d", a, v, Any, n-1)
		}
	}
	return nil
}

func validateTask(p Problem, t Task, where string) error {
	if err := inTime(where, "time", t.Time); err != nil {
		return err
	}
	for _, b := range slices.Concat(t.After, t.From) {
		if b < 0 || b >= len(p.Tasks) {
			return invalid(where, "waits for task %d, want 0 to %d", b, len(p.Tasks)-1)
		}
	}
	for k, n := range t.Needs {
		if n.Skill < 0 || n.Level < 0 || n.Count < 0 || n.Count > MaxPeople {
			return invalid(where, "need %d is %+v, want nothing below 0 and at most %d people", k, n, MaxPeople)
		}
	}
	switch {
	case t.Kind != None && (t.Kind < 0 || t.Kind >= len(p.Kinds)):
		return invalid(where, "kind is %d, want %d for none or 0 to %d", t.Kind, None, len(p.Kinds)-1)
	case t.Kind == None && t.Setting != nil:
		return invalid(where, "wants a setting, but no machine")
	case t.Kind != None:
		if !slices.ContainsFunc(p.Machines, func(m Machine) bool { return m.Kind == t.Kind }) {
			return invalid(where, "there is no machine of kind %d", t.Kind)
		}
		if err := validateSetting(p.Kinds[t.Kind], t.Setting, where); err != nil {
			return err
		}
	}
	if t.Uses != nil && len(t.Uses) != len(p.Resources) {
		return invalid(where, "%d amounts for %d resources", len(t.Uses), len(p.Resources))
	}
	for r, u := range t.Uses {
		if u < 0 || u > p.Resources[r] {
			return invalid(where, "takes %d of resource %d, want 0 to %d", u, r, p.Resources[r])
		}
	}
	return nil
}

// circle returns tasks that wait for one another in a circle, or nil.
func circle(tasks []Task) []int {
	const (
		fresh = iota
		open
		closed
	)
	state := make([]int, len(tasks))
	var path []int
	var walk func(i int) []int
	walk = func(i int) []int {
		state[i] = open
		path = append(path, i)
		for _, b := range slices.Concat(tasks[i].After, tasks[i].From) {
			if state[b] == open {
				c := slices.Clone(path[slices.Index(path, b):])
				return c
			}
			if state[b] == fresh {
				if c := walk(b); c != nil {
					return c
				}
			}
		}
		state[i] = closed
		path = path[:len(path)-1]
		return nil
	}
	for i := range tasks {
		if state[i] == fresh {
			if c := walk(i); c != nil {
				return c
			}
		}
	}
	return nil
}

// staffed reports how task i cannot be done, if it cannot.
func staffed(p Problem, i int) error {
	t := p.Tasks[i]
	for k, n := range t.Needs {
		if !slices.ContainsFunc(p.People, func(q Person) bool { return q.can(n) }) {
			return &NobodyError{Task: i, Need: k}
		}
	}
	masks, ok := teamsOf(p, t)
	if !ok {
		return invalid(fmt.Sprintf("task %d", i), "there are more than %d ways to find the people for it", MaxTeams)
	}
	if len(masks) == 0 {
		return &NobodyError{Task: i, Need: None}
	}
	for _, m := range masks {
		if _, ok := p.together(m).fits(0, p.lasts(t, m)); ok {
			return nil
		}
	}
	return &NobodyError{Task: i, Need: None, Time: true}
}

// can reports whether the person meets a need.
func (p Person) can(n Need) bool {
	return n.Skill < len(p.Skills) && p.Skills[n.Skill] >= max(n.Level, 1)
}

// lasts is how long the people of a team take over a task.
func (p Problem) lasts(t Task, team uint64) int64 {
	pace := int64(0)
	for m := team; m != 0; m &= m - 1 {
		pace = max(pace, p.People[bits.TrailingZeros64(m)].pace())
	}
	if pace == 0 {
		pace = 100
	}
	return (t.Time*pace + 99) / 100
}

func (p Person) pace() int64 {
	if p.Pace == 0 {
		return 100
	}
	return int64(p.Pace)
}
