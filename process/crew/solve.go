package crew

import "context"

// NoSearch as [Options.Nodes] asks for plans by rules and their bound only.
const NoSearch = -1

// Options limit the work of [Solve]. Time is limited by the context.
type Options struct {
	// Nodes is about the most that is tried: lists told, failures learned
	// from, and fronts walked are counted alike. 0 means 200 000, [NoSearch]
	// none.
	Nodes int

	// Brief asks for a plan whose bound is of little interest: longest paths and
	// the work that falls to people and machines, not searched for a better one.
	Brief bool

	// Progress, if not nil, is called now and then from within Solve with what
	// is known so far. It must not keep Solve waiting.
	Progress func(Progress)
}

// Progress is what [Solve] knows while it works.
type Progress struct {
	Finish    int64 // of the best plan so far
	Handovers int
	Bound     int64 // no plan ends sooner
	Tried     int
}

// A Result is the best plan found and what is known about it.
type Result struct {
	Places    []Place // by task; nil if no plan was found
	Finish    int64   // when all is done
	Handovers int     // pieces that go from some people to others
	Bound     int64   // no plan ends sooner
	Proved    bool    // Finish is the soonest possible, or there is no plan at all
	Fewest    bool    // besides, no plan that ends as soon has fewer hand-overs
	Tried     int     // lists, failures and fronts
	Stopped   Stop    // why the search ended
}

// Stop says why a search ended.
type Stop int

const (
	Finished  Stop = iota // finish and hand-overs are proved
	NodeLimit             // [Options.Nodes] were used up
	Cancelled             // the context ended
)

func (s Stop) String() string {
	switch s {
	case Finished:
		return "finished"
	case NodeLimit:
		return "node limit"
	case Cancelled:
		return "cancelled"
	}
	return "unknown"
}

// Solve returns the plan with the soonest finish it can find for p, and among
// those the fewest hand-overs, with a proof if the limits allow. When the
// context ends or a limit is reached the result holds the best plan so far and
// the bound reached; that is not an error. People's hours may leave no room for
// any plan: then Places is nil, and Proved tells whether that is certain. The
// only errors are those of [Validate].
//
// With the same problem and options, and a context that does not end, the
// result is the same each time. Ties in finish and hand-overs fall to the plan
// whose tasks end sooner in sum, then to the one found first.
//
// Telling one list takes O(tasks × (teams × machines + tasks)); a proof may
// take exponential time.
func Solve(ctx context.Context, p Problem, o Options) (Result, error) {
	if err := Validate(p); err != nil {
		return Result{}, err
	}
	if o.Nodes == 0 {
		o.Nodes = 200_000
	}
	return solve(ctx, p, o), nil
}

// LowerBound returns a time before which no plan for p can end, without any
// search: longest paths and the work that falls to each resource, kind of
// machine and set of people.
func LowerBound(p Problem) (int64, error) {
	if err := Validate(p); err != nil {
		return 0, err
	}
	return compile(p).lower(false), nil
}
