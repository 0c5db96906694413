package process

import (
	"fmt"
	"slices"
	"strings"
)

// Forced tells how often something has to be changed in any order of the work,
// and why.
type Forced struct {
	Station string        `json:"station"` // empty where What is move
	What    string        `json:"what"`    // thread, bobbin, loopers, needle, foot, heat, move
	With    []string      `json:"with"`    // what is changed along with it every time, as the bobbin with the thread
	Made    int           `json:"made"`    // changes in this order
	Least   int           `json:"least"`   // no order has fewer
	Values  []string      `json:"values"`  // what it is set to in turn along the chain, or all that is wanted
	Chain   []Alternation `json:"chain"`   // operations that wait for one another, each with another value than the one before
	Because string        `json:"because"`
}

// Alternation is an operation of a chain, with the setting that it needs and why it
// waits for the one before it.
type Alternation struct {
	Operation string   `json:"operation"`
	Value     string   `json:"value"`
	Because   []Reason `json:"because"`
}

// want is what an operation wants set: an index into a list of values.
type want struct{ op, value int }

// forced finds, for every setting that this order changes, how many changes no
// order can avoid. Two things force a change: each value that is wanted has to
// be set once, and operations that wait for one another and want different
// values in turn, as when a navy seam lies between two in green. It takes time
// in the square of the operations.
func (o *operator) forced(plan *Plan, a *arrangement) []Forced {
	waits := o.waiting(a.sequence)
	out := []Forced{}
	for k, st := range o.room.stations {
		if like := o.room.weighed(o.room.first(k)); len(like) > 1 {
			if like[0] == k {
				out = append(out, o.forcedAmong(plan, a, like)...)
			}
			continue
		}
		for _, at := range a.attributes[k] {
			if at.what == "stitch" {
				continue // a turn of a dial
			}
			f := Forced{Station: st.Name, What: at.what}
			for _, c := range plan.Changes {
				if c.Station == st.Name && c.What == at.what && c.From != "" {
					f.Made++
				}
			}
			if f.Made == 0 {
				continue
			}
			var wants []want
			for _, i := range a.sequence {
				if v := o.ops[i].Setting.value(at.what); o.ops[i].station == k && v != "" && !o.ops[i].trial() {
					wants = append(wants, want{i, at.index[v]})
				}
			}
			held := -1
			if v := st.held.value(at.what); v != "" {
				held = at.index[v]
			}
			o.least(&f, wants, held, waits, func(v int) string { return inWords(at.what, at.values[v]) }, func(v, w int) bool { return v != w })
			out = alongside(out, f)
		}
	}
	if plan.Totals.StationMoves > 0 {
		out = append(out, o.forcedMoves(plan, a, waits))
	}
	return out
}

// forcedAmong is the same of several machines of one kind, of which any might do
// any of the work: each value that none of them holds has to be set, and only so
// many as are not set up yet take one for the first time.
func (o *operator) forcedAmong(plan *Plan, a *arrangement, like []int) []Forced {
	var out []Forced
	for _, what := range attributeNames("machine") {
		if what == "stitch" {
			continue
		}
		f := Forced{Station: o.room.stations[like[0]].Name, What: what, Values: []string{}, Chain: []Alternation{}}
		unset := 0
		var held, wanted []string
		for _, k := range like {
			st := o.room.stations[k]
			for _, c := range plan.Changes {
				if c.Station == st.Name && c.What == what && c.From != "" {
					f.Made++
				}
			}
			if v := st.held.value(what); v == "" {
				unset++
			} else {
				held = append(held, v)
			}
		}
		for _, i := range a.sequence {
			n := o.ops[i]
			v := n.Setting.value(what)
			if slices.Contains(like, n.station) && v != "" && n.Does != scrapTest && !slices.Contains(held, v) && !slices.Contains(wanted, v) {
				wanted = append(wanted, v)
			}
		}
		if f.Made == 0 {
			continue
		}
		f.Least = max(len(wanted)-unset, 0)
		f.Values = append(f.Values, wanted...)
		f.Because = fmt.Sprintf("%s share the work, and between them hold all that is wanted", countWords(len(like), "machine", "machines"))
		if len(wanted) > 0 {
			f.Because = fmt.Sprintf("%s share the work, and of what is wanted they do not hold %s at first",
				countWords(len(like), "machine", "machines"), listWords(wanted, "and"))
		}
		if f.Made > f.Least {
			f.Because += fmt.Sprintf("; this order makes %d more, because avoiding it would cost more elsewhere", f.Made-f.Least)
		}
		out = alongside(out, f)
	}
	return out
}

// alongside adds what is changed to a list, or, where it is a thread that is
// changed along with the one before, to that.
func alongside(out []Forced, f Forced) []Forced {
	f.With = []string{}
	if k := len(out) - 1; k >= 0 {
		g := &out[k]
		if threaded(f.What) && threaded(g.What) && f.Station == g.Station && f.Made == g.Made && f.Least == g.Least && f.Because == g.Because {
			g.With = append(g.With, f.What)
			return out
		}
	}
	return append(out, f)
}

// inWords is a value as it is spoken of: heat is a number of dots.
func inWords(what, value string) string {
	switch {
	case what != "heat":
		return value
	case value == "1":
		return "heat of 1 dot"
	}
	return "heat of " + value + " dots"
}

// forcedMoves is the same of going from place to place.
func (o *operator) forcedMoves(plan *Plan, a *arrangement, waits [][]bool) Forced {
	f := Forced{What: "move", With: []string{}, Made: plan.Totals.StationMoves}
	moves := o.moves()
	var wants []want
	for _, i := range a.sequence {
		wants = append(wants, want{i, o.room.first(o.ops[i].station)})
	}
	begin := o.room.begin
	if begin >= 0 {
		begin = o.room.first(begin)
	}
	o.least(&f, wants, begin, waits, func(v int) string { return o.room.stations[v].Name },
		func(v, w int) bool { return v != w && moves[v][w] > 0 })
	return f
}

// least fills in how many changes are forced, and why. The wants come in an
// order that respects what waits for what.
func (o *operator) least(f *Forced, wants []want, held int, waits [][]bool, name func(int) string, differs func(v, w int) bool) {
	turns := make([]int, len(wants)) // most changes along a chain that ends here
	from := make([]int, len(wants))
	end := 0
	for i, w := range wants {
		from[i] = -1
		if held >= 0 && differs(held, w.value) {
			turns[i] = 1
		}
		for j, v := range wants[:i] {
			if !waits[w.op][v.op] {
				continue
			}
			n := turns[j]
			if differs(v.value, w.value) {
				n++
			}
			if n > turns[i] {
				turns[i], from[i] = n, j
			}
		}
		if turns[i] > turns[end] {
			end = i
		}
	}
	var wanted []int
	for _, w := range wants {
		if w.value != held && !slices.Contains(wanted, w.value) {
			wanted = append(wanted, w.value)
		}
	}
	each := len(wanted)
	if held < 0 {
		each--
	}
	f.Values, f.Chain = []string{}, []Alternation{}
	if f.What == "move" {
		f.Least = turns[end] // places that need no getting up between them are no moves
	} else {
		f.Least = max(each, turns[end])
	}
	if f.Least > each || f.What == "move" {
		o.alternate(f, wants, from, end, name, differs)
	} else {
		for _, v := range wanted {
			f.Values = append(f.Values, name(v))
		}
	}
	f.Because = o.whyForced(f)
}

// alternate writes down the chain, of operations with the same value in a row
// only the last before the next value comes.
func (o *operator) alternate(f *Forced, wants []want, from []int, end int, name func(int) string, differs func(v, w int) bool) {
	var chain []want
	for i := end; i >= 0; i = from[i] {
		if k := len(chain); k > 0 && !differs(chain[k-1].value, wants[i].value) {
			continue
		}
		chain = append(chain, wants[i])
	}
	slices.Reverse(chain)
	for k, w := range chain {
		t := Alternation{Operation: o.ops[w.op].ID, Value: name(w.value), Because: []Reason{}}
		if k > 0 {
			t.Because = o.chain(w.op, chain[k-1].op)
		}
		f.Chain, f.Values = append(f.Chain, t), append(f.Values, t.Value)
	}
}

// whyForced says in words what forces the changes.
func (o *operator) whyForced(f *Forced) string {
	if f.What == "move" {
		return fmt.Sprintf("the work itself goes to and fro: %s wait for one another, each at another place than the one before", countWords(len(f.Chain), "operation", "operations"))
	}
	var text string
	if len(f.Chain) == 0 {
		text = "each of them is wanted, and has to be set once: " + listWords(f.Values, "and")
		if len(f.Values) == 1 {
			text = f.Values[0] + " is wanted, and the machine holds another"
		}
	} else {
		var parts []string
		for k, t := range f.Chain {
			part := "the " + o.partOf(t.Operation) + " (" + t.Operation + ") wants " + t.Value
			if k > 0 {
				part = "then " + part + whyThen(t.Because)
			}
			parts = append(parts, part)
		}
		text = strings.Join(parts, "; ")
	}
	if f.Made > f.Least {
		text += fmt.Sprintf("; this order makes %d more, because avoiding it would cost more elsewhere", f.Made-f.Least)
	}
	return text
}

// whyThen gives the first reason that is worth telling.
func whyThen(because []Reason) string {
	for _, r := range because {
		if r.Because != nextPass {
			return ", because " + r.Because
		}
	}
	return ""
}

func (o *operator) partOf(id string) string {
	n := o.byID(id)
	part := strings.TrimPrefix(n.Part, "the ")
	if n.line >= 0 {
		part = o.lines[n.line].title
	}
	return o.labelled(part, n.Garment)
}

// waiting tells of any two operations whether the one, directly or not, waits
// for the other: waiting[then][first].
func (o *operator) waiting(sequence []int) [][]bool {
	out := make([][]bool, len(o.ops))
	for _, i := range sequence {
		out[i] = make([]bool, len(o.ops))
		for _, n := range o.ops[i].after {
			out[i][n.op] = true
			for k, w := range out[n.op] {
				out[i][k] = out[i][k] || w
			}
		}
	}
	return out
}
