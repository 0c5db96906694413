package sheets

import (
	"slices"
	"strings"

	"bodkin/process"
)

// glance is every seam in one table, then every construction with its section,
// why it was chosen and why others were not.
func (c *composer) glance() {
	w := c.say.glance
	c.heading(2, plain(w.title))
	var rows [][]inline
	for _, s := range c.plan.Seams {
		rows = append(rows, []inline{
			plain(upper(s.Title)), plain(s.ConstructionTitle), c.class(s), c.allowance(s), c.mmOr(s.Finished),
			c.runs(s), c.stitchList(s),
		})
	}
	c.table([]column{
		{title: plain(w.seam)}, {title: plain(w.sewn)}, {title: plain(w.class)}, {title: plain(w.allowance), right: true},
		{title: plain(w.finished), right: true}, {title: plain(w.length), right: true}, {title: plain(w.stitches)},
	}, rows)
	if len(rows) > 0 && !c.brief {
		c.para(plain(w.classNote))
	}
	if c.brief {
		// A single row or fold is told in words; the others are seen.
		c.sectionsBeside(slices.DeleteFunc(c.alike(), func(g []process.Seam) bool { return g[0].Kind == "staystitch" || g[0].Kind == dartKind }))
		return
	}
	for _, g := range c.alike() {
		c.construction(g)
	}
}

func (c *composer) class(s process.Seam) inline {
	if s.ISO4916Class == 0 {
		return plain(c.say.none)
	}
	return plain(number(s.ISO4916Class))
}

// allowance is that of both edges where they differ.
func (c *composer) allowance(s process.Seam) inline {
	if s.AllowanceB != s.Allowance && s.Kind == "seam" {
		return joined(inline(c.say.list), c.mm(s.Allowance), c.mm(s.AllowanceB))
	}
	return c.mmOr(s.Allowance)
}

func (c *composer) runs(s process.Seam) inline {
	if s.Copies > 1 {
		return say(c.say.glance.copies, values{"n": plain(number(s.Copies)), "length": c.mm(s.Length)})
	}
	return c.mm(s.Length)
}

func (c *composer) stitchList(s process.Seam) inline {
	if len(s.Stitches) == 0 {
		return plain(c.say.none)
	}
	return joined(inline(c.say.list), plains(s.Stitches)...)
}

// alike groups the seams that are sewn in one way and look alike cut across, so
// that each way is drawn once, in the order in which they first appear.
func (c *composer) alike() [][]process.Seam {
	var groups [][]process.Seam
	for _, s := range c.plan.Seams {
		k := slices.IndexFunc(groups, func(g []process.Seam) bool { return sameWay(g[0], s) })
		if k < 0 {
			groups = append(groups, []process.Seam{s})
			continue
		}
		groups[k] = append(groups[k], s)
	}
	return groups
}

func sameWay(a, b process.Seam) bool {
	return a.Construction == b.Construction && drawnAlike(a.Section.Items, b.Section.Items) &&
		slices.EqualFunc(a.Section.Stages, b.Section.Stages, func(x, y process.Stage) bool { return drawnAlike(x.Items, y.Items) })
}

func drawnAlike(a, b []process.SectionItem) bool {
	return slices.EqualFunc(a, b, func(x, y process.SectionItem) bool {
		return x.Ply == y.Ply && x.Stitch == y.Stitch && x.Size == y.Size && x.MM == y.MM &&
			x.Right == y.Right && slices.Equal(x.Through, y.Through)
	})
}

// construction tells one way of sewing, for all the seams sewn in it.
func (c *composer) construction(group []process.Seam) {
	w, s := c.say.glance, group[0]
	id := c.heading(3, plain(upper(s.ConstructionTitle)))
	for _, g := range group {
		c.anchors[g.Name] = id
	}
	c.para(say(w.use, values{"seams": c.titles(group)}))
	c.sectionFigure(s)
	if asked := slices.DeleteFunc(slices.Clone(group), func(g process.Seam) bool { return !g.Anyway }); len(asked) > 0 {
		c.quote(say(w.anyway, values{"seams": c.titles(asked)}))
	}
	c.reasonList(w.why, group, func(g process.Seam) []inline { return clauses(g.Because) })
	c.reasonList(w.against, group, func(g process.Seam) []inline { return clauses(g.Against) })
	c.reasonList(w.worked, group, func(g process.Seam) []inline { return clauses([]string{g.WorkBecause}) })
	c.reasonList(w.runnersUp, group, func(g process.Seam) []inline { return c.others(g, false) })
	c.reasonList(w.ruledOut, group, func(g process.Seam) []inline { return c.others(g, true) })
	if untold(group) {
		c.para(say(w.untold, values{"seam": plain(s.Name[strings.LastIndexByte(s.Name, '/')+1:])})) // of a sitting: as its own job has it
	}
	c.para(c.source(s.Source))
}

func (c *composer) titles(group []process.Seam) inline {
	var names []string
	for _, s := range group {
		names = addOnce(names, lower(s.Title))
	}
	return c.listed(plains(names))
}

// reasonList lists what holds of the group's seams, each thing once and in the
// order in which it is first said; what does not hold of all says of which.
func (c *composer) reasonList(lead string, group []process.Seam, of func(process.Seam) []inline) {
	var order []inline
	holds := map[inline][]process.Seam{}
	for _, g := range group {
		for _, words := range of(g) {
			if holds[words] == nil {
				order = append(order, words)
			}
			holds[words] = append(holds[words], g)
		}
	}
	var items []inline
	for _, words := range order {
		if seams := holds[words]; len(seams) < len(group) {
			words = say(c.say.glance.only, values{"reason": words, "seams": c.titles(seams)})
		}
		items = append(items, words+".")
	}
	if len(items) > 0 {
		c.para(strong(plain(lead)))
		c.list(items...)
	}
}

// clauses are reasons as they open a line, without their full stop.
func clauses(reasons []string) []inline {
	var out []inline
	for _, r := range reasons {
		if r != "" {
			out = append(out, plain(upper(clause(r))))
		}
	}
	return out
}

// others are the ways that were not taken: those that could be, with all that
// spoke against them, or those that are ruled out, with the first thing that
// does so. Ways that lose for one reason share a line.
func (c *composer) others(s process.Seam, ruledOut bool) []inline {
	var list []process.Rejected
	for _, r := range s.Rejected {
		if r.RuledOut != ruledOut {
			continue
		}
		if ruledOut && len(r.Because) > 1 {
			r.Because = r.Because[:1]
		}
		if len(list) == rivalsTold {
			break
		}
		list = append(list, r)
	}
	return c.byReason(c.say.glance.other, c.say.glance.others, list)
}

// rivalsTold is how many of those that could be done, and of those that cannot,
// a sheet tells of a seam, the likeliest first; all of them would take pages. The
// plan has them all.
const rivalsTold = 5

// untold reports whether the group has rivals that the sheet leaves out.
func untold(group []process.Seam) bool {
	return slices.ContainsFunc(group, func(s process.Seam) bool {
		ruledOut := 0
		for _, r := range s.Rejected {
			if r.RuledOut {
				ruledOut++
			}
		}
		return max(ruledOut, len(s.Rejected)-ruledOut) > rivalsTold
	})
}

// byReason says of rivals why they lost, a line for each reason, in the order
// in which the reasons come up; the reason opens the line of many.
func (c *composer) byReason(few, many string, list []process.Rejected) []inline {
	var order []inline
	titles := map[inline][]inline{}
	for _, r := range list {
		because := c.reasons(r.Because)
		if titles[because] == nil {
			order = append(order, because)
		}
		titles[because] = append(titles[because], plain(upper(r.Title)))
	}
	var out []inline
	for _, because := range order {
		rivals := titles[because]
		if len(rivals) > 2 {
			out = append(out, say(many, values{"rivals": joined("; ", rivals...), "because": because}))
			continue
		}
		out = append(out, say(few, values{"rivals": strong(joined("; ", rivals...)), "because": because}))
	}
	return out
}

// source names where a fact is from, in a sentence of its own.
func (c *composer) source(source string) inline {
	if source == "" {
		return ""
	}
	return soft(say(c.say.glance.source, values{"source": plain(sentence(source))}))
}

func sameRejected(a, b process.Rejected) bool {
	return a.Construction == b.Construction && a.RuledOut == b.RuledOut && slices.Equal(a.Because, b.Because)
}
