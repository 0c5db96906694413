package crew

import "slices"

// A first is a setting for the first time: some machine of the kind is set to
// a value that some tasks want and that none has at the beginning.
type first struct {
	tasks []int // that want it
	lasts int64 // at least

	kind, attribute, value int
}

// firsts tells the settings that no plan is without.
func (m *model) firsts() []first {
	var out []first
	for kind, k := range m.kinds {
		for a, at := range k.Attributes {
			wants := make([][]int, len(at.Change))
			for i := range m.n {
				if m.kind[i] == kind && m.setting[i] != nil && m.setting[i][a] != Any {
					v := m.setting[i][a]
					wants[v] = append(wants[v], i)
				}
			}
			for v, tasks := range wants {
				if len(tasks) == 0 {
					continue
				}
				if t := m.setOnce(kind, a, v); t > 0 {
					out = append(out, first{tasks, t, kind, a, v})
				}
			}
		}
	}
	return out
}

// setOnce is the least time that setting a value for the first time takes: none
// where a machine has it at the beginning.
func (m *model) setOnce(kind, a, v int) int64 {
	at := m.kinds[kind].Attributes[a]
	least := int64(infinite)
	for _, q := range m.machines[kind] {
		switch m.start[q][a] {
		case v:
			return 0
		case Unset:
			first := int64(0)
			if at.First != nil {
				first = at.First[v]
			}
			least = min(least, first)
		}
	}
	for u := range at.Change {
		if u != v {
			least = min(least, at.Change[u][v])
		}
	}
	if least >= infinite {
		return 0
	}
	return least
}

// eased is a model of the same work that every plan fits into and that has no
// settings. Where it is certain which task sets a value first, that task takes
// longer. Else setting up for the first time is a task of its own, which
// some of those do who do a task that wants it, at a machine of the kind,
// after all that every such task waits for; all such tasks wait for it. (Of
// these the one whose work begins first sets the machine itself, and the others
// begin their work no sooner.) Setting up again is left out. Without settings
// it is the model itself.
func (m *model) eased() *model {
	if !m.setups {
		return m
	}
	b := *m
	b.setups, b.full = false, m
	b.kinds, b.setting = make([]Kind, len(m.kinds)), make([][]int, m.n)
	b.least = make([]int64, m.n)
	for i, teams := range m.teams {
		b.least[i] = infinite
		for _, t := range teams {
			b.least[i] = min(b.least[i], t.lasts)
		}
	}
	b.spread()
	before := m.reach()
	slowest := int64(100)
	for _, p := range m.pace {
		slowest = max(slowest, p)
	}
	b.pred, b.succ = copies(m.pred), copies(m.succ)
	b.teams, b.kind, b.time = slices.Clone(m.teams), slices.Clone(m.kind), slices.Clone(m.time)
	b.uses, b.early = slices.Clone(m.uses), make([]int64, m.n)
	b.setIn, b.standsFor, b.fresh = make([]int64, m.n), make([][]int, m.n), m.freshes()
	for _, f := range m.firsts() {
		if i := f.soonest(before); i != None {
			b.lengthen(i, f.lasts, slowest)
			b.setIn[i] += f.lasts
			continue
		}
		u := b.n
		b.n++
		var who uint64
		free := false // some such task goes on by itself
		early := int64(infinite)
		for _, i := range f.tasks {
			early = min(early, b.head[i])
			for _, t := range m.teams[i] {
				who |= t.mask
				free = free || t.mask == 0
			}
		}
		var teams []team
		for q := range m.people {
			if who>>q&1 != 0 && !free {
				teams = append(teams, team{mask: 1 << q, people: []int{q}, lasts: f.lasts})
			}
		}
		if free {
			teams = []team{{lasts: f.lasts}}
		}
		b.teams, b.kind, b.setting = append(b.teams, teams), append(b.kind, m.kind[f.tasks[0]]), append(b.setting, nil)
		b.time, b.least = append(b.time, f.lasts*100/slowest), append(b.least, f.lasts)
		b.uses, b.early = append(b.uses, nil), append(b.early, early)
		b.setIn, b.standsFor = append(b.setIn, f.lasts), append(b.standsFor, f.tasks)
		b.pred, b.succ = append(b.pred, nil), append(b.succ, nil)
		for i := range m.n {
			if !slices.ContainsFunc(f.tasks, func(j int) bool { return !before[i][j] }) {
				b.join(i, u, false)
			}
		}
		for _, i := range f.tasks {
			b.join(u, i, false)
		}
	}
	b.spread()
	b.openings = m.opens(&b, before)
	return &b
}

// freshes tells for each kind the least time that it takes to set up each of its
// machines for any task at all, rising.
func (m *model) freshes() [][]int64 {
	out := make([][]int64, len(m.kinds))
	for kind, k := range m.kinds {
		for _, q := range m.machines[kind] {
			least := int64(infinite)
			for i := range m.n {
				if m.kind[i] != kind {
					continue
				}
				var sum int64
				for a, v := range m.setting[i] {
					if v != Any {
						sum += k.Attributes[a].reach(m.start[q][a], v)
					}
				}
				least = min(least, sum)
			}
			if least >= infinite {
				least = 0
			}
			out[kind] = append(out[kind], least)
		}
		slices.Sort(out[kind])
	}
	return out
}

// reach is the least time that it takes to set a value, others in between or not.
func (a Attribute) reach(start, v int) int64 {
	if start == v {
		return 0
	}
	at := slices.Repeat([]int64{infinite}, len(a.Change)) // from the start
	if start != Unset {
		at[start] = 0
	} else {
		for u := range at {
			if at[u] = 0; a.First != nil {
				at[u] = a.First[u]
			}
		}
	}
	for range at {
		for u, row := range a.Change {
			for w, t := range row {
				if u != w {
					at[w] = min(at[w], at[u]+t)
				}
			}
		}
	}
	return at[v]
}

// soonest is the task of those that want the value for which all others of them
// wait, or None.
func (f first) soonest(before [][]bool) int {
	for _, i := range f.tasks {
		if !slices.ContainsFunc(f.tasks, func(j int) bool { return j != i && !before[i][j] }) {
			return i
		}
	}
	return None
}

// lengthen lets a task take longer, whoever does it.
func (m *model) lengthen(i int, by, slowest int64) {
	teams := slices.Clone(m.teams[i])
	for k := range teams {
		teams[k].lasts += by
	}
	m.teams[i] = teams
	m.least[i] += by
	m.time[i] += by * 100 / slowest
}

func copies(arcs [][]arc) [][]arc {
	out := make([][]arc, len(arcs))
	for i, a := range arcs {
		out[i] = slices.Clone(a)
	}
	return out
}

// ease tells a draft of the model in terms of the eased one.
func (m *model) ease(b *model, d *draft) *draft {
	if b == m || d.place == nil {
		return d
	}
	out := d.clone()
	for i := range out.place {
		out.place[i].begin = out.place[i].end - b.teams[i][out.place[i].team].lasts
	}
	before := m.reach()
	for _, f := range m.firsts() {
		if f.soonest(before) != None {
			continue
		}
		s := spot{begin: infinite, machine: None}
		for _, i := range f.tasks {
			if at := max(d.place[i].work-f.lasts, 0); at < s.begin {
				teams := b.teams[len(out.place)]
				with := m.teams[i][d.place[i].team].mask
				s.begin, s.team = at, max(slices.IndexFunc(teams, func(t team) bool { return t.mask&with != 0 }), 0)
			}
		}
		s.work, s.end = s.begin, s.begin+f.lasts
		out.place = append(out.place, s)
	}
	out.place = append(out.place, m.openedIn(b.openings, d)...)
	return out
}
