package crew

import (
	"cmp"
	"math/bits"
	"slices"
)

const (
	rateUnit = 1000    // rates of work are rounded up to thousandths
	far      = 1 << 42 // after everybody's hours
)

// lower returns a time before which no plan can end: the longest path, and for
// each resource, each kind of machine and many sets of people the work that
// falls to them between the soonest begin and the least that follows (interval
// energy; compare P. Brucker and S. Knust, Complex Scheduling, 2nd ed. 2012,
// chapter 3). O(sets × tasks²). If it is not to be brief, what lies between any
// two tasks counts too.
func (m *model) lower(brief bool) int64 {
	low := int64(0)
	if !brief {
		low = m.stretches()
	}
	for i := range m.n {
		low = max(low, m.head[i]+m.tail[i])
	}
	low = min(low, infinite)
	if low == infinite {
		return low
	}
	for r, c := range m.caps {
		var jobs []job
		for i := range m.n {
			for _, u := range m.uses[i] {
				if u.resource == r {
					jobs = append(jobs, m.job(i, m.least[i]*u.amount))
				}
			}
		}
		low = busiest(jobs, low, shared(c))
	}
	for k, machines := range m.machines {
		var jobs []job
		for i := range m.n {
			if m.kind[i] == k {
				jobs = append(jobs, m.job(i, m.least[i]))
			}
		}
		c := int64(len(machines))
		low = busiest(jobs, low, shared(c))
	}
	for _, set := range m.crowds() {
		low = m.crowdBound(set, low)
	}
	return low
}

// A job is a task seen by something that works on it.
type job struct {
	head, rest int64 // soonest begin; least time from its end to the end of all
	work       int64
}

func (m *model) job(i int, work int64) job {
	return job{m.head[i], m.tail[i] - m.least[i], work}
}

// A worker tells by when so much work is done that begins at a time, or last if
// it is done by then.
type worker func(from, work, last int64) int64

// shared is a worker of so many alike.
func shared(c int64) worker {
	return func(from, work, last int64) int64 { return max(from+(work+c-1)/c, last) }
}

// busiest is the latest end forced by the work of jobs whose heads and rests
// are at least some values, or low if that is later.
func busiest(jobs []job, low int64, w worker) int64 {
	if len(jobs) == 0 {
		return low
	}
	byRest := slices.Clone(jobs)
	slices.SortFunc(byRest, func(a, b job) int { return cmp.Compare(b.rest, a.rest) })
	heads := make([]int64, 0, len(jobs))
	for _, j := range jobs {
		heads = append(heads, j.head)
	}
	slices.Sort(heads)
	heads = slices.Compact(heads)
	for _, h := range heads {
		var work int64
		for x, j := range byRest {
			if j.head < h {
				continue
			}
			work += j.work
			if x+1 < len(byRest) && byRest[x+1].rest == j.rest || work == 0 {
				continue
			}
			low = max(low, w(h, work, low-j.rest)+j.rest)
			if low >= infinite {
				return infinite
			}
		}
	}
	return low
}

// reach tells for each task which ones wait for it, others in between.
func (m *model) reach() [][]bool {
	out := make([][]bool, m.n)
	for _, i := range slices.Backward(m.sorted()) {
		out[i] = make([]bool, m.n)
		for _, a := range m.succ[i] {
			out[i][a.task] = true
			for j, r := range out[a.task] {
				out[i][j] = out[i][j] || r
			}
		}
	}
	return out
}

// crowds are the sets of people worth a bound: all sets of a few, else each
// alone, everybody, and those who share a task's skills.
func (m *model) crowds() []uint64 {
	const few = 7
	var sets []uint64
	if m.people <= few {
		for s := uint64(1); s < 1<<m.people; s++ {
			sets = append(sets, s)
		}
		return sets
	}
	for q := range m.people {
		sets = append(sets, 1<<q)
	}
	sets = append(sets, 1<<m.people-1)
	for i := range m.n {
		var all uint64
		for _, t := range m.teams[i] {
			all |= t.mask
		}
		if all != 0 {
			sets = append(sets, all)
		}
	}
	slices.Sort(sets)
	return slices.Compact(sets)
}

// crowdBound is the bound of the work that falls to a set of people however
// it is shared, counted in time at pace 100, in the hours in which they are
// there; low if that is later.
func (m *model) crowdBound(set uint64, low int64) int64 {
	var jobs []job
	for i := range m.n {
		if fewest := m.fewest(i, set); fewest > 0 {
			jobs = append(jobs, m.job(i, m.time[i]*int64(fewest)))
		}
	}
	return busiest(jobs, low, func(from, work, last int64) int64 { return m.enough(set, from, work, last) })
}

// enough is the first time, but not before last, by which the people have hours
// for so much work from a time on, infinite if never.
func (m *model) enough(set uint64, from, work, last int64) int64 {
	done := func(until int64) bool {
		var sum int64 // work times rateUnit
		for left := set; left != 0; left &= left - 1 {
			q := bits.TrailingZeros64(left)
			rate := (rateUnit*100 + m.pace[q] - 1) / m.pace[q]
			if m.hours[q] == nil {
				sum += max(until-from, 0) * rate
				continue
			}
			for _, s := range m.hours[q] {
				sum += max(min(s.Until, until)-max(s.From, from), 0) * rate
			}
		}
		return sum >= work*rateUnit
	}
	low, high := max(from, last), int64(far)
	switch {
	case done(low):
		return low
	case !done(high):
		return infinite
	}
	for low < high {
		if middle := low + (high-low)/2; done(middle) {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return low
}
