package crew

// A timetable states in clauses that a plan ends by some time, and lets a prover
// decide it: the begin of each task is a number, for each task and team there is the variable "they do it". Precedence
// is written down in arrows; that no more is in use than there is comes in clause
// by clause, for single times, when a search runs into it (A. Schutt, T. Feydy,
// P. Stuckey, M. Wallace, Explaining the cumulative propagator, Constraints 16,
// 2011), that no more is to be done than can be likewise, for stretches of time.
//
// What it proves impossible is impossible. What it finds need not be a
// plan: setting up again keeps its machine and its piece, but nobody, busy here;
// the caller tells it as a list and looks.
type timetable struct {
	m        *model
	s        *prover
	end      int     // the number of the end of all
	lo, hi   []int64 // begin of each task at first
	low      []int64 // begin of each task now
	high     []int64
	team     [][]lit // of each task: which of its teams
	settings [][]int // of the tasks, for telling a draft
	openers  map[lit]opener
	handed   map[[2]int]lit // of arcs: the piece is handed over
	pools    []pool
	dirty    []bool
	of       [][]int // by task: its pools
	doers    [][]lit // by task and person: whether she takes part
	given    [][]int // by variable: the pools in which it lets a task take part
	use      []int64 // scratch, all 0
	runs     []run   // scratch
	clauses  [][]lit // scratch
	load     []load
	sure     []share // scratch
	open     []share
	begins   []int64
	spare    []int64
	calls    int
	thorough bool // loads are looked at in the search
}

// An opener is the task for which an opening is done.
type opener struct {
	opening, task int
}

// Limits on what is written in clauses.
const (
	mostVariables = 200_000
	mostTeams     = 40
	mostPairs     = 64 // of teams at both ends of an arc
)

// newTimetable writes the model down for ends up to one; nil means that it would
// take more variables than the most.
func newTimetable(m *model, end int64, hint *draft, settings [][]int) *timetable {
	x := &timetable{m: m, settings: settings, openers: map[lit]opener{}, handed: map[[2]int]lit{}, team: make([][]lit, m.n+len(m.openings)), of: make([][]int, m.n+len(m.openings)+1)}
	size := int64(0)
	for i := range m.n {
		size += max(end-m.tail[i]-m.head[i], 0) + int64(len(m.teams[i]))
		if size > mostVariables || len(m.teams[i]) > mostTeams {
			return nil
		}
	}
	x.s = newProver(x)
	who := m.renamed(hint)
	for i := range m.n {
		if end-m.tail[i] < m.head[i] {
			x.s.failed = true
			return x
		}
		x.s.number(m.head[i], end-m.tail[i], hint.place[i].begin)
	}
	for k, o := range m.openings {
		last := max(end-o.rest-o.lasts, o.early-1) // one later is never
		x.s.number(o.early, last+1, hint.place[m.n+k].begin)
	}
	x.end = x.s.number(0, end, 0)
	x.s.aside = int32(x.end)
	x.lo, x.hi, x.low, x.high = x.s.lo, x.s.hi, x.s.low, x.s.high
	for i := range m.n {
		if len(m.teams[i]) == 1 {
			x.team[i] = []lit{truth}
			continue
		}
		for k := range m.teams[i] {
			x.team[i] = append(x.team[i], x.s.variable(who[i] == k))
		}
		x.s.add(x.team[i]...)
		for k, a := range x.team[i] {
			for _, b := range x.team[i][:k] {
				x.s.add(a.not(), b.not())
			}
		}
	}
	for k := range m.openings {
		x.opening(k, hint)
	}
	for i := range m.n {
		x.s.apart(i, x.end, m.tail[i])
		for _, a := range m.pred[i] {
			x.arrow(a.task, i, a)
		}
		x.hours(i)
	}
	x.resets()
	x.resources()
	x.ranks()
	x.loads()
	x.dirty = make([]bool, len(x.pools))
	for k := range x.dirty {
		x.dirty[k] = true
	}
	return x
}

// by is the literal "task i begins at t or sooner".
func (x *timetable) by(i int, t int64) lit { return x.s.by(i, t) }

// opening writes an opening down.
func (x *timetable) opening(k int, hint *draft) {
	m := x.m
	o, u, h := m.openings[k], m.n+k, hint.place[m.n+k]
	used := x.used(k)
	for q := range m.people {
		l := lie
		if o.who>>q&1 != 0 {
			l = x.s.variable(h.begin < infinite && h.team == q)
			x.s.add(l.not(), used)
		}
		x.team[u] = append(x.team[u], l)
	}
	if k > 0 && m.openings[k-1].kind == o.kind { // one after the other
		x.s.apart(u-1, u, 0)
	}
	some := []lit{used.not()}
	for y, j := range o.tasks {
		z := x.s.variable(h.begin+o.lasts == hint.place[j].begin)
		x.s.add(z.not(), used)
		for _, other := range some[1:] {
			x.s.add(z.not(), other.not())
		}
		some = append(some, z)
		x.openers[z] = opener{k, j}
		x.opens(o, u, j, o.each[y], z)
	}
	x.s.add(some...)
}

// used is the literal "the opening is needed".
func (x *timetable) used(k int) lit { return x.by(x.m.n+k, x.hi[x.m.n+k]-1) }

// opens ties an opening to a task for which it is done, and lasts so long.
func (x *timetable) opens(o opening, u, j int, lasts int64, z lit) {
	m := x.m
	for k, t := range m.teams[j] {
		for _, q := range t.people {
			if o.who != 0 {
				x.s.add(z.not(), x.team[j][k].not(), x.team[u][q])
			}
		}
	}
	x.s.apart(u, j, o.lasts, z)
	just := true // before the task
	for _, a := range m.pred[j] {
		if m.standsFor[a.task] != nil {
			just = false
			continue
		}
		x.s.apart(a.task, u, m.least[a.task]+m.lag(a), z)
		x.s.apart(a.task, j, m.least[a.task]+m.lag(a)+lasts, z)
	}
	if just {
		x.s.apart(j, u, -o.lasts, z)
	}
}

// arrow lets task j wait for task i.
func (x *timetable) arrow(i, j int, a arc) {
	m := x.m
	least := m.least[i] + m.lag(a)
	x.s.apart(i, j, least)
	for k, t := range m.teams[i] {
		if lag := t.lasts + m.lag(a); lag > least {
			x.s.apart(i, j, lag, x.team[i][k])
		}
	}
	if !a.piece || a.apart || m.handover == 0 || len(m.teams[i])*len(m.teams[j]) > mostPairs {
		return
	}
	handed, may := x.s.variable(false), false
	for k, t := range m.teams[i] {
		for l, u := range m.teams[j] {
			if apart(t.mask, u.mask) {
				x.s.add(x.team[i][k].not(), x.team[j][l].not(), handed)
				may = true
			}
		}
	}
	if !may {
		return
	}
	x.handed[[2]int{i, j}] = handed
	x.s.apart(i, j, m.least[i]+m.handover, handed)
	for k, t := range m.teams[i] {
		if t.lasts > m.least[i] {
			x.s.apart(i, j, t.lasts+m.handover, x.team[i][k], handed)
		}
	}
}

// hours keeps each team of a task to its hours and to the end.
func (x *timetable) hours(i int) {
	m := x.m
	for k, t := range m.teams[i] {
		if t.lasts > m.least[i] {
			x.s.apart(i, x.end, m.tail[i]-m.least[i]+t.lasts, x.team[i][k])
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

// assigned marks what must be looked through again.
func (x *timetable) assigned(l lit) {
	if x.dirty == nil {
		return
	}
	if i := x.s.owner[l.v()]; i >= 0 {
		for _, k := range x.of[i] {
			x.dirty[k] = true
		}
	} else if int(l.v()) < len(x.given) {
		for _, k := range x.given[l.v()] {
			x.dirty[k] = true
		}
	}
}
