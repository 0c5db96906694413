package crew

import "context"

// A planner works out one problem: plans by rules, some bettering, then proof
// by clauses and by walking all fronts in turn with more bettering.
type planner struct {
	m     *model
	eased *model // without settings
	o     Options
	v     *improver
	tried int
	low   int64
	table *timetable // for an end sooner than the best
	under *timetable // for an end between the bound and the best
	loose int64      // an end that clauses, which know the first settings only, allow
	sure  bool       // the fewest hand-overs are proved, and the finish with them
}

func solve(ctx context.Context, p Problem, o Options) Result {
	m := compile(p)
	eased := m.eased()
	for i := range m.n {
		m.tail[i] = m.least[i] + eased.tail[i] - eased.least[i]
	}
	low := eased.lower()
	w := &planner{m: m, eased: eased, o: o, low: low, v: newImprover(m, low), loose: infinite}
	if low < infinite {
		w.v.rules(context.WithoutCancel(ctx))
		if o.Nodes > 0 {
			w.work(ctx)
		}
	}
	return w.result(ctx, p)
}

func (w *planner) best() value { return w.v.best.value }

func (w *planner) proved() bool { return w.sure || w.v.enough() }

func (w *planner) spent() int { return w.tried + w.v.tried }

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
		lists = 16 // clauses know only the first of them
	}
	for size := first; ; size *= 2 {
		left := func() int { return min(size, w.o.Nodes-w.spent()) }
		if w.v.run(ctx, min(lists*size, w.o.Nodes-w.spent())); w.done(ctx) {
			return
		}
		if w.v.best.place != nil {
			w.prove(ctx, left())
		}
		if w.done(ctx) {
			return
		}
		if w.m.n <= walkable {
			w.walk(ctx, left())
		}
		if w.done(ctx) {
			return
		}
	}
}

// walk tries all plans within a limit.
func (w *planner) walk(ctx context.Context, nodes int) {
	b := newBrancher(ctx, w.m, w.best(), w.low, nodes)
	all := b.run()
	w.tried += b.nodes
	if b.found != nil {
		w.v.offer(b.found)
	}
	if all {
		w.sure = true
		w.low = max(w.low, w.best().finish)
		w.v.low = w.low
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
