package crew

import (
	"context"
	"slices"
)

// A reshaper looks for sooner ends with most of the best plan as it is: what
// lies in some stretch of time is free, what lies before keeps its place, and
// what lies after comes sooner (large neighbourhood search; P. Shaw, Using
// constraint programming and local search methods to solve vehicle routing
// problems, CP 1998). Setting up takes what it takes in the best plan, until the
// list that it comes to is told.
type reshaper struct {
	v     *improver
	eased *model
	tried int
	count int   // stretches
	wide  int64 // of a stretch
	more  int64 // by how much sooner than the best by one it must end

	best *draft
	ease *draft // the best in terms of the timetable
	who  []int  // its teams, as they are numbered there
	x    *timetable
}

// settled is an eased model in which every task takes as long as it does in a
// draft of the full one, all its setting up included.
func (m *model) settled(eased *model, d, ease *draft) *model {
	if !m.setups {
		return m
	}
	b := *eased
	b.full = nil // what is set otherwise is in the lengths
	b.teams, b.least = slices.Clone(eased.teams), slices.Clone(eased.least)
	firsts, before := m.firsts(), m.reach()
	for i, s := range d.place {
		more := s.work - s.begin - eased.setIn[i]
		for k, o := range eased.openings {
			if at := ease.place[eased.n+k].begin; at < infinite && at+o.lasts == ease.place[i].begin && m.kind[i] == o.kind {
				more -= o.lasts
			}
		}
		for _, f := range firsts {
			if slices.Contains(f.tasks, i) && f.soonest(before) == None && s.work == firstWork(d, f.tasks) {
				more -= f.lasts
			}
		}
		if more <= 0 {
			continue
		}
		b.teams[i] = slices.Clone(eased.teams[i])
		for k := range b.teams[i] {
			b.teams[i][k].lasts += more
		}
		b.least[i] += more
	}
	b.spread()
	return &b
}

// firstWork is when the first of some tasks begins its work.
func firstWork(d *draft, tasks []int) int64 {
	t := int64(infinite)
	for _, i := range tasks {
		t = min(t, d.place[i].work)
	}
	return t
}

// run tries so many failures long.
func (r *reshaper) run(ctx context.Context, failures int) {
	const few = 20 // failures a stretch, or some times that
	v := r.v
	if v.best.place == nil {
		return
	}
	var given []lit
	for last := r.tried + failures; r.tried < last && v.best.value.finish > v.low && ctx.Err() == nil; {
		end := v.best.value.finish - 1
		if r.best != v.best {
			r.best, r.more = v.best, 0
			near := v.m.settled(r.eased, r.best, v.m.ease(r.eased, r.best))
			r.ease = v.m.ease(near, r.best)
			if r.x = newTimetable(near, end, r.ease, v.m.setting); r.x != nil && !r.x.s.failed {
				r.who = r.x.aim(r.ease)
			}
		}
		if r.x == nil || r.x.s.failed {
			return
		}
		given = r.around(append(given[:0], r.x.by(r.x.end, end-r.more)))
		before := r.x.s.failures
		r.count++
		a := r.x.s.search(ctx, given, before+few*luby(r.count))
		r.tried += max(r.x.s.failures-before, 1)
		switch a {
		case possible:
			// It may tell that more is set up than before.
			if v.told(r.x.draft()); r.best == v.best {
				r.more = 2*r.more + 1
			}
		case impossible:
			r.wide = min(r.wide+r.wide/16+1, end)
		default:
			r.wide = max(r.wide-r.wide/16, 8)
		}
	}
}

// around adds to what is given what stays of the best plan around some stretch
// of time.
func (r *reshaper) around(given []lit) []lit {
	wide := max(r.wide/2+r.v.chance.Int64N(r.wide), 1)
	from := r.v.chance.Int64N(r.best.value.finish+wide) - wide
	for i, s := range r.ease.place {
		at := s.begin
		if s.end > from && at < from+wide || at >= infinite {
			continue // free, or an opening that is not
		}
		if at >= from+wide {
			at -= r.more + 1
		}
		given = append(given, r.x.by(i, at))
		if i < len(r.who) && len(r.x.team[i]) > 1 {
			given = append(given, r.x.team[i][r.who[i]])
		}
	}
	return given
}
