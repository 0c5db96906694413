package sheets

import (
	"slices"

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
	if len(rows) > 0 {
		c.para(plain(w.classNote))
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

// alike groups the seams that are sewn in one way with the same sizes, so that
// each way is drawn once, in the order in which they first appear.
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
	return a.Construction == b.Construction && slices.Equal(a.Sizes, b.Sizes) &&
		slices.EqualFunc(a.Section.Items, b.Section.Items, func(x, y process.SectionItem) bool {
			return x.Ply == y.Ply && x.Stitch == y.Stitch && x.Size == y.Size && x.MM == y.MM &&
				x.Right == y.Right && slices.Equal(x.Through, y.Through)
		})
}

// construction tells one way of sewing, for all the seams sewn in it.
func (c *composer) construction(group []process.Seam) {
	s := group[0]
	id := c.heading(3, plain(upper(s.ConstructionTitle)))
	for _, g := range group {
		c.anchors[g.Name] = id
	}
	c.para(say(c.say.glance.use, values{"seams": c.titles(group)}))
	c.sectionFigure(s)
	rivals := !slices.ContainsFunc(group, func(g process.Seam) bool { return !slices.EqualFunc(s.Rejected, g.Rejected, sameRejected) })
	told := make([]bool, len(group))
	for i, a := range group {
		if told[i] {
			continue
		}
		var same []process.Seam
		for j := i; j < len(group); j++ {
			if !told[j] && sameReasons(a, group[j]) {
				told[j] = true
				same = append(same, group[j])
			}
		}
		c.choice(a, c.titles(same), len(same) < len(group))
		if !rivals {
			c.others(a)
		}
	}
	if rivals {
		c.others(s)
	}
	c.para(c.source(s.Source))
}

func (c *composer) titles(group []process.Seam) inline {
	var names []string
	for _, s := range group {
		names = addOnce(names, s.Title)
	}
	return c.listed(plains(names))
}

func sameReasons(a, b process.Seam) bool {
	return slices.Equal(a.Because, b.Because) && slices.Equal(a.Against, b.Against) &&
		a.Insisted == b.Insisted && a.Anyway == b.Anyway && a.Work == b.Work && a.WorkBecause == b.WorkBecause &&
		slices.EqualFunc(a.Rejected, b.Rejected, sameRejected)
}

func sameRejected(a, b process.Rejected) bool {
	return a.Construction == b.Construction && a.RuledOut == b.RuledOut && slices.Equal(a.Because, b.Because)
}

// choice is why a seam is sewn as it is, and why not otherwise.
func (c *composer) choice(s process.Seam, names inline, named bool) {
	w := c.say.glance
	why := plain(w.why)
	if named {
		why = say(w.whyFor, values{"seam": names})
	}
	why = strong(why)
	if s.Anyway {
		why = joined(" ", why, plain(w.anyway))
	}
	if c.reasonList(why, s.Because); s.Anyway && len(s.Because) == 0 {
		c.para(why)
	}
	c.reasonList(strong(plain(w.against)), s.Against)
	if s.Work != "" && s.WorkBecause != "" {
		pattern := w.round
		if s.Work == "flat" {
			pattern = w.flat
		}
		c.para(say(pattern, values{"because": plain(lower(sentence(s.WorkBecause)))}))
	}
}

func (c *composer) reasonList(lead inline, reasons []string) {
	if len(reasons) == 0 {
		return
	}
	var items []inline
	for _, r := range reasons {
		items = append(items, plain(sentence(r)))
	}
	c.para(lead)
	c.list(items...)
}

// others are the ways that were not taken: those that could be first.
func (c *composer) others(s process.Seam) {
	w := c.say.glance
	for _, part := range []struct {
		ruledOut bool
		lead     string
	}{{false, w.runnersUp}, {true, w.ruledOut}} {
		var items []inline
		for _, r := range s.Rejected {
			if r.RuledOut == part.ruledOut {
				items = append(items, say(w.nextBest, values{
					"construction": strong(plain(r.Title)), "because": c.reasons(r.Because)})+".")
			}
		}
		if len(items) > 0 {
			c.para(strong(plain(part.lead)))
			c.list(items...)
		}
	}
}
