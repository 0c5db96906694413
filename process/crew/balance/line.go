package balance

import (
	"fmt"
	"math/bits"
)

// Caps on a line.
const (
	MaxTasks = 256
	MaxTime  = 1 << 40 // of one task
)

// A Line is tasks to be split among stations.
type Line struct {
	Times []int64 // of each task

	// After has, for each task, the tasks that may not stand at a later
	// station. Nil means none throughout.
	After [][]int
}

// A Row is a split and what is known about it.
type Row struct {
	Stations [][]int // tasks of each station, in an order that respects After
	Cycle    int64   // the largest sum of times at a station, or the cycle asked for
	Bound    int64   // no fewer stations, or no less cycle time, are possible
	Proved   bool    // the bound is met
}

// An InvalidError says what in a line is out of range.
type InvalidError struct {
	Task int // or -1
	What string
}

func (e *InvalidError) Error() string {
	if e.Task < 0 {
		return e.What
	}
	return fmt.Sprintf("task %d: %s", e.Task, e.What)
}

// A set holds tasks.
type set [MaxTasks / 64]uint64

func (s *set) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s *set) has(i int) bool { return s[i>>6]>>(i&63)&1 != 0 }

func (s *set) without(t *set) (out set) {
	for k := range s {
		out[k] = s[k] &^ t[k]
	}
	return out
}

func (s *set) each(do func(i int)) {
	for k, w := range s {
		for ; w != 0; w &= w - 1 {
			do(k<<6 + bits.TrailingZeros64(w))
		}
	}
}

// A graph is a line made ready.
type graph struct {
	n      int
	times  []int64
	pred   [][]int
	succ   [][]int
	order  []int   // each after its predecessors
	weight []int64 // time of a task and all that follow it
	sum    int64
}

func ready(l Line) (*graph, error) {
	n := len(l.Times)
	if n > MaxTasks {
		return nil, &InvalidError{-1, fmt.Sprintf("%d tasks, at most %d are possible", n, MaxTasks)}
	}
	if l.After != nil && len(l.After) != n {
		return nil, &InvalidError{-1, fmt.Sprintf("predecessors of %d tasks for %d", len(l.After), n)}
	}
	g := &graph{n: n, times: l.Times, pred: make([][]int, n), succ: make([][]int, n), weight: make([]int64, n)}
	left := make([]int, n)
	for i, t := range l.Times {
		if t < 0 || t > MaxTime {
			return nil, &InvalidError{i, fmt.Sprintf("time is %d, want 0 to %d", t, int64(MaxTime))}
		}
		g.sum += t
		if l.After == nil {
			continue
		}
		for _, b := range l.After[i] {
			if b < 0 || b >= n {
				return nil, &InvalidError{i, fmt.Sprintf("comes after task %d, want 0 to %d", b, n-1)}
			}
			g.pred[i] = append(g.pred[i], b)
			g.succ[b] = append(g.succ[b], i)
			left[i]++
		}
	}
	for i := range n {
		if left[i] == 0 {
			g.order = append(g.order, i)
		}
	}
	for k := 0; k < len(g.order); k++ {
		for _, j := range g.succ[g.order[k]] {
			if left[j]--; left[j] == 0 {
				g.order = append(g.order, j)
			}
		}
	}
	if len(g.order) < n {
		for i := range n {
			if left[i] > 0 {
				return nil, &InvalidError{i, "waits for itself in a circle"}
			}
		}
	}
	follow := make([]set, n)
	for k := n - 1; k >= 0; k-- {
		i := g.order[k]
		follow[i].add(i)
		for _, j := range g.succ[i] {
			for w := range follow[i] {
				follow[i][w] |= follow[j][w]
			}
		}
		follow[i].each(func(j int) { g.weight[i] += g.times[j] })
	}
	return g, nil
}

// turned is the graph told from its end; a row for it is one for g backwards.
func (g *graph) turned(l Line) *graph {
	after := make([][]int, g.n)
	copy(after, g.succ)
	t, _ := ready(Line{Times: l.Times, After: after})
	return t
}
