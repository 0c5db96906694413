package crew

import (
	"math"
	"math/bits"
	"slices"
)

// teamsOf returns the sets of people that can do a task, as bit masks in
// rising order: every set of just so many people that each can be given one of
// the needs. False means that there are more than [MaxTeams].
func teamsOf(p Problem, t Task) ([]uint64, bool) {
	found := map[uint64]bool{0: true}
	for _, n := range t.Needs {
		for range max(n.Count, 1) {
			next := map[uint64]bool{}
			for mask := range found {
				for q := range p.People {
					if mask>>q&1 == 0 && p.People[q].can(n) {
						next[mask|1<<q] = true
					}
				}
			}
			if found = next; len(found) > MaxTeams {
				return nil, false
			}
		}
	}
	masks := make([]uint64, 0, len(found))
	for m := range found {
		masks = append(masks, m)
	}
	slices.Sort(masks)
	return masks, true
}

// hours are spans in order; nil means always.
type hours []Span

// together are the hours in which all people of a team are there. An empty,
// not nil, value means never.
func (p Problem) together(team uint64) hours {
	var h hours
	for m := team; m != 0; m &= m - 1 {
		if own := p.People[bits.TrailingZeros64(m)].Hours; own != nil {
			h = h.and(own)
		}
	}
	return h
}

func (h hours) and(other hours) hours {
	if h == nil {
		return other
	}
	both := hours{}
	for _, a := range h {
		for _, b := range other {
			if from, until := max(a.From, b.From), min(a.Until, b.Until); from < until {
				both = append(both, Span{from, until})
			}
		}
	}
	return both
}

// fits returns the first time from t on at which something that lasts so long
// fits into the hours, and false if it never does.
func (h hours) fits(t, lasts int64) (int64, bool) {
	if h == nil {
		return t, true
	}
	for _, s := range h {
		if at := max(t, s.From); at+lasts <= s.Until {
			return at, true
		}
	}
	return math.MaxInt64, false
}
