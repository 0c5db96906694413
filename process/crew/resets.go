package crew

// A resetter writes down for one kind of machine what it takes to set it
// otherwise than it is: a task finds a value as it wants it only if another one
// that wants the same was there before it, at the same machine and with nothing
// else set in between, or if it is the first there to want any. Else those who do
// it set the machine, after all that it waits for is there.
type resetter struct {
	x       *timetable
	full    *model
	before  [][]bool
	tasks   []int
	two     bool
	at      map[int]lit    // by task: it is at the further machine
	apart   map[[2]int]lit // by tasks: they are at different machines
	order   map[[2]int]lit // by tasks: one is done before the other
	start   []int          // setting at the beginning
	firsts  []first
	credits map[*first][]lit
}

const mostSuppliers = 2000 // of one attribute

// resets does so for all kinds of one machine, or of two on which nothing is set
// at the beginning. Of those two the further one is that whose work begins later.
func (x *timetable) resets() {
	full := x.m.full
	if full == nil || !full.setups {
		return
	}
	before := full.reach()
	for kind, machines := range full.machines {
		r := &resetter{x: x, full: full, before: before, at: map[int]lit{}, apart: map[[2]int]lit{}, order: map[[2]int]lit{}, firsts: full.firsts(), credits: map[*first][]lit{}, start: full.start[machines[0]]}
		for i := range full.n {
			if full.kind[i] == kind {
				r.tasks = append(r.tasks, i)
			}
		}
		k := -1 // its opening
		for c, o := range x.m.openings {
			if o.kind == kind {
				k = c
			}
		}
		switch {
		case len(machines) == 1:
		case len(machines) == 2 && k >= 0 && full.unset(machines[0]) && full.unset(machines[1]):
			r.two = true
			r.further(k)
		default:
			continue
		}
		costs := map[int][]lit{}
		spend := map[lit]int64{}
		for a := range full.kinds[kind].Attributes {
			r.attribute(kind, a, costs, spend)
		}
		for _, j := range r.tasks {
			x.delay(j, costs[j], spend)
		}
	}
}

// further lets tasks be at the further machine only once it is opened.
func (r *resetter) further(k int) {
	x, u := r.x, r.x.m.n+k
	o := x.m.openings[k]
	for _, j := range r.tasks {
		l := x.s.variable(false)
		r.at[j] = l
		x.s.add(l.not(), x.used(k))
		x.s.apart(u, j, o.lasts, l)
	}
	for _, j := range r.tasks {
		for z, by := range x.openers {
			if by == (opener{k, j}) {
				x.s.add(z.not(), r.at[j])
			}
		}
	}
	for _, i := range r.tasks {
		all := true
		for _, j := range r.tasks {
			all = all && (i == j || r.before[i][j])
		}
		if all {
			x.s.add(r.at[i].not())
		}
	}
}

// other is the literal "the two are at different machines".
func (r *resetter) other(i, j int) lit {
	if !r.two {
		return lie
	}
	key := [2]int{min(i, j), max(i, j)}
	l, ok := r.apart[key]
	if !ok {
		s := r.x.s
		l = s.variable(false)
		s.add(l.not(), r.at[i], r.at[j])
		s.add(l.not(), r.at[i].not(), r.at[j].not())
		r.apart[key] = l
	}
	return l
}

// sooner is the literal "i is done before j".
func (r *resetter) sooner(i, j int) lit {
	switch {
	case r.before[i][j]:
		return truth
	case r.before[j][i]:
		return lie
	}
	l, ok := r.order[[2]int{i, j}]
	if !ok {
		l = r.x.s.variable(false)
		r.x.s.apart(i, j, r.x.m.least[i], l)
		r.order[[2]int{i, j}] = l
	}
	return l
}

// attribute writes down when tasks pay for one attribute: the literals by task,
// and what each costs.
func (r *resetter) attribute(kind, a int, costs map[int][]lit, spend map[lit]int64) {
	x, full := r.x, r.full
	at := full.kinds[kind].Attributes[a]
	wants := func(i int) int {
		if full.setting[i] == nil {
			return Any
		}
		return full.setting[i][a]
	}
	var setters []int
	count := make([]int, len(at.Change))
	for _, i := range r.tasks {
		if v := wants(i); v != Any {
			setters = append(setters, i)
			count[v]++
		}
	}
	least := func(v int) int64 { // to set v where another value is set
		t := int64(infinite)
		for u := range at.Change {
			if u != v && (count[u] > 0 || r.start[a] == u) {
				t = min(t, at.Change[u][v])
			}
		}
		return t
	}
	sum := 0
	for _, n := range count {
		sum += n * n
	}
	if sum > mostSuppliers {
		return
	}
	for _, j := range setters {
		v := wants(j)
		cost := least(v)
		if cost >= infinite {
			continue
		}
		// What is counted already for the task, or for the first of some.
		var pays []lit
		unless := lie
		if f := r.counted(kind, a, v); f != nil {
			already := min(f.lasts, cost)
			switch f.soonest(r.before) {
			case j:
				cost -= already
			case None:
				l := x.s.variable(false)
				pays, spend[l] = append(pays, l), already
				cost -= already
				unless = r.credited(f, j)
			}
		}
		if cost > 0 {
			l := x.s.variable(false)
			pays, spend[l] = append(pays, l), cost
		}
		if len(pays) == 0 {
			continue
		}
		var some []lit
		if r.start[a] == Unset || r.start[a] == v {
			l := x.s.variable(false)
			for _, i := range setters {
				if i != j {
					x.s.add(l.not(), r.other(i, j), r.sooner(j, i))
				}
			}
			some = append(some, l)
		}
		for _, k := range setters {
			if k == j || wants(k) != v || r.before[j][k] {
				continue
			}
			l := x.s.variable(false)
			if r.two {
				x.s.add(l.not(), r.at[k].not(), r.at[j])
				x.s.add(l.not(), r.at[k], r.at[j].not())
			}
			x.s.add(l.not(), r.sooner(k, j))
			for _, i := range setters {
				if wants(i) != v {
					x.s.add(l.not(), r.other(i, j), r.sooner(i, k), r.sooner(j, i))
				}
			}
			some = append(some, l)
		}
		for k, l := range pays {
			clause := append([]lit{l}, some...)
			if k == 0 {
				clause = append(clause, unless)
			}
			x.s.add(clause...)
		}
		costs[j] = append(costs[j], pays...)
	}
}

// counted is the first setting of a value, or nil.
func (r *resetter) counted(kind, attribute, value int) *first {
	for k := range r.firsts {
		if f := &r.firsts[k]; f.kind == kind && f.attribute == attribute && f.value == value {
			return f
		}
	}
	return nil
}

// credited is the literal "the work of this task begins first of those that want
// the value", at most one of them.
func (r *resetter) credited(f *first, j int) lit {
	s := r.x.s
	l := s.variable(false)
	for _, i := range f.tasks {
		if i != j {
			s.apart(j, i, r.x.m.setIn[j]-r.x.m.setIn[i], l)
		}
	}
	for _, other := range r.credits[f] {
		s.add(l.not(), other.not())
	}
	r.credits[f] = append(r.credits[f], l)
	return l
}

// delay lets a task begin later by what is set for it, up to so many literals at
// a time as an arrow may be given for.
func (x *timetable) delay(j int, pays []lit, spend map[lit]int64) {
	const most = len(arrow{}.given)
	var pick func(from int, picked []lit, cost int64)
	pick = func(from int, picked []lit, cost int64) {
		if len(picked) > 0 {
			if len(x.m.pred[j]) == 0 {
				lits := []lit{x.by(j, cost-1).not()}
				for _, l := range picked {
					lits = append(lits, l.not())
				}
				x.s.add(lits...)
			}
			for _, a := range x.m.pred[j] {
				if x.m.standsFor[a.task] == nil {
					x.s.apart(a.task, j, x.m.least[a.task]+x.m.lag(a)+cost, picked...)
					if h, ok := x.handed[[2]int{a.task, j}]; ok && len(picked) < most {
						x.s.apart(a.task, j, x.m.least[a.task]+x.m.handover+cost, append([]lit{h}, picked...)...)
					}
				}
			}
		}
		if len(picked) == most {
			return
		}
		for k := from; k < len(pays); k++ {
			pick(k+1, append(picked[:len(picked):len(picked)], pays[k]), cost+spend[pays[k]])
		}
	}
	pick(0, nil, 0)
}
