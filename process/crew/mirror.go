package crew

import "slices"

// mirrored is the model told from its end, where that is as good a model:
// without settings, which machines remember forwards only, and without hours.
// Otherwise nil.
func (m *model) mirrored() *model {
	if m.setups || m.timed {
		return nil
	}
	b := *m
	b.pred, b.succ = m.succ, m.pred
	b.head, b.tail = make([]int64, m.n), make([]int64, m.n)
	for i := range m.n {
		b.head[i], b.tail[i] = m.tail[i]-m.least[i], m.head[i]+m.least[i]
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
