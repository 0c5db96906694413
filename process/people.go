package process

import (
	"fmt"
	"strconv"
	"strings"

	"bodkin/seams/form"
)

// RoomPerson is somebody who works in the room: what she can do, how fast, and
// when she is there. The first of the room is the maker.
type RoomPerson struct {
	Name  form.Text       `yaml:"name,required"`
	Can   form.Pairs[int] `yaml:"can"`   // levels by skill: 1 learning, 2 sure, 3 an old hand
	Pace  form.Text       `yaml:"pace"`  // her minutes for one of the plan's; 1 where absent
	From  form.Text       `yaml:"from"`  // time of day, such as 9:00
	Until form.Text       `yaml:"until"` // time of day
}

// checkPeople looks for what is wrong with the people by themselves.
func checkPeople(people []RoomPerson) form.Faults {
	var faults form.Faults
	skills := skillNames()
	seen := map[string]bool{}
	for _, p := range people {
		add := func(at form.Place, what, nearest, mend string) {
			faults = append(faults, form.FaultAt(at, what, nearest, mend))
		}
		if strings.TrimSpace(p.Name.Value) == "" {
			add(p.Name.At, "a person without a name", "", "name her as the others call her")
		}
		if seen[p.Name.Value] {
			add(p.Name.At, "two people are called "+strconv.Quote(p.Name.Value), "", "add a letter or a family name to one of them")
		}
		seen[p.Name.Value] = true
		for _, c := range p.Can {
			if !oneOfWords(c.Key.Value, skills) {
				add(c.Key.At, "no skill "+strconv.Quote(c.Key.Value), form.Nearest(c.Key.Value, skills),
					"the skills are "+strings.Join(skills, ", "))
			}
			if c.Value < 0 || c.Value > 3 {
				add(c.Key.At, fmt.Sprintf("level %d of %s", c.Value, c.Key.Value), "", "write 1 for learning, 2 for sure, 3 for an old hand")
			}
		}
		if _, ok := p.pace(); !ok {
			add(p.Pace.At, "cannot read "+strconv.Quote(p.Pace.Value)+" as a pace", "", "write a number from 0.5 to 5: 1.5 takes half as long again as the plan says")
		}
		if p.From.Value == "" || p.Until.Value == "" {
			add(p.Name.At, strconv.Quote(p.Name.Value)+" has no hours", "", "say from: 9:00 and until: 12:00, in her own hours")
			continue
		}
		from, ok := clock(p.From.Value)
		if !ok {
			add(p.From.At, "cannot read "+strconv.Quote(p.From.Value)+" as a time of day", "", "write hours and minutes, such as 9:00 or 13:30")
		}
		until, ok2 := clock(p.Until.Value)
		if !ok2 {
			add(p.Until.At, "cannot read "+strconv.Quote(p.Until.Value)+" as a time of day", "", "write hours and minutes, such as 9:00 or 13:30")
		}
		if ok && ok2 && until <= from {
			add(p.Until.At, p.Until.Value+" is not after "+p.From.Value, "", "let her stay until later than she comes")
		}
	}
	return faults
}

func oneOfWords(w string, words []string) bool {
	for _, o := range words {
		if w == o {
			return true
		}
	}
	return false
}

// pace is how many minutes she takes for one of the plan's.
func (p RoomPerson) pace() (float64, bool) {
	if p.Pace.Value == "" {
		return 1, true
	}
	v, err := strconv.ParseFloat(p.Pace.Value, 64)
	return v, err == nil && v >= 0.5 && v <= 5
}

// clock is a time of day in minutes.
func clock(s string) (int, bool) {
	h, m, ok := strings.Cut(s, ":")
	hours, err := strconv.Atoi(h)
	minutes, err2 := strconv.Atoi(m)
	ok = ok && err == nil && err2 == nil && len(m) == 2 && hours >= 0 && minutes >= 0 && minutes < 60 && hours*60+minutes <= 24*60
	return hours*60 + minutes, ok
}

// level is her level in a skill.
func (p RoomPerson) level(skill string) int {
	for _, c := range p.Can {
		if c.Key.Value == skill {
			return c.Value
		}
	}
	return 0
}
