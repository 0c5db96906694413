package order

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// A CycleError says that no order exists, and why. Each cycle lists operations
// of which each must come before the next and the last before the first. There
// is one shortest cycle for every knot of operations that wait for each other;
// the shortest comes first, equal ones by their smallest operation, with which
// each begins.
type CycleError struct {
	Cycles [][]int
}

// Error names at most three cycles of at most twelve operations in full.
func (e *CycleError) Error() string {
	const maxCycles, maxNames = 3, 12
	var b strings.Builder
	b.WriteString("operations wait for each other in a circle: ")
	for i, cycle := range e.Cycles {
		if i == maxCycles {
			fmt.Fprintf(&b, "; and %d more", len(e.Cycles)-i)
			break
		}
		if i > 0 {
			b.WriteString("; ")
		}
		for k, op := range cycle {
			if k == maxNames {
				fmt.Fprintf(&b, "(%d more) before ", len(cycle)-k)
				break
			}
			fmt.Fprintf(&b, "%d before ", op)
		}
		fmt.Fprint(&b, cycle[0])
	}
	return b.String()
}

// findCycles returns one shortest cycle from each knot, or nil when the
// operations can be ordered. Predecessors must be in range.
func findCycles(ops []Operation) [][]int {
	knot := knots(ops)
	best := map[int][]int{}
	for start := range ops {
		if knot[start] < 0 {
			continue
		}
		cycle := cycleThrough(ops, knot, start)
		if old, ok := best[knot[start]]; !ok || len(cycle) < len(old) {
			best[knot[start]] = cycle
		}
	}
	cycles := make([][]int, 0, len(best))
	for _, c := range best {
		cycles = append(cycles, c)
	}
	slices.SortFunc(cycles, func(a, b []int) int {
		return cmp.Or(cmp.Compare(len(a), len(b)), slices.Compare(a, b))
	})
	return cycles
}

// knots gives every operation the number of its strongly connected component,
// or -1 where that is the operation alone without a loop (Tarjan, Depth-first
// search and linear graph algorithms, SIAM Journal on Computing 1, 1972; here
// with an explicit stack, so that long chains do no harm).
func knots(ops []Operation) []int {
	const unseen = 0
	type frame struct{ op, next int }
	var (
		n       = len(ops)
		knot    = make([]int, n)
		seen    = make([]int, n) // order of visit from 1
		low     = make([]int, n)
		onStack = make([]bool, n)
		stack   []int
		clock   int
		count   int
	)
	for i := range knot {
		knot[i] = -1
	}
	for root := range n {
		if seen[root] != unseen {
			continue
		}
		frames := []frame{{op: root}}
		for len(frames) > 0 {
			f := &frames[len(frames)-1]
			v := f.op
			if f.next == 0 {
				clock++
				seen[v], low[v] = clock, clock
				stack, onStack[v] = append(stack, v), true
			}
			if f.next < len(ops[v].After) {
				w := ops[v].After[f.next]
				f.next++
				if seen[w] == unseen {
					frames = append(frames, frame{op: w})
				} else if onStack[w] {
					low[v] = min(low[v], seen[w])
				}
				continue
			}
			frames = frames[:len(frames)-1]
			if len(frames) > 0 {
				u := frames[len(frames)-1].op
				low[u] = min(low[u], low[v])
			}
			if low[v] != seen[v] {
				continue
			}
			at := slices.Index(stack, v)
			component := stack[at:]
			stack = stack[:at]
			for _, w := range component {
				onStack[w] = false
			}
			if len(component) > 1 || slices.Contains(ops[v].After, v) {
				for _, w := range component {
					knot[w] = count
				}
				count++
			}
		}
	}
	return knot
}

// cycleThrough returns a shortest cycle through start inside its knot, each
// operation before the next, beginning with the smallest.
func cycleThrough(ops []Operation, knot []int, start int) []int {
	before := make(map[int]int) // operation → the one it was reached from
	queue := []int{start}
	for len(queue) > 0 {
		v := queue[0]
		queue = queue[1:]
		for _, w := range ops[v].After {
			if w == start { // v waits for start: start … v, walked backwards
				cycle := []int{}
				for u := v; u != start; u = before[u] {
					cycle = append(cycle, u)
				}
				cycle = append(cycle, start)
				return rotate(cycle)
			}
			if _, ok := before[w]; !ok && knot[w] == knot[start] {
				before[w] = v
				queue = append(queue, w)
			}
		}
	}
	return nil // not reached: start lies on a cycle
}

// rotate turns the cycle so that its smallest operation is first.
func rotate(cycle []int) []int {
	at := slices.Index(cycle, slices.Min(cycle))
	return append(slices.Clone(cycle[at:]), cycle[:at]...)
}
