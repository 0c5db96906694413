package process

import (
	"slices"
	"strconv"

	"bodkin/process/order"
)

// Begun is work that has been begun: what of a plan is done, and how it left
// the room.
type Begun struct {
	Done []string           `json:"done"` // operation ids, in the order they were done
	Also []string           `json:"also"` // those of Done that were not named, but must have been done before
	At   string             `json:"at"`   // station of the last one
	Held map[string]Setting `json:"held"` // what each station was left set to

	Paper map[string]int `json:"paper"` // of each operation, the step that held it in the plan that was begun
}

// Begin takes the operations named, and all that they wait for, to be done in
// the order of the plan. Names that are no operation's id are passed over.
func (p *Plan) Begin(done []string) *Begun {
	need := map[string]bool{}
	for _, o := range slices.Backward(p.Operations) {
		if !need[o.ID] && !slices.Contains(done, o.ID) {
			continue
		}
		need[o.ID] = true
		for _, a := range o.After {
			need[a.ID] = true
		}
	}
	b := &Begun{Done: []string{}, Also: []string{}, Held: map[string]Setting{}, Paper: map[string]int{}}
	for _, s := range p.Steps {
		for _, id := range s.Operations {
			b.Paper[id] = s.Number
		}
	}
	for _, o := range p.Operations {
		if !need[o.ID] {
			continue
		}
		b.Done = append(b.Done, o.ID)
		if !slices.Contains(done, o.ID) {
			b.Also = append(b.Also, o.ID)
		}
		b.At, b.Held[o.Station] = o.Station, b.Held[o.Station].after(o.Setting)
	}
	return b
}

// after is the setting that a station is left with: what the operation set, and
// of the rest what was set before.
func (s Setting) after(t Setting) Setting {
	keep := func(old, new string) string {
		if new == "" {
			return old
		}
		return new
	}
	s.Thread, s.Bobbin, s.Loopers = keep(s.Thread, t.Thread), keep(s.Bobbin, t.Bobbin), keep(s.Loopers, t.Loopers)
	s.Needle, s.Foot = keep(s.Needle, t.Needle), keep(s.Foot, t.Foot)
	if t.Stitch != "" {
		s.Stitch, s.StitchMM = t.Stitch, t.StitchMM
	}
	if t.HeatDots > 0 {
		s.HeatDots, s.Steam = t.HeatDots, t.Steam
	}
	return s
}

// resume leaves out what is done, and finds the stations as they were left.
func (o *operator) resume(b *Begun) {
	if b == nil {
		return
	}
	for k := range o.room.stations {
		st := &o.room.stations[k]
		st.tried = slices.Contains(b.Done, scrapTest+"."+st.Name)
	}
	at := make([]int, len(o.ops)) // where each operation goes, -1 where it is done
	var left []op
	for i, n := range o.ops {
		at[i] = -1
		if !slices.Contains(b.Done, n.ID) && !o.triedElsewhere(n) {
			at[i] = len(left)
			left = append(left, n)
		}
	}
	for i := range left {
		var after []need
		for _, n := range left[i].after {
			if at[n.op] >= 0 {
				n.op = at[n.op]
				after = append(after, n)
			}
		}
		left[i].after = after
	}
	for l, span := range o.span {
		var kept []int
		for _, i := range span {
			if at[i] >= 0 {
				kept = append(kept, at[i])
			}
		}
		o.span[l] = kept
	}
	o.ops = left
	for k := range o.wishes {
		o.wishes[k].pairs = moved(o.wishes[k].pairs, at)
	}
	o.room.begin = o.room.at(b.At)
	for k := range o.room.stations {
		st := &o.room.stations[k]
		st.held = st.held.after(b.Held[st.Name])
	}
}

// moved are the pairs of a wish by where their operations have gone; those of which
// one is left out, at -1, are too.
func moved(pairs []order.Wish, at []int) []order.Wish {
	var out []order.Wish
	for _, x := range pairs {
		if x.First, x.Then = at[x.First], at[x.Then]; x.First >= 0 && x.Then >= 0 {
			out = append(out, x)
		}
	}
	return out
}

// triedElsewhere reports whether the operation is the trial of a kind of machine
// of which another one has been tried.
func (o *operator) triedElsewhere(n op) bool {
	if !n.trial() {
		return false
	}
	for k, st := range o.room.stations {
		if st.tried && o.room.first(k) == o.room.first(n.station) {
			return true
		}
	}
	return false
}

// paperSteps are the steps of the plan that was begun that held the operations,
// rising; empty where the plan begun had none of them.
func (b *Begun) paperSteps(ids []string) []int {
	out := []int{}
	for _, id := range ids {
		if n, ok := b.Paper[id]; ok && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	slices.Sort(out)
	return out
}

// formerly says which steps those were, for the end of a step's title.
func formerly(steps []int) string {
	if len(steps) == 0 {
		return ""
	}
	words := make([]string, len(steps))
	for k, n := range steps {
		words[k] = strconv.Itoa(n)
	}
	if len(words) == 1 {
		return " (was step " + words[0] + ")"
	}
	return " (was steps " + listWords(words, "and") + ")"
}
