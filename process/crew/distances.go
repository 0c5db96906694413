package crew

import (
	"cmp"
	"math/bits"
	"slices"
)

// A distances tells for any two tasks, one before the other, the least time from
// the end of the one to the begin of the other: the longest path, and the work
// of all that lies between for those who can do it (compare the distances of P.
// Brucker and S. Knust, Complex Scheduling, 2nd ed. 2012, chapter 3). Two things
// are counted that the work alone does not show: people who do neither of the
// two are handed what they work on and hand it on again; and machines that must
// share the work to be in time must each be set up. O(sets × tasks³).
type distances struct {
	m      *model
	places []int     // of each task from 1, each after its predecessors; 0 is before all, n+1 after all
	task   []int     // by place
	apart  [][]int64 // by places; never where one is not before the other
	hand   [][]int64 // the least where other people do the two; never where that cannot be said
	sets   []uint64
	few    [][]int64 // by set and place: people of the set that a task takes at least
	rate   [][]int64 // by set: of its people, thousandths
	count  []int     // by kind: its tasks
	slow   []int64   // by set: pace of its slowest

	in     []int // places of the tasks between two
	stands []stand
	each   []begun // scratch
}

const (
	never       = -1
	mostBetween = 320 // tasks for which that is worked out
)

// stretches raises heads and tails by what lies between tasks, and returns the
// least time for all.
func (m *model) stretches() int64 {
	if m.n > mostBetween || m.n == 0 {
		return 0
	}
	b := m.distances()
	last := m.n + 1
	for i, x := range b.places {
		m.head[i] = max(m.head[i], b.apart[0][x])
		m.tail[i] = max(m.tail[i], m.least[i]+b.apart[x][last])
	}
	return b.apart[0][last]
}

// distances works them all out.
func (m *model) distances() *distances {
	b := newDistances(m)
	for y := 1; y < len(b.task); y++ {
		for x := y - 1; x >= 0; x-- {
			if b.apart[x][y] != never {
				b.pair(x, y)
			}
		}
	}
	return b
}

func newDistances(m *model) *distances {
	n := m.n + 2
	b := &distances{m: m, places: make([]int, m.n), task: make([]int, n), sets: m.crowds(), stands: make([]stand, len(m.kinds))}
	b.task[0], b.task[n-1] = None, None
	for k, i := range m.sorted() {
		b.places[i], b.task[k+1] = k+1, i
	}
	before := m.reach()
	b.apart, b.count = make([][]int64, n), make([]int, len(m.kinds))
	for _, k := range m.kind {
		if k != None {
			b.count[k]++
		}
	}
	for x := range n {
		b.apart[x] = slices.Repeat([]int64{never}, n)
		for y := x + 1; y < n; y++ {
			if x == 0 || y == n-1 || before[b.task[x]][b.task[y]] {
				b.apart[x][y] = 0
			}
		}
	}
	for i, x := range b.places {
		b.apart[0][x], b.apart[x][n-1] = m.head[i], m.tail[i]-m.least[i]
	}
	b.hands()
	for _, set := range b.sets {
		few := make([]int64, n)
		for i, x := range b.places {
			few[x] = int64(m.fewest(i, set))
		}
		b.few = append(b.few, few)
		var rates []int64
		slow := int64(0)
		for left := set; left != 0; left &= left - 1 {
			q := bits.TrailingZeros64(left)
			rates = append(rates, m.rate(q))
			slow = max(slow, m.pace[q])
		}
		b.rate, b.slow = append(b.rate, rates), append(b.slow, slow)
	}
	return b
}

// hands works out how far two tasks are apart at least if different people do
// them: along a path on which one piece after the other goes on, and every task
// is done by one person alone, somewhere it changes hands.
func (b *distances) hands() {
	m, n := b.m, len(b.task)
	b.hand = make([][]int64, n)
	solo := func(i int) bool {
		return !slices.ContainsFunc(m.teams[i], func(t team) bool { return len(t.people) != 1 })
	}
	for x := range n {
		b.hand[x] = slices.Repeat([]int64{never}, n)
		i := b.task[x]
		if i == None || m.handover == 0 || !solo(i) {
			continue
		}
		long := slices.Repeat([]int64{never}, n) // of the path
		for y := x + 1; y < n-1; y++ {
			j := b.task[y]
			if !solo(j) {
				continue
			}
			for _, a := range m.pred[j] {
				z := b.places[a.task]
				switch {
				case !a.piece:
				case z == x:
					long[y] = max(long[y], 0)
				case long[z] != never:
					long[y] = max(long[y], long[z]+m.least[a.task])
				}
			}
			if long[y] != never {
				b.hand[x][y] = long[y] + m.handover
			}
		}
		// Who sets a machine up does so for one of the tasks that want it, when
		// all that the task waits for is there.
		for u, tasks := range m.standsFor {
			if tasks == nil {
				continue
			}
			soonest := int64(infinite)
			for _, j := range tasks {
				soonest = min(soonest, b.hand[x][b.places[j]])
			}
			b.hand[x][b.places[u]] = soonest
		}
	}
}

// pair raises how far the ends of a stretch are apart.
func (b *distances) pair(x, y int) {
	m := b.m
	far := b.apart[x][y]
	b.in = b.in[:0]
	for z := x + 1; z < y; z++ {
		if b.apart[x][z] != never && b.apart[z][y] != never {
			b.in = append(b.in, z)
			far = max(far, b.apart[x][z]+m.least[b.task[z]]+b.apart[z][y])
		}
	}
	if i, j := b.task[x], b.task[y]; i != None && j != None {
		for _, a := range m.pred[j] {
			if a.task == i {
				far = max(far, m.lag(a))
			}
		}
	}
	b.apart[x][y] = far
	if len(b.in) < 2 {
		return
	}
	for r, c := range m.caps {
		var work int64
		first, last := int64(infinite), int64(infinite)
		for _, z := range b.in {
			for _, u := range m.uses[b.task[z]] {
				if u.resource == r {
					work += m.least[b.task[z]] * u.amount
					first, last = min(first, b.apart[x][z]), min(last, b.apart[z][y])
				}
			}
		}
		if work > 0 {
			far = max(far, first+last+(work+c-1)/c)
		}
	}
	b.apart[x][y] = b.crowded(x, y, far)
}

// A stand is what the machines of a kind have to do in a stretch.
type stand struct {
	work, set   int64 // all of it; setting up in it
	real        int64 // work of tasks, what is setting up only left out
	tasks       int   // of those
	first, last int64
	shortest    int64
	fresh       bool // all tasks of the kind are in the stretch: none of the machines was set up before
}

// takes is the least time that so many machines of a kind take.
func (b *distances) takes(k, machines int) int64 {
	s := &b.stands[k]
	c := int64(machines)
	return s.first + s.last + (s.work+b.again(k, 1)+c-1)/c
}

// again is the time for setting up so many machines of a kind beyond what is
// in the work already. A machine is set up for a task: what is setting up only
// may be for one that comes after the stretch.
func (b *distances) again(k, machines int) int64 {
	s := &b.stands[k]
	if !s.fresh || b.m.fresh == nil {
		return 0
	}
	var sum int64
	for _, t := range b.m.fresh[k][:min(machines, s.tasks)] {
		sum += t
	}
	return max(0, sum-s.set)
}

// busy is how many machines of a kind have tasks in a stretch of some length at
// least, and the next length at which that may be fewer.
func (b *distances) busy(k int, far int64) (c int, next int64) {
	s := &b.stands[k]
	next = infinite
	for c = 1; c < len(b.m.machines[k]); c++ {
		t := s.first + s.last + (s.real+int64(c)-1)/int64(c)
		if t <= far {
			break
		}
		next = min(next, t)
	}
	return c, next
}

// crowded is the least length, from a length on, of a stretch whose people and
// machines get all done that lies in it. A longer one needs no more machines.
func (b *distances) crowded(x, y int, far int64) int64 {
	m := b.m
	for k := range b.stands {
		b.stands[k] = stand{first: infinite, last: infinite, shortest: infinite}
	}
	inside := make([]int, len(b.stands)) // tasks of the kind
	for _, z := range b.in {
		i := b.task[z]
		k := m.kind[i]
		if k == None {
			continue
		}
		inside[k]++
		if m.least[i] == 0 {
			continue
		}
		s := &b.stands[k]
		s.work += m.least[i]
		if m.standsFor == nil || m.standsFor[i] == nil {
			s.real += m.least[i]
			s.tasks++
		}
		if m.setIn != nil {
			s.set += m.setIn[i]
		}
		s.first, s.last = min(s.first, b.apart[x][z]), min(s.last, b.apart[z][y])
		s.shortest = min(s.shortest, m.least[i])
	}
	for k, n := range inside {
		b.stands[k].fresh = n == b.count[k]
	}
	if far >= infinite { // somebody's hours leave no room
		return infinite
	}
	crews := b.crews(x, y, far)
	machines := make([]int, len(b.stands))
	for far < infinite {
		next, short := int64(infinite), false
		for k := range b.stands {
			c, sooner := b.machines(k, far)
			if c == None {
				far, short = sooner, true
				break
			}
			next = min(next, sooner)
			if c > 0 {
				c, sooner = b.busy(k, far)
			}
			machines[k], next = c, min(next, sooner)
		}
		if short {
			continue
		}
		need := far
		for _, c := range crews {
			need = max(need, b.people(c, machines, far))
		}
		if need <= far {
			return far
		}
		far = min(need, next)
	}
	return infinite
}

// machines is how many machines of a kind are enough for a stretch of some
// length, and the next length at which that may be otherwise. None means that
// there are not enough.
func (b *distances) machines(k int, far int64) (c int, next int64) {
	next = infinite
	if b.stands[k].work == 0 {
		return 0, next
	}
	for c = 1; c <= len(b.m.machines[k]); c++ {
		t := b.takes(k, c)
		if t <= far {
			return c, next
		}
		next = min(next, t)
	}
	return None, next
}

// A party is a set of people in a stretch: their work, and how long they are
// idle at its begin and end at least, whoever does the tasks at its ends.
type party struct {
	set           int
	work, rate    int64
	begin, finish pause
}

// A pause is how long people are idle at one end of a stretch: someone who does
// the task there, and the others in rising order.
type pause struct {
	doers  uint64
	doer   int64
	others []int64
}

func (b *distances) crews(x, y int, far int64) []party {
	const most = 2 // times the work fits in
	var out []party
	for s := range b.sets {
		var work int64
		few := b.few[s]
		for _, z := range b.in {
			work += few[z] * b.m.time[b.task[z]]
		}
		var rate int64
		for _, r := range b.rate[s] {
			rate += r
		}
		if work*rateUnit*most < rate*far {
			continue // too little to matter
		}
		p := party{set: s, work: work, rate: rate}
		p.begin = b.pause(s, x, func(z int) (int64, int64) { return b.apart[x][z], b.hand[x][z] })
		p.finish = b.pause(s, y, func(z int) (int64, int64) { return b.apart[z][y], b.hand[z][y] })
		out = append(out, p)
	}
	return out
}

// pause works out how long people of a set are idle at one end. The tasks that
// they come to first, or leave last, are different ones, and at one machine one
// follows the other.
func (b *distances) pause(s, end int, apart func(z int) (all, others int64)) pause {
	m, n := b.m, len(b.rate[s])
	p := pause{doer: infinite}
	if i := b.task[end]; i != None {
		for _, t := range m.teams[i] {
			if len(t.people) == 1 {
				p.doers |= t.mask
			}
		}
	}
	all := b.each[:0]
	for _, z := range b.in {
		i := b.task[z]
		if b.few[s][z] == 0 || m.least[i] == 0 {
			continue
		}
		at, other := apart(z)
		p.doer = min(p.doer, at)
		kind, copies := m.kind[i], 1
		for _, t := range m.teams[i] {
			copies = max(copies, bits.OnesCount64(t.mask&b.sets[s]))
		}
		if copies > 1 {
			kind = None // some come to it together
		}
		for range copies {
			all = append(all, begun{kind, max(at, other)})
		}
	}
	b.each = all
	slices.SortFunc(all, func(a, b begun) int { return cmp.Compare(a.at, b.at) })
	last := make([][]int64, len(m.kinds))
	for _, o := range all {
		if k := o.kind; k != None {
			c := len(m.machines[k])
			if len(last[k]) >= n {
				continue
			}
			if len(last[k]) >= c {
				o.at = max(o.at, last[k][len(last[k])-c]+b.stands[k].shortest)
			}
			last[k] = append(last[k], o.at)
		}
		p.others = append(p.others, o.at)
	}
	slices.Sort(p.others)
	p.others = p.others[:min(n, len(p.others))]
	return p
}

// A begun is how far a task at a kind of machine is from an end of a stretch.
type begun struct {
	kind int
	at   int64
}

// lost is the least work that people do not do while they are idle, in
// thousandths, and the longest that one of them is.
func (b *distances) lost(p *pause, people uint64) (sum, longest int64) {
	var each []int
	for left := people; left != 0; left &= left - 1 {
		each = append(each, bits.TrailingZeros64(left))
	}
	m := b.m
	slices.SortStableFunc(each, func(a, b int) int { return cmp.Compare(m.rate(b), m.rate(a)) })
	with := func(doer int) int64 {
		var sum int64
		k := 0
		for _, q := range each {
			at := p.doer
			if q != doer {
				if k == len(p.others) {
					continue
				}
				at = p.others[k]
				k++
			}
			longest = max(longest, at)
			sum += at * m.rate(q)
		}
		return sum
	}
	if people&p.doers == 0 {
		return with(None), longest
	}
	sum = infinite
	for _, q := range each {
		if p.doers>>q&1 == 1 {
			sum = min(sum, with(q))
		}
	}
	return sum, longest
}

// people is the least length, from a length on, in which a set of people do
// their work and set up so many machines of each kind. Machines may be set up
// just before what people come to first: of that and of their pause before it
// the longer counts.
func (b *distances) people(p party, machines []int, far int64) int64 {
	set, few := b.sets[p.set], b.few[p.set]
	work, up := p.work*rateUnit, int64(0)
	for k, c := range machines {
		if c > 0 && b.all(k, few) {
			up += b.again(k, c) * 100 / b.slow[p.set] * rateUnit
		}
	}
	rate := p.rate
	far = max(far, (work+up+rate-1)/rate)
	begin, most := b.lost(&p.begin, set)
	finish, more := b.lost(&p.finish, set)
	if far >= most+more {
		far = max(far, (work+max(begin, up)+finish+rate-1)/rate)
	}
	return far
}

// all reports whether every task of a kind takes some of a set of people.
func (b *distances) all(k int, few []int64) bool {
	for i, x := range b.places {
		if b.m.kind[i] == k && few[x] == 0 {
			return false
		}
	}
	return true
}

func (m *model) rate(q int) int64 { return (rateUnit*100 + m.pace[q] - 1) / m.pace[q] }

// fewest is how many people of a set a task takes at least.
func (m *model) fewest(i int, set uint64) int {
	fewest := 64
	for _, t := range m.teams[i] {
		fewest = min(fewest, bits.OnesCount64(t.mask&set))
	}
	return fewest
}
