package process

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bodkin/process/crew"
	"bodkin/seams/form"
)

// state puts the work into numbers: a task an operation, a skill for each
// combination of skills that some operation asks for, a kind for each sort of
// machine. Table and hands are everybody's own and no kind.
func (s *sharing) state() {
	o := s.o
	rules := skillEntries()
	s.begins = 24 * 60
	for _, q := range s.people {
		from, _ := clock(q.From.Value)
		s.begins = min(s.begins, from)
	}
	combos := map[string]int{}
	need := make([]int, len(o.ops))
	var sets [][]Asked
	for i := range o.ops {
		a := o.difficulty(rules, &o.ops[i])
		s.asked = append(s.asked, a)
		key := ""
		for _, x := range a {
			key += fmt.Sprintf("%s %d,", x.Skill, x.Level)
		}
		k, ok := combos[key]
		if !ok {
			k = len(sets)
			combos[key], sets = k, append(sets, a)
		}
		need[i] = k
	}
	for _, q := range s.people {
		s.p.People = append(s.p.People, s.person(q, sets))
	}
	s.p.Handover = ticks(s.handover)
	kindOf := s.kinds()
	for i := range o.ops {
		n := &o.ops[i]
		t := crew.Task{Time: ticks(o.standard(n)), Kind: kindOf[n.station], Needs: []crew.Need{{Skill: need[i]}}}
		if t.Kind != crew.None {
			t.Setting = s.setting(n, t.Kind)
		}
		for _, b := range n.after {
			if s.implied(i, b.op) || slices.Contains(t.From, b.op) || slices.Contains(t.After, b.op) {
				continue
			}
			if o.ops[b.op].trial() || n.trial() {
				t.After = append(t.After, b.op)
			} else {
				t.From = append(t.From, b.op)
			}
		}
		s.p.Tasks = append(s.p.Tasks, t)
	}
}

// implied reports whether operation i waits for b through another anyway.
func (s *sharing) implied(i, b int) bool {
	seen := make([]bool, len(s.o.ops))
	var reaches func(k int) bool
	reaches = func(k int) bool {
		for _, n := range s.o.ops[k].after {
			if n.op == b {
				return true
			}
			if !seen[n.op] {
				seen[n.op] = true
				if reaches(n.op) {
					return true
				}
			}
		}
		return false
	}
	for _, n := range s.o.ops[i].after {
		if n.op != b && !seen[n.op] {
			seen[n.op] = true
			if reaches(n.op) {
				return true
			}
		}
	}
	return false
}

func (s *sharing) person(q RoomPerson, sets [][]Asked) crew.Person {
	pace, _ := q.pace()
	from, _ := clock(q.From.Value)
	until, _ := clock(q.Until.Value)
	out := crew.Person{Pace: int(math.Round(pace * 100)),
		Hours: []crew.Span{{From: ticks(float64(from - s.begins)), Until: ticks(float64(until - s.begins))}}}
	for _, set := range sets {
		can := 1
		for _, a := range set {
			if q.level(a.Skill) < a.Level {
				can = 0
			}
		}
		out.Skills = append(out.Skills, can)
	}
	return out
}

// kinds groups the machines by what they are on the shelf, and gives the kind
// of each station.
func (s *sharing) kinds() []int {
	out := make([]int, len(s.o.room.stations))
	index := map[string]int{}
	_, attrs := s.o.problem()
	for k, st := range s.o.room.stations {
		out[k] = crew.None
		if st.Kind != "machine" && st.Kind != "iron" {
			continue
		}
		used := slices.ContainsFunc(s.o.ops, func(n op) bool { return s.o.room.stations[n.station].Machine == st.Machine })
		if !used {
			continue
		}
		kind, ok := index[st.Machine]
		if !ok {
			kind = len(s.p.Kinds)
			index[st.Machine] = kind
			var c crew.Kind
			for a := range attrs[k] {
				all := attribute{what: attrs[k][a].what, index: map[string]int{}}
				for m, twin := range s.o.room.stations {
					if twin.Machine == st.Machine && twin.Kind == st.Kind {
						for _, v := range attrs[m][a].values {
							all.intern(v)
						}
					}
				}
				costs := all.costs(station{Station: st.Station, minutes: st.minutes})
				c.Attributes = append(c.Attributes, crew.Attribute{Change: inTicks(costs.Change), First: inTicks([][]int64{costs.First})[0]})
				s.values = append(s.values, all)
			}
			s.p.Kinds = append(s.p.Kinds, c)
			s.first = append(s.first, len(s.values)-len(c.Attributes))
		}
		out[k] = kind
		m := crew.Machine{Kind: kind}
		for a := range s.p.Kinds[kind].Attributes {
			v := crew.Unset
			all := s.values[s.first[kind]+a]
			if held := st.held.value(all.what); held != "" {
				v = all.index[held]
			}
			m.Start = append(m.Start, v)
		}
		s.p.Machines = append(s.p.Machines, m)
		s.places = append(s.places, st.Title)
	}
	return out
}

// inTicks turns seconds into ticks.
func inTicks(seconds [][]int64) [][]int64 {
	out := make([][]int64, len(seconds))
	for i, row := range seconds {
		for _, t := range row {
			out[i] = append(out[i], ticks(float64(t)/60))
		}
	}
	return out
}

// setting is what an operation wants of its machine.
func (s *sharing) setting(n *op, kind int) []int {
	var out []int
	for a := range s.p.Kinds[kind].Attributes {
		all := s.values[s.first[kind]+a]
		v := crew.Any
		if w := n.Setting.value(all.what); w != "" {
			v = all.index[w]
		}
		out = append(out, v)
	}
	return out
}

// nobody is the fault of an operation that nobody can do.
func (s *sharing) nobody(e *crew.NobodyError) error {
	n := s.o.ops[e.Task]
	if e.Time {
		return form.Faults{form.FaultAt(s.people[0].Name.At,
			fmt.Sprintf("nobody who can do it is there for the %.0f minutes of %s", n.Minutes, n.ID), "",
			"let somebody stay longer")}
	}
	var words []string
	for _, a := range s.asked[e.Task] {
		words = append(words, fmt.Sprintf("%s: %d", a.Skill, a.Level))
	}
	why := ""
	for _, a := range s.asked[e.Task] {
		if len(a.Because) > 0 {
			why += ", as " + strings.Join(a.Because, " and ")
		}
	}
	return form.Faults{form.FaultAt(s.people[0].Name.At,
		fmt.Sprintf("nobody in the room can do %s (%s); it asks for %s%s", n.ID, n.Part, strings.Join(words, " and "), why), "",
		"give somebody {"+strings.Join(words, ", ")+"} under can, if she has it")}
}
