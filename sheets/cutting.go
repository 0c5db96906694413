package sheets

import (
	"slices"

	"bodkin/process"
)

// cutOut says what to cut: the pieces with their map, the allowance of every
// edge, strips and interfacing. Counts in the plan are for all garments.
func (c *composer) cutOut() {
	c.heading(2, plain(c.say.cutting.title))
	c.cuts()
}

// cuts is what stands under the heading.
func (c *composer) cuts() {
	w := c.say.cutting
	n := 0
	for _, p := range c.plan.Pieces {
		n += p.Count
	}
	c.para(say(w.intro, values{
		"pieces": c.count(n, c.say.counts.pieces), "garments": c.count(c.plan.Quantity, c.say.counts.garments),
	}))
	c.pieceTable()
	c.pieceMap()
	c.marks()
	c.edgesAndPoints()
	c.strips()
	c.interfacing()
	c.also()
}

// edgesAndPoints are the edges with their allowances, and the points by which the
// pieces are marked on the cloth.
func (c *composer) edgesAndPoints() {
	short := c.brief || c.reader == Class // learners cut by a pattern; the maker has the chalk points
	if !short || c.at == "" {             // the map has the allowances too
		c.edgeTable()
	}
	if !short {
		c.chalkTables()
	}
}

func (c *composer) pieceTable() {
	w := c.say.cutting
	head := []column{
		{title: plain(w.piece)}, {title: plain(w.cloth)}, {title: plain(w.count), right: true}, {title: plain(w.cut)},
		{title: plain(w.size)},
	}
	net := c.reader == Maker && !c.brief // to cut by, the cut size is enough
	if net {
		head = append(head, column{title: plain(w.netSize)})
	}
	head = append(head, column{title: plain(w.grain)})
	var rows [][]inline
	for _, p := range c.plan.Pieces {
		row := []inline{plain(upper(p.Title)), c.cloth(p.Cloth), plain(number(p.Count)), plain(c.howCut(p)), c.twoSizes(p.Width, p.Height)}
		if net {
			row = append(row, c.twoSizes(p.NetWidth, p.NetHeight))
		}
		rows = append(rows, append(row, plain(p.Grain)))
	}
	c.table(head, rows)
}

// cloth is a role with its colour, by which it is known at the table.
func (c *composer) cloth(role string) inline {
	for _, cl := range c.plan.Cloths {
		if cl.Role == role {
			return joined(inline(c.say.list), plain(role), plain(cl.Colour))
		}
	}
	return plain(role)
}

func (c *composer) howCut(p process.Piece) string {
	w := c.say.cutting
	if p.Turned {
		p.Turned = false
		return fillText(w.turned, "how", c.howCut(p))
	}
	if p.Bias && p.Cut == "fold" {
		return w.biasWhole
	}
	switch p.Cut {
	case "fold":
		return w.onFold
	case "pair":
		return w.pair
	case "one":
		return w.single
	}
	return p.Cut
}

func (c *composer) twoSizes(width, height float64) inline {
	return say(c.say.cutting.sizeNote, values{"width": c.mm(width), "height": c.mm(height)})
}

// marks are the points to transfer, piece by piece.
func (c *composer) marks() {
	w := c.say.cutting
	var items []inline
	for _, p := range c.plan.Pieces {
		var names []string
		for _, m := range p.Marks {
			names = addOnce(names, lower(spoken(m.Name)))
		}
		if len(names) == 0 {
			continue
		}
		items = append(items, say(w.marksOf, values{"piece": strong(plain(upper(p.Title))), "marks": c.listed(plains(names))}))
	}
	if len(items) > 0 {
		c.para(strong(plain(w.marksTitle)))
		c.list(items...)
	}
}

func (c *composer) edgeTable() {
	w := c.say.cutting
	var rows [][]inline
	for _, p := range c.plan.Pieces {
		for _, e := range p.Edges {
			allowance, seam := c.mm(e.Allowance), plain(lower(c.seamTitle(e.Seam)))
			switch {
			case e.Seam == foldEdge && p.Bias:
				allowance, seam = plain(c.say.none), plain(w.middle)
			case e.Seam == foldEdge:
				allowance, seam = plain(c.say.none), plain(w.fold)
			case e.Allowance == 0:
				allowance = plain(w.noAllowance)
			case e.Spare > 0:
				seam = say(w.spare, values{"seam": seam, "spare": c.mm(e.Spare), "because": plain(e.Because)})
			}
			rows = append(rows, []inline{plain(upper(p.Title)), plain(spoken(e.Name)), c.mm(e.Length), allowance, seam})
		}
	}
	if len(rows) == 0 {
		return
	}
	c.cutHeading(w.edgesTitle, c.say.also.edges)
	c.table([]column{
		{title: plain(w.piece)}, {title: plain(w.edge)}, {title: plain(w.length), right: true},
		{title: plain(w.allowance), right: true}, {title: plain(w.seam)},
	}, rows)
}

// cutHeading is the heading of a part of the cutting; under that of a further size,
// a line of its own.
func (c *composer) cutHeading(title, ofSize string) {
	if c.size > 0 {
		c.para(strong(say(ofSize, values{"n": plain(number(c.size))})))
		return
	}
	c.heading(3, plain(title))
}

// foldEdge is what the plan calls the seam of an edge on the fold.
const foldEdge = "fold"

// seamTitle is a seam's title, or its name where the plan has no such seam.
func (c *composer) seamTitle(name string) string {
	if s, ok := c.seams[name]; ok && s.Title != "" {
		return s.Title
	}
	return spoken(name)
}

func (c *composer) strips() {
	w := c.say.cutting
	var rows [][]inline
	for _, s := range c.plan.Strips {
		joins := plain(w.noJoin)
		if s.Joins > 0 {
			joins = plain(number(s.Joins))
		}
		rows = append(rows, []inline{
			plain(upper(s.Title)), c.cloth(s.Cloth), plain(c.grainOf(s)), c.mm(s.CutWidth),
			plain(number(s.Lengths * s.Count)), c.mm(s.EachLength), joins,
		})
	}
	if len(rows) == 0 {
		return
	}
	c.heading(3, plain(w.stripsTitle))
	c.table([]column{
		{title: plain(w.strip)}, {title: plain(w.cloth)}, {title: plain(w.on)}, {title: plain(w.cutWidth), right: true},
		{title: plain(w.pieces), right: true}, {title: plain(w.each), right: true}, {title: plain(w.joins), right: true},
	}, rows)
	var items []inline
	for _, s := range c.plan.Strips {
		items = append(items, c.strip(s))
	}
	c.list(append(items, c.biasItems(c.plan.Bias)...)...)
	for _, s := range c.plan.Strips {
		if s.Joins > 0 {
			c.stripFigure(s)
		}
	}
}

// biasItems say from what squares the bias of a cloth and width can be cut.
func (c *composer) biasItems(yields []process.BiasYield) []inline {
	var items []inline
	for _, y := range yields {
		if y.SquareMM == 0 || y.RoundMM == 0 {
			continue
		}
		items = append(items, say(c.say.cutting.biasOf, values{"cloth": c.cloth(y.Cloth), "width": c.mm(y.WidthMM), "total": c.metres(y.TotalMM / 1000),
			"square": c.mm(y.SquareMM), "strips": c.count(y.Strips, c.say.counts.strips), "round": c.mm(y.RoundMM), "join": c.mm(y.JoinMM)}))
	}
	return items
}

func (c *composer) grainOf(s process.Strip) string {
	switch s.On {
	case "bias":
		return c.say.cutting.bias
	case "straight":
		return c.say.cutting.straight
	case "across":
		return c.say.cutting.across
	}
	return s.On
}

// strip says in a sentence how one strip is cut and made up.
func (c *composer) strip(s process.Strip) inline {
	w := c.say.cutting
	v := values{
		"strip": strong(plain(upper(s.Title))), "strips": c.count(s.Count, c.say.counts.strips),
		"whole": c.mm(s.CutLength), "edge": c.mm(s.Finished),
		"joins": c.count(s.Joins, c.say.counts.joins), "kind": plain(s.JoinKind), "allowance": c.mm(s.JoinAllowance),
	}
	pattern := w.inOne
	if s.Joins > 0 {
		pattern = w.joined
	}
	if s.Count == 1 {
		return say(pattern.one, v)
	}
	return say(pattern.many, v)
}

func (c *composer) interfacing() {
	w := c.say.cutting
	var rows [][]inline
	for _, f := range c.plan.Interfacing {
		rows = append(rows, []inline{
			plain(upper(f.Title)), plain(f.MaterialTitle), plain(number(f.Count)), c.twoSizes(f.Cut[0], f.Cut[1]), plain(c.part(f)),
		})
	}
	if len(rows) == 0 {
		return
	}
	c.heading(3, plain(w.interfacingTitle))
	c.table([]column{
		{title: plain(w.steadies)}, {title: plain(w.material)}, {title: plain(w.count), right: true},
		{title: plain(w.size)}, {title: plain(w.part)},
	}, rows)
	var items []inline
	left := c.plan.Interfacing
	for len(left) > 0 {
		var same, others []process.Interfacing
		for _, f := range left {
			if sameSteadying(left[0], f) {
				same = append(same, f)
			} else {
				others = append(others, f)
			}
		}
		items = append(items, c.steadying(same)...)
		left = others
	}
	c.list(items...)
}

func sameSteadying(a, b process.Interfacing) bool {
	return a.MaterialTitle == b.MaterialTitle && a.Attach == b.Attach && a.Trim == b.Trim &&
		slices.Equal(a.Because, b.Because) && slices.EqualFunc(a.Rejected, b.Rejected, sameRejected)
}

func (c *composer) part(f process.Interfacing) string {
	switch f.Part {
	case "half":
		return c.say.cutting.half
	case "whole":
		return c.say.cutting.whole
	case "hem":
		if f.On == "bias" {
			return c.say.cutting.inHemBias
		}
		return c.say.cutting.inHem
	}
	return f.Part
}

// steadying is how an interfacing is put on, why it was chosen, and why others
// were not.
func (c *composer) steadying(same []process.Interfacing) []inline {
	w, f := c.say.cutting, same[0]
	var names []string
	for _, g := range same {
		names = addOnce(names, lower(g.Title))
	}
	words := say(w.attach, values{
		"material": strong(plain(upper(f.MaterialTitle))), "pieces": c.listed(plains(names)),
		"attach": plain(sentence(f.Attach)), "trim": plain(sentence(f.Trim)),
	})
	if c.reader != Maker || c.brief {
		return []inline{words}
	}
	if because := c.reasons(f.Because); because != "" {
		words = joined(" ", words, say(w.because, values{"because": because})+".")
	}
	items := []inline{words}
	for _, line := range c.byReason(w.notTaken, w.notThese, f.Rejected) {
		items = append(items, line+".")
	}
	return items
}

// plains is plain for every text of a list.
func plains(texts []string) []inline {
	out := make([]inline, len(texts))
	for i, t := range texts {
		out[i] = plain(t)
	}
	return out
}

// reasons are clauses one after another.
func (c *composer) reasons(list []string) inline {
	parts := make([]inline, len(list))
	for i, r := range list {
		parts[i] = plain(clause(r))
	}
	return joined("; ", parts...)
}
