package crew

import "slices"

// ranks numbers people who are alike by the first task that they take part in:
// of plans that differ by who is who, one is enough.
func (x *timetable) ranks() {
	m := x.m
	list := m.inOrder(m.head)
	for q := 1; q < m.people; q++ {
		if !m.alike(q-1, q) {
			continue
		}
		var some []lit
		for _, i := range list {
			a, b := x.doing(i, q-1), x.doing(i, q)
			some = append(some, a)
			if b != lie {
				x.s.add(append([]lit{b.not()}, some...)...)
			}
			if a == truth {
				break
			}
		}
	}
}

// renamed tells the teams of a draft with people who are alike numbered as ranks
// wants it.
func (m *model) renamed(d *draft) []int {
	name := make([]int, m.people)
	for q := range name {
		name[q] = q
	}
	at := func(q int) int { // its first task
		for k, i := range m.inOrder(m.head) {
			for _, p := range m.teams[i][d.place[i].team].people {
				if name[p] == q {
					return k
				}
			}
		}
		return m.n
	}
	for again := true; again; {
		again = false
		for q := 1; q < m.people; q++ {
			if m.alike(q-1, q) && at(q) < at(q-1) {
				for p := range name {
					switch name[p] {
					case q:
						name[p] = q - 1
					case q - 1:
						name[p] = q
					}
				}
				again = true
			}
		}
	}
	out := make([]int, m.n)
	for i, teams := range m.teams {
		var mask uint64
		for _, p := range teams[d.place[i].team].people {
			mask |= 1 << name[p]
		}
		out[i] = max(0, slices.IndexFunc(teams, func(t team) bool { return t.mask == mask }))
	}
	return out
}

// alike reports whether nothing is otherwise if two people change places.
func (m *model) alike(p, q int) bool {
	if m.pace[p] != m.pace[q] || !slices.Equal(m.hours[p], m.hours[q]) {
		return false
	}
	swap := func(mask uint64) uint64 {
		a, b := mask>>p&1, mask>>q&1
		return mask&^(1<<p|1<<q) | a<<q | b<<p
	}
	for _, teams := range m.teams {
		for _, t := range teams {
			if !slices.ContainsFunc(teams, func(u team) bool { return u.mask == swap(t.mask) && u.lasts == t.lasts }) {
				return false
			}
		}
	}
	return true
}
