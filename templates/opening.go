package templates

import (
	"fmt"
	"slices"

	"bodkin/seams/form"
)

// opened are the openings that a chain runs over: details at the end of a join
// that lies on it, and slits in its edges.
func (w *workshop) opened(t walked) []*DetailDraft {
	var out []*DetailDraft
	c := w.g.topology.corners
	for i := range w.g.Details {
		d := &w.g.Details[i]
		if slits, _ := w.g.chain(d.Opens); slices.ContainsFunc(slits, func(c ChainPart) bool { return slices.Contains(t.parts, c) }) {
			out = append(out, d)
		}
		if d.Kind.Value != "zip" {
			continue
		}
		k := slices.IndexFunc(w.g.Seams, func(s JoinDraft) bool { return s.Join.Value == d.In.Value })
		j := w.g.topology.joins[k]
		end := j.a.from
		if d.At.Value == "to" {
			end = j.a.to
		}
		if slices.ContainsFunc(t.corners(c), func(n int) bool { return c.same(n, end) }) {
			out = append(out, d)
		}
	}
	return out
}

// corners are the corners that a chain runs through, its ends among them.
func (t walked) corners(c *corners) []int {
	var out []int
	for k, part := range t.parts {
		out = append(out, c.end(part, t.backward[k]), c.end(part, !t.backward[k]))
	}
	return out
}

// passes reports an edge that does not go over a part of the body: its length,
// stretched where it stretches, and both sides of what opens it. The fault lies with
// the measure where one was given, else with the garment.
func (w *workshop) passes(over form.Text, scope int, title string, length, stretch float64, t walked) {
	if over.IsZero() {
		return
	}
	girth, round := w.number(over, scope), length*stretch
	with := ""
	for _, d := range w.opened(t) {
		open := w.number(d.Length, d.from.scope)
		round += 2 * open
		with += fmt.Sprintf(", and %s of %s", d.Title, said(open))
	}
	if stretch > 1 {
		with += fmt.Sprintf(", stretched to %.2f times its length", stretch)
	}
	if round < girth {
		message, mend := fmt.Sprintf("the %s is %s round%s, and does not go over %s", title, said(length), with, said(girth)),
			"make it wider, or the opening longer"
		if at, given := w.restsOn(over.Value); given {
			w.faults = append(w.faults, form.FaultAt(at, message, "", mend))
			return
		}
		w.fault(over, message, mend)
	}
}

// joinPasses reports a join that does not go over what it must.
func (w *workshop) joinPasses(i int) {
	s, t := &w.g.Seams[i], w.g.topology.joins[i]
	shorter := min(w.sideLength(t.a.parts, s.Across), w.sideLength(t.b.parts, s.Across))
	w.passes(s.GoesOver, s.from.scope, s.Title, shorter, 1, t.a)
}

// edgePasses reports a free edge that does not go over what it must, and returns
// how far it stretches, times its length.
func (w *workshop) edgePasses(i int) (stretch float64) {
	e, t := &w.g.Edges[i], w.g.topology.edges[i]
	stretch = 1
	if !e.Stretch.IsZero() {
		stretch = w.number(e.Stretch, e.from.scope)
	}
	w.passes(e.GoesOver, e.from.scope, e.Title, w.run(t, e.Across, e.Closed && !e.Across).length, stretch, t)
	return stretch
}

// opens tells every join and edge which openings it has.
func (w *workshop) opens() {
	for _, d := range w.made.Details {
		if d.In == "" {
			continue
		}
		for i := range w.made.Joins {
			if j := &w.made.Joins[i]; j.Name == d.In {
				j.Opened = append(j.Opened, d.Name)
				j.OpenLength += d.Length
			}
		}
	}
	for i := range w.made.Treatments {
		for _, d := range w.opened(w.g.topology.edges[i]) {
			w.made.Treatments[i].Opened = append(w.made.Treatments[i].Opened, d.Detail.Value)
		}
	}
	for i := range w.made.Details {
		k := slices.IndexFunc(w.g.Details, func(d DetailDraft) bool { return d.Detail.Value == w.made.Details[i].Name })
		for _, d := range w.opened(w.g.topology.details[k]) {
			w.made.Details[i].Opened = append(w.made.Details[i].Opened, d.Detail.Value)
		}
	}
}
