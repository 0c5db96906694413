package order

import "slices"

// A chain bounds a model of one slot by its dearest chain of operations, and
// by the values still to be come to.
type chain struct {
	m     *model
	dist  [][]int64 // [to][from], closed under shortest paths
	tail  []int64   // what the dearest chain that follows an operation costs
	entry []int64   // the least cost of coming to a value
	seen  []int     // by value
	stamp int
}

func newChain(m *model) *chain {
	c := &chain{m: m, dist: shortest(m.slots[0].cost), tail: make([]int64, m.n)}
	for _, i := range slices.Backward(topological(m.pred)) {
		for _, j := range m.succ[i] {
			c.tail[i] = max(c.tail[i], c.dist[c.value(j)][c.value(i)]+c.tail[j])
		}
	}
	n := len(c.dist)
	c.entry, c.seen = make([]int64, n), make([]int, n)
	for to := range n {
		c.entry[to] = infinite
		for from := range n {
			if from != to {
				c.entry[to] = min(c.entry[to], c.dist[to][from])
			}
		}
	}
	return c
}

// value is what operation i sets.
func (c *chain) value(i int) int { return c.m.modes[c.m.mode[i]].set[0].value }

// bound returns a lower bound on what the key leaves to be paid.
func (c *chain) bound(key []uint64) int64 {
	w := setWords(c.m.n)
	done, now := set(key[:w]), c.m.slots[0].of(key[w:])
	var longest, visits int64
	c.stamp++
	c.seen[now] = c.stamp
	for i := range c.m.n {
		if done.has(i) {
			continue
		}
		v := c.value(i)
		longest = max(longest, c.dist[v][now]+c.tail[i])
		if c.seen[v] != c.stamp {
			c.seen[v] = c.stamp
			visits += c.entry[v]
		}
	}
	return max(longest, visits)
}

// shortest closes a cost matrix under shortest paths (R. W. Floyd, Algorithm
// 97, Communications of the ACM 5, 1962). Beyond maxCubic values it returns
// the least cost of entering each value instead, which is below every path.
func shortest(cost [][]int64) [][]int64 {
	n := len(cost)
	d := make([][]int64, n)
	for to := range d {
		d[to] = slices.Clone(cost[to])
		d[to][to] = 0
		if n > maxCubic {
			least := int64(infinite)
			for from, c := range d[to] {
				if from != to {
					least = min(least, c)
				}
			}
			for from := range d[to] {
				if from != to {
					d[to][from] = least
				}
			}
		}
	}
	if n > maxCubic {
		return d
	}
	for via := range n {
		for to := range n {
			for from := range n {
				d[to][from] = min(d[to][from], d[to][via]+d[via][from])
			}
		}
	}
	return d
}
