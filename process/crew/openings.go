package crew

import (
	"math/bits"
	"slices"
)

// An opening is one more machine of a kind being set up that was not set at all:
// beside what is at work with fewer machines. Where fewer are enough it need
// not be.
type opening struct {
	kind  int
	lasts int64   // at least, beyond what first settings count already
	early int64   // not before
	rest  int64   // least time from its end to the end of all
	who   uint64  // one of whom is busy with it; 0 is nobody
	tasks []int   // for one of which it is done, by those who do it
	each  []int64 // how long it lasts for each of them at least
}

// opens tells the openings of each kind, one for each machine beyond the first.
// The first task at such a machine finds nothing set: it pays for all that it
// wants, a first setting that may be counted for it already left out.
func (m *model) opens(b *model, before [][]bool) []opening {
	firsts := m.firsts()
	var out []opening
	for kind, machines := range m.machines {
		set := 0 // machines on which something is set at the beginning
		for _, q := range machines {
			if !m.unset(q) {
				set++
			}
		}
		var tasks []int
		for i := range m.n {
			if m.kind[i] == kind {
				tasks = append(tasks, i)
			}
		}
		o := opening{kind: kind, lasts: infinite, early: infinite, rest: infinite}
		free := false
		for _, i := range tasks {
			if set == 0 && !slices.ContainsFunc(tasks, func(j int) bool { return j != i && !before[i][j] }) {
				continue // it comes before all others: never at one more machine
			}
			t := m.opened(i, firsts, before)
			o.tasks, o.each, o.lasts = append(o.tasks, i), append(o.each, t), min(o.lasts, t)
			o.early = min(o.early, b.head[i])
			o.rest = min(o.rest, b.tail[i])
			for _, t := range m.teams[i] {
				o.who |= t.mask
				free = free || t.mask == 0
			}
		}
		if free {
			o.who = 0
		}
		if len(m.kinds[kind].Attributes) == 0 || o.lasts >= infinite {
			continue
		}
		for range len(machines) - max(set, 1) {
			out = append(out, o)
		}
	}
	return out
}

// unset reports whether nothing is set on a machine at the beginning.
func (m *model) unset(machine int) bool {
	return !slices.ContainsFunc(m.start[machine], func(v int) bool { return v != Unset })
}

// opened is the least time for setting a machine for a task on which nothing is
// set, first settings left out that may be counted for the task.
func (m *model) opened(i int, firsts []first, before [][]bool) int64 {
	var sum int64
	for a, v := range m.setting[i] {
		if at := m.kinds[m.kind[i]].Attributes[a]; v != Any && at.First != nil {
			sum += at.First[v]
		}
	}
	for _, f := range firsts {
		if s := f.soonest(before); slices.Contains(f.tasks, i) && (s == None || s == i) {
			sum -= f.lasts
		}
	}
	return max(sum, 0)
}

// openedIn tells when the openings are in a plan: begin and who, infinite where
// there is none.
func (m *model) openedIn(openings []opening, d *draft) []spot {
	var out []spot
	for k := 0; k < len(openings); {
		kind := openings[k].kind
		first := map[int]int{} // by machine: its first task
		for i, s := range d.place {
			if m.kind[i] != kind {
				continue
			}
			if j, ok := first[s.machine]; !ok || s.work < d.place[j].work {
				first[s.machine] = i
			}
		}
		var tasks []int
		for _, q := range m.machines[kind] {
			if i, ok := first[q]; ok && m.unset(q) {
				tasks = append(tasks, i)
			}
		}
		slices.SortStableFunc(tasks, func(i, j int) int { return int(d.place[i].work - d.place[j].work) })
		same := 0
		for k+same < len(openings) && openings[k+same].kind == kind {
			same++
		}
		tasks = tasks[max(0, len(tasks)-same):]
		for c := range same {
			s := spot{begin: infinite, machine: None}
			if c < len(tasks) {
				i := tasks[c]
				s.begin = max(d.place[i].work-openings[k].lasts, 0)
				s.team = max(0, bits.TrailingZeros64(m.teams[i][d.place[i].team].mask))
			}
			out = append(out, s)
		}
		k += same
	}
	return out
}
