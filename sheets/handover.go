package sheets

import (
	"cmp"
	"slices"
	"strings"

	"bodkin/process"
)

// handed says what is in an assistant's hands when a step begins: the pieces
// and strips of its seams, what other steps have made ready, and how each seam
// that is new to the sheet is sewn, with its sizes and its section.
func (c *composer) handed(s process.Step, told map[string]bool) {
	w := c.say.bench
	var things []string
	for _, name := range c.seamsOf(s) {
		if c.cutsOut(s) {
			break // she cuts them herself
		}
		for _, p := range c.plan.Pieces {
			if slices.ContainsFunc(p.Edges, func(e process.Edge) bool { return e.Seam == name }) {
				things = addOnce(things, lower(p.Title))
			}
		}
		for _, t := range c.plan.Strips {
			if t.Seam == name {
				things = addOnce(things, lower(t.Title))
			}
		}
	}
	var parts []inline
	if len(things) > 0 {
		parts = append(parts, c.listed(plains(things)))
	}
	for _, g := range c.comesFrom(s) {
		parts = append(parts, say(w.from, values{"parts": c.listed(plains(g.parts)), "n": plain(number(g.step))}))
	}
	if len(parts) > 0 {
		c.para(joined(" ", strong(plain(w.handed)), joined("; ", parts...)+"."))
	}
	c.newSeams(s, told)
}

// cutsOut reports a step in which pieces are cut out.
func (c *composer) cutsOut(s process.Step) bool {
	return slices.ContainsFunc(s.Operations, func(id string) bool {
		o := c.operations[id]
		return o.Does == "cut" && o.Seam == ""
	})
}

// newSeams tells how the seams are sewn that come up for the first time.
func (c *composer) newSeams(s process.Step, told map[string]bool) {
	for _, name := range c.seamsOf(s) {
		c.newSeam(c.seams[name], told)
	}
}

func (c *composer) newSeam(seam process.Seam, told map[string]bool) {
	w := c.say.bench
	if told[sizesKey+seam.Name] {
		return
	}
	told[sizesKey+seam.Name] = true
	pattern := w.sizes
	switch {
	case seam.Allowance == 0 && seam.Finished == 0:
		pattern = w.sewn
	case seam.Allowance == 0:
		pattern = w.finished
	case seam.Finished == 0:
		pattern = w.allowance
	}
	c.para(say(pattern, values{
		"seam": strong(plain(upper(seam.Title))), "construction": plain(seam.ConstructionTitle),
		"allowance": c.allowance(seam), "finished": c.mm(seam.Finished)}))
	if !slices.ContainsFunc(c.drawn, func(d process.Seam) bool { return sameWay(d, seam) }) {
		c.drawn = append(c.drawn, seam)
		c.sectionFigure(seam, c.whereFigure(seam)...)
		return
	}
	c.figures(c.whereFigure(seam)...)
}

// sizesKey parts the seams whose sizes were told from other things that were.
const sizesKey = "sizes\x00"

// seamsOf are the plan's seams that a step works on, in its order.
func (c *composer) seamsOf(s process.Step) []string {
	var out []string
	for _, id := range s.Operations {
		if name := c.operations[id].Seam; name != "" {
			if _, ok := c.seams[name]; ok {
				out = addOnce(out, name)
			}
		}
	}
	return out
}

// group is what one other step has to do with this one.
type group struct {
	step  int
	parts []string
}

// comesFrom are the steps whose work a step goes on with. What one of them has
// itself taken over from another is not told again. A trial takes scraps.
func (c *composer) comesFrom(s process.Step) []group {
	var before, scraps []string
	part := map[string]string{}
	for _, id := range s.Operations {
		o := c.operations[id]
		if o.Does == "thread" && readies(o) {
			continue
		}
		for _, a := range o.After {
			if n := c.stepOf[a.ID]; n == 0 || n == s.Number || readies(c.operations[a.ID]) {
				continue
			}
			if readies(o) {
				scraps, part[a.ID] = addOnce(scraps, a.ID), o.Part
				continue
			}
			before = addOnce(before, a.ID)
		}
	}
	var nearest []string
	for _, id := range before {
		if !slices.ContainsFunc(before, func(other string) bool {
			return slices.ContainsFunc(c.operations[other].After, func(a process.After) bool { return a.ID == id })
		}) {
			nearest = append(nearest, id)
			delete(part, id)
		}
	}
	for _, id := range scraps {
		if !slices.Contains(before, id) {
			nearest = append(nearest, id)
		}
	}
	return c.grouped(s, nearest, part)
}

// goesTo are the steps that wait for a step's work, but for those that wait for
// one of these in turn. Of a machine that was tried or threaded nothing is handed on.
func (c *composer) goesTo(s process.Step) []group {
	var out []string
	for _, id := range s.Operations {
		if readies(c.operations[id]) {
			continue
		}
		for _, next := range c.later[id] {
			if c.stepOf[next] != s.Number && c.operations[next].Does != "thread" {
				out = addOnce(out, next)
			}
		}
	}
	var next []string
	for _, id := range out {
		if !slices.ContainsFunc(c.operations[id].After, func(a process.After) bool { return slices.Contains(out, a.ID) }) {
			next = append(next, id)
		}
	}
	return c.grouped(s, next, nil)
}

// readies reports an operation that gets a machine ready, or leaves it so: no part
// of the garment goes through it.
func readies(o process.Operation) bool {
	return o.Seam == "" && (o.Does == "test" || o.Does == "thread")
}

// grouped are operations by their step, in the order of the steps, each with what is
// in hand: its part, where there is no other word for it.
func (c *composer) grouped(s process.Step, ids []string, words map[string]string) []group {
	var out []group
	for _, id := range ids {
		n := c.stepOf[id]
		k := slices.IndexFunc(out, func(g group) bool { return g.step == n })
		if k < 0 {
			k = len(out)
			out = append(out, group{step: n})
		}
		o := c.operations[id]
		part := lower(cmp.Or(words[id], o.Part, c.seamTitle(o.Seam)))
		if g := o.Garment; g > 0 && words[id] == "" && len(s.Garments) > 1 && g <= len(c.garments) {
			if of := fillText(c.say.sitting.of, "part", "", "label", c.garments[g-1].Label); !strings.HasSuffix(part, of) {
				part += of // the other step is of this garment alone
			}
		}
		out[k].parts = addOnce(out[k].parts, part)
	}
	slices.SortStableFunc(out, func(a, b group) int { return a.step - b.step })
	return out
}

// handOn says to whom the work goes: the next step that waits for it, and how
// many wait later.
func (c *composer) handOn(s process.Step) {
	w := c.say.bench
	next := c.goesTo(s)
	if len(next) == 0 {
		c.para(joined(" ", strong(plain(w.handOn)), plain(w.nobody)))
		return
	}
	var parts []inline
	for _, g := range next {
		station := ""
		for _, t := range c.plan.Steps {
			if t.Number == g.step {
				station = lower(c.stationTitle(t.Station))
			}
		}
		parts = append(parts, say(w.to, values{
			"parts": c.listed(plains(g.parts)), "n": plain(number(g.step)), "station": plain(station)}))
	}
	c.para(joined(" ", strong(plain(w.handOn)), joined("; ", parts...)+"."))
}
