package sheets

import "strings"

// whyThisOrder says what the order costs and what was proved of it, with what else
// it is to be compared with.
func (c *composer) whyThisOrder(besides ...inline) {
	w, o := c.say.order, c.plan.Order
	c.heading(2, plain(w.title))
	proof := say(w.bounded, values{"bound": c.minutes(o.BoundMinutes)})
	if o.Proved {
		proof = plain(w.proved)
		if len(o.Wishes) > 0 {
			proof = plain(w.weighed)
		}
	}
	words := []inline{say(w.take, values{"minutes": c.minutes(o.ChangeMinutes)}), proof, c.againstSeamBySeam()}
	c.para(joined(" ", append(words, besides...)...))
	if c.brief {
		return
	}
	c.para(plain(w.how))
	c.table(c.orderTable())
	c.rhythm()
	if b := o.Textbook; b != nil {
		c.para(say(w.bookNote, values{"title": plain(b.Title), "source": plain(b.Source)}))
		var items []inline
		for _, x := range b.Waits {
			items = append(items, say(w.bookWaits, values{"seam": plain(upper(x.Seam)), "other": plain(x.For), "because": plain(x.Because)}))
		}
		c.list(items...)
	}
	c.list(append(c.unavoidable(), c.wishes()...)...)
	if own := o.Own; own != nil {
		pattern := w.kept
		if len(own.Refused) > 0 {
			pattern = w.refused
		}
		c.para(say(pattern, values{"minutes": c.minutes(own.FreeMinutes)}))
	}
}

// orderTable sets this order beside the other ways to work.
func (c *composer) orderTable() ([]column, [][]inline) {
	w, o, t := c.say.order, c.plan.Order, c.plan.Totals
	head := []column{{title: plain(w.what)}, {title: plain(w.here), right: true}, {title: plain(w.seamBySeam), right: true}}
	rows := [][]inline{
		{plain(w.minutes), plain(decimal(o.ChangeMinutes)), plain(decimal(o.SeamBySeamMinutes))},
		{plain(w.threads), plain(number(t.ThreadChanges)), plain(number(o.SeamBySeamThreadChanges))},
		{plain(w.stations), plain(number(t.StationMoves)), plain(number(o.SeamBySeamMoves))},
	}
	if b := o.Textbook; b != nil {
		head = append(head, column{title: plain(w.book), right: true})
		for i, cell := range []string{decimal(b.ChangeMinutes), number(b.ThreadChanges), number(b.StationMoves)} {
			rows[i] = append(rows[i], plain(cell))
		}
	}
	return head, rows
}

// unavoidable says which changes every order has to make, and why.
func (c *composer) unavoidable() []inline {
	w := c.say.order
	var out []inline
	for _, f := range c.plan.Order.Forced {
		if f.What == moving {
			out = append(out, say(w.moves, values{"made": plain(number(f.Made) + " " + lower(w.stations)),
				"least": plain(number(f.Least)), "because": plain(f.Because)}))
			continue
		}
		if f.Least == 0 {
			continue
		}
		pattern := w.forcedOne.many
		if f.Least == 1 {
			pattern = w.forcedOne.one
		}
		out = append(out, say(pattern, values{"n": plain(number(f.Least)), "what": c.allThatChanges(append([]string{f.What}, f.With...)),
			"station": plain(c.stationTitle(f.Station)), "because": plain(f.Because)}))
	}
	return out
}

// wishes says what became of what the job wishes for.
func (c *composer) wishes() []inline {
	w := c.say.order
	names := map[string]string{"region": w.wishRegion, "small": w.wishSmall, "delicate": w.wishDelicate, "fitting": w.wishFitting}
	var out []inline
	for _, x := range c.plan.Order.Wishes {
		own, of, _ := strings.Cut(x.Wish, " (") // in a sitting: whose it is
		name, named := names[own]
		switch {
		case !named:
			name = x.Wish
		case of != "":
			name += " (" + of
		}
		pattern := w.wishUnkept
		switch {
		case x.Wish == "pick":
			pattern = w.picked
		case x.Kept:
			pattern = w.wishKept
		case x.Wish == "region":
			pattern = w.wishEach
		}
		out = append(out, say(pattern, values{"wish": plain(name), "minutes": c.minutes(x.Minutes), "paid": c.minutes(x.Paid)}))
	}
	return out
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
