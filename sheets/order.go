package sheets

// whyThisOrder says what the order costs and what was proved of it.
func (c *composer) whyThisOrder() {
	w, o, t := c.say.order, c.plan.Order, c.plan.Totals
	c.heading(2, plain(w.title))
	proof := say(w.bounded, values{"bound": c.minutes(o.BoundMinutes)})
	if o.Proved {
		proof = plain(w.proved)
	}
	c.para(joined(" ", say(w.take, values{"minutes": c.minutes(o.ChangeMinutes)}), proof, c.againstSeamBySeam()))
	if c.brief {
		return
	}
	c.para(plain(w.how))
	c.table([]column{{title: plain(w.what)}, {title: plain(w.here), right: true}, {title: plain(w.seamBySeam), right: true}},
		[][]inline{
			{plain(w.minutes), plain(decimal(o.ChangeMinutes)), plain(decimal(o.SeamBySeamMinutes))},
			{plain(w.threads), plain(number(t.ThreadChanges)), plain(number(o.SeamBySeamThreadChanges))},
			{plain(w.stations), plain(number(t.StationMoves)), plain(number(o.SeamBySeamMoves))},
		})
}

// againstSeamBySeam compares the figures as they are printed.
func (c *composer) againstSeamBySeam() inline {
	w, o := c.say.order, c.plan.Order
	more := tenth(o.SeamBySeamMinutes) - tenth(o.ChangeMinutes)
	switch {
	case more > 0:
		return say(w.more, values{"minutes": c.minutes(float64(more) / 10)})
	case more < 0:
		return say(w.less, values{"minutes": c.minutes(float64(-more) / 10)})
	}
	return plain(w.same)
}
