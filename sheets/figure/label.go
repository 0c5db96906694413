package figure

import (
	"cmp"
	"slices"
)

// Spread places labels along a line: want holds the place each would like its
// middle to have, size its length, both in mm. The middles that come back, in
// the order given, keep at least gap between neighbours and stay within lo and
// hi when there is room for all; when there is not, they are packed from lo
// on. They are moved from where they want to be as little as possible by the
// sum of squares. Equal wishes keep the order given.
func Spread(want, size []float64, gap, lo, hi float64) []float64 {
	n := min(len(want), len(size))
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(want[a], want[b]) })

	// With every label's own offset taken off, keeping clear means not
	// decreasing, and the least squares answer pools neighbours that clash.
	type pool struct {
		mean  float64
		count int
	}
	offset := make([]float64, n)
	run := 0.0
	var pools []pool
	for k, i := range order {
		if k > 0 {
			run += (size[order[k-1]]+size[i])/2 + gap
		}
		offset[k] = run
		pools = append(pools, pool{want[i] - run, 1})
		for len(pools) > 1 && pools[len(pools)-2].mean > pools[len(pools)-1].mean {
			a, b := pools[len(pools)-2], pools[len(pools)-1]
			sum := a.mean*float64(a.count) + b.mean*float64(b.count)
			pools = append(pools[:len(pools)-2], pool{sum / float64(a.count+b.count), a.count + b.count})
		}
	}
	out := make([]float64, n)
	if n == 0 {
		return out
	}
	least := lo + size[order[0]]/2
	most := hi - size[order[n-1]]/2 - run
	k := 0
	for _, p := range pools {
		at := max(min(p.mean, most), least)
		for range p.count {
			out[order[k]] = at + offset[k]
			k++
		}
	}
	return out
}
