package process

import (
	"slices"
	"strconv"
	"strings"

	"bodkin/process/order"
	"bodkin/seams/form"
)

// Wished is something the order had better keep to, and what became of it. It is
// weighed against minutes of change as if not keeping it took minutes, and told
// apart from them.
type Wished struct {
	Wish    string  `json:"wish"`
	Minutes float64 `json:"minutes"` // what it is worth; of region, each time another part is taken up
	Paid    float64 `json:"paid_minutes"`
	Kept    bool    `json:"kept"`
}

// The wishes that have a name of their own, of which a job may give all but the
// first; any other is a pair, written like a
// pin.
const (
	wishPick     = "pick"     // the room's minutes for taking up another part, in every job
	wishRegion   = "region"   // stay with a seam, edge or detail while there is more to do on it
	wishSmall    = "small"    // strips and small parts are made before seams of the body
	wishDelicate = "delicate" // edges of cloth that slips or is sheer are worked after the seams
	wishFitting  = "fitting"  // the try-on comes before what does not need it
)

// wish is a wish as pairs for the solver: what it costs in seconds where the
// second comes before the first.
type wishFor struct {
	Wished
	first int // of its pairs in the problem's wishes
	pairs []order.Wish
}

// everyPick reports a wish that counts each time another part is taken up.
func (w Wished) everyPick() bool { return w.Wish == wishRegion || w.Wish == wishPick }

// wishing reads the job's wishes. What quick work is wanted for they weigh half,
// where neat work is, double: a judgement, no source.
func (o *operator) wishing(j *Job) error {
	weight := map[string]float64{quick: 0.5, "neat": 2}[o.room.favour]
	if weight == 0 {
		weight = 1
	}
	if o.room.pick > 0 {
		o.wishes = append(o.wishes, wishFor{Wished: Wished{Wish: wishPick, Minutes: o.room.pick}})
	}
	var faults form.Faults
	for _, p := range j.Wishes {
		minutes, err := strconv.ParseFloat(p.Value.Value, 64)
		if err != nil || !(minutes > 0 && minutes <= 60) {
			faults = append(faults, form.FaultAt(p.Value.At, "cannot read "+strconv.Quote(p.Value.Value)+" as what a wish is worth", "",
				"write minutes, such as 0.5 or 2: so much change of thread and place it may cost"))
			continue
		}
		w := wishFor{Wished: Wished{Wish: p.Key.Value, Minutes: minutes * weight}}
		switch p.Key.Value {
		case wishRegion:
		case wishSmall:
			w.pairs = o.each(o.smallParts(), o.bodySeams())
		case wishDelicate:
			w.pairs = o.each(o.bodySeams(), o.delicateEdges())
		case wishFitting:
			w.pairs = o.each(o.tryOns(), o.lineStarts())
		default:
			first, then, fault := o.readPin(p.Key)
			if fault != nil {
				if !strings.Contains(p.Key.Value, " ") {
					names := []string{wishRegion, wishSmall, wishDelicate, wishFitting}
					*fault = form.FaultAt(p.Key.At, "no wish "+strconv.Quote(p.Key.Value), form.Nearest(p.Key.Value, names),
						"the wishes are "+listWords(names, "and")+", and pairs such as: shoulder before neck")
				}
				faults = append(faults, *fault)
				continue
			}
			w.pairs = o.each(first[len(first)-1:], then[:1])
		}
		o.wishes = append(o.wishes, w)
	}
	return faults.Err()
}

// each pairs every first with every then, where the garment leaves both ways open.
func (o *operator) each(firsts, thens []int) []order.Wish {
	var out []order.Wish
	for _, a := range firsts {
		for _, b := range thens {
			if a != b && !o.reaches(a, b) && !o.reaches(b, a) {
				out = append(out, order.Wish{First: a, Then: b})
			}
		}
	}
	return out
}

// lineStarts are the first operations of every line; bodySeams the first
// stitches of those that join pieces of the body.
func (o *operator) lineStarts() []int {
	var out []int
	for _, span := range o.span {
		if len(span) > 0 {
			out = append(out, span[0])
		}
	}
	return out
}

func (o *operator) bodySeams() []int {
	var out []int
	for i, l := range o.lines {
		if l.work == joining && len(l.own) == 0 && len(o.span[i]) > 0 {
			out = append(out, o.span[i][len(o.span[i])-1])
		}
	}
	return out
}

// smallParts are the last operations on strips by themselves, and the first on
// parts that are made apart, such as a collar or a pocket.
func (o *operator) smallParts() []int {
	var out []int
	for i, l := range o.lines {
		last := -1
		for _, k := range o.span[i] {
			if o.ops[k].strip {
				last = k
			}
		}
		switch {
		case last >= 0:
			out = append(out, last)
		case len(l.own) > 0 && len(o.span[i]) > 0:
			out = append(out, o.span[i][0])
		}
	}
	return out
}

// delicateEdges are the first operations on free edges of cloth that slips away
// or is sheer.
func (o *operator) delicateEdges() []int {
	var out []int
	for i, l := range o.lines {
		if l.work == treating && l.kind != "staystitch" && len(o.span[i]) > 0 && (l.cloth.Slip >= 2 || l.cloth.Sheerness >= 2) {
			out = append(out, o.span[i][0])
		}
	}
	return out
}

func (o *operator) tryOns() []int {
	k := slices.IndexFunc(o.ops, func(n op) bool { return n.ID == trying })
	if k < 0 {
		return nil
	}
	return []int{k}
}

// addWishes puts the wishes into a problem. A wish of many pairs is shared among
// them, so that unkept throughout it costs what it is worth.
func (o *operator) addWishes(p *order.Problem) {
	for k := range o.wishes {
		w := &o.wishes[k]
		if w.everyPick() {
			p.Pick += secondsIn(w.Minutes)
		}
		w.first = len(p.Wishes)
		for _, x := range w.pairs {
			x.Cost = max(secondsIn(w.Minutes/float64(len(w.pairs))), 1)
			p.Wishes = append(p.Wishes, x)
		}
	}
}

// tellWishes says what became of each wish in a priced order.
func (o *operator) tellWishes(cost order.Breakdown) []Wished {
	out := []Wished{}
	for _, w := range o.wishes {
		t := w.Wished
		t.Kept = true
		if w.everyPick() {
			times := 0
			for _, s := range cost.Steps {
				if s.Pick > 0 {
					times++
				}
			}
			t.Paid, t.Kept = float64(times)*w.Minutes, times == 0
		}
		unkept := 0
		for _, k := range cost.Wishes {
			if k >= w.first && k < w.first+len(w.pairs) {
				unkept++
			}
		}
		if unkept > 0 {
			t.Kept = false
			t.Paid = float64(unkept) * float64(max(secondsIn(w.Minutes/float64(len(w.pairs))), 1)) / 60
		}
		out = append(out, t)
	}
	return out
}

// wishSeconds is what the wishes cost in a priced order.
func wishSeconds(cost order.Breakdown) int64 { return cost.Picks + cost.Unkept }
