package process

import (
	"slices"

	"bodkin/process/order"
)

// Two machines of one kind need not be threaded alike: which of them does what
// is settled with the order. An operation that could be done at any of several
// carries the first of them until then.

// mostTwins is how many machines of one kind are weighed against one another
// where nothing tells them apart: a third and fourth seldom save a change, and
// each makes the search longer.
const mostTwins = 3

// inUse is the value of the attribute that a machine is used at all.
const inUse = 0

// fine is how many units a second is divided into where machines are weighed
// against one another: each rethreading counts one more, so that of orders that
// take as long the one that rethreads less is taken.
const fine = 1000

// kindred are the kinds of machine of which several are weighed, and that have
// work: the stations of each, the first of which is where its operations stand
// until all is settled.
func (o *operator) kindred() [][]int {
	var out [][]int
	for k := range o.room.stations {
		used := slices.ContainsFunc(o.ops, func(n op) bool { return n.station == k })
		if like := o.room.weighed(k); used && len(like) > 1 && like[0] == k {
			out = append(out, like)
		}
	}
	return out
}

// first is the first station of the same kind of machine.
func (r *room) first(k int) int {
	if r.stations[k].Kind != "machine" {
		return k
	}
	return slices.IndexFunc(r.stations, func(s station) bool { return s.Machine == r.stations[k].Machine })
}

// weighed are the stations of the same kind as the first one of it: of those that
// nothing tells apart no more than [mostTwins].
func (r *room) weighed(first int) []int {
	var out []int
	for k, st := range r.stations {
		if r.first(k) != first || st.Kind != "machine" {
			continue
		}
		alike := 0
		for _, j := range out {
			if r.stations[j].held == st.held && r.stations[j].leave == st.leave && r.stations[j].tried == st.tried {
				alike++
			}
		}
		if alike < mostTwins {
			out = append(out, k)
		}
	}
	return out
}

// spread lets the operations of a problem be done at any machine of their kind,
// and returns the units that a second then has. A colour that a machine is to be
// left with is the end of its station; where an idle machine would have to be
// rethreaded for it, the first row there pays that besides, so that it makes no
// difference.
func (o *operator) spread(p *order.Problem, attrs [][]attribute, kinds [][]int) int64 {
	if len(kinds) == 0 {
		return 1
	}
	for _, kind := range kinds {
		o.spreadKind(p, attrs, kind)
	}
	finely := func(rows [][]int64) {
		for _, row := range rows {
			for i := range row {
				row[i] *= fine
			}
		}
	}
	finely(p.Moves)
	p.Pick *= fine
	for k := range p.Wishes {
		p.Wishes[k].Cost *= fine
	}
	for k, st := range p.Stations {
		for a, at := range st.Attributes {
			finely(at.Change)
			finely([][]int64{at.First})
			if a >= len(attrs[k]) || attrs[k][a].what != "thread" {
				continue
			}
			for _, row := range at.Change {
				for i := range row {
					row[i]++
				}
			}
		}
	}
	return fine
}

func (o *operator) spreadKind(p *order.Problem, attrs [][]attribute, kind []int) {
	first := kind[0]
	all := attrs[first]
	for _, k := range kind {
		for a := range all {
			for _, v := range []string{o.room.stations[k].held.value(all[a].what), o.room.stations[k].left(all[a].what)} {
				if v != "" {
					all[a].intern(v)
				}
			}
		}
	}
	for _, k := range kind {
		st := o.room.stations[k]
		var s order.Station
		idle := int64(0)
		for a := range all {
			c := all[a].costs(st)
			end := order.Any
			if v := st.left(all[a].what); v != "" {
				if end = all[a].index[v]; !st.tried {
					idle += settingCost(c, end)
				}
			}
			s.Attributes, s.End = append(s.Attributes, c), append(s.End, end)
		}
		s.Attributes = append(s.Attributes, order.Attribute{Change: order.Uniform(1, 0), First: []int64{idle}, Start: order.Unset})
		s.End = append(s.End, order.Any)
		p.Stations[k], attrs[k] = s, all
	}
	for i := range p.Operations {
		q := &p.Operations[i]
		if q.Station != first {
			continue
		}
		q.Setting = append(slices.Clone(q.Setting), inUse)
		if o.ops[i].trial() && o.interchangeable(kind) {
			continue // which of them is tried first is all one
		}
		for _, k := range kind[1:] {
			q.Or = append(q.Or, order.Way{Station: k, Setting: slices.Clone(q.Setting)})
		}
	}
}

// settingCost is what it takes to bring an attribute to a value from the start.
func settingCost(a order.Attribute, to int) int64 {
	switch {
	case a.Start == to:
		return 0
	case a.Start == order.Unset:
		return a.First[to]
	}
	return a.Change[a.Start][to]
}

// left is what the station is to be left with.
func (s station) left(what string) string {
	var end Setting
	end.carry(s.leave, s.below)
	return end.value(what)
}

// interchangeable reports whether nothing tells the machines apart.
func (o *operator) interchangeable(kind []int) bool {
	one := o.room.stations[kind[0]]
	return !slices.ContainsFunc(kind, func(k int) bool {
		st := o.room.stations[k]
		return st.held != one.held || st.leave != one.leave || st.tried != one.tried || o.room.begin == k
	})
}

// seat puts every operation at the machine that the order found for it, and adds
// what each further machine takes: its trial row right before its first, and the
// threading in which it is left right after its last. It returns the sequence
// with them.
func (o *operator) seat(r order.Result, p order.Problem, kinds [][]int) []int {
	for at, i := range r.Sequence {
		o.move(i, p.Operations[i].Way(r.Ways[at]).Station)
	}
	sequence := slices.Clone(r.Sequence)
	for _, kind := range kinds {
		test := slices.IndexFunc(o.ops, func(n op) bool {
			return n.trial() && slices.Contains(kind, n.station)
		})
		if test >= 0 {
			// Where getting up costs nothing the trial may stand at an idle machine.
			first := slices.IndexFunc(sequence, func(i int) bool { return i != test && slices.Contains(kind, o.ops[i].station) })
			if o.firstAt(sequence, o.ops[test].station, test) < 0 && first >= 0 {
				o.move(test, o.ops[sequence[first]].station)
			}
		}
		for _, k := range kind {
			first := o.firstAt(sequence, k, -1)
			if first < 0 {
				continue
			}
			if !o.room.stations[k].tried && !o.ops[sequence[first]].trial() {
				sequence = slices.Insert(sequence, first, o.tryAlso(k, sequence[first], test))
			}
			if o.room.stations[k].leave != "" {
				last := 0
				for at, i := range sequence {
					if o.ops[i].station == k {
						last = at
					}
				}
				n := o.threadToLeave(k)
				for _, i := range sequence {
					if o.ops[i].station == k && !o.waitedFor(i, k) {
						n.after = append(n.after, need{op: i, because: leaveBecause})
					}
				}
				o.ops = append(o.ops, n)
				sequence = slices.Insert(sequence, last+1, len(o.ops)-1)
			}
		}
	}
	return sequence
}

// move puts an operation at another station of its kind.
func (o *operator) move(i, k int) {
	n := &o.ops[i]
	n.station, n.Station = k, o.room.stations[k].Name
	if n.trial() {
		n.ID = scrapTest + "." + n.Station
	}
}

// firstAt is the place in the sequence of the first operation at a station other
// than one, -1 where there is none.
func (o *operator) firstAt(sequence []int, k, other int) int {
	return slices.IndexFunc(sequence, func(i int) bool { return i != other && o.ops[i].station == k })
}

// waitedFor reports whether another operation at the station waits for this one.
func (o *operator) waitedFor(i, k int) bool {
	return slices.ContainsFunc(o.ops, func(n op) bool {
		return n.station == k && slices.ContainsFunc(n.after, func(b need) bool { return b.op == i })
	})
}

// tryAlso adds the trial row of one more machine of a kind, before its first row.
// What waited for the trial at another machine waits for this one.
func (o *operator) tryAlso(k, first, test int) int {
	n := o.trialAt(k, o.ops[first])
	added := len(o.ops)
	for _, b := range o.ops[first].after {
		if o.ops[b.op].Does == "cut" {
			n.after = append(n.after, b)
		}
	}
	if test >= 0 && len(n.after) == 0 {
		n.after = slices.Clone(o.ops[test].after)
	}
	o.ops = append(o.ops, n)
	for i := range o.ops[:added] {
		if o.ops[i].station != k {
			continue
		}
		o.ops[i].after = slices.DeleteFunc(slices.Clone(o.ops[i].after), func(b need) bool {
			return b.op == test && b.because == testBecause
		})
		if !o.reaches(i, added) {
			o.need(i, added, testBecause)
		}
	}
	return added
}
