package crew

import (
	"cmp"
	"slices"
)

// A draft is a plan in the making: by task, where it stands.
type draft struct {
	place []spot
	value value
}

type spot struct {
	begin, work, end int64
	team             int // index in the task's teams
	machine          int // or None
}

// A value orders plans: finish first, then hand-overs, then the sum of all
// ends, so that everything is done as soon as it can be. Of plans that are
// alike in all three the one found first stays.
type value struct {
	finish int64
	hands  int
	sum    int64
}

func (v value) compare(w value) int {
	return cmp.Or(cmp.Compare(v.finish, w.finish), cmp.Compare(v.hands, w.hands), cmp.Compare(v.sum, w.sum))
}

var worst = value{finish: infinite}

// A decoder turns lists of tasks into drafts. It is used again and again; what
// it returns is overwritten by the next list.
type decoder struct {
	m       *model
	busy    [][]Span  // of each person, in order
	taken   [][]Span  // of each machine
	state   [][]int   // setting of each machine
	before  [][][]int // of each machine with attributes, its setting before each span
	closed  []bool    // by machine: nothing is put in between
	until   []int64   // by machine with attributes: when its last task ends, one of no time too
	profile []profile
	scratch []int
	machine []int // by task: where it must stand, or Any; nil is Any throughout
	out     draft
}

func newDecoder(m *model) *decoder {
	d := &decoder{
		m: m, busy: make([][]Span, m.people), taken: make([][]Span, len(m.start)),
		state: make([][]int, len(m.start)), before: make([][][]int, len(m.start)), closed: make([]bool, len(m.start)), until: make([]int64, len(m.start)), profile: make([]profile, len(m.caps)),
		out: draft{place: make([]spot, m.n)},
	}
	for q, s := range m.start {
		d.state[q] = make([]int, len(s))
	}
	return d
}

func (d *decoder) clear() {
	for q := range d.busy {
		d.busy[q] = d.busy[q][:0]
	}
	for q := range d.taken {
		d.taken[q], d.before[q], d.closed[q], d.until[q] = d.taken[q][:0], d.before[q][:0], false, 0
		copy(d.state[q], d.m.start[q])
	}
	for r := range d.profile {
		d.profile[r].steps = append(d.profile[r].steps[:0], level{0, 0})
	}
}

// run puts the tasks of the list one by one where each ends soonest, gaps
// between others included; on machines with attributes in between only where it
// finds the machine set as it wants it, since it would else alter what the next
// must change.
// want[i] is the team that task i must have, or Any; nil is Any throughout. Of
// places that end alike the one with fewest hand-overs is taken, then the team
// whose people are least often wanted, then the lowest team and machine. If a
// task finds no place in anybody's hours the value is worst.
func (d *decoder) run(list, want []int, scarce []int64) *draft {
	d.clear()
	d.out.value = value{}
	for _, i := range list {
		if !d.put(i, want, scarce) {
			d.out.value = worst
			break
		}
	}
	return &d.out
}

func (d *decoder) put(i int, want []int, scarce []int64) bool {
	m := d.m
	first, last := 0, len(m.teams[i])-1
	if want != nil && want[i] != Any {
		first, last = want[i], want[i]
	}
	best := spot{end: infinite}
	var bestHands int
	var bestScarce int64
	for k := first; k <= last; k++ {
		t := &m.teams[i][k]
		ready, hands := d.ready(i, t.mask)
		var rare int64
		if scarce != nil {
			for _, q := range t.people {
				rare += scarce[q]
			}
		}
		offer := func(s spot) {
			if s.end > best.end || s.end >= infinite {
				return
			}
			if s.end < best.end || hands < bestHands || hands == bestHands && rare < bestScarce {
				best, bestHands, bestScarce = s, hands, rare
			}
		}
		if m.kind[i] == None {
			offer(d.fit(i, k, None, ready))
			continue
		}
		for _, q := range m.machines[m.kind[i]] {
			if d.machine != nil && d.machine[i] != Any && d.machine[i] != q {
				continue
			}
			offer(d.fit(i, k, q, ready))
		}
	}
	if best.end >= infinite {
		return false
	}
	d.place(i, best)
	d.out.value.finish = max(d.out.value.finish, best.end)
	d.out.value.hands += bestHands
	d.out.value.sum += best.end
	return true
}

// ready is when all that task i waits for is there, and the pieces that must
// be handed over to the people.
func (d *decoder) ready(i int, mask uint64) (t int64, hands int) {
	for _, a := range d.m.pred[i] {
		s := &d.out.place[a.task]
		at := s.end
		if a.piece && apart(mask, d.m.teams[a.task][s.team].mask) {
			at += d.m.handover
			hands++
		}
		t = max(t, at)
	}
	return t, hands
}

// fit is the soonest place of a task with a team at a machine.
func (d *decoder) fit(i, k, machine int, ready int64) spot {
	m := d.m
	if machine == None || len(m.kinds[m.kind[i]].Attributes) == 0 {
		return d.within(i, k, machine, ready, 0, anywhere)
	}
	d.scratch = append(d.scratch[:0], d.state[machine]...)
	setup := m.change(m.kind[i], d.scratch, m.setting[i])
	behind := max(ready, d.until[machine])
	if behind > ready && !d.closed[machine] {
		if s := d.within(i, k, machine, ready, 0, between); s.end <= behind {
			return s
		}
	}
	return d.within(i, k, machine, behind, setup, free)
}

// Where a task may stand at its machine.
type where int

const (
	free     where = iota // from a time on the machine is free
	anywhere              // in any gap
	between               // in gaps before others where the machine is set as it wants
)

// within is the soonest place from a time on.
func (d *decoder) within(i, k, machine int, t, setup int64, w where) spot {
	m := d.m
	lasts := setup + m.teams[i][k].lasts
	for {
		at := t
		for _, q := range m.teams[i][k].people {
			at = gap(d.busy[q], at, lasts)
			fits, ok := m.hours[q].fits(at, lasts)
			if !ok {
				return spot{end: infinite}
			}
			at = fits
		}
		switch {
		case machine == None || w == free:
		case w == anywhere:
			at = gap(d.taken[machine], at, lasts)
		default:
			if at = d.alike(machine, m.setting[i], at, lasts); at >= infinite {
				return spot{end: infinite}
			}
		}
		for _, u := range m.uses[i] {
			at = d.profile[u.resource].fit(m.caps[u.resource]-u.amount, at, lasts)
		}
		if at == t {
			return spot{begin: t, work: t + setup, end: t + lasts, team: k, machine: machine}
		}
		t = at
	}
}

// alike is the first time from t on at which so long a task fits between spans
// of a machine that is set as the task wants it; infinite if there is none.
func (d *decoder) alike(machine int, setting []int, t, lasts int64) int64 {
	spans := d.taken[machine]
	k := len(spans)
	for k > 0 && spans[k-1].From >= t+lasts {
		k--
	}
	for ; k < len(spans); k++ {
		at := t
		if k > 0 {
			at = max(at, spans[k-1].Until)
		}
		if at+lasts <= spans[k].From && suits(d.before[machine][k], setting) {
			return at
		}
	}
	return infinite
}

func suits(state, setting []int) bool {
	for a, to := range setting {
		if to != Any && to != state[a] {
			return false
		}
	}
	return true
}

// place puts the task there for good.
func (d *decoder) place(i int, s spot) {
	m := d.m
	d.out.place[i] = s
	if s.machine != None && len(m.kinds[m.kind[i]].Attributes) > 0 {
		d.set(i, s)
	}
	if s.end == s.begin {
		return
	}
	span := Span{s.begin, s.end}
	for _, q := range m.teams[i][s.team].people {
		d.busy[q] = insert(d.busy[q], span)
	}
	if s.machine != None {
		d.taken[s.machine] = insert(d.taken[s.machine], span)
	}
	for _, u := range m.uses[i] {
		d.profile[u.resource].add(s.begin, s.end, u.amount)
	}
}

// set sets a machine with attributes, and keeps how it was set before.
func (d *decoder) set(i int, s spot) {
	q, spans := s.machine, d.taken[s.machine]
	k := len(spans)
	for k > 0 && spans[k-1].From > s.begin {
		k--
	}
	if k < len(spans) { // in between, where it changes nothing
		if s.end > s.begin {
			d.before[q] = slices.Insert(d.before[q], k, d.before[q][k])
		}
		return
	}
	if s.end == s.begin {
		d.closed[q] = true // nothing may stand around it
	} else {
		d.before[q] = append(d.before[q], slices.Clone(d.state[q]))
	}
	d.until[q] = max(d.until[q], s.end)
	d.m.change(d.m.kind[i], d.state[q], d.m.setting[i])
}

// gap is the first time from t on at which so long a task fits between spans.
func gap(spans []Span, t, lasts int64) int64 {
	if lasts == 0 {
		return t
	}
	k := len(spans)
	for k > 0 && spans[k-1].Until > t {
		k--
	}
	for ; k < len(spans) && spans[k].From < t+lasts; k++ {
		t = max(t, spans[k].Until)
	}
	return t
}

// insert puts a span into spans in order.
func insert(spans []Span, s Span) []Span {
	spans = append(spans, s)
	for k := len(spans) - 1; k > 0 && spans[k-1].From > s.From; k-- {
		spans[k], spans[k-1] = spans[k-1], s
	}
	return spans
}

// A profile is how much of a resource is in use over time.
type profile struct {
	steps []level // in order, the first at 0, the last of amount 0
}

type level struct {
	at     int64
	amount int64 // from at until the next
}

// fit is the first time from t on at which no more than so much is in use for
// so long.
func (p *profile) fit(most, t, lasts int64) int64 {
	if lasts == 0 {
		return t
	}
	k := p.find(t)
	for ; k < len(p.steps) && p.steps[k].at < t+lasts; k++ {
		if p.steps[k].amount > most {
			t = p.steps[k+1].at
		}
	}
	return t
}

// find is the index of the step that holds at t.
func (p *profile) find(t int64) int {
	k := len(p.steps) - 1
	for p.steps[k].at > t {
		k--
	}
	return k
}

// split makes a step begin at t and returns its index.
func (p *profile) split(t int64) int {
	k := p.find(t)
	if p.steps[k].at == t {
		return k
	}
	p.steps = append(p.steps, level{})
	copy(p.steps[k+2:], p.steps[k+1:])
	p.steps[k+1] = level{t, p.steps[k].amount}
	return k + 1
}

func (p *profile) add(from, until, amount int64) {
	a := p.split(from)
	b := p.split(until)
	for k := a; k < b; k++ {
		p.steps[k].amount += amount
	}
}
