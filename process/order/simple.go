package order

import (
	"container/heap"
	"context"
	"slices"
)

// search is uniform-cost search over (operations done, settings, station).
func search(ctx context.Context, p Problem, o Options) Result {
	r := quick(p)
	if r.Cost == 0 {
		r.Proved = true
		return r
	}
	best := map[string]int64{}
	queue := &simpleQueue{{state: startState(p)}}
	r.Stopped = NodeLimit
	for queue.Len() > 0 {
		node := heap.Pop(queue).(simpleNode)
		r.Bound = node.cost
		if node.cost >= r.Cost {
			break
		}
		if r.Expanded%1024 == 0 && ctx.Err() != nil {
			r.Stopped = Cancelled
			return r
		}
		if node.cost > best[node.state.key()] {
			continue
		}
		if len(node.sequence) == len(p.Operations) {
			r.Sequence, r.Cost = node.sequence, node.cost
			break
		}
		r.Expanded++
		for i := range p.Operations {
			if !node.state.ready(p, i) {
				continue
			}
			next, cost := node.state.do(p, i)
			cost += node.cost
			key := next.key()
			if old, ok := best[key]; ok && old <= cost {
				continue
			} else if !ok && len(best) >= o.Nodes {
				return r
			}
			best[key] = cost
			heap.Push(queue, simpleNode{next, cost, append(slices.Clone(node.sequence), i)})
		}
	}
	r.Stored = len(best)
	r.Bound, r.Proved, r.Stopped = r.Cost, true, Finished
	return r
}

// quick takes the cheapest ready operation each time, the lowest rank first.
func quick(p Problem) Result {
	var r Result
	state := startState(p)
	for range p.Operations {
		at, least := -1, int64(0)
		for i := range p.Operations {
			if !state.ready(p, i) {
				continue
			}
			_, cost := state.do(p, i)
			if at < 0 || cost < least || cost == least && p.Operations[i].Rank < p.Operations[at].Rank {
				at, least = i, cost
			}
		}
		state, _ = state.do(p, at)
		r.Sequence = append(r.Sequence, at)
		r.Cost += least
	}
	return r
}

type simpleState struct {
	done   []byte
	at     int
	values [][]int
}

func startState(p Problem) simpleState {
	s := simpleState{done: make([]byte, len(p.Operations)), at: p.Start}
	for _, st := range p.Stations {
		var v []int
		for _, a := range st.Attributes {
			v = append(v, a.Start)
		}
		s.values = append(s.values, v)
	}
	return s
}

func (s simpleState) key() string {
	b := append(slices.Clone(s.done), byte(s.at), byte(s.at>>8))
	for _, v := range slices.Concat(s.values...) {
		b = append(b, byte(v), byte(v>>8))
	}
	return string(b)
}

func (s simpleState) ready(p Problem, i int) bool {
	return s.done[i] == 0 && !slices.ContainsFunc(p.Operations[i].After, func(b int) bool { return s.done[b] == 0 })
}

func (s simpleState) do(p Problem, i int) (simpleState, int64) {
	op := p.Operations[i]
	next := simpleState{done: slices.Clone(s.done), at: op.Station, values: slices.Clone(s.values)}
	next.done[i] = 1
	var cost int64
	if s.at != Nowhere && s.at != op.Station && p.Moves != nil {
		cost = p.Moves[s.at][op.Station]
	}
	values := slices.Clone(s.values[op.Station])
	for a, to := range op.Setting {
		from := values[a]
		if to == Any || to == from {
			continue
		}
		attribute := p.Stations[op.Station].Attributes[a]
		if from != Unset {
			cost += attribute.Change[from][to]
		} else if attribute.First != nil {
			cost += attribute.First[to]
		}
		values[a] = to
	}
	next.values[op.Station] = values
	return next, cost
}

type simpleNode struct {
	state    simpleState
	cost     int64
	sequence []int
}

type simpleQueue []simpleNode

func (q simpleQueue) Len() int           { return len(q) }
func (q simpleQueue) Less(i, j int) bool { return q[i].cost < q[j].cost }
func (q simpleQueue) Swap(i, j int)      { q[i], q[j] = q[j], q[i] }
func (q *simpleQueue) Push(x any)        { *q = append(*q, x.(simpleNode)) }
func (q *simpleQueue) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}
