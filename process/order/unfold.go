package order

import "slices"

// unfold returns the order of all operations that the branches of a search
// stand for, last branch first: each operation named brings about its mode,
// and everything free is done at once.
func (m *model) unfold(vias []int) []int {
	state := slices.Clone(m.start)
	done := newSet(m.n)
	left := make([]int, m.n)
	var ready []int
	sequence := make([]int, 0, m.n)
	for i := range m.n {
		if left[i] = len(m.pred[i]); left[i] == 0 {
			ready = append(ready, i)
		}
	}
	do := func(i int) {
		done.add(i)
		sequence = append(sequence, i)
		for _, s := range m.succ[i] {
			if left[s]--; left[s] == 0 {
				ready = append(ready, s)
			}
		}
	}
	freely := func() {
		for at := 0; at < len(ready); {
			i := ready[at]
			switch {
			case done.has(i):
				ready = slices.Delete(ready, at, at+1)
			case m.modes[m.mode[i]].free && m.fits(state, m.mode[i]):
				do(i)
				at = 0
			default:
				at++
			}
		}
	}
	freely()
	for _, i := range slices.Backward(vias) {
		m.enter(state, m.mode[i])
		freely() // what waited for i comes before it
		if !done.has(i) {
			do(i)
			freely()
		}
	}
	return sequence
}
