package process

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/length"
)

// Class is a class that sews one garment together: everybody her own, in her
// own size and cloth. It is read strictly by [ParseClass].
type Class struct {
	Title    form.Text             `yaml:"class,required"`
	Make     form.Text             `yaml:"make,required"` // as in a job
	Choices  form.Pairs[form.Text] `yaml:"choices"`       // for all; a student's own come first
	Cloth    form.Pairs[JobCloth]  `yaml:"cloth"`         // for all who do not bring their own in that role
	Seams    form.Pairs[form.Text] `yaml:"seams"`
	Favour   form.Text             `yaml:"favour"`
	Units    form.Text             `yaml:"units"`
	Sessions ClassSessions         `yaml:"sessions,required"`
	Room     ClassRoom             `yaml:"room,required"`
	Students []Student             `yaml:"students,required"`
	Chance   int                   `yaml:"chance"`  // where the chance of the waiting begins; 1 where absent
	Numbers  form.Pairs[form.Text] `yaml:"numbers"` // held: what each number is, as bodkin wrote it
	Notes    string                `yaml:"notes"`   // Markdown of the teacher's own
}

// ClassSessions are the meetings of a class.
type ClassSessions struct {
	Count    int         `yaml:"count,required"`
	Length   form.Text   `yaml:"length,required"` // such as 2 h 30 min
	Setting  form.Text   `yaml:"setting_up"`      // of it, before work begins; 10 min where absent
	Clearing form.Text   `yaml:"clearing"`        // of it, after work ends; 10 min where absent
	Dates    []form.Text `yaml:"dates"`           // one for each, in any words
}

// ClassRoom is what stands in the room, and how many of each.
type ClassRoom struct {
	Name     string                `yaml:"name"`
	Machines []ClassMachine        `yaml:"machines"`
	Irons    int                   `yaml:"irons"`
	Iron     form.Text             `yaml:"iron"` // steam or dry
	House    form.Pairs[length.MM] `yaml:"house"`
	Timed    []TimedAct            `yaml:"timed"` // as in a workroom
	Rests    Rests                 `yaml:"rests"`
}

// ClassMachine is a kind of machine of the shelf and how many there are.
type ClassMachine struct {
	Is    form.Text `yaml:"is,required"`
	Count int       `yaml:"count"` // 1 where absent
}

// Student is one of the class.
type Student struct {
	Name    form.Text             `yaml:"name,required"`
	Size    form.Pairs[form.Text] `yaml:"size"`
	Choices form.Pairs[form.Text] `yaml:"choices"`
	Cloth   form.Pairs[JobCloth]  `yaml:"cloth"`
	Seams   form.Pairs[form.Text] `yaml:"seams"`
	AtHome  []form.Text           `yaml:"at_home"` // machines of the shelf, and iron
	Pace    form.Text             `yaml:"pace"`    // her minutes for one of the plan's; 1 where absent
}

// MaxStudents bounds a class: more than anybody teaches at once.
const MaxStudents = 60

// ParseClass reads a class strictly. Errors are [form.Faults].
func ParseClass(file string, data []byte) (*Class, error) {
	var c Class
	if err := form.Decode(file, data, &c); err != nil {
		return nil, err
	}
	var faults form.Faults
	add := func(at form.Place, what, nearest, mend string) {
		faults = append(faults, form.FaultAt(at, what, nearest, mend))
	}
	faults = append(faults, oneOf(c.Favour, "favour", favours)...)
	faults = append(faults, oneOf(c.Units, "units", unitNames)...)
	faults = append(faults, oneOf(c.Room.Iron, "iron", ironKinds)...)
	s := c.Sessions
	if s.Count < 1 || s.Count > 100 {
		add(s.Length.At, fmt.Sprintf("%d sessions", s.Count), "", "write how many there are, from 1 to 100")
	}
	whole, ok := duration(s.Length.Value)
	for _, t := range []form.Text{s.Length, s.Setting, s.Clearing} {
		if _, fine := duration(t.Value); t.Value != "" && !fine {
			add(t.At, "cannot read "+strconv.Quote(t.Value)+" as a length of time", "", "write hours and minutes, such as 2 h 30 min or 90 min")
			ok = false
		}
	}
	if up, down := s.margins(); ok && whole-up-down < 10 {
		add(s.Length.At, fmt.Sprintf("setting up and clearing leave %.0f minutes for work", max(whole-up-down, 0)), "",
			"make the sessions longer, or setting_up and clearing shorter")
	}
	if len(s.Dates) > 0 && len(s.Dates) != s.Count {
		add(s.Dates[0].At, fmt.Sprintf("%d dates for %d sessions", len(s.Dates), s.Count), "", "write one for each session, or none")
	}
	for _, m := range c.Room.Machines {
		if m.Count < 0 || m.Count > 100 {
			add(m.Is.At, fmt.Sprintf("%d of a machine", m.Count), "", "write how many stand in the room, from 1 to 100")
		}
	}
	if c.Room.Irons < 0 || c.Room.Irons > 100 {
		add(c.Make.At, fmt.Sprintf("%d irons", c.Room.Irons), "", "write how many irons the room has, from 0 to 100")
	}
	faults = append(faults, checkTiming(c.Room.Timed, c.Room.Rests)...)
	faults = append(faults, checkStudents(c)...)
	seen := map[string]bool{}
	for _, n := range c.Numbers {
		if seen[n.Value.Value] {
			add(n.Value.At, strconv.Quote(n.Value.Value)+" has two numbers", "", "leave the numbers as bodkin wrote them, or run class again with --renumber")
		}
		seen[n.Value.Value] = true
		if !numberWords.MatchString(n.Key.Value) {
			add(n.Key.At, "number "+strconv.Quote(n.Key.Value), "", "a number is written 12 or 12a; leave them as bodkin wrote them, or run class again with --renumber")
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return &c, nil
}

var numberWords = regexp.MustCompile(`^[1-9][0-9]{0,3}[a-z]{0,2}$`)

func checkStudents(c Class) form.Faults {
	var faults form.Faults
	add := func(at form.Place, what, mend string) {
		faults = append(faults, form.FaultAt(at, what, "", mend))
	}
	if len(c.Students) == 0 || len(c.Students) > MaxStudents {
		add(c.Title.At, fmt.Sprintf("a class of %d students", len(c.Students)), fmt.Sprintf("name from 1 to %d", MaxStudents))
	}
	seen := map[string]bool{}
	for _, s := range c.Students {
		if strings.TrimSpace(s.Name.Value) == "" {
			add(s.Name.At, "a student without a name", "name her as the others call her")
		}
		if seen[s.Name.Value] {
			add(s.Name.At, "two students are called "+strconv.Quote(s.Name.Value), "add a letter or a family name to one of them")
		}
		seen[s.Name.Value] = true
		if _, ok := s.pace(); !ok {
			add(s.Pace.At, "cannot read "+strconv.Quote(s.Pace.Value)+" as a pace", "write a number from 0.5 to 5: 1.5 takes half as long again as the plan says")
		}
		for _, p := range s.Cloth {
			faults = append(faults, p.Value.check(p.Key)...)
		}
	}
	for _, p := range c.Cloth {
		faults = append(faults, p.Value.check(p.Key)...)
	}
	return faults
}

func (s Student) pace() (float64, bool) { return RoomPerson{Pace: s.Pace}.pace() }

// durations are hours, minutes or both.
var durations = regexp.MustCompile(`^(?:([0-9]+(?:\.[0-9]+)?) ?h)?(?: ?([0-9]+) ?min)?$`)

// duration reads "2 h 30 min" in minutes.
func duration(s string) (float64, bool) {
	w := durations.FindStringSubmatch(strings.TrimSpace(s))
	if w == nil || w[1] == "" && w[2] == "" {
		return 0, false
	}
	h, _ := strconv.ParseFloat(w[1], 64)
	m, _ := strconv.ParseFloat(w[2], 64)
	total := 60*h + m
	return total, total > 0 && total <= 24*60
}

// usualMargin is what setting up and clearing take where the class does not
// say: an estimate.
const usualMargin = 10

// margins are the minutes before and after work.
func (s ClassSessions) margins() (up, down float64) {
	up, down = usualMargin, usualMargin
	if v, ok := duration(s.Setting.Value); ok {
		up = v
	}
	if v, ok := duration(s.Clearing.Value); ok {
		down = v
	}
	return up, down
}

// work is how long a session has for sewing.
func (s ClassSessions) work() float64 {
	whole, _ := duration(s.Length.Value)
	up, down := s.margins()
	return whole - up - down
}

// job is a student's own job.
func (c *Class) job(s Student) *Job {
	j := &Job{Make: c.Make, Title: c.Title.Value + ": " + s.Name.Value, Size: s.Size, Favour: c.Favour, Units: c.Units,
		Choices: over(c.Choices, s.Choices), Cloth: over(c.Cloth, s.Cloth), Seams: over(c.Seams, s.Seams)}
	return j
}

// over is what all have with what is one's own before it.
func over[T any](all, own form.Pairs[T]) form.Pairs[T] {
	out := slices.Clone(own)
	for _, p := range all {
		if _, ok := own.Get(p.Key.Value); !ok {
			out = append(out, p)
		}
	}
	return out
}

// workroom is the room as one student uses it: one machine of each kind.
func (c *Class) workroom() *Workroom {
	w := &Workroom{Name: c.Room.Name, Units: c.Units, House: c.Room.House, Iron: c.Room.Iron, Timed: c.Room.Timed, Rests: c.Room.Rests}
	if w.Name == "" {
		w.Name = "The class's room"
	}
	for _, m := range c.Room.Machines {
		if !slices.ContainsFunc(w.Machines, func(r RoomMachine) bool { return r.Is.Value == m.Is.Value }) {
			w.Machines = append(w.Machines, RoomMachine{Is: m.Is})
		}
	}
	switch {
	case c.Room.Irons == 0:
		w.Iron.Value = "none"
	case w.Iron.Value == "":
		w.Iron.Value = "steam"
	}
	return w
}

// count is how many of a kind of station there are; 0 is as many as wanted.
func (c *Class) count(st Station) int {
	switch st.Kind {
	case "iron":
		return c.Room.Irons
	case "machine":
		n := 0
		for _, m := range c.Room.Machines {
			if m.Is.Value == st.Machine {
				n += max(m.Count, 1)
			}
		}
		return n
	}
	return 0
}
