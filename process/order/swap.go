package order

import (
	"context"
	"math/rand/v2"
	"slices"
)

// A swapper betters an order of a model of one slot, where what a step costs
// depends on the one before it alone, by exchanging two blocks of the sequence
// that lie side by side, so far as precedence lets them (L. M. Gambardella and
// M. Dorigo, An ant colony system hybridized with a new local search for the
// sequential ordering problem, INFORMS Journal on Computing 12, 2000). When
// nothing more is to be had so, it goes on from an order somewhat disturbed. Its
// choices are pseudo-random from a fixed seed.
type swapper struct {
	m        *model
	cost     [][]int64 // [to][from]
	value    []int     // of each act
	random   *rand.Rand
	now      []int // acts; where the swapper is
	nowCost  int64
	best     []int
	bestCost int64
	looked   int // exchanges looked at
	since    int // orders settled since the best was found
}

// lookedPerNode is how many exchanges take about as long as expanding a node.
const lookedPerNode = 6000

// After so many orders without a better one the swapper goes a half per cent of
// the cost further from the best, and after the furthest it starts anew.
const patience, furthest = 50, 8

// newSwapper returns nil for a model that it does not suit.
func newSwapper(m *model) *swapper {
	if len(m.slots) != 1 || m.dues != nil || m.n < 3 {
		return nil
	}
	w := &swapper{m: m, cost: m.slots[0].cost, random: rand.New(rand.NewPCG(3, 4)), bestCost: infinite}
	for _, a := range m.acts {
		set := m.modes[a.mode].set
		if len(set) == 0 {
			return nil
		}
		w.value = append(w.value, set[0].value)
	}
	return w
}

// begin goes to another order if that is better.
func (w *swapper) begin(acts []int, cost int64) {
	if cost < w.bestCost {
		w.now, w.best = slices.Clone(acts), slices.Clone(acts)
		w.nowCost, w.bestCost = cost, cost
	}
}

// run goes on until it has looked at about so many exchanges, or the context
// ends. The best order is in best. The longer nothing better has been found, the
// further it goes from the best order before it comes back.
func (w *swapper) run(ctx context.Context, look int) {
	for last := w.looked + look; w.looked < last && ctx.Err() == nil; {
		w.settle(ctx)
		w.since++
		if w.nowCost < w.bestCost {
			w.best, w.bestCost, w.since = slices.Clone(w.now), w.nowCost, 0
		}
		away := int64(1 + w.since/patience%furthest)
		if w.nowCost > w.bestCost+w.bestCost/200*away {
			w.now, w.nowCost = slices.Clone(w.best), w.bestCost
		}
		for range 3 {
			w.disturb()
		}
		w.looked += len(w.now)
	}
}

// step is what act k of the sequence costs after act j; before the first is the
// start, after the last nothing.
func (w *swapper) step(j, k int) int64 {
	if k == len(w.now) {
		return 0
	}
	to := w.value[w.now[k]]
	if j < 0 {
		s := &w.m.slots[0]
		return w.cost[to][s.of(w.m.start)]
	}
	return w.cost[to][w.value[w.now[j]]]
}

// gain is what exchanging the blocks from a to b and from b to c saves.
func (w *swapper) gain(a, b, c int) int64 {
	return w.step(a-1, a) + w.step(b-1, b) + w.step(c-1, c) - w.step(a-1, b) - w.step(c-1, a) - w.step(b-1, c)
}

func (w *swapper) exchange(a, b, c int, gain int64) {
	block := slices.Clone(w.now[a:b])
	copy(w.now[a:], w.now[b:c])
	copy(w.now[a+c-b:], block)
	w.nowCost -= gain
}

// reach returns how far a block that begins at b can reach, up to most, to be
// exchanged with one that begins at a.
func (w *swapper) reach(a, b, most int) int {
	above := w.m.above[w.m.acts[w.now[a]].op]
	for c := b; c < most; c++ {
		if above.has(w.m.acts[w.now[c]].op) {
			return c
		}
	}
	return most
}

// settle exchanges blocks while that saves something.
func (w *swapper) settle(ctx context.Context) {
	for found := true; found && ctx.Err() == nil; {
		found = false
		for b := 1; b < len(w.now); b++ {
			var most int64
			var from, to int
			end := len(w.now)
			for a := b - 1; a >= 0; a-- {
				if end = w.reach(a, b, end); end == b {
					break
				}
				for c := b + 1; c <= end; c++ {
					if g := w.gain(a, b, c); g > most {
						most, from, to = g, a, c
					}
				}
				w.looked += end - b
			}
			if most > 0 {
				w.exchange(from, b, to, most)
				found = true
			}
		}
	}
}

// disturb exchanges two short blocks, whatever that costs.
func (w *swapper) disturb() {
	const short = 8
	b := 1 + w.random.IntN(len(w.now)-1)
	end := min(len(w.now), b+1+w.random.IntN(short))
	a, least := b, max(0, b-1-w.random.IntN(short))
	for a > least {
		reach := w.reach(a-1, b, end)
		if reach == b {
			break
		}
		a, end = a-1, reach
	}
	if a < b {
		w.exchange(a, b, end, w.gain(a, b, end))
	}
}
