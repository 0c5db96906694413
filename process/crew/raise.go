package crew

import "context"

// A raiser raises the bound: it asks a timetable for ends a step above the
// bound, twice the step after a refusal, half of it after giving up. What it
// finds instead are plans, but for settings.
type raiser struct {
	m      *model // eased
	full   *model
	table  *timetable
	step   int64
	low    int64 // no plan ends sooner
	loose  int64 // an end that clauses, which do not know all of setting up, allow
	tried  int
	orders []order // of plans found
}

// An order is a plan to be told: tasks, teams and machines.
type order struct {
	list, team, machine []int
}

// run tries so many failures long, best being the best plan known.
func (r *raiser) run(ctx context.Context, best *draft, failures int) {
	r.orders = r.orders[:0]
	high := min(best.value.finish-1, r.loose) // not known to be impossible
	if r.low > high || ctx.Err() != nil {
		return
	}
	if r.table == nil {
		r.table = newTimetable(r.m, high, r.full.ease(r.m, best), r.full.setting)
		if r.table == nil {
			return
		}
		r.step = max((high-r.low)/16, 1)
	}
	x := r.table
	x.thorough = true
	if x.s.failed {
		r.low = high + 1
		return
	}
	x.s.cut(0)
	if l := x.by(x.end, r.low-1).not(); x.s.val(l) == 0 {
		x.s.enqueue(l, cause{})
	}
	const share = 4 // of the failures in one go
	least := min(failures, 100)
	for last := r.tried + failures; r.low <= high && r.tried < last && ctx.Err() == nil; {
		end := min(r.low+r.step-1, high)
		before := x.s.failures
		a := x.s.search(ctx, []lit{x.by(x.end, end)}, before+min(max(failures/share, least), last-r.tried))
		r.tried += max(x.s.failures-before, 1)
		switch a {
		case impossible:
			r.low = end + 1
			r.step *= 2
		case possible:
			r.orders = append(r.orders, x.draft())
			r.loose = min(r.loose, end)
			high = end - 1
			r.step = max(1, r.step/2)
		default:
			r.step = max(1, r.step/2)
		}
	}
}
