package crew

import "slices"

// mirrored is the model told from its end. Machines remember their settings
// forwards only, and hours hold no backwards telling: both are left out, so that
// where there are some it gives an order of the tasks and no plan.
func (m *model) mirrored() *model {
	b := *m
	b.pred, b.succ = m.succ, m.pred
	b.head, b.tail = make([]int64, m.n), make([]int64, m.n)
	for i := range m.n {
		b.head[i], b.tail[i] = m.tail[i]-m.least[i], m.head[i]+m.least[i]
	}
	if m.setups {
		b.kinds, b.setups = make([]Kind, len(m.kinds)), false
		b.start, b.setting = make([][]int, len(m.start)), make([][]int, m.n)
	}
	if m.timed {
		b.hours, b.timed = make([]hours, m.people), false
	}
	return &b
}

// byEnd is the list of the mirrored model's tasks, last end first.
func (m *model) byEnd(d *draft) []int {
	key := make([]int64, m.n)
	for i := range key {
		key[i] = -d.place[i].end
	}
	return m.inOrder(key)
}

func teamsIn(d *draft) []int {
	want := make([]int, len(d.place))
	for i, s := range d.place {
		want[i] = s.team
	}
	return want
}

func (d *draft) clone() *draft { return &draft{place: slices.Clone(d.place), value: d.value} }
