package process

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"bodkin/process/crew/balance"
)

// A seating knows what a table's work takes in whose hands.
type seating struct {
	o      *operator
	l      balance.Line
	ops    []int
	people []RoomPerson // the quickest first
	asked  [][]Asked    // by task
	attrs  [][]attribute
}

// mostSeated is among how many people, the quickest, seats are weighed.
const mostSeated = 12

func (o *operator) seating(people []RoomPerson, l balance.Line, ops []int) *seating {
	y := &seating{o: o, l: l, ops: ops, people: slices.Clone(people)}
	slices.SortStableFunc(y.people, func(a, b RoomPerson) int {
		x, _ := a.pace()
		z, _ := b.pace()
		return cmp.Compare(x, z)
	})
	rules := skillEntries()
	for _, i := range ops {
		y.asked = append(y.asked, o.difficulty(rules, &o.ops[i]))
	}
	_, y.attrs = o.problem()
	return y
}

// quickest is the pace of the quickest person; 1 where nobody is named.
func (y *seating) quickest() float64 {
	if len(y.people) == 0 {
		return 1
	}
	v, _ := y.people[0].pace()
	return v
}

// bound is a cycle in ticks that no row of k beats: that of the plan's pace at
// the pace of the quickest, and all the work shared among the k quickest.
func (y *seating) bound(low, work int64, k int) int64 {
	if k > len(y.people) {
		return low
	}
	rate := 0.0
	for _, q := range y.people[:k] {
		v, _ := q.pace()
		rate += 1 / v
	}
	return max(int64(math.Ceil(float64(low)*y.quickest()-1e-6)), int64(math.Ceil(float64(work)/rate-1e-6)))
}

// setups are the ticks that setting up costs each garment at a table that has
// one machine of each kind: from each row to the next, and at the end back to
// what the next garment wants first.
func (y *seating) setups(tasks []int) int64 {
	var seconds int64
	for k, st := range y.o.room.stations {
		for a := range y.attrs[k] {
			at := &y.attrs[k][a]
			var wants []int
			for _, t := range tasks {
				n := &y.o.ops[y.ops[t]]
				if v := n.Setting.value(at.what); n.station == k && v != "" {
					wants = append(wants, at.index[v])
				}
			}
			costs := at.costs(st)
			for i, v := range wants {
				if next := wants[(i+1)%len(wants)]; next != v {
					seconds += costs.Change[v][next]
				}
			}
		}
	}
	return ticks(float64(seconds) / 60)
}

// takes is what a table takes in ticks at a pace; setting up takes everyone the same.
func (y *seating) takes(tasks []int, pace float64) int64 {
	var sum int64
	for _, t := range tasks {
		sum += int64(math.Ceil(float64(y.l.Times[t])*pace - 1e-9))
	}
	return sum + y.setups(tasks)
}

// cannot lists the tasks of a table that ask for more than a person can.
func (y *seating) cannot(tasks []int, q RoomPerson) []int {
	var out []int
	for _, t := range tasks {
		if slices.ContainsFunc(y.asked[t], func(a Asked) bool { return q.level(a.Skill) < a.Level }) {
			out = append(out, t)
		}
	}
	return out
}

// seat gives each table a person, and the ticks of the slowest table: first so
// that as little as can be is beyond the person who has it, then the slowest
// as quick as can be; -1 for all where the people are too few. It goes through
// all sets of people.
func (y *seating) seat(tables [][]int) (seats []int, cycle int64) {
	people := y.people[:min(len(y.people), mostSeated)]
	seats = slices.Repeat([]int{-1}, len(tables))
	if len(tables) > len(people) {
		for _, t := range tables {
			cycle = max(cycle, y.takes(t, 1))
		}
		return seats, cycle
	}
	type way struct {
		beyond  int
		slowest int64
		last    int // person
		ok      bool
	}
	worse := func(a, b way) bool {
		return cmp.Or(cmp.Compare(a.beyond, b.beyond), cmp.Compare(a.slowest, b.slowest)) > 0
	}
	ways := []map[int]way{{0: {ok: true}}} // by set of people who sit
	for _, t := range tables {
		next := map[int]way{}
		var took []int64
		var beyond []int
		for _, p := range people {
			pace, _ := p.pace()
			took, beyond = append(took, y.takes(t, pace)), append(beyond, len(y.cannot(t, p)))
		}
		for set := range 1 << len(people) {
			w, ok := ways[len(ways)-1][set]
			if !ok {
				continue
			}
			for q := range people {
				if set>>q&1 != 0 {
					continue
				}
				x := way{w.beyond + beyond[q], max(w.slowest, took[q]), q, true}
				if old := next[set|1<<q]; !old.ok || worse(old, x) {
					next[set|1<<q] = x
				}
			}
		}
		ways = append(ways, next)
	}
	best := -1
	for set := range 1 << len(people) {
		if w, ok := ways[len(tables)][set]; ok && (best < 0 || worse(ways[len(tables)][best], w)) {
			best = set
		}
	}
	cycle = ways[len(tables)][best].slowest
	for k := len(tables); k > 0; k-- {
		q := ways[k][best].last
		seats[k-1], best = q, best&^(1<<q)
	}
	return seats, cycle
}

// name puts people and true times into a row, and what of it is beyond them.
func (y *seating) name(row *TableRow, r balance.Row, seats []int) {
	for k, tasks := range r.Stations {
		t := &row.Tables[k]
		t.Setups = minutesFrom(y.setups(tasks))
		if seats[k] < 0 {
			t.Minutes = minutesFrom(y.takes(tasks, 1))
			continue
		}
		q := y.people[seats[k]]
		pace, _ := q.pace()
		t.Person, t.Minutes = q.Name.Value, minutesFrom(y.takes(tasks, pace))
		for _, i := range y.cannot(tasks, q) {
			row.Lacking = append(row.Lacking, fmt.Sprintf("somebody at table %d for %s", k+1, y.o.ops[y.ops[i]].ID))
		}
	}
}
