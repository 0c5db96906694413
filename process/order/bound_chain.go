package order

import "slices"

// A chain bounds a model of one slot, which every act sets, by its dearest chain
// of operations, and by the values still to be come to.
type chain struct {
	m     *model
	dist  [][]int64 // [to][from], closed under shortest paths
	value []int     // of each act
	tail  []int64   // what an act costs, besides coming to its value, with the dearest chain that follows
	only  []int     // by operation, the value it sets, or -1 where it can set several
	entry []int64   // the least cost of coming to a value
	seen  []int     // by value
	stamp int
}

func newChain(m *model) *chain {
	c := &chain{m: m, dist: shortest(m.slots[0].cost), tail: make([]int64, len(m.acts)), only: make([]int, m.n)}
	for _, a := range m.acts {
		c.value = append(c.value, m.modes[a.mode].set[0].value)
	}
	for _, i := range slices.Backward(topological(m.pred)) {
		c.only[i] = c.value[m.ways[i][0]]
		for _, a := range m.ways[i] {
			if c.value[a] != c.only[i] {
				c.only[i] = -1
			}
			for _, j := range m.succ[i] {
				c.tail[a] = max(c.tail[a], c.from(c.value[a], j))
			}
			c.tail[a] += m.acts[a].cost
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

// from returns what doing operation i and the dearest chain that follows it
// costs, coming from the value now.
func (c *chain) from(now, i int) int64 {
	least := int64(infinite)
	for _, a := range c.m.ways[i] {
		least = min(least, c.dist[c.value[a]][now]+c.tail[a])
	}
	return least
}

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
		longest = max(longest, c.from(now, i))
		if v := c.only[i]; v >= 0 && c.seen[v] != c.stamp {
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
