package order

import "context"

// A planner works out one problem: quick orders by narrow beams, then A* from
// both ends, then the more promising end alone, with attempts in between to
// better the best order in the other ways there are.
type planner struct {
	m     *model
	o     Options
	sides []*side

	sequence []int
	cost     int64
	bound    int64
	expanded int
	stored   int
	limit    Stop // which limit was reached, or Finished
	improver *improver
	swapper  *swapper // or nil
}

// A side is one of the two ways to tell the work: from its beginning, or from
// its end.
type side struct {
	m         *model
	backwards bool
	bound     *bound
	search    *search
	strength  int // how often the search's bound has been strengthened
}

// solve is Solve for a valid problem and options without zeros.
func solve(ctx context.Context, p Problem, o Options) Result {
	t := newTask(p)
	m := compile(t)
	w := newPlanner(m, o)
	if m.n == 0 {
		w.sequence, w.cost, w.bound = []int{}, m.constant, m.constant
	} else {
		w.beam(context.WithoutCancel(ctx), w.sides[0], 1)
	}
	if o.Nodes > 0 && !w.proved() {
		w.work(ctx)
	}
	r := Result{
		Cost: w.cost, Bound: w.bound, Proved: w.proved(), Expanded: w.expanded, Stored: w.stored,
	}
	r.Sequence, r.Ways = t.steps(m, tell(t, m, w.sequence))
	switch {
	case r.Proved:
		r.Stopped = Finished
	case ctx.Err() != nil:
		r.Stopped = Cancelled
	case w.limit != Finished:
		r.Stopped = w.limit
	default:
		r.Stopped = NodeLimit
	}
	return r
}

func newPlanner(m *model, o Options) *planner {
	w := &planner{m: m, o: o, cost: infinite, improver: newImprover(m), swapper: newSwapper(m), sides: []*side{{m: m, bound: newBound(m)}}}
	if m.n > 0 {
		back := m.reversed()
		w.sides = append(w.sides, &side{m: back, backwards: true, bound: newBound(back)})
	}
	return w
}

func (w *planner) proved() bool { return w.bound >= w.cost }

// work goes on until the best order is proved or a limit is reached.
func (w *planner) work(ctx context.Context) {
	for _, width := range []int{4, 16} {
		for _, s := range w.sides {
			if w.beam(ctx, s, width); w.done(ctx) {
				return
			}
		}
	}
	if w.swap(ctx, 100); w.done(ctx) {
		return
	}
	for _, count := range []int{300, 1000, 2000} {
		for _, s := range w.sides {
			if w.advance(ctx, s, count); w.done(ctx) {
				return
			}
		}
	}
	w.beam(ctx, w.leader(), 64)
	for count := 2000; ; count += count / 2 {
		if w.race(ctx, count); w.done(ctx) {
			break
		}
		w.improve(ctx, count/8)
	}
	if w.limit != Finished && !w.proved() {
		w.afterwards(ctx)
	}
}

// race advances both sides, the leader further than the other.
func (w *planner) race(ctx context.Context, count int) {
	lead := w.leader()
	for _, s := range w.sides {
		share := count
		if s != lead {
			share /= 4
		}
		if w.advance(ctx, s, share); w.done(ctx) {
			return
		}
	}
	lead.strengthen(ctx)
}

// leader returns the side whose search has the higher bound.
func (w *planner) leader() *side {
	a, b := w.sides[0], w.sides[1]
	if b.search.lower() >= a.search.lower() {
		return b
	}
	return a
}

// done reports whether the work is over: proved, at a limit, or cancelled.
func (w *planner) done(ctx context.Context) bool {
	if w.o.Progress != nil {
		w.o.Progress(Progress{Cost: w.cost, Bound: w.bound, Expanded: w.expanded, Stored: w.stored})
	}
	return w.proved() || w.limit != Finished || ctx.Err() != nil
}

// offer takes an order if it is the best so far.
func (w *planner) offer(sequence []int, backward bool) bool {
	if sequence == nil {
		return false
	}
	if backward {
		sequence = backwards(sequence)
	}
	cost := w.m.price(sequence)
	if cost >= w.cost {
		return false
	}
	w.sequence, w.cost = sequence, cost
	for _, s := range w.sides {
		if s.search != nil {
			s.search.beat(cost)
		}
	}
	return true
}

// beam runs a beam of one width.
func (w *planner) beam(ctx context.Context, s *side, width int) {
	b := newBeam(s.m, s.bound, w.cost)
	w.offer(b.run(ctx, width, 1<<60), s.backwards)
	w.bound = max(w.bound, min(b.low+w.m.constant, w.cost))
	w.expanded += b.expanded
}

// advance lets A* expand some nodes.
func (w *planner) advance(ctx context.Context, s *side, count int) {
	if s.search == nil {
		s.search = newSearch(s.m, s.bound, w.cost)
	}
	before := s.search.expanded
	rest := w.o.Nodes
	var memory int64
	for _, other := range w.sides {
		if other.search != nil {
			memory += other.search.memory()
			if other != s {
				rest -= other.search.nodes.count
			}
		}
	}
	finished := s.search.run(ctx, count, rest)
	w.expanded += s.search.expanded - before
	w.stored = max(w.stored, w.o.Nodes-rest+s.search.nodes.count)
	if s.search.best+w.m.constant < w.cost {
		w.offer(s.search.sequence(), s.backwards)
	}
	w.bound = max(w.bound, min(s.search.lower(), w.cost))
	switch {
	case finished:
	case s.search.nodes.count >= rest:
		w.limit = NodeLimit
	case memory > w.o.Memory:
		w.limit = MemoryLimit
	}
}

// strengthen gives the search a dearer bound when it has gone on for some time,
// and a still dearer one later. Where the dear bound is there from the start it
// has had its chance after some time and is given up.
func (s *side) strengthen(ctx context.Context) {
	n := s.search.expanded
	switch {
	case s.bound.chain != nil:
		if n > 20_000 {
			s.search.strong = nil
		}
	case s.strength == 0 && n > 3000:
		s.search.strengthen(ctx, 20, s.m.n/2)
		s.strength = 1
	case s.strength == 1 && n > 30_000:
		s.search.strengthen(ctx, 8, s.m.n)
		s.strength = 2
	}
}

// swap spends about count expansions on exchanges where they can be made, more
// when a proof is far off, and as many again each time that goes well.
func (w *planner) swap(ctx context.Context, count int) {
	if w.swapper == nil {
		return
	}
	if w.cost-w.bound > w.cost/20 {
		count *= 4
	}
	w.swapper.begin(w.sequence, w.cost)
	for better := true; better && !w.proved() && ctx.Err() == nil; {
		w.swapper.run(ctx, count*lookedPerNode)
		w.expanded += count
		better = w.offer(w.swapper.best, false)
	}
}

// improve spends about count expansions on bettering the order, and more when
// that goes well; besides, as many on exchanges.
func (w *planner) improve(ctx context.Context, count int) {
	w.swap(ctx, count)
	v := w.improver
	for last := v.expanded + count; v.expanded < last && !w.proved() && ctx.Err() == nil; {
		before := v.expanded
		if w.offer(v.step(ctx, w.sequence, w.cost), false) {
			last += 500
		}
		w.expanded += v.expanded - before
	}
}

// afterwards betters the order when A* has reached a limit: as many expansions
// as it was allowed nodes, half of them in beams that grow.
func (w *planner) afterwards(ctx context.Context) {
	lead := w.leader()
	for _, s := range w.sides {
		s.search = nil // its bound is kept, its memory is not
	}
	last := w.expanded + w.o.Nodes
	for width := 128; w.expanded < last && !w.proved() && ctx.Err() == nil; width *= 2 {
		before := w.expanded
		w.beam(ctx, lead, width)
		w.improve(ctx, min(w.expanded-before, last-w.expanded))
		w.done(ctx)
	}
}
