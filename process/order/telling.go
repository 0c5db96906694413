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

func judge(p Problem, sequence []int) telling {
	t := telling{cost: replay(p, sequence).Total}
	w := newWorkplace(p)
	ranks := make([]int, 0, len(sequence))
	for k, i := range sequence {
		t.runs += w.changes(i)
		w.do(i)
		op := p.Operations[i]
		if k > 0 && p.Operations[sequence[k-1]].Group != op.Group {
			t.groups++
		}
		// the ranks before this one that are higher
		at, _ := slices.BinarySearch(ranks, op.Rank+1)
		t.against += len(ranks) - at
		ranks = slices.Insert(ranks, at, op.Rank)
	}
	return t
}

// A workplace follows the station and the settings through a sequence.
type workplace struct {
	p      Problem
	at     int
	values [][]int
}

func newWorkplace(p Problem) *workplace {
	w := &workplace{p: p, at: p.Start}
	for _, st := range p.Stations {
		values := make([]int, len(st.Attributes))
		for a, at := range st.Attributes {
			values[a] = at.Start
		}
		w.values = append(w.values, values)
	}
	return w
}

// changes is 1 if operation i needs another station or setting, else 0.
func (w *workplace) changes(i int) int {
	op := w.p.Operations[i]
	if op.Station != w.at {
		return 1
	}
	for a, v := range op.Setting {
		if v != Any && v != w.values[op.Station][a] {
			return 1
		}
	}
	return 0
}

func (w *workplace) do(i int) {
	op := w.p.Operations[i]
	w.at = op.Station
	for a, v := range op.Setting {
		if v != Any {
			w.values[op.Station][a] = v
		}
	}
}
