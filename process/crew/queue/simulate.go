package queue

import (
	"container/heap"
	"context"
)

// Simulate lets the visitors walk through the room once. The same room and
// seed give the same report. The error is an [*InvalidError] or that of the
// context.
func Simulate(ctx context.Context, r Room, seed uint64) (Report, error) {
	if err := r.check(); err != nil {
		return Report{}, err
	}
	s := &run{room: r, chance: newChance(seed, r.Spread), free: make([]int, len(r.Stations)),
		waiting: make([][]comer, len(r.Stations)), at: make([]int, len(r.Visitors)),
		out: Report{Stations: make([]Line, len(r.Stations)), Waited: make([]float64, len(r.Visitors))}}
	copy(s.free, r.Stations)
	for v := range r.Visitors {
		s.leave(0, v)
	}
	for k := 0; s.coming.Len() > 0; k++ {
		if k%1000 == 0 && ctx.Err() != nil {
			return Report{}, ctx.Err()
		}
		s.step(heap.Pop(&s.coming).(event))
	}
	for q := range s.out.Stations {
		l := &s.out.Stations[q]
		if l.Turns > 0 {
			l.Waits /= float64(l.Turns)
		}
		if s.out.End > 0 {
			l.Busy /= s.out.End * float64(r.Stations[q])
		}
	}
	return s.out, nil
}

// A run is a simulation under way.
type run struct {
	room    Room
	chance  *chance
	coming  events
	free    []int     // servers of each station
	waiting [][]comer // at each station, first come first
	at      []int     // next stay of each visitor
	out     Report
}

type comer struct {
	visitor int
	since   float64
}

// An event is a visitor who comes to a station or ends her turn there.
type event struct {
	time    float64
	ends    bool
	visitor int
}

// events is a heap: soonest first, ends before comings, then by visitor.
type events []event

func (e events) Len() int      { return len(e) }
func (e events) Swap(i, j int) { e[i], e[j] = e[j], e[i] }
func (e events) Less(i, j int) bool {
	a, b := e[i], e[j]
	if a.time != b.time {
		return a.time < b.time
	}
	if a.ends != b.ends {
		return a.ends
	}
	return a.visitor < b.visitor
}
func (e *events) Push(x any) { *e = append(*e, x.(event)) }
func (e *events) Pop() any {
	last := len(*e) - 1
	x := (*e)[last]
	*e = (*e)[:last]
	return x
}

func (s *run) stay(v int) Stay { return s.room.Visitors[v][s.at[v]] }

// leave sends a visitor on to her next stay, if there is one.
func (s *run) leave(now float64, v int) {
	if s.at[v] < len(s.room.Visitors[v]) {
		heap.Push(&s.coming, event{now + s.chance.time(s.stay(v).Before), false, v})
	}
}

func (s *run) step(e event) {
	q := s.stay(e.visitor).Station
	line := &s.out.Stations[q]
	if !e.ends {
		if s.free[q] > 0 {
			s.begin(e.time, comer{e.visitor, e.time})
			return
		}
		s.waiting[q] = append(s.waiting[q], comer{e.visitor, e.time})
		if n := len(s.waiting[q]); n > line.Longest {
			line.Longest, line.Peak = n, e.time
		}
		return
	}
	s.out.End = max(s.out.End, e.time)
	s.free[q]++
	s.at[e.visitor]++
	if len(s.waiting[q]) > 0 {
		next := s.waiting[q][0]
		s.waiting[q] = s.waiting[q][1:]
		s.begin(e.time, next)
	}
	s.leave(e.time, e.visitor)
}

// begin gives a visitor her turn.
func (s *run) begin(now float64, c comer) {
	stay := s.stay(c.visitor)
	line := &s.out.Stations[stay.Station]
	s.free[stay.Station]--
	turn := s.chance.time(stay.Turn)
	line.Turns++
	line.Busy += turn
	line.Waits += now - c.since
	line.Worst = max(line.Worst, now-c.since)
	s.out.Waited[c.visitor] += now - c.since
	heap.Push(&s.coming, event{now + turn, true, c.visitor})
}

// Expected is many runs taken together.
type Expected struct {
	Runs     int
	End      float64 // mean
	Stations []Line  // means, but Worst and Longest the worst of all runs, and Peak when that was
	Waited   []float64
}

// Repeat simulates with seeds seed, seed+1 and so on, and takes the runs
// together. Errors are those of [Simulate].
func Repeat(ctx context.Context, r Room, seed uint64, runs int) (Expected, error) {
	out := Expected{Runs: runs, Stations: make([]Line, len(r.Stations)), Waited: make([]float64, len(r.Visitors))}
	for k := range runs {
		one, err := Simulate(ctx, r, seed+uint64(k))
		if err != nil {
			return Expected{}, err
		}
		part := 1 / float64(runs)
		out.End += one.End * part
		for v, w := range one.Waited {
			out.Waited[v] += w * part
		}
		for q, l := range one.Stations {
			all := &out.Stations[q]
			all.Turns = l.Turns // the same in every run
			all.Waits += l.Waits * part
			all.Busy += l.Busy * part
			all.Worst = max(all.Worst, l.Worst)
			if l.Longest > all.Longest {
				all.Longest, all.Peak = l.Longest, l.Peak
			}
		}
	}
	return out, nil
}
