package balance

import (
	"cmp"
	"context"
	"fmt"
	"slices"
)

// Options limit the work. Time is limited by the context.
type Options struct {
	// Width is the most sets that are kept for one station. 0 means 3000.
	Width int
}

// Fewest returns a split among the fewest stations it can find whose times
// sum to no more than the cycle. The errors are [*InvalidError]; a task longer
// than the cycle is one.
func Fewest(ctx context.Context, l Line, cycle int64, o Options) (Row, error) {
	g, err := ready(l)
	if err != nil {
		return Row{}, err
	}
	for i, t := range l.Times {
		if t > cycle {
			return Row{}, &InvalidError{i, fmt.Sprintf("takes %d, longer than the cycle of %d", t, cycle)}
		}
	}
	s := newSplitter(ctx, g, l, o)
	row := Row{Cycle: cycle, Bound: g.least(cycle)}
	for m := int(row.Bound); ; m++ {
		stations, none := s.split(cycle, m)
		if stations != nil || m == 0 {
			row.Stations = stations
			row.Proved = int64(m) == row.Bound
			return row, nil
		}
		if none && int64(m) == row.Bound {
			row.Bound++
		}
	}
}

// Quickest returns a split among at most so many stations with the least cycle
// time it can find. The errors are [*InvalidError].
func Quickest(ctx context.Context, l Line, stations int, o Options) (Row, error) {
	g, err := ready(l)
	if err != nil {
		return Row{}, err
	}
	if stations < 1 {
		return Row{}, &InvalidError{-1, fmt.Sprintf("%d stations, want 1 or more", stations)}
	}
	s := newSplitter(ctx, g, l, o)
	var longest int64
	for _, t := range l.Times {
		longest = max(longest, t)
	}
	low := max(longest, (g.sum+int64(stations)-1)/int64(stations))
	for g.least(low) > int64(stations) {
		low++
	}
	row := Row{Bound: low, Cycle: max(g.sum, low)}
	row.Stations, _ = s.split(row.Cycle, 1)
	// Between a cycle that is not known to do and one that does.
	for at := low; at < row.Cycle && ctx.Err() == nil; {
		found, none := s.split(at, stations)
		if found != nil {
			row.Stations, row.Cycle = found, g.busiest(found)
		} else {
			if none {
				row.Bound = at + 1
			}
			low = at + 1
		}
		if at = low; row.Cycle-low > 8 {
			at = low + (row.Cycle-low)/4
		}
	}
	row.Cycle = g.busiest(row.Stations)
	row.Proved = row.Cycle <= row.Bound
	return row, nil
}

func (g *graph) busiest(stations [][]int) int64 {
	var most int64
	for _, tasks := range stations {
		var sum int64
		for _, i := range tasks {
			sum += g.times[i]
		}
		most = max(most, sum)
	}
	return most
}

// least is a number of stations that no split does without: all work over the
// cycle; tasks of more than half the cycle one each, of half a half; the same in
// thirds (A. Scholl, R. Klein, INFORMS Journal on Computing 9, 1997, bounds 1
// to 3).
func (g *graph) least(cycle int64) int64 {
	if g.sum == 0 {
		return min(int64(g.n), 1)
	}
	var halves, sixths int64
	for _, t := range g.times {
		switch {
		case 2*t > cycle:
			halves += 2
		case 2*t == cycle:
			halves++
		}
		switch {
		case 3*t > 2*cycle:
			sixths += 6
		case 3*t == 2*cycle:
			sixths += 4
		case 3*t > cycle:
			sixths += 3
		case 3*t == cycle:
			sixths += 2
		}
	}
	return max((g.sum+cycle-1)/cycle, (halves+1)/2, (sixths+5)/6)
}

// A splitter tries to fill a number of stations, from the front and, where the
// front was not walked wholly, from the back.
type splitter struct {
	ctx   context.Context
	ways  []*graph
	width int
}

func newSplitter(ctx context.Context, g *graph, l Line, o Options) *splitter {
	if o.Width == 0 {
		o.Width = 3000
	}
	return &splitter{ctx: ctx, ways: []*graph{g, g.turned(l)}, width: o.Width}
}

// split returns tasks by station, or none and whether that is certain.
func (s *splitter) split(cycle int64, m int) (stations [][]int, certain bool) {
	for way, g := range s.ways {
		found, whole := s.walk(g, cycle, m)
		if found != nil {
			if way == 1 {
				slices.Reverse(found)
				for _, tasks := range found {
					slices.Reverse(tasks)
				}
			}
			return found, true
		}
		if whole {
			return nil, true
		}
	}
	return nil, false
}

// A front is what the first stations hold.
type front struct {
	done set
	idle int64
	from int // index in the fronts of one station less
}

// walk lists fronts station by station. Only full loads count: what could
// still go into a station may as well go there.
func (s *splitter) walk(g *graph, cycle int64, m int) (stations [][]int, whole bool) {
	const loads = 4000 // of one front
	spare := cycle*int64(m) - g.sum
	if spare < 0 {
		return nil, true
	}
	whole = true
	levels := [][]front{{{}}}
	for range m {
		last := levels[len(levels)-1]
		next := []front{}
		at := map[set]int{}
		for k := range last {
			full := g.loads(s.ctx, &last[k], cycle, spare, loads, func(done set, idle int64) {
				if _, ok := at[done]; !ok {
					at[done] = len(next)
					next = append(next, front{done, idle, k})
				}
			})
			whole = whole && full
			if len(next) > 50*s.width || s.ctx.Err() != nil && len(next) > 0 {
				whole = whole && k == len(last)-1
				break
			}
		}
		width := s.width
		if s.ctx.Err() != nil {
			width = 1
		}
		slices.SortStableFunc(next, func(a, b front) int { return cmp.Compare(a.idle, b.idle) })
		if len(next) > width {
			next, whole = next[:width], false
		}
		levels = append(levels, next)
		for k := range next {
			if next[k].count() == g.n {
				return g.trace(levels, k), whole
			}
		}
		if len(next) == 0 {
			return nil, whole
		}
	}
	return nil, whole
}

func (f *front) count() int {
	n := 0
	f.done.each(func(int) { n++ })
	return n
}

// loads finds the full loads of the next station after a front; false if there
// were more than the most, or if the context ended and there is one.
func (g *graph) loads(ctx context.Context, f *front, cycle, spare int64, most int, offer func(done set, idle int64)) bool {
	left := make([]int, g.n)
	var eligible []int
	for i := range g.n {
		if f.done.has(i) {
			continue
		}
		for _, b := range g.pred[i] {
			if !f.done.has(b) {
				left[i]++
			}
		}
		if left[i] == 0 {
			eligible = append(eligible, i)
		}
	}
	slices.SortStableFunc(eligible, func(a, b int) int { return cmp.Compare(g.weight[b], g.weight[a]) })
	count, steps := 0, 0
	done := f.done
	// Tasks are taken in the order in which they became eligible, so that no
	// load comes twice; one that was passed over must not fit in the end.
	var passed []int
	var walk func(list []int, room int64) bool
	walk = func(list []int, room int64) bool {
		const often, idle = 1024, 64 // idle steps a load
		if steps++; count >= most || count > 0 && steps > idle*most || count > 0 && steps%often == 0 && ctx.Err() != nil {
			return false
		}
		if len(list) == 0 {
			for _, i := range passed {
				if g.times[i] <= room {
					return true
				}
			}
			if f.idle+room > spare {
				return true
			}
			count++
			offer(done, f.idle+room)
			return true
		}
		i, rest := list[0], list[1:]
		if g.times[i] <= room {
			was := done
			done.add(i)
			more := slices.Clone(rest)
			for _, j := range g.succ[i] {
				if left[j]--; left[j] == 0 {
					more = append(more, j)
				}
			}
			ok := walk(more, room-g.times[i])
			for _, j := range g.succ[i] {
				left[j]++
			}
			done = was
			if !ok {
				return false
			}
		}
		passed = append(passed, i)
		ok := walk(rest, room)
		passed = passed[:len(passed)-1]
		return ok
	}
	return walk(eligible, cycle)
}

// trace tells the stations that lead to a front.
func (g *graph) trace(levels [][]front, k int) [][]int {
	stations := make([][]int, len(levels)-1)
	for m := len(levels) - 1; m > 0; m-- {
		f := &levels[m][k]
		here := f.done.without(&levels[m-1][f.from].done)
		for _, i := range g.order {
			if here.has(i) {
				stations[m-1] = append(stations[m-1], i)
			}
		}
		k = f.from
	}
	return stations
}
