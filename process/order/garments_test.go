package order_test

import (
	"math/rand/v2"
	"slices"

	"bodkin/process/order"
)

// Stations of the generated workroom.
const (
	table = iota
	machine
	overlocker
	iron
	hand
)

// workroom has a table, a straight machine (thread of three colours, needle,
// foot, stitch), an overlocker (thread), an iron (heat) and a place for hand
// work; costs are seconds. The figures are common practice, no source: they
// give the benchmarks the shape of the work, not its truth.
func workroom(r *rand.Rand) order.Problem {
	uniform := func(values int, cost int64) order.Attribute {
		return order.Attribute{Change: order.Uniform(values, cost), First: first(values, cost), Start: order.Unset}
	}
	heat := order.Attribute{Change: order.Uniform(3, 0), First: first(3, 60), Start: order.Unset}
	for from := range 3 {
		for to := range 3 {
			switch {
			case to > from:
				heat.Change[from][to] = 60
			case to < from:
				heat.Change[from][to] = 300
			}
		}
	}
	moves := order.Uniform(5, 0)
	for a := range 5 {
		for b := range a {
			moves[a][b] = int64(15 + 5*r.IntN(4))
			moves[b][a] = moves[a][b]
		}
	}
	return order.Problem{
		Stations: []order.Station{
			table:      {},
			machine:    {Attributes: []order.Attribute{uniform(3, 180), uniform(2, 60), uniform(3, 40), uniform(4, 10)}},
			overlocker: {Attributes: []order.Attribute{uniform(3, 600)}},
			iron:       {Attributes: []order.Attribute{heat}},
			hand:       {},
		},
		Moves: moves,
		Start: table,
	}
}

func first(n int, cost int64) []int64 {
	s := make([]int64, n)
	for i := range s {
		s[i] = cost
	}
	return s
}

// A pass is one operation of a making: where, and on the machine with which
// foot and stitch.
type pass struct{ station, foot, stitch int }

// makings are ways of making a seam or an edge, each a chain of passes; what
// they are called does not matter here.
var makings = [][]pass{
	{{table, 0, 0}, {machine, 0, 0}, {table, 0, 0}, {iron, 0, 0}, {machine, 0, 0}, {iron, 0, 0}},
	{{table, 0, 0}, {machine, 0, 0}, {table, 0, 0}, {iron, 0, 0}, {machine, 1, 1}, {iron, 0, 0}},
	{{overlocker, 0, 0}, {table, 0, 0}, {machine, 0, 0}, {iron, 0, 0}},
	{{table, 0, 0}, {machine, 0, 0}, {overlocker, 0, 0}, {iron, 0, 0}},
	{{iron, 0, 0}, {table, 0, 0}, {machine, 2, 0}, {iron, 0, 0}},
	{{table, 0, 0}, {machine, 0, 2}, {iron, 0, 0}, {table, 0, 0}, {machine, 1, 0}, {table, 0, 0}, {iron, 0, 0}},
	{{table, 0, 0}, {machine, 0, 0}, {table, 0, 0}, {iron, 0, 0}, {table, 0, 0}, {machine, 0, 1}, {iron, 0, 0}},
	{{machine, 0, 2}, {table, 0, 0}, {machine, 0, 0}, {table, 0, 0}, {iron, 0, 0}},
	{{iron, 0, 0}, {table, 0, 0}, {hand, 0, 0}, {iron, 0, 0}},
	{{table, 0, 0}, {machine, 2, 3}, {hand, 0, 0}},
}

// garment generates a piece of work of n operations: seams joined in a tree,
// each a chain of operations after one of the makings, some made twice alike,
// most in one colour with one needle on one cloth.
func garment(seed uint64, n int) order.Problem {
	r := rand.New(rand.NewPCG(seed, uint64(n)))
	p := workroom(r)
	var waiting []int // last operations of seams not joined yet
	leaves := max(3, n/12+r.IntN(3))
	seams := 0
	chain := func(making []pass, colour, needle, heat int, after []int) {
		for _, pass := range making {
			if len(p.Operations) == n {
				break
			}
			op := order.Operation{Station: pass.station, After: after, Rank: len(p.Operations), Group: seams / 3}
			switch pass.station {
			case machine:
				op.Setting = []int{colour, needle, pass.foot, pass.stitch}
			case overlocker:
				op.Setting = []int{colour}
			case iron:
				op.Setting = []int{heat}
			}
			after = []int{len(p.Operations)}
			p.Operations = append(p.Operations, op)
		}
		waiting = append(waiting, after[0])
		seams++
	}
	for len(p.Operations) < n {
		making := makings[r.IntN(len(makings))]
		colour := []int{0, 0, 0, 0, 0, 0, 0, 1, 1, 2}[r.IntN(10)]
		needle := r.IntN(8) / 7
		heat := []int{0, 1, 1, 1, 1, 1, 1, 2}[r.IntN(8)]
		if left := n - len(p.Operations); len(waiting) >= leaves || left < 8*len(waiting) && len(waiting) > 1 {
			var after []int
			for range 2 {
				k := r.IntN(len(waiting))
				after = append(after, waiting[k])
				waiting = slices.Delete(waiting, k, k+1)
			}
			chain(making, colour, needle, heat, after)
			continue
		}
		chain(making, colour, needle, heat, nil)
		if r.IntN(3) == 0 && len(p.Operations) < n { // its twin
			chain(making, colour, needle, heat, nil)
		}
	}
	return p
}

// rough generates chains like garment, but every pass on the machine has a
// foot and a stitch of its own: more modes than sewing has, and harder.
func rough(seed uint64, n int) order.Problem {
	p := garment(seed, n)
	r := rand.New(rand.NewPCG(seed, uint64(n)+1))
	for i := range p.Operations {
		if op := &p.Operations[i]; op.Station == machine {
			op.Setting[2] = max(0, r.IntN(5)-2)
			op.Setting[3] = r.IntN(4)
		}
	}
	return p
}

// choosy is a garment with a second machine like the first, on which anything
// can be done that is done on the first.
func choosy(seed uint64, n int) order.Problem {
	p := garment(seed, n)
	second := len(p.Stations)
	p.Stations = append(p.Stations, p.Stations[machine])
	p.Moves = order.Uniform(len(p.Stations), 20)
	for i := range p.Operations {
		if op := &p.Operations[i]; op.Station == machine {
			op.Or = []order.Way{{Station: second, Setting: op.Setting}}
		}
	}
	return p
}

// regional is a garment where taking up another part costs a little, the
// overlocker is to be left in its first colour, and seams are wished for in the
// order in which they are told.
func regional(seed uint64, n int) order.Problem {
	p := garment(seed, n)
	p.Pick = 5
	p.Stations[overlocker].End = []int{0}
	for i := range n {
		if j := i + n/3; i%4 == 0 && j < n {
			p.Wishes = append(p.Wishes, order.Wish{First: i, Then: j, Cost: 10})
		}
	}
	return p
}
