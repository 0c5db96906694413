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

	// Memory is about the most bytes the search may hold. 0 means 1 GiB.
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
// result is the same each time.
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
