package sheets

import (
	"slices"

	"bodkin/process"
)

// layOut lists what must be on the table before the work begins.
func (c *composer) layOut() {
	w := c.say.layout
	c.heading(2, plain(w.title))
	c.para(plain(w.intro))
	c.places()
	c.threads()
	if !c.brief {
		c.needles() // each place names its own too
	}
	if !c.partly() {
		c.materials()
	}
	c.tools()
	c.handling()
}

// places are the stations that the operations use, each with what it is set up
// with, in the order of use.
func (c *composer) places() {
	w := c.say.layout
	var items []inline
	for _, s := range c.plan.Stations {
		items = append(items, c.place(s)...)
	}
	if len(items) > 0 {
		c.heading(3, plain(w.places))
		c.tasks(items...)
	}
}

func (c *composer) place(s process.Station) []inline {
	w := c.say.layout
	var threads, needles, feet, heats []string
	used, steam := false, false
	for _, o := range c.told() {
		if o.Station != s.Name {
			continue
		}
		used = true
		threads = addOnce(threads, o.Setting.Thread)
		needles = addOnce(needles, o.Setting.Needle)
		feet = addOnce(feet, o.Setting.Foot)
		if o.Setting.HeatDots > 0 {
			heats = addOnce(heats, c.dots(o.Setting.HeatDots))
		}
		steam = steam || o.Setting.Steam
	}
	if !used {
		return nil
	}
	words := []inline{strong(plain(sentence(s.Title)))}
	for _, part := range []struct {
		pattern string
		list    []string
	}{{w.needle, needles}, {w.foot, feet}, {w.threads, threads}, {w.heat, heats}} {
		if len(part.list) > 0 {
			words = append(words, say(part.pattern, values{"list": c.inTurn(part.list)}))
		}
	}
	switch {
	case s.Kind == "hand" && len(needles) == 0:
		words = append(words, plain(w.handItem))
	case s.Kind == "table":
		words = append(words, plain(w.tableItem))
	}
	if steam {
		words = append(words, plain(w.steam))
	}
	if len(heats) > 0 && !c.brief {
		words = append(words, plain(w.dotsMean)) // ISO 3758, as care tables restate it
	}
	return []inline{joined(" ", words...)}
}

// inTurn lists what a station takes one after another.
func (c *composer) inTurn(list []string) inline {
	out := plain(list[0])
	for _, more := range list[1:] {
		out += inline(c.say.layout.then) + plain(more)
	}
	return out
}

// dots is an iron's heat in words.
func (c *composer) dots(n int) string {
	known := c.say.steps.dots
	return known[min(max(n, 0), len(known)-1)]
}

func (c *composer) threads() {
	w := c.say.layout
	var rows [][]inline
	var bases []basisFor
	used := c.inUse(func(s process.Setting) string { return s.Thread })
	for _, t := range c.plan.Thread {
		if c.partly() && !used[t.Colour] {
			continue
		}
		wind := plain(c.say.none)
		if t.Bobbins > 0 {
			wind = c.count(t.Bobbins, c.say.counts.bobbins)
		}
		rows = append(rows, []inline{
			plain(t.Colour), plain(t.Kind), c.metres(t.Metres), wind,
		})
		of := t.Colour
		if slices.ContainsFunc(c.plan.Thread, func(x process.Thread) bool { return x.Colour == t.Colour && x.Kind != t.Kind }) {
			of = fillText(w.spool, "colour", t.Colour, "kind", lower(t.Kind))
		}
		bases = append(bases, basisFor{of, t.Basis})
	}
	if len(rows) == 0 {
		return
	}
	c.heading(3, plain(w.thread))
	c.table([]column{
		{title: plain(w.colour)}, {title: plain(w.kind)}, {title: plain(w.metres), right: true}, {title: plain(w.bobbins)},
	}, rows)
	c.restsOn(w.threadBasis, bases)
}

func (c *composer) needles() {
	w := c.say.layout
	var items []inline
	used := c.inUse(func(s process.Setting) string { return s.Needle })
	for _, n := range c.plan.Needles {
		if c.partly() && !used[n.Needle] {
			continue
		}
		item := say(w.needleItem, values{"needle": strong(plain(n.Needle)), "use": plain(n.For)})
		for _, h := range n.Hints {
			item = joined(" ", item, plain(sentence(h)))
		}
		items = append(items, item)
	}
	if len(items) > 0 {
		c.heading(3, plain(w.needles))
		c.tasks(items...)
	}
}

// inUse is what the steps that are told are set to.
func (c *composer) inUse(of func(process.Setting) string) map[string]bool {
	used := map[string]bool{}
	for _, o := range c.told() {
		used[of(o.Setting)] = true
	}
	return used
}

func (c *composer) materials() {
	w := c.say.layout
	var items []inline
	var done []string
	for _, f := range c.plan.Interfacing {
		if len(addOnce(done, f.MaterialTitle)) == len(done) {
			continue
		}
		done = addOnce(done, f.MaterialTitle)
		items = append(items, c.interfacingToHave(f))
	}
	for _, n := range c.plan.Notions {
		items = append(items, c.notion(n))
	}
	if len(items) > 0 {
		c.heading(3, plain(w.materials))
		c.tasks(items...)
	}
}

// interfacingToHave is one material with all that it steadies.
func (c *composer) interfacingToHave(f process.Interfacing) inline {
	w := c.say.layout
	var pieces []string
	pattern, long := w.interfacing, 0.0
	for _, g := range c.plan.Interfacing {
		if g.MaterialTitle == f.MaterialTitle {
			if g.Tape {
				pattern, long = w.tape, long+g.Cut[1]*float64(g.Count)
			}
			pieces = addOnce(pieces, lower(g.Title))
		}
	}
	heat := inline("")
	if f.HeatDots > 0 {
		heat = say(w.selfNote, values{"heat": plain(c.dots(f.HeatDots))})
	}
	return say(pattern, values{
		"material": strong(plain(upper(f.MaterialTitle))), "pieces": c.listed(plains(pieces)), "heat": heat, "length": c.mm(long),
	})
}

func (c *composer) notion(n process.Notion) inline {
	w := c.say.layout
	if n.Length == 0 {
		return say(w.counted, values{"notion": strong(plain(n.Title)), "count": plain(number(n.Count)), "basis": plain(sentence(n.Basis))})
	}
	return say(w.notion, values{
		"notion": strong(plain(n.Title)), "count": c.count(n.Count, c.say.counts.pieces),
		"length": c.mm(n.Length), "basis": plain(sentence(n.Basis)),
	})
}

// tools are the small things that the operations imply.
func (c *composer) tools() {
	var items []inline
	for _, t := range smallTools(c.say.tools) {
		if t.wanted(c.plan) {
			items = append(items, plain(t.words))
		}
	}
	items = append(items, c.constructionTools()...)
	if c.brief && len(items) > 0 {
		items = []inline{joined(" ", items...)}
	}
	if len(items) > 0 {
		c.heading(3, plain(c.say.layout.tools))
		c.tasks(items...)
	}
}

// handling is what to know of each cloth before it is touched.
func (c *composer) handling() {
	var items []inline
	var done []string
	for _, cl := range c.plan.Cloths {
		if len(cl.Handling) == 0 || len(addOnce(done, cl.Name)) == len(done) {
			continue
		}
		done = addOnce(done, cl.Name)
		words := []inline{strong(plain(sentence(cl.Title)))}
		for _, h := range cl.Handling {
			words = append(words, plain(sentence(h)))
		}
		items = append(items, joined(" ", words...))
	}
	if len(items) > 0 {
		c.heading(3, plain(c.say.layout.handling))
		c.list(items...)
	}
}
