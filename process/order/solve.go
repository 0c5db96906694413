package order

import "context"

// NoSearch as [Options.Nodes] asks for a quick order and its bound only.
const NoSearch = -1

// Options limit the work of [Solve]. Time is limited by the context.
type Options struct {
	// Nodes is the most search nodes that the exact search may store; when
	// they are used up, the improvement that follows may expand as many again.
	// 0 means 2 million, [NoSearch] none.
	Nodes int

	// Memory is about the most bytes that the exact search may hold, its
	// bounds among them. 0 means 1 GiB.
	Memory int64

	// Progress, if not nil, is called now and then from within Solve with what
	// is known so far. It must not keep Solve waiting.
	Progress func(Progress)
}

// Progress is what [Solve] knows while it works.
type Progress struct {
	Cost     int64 // of the best order so far
	Bound    int64 // no order costs less
	Expanded int
	Stored   int
}

// A Result is the best order found and what is known about it.
type Result struct {
	Sequence []int // every operation that is not done once, each after its predecessors
	Ways     []int // the way in which each of Sequence is done, see [Operation.Way]
	Cost     int64 // of Sequence and Ways, as [CostWith] gives it
	Bound    int64 // no order costs less
	Proved   bool  // Cost is the least possible: Bound == Cost
	Expanded int   // search nodes expanded
	Stored   int   // search nodes stored at the most
	Stopped  Stop  // why the search ended
}

// Stop says why a search ended.
type Stop int

const (
	Finished    Stop = iota // the order is proved cheapest
	NodeLimit               // [Options.Nodes] were used up
	MemoryLimit             // [Options.Memory] was used up
	Cancelled               // the context ended
)

func (s Stop) String() string {
	switch s {
	case Finished:
		return "finished"
	case NodeLimit:
		return "node limit"
	case MemoryLimit:
		return "memory limit"
	case Cancelled:
		return "cancelled"
	}
	return "unknown"
}

// Solve returns the cheapest order it can find for p, and a proof that it is
// the cheapest if the limits allow. When the context ends or a limit is
// reached the result holds the best order so far and the bound reached; that
// is not an error. The only errors are those of [Validate].
//
// With the same problem and options, and a context that does not end, the
// result is the same each time. Of the orders of the cost it found, Solve looks
// for one that changes station or setting at the fewest places, then group at
// the fewest, then has the fewest pairs of operations against their ranks; it
// does not search all orders for that. Of ways that cost the same it takes
// those it comes to first.
//
// The problem is NP-hard: time and memory grow with the number of search nodes,
// which may be exponential in that of the operations and is limited by the
// options. A node of a problem of n operations takes about 60 + n/8 bytes and 8
// more for every 64 bits of settings, and where costs obey the triangle
// inequality n/8 bytes besides; expanding it takes time in proportion to n²/64 and the number
// of settings that ready operations ask for. Beside the nodes, bounds take up
// to some 25 MiB for each attribute that operations set. Solve starts no
// goroutine. When the context has ended it still makes one narrow attempt, so
// that there is an order to return.
func Solve(ctx context.Context, p Problem, o Options) (Result, error) {
	if err := Validate(p); err != nil {
		return Result{}, err
	}
	if o.Nodes == 0 {
		o.Nodes = 2_000_000
	}
	if o.Memory == 0 {
		o.Memory = 1 << 30
	}
	return solve(ctx, p, o), nil
}
