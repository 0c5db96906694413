package crew_test

import (
	"fmt"
	"slices"

	"bodkin/process/crew"
)

// sound checks a plan by the rules of the problem alone, task by task and time
// by time, with no code of the package, and returns its finish and hand-overs.
func sound(p crew.Problem, places []crew.Place) (finish int64, handovers int, err error) {
	if len(places) != len(p.Tasks) {
		return 0, 0, fmt.Errorf("%d places for %d tasks", len(places), len(p.Tasks))
	}
	for i, t := range p.Tasks {
		at := places[i]
		finish = max(finish, at.End)
		if at.Begin < 0 || at.Work < at.Begin {
			return 0, 0, fmt.Errorf("task %d begins at %d, works at %d", i, at.Begin, at.Work)
		}
		pace := 100
		if len(at.People) > 0 {
			pace = 0
		}
		for _, q := range at.People {
			if p.People[q].Pace == 0 {
				pace = max(pace, 100)
			}
			pace = max(pace, p.People[q].Pace)
		}
		lasts := t.Time * int64(pace)
		if lasts%100 != 0 {
			lasts += 100
		}
		if at.End-at.Work != lasts/100 {
			return 0, 0, fmt.Errorf("task %d takes %d, want %d", i, at.End-at.Work, lasts/100)
		}
		if err := staffed(p, t, at.People); err != nil {
			return 0, 0, fmt.Errorf("task %d: %w", i, err)
		}
		for _, q := range at.People {
			there := p.People[q].Hours == nil
			for _, h := range p.People[q].Hours {
				there = there || h.From <= at.Begin && at.End <= h.Until
			}
			if !there {
				return 0, 0, fmt.Errorf("task %d: person %d is not there from %d to %d", i, q, at.Begin, at.End)
			}
		}
		if (t.Kind == crew.None) != (at.Machine == crew.None) || t.Kind != crew.None && p.Machines[at.Machine].Kind != t.Kind {
			return 0, 0, fmt.Errorf("task %d of kind %d is at machine %d", i, t.Kind, at.Machine)
		}
		for _, b := range t.After {
			if places[b].End > at.Begin {
				return 0, 0, fmt.Errorf("task %d begins at %d, before task %d ends at %d", i, at.Begin, b, places[b].End)
			}
		}
		for k, b := range t.From {
			end := places[b].End
			others := len(at.People) > 0 && len(places[b].People) > 0 &&
				!slices.ContainsFunc(at.People, func(q int) bool { return slices.Contains(places[b].People, q) })
			if others {
				end += p.Handover
				if !slices.Contains(t.From[:k], b) {
					handovers++
				}
			}
			if end > at.Begin {
				return 0, 0, fmt.Errorf("task %d begins at %d, before its piece is there at %d", i, at.Begin, end)
			}
		}
	}
	for i := range places {
		for j := range i {
			a, b := places[i], places[j]
			if a.Begin >= b.End || b.Begin >= a.End {
				continue
			}
			timeless := a.Begin == a.End || b.Begin == b.End
			if a.Machine != crew.None && a.Machine == b.Machine && (!timeless || len(p.Kinds[p.Tasks[i].Kind].Attributes) > 0) {
				return 0, 0, fmt.Errorf("tasks %d and %d are at machine %d at once", j, i, a.Machine)
			}
			for _, q := range a.People {
				if !timeless && slices.Contains(b.People, q) {
					return 0, 0, fmt.Errorf("person %d does tasks %d and %d at once", q, j, i)
				}
			}
		}
	}
	for i, at := range places { // most is in use when something begins
		for r, capacity := range p.Resources {
			var used int64
			for j, b := range places {
				if p.Tasks[j].Uses != nil && b.Begin <= at.Begin && at.Begin < b.End {
					used += p.Tasks[j].Uses[r]
				}
			}
			if used > capacity {
				return 0, 0, fmt.Errorf("resource %d: %d in use when task %d begins, %d are there", r, used, i, capacity)
			}
		}
	}
	return finish, handovers, setUp(p, places)
}

// staffed checks that each of the people can be given one need.
func staffed(p crew.Problem, t crew.Task, people []int) error {
	var slots []crew.Need
	for _, n := range t.Needs {
		slots = append(slots, slices.Repeat([]crew.Need{n}, max(n.Count, 1))...)
	}
	if len(slots) != len(people) {
		return fmt.Errorf("%d people for %d needs", len(people), len(slots))
	}
	used := make([]bool, len(slots))
	var give func(k int) bool
	give = func(k int) bool {
		if k == len(people) {
			return true
		}
		for s, n := range slots {
			skills := p.People[people[k]].Skills
			if !used[s] && n.Skill < len(skills) && skills[n.Skill] >= max(n.Level, 1) {
				used[s] = true
				if give(k + 1) {
					return true
				}
				used[s] = false
			}
		}
		return false
	}
	if !give(0) {
		return fmt.Errorf("people %v cannot meet its needs", people)
	}
	return nil
}

// setUp replays each machine in time and checks the time for setting up.
func setUp(p crew.Problem, places []crew.Place) error {
	for q, m := range p.Machines {
		var here []int
		for i, at := range places {
			if at.Machine == q {
				here = append(here, i)
			}
		}
		slices.SortStableFunc(here, func(i, j int) int {
			if places[i].Begin != places[j].Begin {
				return int(places[i].Begin - places[j].Begin)
			}
			return int(places[i].End - places[j].End)
		})
		state := slices.Clone(m.Start)
		if state == nil {
			for range p.Kinds[m.Kind].Attributes {
				state = append(state, crew.Unset)
			}
		}
		for _, i := range here {
			var setup int64
			for a, v := range p.Tasks[i].Setting {
				attribute := p.Kinds[m.Kind].Attributes[a]
				switch {
				case v == crew.Any || v == state[a]:
					continue
				case state[a] != crew.Unset:
					setup += attribute.Change[state[a]][v]
				case attribute.First != nil:
					setup += attribute.First[v]
				}
				state[a] = v
			}
			if got := places[i].Work - places[i].Begin; got != setup {
				return fmt.Errorf("task %d is set up for in %d, want %d", i, got, setup)
			}
		}
	}
	return nil
}
