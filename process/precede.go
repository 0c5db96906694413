package process

import (
	"slices"
	"strings"
)

// precede gives every operation what must come before it, with the reason: the
// passes of a construction in their order, what the garment's structure asks
// for, cutting and testing first, and the fitting before the hems.
func (o *operator) precede(relations []relation) {
	for i := range o.lines {
		o.passAfterPass(o.span[i])
	}
	for _, r := range relations {
		o.relate(r)
	}
	o.fitting()
	o.dropFirst()
	o.cutFirst()
	o.layersFirst()
	o.testFirst()
	o.leaveLast()
}

func (o *operator) need(then, first int, because string) {
	if then == first || slices.ContainsFunc(o.ops[then].after, func(n need) bool { return n.op == first }) {
		return
	}
	o.ops[then].after = append(o.ops[then].after, need{op: first, because: because})
}

// nextPass is the reason that is not worth printing.
const nextPass = "it is the next pass of the same construction"

func (o *operator) passAfterPass(span []int) {
	for k := 1; k < len(span); k++ {
		o.need(span[k], span[k-1], nextPass)
	}
}

func (o *operator) relate(r relation) {
	first, then := o.span[r.first], o.span[r.then]
	if len(first) == 0 || len(then) == 0 {
		return
	}
	last := first[len(first)-1]
	if r.flatOnly {
		for _, i := range slices.Backward(first) {
			if !o.ops[i].closing {
				last = i
				break
			}
		}
		if o.ops[last].closing {
			return
		}
	}
	begin := -1
	for _, i := range then {
		if r.closingOnly {
			if o.ops[i].closing {
				begin = i
				break
			}
		} else if !o.ops[i].strip {
			begin = i
			break
		}
	}
	if begin >= 0 {
		o.need(begin, last, r.because)
	}
}

// fitting: the try-on waits for every join that no hem precedes, and hems
// worked in the round wait for it.
func (o *operator) fitting() {
	t := slices.IndexFunc(o.ops, func(n op) bool { return n.ID == trying })
	if t < 0 {
		return
	}
	var hems []int
	for i, l := range o.lines {
		if !o.lengthens(l) {
			continue
		}
		for _, k := range o.span[i] {
			if !o.ops[k].strip {
				hems = append(hems, k)
				break
			}
		}
	}
	for i, l := range o.lines {
		if l.work != joining || len(o.span[i]) == 0 {
			continue
		}
		last := o.span[i][len(o.span[i])-1]
		if !slices.ContainsFunc(hems, func(h int) bool { return o.reaches(last, h) }) {
			o.need(t, last, "the garment can be tried on once its seams are closed")
		}
	}
	for _, h := range hems {
		o.need(h, t, "the length is settled at the fitting, before the hem is turned")
	}
}

// reaches reports whether operation then waits, directly or not, for first.
func (o *operator) reaches(then, first int) bool {
	seen := make([]bool, len(o.ops))
	stack := []int{then}
	for len(stack) > 0 {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if i == first {
			return true
		}
		if seen[i] {
			continue
		}
		seen[i] = true
		for _, n := range o.ops[i].after {
			stack = append(stack, n.op)
		}
	}
	return false
}

// cutFirst: nothing is sewn before its cloth is cut. Only operations that wait
// for nothing yet need to be told.
func (o *operator) cutFirst() {
	cuts := map[string]int{}
	for i, n := range o.ops {
		if role, ok := strings.CutPrefix(n.ID, cutting+"."); ok {
			cuts[role] = i
		}
	}
	because := "the pieces are cut first"
	for i := range o.ops {
		n := &o.ops[i]
		switch {
		case strings.HasPrefix(n.ID, cutting+"."):
		case n.line < 0:
			for _, c := range o.cloths {
				if k, ok := cuts[c.role]; ok && !o.reaches(i, k) {
					o.need(i, k, because)
				}
			}
		default:
			l := o.lines[n.line]
			roles := []string{l.role, l.appliedRole}
			if n.strip {
				roles = []string{l.appliedRole}
			}
			for _, role := range roles {
				if k, ok := cuts[role]; ok && !o.reaches(i, k) {
					o.need(i, k, because)
				}
			}
		}
	}
	o.panelsFirst()
	for i, n := range o.ops {
		piece, ok := strings.CutPrefix(n.ID, holding+".")
		if !ok {
			continue
		}
		for j, l := range o.lines {
			if slices.Contains(l.pieces, piece) {
				for _, k := range o.span[j] {
					if !o.ops[k].strip || slices.Contains(l.own, piece) {
						o.need(k, i, "interfacing is put on while the piece is flat and before it is handled")
						break
					}
				}
			}
		}
	}
}

// testBecause is the reason why everything at a station waits for its trial row.
const testBecause = "stitch, needle and heat are tried on a scrap first"

// testFirst: every machine and the iron are tried on a scrap before they touch
// the garment. An operation that already waits for another at the same station
// need not be told.
func (o *operator) testFirst() {
	tests := map[int]int{}
	for i, n := range o.ops {
		if n.trial() {
			tests[n.station] = i
		}
	}
	for i := range o.ops {
		if t, ok := tests[o.ops[i].station]; ok && t != i && !o.reaches(i, t) {
			o.need(i, t, testBecause)
		}
	}
}
