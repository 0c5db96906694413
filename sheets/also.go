package sheets

import (
	"slices"
	"strings"

	"bodkin/process"
)

// sizesOfTheJob says under which number the further sizes of the job are told.
func (c *composer) sizesOfTheJob() {
	w := c.say.also
	var sizes []inline
	for _, s := range c.plan.Also {
		sizes = append(sizes, say(w.size, values{"n": plain(number(s.Number)), "garments": c.count(s.Quantity, c.say.counts.garments)}))
	}
	if len(sizes) > 0 {
		c.para(say(w.own, values{"sizes": c.listed(sizes)}))
	}
}

// also says what is cut for the further sizes of a job, and what all take.
func (c *composer) also() {
	if c.plan.Together == nil {
		return
	}
	w := c.say.also
	for _, s := range c.plan.Also {
		c.heading(3, say(w.title, values{"n": plain(number(s.Number)), "garments": c.count(s.Quantity, c.say.counts.garments)}))
		c.para(joined(" ", say(w.made, values{"size": c.used(s.Measures), "minutes": c.about(s.SewMinutes)}), c.otherChoices(s)))
		c.otherCuts(s)
		c.otherPieces(s)
		c.otherWork(s)
	}
	c.together()
}

// used are measures or choices as they were used.
func (c *composer) used(ms []process.Measure) inline {
	var out []inline
	for _, m := range ms {
		out = append(out, say(c.say.also.measure, values{"measure": plain(lower(m.Title)), "used": c.measureText(m)}))
	}
	return c.listed(out)
}

// otherChoices are those in which a further size differs from the job's own.
func (c *composer) otherChoices(s process.OtherSize) inline {
	var differ []process.Measure
	for i, m := range s.Choices {
		own := c.plan.Choices[i]
		if m.Word != own.Word || m.MM != own.MM || m.Number != own.Number {
			differ = append(differ, m)
		}
	}
	if len(differ) == 0 {
		return ""
	}
	return say(c.say.also.choices, values{"choices": c.used(differ)})
}

// otherWork is the work of a further size that no step of the sheet has: seams
// sewn in another way, operations besides, and their checks.
func (c *composer) otherWork(s process.OtherSize) {
	w := c.say.also
	var seams, besides, checks []inline
	for _, x := range s.Otherwise {
		seams = append(seams, say(w.seam, values{"seam": strong(plain(upper(x.Title))),
			"construction": plain(lower(x.ConstructionTitle)), "work": joined(" ", plains(x.Work)...)}))
	}
	for _, d := range s.Differs {
		if d.Kind == process.Besides {
			besides = append(besides, say(w.other, values{"part": strong(say(w.part, values{"part": plain(upper(d.Part))})), "text": plain(sentence(d.Text))}))
		}
	}
	for _, k := range s.Checks {
		if !slices.ContainsFunc(c.plan.Checks, func(own process.Check) bool { return sameCheck(own, k) }) {
			checks = append(checks, c.check(k))
		}
	}
	for _, part := range []struct {
		lead  string
		items []inline
	}{{w.otherwise, seams}, {w.besides, besides}, {w.checks, checks}} {
		if len(part.items) > 0 {
			c.para(plain(part.lead))
			c.list(part.items...)
		}
	}
}

func sameCheck(a, b process.Check) bool {
	return a.AfterOperation == b.AfterOperation && a.What == b.What
}

// inOtherSizes is what further sizes have otherwise at an operation, a sentence
// each; of a seam that one sews in another way at the first of its operations.
func (c *composer) inOtherSizes(o process.Operation, told map[string]bool) []inline {
	w := c.say.also
	var out []inline
	for _, s := range c.plan.Also {
		size := strong(say(w.sizeLead, values{"n": plain(number(s.Number))}))
		key := "otherwise\x00" + number(s.Number) + o.Seam
		if k := slices.IndexFunc(s.Otherwise, func(x process.OtherSeam) bool { return x.Seam == o.Seam }); k >= 0 && !told[key] {
			told[key] = true
			out = append(out, say(w.anotherWay, values{"size": size, "construction": plain(lower(s.Otherwise[k].ConstructionTitle))}))
		}
		k := slices.IndexFunc(s.Differs, func(d process.Differs) bool { return d.Operation == o.ID })
		if k < 0 {
			continue
		}
		d := s.Differs[k]
		switch d.Kind {
		case process.FiguresDiffer:
			var figures []inline
			for _, f := range d.Figures {
				figures = append(figures, say(w.instead, values{"here": plain(f.Here), "own": plain(f.Own)}))
			}
			out = append(out, say(w.figures, values{"size": size, "figures": c.listed(figures)}))
		case process.WordsDiffer:
			text := d.Text // of which only the end is told where it goes on from the words above
			if rest, ok := strings.CutPrefix(text, o.Text+" "); ok {
				text = rest
			}
			out = append(out, say(w.words, values{"size": size, "text": plain(sentence(text))}))
		case process.Without:
			out = append(out, say(w.without, values{"size": size}))
		}
	}
	return out
}

// checkInOtherSizes are the figures that a check has in further sizes.
func (c *composer) checkInOtherSizes(k process.Check) []inline {
	var out []inline
	for _, s := range c.plan.Also {
		for _, x := range s.Checks {
			if sameCheck(k, x) && x.Expect != k.Expect {
				out = append(out, say(c.say.also.expect, values{"n": plain(number(s.Number)), "expect": c.mm(x.Expect)}))
			}
		}
	}
	return out
}

// otherCuts are the pieces, strips and interfacings of another size in one table.
func (c *composer) otherCuts(s process.OtherSize) {
	w := c.say.cutting
	var rows [][]inline
	var strips []inline
	for _, p := range s.Pieces {
		rows = append(rows, []inline{plain(upper(p.Title)), c.cloth(p.Cloth), plain(number(p.Count)), plain(c.howCut(p)), c.twoSizes(p.Width, p.Height)})
	}
	for _, t := range s.Strips {
		on := w.straight
		if t.On == "bias" {
			on = w.bias
		}
		rows = append(rows, []inline{plain(upper(t.Title)), c.cloth(t.Cloth), plain(number(t.Count * t.Lengths)), plain(on), c.twoSizes(t.CutWidth, t.EachLength)})
		strips = append(strips, c.strip(t))
	}
	for _, f := range s.Interfacing {
		rows = append(rows, []inline{plain(upper(f.Title)), plain(f.MaterialTitle), plain(number(f.Count)), plain(c.part(f)), c.twoSizes(f.Cut[0], f.Cut[1])})
	}
	for _, n := range s.Notions {
		size := c.mm(n.Width)
		if n.Length > 0 {
			size = c.twoSizes(n.Width, n.Length)
		}
		rows = append(rows, []inline{plain(upper(n.Title)), plain(c.say.none), plain(number(n.Count)), plain(c.say.none), size})
	}
	c.table([]column{
		{title: plain(w.piece)}, {title: plain(w.cloth)}, {title: plain(w.count), right: true}, {title: plain(w.cut)}, {title: plain(w.size)},
	}, rows)
	c.list(strips...)
}

// otherPieces are the map of another size's pieces, its edges with their
// allowances, and how the pieces are marked on the cloth; in brief the map alone.
func (c *composer) otherPieces(s process.OtherSize) {
	own := c.plan
	other := *own
	other.Pieces, other.Interfacing = s.Pieces, s.Interfacing
	c.plan, c.size = &other, s.Number
	c.pieceMap()
	c.edgesAndPoints()
	c.plan, c.size = own, 0
}

// together is what all sizes take: cloth to buy, strips, interfacing, thread.
func (c *composer) together() {
	w, t := c.say.also, c.plan.Together
	c.heading(3, say(w.all, values{"garments": c.count(t.Garments, c.say.counts.garments)}))
	var rows [][]inline
	for _, x := range t.Cloths {
		rows = append(rows, []inline{c.cloth(x.Role), c.toBuy(x.LengthMM)})
	}
	for _, x := range t.Strips {
		rows = append(rows, []inline{say(w.strip, values{"strip": plain(upper(x.Title)), "width": c.mm(x.WidthMM)}), c.metres(x.LengthMM / 1000)})
	}
	for _, x := range t.Interfacing {
		if x.LengthMM > 0 {
			rows = append(rows, []inline{say(w.strip, values{"strip": plain(upper(x.Title)), "width": c.mm(x.WidthMM)}), c.metres(x.LengthMM / 1000)})
			continue
		}
		rows = append(rows, []inline{plain(upper(x.Title)), say(w.area, values{"area": plain(number(int(x.AreaMM2/100 + 0.5)))})})
	}
	for _, x := range t.Thread {
		rows = append(rows, []inline{say(w.thread, values{"thread": plain(upper(x.Kind)), "colour": plain(x.Colour)}), c.metres(x.Metres)})
	}
	for _, n := range t.Notions {
		much := plain(number(n.Count))
		if n.LengthMM > 0 {
			much = c.mm(n.LengthMM)
		}
		rows = append(rows, []inline{plain(upper(n.Title)), much})
	}
	rows = append(rows, []inline{plain(w.sewing), c.about(t.SewMinutes)})
	c.table([]column{{title: plain(w.what)}, {title: plain(w.much), right: true}}, rows)
	c.para(plain(w.basis))
	c.list(c.biasItems(t.Bias)...)
}
