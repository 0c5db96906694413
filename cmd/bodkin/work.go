package main

import (
	"context"
	"fmt"
	"io"
	"time"

	"bodkin/process"
	"bodkin/process/order"
)

// work works out the plan. The time set for the search and an interrupt both
// end only the search: the best order so far is told with its bound.
func (g *gathered) work(ctx context.Context, s streams, set settings) (*process.Plan, error) {
	search, opts, cancel := set.search(ctx, s)
	defer cancel()
	plan, err := process.Work(search, g.Input, opts)
	if err != nil {
		return nil, g.placed(err)
	}
	interrupted(ctx, s, plan.Order)
	return plan, nil
}

// search is the context and the limits of a search for an order, which tells of
// its progress. Those who ask for no time get no search.
func (set settings) search(ctx context.Context, s streams) (context.Context, order.Options, context.CancelFunc) {
	told := progress{to: s.err, now: time.Now, begun: time.Now()}
	opts := order.Options{Progress: told.tell}
	if set.within == 0 {
		opts.Nodes = order.NoSearch
		return ctx, opts, func() {}
	}
	search, cancel := context.WithTimeout(ctx, set.within)
	return search, opts, cancel
}

// interrupted tells that the search for an order was.
func interrupted(ctx context.Context, s streams, found process.Order) {
	if ctx.Err() != nil && !found.Proved {
		fmt.Fprintln(s.err, "bodkin: interrupted; the best order found so far is used")
	}
}

// progress tells how the search stands, once it has taken longer than a second
// and then once a second.
type progress struct {
	to    io.Writer
	now   func() time.Time
	begun time.Time // of the search, or of the last word on it
}

func (p *progress) tell(o order.Progress) {
	t := p.now()
	if t.Sub(p.begun) <= time.Second {
		return
	}
	p.begun = t
	fmt.Fprintf(p.to, "bodkin: looking for the best order; the best so far has %.1f minutes of change, and none has less than %.1f\n",
		float64(o.Cost)/60, float64(o.Bound)/60)
}
