package sheets

import (
	"math"
	"slices"

	"bodkin/process"
)

// title is the sheet's title as text.
func (c *composer) title() string {
	for _, t := range []string{c.plan.Title, c.plan.GarmentName, c.plan.Garment} {
		if plain(t) != "" {
			return t
		}
	}
	return process.Schema
}

// opening says what is being made and in what, and what the work comes to.
func (c *composer) opening() {
	c.heading(1, plain(upper(c.title())))
	c.para(c.made())
	c.para(c.summary())
	c.sizesOfTheJob()
	c.clothTable()
	c.sizeTable()
}

// made says what is made, how many of it and where.
func (c *composer) made() inline {
	w := c.say.opening
	pattern := w.made
	if c.title() == c.garment() {
		pattern = w.madeSelf
	}
	made := say(pattern, values{
		"garment": plain(upper(c.garment())),
		"count":   c.count(c.plan.Quantity, c.say.counts.garments),
	})
	return joined(" ", made, c.inRoom())
}

// inRoom says where it is made; nothing where that has no name.
func (c *composer) inRoom() inline {
	if c.plan.Workroom == "" {
		return ""
	}
	return say(c.say.opening.room, values{"room": plain(c.plan.Workroom)})
}

func (c *composer) garment() string {
	if c.plan.GarmentName != "" {
		return c.plan.GarmentName
	}
	return c.plan.Garment
}

// summary is the work in one paragraph.
func (c *composer) summary() inline {
	w, t := c.say.opening, c.plan.Totals
	proof := w.bounded
	if c.plan.Order.Proved {
		proof = w.proved
		if len(c.plan.Order.Wishes) > 0 {
			proof = w.weighed
		}
	}
	words := []inline{
		say(w.work, values{
			"operations": c.count(t.Operations, c.say.counts.operations),
			"steps":      c.count(t.Steps, c.say.counts.steps),
			"minutes":    c.about(t.SewMinutes),
			"places":     c.byPlace(),
		}),
		say(w.changes, values{"minutes": c.about(t.ChangeMinutes)}),
	}
	if t.WindMinutes > 0 {
		n := 0
		for _, b := range c.plan.Bobbins {
			n += b.Wind
		}
		words = append(words, say(w.wind, values{"bobbins": c.count(n, c.say.counts.bobbins), "minutes": c.about(t.WindMinutes)}))
	}
	return joined(" ", append(words, plain(proof), plain(w.size))...)
}

// byPlace is how the minutes are shared among machines, iron, table and hands.
func (c *composer) byPlace() inline {
	w := c.say.opening
	sums := map[string]float64{}
	for _, o := range c.plan.Operations {
		sums[c.stations[o.Station].Kind] += o.Minutes
	}
	var parts []inline
	for _, place := range []struct{ kind, words string }{
		{"machine", w.machine}, {"iron", w.iron}, {"hand", w.hand}, {"table", w.table},
	} {
		if m := sums[place.kind]; m > 0 {
			parts = append(parts, say(w.byPlace, values{"minutes": c.about(m), "place": plain(place.words)}))
		}
	}
	return c.listed(parts)
}

func (c *composer) clothTable() {
	w := c.say.opening
	var rows [][]inline
	var bases []basisFor
	head := []column{
		{title: plain(w.cloth)}, {title: plain(w.is)}, {title: plain(w.colour)},
		{title: plain(w.width), right: true}, {title: plain(w.buy), right: true},
	}
	bounded := c.reader == Maker && !c.brief &&
		slices.ContainsFunc(c.plan.Cloths, func(cl process.ClothUse) bool { return cl.LeastMM > 0 })
	if bounded {
		head = append(head, column{title: plain(w.least), right: true})
	}
	for _, cl := range c.plan.Cloths {
		row := []inline{plain(upper(cl.Role)), plain(cl.Title), plain(cl.Colour), c.mmOr(cl.WidthMM), c.toBuy(cl.LengthMM)}
		if bounded {
			row = append(row, c.mmOr(math.Floor(cl.LeastMM)))
		}
		rows = append(rows, row)
		if u := cl.Under; u != nil {
			row := []inline{say(w.under, values{"cloth": plain(upper(cl.Role))}), plain(u.Title), "", c.mmOr(u.WidthMM), c.toBuy(u.LengthMM)}
			if bounded {
				row = append(row, plain(c.say.none))
			}
			rows = append(rows, row)
		}
		bases = append(bases, basisFor{cl.Role, cl.Basis})
	}
	c.table(head, rows)
	c.restsOn(w.buyBasis, bases)
	if bounded {
		c.para(joined(" ", strong(plain(w.leastLead)), plain(w.leastBasis)))
	}
}

// basisFor is what the estimate for a thing rests on.
type basisFor struct{ of, words string }

// restsOn says what estimates rest on: once where that is the same for all.
func (c *composer) restsOn(about string, bases []basisFor) {
	bases = slices.DeleteFunc(bases, func(b basisFor) bool { return b.words == "" })
	if len(bases) == 0 || c.brief {
		return
	}
	words := []inline{strong(plain(about))}
	if !slices.ContainsFunc(bases, func(b basisFor) bool { return b.words != bases[0].words }) {
		c.para(joined(" ", words[0], plain(sentence(bases[0].words))))
		return
	}
	for len(bases) > 0 { // what rests on the same is told together
		var of []string
		basis := bases[0].words
		for _, b := range bases {
			if b.words == basis {
				of = addOnce(of, b.of)
			}
		}
		bases = slices.DeleteFunc(bases, func(b basisFor) bool { return b.words == basis })
		words = append(words, say(c.say.opening.basisOf, values{"of": c.listed(plains(append([]string{upper(of[0])}, of[1:]...))), "basis": plain(lower(sentence(basis)))}))
	}
	c.para(joined(" ", words...))
}

// addOnce adds a text that is not empty and not there yet.
func addOnce(list []string, text string) []string {
	if text == "" {
		return list
	}
	for _, t := range list {
		if t == text {
			return list
		}
	}
	return append(list, text)
}

func (c *composer) sizeTable() {
	w := c.say.opening
	var rows [][]inline
	var short []inline
	for _, list := range [][]process.Measure{c.plan.Measures, c.plan.Choices} {
		for _, m := range list {
			from := w.given
			if m.Default {
				from = w.own
			}
			if m.From != "" {
				from = m.From
			}
			rows = append(rows, []inline{plain(upper(m.Title)), c.measureText(m), plain(from)})
			short = append(short, say(w.measureIs, values{"measure": plain(lower(m.Title)), "used": c.measureText(m)}))
		}
	}
	if c.brief && len(short) > 0 {
		c.para(joined(" ", strong(plain(w.measures)), say(w.measuresList, values{"list": joined(inline(c.say.list), short...)})))
		return
	}
	c.table([]column{
		{title: plain(w.measure)}, {title: plain(w.used), right: true}, {title: plain(w.from)},
	}, rows)
}
