package order

// A matching is the cheapest assignment of some rows of a cost matrix to as
// many columns, found by shortest augmenting paths (R. Jonker and A. Volgenant,
// A shortest augmenting path algorithm for dense and sparse linear assignment
// problems, Computing 38, 1987). It keeps its memory for the next time.
type matching struct {
	price     []int64 // of each column asked for
	row       []int   // matched to each column, or -1
	unreached []int   // columns not reached yet, then scratch
	done      []int   // columns reached
	dist      []int64 // to each column
	from      []int   // the column before each on the way to it
	free      []int   // rows not matched by a hint
}

// solve returns the cost of the cheapest assignment. Where hints are given no
// cost may be negative: hint names for a row a column to begin with, at cost
// 0, or -1; hints that name columns not asked for are passed over.
func (t *matching) solve(cost [][]int64, rows, cols, hint []int) int64 {
	t.reset(len(cost), cols)
	for _, r := range rows {
		if c := hint[r]; c >= 0 && t.row[c] == unmatched {
			t.row[c] = r
		} else {
			t.free = append(t.free, r)
		}
	}
	for _, r := range t.free {
		t.augment(cost, cols, r)
	}
	var sum int64
	for _, c := range cols {
		sum += cost[t.row[c]][c]
	}
	return sum
}

// What stands for a row in matching.row.
const (
	unmatched = -1
	unasked   = -2 // the column is not asked for
)

func (t *matching) reset(n int, cols []int) {
	if len(t.row) < n {
		t.price, t.dist = make([]int64, n), make([]int64, n)
		t.row, t.from = make([]int, n), make([]int, n)
	}
	for c := range t.row {
		t.row[c] = unasked
	}
	for _, c := range cols {
		t.row[c], t.price[c] = unmatched, 0
	}
	t.free = t.free[:0]
}

// augment matches one more row, by the cheapest way of rematching others.
func (t *matching) augment(cost [][]int64, cols []int, r int) {
	const start = -1
	t.unreached, t.done = append(t.unreached[:0], cols...), t.done[:0]
	for _, c := range t.unreached {
		t.dist[c], t.from[c] = cost[r][c]-t.price[c], start
	}
	for {
		at := 0
		for k, c := range t.unreached {
			if t.dist[c] < t.dist[t.unreached[at]] {
				at = k
			}
		}
		near := t.unreached[at]
		t.unreached[at] = t.unreached[len(t.unreached)-1]
		t.unreached = t.unreached[:len(t.unreached)-1]
		length := t.dist[near]
		if t.row[near] == unmatched {
			for _, c := range t.done {
				t.price[c] += t.dist[c] - length
			}
			for t.from[near] != start {
				before := t.from[near]
				t.row[near] = t.row[before]
				near = before
			}
			t.row[near] = r
			return
		}
		t.done = append(t.done, near)
		line := cost[t.row[near]]
		base := length - (line[near] - t.price[near])
		for _, c := range t.unreached {
			if d := base + line[c] - t.price[c]; d < t.dist[c] {
				t.dist[c], t.from[c] = d, near
			}
		}
	}
}
