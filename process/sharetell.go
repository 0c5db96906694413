package process

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"bodkin/process/crew"
)

// tell puts the plan of numbers into words and minutes.
func (s *sharing) tell(in Input, r crew.Result) *Share {
	o := s.o
	account, err := crew.Check(s.p, r.Places)
	if err != nil {
		panic(err) // crew's own plan
	}
	out := &Share{
		Schema: ShareSchema, Garment: in.Garment.Title, Title: in.Job.Title, Workroom: in.Workroom.Name, Begins: s.time(0),
		Finish: minutesFrom(r.Finish), Bound: minutesFrom(r.Bound), Proved: r.Proved, Fewest: r.Fewest,
		People: []Bench{}, Machines: []MachineRow{}, Handed: []HandOver{}, Extras: []Extra{}, GiveAway: []Given{}, Notices: []Notice{},
	}
	if out.Title == "" {
		out.Title = in.Garment.Title
	}
	order := make([]int, len(o.ops))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(r.Places[a].Begin, r.Places[b].Begin), cmp.Compare(r.Places[a].End, r.Places[b].End), cmp.Compare(a, b))
	})
	number := make([]int, len(o.ops))
	for k, i := range order {
		number[i] = k + 1
	}
	who := func(i int) string { return s.people[r.Places[i].People[0]].Name.Value }
	for q, person := range s.people {
		h := s.p.People[q].Hours[0]
		b := Bench{Name: person.Name.Value, From: minutesFrom(h.From), Until: minutesFrom(h.Until),
			Busy: minutesFrom(account.Busy[q]), Turns: []Turn{}}
		for _, i := range order {
			at := r.Places[i]
			if at.People[0] != q {
				continue
			}
			t := Turn{Operation: o.ops[i].Operation, Number: number[i], Asked: s.asked[i], Machine: o.room.stations[o.ops[i].station].Title,
				Begin: minutesFrom(at.Begin), Work: minutesFrom(at.Work), End: minutesFrom(at.End), From: []Passing{}, To: []Passing{}}
			t.Operation.After = []After{}
			for _, n := range o.ops[i].after {
				t.Operation.After = append(t.Operation.After, After{ID: o.ops[n.op].ID, Because: n.because})
			}
			if at.Machine != crew.None {
				t.Machine = s.places[at.Machine]
			}
			for _, w := range account.Waits {
				if w.Person == q && w.Next == i {
					b.Waiting += minutesFrom(w.Until - w.From)
					t.Wait = s.waiting(w, t.Wait, who, number)
				}
			}
			for _, h := range account.Handed {
				if h.To == i {
					t.From = append(t.From, Passing{o.ops[h.From].ID, number[h.From], who(h.From)})
				}
				if h.From == i {
					t.To = append(t.To, Passing{o.ops[h.To].ID, number[h.To], who(h.To)})
				}
			}
			b.Turns = append(b.Turns, t)
		}
		b.Waiting = minutesFrom(ticks(b.Waiting))
		out.People = append(out.People, b)
	}
	for k, title := range s.places {
		row := MachineRow{Title: title, Turns: []int{}}
		for _, i := range order {
			if r.Places[i].Machine == k {
				row.Turns = append(row.Turns, number[i])
			}
		}
		if len(row.Turns) > 0 {
			out.Machines = append(out.Machines, row)
		}
	}
	for _, h := range account.Handed {
		out.Handed = append(out.Handed, HandOver{At: minutesFrom(h.Leaves), Part: o.ops[h.To].Part, From: who(h.From), To: who(h.To),
			After: o.ops[h.From].ID, Next: o.ops[h.To].ID})
	}
	out.Notices = append(out.Notices,
		o.restNotice(),
		Notice{"minutes", "The minutes of the operations are estimates, made longer by each person's pace; they are good for sharing out, not for promising an hour."},
		Notice{"hand-overs", fmt.Sprintf("Handing a piece over is taken to need %.1f minutes, in which nobody is kept busy. Walking between places is left out.", s.handover)},
		Notice{"levels", "What an operation asks of a person is an estimate from its act, its shape and its cloth; no figure for it is published."})
	return out
}

// waiting is a wait in words; two waits before one turn, parted by hours, are
// added.
func (s *sharing) waiting(w crew.Wait, before *Waiting, who func(int) string, number []int) *Waiting {
	out := &Waiting{Minutes: minutesFrom(w.Until - w.From), Cause: "none"}
	if before != nil {
		out.Minutes += before.Minutes
	}
	switch w.Cause {
	case crew.Earlier:
		out.Cause = "earlier"
	case crew.Coming:
		out.Cause = "coming"
	case crew.Engaged:
		out.Cause = "engaged"
	}
	if w.For != crew.None {
		out.For, out.Person = s.o.ops[w.For].ID, who(w.For)
	}
	out.Meantime = "Tidy the bench and read what comes next."
	switch n := s.o.ops[w.Next]; s.o.room.stations[n.station].Kind {
	case "machine":
		if w.Cause != crew.Engaged {
			out.Meantime = "Lay out the thread, the needle and the foot for the next step; wind a bobbin."
		}
	case "iron":
		if w.Cause != crew.Engaged {
			out.Meantime = "Heat the iron to what the next step wants; lay out the press cloth."
		}
	case "hand":
		out.Meantime = "Cut and thread needles for the hand sewing."
	}
	return out
}

// extras tries what the maker alone needs, and what one more of each machine or
// one more person like each of them would change.
func (s *sharing) extras(ctx context.Context, out *Share, r crew.Result, nodes int) {
	nodes = max(nodes/asideNodes, 1)
	try := func(p crew.Problem) (float64, bool) {
		more, err := crew.Solve(ctx, p, crew.Options{Nodes: nodes, Brief: true})
		return minutesFrom(more.Finish), err == nil && more.Places != nil
	}
	alone := s.p
	alone.People = []crew.Person{s.p.People[0]}
	alone.People[0].Hours = nil
	if t, ok := try(alone); ok {
		out.Alone = t
	}
	add := func(what string, p crew.Problem) {
		if t, ok := try(p); ok {
			out.Extras = append(out.Extras, Extra{What: what, Finish: min(t, out.Finish), Saves: minutesFrom(ticks(max(out.Finish-t, 0)))})
		}
	}
	for q := range s.people {
		p := s.p
		p.People = append(slices.Clone(p.People), p.People[q])
		add("one more person like "+s.people[q].Name.Value, p)
	}
	seen := map[int]bool{}
	for k, m := range s.p.Machines {
		if seen[m.Kind] {
			continue
		}
		seen[m.Kind] = true
		p := s.p
		start := slices.Repeat([]int{crew.Unset}, len(m.Start))
		p.Machines = append(slices.Clone(p.Machines), crew.Machine{Kind: m.Kind, Start: start})
		add("one more "+lowerFirst(s.places[k]), p)
	}
}
