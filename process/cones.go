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

// shadesOf are what colours of thread blend with which, the nearest first: what
// the job says of a colour over what the room says of it.
func shadesOf(w *Workroom, j *Job) form.Pairs[[]form.Text] {
	near := slices.Clone(j.Near)
	for _, p := range w.Near {
		if !slices.ContainsFunc(j.Near, func(q form.Pair[[]form.Text]) bool { return strings.EqualFold(q.Key.Value, p.Key.Value) }) {
			near = append(near, p)
		}
	}
	return near
}

// checkShades looks for what is wrong with shades that blend.
func checkShades(near form.Pairs[[]form.Text]) form.Faults {
	var faults form.Faults
	for _, p := range near {
		for k, c := range p.Value {
			switch {
			case strings.TrimSpace(c.Value) == "":
				faults = append(faults, form.FaultAt(c.At, "no colour is named as near "+p.Key.Value, "", "name the colours that blend with it, the nearest first, such as near: {navy: [ink, charcoal]}"))
			case strings.EqualFold(c.Value, p.Key.Value):
				faults = append(faults, form.FaultAt(c.At, c.Value+" is near itself", "", "name other colours that blend with it, the nearest first"))
			case slices.ContainsFunc(p.Value[:k], func(q form.Text) bool { return strings.EqualFold(q.Value, c.Value) }):
				faults = append(faults, form.FaultAt(c.At, c.Value+" stands twice", "", "name each colour once, the nearest first"))
			}
		}
	}
	return faults
}

// distance is how far down the list of what blends with a colour another one
// stands, from 0; where the colour has no list that names it, how far down its own
// list the colour stands. It is not told, and ok false, where neither names the
// other.
func (o *operator) distance(colour, other string) (far int, ok bool) {
	in := func(of, what string) int {
		for _, p := range o.near {
			if strings.EqualFold(p.Key.Value, of) {
				return slices.IndexFunc(p.Value, func(c form.Text) bool { return strings.EqualFold(c.Value, what) })
			}
		}
		return -1
	}
	if far = in(colour, other); far < 0 {
		far = in(other, colour)
	}
	return far, far >= 0
}

// blending is the colour, of those with so many cones, that the loopers take in
// place of another, and what that choice rests on: the nearest in shade, and where
// nobody has said of any that it is near, the one with the most cones.
func (o *operator) blending(colour string, cones int) (other, because string) {
	best, nearest, least := -1, -1, 0
	for k, p := range o.cones {
		if strings.EqualFold(p.Key.Value, colour) || p.Value < cones {
			continue
		}
		if best < 0 || p.Value > o.cones[best].Value {
			best = k
		}
		if far, ok := o.distance(colour, p.Key.Value); ok && (nearest < 0 || far < least) {
			nearest, least = k, far
		}
	}
	switch {
	case nearest >= 0:
		other = o.cones[nearest].Key.Value
		return other, fmt.Sprintf("Of the colours with cones enough, %s is the nearest in shade to %s, as was said.", other, colour)
	case best >= 0:
		other = o.cones[best].Key.Value
		return other, fmt.Sprintf("Nobody has said which shade is near %s; of %s there are the most cones, so hold it to the cloth first.", colour, other)
	}
	return "", ""
}

// loop threads the loopers of a machine in another colour where there are too few
// cones of the row's own and the loopers' threads are hidden, and says so; else it
// says how many are lacking. What covers the row on its face is threaded like the
// needles.
func (o *operator) loop(n *op, st *seams.Stitch) {
	if len(o.cones) == 0 || st.Loopers == 0 || n.line < 0 {
		return
	}
	colour := n.Setting.Thread
	have := o.conesIn(colour)
	face := st.Needles + st.Covers
	wants := face + st.Loopers
	if have >= wants {
		return
	}
	l := o.lines[n.line]
	if have >= face && l.hidden() {
		if other, because := o.blending(colour, st.Loopers); other != "" {
			n.Setting.Loopers = other
			where := "here the row lies inside, where it is not seen"
			if !strings.HasPrefix(st.Name, "5") {
				where = "their threads lie underneath, on the inside of the garment"
			}
			n.Text += fmt.Sprintf(" Thread the loopers with %s: the stitch takes %d cones and there %s of %s, and %s. %s",
				other, wants, areIs(have), colour, where, because)
			return
		}
	}
	why := "no other colour has cones enough for the loopers"
	if !l.hidden() {
		why = "the row is seen, so that no other colour will do"
	}
	if have < face {
		why = "that is too few for the needles alone"
		if st.Covers > 0 {
			why = "that is too few for the needles and what covers the row"
		}
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

// hidden reports whether the loopers' threads of the line's rows lie inside the
// garment and do not show through: in a join, at an edge that another row turns
// in, or beneath a chainstitched or covering row, of cloth that is not sheer.
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
