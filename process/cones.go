package process

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/seams/form"
)

// conesOf are how many of a colour there are: those of the job over those of the
// room. They are none where nobody has counted.
func conesOf(w *Workroom, j *Job) form.Pairs[int] {
	cones := slices.Clone(w.Cones)
	for _, p := range j.Cones {
		k := slices.IndexFunc(cones, func(o form.Pair[int]) bool { return strings.EqualFold(o.Key.Value, p.Key.Value) })
		if k < 0 {
			cones = append(cones, p)
		} else {
			cones[k] = p
		}
	}
	return cones
}

// checkCones looks for what is wrong with counted cones.
func checkCones(cones form.Pairs[int]) form.Faults {
	var faults form.Faults
	for _, p := range cones {
		if p.Value < 0 || p.Value > 1000 {
			faults = append(faults, form.FaultAt(p.Key.At, fmt.Sprintf("%d cones of %s", p.Value, p.Key.Value), "", "write how many there are, from 0 to 1000"))
		}
	}
	return faults
}

// loop threads the loopers of an overlocker in another colour where there are too
// few cones of the row's own and the row is hidden, and says so; else it says how
// many are lacking.
func (o *operator) loop(n *op, st *seams.Stitch) {
	if len(o.cones) == 0 || st.Loopers == 0 || n.line < 0 {
		return
	}
	colour := n.Setting.Thread
	have := o.conesIn(colour)
	wants := st.Needles + st.Loopers
	if have >= wants {
		return
	}
	l := o.lines[n.line]
	if have >= st.Needles && l.hidden() {
		best := -1
		for k, p := range o.cones {
			if !strings.EqualFold(p.Key.Value, colour) && p.Value >= st.Loopers && (best < 0 || p.Value > o.cones[best].Value) {
				best = k
			}
		}
		if best >= 0 {
			n.Setting.Loopers = o.cones[best].Key.Value
			n.Text += fmt.Sprintf(" Thread the loopers with %s: the stitch takes %d cones and there %s of %s, and here the row lies inside, where it is not seen.",
				n.Setting.Loopers, wants, areIs(have), colour)
			return
		}
	}
	why := "no other colour has cones enough for the loopers"
	if !l.hidden() {
		why = "the row is seen, so that no other colour will do"
	}
	if have < st.Needles {
		why = "that is too few for the needles alone"
	}
	o.lacking = append(o.lacking, Notice{About: upperFirst(l.title), Text: fmt.Sprintf(
		"Stitch %s takes %d cones of %s, and there %s: %s. Get %d more, or wind spools or bobbins full from one and set them on the pins.",
		st.Name, wants, colour, areIs(have), why, wants-have)})
}

func areIs(n int) string {
	switch n {
	case 0:
		return "is none"
	case 1:
		return "is one"
	}
	return fmt.Sprintf("are %d", n)
}

func (o *operator) conesIn(colour string) int {
	for _, p := range o.cones {
		if strings.EqualFold(p.Key.Value, colour) {
			return p.Value
		}
	}
	return 0
}

// hidden reports whether an overlocked row of the line lies inside the garment and
// does not show through: in a join, or at an edge that another row turns in, of
// cloth that is not sheer.
func (l *line) hidden() bool {
	if l.cloth.Sheerness >= 2 || l.applied.Sheerness >= 2 {
		return false
	}
	if l.work != treating {
		return true
	}
	for _, s := range l.construction.Stitches {
		if !strings.HasPrefix(s, "5") {
			return true
		}
	}
	return false
}
