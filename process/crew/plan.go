package crew

import "context"

// A planner works out one problem: plans by rules, then in rounds bettering and,
// beside it, raising the bound; small ones are walked by all fronts too.
type planner struct {
	m      *model
	o      Options
	v      *improver
	again  *reshaper
	bounds *raiser
	walked int
	low    int64
	sure   bool // the fewest hand-overs are proved, and the finish with them
}

func solve(ctx context.Context, p Problem, o Options) Result {
	m := compile(p)
	eased := m.eased()
	for i := range m.n {
		m.tail[i] = m.least[i] + eased.tail[i] - eased.least[i]
	}
	low := eased.lower(o.Brief)
	v := newImprover(m, low)
	w := &planner{
		m: m, o: o, low: low, v: v,
		again:  &reshaper{v: v, eased: eased, wide: 60},
		bounds: &raiser{m: eased, full: m, low: low, loose: infinite},
	}
	if low < infinite {
		v.rules(context.WithoutCancel(ctx))
		if o.Nodes > 0 {
			w.work(ctx)
		}
	}
	return w.result(ctx, p)
}

func (w *planner) best() value { return w.v.best.value }

func (w *planner) proved() bool { return w.sure || w.v.enough() }

func (w *planner) spent() int { return w.walked + w.v.tried + w.again.tried + w.bounds.tried }

func (w *planner) done(ctx context.Context) bool {
	if w.o.Progress != nil {
		w.o.Progress(Progress{Finish: w.best().finish, Handovers: w.best().hands, Bound: w.low, Tried: w.spent()})
	}
	return w.proved() || w.spent() >= w.o.Nodes || ctx.Err() != nil
}

// work goes on in rounds, each twice as long as the one before, until all is
// proved or a limit is reached.
func (w *planner) work(ctx context.Context) {
	const first, walkable = 250, 40
	lists := 1
	if w.m.setups {
		lists = 4 // they know all that setting up takes
	}
	w.v.run(ctx, min(lists*first, w.o.Nodes-w.spent()))
	for size := first; !w.done(ctx); size *= 2 {
		left := w.o.Nodes - w.spent()
		if w.v.best.place != nil {
			w.both(ctx, size, lists*size, left)
		} else {
			w.v.run(ctx, min(lists*size, left))
		}
		if w.done(ctx) {
			return
		}
		if w.m.n <= walkable {
			w.walk(ctx, min(size, w.o.Nodes-w.spent()))
		}
	}
}

// both raises the bound and betters the plan side by side, with so many failures
// each and so many lists, in all about so many. Neither knows of the other until
// both are done, so that it comes to the same however fast they are.
func (w *planner) both(ctx context.Context, failures, lists, most int) {
	best, done := w.v.best, make(chan struct{})
	failures = min(failures, max(most/3, 1))
	go func() {
		if !w.o.Brief {
			w.bounds.run(ctx, best, failures)
		}
		close(done)
	}()
	w.again.run(ctx, failures)
	w.v.run(ctx, min(lists, max(most-2*failures, 1)))
	<-done
	for _, o := range w.bounds.orders {
		w.v.told(o)
	}
	w.raise(w.bounds.low)
}

func (w *planner) raise(low int64) {
	w.low = max(w.low, low)
	w.v.low, w.bounds.low = w.low, w.low
}

// walk tries all plans within a limit.
func (w *planner) walk(ctx context.Context, nodes int) {
	b := newBrancher(ctx, w.m, w.best(), w.low, nodes)
	all := b.run()
	w.walked += b.nodes
	if b.found != nil {
		w.v.offer(b.found)
	}
	if all {
		w.sure = true
		w.raise(w.best().finish)
	}
}

func (w *planner) result(ctx context.Context, p Problem) Result {
	best := w.v.best
	r := Result{Bound: w.low, Tried: w.spent(), Fewest: w.proved()}
	if best.value.finish < infinite {
		r.Finish, r.Handovers = best.value.finish, best.value.hands
		r.Proved = r.Finish <= w.low
		r.Places = w.m.places(best)
	} else {
		r.Proved = w.proved()
	}
	switch {
	case r.Proved && r.Fewest:
		r.Stopped = Finished
	case ctx.Err() != nil:
		r.Stopped = Cancelled
	default:
		r.Stopped = NodeLimit
	}
	return r
}

// places tells a draft in the caller's terms.
func (m *model) places(d *draft) []Place {
	out := make([]Place, m.n)
	for i, s := range d.place {
		out[i] = Place{Begin: s.begin, Work: s.work, End: s.end, Machine: s.machine, People: m.teams[i][s.team].people}
	}
	return out
}
