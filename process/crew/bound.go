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
// chapter 3). O(sets × tasks²).
func (m *model) lower() int64 {
	var low int64
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
		low = max(low, busiest(jobs, 0, func(int64, int64) (int64, int64) { return c, 1 }))
	}
	for k, machines := range m.machines {
		var jobs []job
		for i := range m.n {
			if m.kind[i] == k {
				jobs = append(jobs, m.job(i, m.least[i]))
			}
		}
		c := int64(len(machines))
		low = max(low, busiest(jobs, m.setting0(k)-m.paid[k], func(int64, int64) (int64, int64) { return c, 1 }))
	}
	for _, set := range m.crowds() {
		low = max(low, m.crowdBound(set))
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

// busiest is the latest end forced by the work of jobs whose heads and rests
// are at least some values: head + work / rate + rest. extra is work that must
// be done besides, at any time. rate gives a fraction.
func busiest(jobs []job, extra int64, rate func(head, rest int64) (int64, int64)) int64 {
	if len(jobs) == 0 {
		return 0
	}
	byRest := slices.Clone(jobs)
	slices.SortFunc(byRest, func(a, b job) int { return cmp.Compare(b.rest, a.rest) })
	heads := make([]int64, 0, len(jobs))
	for _, j := range jobs {
		heads = append(heads, j.head)
	}
	slices.Sort(heads)
	heads = slices.Compact(heads)
	var low int64
	for k, h := range heads {
		var work int64
		for x, j := range byRest {
			if j.head < h {
				continue
			}
			work += j.work
			if x+1 < len(byRest) && byRest[x+1].rest == j.rest {
				continue
			}
			all := work
			if k == 0 && x == len(byRest)-1 {
				all += extra
			}
			if a, b := rate(h, j.rest); all > 0 && a > 0 {
				low = max(low, h+(all*b+a-1)/a+j.rest)
			}
		}
	}
	return low
}

// setting0 is time that the machines of a kind must be set up for in all: each
// value that a task wants and no machine has at the beginning is set once at
// least.
func (m *model) setting0(kind int) int64 {
	var sum int64
	for a, at := range m.kinds[kind].Attributes {
		wanted := make([]bool, len(at.Change))
		for i := range m.n {
			if m.kind[i] == kind && m.setting[i] != nil && m.setting[i][a] != Any {
				wanted[m.setting[i][a]] = true
			}
		}
		for v, w := range wanted {
			if w {
				sum += m.setOnce(kind, a, v)
			}
		}
	}
	return sum
}

// setOnce is the least time that setting a value for the first time takes: none
// where a machine has it at the beginning.
func (m *model) setOnce(kind, a, v int) int64 {
	at := m.kinds[kind].Attributes[a]
	least := int64(infinite)
	for _, q := range m.machines[kind] {
		switch m.start[q][a] {
		case v:
			return 0
		case Unset:
			first := int64(0)
			if at.First != nil {
				first = at.First[v]
			}
			least = min(least, first)
		}
	}
	for u := range at.Change {
		if u != v {
			least = min(least, at.Change[u][v])
		}
	}
	if least >= infinite {
		return 0
	}
	return least
}

// pay lengthens the least time of tasks that must set a value for the first
// time: those that come before all others that want it.
func (m *model) pay() {
	m.paid = make([]int64, len(m.kinds))
	if !m.setups {
		return
	}
	before := m.reach()
	for kind := range m.kinds {
		for a, at := range m.kinds[kind].Attributes {
			for v := range at.Change {
				first := None
				for i := range m.n {
					if m.kind[i] != kind || m.setting[i] == nil || m.setting[i][a] != v {
						continue
					}
					switch {
					case first == None || before[i][first]:
						first = i
					case !before[first][i]:
						first = -2 // two that may come first
					}
					if first == -2 {
						break
					}
				}
				if first >= 0 {
					t := m.setOnce(kind, a, v)
					m.least[first] += t
					m.paid[kind] += t
				}
			}
		}
	}
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
// it is shared, counted in time at pace 100.
func (m *model) crowdBound(set uint64) int64 {
	var jobs []job
	extra := int64(0)
	inside := make([]bool, len(m.kinds)) // kinds whose machines only they set up
	for k := range inside {
		inside[k] = true
	}
	for i := range m.n {
		fewest := 64
		for _, t := range m.teams[i] {
			fewest = min(fewest, bits.OnesCount64(t.mask&set))
		}
		if m.kind[i] != None && fewest == 0 {
			inside[m.kind[i]] = false
		}
		if fewest > 0 {
			jobs = append(jobs, m.job(i, m.time[i]*int64(fewest)))
		}
	}
	var slowest, rate int64 // work in a unit of time, times rateUnit
	for left := set; left != 0; left &= left - 1 {
		pace := m.pace[bits.TrailingZeros64(left)]
		slowest = max(slowest, pace)
		rate += (rateUnit*100 + pace - 1) / pace
	}
	for k := range m.kinds {
		if inside[k] {
			extra += m.setting0(k) * 100 / slowest
		}
	}
	low := busiest(jobs, extra, func(int64, int64) (int64, int64) { return rate, rateUnit })
	if !m.timed || len(jobs) == 0 {
		return low
	}
	// With hours: everybody's hours must hold all of the work.
	var work, rest, head int64 = extra, infinite, infinite
	for _, j := range jobs {
		work += j.work
		rest, head = min(rest, j.rest), min(head, j.head)
	}
	return max(low, m.enough(set, head, work)+rest)
}

// enough is the first time by which the people have hours for so much work
// from a time on, infinite if never.
func (m *model) enough(set uint64, from, work int64) int64 {
	if work == 0 {
		return from
	}
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
	if !done(far) {
		return infinite
	}
	low, high := from, int64(far)
	for low < high {
		if middle := low + (high-low)/2; done(middle) {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return low
}
