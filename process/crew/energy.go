package crew

import (
	"cmp"
	"math/bits"
	"slices"
)

// A load is work that falls to some people, or to the machines of a kind, and
// how fast they can do it. In a time in which more work must be done than they
// can do something must give way (energetic reasoning; P. Brucker, S. Knust,
// Complex Scheduling, 2nd ed. 2012, chapter 3; explained in clauses as in A.
// Schutt, T. Feydy, P. Stuckey, Explaining time-table-edge-finding propagation
// for the cumulative resource constraint, CPAIOR 2013).
type load struct {
	people []int // none for machines
	rate   int64 // of machines, thousandths
	items  []item
}

// An item is a task's share of a load.
type item struct {
	task  int
	given lit   // it falls to the load only if this is true
	share       // as it is now
	via   int   // what it must end before
	lag   int64 // and by how much
}

// loads sets them up: each person, all but one, all, and each kind of machine.
func (x *timetable) loads() {
	m := x.m
	var sets []uint64
	all := uint64(1)<<m.people - 1
	for q := range m.people {
		sets = append(sets, 1<<q)
		if m.people > 2 {
			sets = append(sets, all&^(1<<q))
		}
	}
	if m.people > 1 {
		sets = append(sets, all)
	}
	for _, set := range sets {
		x.crowdLoad(set, all&^set)
	}
	for k, machines := range m.machines {
		l := load{rate: rateUnit * int64(len(machines))}
		for i := range m.n {
			if m.kind[i] == k && m.least[i] > 0 {
				l.items = append(l.items, item{task: i, given: truth, share: share{work: m.least[i] * rateUnit, fast: rateUnit}})
			}
		}
		for c, o := range m.openings {
			if used := x.used(c); o.kind == k && used != lie {
				l.items = append(l.items, item{task: m.n + c, given: used, share: share{work: o.lasts * rateUnit, fast: rateUnit}})
			}
		}
		x.load = append(x.load, l)
	}
}

// crowdLoad adds the load of a set of people, others being all but them.
func (x *timetable) crowdLoad(set, others uint64) {
	m := x.m
	var l load
	slow := int64(infinite)
	for left := set; left != 0; left &= left - 1 {
		q := bits.TrailingZeros64(left)
		l.people = append(l.people, q)
		slow = min(slow, m.rate(q))
	}
	one := len(l.people) == 1
	for i := range m.n {
		if m.least[i] == 0 {
			continue
		}
		it := item{task: i, given: truth}
		fewest, solo := int64(m.fewest(i, set)), true
		least := int64(infinite)
		for _, t := range m.teams[i] {
			solo = solo && len(t.people) == 1
			if t.mask&set != 0 {
				for left := t.mask & set; left != 0; left &= left - 1 {
					it.fast = max(it.fast, m.rate(bits.TrailingZeros64(left)))
				}
				least = min(least, t.lasts)
			}
		}
		if it.fast == 0 {
			continue
		}
		if fewest == 0 {
			if !solo {
				continue
			}
			fewest = 1
			switch {
			case one:
				it.given = x.doing(i, l.people[0])
			case bits.OnesCount64(others) == 1:
				it.given = x.doing(i, bits.TrailingZeros64(others)).not()
			default:
				continue
			}
		}
		it.work, it.fast = m.time[i]*rateUnit*fewest, it.fast*fewest
		if one {
			it.work, it.fast = least*m.rate(l.people[0]), m.rate(l.people[0])
		}
		l.items = append(l.items, it)
	}
	for c, o := range m.openings {
		u := m.n + c
		it := item{task: u, given: x.used(c), share: share{work: o.lasts * slow, fast: slow}}
		switch {
		case o.who == 0:
			continue
		case one:
			it.given = x.team[u][l.people[0]]
		case o.who&others != 0:
			continue
		}
		if it.given != lie {
			l.items = append(l.items, it)
		}
	}
	x.load = append(x.load, l)
}

// can is the work that a load's people or machines can do until a time.
func (x *timetable) can(l *load, t int64) int64 {
	if l.people == nil {
		return t * l.rate
	}
	var sum int64
	for _, q := range l.people {
		rate := x.m.rate(q)
		if x.m.hours[q] == nil {
			sum += t * rate
			continue
		}
		for _, s := range x.m.hours[q] {
			sum += max(min(s.Until, t)-s.From, 0) * rate
		}
	}
	return sum
}

// span sets when an item can be done: not before its task begins, and it ends
// before what waits for it begins.
func (x *timetable) span(it *item) {
	i := it.task
	it.est, it.lct, it.via, it.lag = x.low[i], x.high[x.end], x.end, 0
	if i >= x.m.n {
		it.lct, it.via, it.lag = x.high[i]+x.m.openings[i-x.m.n].lasts, i, -x.m.openings[i-x.m.n].lasts
		return
	}
	for _, a := range x.m.succ[i] {
		lag := x.m.lag(a)
		if at := x.high[a.task] - lag; at < it.lct {
			it.lct, it.via, it.lag = at, a.task, lag
		}
	}
}

// A share is when an item can be done, and how much it is.
type share struct {
	est, lct int64
	work     int64 // thousandths, all of it in the load's hands
	fast     int64 // the most of it done in a unit of time
	can      int64 // what the load can do until lct
	item     int32
	next     int32 // of an open one: the first sure one that ends no sooner
}

// from is the work of a share that is done after a time in any case.
func (w *share) from(a int64) int64 {
	if w.est >= a {
		return w.work
	}
	return w.work - (a-w.est)*w.fast
}

// overload finds a clause for a load: too much is to be done in some time, or
// an open item would be too much.
func (x *timetable) overload(l *load) []lit {
	sure, open := x.sure[:0], x.open[:0]
	for k := range l.items {
		it := &l.items[k]
		v := x.s.val(it.given)
		if v < 0 {
			continue
		}
		x.span(it)
		w := it.share
		w.item = int32(k)
		if v > 0 {
			sure = append(sure, w)
		} else {
			open = append(open, w)
		}
	}
	x.sure, x.open = sure, open
	if len(sure) == 0 {
		return nil
	}
	slices.SortFunc(sure, func(a, b share) int { return cmp.Compare(a.lct, b.lct) })
	begins := x.begins[:0]
	for y := range sure {
		sure[y].can = x.can(l, sure[y].lct)
		begins = append(begins, sure[y].est)
	}
	for k := range open {
		y, _ := slices.BinarySearchFunc(sure, open[k].lct, func(w share, t int64) int { return cmp.Compare(w.lct, t) })
		open[k].next = int32(y)
		begins = append(begins, open[k].est)
	}
	slices.Sort(begins)
	begins = slices.Compact(begins)
	x.begins = begins
	spare := slices.Grow(x.spare[:0], len(sure))[:len(sure)]
	x.spare = spare
	first := 0
	for _, a := range begins {
		for first < len(sure) && sure[first].lct <= a {
			first++
		}
		room := -x.can(l, a)
		for y := first; y < len(sure); y++ {
			w := &sure[y]
			if d := a - w.est; d <= 0 {
				room -= w.work
			} else if d *= w.fast; d < w.work {
				room -= w.work - d
			}
			if w.can+room < 0 {
				return x.tooMuch(l, a, w.lct, -1)
			}
			spare[y] = w.can + room
		}
		if len(open) == 0 || first == len(sure) {
			continue
		}
		for y := len(sure) - 2; y >= first; y-- {
			spare[y] = min(spare[y], spare[y+1])
		}
		for k := range open {
			o := &open[k]
			if y := max(int(o.next), first); y < len(sure) && o.lct > a && o.from(a) > spare[y] {
				for y+1 < len(sure) && spare[y+1] == spare[y] {
					y++
				}
				return x.tooMuch(l, a, sure[y].lct, int(o.item))
			}
		}
	}
	return nil
}

// tooMuch is the clause "not all of this from a until b".
func (x *timetable) tooMuch(l *load, a, b int64, extra int) []lit {
	var in []int
	excess := x.can(l, a) - x.can(l, b) - 1
	for k := range l.items {
		it := &l.items[k]
		if k != extra && x.s.val(it.given) <= 0 || it.lct > b || it.lct <= a {
			continue
		}
		if w := it.from(a); w > 0 {
			excess += w
			in = append(in, k)
		}
	}
	lits := []lit{}
	put := func(k int) {
		it := &l.items[k]
		lits = append(lits, x.by(it.task, min(a, it.est)-1), x.by(it.via, b+it.lag).not(), it.given.not())
	}
	// What was decided last is left out first.
	depth := func(k int) int32 {
		put(k)
		old := len(lits) - 3
		var d int32
		for _, l := range lits[old:] {
			if x.s.val(l) < 0 {
				d = max(d, x.s.deep(l.not()))
			}
		}
		lits = lits[:old]
		return d
	}
	slices.SortStableFunc(in, func(a, b int) int { return cmp.Compare(depth(b), depth(a)) })
	for _, k := range in {
		if w := l.items[k].from(a); k != extra && w <= excess {
			excess -= w
			continue
		}
		put(k)
	}
	kept := lits[:0]
	slices.Sort(lits)
	for k, l := range lits {
		if l != lie && (k == 0 || lits[k-1] != l) {
			kept = append(kept, l)
		}
	}
	return kept
}
