package order

import "slices"

// unfold returns the order of all operations, as acts, that the branches of a
// search stand for, last branch first: each act named brings about its mode, and
// everything free is done at once.
func (m *model) unfold(vias []int) []int {
	open := make([][]int, m.n)
	for i := range open {
		open[i] = m.openWays(i)
	}
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
	do := func(a int) {
		i := m.acts[a].op
		done.add(i)
		sequence = append(sequence, a)
		for _, s := range m.succ[i] {
			if left[s]--; left[s] == 0 {
				ready = append(ready, s)
			}
		}
	}
	freely := func() {
		for at := 0; at < len(ready); {
			i := ready[at]
			if done.has(i) {
				ready = slices.Delete(ready, at, at+1)
				continue
			}
			fit := slices.IndexFunc(open[i], func(a int) bool { return m.fits(state, m.acts[a].mode) })
			if fit >= 0 && m.due(done, i) == 0 {
				do(open[i][fit])
				at = 0
			} else {
				at++
			}
		}
	}
	freely()
	for _, a := range slices.Backward(vias) {
		m.enter(state, m.acts[a].mode)
		freely() // what waited for this act comes before it
		if !done.has(m.acts[a].op) {
			do(a)
			freely()
		}
	}
	return sequence
}
