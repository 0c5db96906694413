package process

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bodkin/seams/form"
)

// pin makes the operations wait as the job's own order asks. What its order
// names is kept to as far as the garment allows, and what cannot be kept is told
// with its reasons; a pin that cannot be kept is a fault, because she asked for
// just that. It is nil where the job asks for nothing.
func (o *operator) pin(j *Job) (*OwnOrder, error) {
	if len(j.Order) == 0 && len(j.Pins) == 0 {
		return nil, nil
	}
	own := &OwnOrder{Order: []string{}, Pins: []string{}, Refused: []Refused{}}
	var faults form.Faults
	for _, t := range j.Pins {
		first, then, err := o.readPin(t)
		if err != nil {
			faults = append(faults, *err)
			continue
		}
		if chain := o.putBefore(first, then, "you pinned “"+t.Value+"”"); chain != nil {
			faults = append(faults, form.FaultAt(t.At, fmt.Sprintf("the pin %q cannot be kept: %s", t.Value, o.say(chain)),
				"", "let one of them go"))
		}
		own.Pins = append(own.Pins, t.Value)
	}
	var named [][]int
	for _, t := range j.Order {
		ops := o.named(t.Value)
		if ops == nil {
			faults = append(faults, o.noSuchWork(t, t.Value))
		}
		if k := slices.Index(own.Order, t.Value); k >= 0 {
			faults = append(faults, form.FaultAt(t.At, strconv.Quote(t.Value)+" stands twice in the order", "", "name it once, where it is begun"))
		}
		named, own.Order = append(named, ops), append(own.Order, t.Value)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	for then := range named {
		for first := then - 1; first >= 0; first-- {
			chain := o.putBefore(named[first], named[then], "your own order has "+own.Order[first]+" before "+own.Order[then])
			if chain != nil {
				own.Refused = append(own.Refused, Refused{First: own.Order[first], Then: own.Order[then], Because: chain})
			}
		}
	}
	slices.SortStableFunc(own.Refused, func(a, b Refused) int {
		return slices.Index(own.Order, a.First) - slices.Index(own.Order, b.First)
	})
	return own, nil
}

// readPin reads "neck before side" or "fit after side seam".
func (o *operator) readPin(t form.Text) (first, then []int, fault *form.Fault) {
	for _, word := range []string{" before ", " after "} {
		a, b, ok := strings.Cut(t.Value, word)
		if !ok {
			continue
		}
		x, y := o.named(a), o.named(b)
		for _, side := range []struct {
			ops  []int
			name string
		}{{x, a}, {y, b}} {
			if side.ops == nil {
				f := o.noSuchWork(t, side.name)
				return nil, nil, &f
			}
		}
		if slices.Equal(x, y) {
			f := form.FaultAt(t.At, fmt.Sprintf("the pin %q puts one thing before itself", t.Value), "", "name two different ones")
			return nil, nil, &f
		}
		if word == " after " {
			x, y = y, x
		}
		return x, y, nil
	}
	f := form.FaultAt(t.At, fmt.Sprintf("cannot read the pin %q", t.Value), "",
		"write which comes first, such as: shoulder before neck, or: fit after side")
	return nil, nil, &f
}

// named are the operations that a name of the maker's stands for: a seam, edge
// or detail by its name or title, an operation, or work on the whole garment;
// nil where it is none of them.
func (o *operator) named(name string) []int {
	name = plainName(name)
	if slices.Contains([]string{"fit", "fitting"}, name) {
		name = trying
	}
	byName := slices.IndexFunc(o.lines, func(l *line) bool { return l.name == name })
	if byName < 0 { // an edge's staystitching has the edge's own title
		byName = slices.IndexFunc(o.lines, func(l *line) bool {
			return l.kind != "staystitch" && (plainName(l.title) == name || plainName(plural(l.title)) == name)
		})
	}
	if byName >= 0 {
		return o.span[byName]
	}
	var out []int
	for i, n := range o.ops {
		if before, _, _ := strings.Cut(n.ID, "."); n.ID == name || before == name {
			out = append(out, i)
		}
	}
	return out
}

// plainName is a name without the words that go with it in a sentence.
func plainName(s string) string {
	s = strings.ToLower(strings.Join(strings.Fields(s), " "))
	for _, w := range []string{"the ", "both "} {
		s = strings.TrimPrefix(s, w)
	}
	return s
}

func (o *operator) noSuchWork(t form.Text, name string) form.Fault {
	known := o.workNames()
	return form.FaultAt(t.At, "this garment has no seam, edge or operation "+strconv.Quote(strings.TrimSpace(name)),
		form.Nearest(plainName(name), known), "it has "+listWords(known, "and"))
}

// workNames are the names that a job may use for its order.
func (o *operator) workNames() []string {
	var out []string
	for i, l := range o.lines {
		if len(o.span[i]) > 0 {
			out = append(out, l.name)
		}
	}
	if slices.ContainsFunc(o.ops, func(n op) bool { return n.ID == trying }) {
		out = append(out, "fit")
	}
	return out
}

// putBefore makes the work of then wait for that of first. The finishing of a
// flat-worked edge comes later by its nature and does not count for first, and a
// strip may be got ready at any time. Where that cannot be, nothing is changed
// and the chain of reasons is returned for which it is the other way round.
func (o *operator) putBefore(first, then []int, because string) []Reason {
	ends, begins := o.ends(first), o.begins(then)
	for _, x := range ends {
		for _, y := range begins {
			if o.reaches(x, y) {
				return o.chain(x, y)
			}
		}
	}
	for _, x := range ends {
		for _, y := range begins {
			o.ask(y, x, because)
		}
	}
	return nil
}

// ask is need, for what the maker wants and the garment does not.
func (o *operator) ask(then, first int, because string) {
	if then != first && !o.reaches(then, first) {
		o.ops[then].after = append(o.ops[then].after, need{op: first, because: because, asked: true})
	}
}

// ends are the operations with which the work is done.
func (o *operator) ends(ops []int) []int {
	var out []int
	for _, i := range ops {
		if o.ops[i].closing && len(ops) > 1 {
			continue
		}
		if k := len(out); k > 0 && o.ops[i].line >= 0 && o.ops[out[k-1]].line == o.ops[i].line {
			out[k-1] = i
		} else {
			out = append(out, i)
		}
	}
	return out
}

// begins are the operations with which the work is begun.
func (o *operator) begins(ops []int) []int {
	var out []int
	for _, i := range ops {
		if o.ops[i].strip && o.ops[i].line >= 0 && len(ops) > 1 {
			continue
		}
		if k := len(out); k > 0 && o.ops[i].line >= 0 && o.ops[out[k-1]].line == o.ops[i].line {
			continue
		}
		out = append(out, i)
	}
	return out
}

// chain is the shortest chain of reasons for which then waits for first.
func (o *operator) chain(then, first int) []Reason {
	from := map[int]need{} // by operation: which one led to it, and why
	queue := []int{then}
	for len(queue) > 0 && queue[0] != first {
		i := queue[0]
		queue = queue[1:]
		for _, n := range o.ops[i].after {
			if _, seen := from[n.op]; !seen && n.op != then {
				from[n.op] = need{op: i, because: n.because}
				queue = append(queue, n.op)
			}
		}
	}
	var out []Reason
	for i := first; i != then; i = from[i].op {
		if from[i].because != nextPass {
			out = append(out, Reason{Then: o.ops[from[i].op].ID, First: o.ops[i].ID, Because: from[i].because})
		}
	}
	if len(out) == 0 {
		out = append(out, Reason{Then: o.ops[then].ID, First: o.ops[first].ID, Because: "it is a later pass of the same construction"})
	}
	slices.Reverse(out)
	return out
}

// say tells a chain of reasons in one sentence.
func (o *operator) say(chain []Reason) string {
	var out []string
	for _, r := range chain {
		out = append(out, fmt.Sprintf("%s waits for %s because %s", r.Then, r.First, r.Because))
	}
	return strings.Join(out, "; ")
}

// hurry makes everything wait for the operations wanted, except what they wait
// for themselves.
func (o *operator) hurry(wanted []string) {
	var want []int
	for i, n := range o.ops {
		if slices.Contains(wanted, n.ID) {
			want = append(want, i)
		}
	}
	for i := range o.ops {
		if slices.ContainsFunc(want, func(w int) bool { return o.reaches(w, i) }) {
			continue
		}
		for _, w := range want {
			o.ask(i, w, "it is wanted first")
		}
	}
}
