package crew

import (
	"context"
	"math/bits"
	"slices"
)

// A timetable states in clauses that a plan ends by some time, settings left
// out, and lets a prover decide it: for each task and time the variable "it
// begins no later", for each task and team the variable "they do it".
// Precedence is written down; that no more is in use than there is comes in
// clause by clause, for single times, when a search runs into it (A. Schutt,
// T. Feydy, P. Stuckey, M. Wallace, Explaining the cumulative propagator,
// Constraints 16, 2011).
//
// What it proves impossible is impossible. What it finds is a plan only if
// settings take no time; the caller tells it as a list and looks.
type timetable struct {
	m      *model
	end    int64
	s      *prover
	lo, hi []int64 // begin of each task at first
	base   []lit   // of each task: begins no later than lo
	owner  []int32 // by variable: its task, or -1
	when   []int64 // by variable: its time
	low    []int64 // begin of each task now
	high   []int64
	was    []moved
	team   [][]lit // of each task: which of its teams
	pools  []pool
	dirty  []bool
	of     [][]int // by task: its pools
	given  [][]int // by variable: the pools in which it lets a task take part
	use    []int64 // scratch
}

// moved is a bound before it was moved.
type moved struct {
	trail int
	task  int32
	low   int64
	high  int64
}

// A pool is something of which so much is there at a time.
type pool struct {
	cap  int64
	part []part
}

type part struct {
	task   int
	lasts  int64
	amount int64
	given  lit // takes part only if this is true
}

// Limits on what is written in clauses.
const (
	mostVariables = 150_000
	perFailure    = 60 // variables that a failure is worth writing down for
	mostTeams     = 40
	mostPairs     = 64 // of teams at both ends of an arc
)

// newTimetable writes the model down for an end; nil means that it would take
// more variables than the most.
func newTimetable(m *model, end int64, hint *draft, most int64) *timetable {
	x := &timetable{
		m: m, end: end, lo: slices.Clone(m.head), hi: make([]int64, m.n),
		base: make([]lit, m.n), team: make([][]lit, m.n), of: make([][]int, m.n),
	}
	size := int64(0)
	for i := range m.n {
		x.hi[i] = end - m.tail[i]
		if x.hi[i] < x.lo[i] {
			x.hi[i] = x.lo[i] - 1
		}
		size += x.hi[i] - x.lo[i] + int64(len(m.teams[i]))
		if size > most || len(m.teams[i]) > mostTeams {
			return nil
		}
	}
	x.low, x.high = slices.Clone(x.lo), slices.Clone(x.hi)
	x.owner, x.when = []int32{-1}, []int64{0}
	x.s = newProver(x)
	for i := range m.n {
		x.base[i] = lit(2 * len(x.owner))
		if x.hi[i] < x.lo[i] {
			x.s.failed = true
			return x
		}
		for t := x.lo[i]; t < x.hi[i]; t++ {
			x.s.variable(hint.place[i].begin <= t)
			x.owner, x.when = append(x.owner, int32(i)), append(x.when, t)
		}
		for t := x.lo[i]; t+1 < x.hi[i]; t++ {
			x.s.add(x.by(i, t).not(), x.by(i, t+1))
		}
		if len(m.teams[i]) == 1 {
			x.team[i] = []lit{truth}
			continue
		}
		for k := range m.teams[i] {
			x.team[i] = append(x.team[i], x.plain(hint.place[i].team == k))
		}
		x.s.add(x.team[i]...)
		for k, a := range x.team[i] {
			for _, b := range x.team[i][:k] {
				x.s.add(a.not(), b.not())
			}
		}
	}
	for i := range m.n {
		for _, a := range m.pred[i] {
			x.arrow(a.task, i, a)
		}
		x.hours(i)
	}
	x.resources()
	x.dirty = make([]bool, len(x.pools))
	for k := range x.dirty {
		x.dirty[k] = true
	}
	return x
}

// plain makes a variable that is no time.
func (x *timetable) plain(first bool) lit {
	x.owner, x.when = append(x.owner, -1), append(x.when, 0)
	return x.s.variable(first)
}

// by is the literal "task i begins at t or sooner".
func (x *timetable) by(i int, t int64) lit {
	switch {
	case t < x.lo[i]:
		return lie
	case t >= x.hi[i]:
		return truth
	}
	return x.base[i] + lit(2*(t-x.lo[i]))
}

// arrow lets task j wait for task i.
func (x *timetable) arrow(i, j int, a arc) {
	m := x.m
	after := func(lag int64, given ...lit) {
		for t := x.lo[i] - 1; t < x.hi[i]; t++ {
			x.s.add(append(slices.Clone(given), x.by(j, t+lag).not(), x.by(i, t))...)
		}
	}
	least := m.least[i] + m.lag(a)
	after(least)
	for k, t := range m.teams[i] {
		if lag := t.lasts + m.lag(a); lag > least {
			after(lag, x.team[i][k].not())
		}
	}
	if !a.piece || a.apart || m.handover == 0 || len(m.teams[i])*len(m.teams[j]) > mostPairs {
		return
	}
	for k, t := range m.teams[i] {
		for l, u := range m.teams[j] {
			if apart(t.mask, u.mask) {
				after(t.lasts+m.handover, x.team[i][k].not(), x.team[j][l].not())
			}
		}
	}
}

// hours keeps each team of a task to its hours and to the end.
func (x *timetable) hours(i int) {
	m := x.m
	for k, t := range m.teams[i] {
		rest := m.tail[i] - m.least[i]
		if last := x.end - rest - t.lasts; last < x.hi[i] {
			x.s.add(x.team[i][k].not(), x.by(i, last))
		}
		var h hours
		for _, q := range t.people {
			if m.hours[q] != nil {
				h = h.and(m.hours[q])
			}
		}
		if h == nil {
			continue
		}
		from := x.lo[i] // no begin from here until the next hours
		for _, s := range h {
			if s.From > from && from <= x.hi[i] {
				x.s.add(x.team[i][k].not(), x.by(i, from-1), x.by(i, s.From-1).not())
			}
			from = max(from, s.Until-t.lasts+1)
		}
		if from <= x.hi[i] {
			x.s.add(x.team[i][k].not(), x.by(i, from-1))
		}
	}
}

// resources sets up the pools: resources, kinds of machines, each person, and
// sets of people in so far as a task needs some of them whoever does it.
func (x *timetable) resources() {
	m := x.m
	for r, c := range m.caps {
		var parts []part
		for i := range m.n {
			for _, u := range m.uses[i] {
				if u.resource == r {
					parts = append(parts, part{i, m.least[i], u.amount, truth})
				}
			}
		}
		x.pool(c, parts)
	}
	for k, machines := range m.machines {
		var parts []part
		for i := range m.n {
			if m.kind[i] == k {
				parts = append(parts, part{i, m.least[i], 1, truth})
			}
		}
		x.pool(int64(len(machines)), parts)
	}
	for q := range m.people {
		var parts []part
		for i := range m.n {
			if given := x.does(i, q); given != lie {
				lasts := int64(infinite)
				for _, t := range m.teams[i] {
					if t.mask>>q&1 != 0 {
						lasts = min(lasts, t.lasts)
					}
				}
				parts = append(parts, part{i, lasts, 1, given})
			}
		}
		x.pool(1, parts)
	}
	var before [][]part
	sets := m.crowds()
	slices.SortStableFunc(sets, func(a, b uint64) int { return bits.OnesCount64(a) - bits.OnesCount64(b) })
	for _, set := range sets {
		var parts []part
		for i := range m.n {
			fewest := 64
			for _, t := range m.teams[i] {
				fewest = min(fewest, bits.OnesCount64(t.mask&set))
			}
			if fewest > 0 {
				parts = append(parts, part{i, m.least[i], int64(fewest), truth})
			}
		}
		if bits.OnesCount64(set) == 1 || slices.ContainsFunc(before, func(b []part) bool { return slices.Equal(b, parts) }) {
			continue // the same work for fewer people, or one person
		}
		before = append(before, parts)
		x.pool(int64(bits.OnesCount64(set)), parts)
	}
}

// pool adds one if it can ever be too small.
func (x *timetable) pool(c int64, parts []part) {
	var sum int64
	for _, p := range parts {
		sum += p.amount
	}
	if sum <= c {
		return
	}
	k := len(x.pools)
	x.pools = append(x.pools, pool{c, parts})
	for _, p := range parts {
		if size := int(x.hi[p.task] + p.lasts + 2); size > len(x.use) {
			x.use = make([]int64, size)
		}
		x.of[p.task] = append(x.of[p.task], k)
		if p.given != truth {
			for len(x.given) <= int(p.given.v()) {
				x.given = append(x.given, nil)
			}
			x.given[p.given.v()] = append(x.given[p.given.v()], k)
		}
	}
}

// does is the literal "person q takes part in task i".
func (x *timetable) does(i, q int) lit {
	m := x.m
	in, count, single := lie, 0, true
	for k, t := range m.teams[i] {
		if t.mask>>q&1 != 0 {
			in = x.team[i][k]
			count++
		}
		single = single && len(t.people) <= 1
	}
	switch {
	case count == 0:
		return lie
	case count == len(m.teams[i]):
		return truth
	case single || count == 1:
		return in
	}
	l := x.plain(false)
	for k, t := range m.teams[i] {
		if t.mask>>q&1 != 0 {
			x.s.add(x.team[i][k].not(), l)
		} else {
			x.s.add(x.team[i][k].not(), l.not())
		}
	}
	return l
}

// assigned moves the bounds of a task's begin.
func (x *timetable) assigned(l lit) {
	v := l.v()
	if i := x.owner[v]; i >= 0 {
		t := x.when[v]
		if l&1 == 0 && t < x.high[i] {
			x.was = append(x.was, moved{len(x.s.trail), i, x.low[i], x.high[i]})
			x.high[i] = t
		} else if l&1 == 1 && t+1 > x.low[i] {
			x.was = append(x.was, moved{len(x.s.trail), i, x.low[i], x.high[i]})
			x.low[i] = t + 1
		} else {
			return
		}
		if x.dirty != nil {
			for _, k := range x.of[i] {
				x.dirty[k] = true
			}
		}
	} else if int(v) < len(x.given) && l&1 == 0 && x.dirty != nil {
		for _, k := range x.given[v] {
			x.dirty[k] = true
		}
	}
}

func (x *timetable) undo(trail int) {
	for len(x.was) > 0 && x.was[len(x.was)-1].trail > trail {
		w := x.was[len(x.was)-1]
		x.low[w.task], x.high[w.task] = w.low, w.high
		x.was = x.was[:len(x.was)-1]
	}
}

// sits reports whether a part certainly takes its amount at t.
func (x *timetable) sits(p part, t int64) bool {
	return x.s.value[p.given] > 0 && x.high[p.task] <= t && t < x.low[p.task]+p.lasts
}

// next looks through the pools that may have become too small.
func (x *timetable) next() []lit {
	for k := range x.pools {
		if !x.dirty[k] {
			continue
		}
		if lits := x.look(&x.pools[k]); lits != nil {
			return lits
		}
		x.dirty[k] = false
	}
	return nil
}

// look finds one clause for a pool: something is too much, or a part must keep
// out of a time, or out of the pool.
func (x *timetable) look(p *pool) []lit {
	first, last := x.end, int64(0)
	for _, q := range p.part {
		from, until := x.high[q.task], x.low[q.task]+q.lasts
		if from < until && x.s.value[q.given] > 0 {
			x.use[from] += q.amount
			x.use[until] -= q.amount
			first, last = min(first, from), max(last, until)
		}
	}
	if first >= last {
		return nil
	}
	for t := first + 1; t < last; t++ {
		x.use[t] += x.use[t-1]
	}
	defer clear(x.use[first : last+1])
	for t := first; t < last; t++ {
		if x.use[t] > p.cap {
			return x.explain(p, t, -1)
		}
	}
	for k, q := range p.part {
		if q.lasts == 0 || x.s.value[q.given] < 0 {
			continue
		}
		lo, hi := x.low[q.task], x.high[q.task]
		in := x.s.value[q.given] > 0
		full := func(t int64) bool {
			if t < first || t >= last {
				return false
			}
			u := x.use[t]
			if in && hi <= t && t < lo+q.lasts {
				u -= q.amount
			}
			return u+q.amount > p.cap
		}
		if !in {
			// Where it would sit in any case there must be room.
			for t := hi; t < lo+q.lasts; t++ {
				if full(t) {
					return x.explain(p, t, k)
				}
			}
			continue
		}
		if lo == hi {
			continue
		}
		for t := min(lo+q.lasts, last) - 1; t >= max(lo, first); t-- {
			if full(t) {
				return x.explain(p, t, k)
			}
		}
		for t := max(hi, first); t < min(hi+q.lasts, last); t++ {
			if full(t) {
				return x.explain(p, t, k)
			}
		}
	}
	return nil
}

// explain is the clause "not all of them at t": some parts that sit there,
// largest first, and part k besides if it is not -1.
func (x *timetable) explain(p *pool, t int64, k int) []lit {
	var sit []part
	var sum int64
	for j, q := range p.part {
		if j != k && x.sits(q, t) {
			sit = append(sit, q)
		}
	}
	slices.SortStableFunc(sit, func(a, b part) int { return int(b.amount - a.amount) })
	lits := []lit{}
	put := func(q part) {
		sum += q.amount
		for _, l := range []lit{x.by(q.task, t).not(), x.by(q.task, t-q.lasts), q.given.not()} {
			if l != lie {
				lits = append(lits, l)
			}
		}
	}
	if k >= 0 {
		put(p.part[k])
	}
	for _, q := range sit {
		if sum > p.cap {
			break
		}
		put(q)
	}
	return lits
}

// draft tells what was found as a list with teams.
func (x *timetable) draft() (list, want []int) {
	want = make([]int, x.m.n)
	for i, teams := range x.team {
		for k, l := range teams {
			if x.s.value[l] > 0 {
				want[i] = k
			}
		}
	}
	return x.m.inOrder(x.low), want
}

// prove tries for ends ever sooner than the best, then for those above the
// bound, halving what lies between, each within so many failures.
func (w *planner) prove(ctx context.Context, failures int) {
	for w.best().finish > w.low && w.best().finish-1 < w.loose {
		end := w.best().finish - 1
		switch w.decide(ctx, &w.table, end, failures) {
		case impossible:
			w.raise(end + 1)
			return
		case possible:
			list, want := w.table.draft()
			list = slices.DeleteFunc(list, func(i int) bool { return i >= w.m.n }) // first settings
			w.v.offer(w.v.forward.run(list, want[:w.m.n], nil))
			w.v.tried++
			if w.best().finish > end {
				w.loose = end // without settings it can be done
			}
		}
		if w.best().finish > end {
			break
		}
	}
	misses := 1
	if w.m.setups {
		misses = 3 // clauses prove nothing of the best itself
	}
	high := min(w.best().finish-1, w.loose) // not known to be impossible
	for missed := 0; w.low < high && missed < misses && ctx.Err() == nil; {
		end := w.low + (high-w.low)/2
		switch w.decide(ctx, &w.under, end, failures) {
		case impossible:
			w.raise(end + 1)
			continue
		case possible:
			w.loose = end
		}
		high = end
		missed++
	}
}

// decide goes on with the timetable for an end, or writes a new one.
func (w *planner) decide(ctx context.Context, x **timetable, end int64, failures int) answer {
	if *x == nil || (*x).end != end {
		if *x = newTimetable(w.eased, end, w.m.ease(w.eased, w.v.best), min(mostVariables, perFailure*int64(failures))); *x == nil {
			return unknown
		}
	}
	s := (*x).s
	before := s.failures
	a := s.search(ctx, s.failures+failures)
	w.tried += max(s.failures-before, 1)
	return a
}

func (w *planner) raise(low int64) {
	w.low = max(w.low, low)
	w.v.low = w.low
}
