package crew

import (
	"math/bits"
	"slices"
)

// A pool is something of which so much is there at a time.
type pool struct {
	cap  int64
	most int64 // of a part
	part []part
}

type part struct {
	task   int
	lasts  int64
	amount int64
	given  lit   // takes part only if this is true
	after  int64 // takes part only so long after its begin
	before bool  // takes part from the beginning on until its end
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
					parts = append(parts, x.slower(i, part{task: i, lasts: m.least[i], amount: u.amount, given: truth})...)
				}
			}
		}
		x.pool(c, parts)
	}
	for k, machines := range m.machines {
		var parts []part
		for i := range m.n {
			if m.kind[i] == k {
				parts = append(parts, x.slower(i, part{task: i, lasts: m.least[i], amount: 1, given: truth})...)
			}
		}
		for c, o := range m.openings {
			if o.kind == k {
				parts = append(parts, part{task: m.n + c, lasts: o.lasts, amount: 1, given: truth, before: true})
			}
		}
		x.pool(int64(len(machines)), parts)
	}
	for q := range m.people {
		var parts []part
		for i := range m.n {
			if given := x.doing(i, q); given != lie {
				lasts := int64(infinite)
				for _, t := range m.teams[i] {
					if t.mask>>q&1 != 0 {
						lasts = min(lasts, t.lasts)
					}
				}
				parts = append(parts, part{task: i, lasts: lasts, amount: 1, given: given})
			}
		}
		for c, o := range m.openings {
			if given := x.team[m.n+c][q]; given != lie {
				parts = append(parts, part{task: m.n + c, lasts: o.lasts, amount: 1, given: given})
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
			if fewest := m.fewest(i, set); fewest > 0 {
				parts = append(parts, part{task: i, lasts: m.least[i], amount: int64(fewest), given: truth})
			}
		}
		for c, o := range m.openings {
			if used := x.used(c); o.who != 0 && o.who&^set == 0 && used != lie {
				parts = append(parts, part{task: m.n + c, lasts: o.lasts, amount: 1, given: used})
			}
		}
		if bits.OnesCount64(set) == 1 || slices.ContainsFunc(before, func(b []part) bool { return slices.Equal(b, parts) }) {
			continue // the same work for fewer people, or one person
		}
		before = append(before, parts)
		x.pool(int64(bits.OnesCount64(set)), parts)
	}
}

// slower adds to a task's part what comes on top if a slower team does it.
func (x *timetable) slower(i int, p part) []part {
	parts := []part{p}
	for k, t := range x.m.teams[i] {
		if t.lasts > p.lasts {
			parts = append(parts, part{task: i, lasts: t.lasts, after: p.lasts, amount: p.amount, given: x.team[i][k]})
		}
	}
	return parts
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
	most := int64(0)
	for _, p := range parts {
		most = max(most, p.amount)
	}
	x.pools = append(x.pools, pool{c, most, parts})
	for _, p := range parts {
		if size := int(x.hi[p.task] + p.lasts + 2); size > len(x.use) {
			x.use = make([]int64, size)
		}
		x.of[p.task] = append(x.of[p.task], k)
		if p.given != truth && x.s.owner[p.given.v()] < 0 {
			for len(x.given) <= int(p.given.v()) {
				x.given = append(x.given, nil)
			}
			x.given[p.given.v()] = append(x.given[p.given.v()], k)
		}
	}
}

// doing is does, made once.
func (x *timetable) doing(i, q int) lit {
	if x.doers == nil {
		x.doers = make([][]lit, x.m.n)
	}
	if x.doers[i] == nil {
		for q := range x.m.people {
			x.doers[i] = append(x.doers[i], x.does(i, q))
		}
	}
	return x.doers[i][q]
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
	l := x.s.variable(false)
	for k, t := range m.teams[i] {
		if t.mask>>q&1 != 0 {
			x.s.add(x.team[i][k].not(), l)
		} else {
			x.s.add(x.team[i][k].not(), l.not())
		}
	}
	return l
}

// sits reports whether a part certainly takes its amount at t.
func (x *timetable) sits(p part, t int64) bool {
	return x.s.val(p.given) > 0 && (p.before || x.high[p.task]+p.after <= t) && t < x.low[p.task]+p.lasts
}

// next looks through the pools that may have become too small, then now and then
// through the loads.
func (x *timetable) next() [][]lit {
	x.clauses = x.clauses[:0]
	for k := range x.pools {
		if !x.dirty[k] {
			continue
		}
		if x.look(&x.pools[k]); len(x.clauses) > 0 {
			return x.clauses
		}
		x.dirty[k] = false
	}
	const now = 4 // and then: it takes long
	if x.calls++; x.s.depth() > 0 && (!x.thorough || x.calls%now != 0) {
		return nil
	}
	for k := range x.load {
		if lits := x.overload(&x.load[k]); lits != nil {
			return append(x.clauses, lits)
		}
	}
	return nil
}

// A run is a time in which the same is certainly in use.
type run struct {
	from, until int64
	amount      int64
}

// look finds clauses for a pool: something is too much, or parts must keep out of
// some times, or out of the pool.
func (x *timetable) look(p *pool) {
	first, last := x.hi[x.end], int64(0)
	for k := range p.part {
		q := &p.part[k]
		from, until := x.high[q.task]+q.after, x.low[q.task]+q.lasts
		if q.before {
			from = x.lo[q.task]
		}
		if from < until && x.s.val(q.given) > 0 {
			x.use[from] += q.amount
			x.use[until] -= q.amount
			first, last = min(first, from), max(last, until)
		}
	}
	if first >= last {
		return
	}
	runs := x.runs[:0]
	var now, most int64
	for t, d := range x.use[first : last+1] {
		if d == 0 {
			continue
		}
		x.use[first+int64(t)] = 0
		if n := len(runs); n > 0 {
			runs[n-1].until = first + int64(t)
		}
		now += d
		most = max(most, now)
		runs = append(runs, run{first + int64(t), last, now})
	}
	x.runs = runs
	if most > p.cap {
		for _, r := range runs {
			if r.amount > p.cap {
				x.clauses = append(x.clauses, x.explain(p, r.from, -1))
				return
			}
		}
	}
	if most+p.most <= p.cap {
		return
	}
	for k := range p.part {
		q := &p.part[k]
		if q.lasts == 0 && !q.before || most+q.amount <= p.cap {
			continue
		}
		in := x.s.val(q.given)
		if in < 0 {
			continue
		}
		lo, hi := x.low[q.task], x.high[q.task]
		room := p.cap - q.amount
		t := int64(none)
		switch {
		case in == 0: // where it would sit in any case there must be room
			t = x.crammed(hi+q.after, lo+q.lasts, room)
		case q.before:
			t = x.crammed(lo+q.lasts, hi+q.lasts, room)
		case lo < hi:
			if t = x.crammedLast(lo+q.after, min(lo+q.lasts, hi+q.after), room); t == none {
				t = x.crammed(max(hi+q.after, lo+q.lasts), hi+q.lasts, room)
			}
		}
		if t != none {
			x.clauses = append(x.clauses, x.explain(p, t, k))
		}
	}
}

const none = -1 // no such time

// crammed is the first time from one until another at which more is in use than
// that.
func (x *timetable) crammed(from, until, room int64) int64 {
	if from >= until {
		return none
	}
	k, n := 0, len(x.runs) // to the first that goes on after from
	for k < n {
		if h := (k + n) / 2; x.runs[h].until <= from {
			k = h + 1
		} else {
			n = h
		}
	}
	for ; k < len(x.runs) && x.runs[k].from < until; k++ {
		if x.runs[k].amount > room {
			return max(x.runs[k].from, from)
		}
	}
	return none
}

// crammedLast is the last such time.
func (x *timetable) crammedLast(from, until, room int64) int64 {
	if from >= until {
		return none
	}
	k, n := 0, len(x.runs) // to the first that begins no sooner than until
	for k < n {
		if h := (k + n) / 2; x.runs[h].from < until {
			k = h + 1
		} else {
			n = h
		}
	}
	for k--; k >= 0 && x.runs[k].until > from; k-- {
		if x.runs[k].amount > room {
			return min(x.runs[k].until, until) - 1
		}
	}
	return none
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
		begun := x.by(q.task, t-q.after).not()
		if q.before {
			begun = lie
		}
		for _, l := range []lit{begun, x.by(q.task, t-q.lasts), q.given.not()} {
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
