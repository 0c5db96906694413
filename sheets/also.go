package sheets

import (
	"bodkin/process"
)

// also says what is cut for the further sizes of a job, and what all take.
func (c *composer) also() {
	if c.plan.Together == nil {
		return
	}
	w := c.say.also
	for _, s := range c.plan.Also {
		var size []inline
		for _, m := range s.Measures {
			size = append(size, say(w.measure, values{"measure": plain(lower(m.Title)), "used": c.measureText(m)}))
		}
		c.heading(3, say(w.title, values{"garments": c.count(s.Quantity, c.say.counts.garments)}))
		c.para(say(w.size, values{"size": c.listed(size)}))
		c.otherCuts(s)
		c.otherPieces(s.Pieces)
		if len(s.Otherwise) > 0 {
			c.para(plain(w.otherwise))
			c.list(plains(s.Otherwise)...)
		}
	}
	c.together()
}

// otherCuts are the pieces, strips and interfacings of another size in one table.
func (c *composer) otherCuts(s process.OtherSize) {
	w := c.say.cutting
	var rows [][]inline
	for _, p := range s.Pieces {
		rows = append(rows, []inline{plain(upper(p.Title)), c.cloth(p.Cloth), plain(number(p.Count)), plain(c.howCut(p)), c.twoSizes(p.Width, p.Height)})
	}
	for _, t := range s.Strips {
		on := w.straight
		if t.On == "bias" {
			on = w.bias
		}
		rows = append(rows, []inline{plain(upper(t.Title)), c.cloth(t.Cloth), plain(number(t.Count * t.Lengths)), plain(on), c.twoSizes(t.CutWidth, t.EachLength)})
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
}

// otherPieces are the map of another size's pieces, with its allowances, and how
// they are marked on the cloth; in brief the map alone.
func (c *composer) otherPieces(pieces []process.Piece) {
	own := c.plan
	other := *own
	other.Pieces = pieces
	c.plan = &other
	c.pieceMap()
	if !c.brief {
		c.chalkTables()
	}
	c.plan = own
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
	rows = append(rows, []inline{plain(w.sewing), c.about(t.SewMinutes)})
	c.table([]column{{title: plain(w.what)}, {title: plain(w.much), right: true}}, rows)
	c.para(plain(w.basis))
}
