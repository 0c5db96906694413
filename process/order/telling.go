package order

import (
	"cmp"
	"slices"
)

// A telling says how well a sequence reads, in falling weight: its cost; at
// how many places the station or a setting changes; at how many the group
// changes; and how many pairs of operations come against their ranks.
type telling struct {
	cost                  int64
	runs, groups, against int
}

func (a telling) compare(b telling) int {
	return cmp.Or(
		cmp.Compare(a.cost, b.cost),
		cmp.Compare(a.runs, b.runs),
		cmp.Compare(a.groups, b.groups),
		cmp.Compare(a.against, b.against),
	)
}

// judge judges a sequence of the model's acts.
func (t *task) judge(m *model, acts []int) telling {
	v := telling{cost: m.price(acts)}
	r := newReplayer(t.p)
	ranks := make([]int, 0, len(acts))
	last := -1
	for _, a := range acts {
		i := m.acts[a].op
		if i == len(t.p.Operations) {
			continue // the end
		}
		at := r.at
		if step := r.do(i, m.acts[a].way); step.Station != at || len(step.Changes) > 0 {
			v.runs++
		}
		op := t.p.Operations[i]
		if last >= 0 && t.p.Operations[last].Group != op.Group {
			v.groups++
		}
		last = i
		// the ranks before this one that are higher
		place, _ := slices.BinarySearch(ranks, op.Rank+1)
		v.against += len(ranks) - place
		ranks = slices.Insert(ranks, place, op.Rank)
	}
	return v
}

// needs reports whether operation i, done in one of its ways, needs another
// station or setting than there is.
func (r *replayer) needs(i, way int) bool {
	w := r.p.Operations[i].Way(way)
	if w.Station != r.at {
		return true
	}
	for a, v := range w.Setting {
		if v != Any && v != r.values[w.Station][a] {
			return true
		}
	}
	return false
}
