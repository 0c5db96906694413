package order

import "context"

// solve is Solve for a valid problem and options without zeros.
func solve(ctx context.Context, p Problem, o Options) Result {
	m := compile(p)
	b := newBeam(m, newBound(m), infinite)
	r := Result{Sequence: b.run(context.WithoutCancel(ctx), 1, 1<<60)}
	r.Cost, r.Bound, r.Expanded = m.price(r.Sequence), b.low+m.constant, b.expanded
	if o.Nodes > 0 {
		s := newSearch(m, r.Cost)
		s.run(ctx, o.Nodes, o.Nodes)
		if better := s.sequence(); better != nil {
			r.Sequence, r.Cost = better, s.best+m.constant
		}
		r.Bound, r.Expanded, r.Stored = s.lower(), r.Expanded+s.expanded, s.nodes.count
	}
	r.Proved = r.Cost == r.Bound
	switch {
	case r.Proved:
		r.Stopped = Finished
	case ctx.Err() != nil:
		r.Stopped = Cancelled
	default:
		r.Stopped = NodeLimit
	}
	return r
}
