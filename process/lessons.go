package process

import "slices"

// lessons are a sequence to be cut into sessions.
type lessons struct {
	minutes [][]float64 // by student and number
	rest    []bool      // by number: the work of all can rest after it
	tidy    []bool      // by number: it can rest there pressed or finished
	home    []bool      // by number: all who need it can do it at home
	most    float64     // that a session holds
}

// lesson is a stretch of numbers sewn in a session, and one after it at home.
type lesson struct{ first, last, home int } // home is the last of the homework, or last

// tooLongError is a stretch that no session holds.
type tooLongError struct {
	first, last int
	student     int
	minutes     float64
}

func (e *tooLongError) Error() string { return "a stretch is too long for a session" }

// cut finds the fewest sessions; of equally few those with the least homework,
// then those that rest tidiest, then those that do most first. Homework is given
// only where homework is true.
func (l lessons) cut(homework bool) ([]lesson, error) {
	n := len(l.rest)
	type plan struct {
		sessions, untidy int
		homework         float64
		next             lesson
		ok               bool
	}
	best := make([]plan, n+1)
	best[n].ok = true
	for i := n - 1; i >= 0; i-- {
		sums := make([]float64, len(l.minutes))
		for j := i; j < n && l.longest(sums, j) <= l.most; j++ {
			if !l.rest[j] && j < n-1 {
				continue
			}
			taken := 0.0
			for h := j; h < n; h++ {
				if h > j {
					if !homework || !l.home[h] {
						break
					}
					taken += l.at(h)
				}
				if !l.rest[h] && h < n-1 || !best[h+1].ok {
					continue
				}
				p := plan{sessions: 1 + best[h+1].sessions, untidy: best[h+1].untidy, homework: taken + best[h+1].homework,
					next: lesson{i, j, h}, ok: true}
				if !l.tidy[j] && j < n-1 {
					p.untidy++
				}
				b := best[i]
				if !b.ok || p.sessions < b.sessions || p.sessions == b.sessions && (p.homework < b.homework ||
					p.homework == b.homework && p.untidy <= b.untidy) {
					best[i] = p
				}
			}
		}
	}
	if !best[0].ok {
		return nil, l.tooLong()
	}
	var out []lesson
	for i := 0; i < n; i = out[len(out)-1].home + 1 {
		out = append(out, best[i].next)
	}
	return out, nil
}

// longest adds number j to the students' sums and returns the greatest.
func (l lessons) longest(sums []float64, j int) float64 {
	for s := range sums {
		sums[s] += l.minutes[s][j]
	}
	return slices.Max(sums)
}

// at is what number j takes the slowest.
func (l lessons) at(j int) float64 {
	most := 0.0
	for _, m := range l.minutes {
		most = max(most, m[j])
	}
	return most
}

// tooLong finds the longest stretch without a rest.
func (l lessons) tooLong() error {
	e := &tooLongError{}
	first := 0
	for j := range l.rest {
		if !l.rest[j] && j < len(l.rest)-1 {
			continue
		}
		for s, m := range l.minutes {
			sum := 0.0
			for k := first; k <= j; k++ {
				sum += m[k]
			}
			if sum > e.minutes {
				*e = tooLongError{first, j, s, sum}
			}
		}
		first = j + 1
	}
	return e
}
