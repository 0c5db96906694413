package crew

import (
	"cmp"
	"math"
	"slices"
)

// draft tells what was found as a list with teams and machines, what the full
// model does not know left out.
func (x *timetable) draft() order {
	want := make([]int, x.m.n)
	for i, teams := range x.team[:x.m.n] {
		for k, l := range teams {
			if x.s.val(l) > 0 {
				want[i] = k
			}
		}
	}
	list := slices.DeleteFunc(x.m.inOrder(x.low), func(i int) bool { return i >= len(x.settings) })
	return order{list, want[:len(x.settings)], x.standing(want)}
}

// standing gives tasks of kinds with openings their machines: one is the first
// at each further machine, others take one that is free, set as they want it if
// there is such a one.
func (x *timetable) standing(team []int) []int {
	m := x.m
	machine := slices.Repeat([]int{Any}, m.n)
	first := map[int]bool{}
	for z, o := range x.openers {
		if x.s.val(z) > 0 {
			first[o.task] = true
		}
	}
	for k, o := range m.openings {
		if k > 0 && m.openings[k-1].kind == o.kind {
			continue
		}
		var there, fresh []int
		for _, q := range m.machines[o.kind] {
			if !m.unset(q) {
				there = append(there, q)
			} else {
				fresh = append(fresh, q)
			}
		}
		if len(there) == 0 {
			there, fresh = fresh[:1], fresh[1:]
		}
		var tasks []int
		for _, i := range m.inOrder(x.low) {
			if i < len(x.settings) && m.kind[i] == o.kind {
				tasks = append(tasks, i)
			}
		}
		slices.SortStableFunc(tasks, func(i, j int) int { return cmp.Compare(x.low[i], x.low[j]) })
		until, state := map[int]int64{}, map[int][]int{}
		for _, i := range tasks {
			at := Any
			if first[i] && len(fresh) > 0 {
				at, fresh = fresh[0], fresh[1:]
				there = append(there, at)
			} else {
				best := math.MaxInt
				for _, q := range there {
					if until[q] > x.low[i] {
						continue
					}
					if n := changes(state[q], x.settings[i]); n < best {
						best, at = n, q
					}
				}
			}
			if at == Any {
				continue
			}
			machine[i] = at
			until[at] = x.low[i] + m.teams[i][team[i]].lasts
			if state[at] == nil {
				state[at] = slices.Clone(x.settings[i])
			}
			for a, v := range x.settings[i] {
				if v != Any {
					state[at][a] = v
				}
			}
		}
	}
	return machine
}

// changes counts what must be set otherwise.
func changes(state, setting []int) int {
	n := 0
	for a, v := range setting {
		if state != nil && v != Any && v != state[a] {
			n++
		}
	}
	return n
}

// aim lets what is tried first be as in a draft, and returns its teams as they
// are numbered here.
func (x *timetable) aim(d *draft) []int {
	who := x.m.renamed(d)
	for i := range x.m.n {
		x.s.saved[i] = d.place[i].begin
		for k, l := range x.team[i] {
			if l != truth {
				x.s.phase[l.v()] = who[i] == k
			}
		}
	}
	for k := range x.m.openings {
		x.s.saved[x.m.n+k] = d.place[x.m.n+k].begin
	}
	return who
}
