package process

import (
	"cmp"
	"context"
	"slices"

	"bodkin/process/crew"
)

// Given is what the maker can give to one person, the two of them alone in the
// room: as much of her work as fits that person's skills and hours, however
// little sooner all is done.
type Given struct {
	Person     string      `json:"person"`
	Frees      float64     `json:"frees_minutes"` // the maker, at her own pace
	Takes      float64     `json:"takes_minutes"` // of the other
	Finish     float64     `json:"finish_minutes"`
	Handovers  int         `json:"hand_overs"`
	Operations []GivenTurn `json:"operations"` // in time
}

// GivenTurn is an operation that is given away.
type GivenTurn struct {
	Operation string  `json:"operation"`
	Does      string  `json:"does"`
	Part      string  `json:"part"`
	Begin     float64 `json:"begin_minutes"`
	Minutes   float64 `json:"minutes"` // in the other's hands
}

// giveAway finds what can be given to person q. It begins with all that she
// can do, takes back what would end after her hours and what is too short to be
// worth the carrying, and then tries once more with each of the longest that
// were taken back. That frees the maker much, if not provably most.
func (s *sharing) giveAway(ctx context.Context, q, nodes int) (Given, bool) {
	gift := &gift{s: s, q: q, hers: make([]bool, len(s.p.Tasks))}
	var must []int
	for i := range s.p.Tasks {
		gift.hers[i] = s.can(q, i)
		if !s.can(0, i) {
			if !gift.hers[i] {
				return Given{}, false
			}
			must = append(must, i)
		}
	}
	could := slices.Clone(gift.hers)
	for {
		r, ok := gift.plan(ctx, crew.NoSearch, false)
		if !ok {
			return Given{}, false
		}
		dropped := gift.trifles(must)
		for i, at := range r.Places {
			if gift.hers[i] && at.End > s.p.People[q].Hours[0].Until && !slices.Contains(must, i) {
				gift.hers[i], dropped = false, true
			}
		}
		if !dropped {
			break
		}
	}
	gift.again(ctx, could, must)
	r, ok := gift.plan(ctx, nodes, true)
	if !ok {
		return Given{}, false
	}
	return gift.tell(r), true
}

// can reports whether a person has the skills of a task.
func (s *sharing) can(q, i int) bool { return s.p.People[q].Skills[s.p.Tasks[i].Needs[0].Skill] > 0 }

// A gift is a division of the work between the maker and one other.
type gift struct {
	s    *sharing
	q    int
	hers []bool // by task
}

// plan lets the two do their own tasks; the maker stays as long as it takes,
// and the other too unless she is held to her hours.
func (g *gift) plan(ctx context.Context, nodes int, hours bool) (crew.Result, bool) {
	p := g.s.p
	maker, other := p.People[0], p.People[g.q]
	maker.Hours, maker.Skills = nil, []int{1, 0}
	other.Skills = []int{0, 1}
	if !hours {
		other.Hours = []crew.Span{{From: other.Hours[0].From, Until: crew.MaxHour}}
	}
	p.People = []crew.Person{maker, other}
	p.Tasks = slices.Clone(p.Tasks)
	for i := range p.Tasks {
		skill := 0
		if g.hers[i] {
			skill = 1
		}
		p.Tasks[i].Needs = []crew.Need{{Skill: skill}}
	}
	r, err := crew.Solve(ctx, p, crew.Options{Nodes: nodes, Brief: true})
	return r, err == nil && r.Places != nil
}

// trifles takes back runs of tasks on one piece that are shorter than carrying
// it there and back.
func (g *gift) trifles(must []int) bool {
	run := make([]int, len(g.hers)) // a task of the run, the same for all of it
	for i := range run {
		run[i] = i
	}
	var root func(i int) int
	root = func(i int) int {
		if run[i] != i {
			run[i] = root(run[i])
		}
		return run[i]
	}
	for i, t := range g.s.p.Tasks {
		for _, b := range t.From {
			if g.hers[i] && g.hers[b] {
				run[root(i)] = root(b)
			}
		}
	}
	long := make([]int64, len(g.hers))
	for i, t := range g.s.p.Tasks {
		if g.hers[i] {
			long[root(i)] += t.Time
		}
	}
	dropped := false
	for i := range g.hers {
		if g.hers[i] && long[root(i)] < 2*g.s.p.Handover && !slices.Contains(must, i) {
			g.hers[i], dropped = false, true
		}
	}
	return dropped
}

// again tries to give what was taken back, longest first.
func (g *gift) again(ctx context.Context, could []bool, must []int) {
	const tries = 30
	var back []int
	for i := range could {
		if could[i] && !g.hers[i] {
			back = append(back, i)
		}
	}
	slices.SortStableFunc(back, func(a, b int) int { return cmp.Compare(g.s.p.Tasks[b].Time, g.s.p.Tasks[a].Time) })
	for _, i := range back[:min(len(back), tries)] {
		was := slices.Clone(g.hers)
		g.hers[i] = true
		trifle := g.trifles(must)
		if _, ok := g.plan(ctx, crew.NoSearch, true); !ok || trifle {
			g.hers = was
		}
	}
}

func (g *gift) tell(r crew.Result) Given {
	s := g.s
	out := Given{Person: s.people[g.q].Name.Value, Finish: minutesFrom(r.Finish), Handovers: r.Handovers, Operations: []GivenTurn{}}
	var order []int
	var frees, takes int64
	pace := int64(s.p.People[0].Pace)
	for i, at := range r.Places {
		if g.hers[i] {
			order = append(order, i)
			frees += (s.p.Tasks[i].Time*pace + 99) / 100
			takes += at.End - at.Begin
		}
	}
	out.Frees, out.Takes = minutesFrom(frees), minutesFrom(takes)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(r.Places[a].Begin, r.Places[b].Begin) })
	for _, i := range order {
		at, n := r.Places[i], s.o.ops[i]
		out.Operations = append(out.Operations, GivenTurn{Operation: n.ID, Does: n.Does, Part: n.Part,
			Begin: minutesFrom(at.Begin), Minutes: minutesFrom(at.End - at.Begin)})
	}
	return out
}
