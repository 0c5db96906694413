package sheets

import (
	"fmt"
	"math"
	"strings"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// ComposeShare writes a share: the maker's page with the day at a glance and the
// points of handing over, what to cut, and a bench sheet for each person; for the
// bench the last two alone. Of the options it reads FiguresAt, For, Brief, Units
// and Wording. It is a pure function.
func ComposeShare(s *process.Share, opts Options) Sheet {
	c := &sharer{share: s, composer: *newComposer(s.Plan, opts)}
	title := fillText(c.say.share.title, "work", s.Title)
	c.heading(1, plain(title))
	c.shareOpening()
	if opts.For != Bench {
		c.makersPage()
		c.row()
	}
	if cutters := s.Cutters(); len(cutters) > 0 {
		c.cutOut()
		c.para(say(c.say.share.cutters, values{"who": c.listed(plains(cutters))}))
	}
	for _, b := range s.People {
		c.bench(b)
	}
	return Sheet{Title: title, Markdown: c.page.out.Bytes(), Figures: c.drawings}
}

type sharer struct {
	composer
	share *process.Share
}

// from is a time from the beginning: hours and minutes, rounded down so that
// nobody comes late.
func from(minutes float64) string {
	m := int(math.Floor(minutes + 1e-6))
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

func (c *sharer) shareOpening() {
	s := c.share
	c.para(say(c.say.share.intro,
		values{"garment": plain(s.Garment), "n": c.listed(plains(namesOf(s.People))), "room": plain(s.Workroom), "begins": plain(s.Begins), "finish": strong(plain(from(s.Finish)))}))
	if s.Begun != nil {
		c.para(say(c.say.share.begun, values{"n": c.count(len(s.Begun.Done), c.say.counts.operations)}))
	}
	switch {
	case s.Proved && s.Fewest:
		c.para(plain(c.say.share.fewest))
	case s.Proved:
		c.para(plain(c.say.share.soonest))
	default:
		c.para(say(c.say.share.bounded, values{"bound": plain(from(s.Bound))}))
	}
	if s.Alone > 0 && len(s.People) > 1 {
		c.para(say(c.say.share.alone, values{
			"name": plain(s.People[0].Name), "alone": plain(from(s.Alone)), "saved": c.minutes(math.Round(max(s.Alone-s.Finish, 0)))}))
	}
}

func namesOf(people []process.Bench) []string {
	var names []string
	for _, b := range people {
		names = append(names, b.Name)
	}
	return names
}

func (c *sharer) makersPage() {
	s := c.share
	c.heading(2, plain(c.say.share.maker))
	c.theDay()
	c.heading(3, plain(c.say.share.inHand))
	var rows [][]inline
	for _, b := range s.People {
		rows = append(rows, []inline{plain(b.Name), plain(number(len(b.Turns))), c.minutes(b.Busy), c.minutes(b.Waiting)})
	}
	c.table([]column{{title: plain(c.say.share.who)}, {title: plain(c.say.share.operations), right: true}, {title: plain(c.say.share.atWork), right: true}, {title: plain(c.say.share.waiting), right: true}}, rows)
	c.heading(3, plain(c.say.share.handOvers))
	if len(s.Handed) == 0 {
		c.para(plain(c.say.share.noHandOvers))
	}
	rows = nil
	numbers := map[string]int{}
	for _, b := range s.People {
		for _, t := range b.Turns {
			numbers[t.Operation.ID] = t.Number
		}
	}
	for _, h := range s.Handed {
		rows = append(rows, []inline{plain(from(h.At)), plain(h.Part),
			say(c.say.share.fromAfter, values{"who": plain(h.From), "n": plain(number(numbers[h.After]))}),
			say(c.say.share.toFor, values{"who": plain(h.To), "n": plain(number(numbers[h.Next]))})})
	}
	c.table([]column{{title: plain(c.say.share.at), right: true}, {title: plain(c.say.share.what)}, {title: plain(c.say.share.from)}, {title: plain(c.say.share.to)}}, rows)
	c.giveAway()
	rows = nil
	for _, e := range s.Extras {
		rows = append(rows, []inline{plain(e.What), plain(from(e.Finish)), c.minutes(e.Saves)})
	}
	if len(rows) > 0 {
		c.heading(3, plain(c.say.share.more))
		c.table([]column{{title: plain(c.say.share.with)}, {title: plain(c.say.share.doneAfter), right: true}, {title: plain(c.say.share.saves), right: true}}, rows)
	}
	if c.brief {
		return
	}
	c.heading(3, plain(c.say.share.restsOn))
	for _, n := range s.Notices {
		c.para(plain(n.Text))
	}
}

// giveAway tells what would take most off the maker, one other at a time.
func (c *sharer) giveAway() {
	if len(c.share.GiveAway) == 0 {
		return
	}
	c.heading(3, plain(c.say.share.give))
	c.para(plain(c.say.share.giveIntro))
	for _, g := range c.share.GiveAway {
		if len(g.Operations) == 0 {
			c.para(say(c.say.share.giveNothing, values{"name": plain(g.Person)}))
			continue
		}
		c.para(say(c.say.share.giveTo, values{
			"name": strong(plain(g.Person)), "m": c.minutes(g.Frees), "n": plain(number(g.Handovers)), "finish": plain(from(g.Finish))}))
		var rows [][]inline
		for _, o := range g.Operations {
			rows = append(rows, []inline{plain(from(o.Begin)), plain(upper(spoken(o.Does))), plain(o.Part), c.minutes(o.Minutes)})
		}
		c.table([]column{{title: plain(c.say.share.at), right: true}, {title: plain(c.say.share.what)}, {title: plain(c.say.share.on)}, {title: plain(c.say.share.takesHer), right: true}}, rows)
	}
}

// row tells how many garments would move down a row of tables.
func (c *sharer) row() {
	w := c.share.Row
	if w == nil {
		return
	}
	c.heading(2, say(c.say.share.row, values{"n": plain(number(w.Garments))}))
	c.para(say(c.say.share.rowIntro,
		values{"m": c.minutes(w.Work)}))
	var rows [][]inline
	for _, r := range w.Rows {
		best := plain(c.say.share.proved)
		if !r.Proved {
			best = say(c.say.share.noneUnder, values{"m": c.minutes(r.Bound)})
		}
		rows = append(rows, []inline{plain(number(r.People)), c.minutes(r.Every), plain(fmt.Sprintf("%.1f", r.PerHour)), plain(from(r.All)), best, plain(orNone(strings.Join(r.Lacking, c.say.list), c.say.none))})
	}
	c.table([]column{{title: plain(c.say.share.people), right: true}, {title: plain(c.say.share.every), right: true}, {title: plain(c.say.share.perHour), right: true}, {title: plain(c.say.share.allAfter), right: true}, {title: plain(c.say.share.best)}, {title: plain(c.say.share.lacks)}}, rows)
	if r := w.Fewest; r != nil {
		words := say(c.say.share.rateFewest, values{"rate": plain(fmt.Sprintf("%g", w.Rate)), "n": strong(c.count(r.People, c.say.counts.persons))})
		if !r.Proved {
			words = say(c.say.share.rateFound, values{"rate": plain(fmt.Sprintf("%g", w.Rate)), "n": strong(c.count(r.People, c.say.counts.persons)), "b": plain(number(int(r.Bound)))})
		}
		c.para(words)
		c.rowTables(*r)
		return
	}
	have := min(len(c.share.People), len(w.Rows))
	c.rowTables(w.Rows[have-1])
}

// rowTables tells each table of a row what is its own.
func (c *sharer) rowTables(r process.TableRow) {
	c.heading(3, say(c.say.share.tables, values{"n": c.count(r.People, c.say.counts.persons)}))
	var rows [][]inline
	for k, t := range r.Tables {
		rows = append(rows, []inline{plain(number(k + 1)), plain(orNone(t.Person, c.say.none)), c.minutes(t.Minutes), c.minutes(t.Setups), plain(strings.Join(t.Places, c.say.list)), plain(strings.Join(t.Operations, c.say.list))})
	}
	c.table([]column{{title: plain(c.say.share.table), right: true}, {title: plain(c.say.share.sits)}, {title: plain(c.say.share.takes), right: true}, {title: plain(c.say.share.ofItSetUp), right: true}, {title: plain(c.say.share.places)}, {title: plain(c.say.share.operations)}}, rows)
}

// bench is one person's sheet.
func (c *sharer) bench(b process.Bench) {
	c.heading(2, say(c.say.share.bench, values{"name": plain(b.Name)}))
	if len(b.Turns) == 0 {
		c.para(plain(c.say.share.idle))
		return
	}
	c.para(say(c.say.share.here,
		values{"from": plain(from(b.From)), "until": plain(from(b.Until))}))
	c.cautionList(3, c.plan.Cautions)
	c.heading(3, plain(c.say.share.work))
	c.drawn = nil // every person has her own paper
	told := map[string]bool{}
	for _, t := range b.Turns {
		if w := t.Wait; w != nil && w.Minutes > 0 {
			c.quote(c.waiting(w))
		}
		if seam, ok := c.seams[t.Operation.Seam]; ok {
			c.newSeam(seam, told)
		}
		c.tasks(append([]inline{c.turn(t, told)}, c.checksOf(t.Operation.ID)...)...)
	}
}

func (c *sharer) waiting(w *process.Waiting) inline {
	head := say(c.say.share.wait, values{"m": c.minutes(w.Minutes)})
	v := values{"who": plain(w.Person), "n": plain(number(c.numberOf(w.For)))}
	switch w.Cause {
	case "earlier", "coming":
		head = say(c.say.share.waitFor, values{"m": c.minutes(w.Minutes), "n": v["n"], "who": v["who"]})
	case "engaged":
		head = say(c.say.share.waitMachine, values{"m": c.minutes(w.Minutes), "n": v["n"], "who": v["who"]})
	}
	return joined(" ", head, plain(w.Meantime))
}

func (c *sharer) numberOf(operation string) int {
	for _, b := range c.share.People {
		for _, t := range b.Turns {
			if t.Operation.ID == operation {
				return t.Number
			}
		}
	}
	return 0
}

// turn is an operation with all that its person must know. What makes it hard
// is told once a bench.
func (c *sharer) turn(t process.Turn, told map[string]bool) inline {
	parts := []inline{strong(say(c.say.share.turn, values{
		"at": plain(from(t.Begin)), "n": plain(number(t.Number)), "machine": plain(t.Machine), "part": plain(t.Operation.Part)}))}
	for _, f := range t.From {
		parts = append(parts, say(c.say.share.comes, values{"who": plain(f.Person), "n": plain(number(f.Number))}))
	}
	if set := c.settingWords(t); set != "" {
		parts = append(parts, set)
	}
	parts = append(parts, plain(sentence(t.Operation.Text)), soft(plain(sentence(t.Operation.Good))))
	for _, a := range t.Asked {
		if c.brief {
			break
		}
		why := strings.Join(a.Because, "; ")
		if key := fmt.Sprint(a.Skill, a.Level, why); why != "" && !told[key] {
			told[key] = true
			parts = append(parts, say(c.say.share.asks, values{
				"skill": plain(a.Title), "level": plain(number(a.Level)), "why": plain(why)}))
		}
	}
	for _, to := range t.To {
		parts = append(parts, strong(say(c.say.share.handOn, values{"who": plain(to.Person), "n": plain(number(to.Number))})))
	}
	parts = append(parts, say(c.say.share.doneAt, values{"end": plain(from(t.End))}))
	return joined(" ", parts...)
}

func (c *sharer) settingWords(t process.Turn) inline {
	words := c.settingParts(t.Operation.Setting)
	if t.Work > t.Begin {
		words = append(words, say(c.say.share.setUp, values{"m": c.minutes(t.Work - t.Begin)}))
	}
	if len(words) == 0 {
		return ""
	}
	return inline(upper(string(joined(inline(c.say.list), words...)))) + "."
}

// Sizes of the picture of the day, in mm.
const (
	dayWide   = 170
	dayNames  = 30
	dayRow    = 8
	dayBox    = 5.6
	dayLetter = 2.4
)

// theDay draws rows of people and machines to scale.
func (c *sharer) theDay() {
	s := c.share
	c.heading(3, plain(c.say.share.day))
	name := func() figure.Figure {
		return figure.Fit(c.slug("day"), c.say.share.dayAlt, c.dayItems(), 1, c.measure)
	}
	if s.Finish <= 0 {
		return
	}
	c.draw(name, plain(c.say.share.dayCaption))
}

func (c *sharer) dayItems() []figure.Item {
	s := c.share
	x := func(m float64) float64 { return dayNames + m/s.Finish*(dayWide-dayNames) }
	var items []figure.Item
	rows := len(s.People) + len(s.Machines)
	bottom := 5 + dayRow*float64(rows)
	step := 15.0
	for step*12 < s.Finish {
		step *= 2
	}
	for m := 0.0; m <= s.Finish; m += step {
		items = append(items,
			figure.Line(figure.Point{X: x(m), Y: 4}, figure.Point{X: x(m), Y: bottom}, figure.Stroke{Width: figure.Hairline, Light: 0.7}),
			figure.Text{At: figure.Point{X: x(m), Y: 3}, Size: dayLetter, Anchor: figure.Middle, Words: from(m)})
	}
	turns := map[int]process.Turn{}
	row := func(k int, title string, here []process.Turn, bold bool) {
		y := 5 + dayRow*float64(k)
		for title != "" && c.measure.TextWidth(title, dayLetter, bold) > dayNames-2 {
			r := []rune(strings.TrimSuffix(title, "…"))
			title = strings.TrimSpace(string(r[:len(r)-1])) + "…"
		}
		items = append(items, figure.Text{At: figure.Point{X: 0, Y: y + dayRow/2 + 0.9}, Size: dayLetter, Bold: bold, Words: title})
		for _, t := range here {
			top := figure.Point{X: x(t.Begin), Y: y + (dayRow-dayBox)/2}
			wide := x(t.End) - x(t.Begin)
			items = append(items, figure.Rect(top, wide, dayBox, figure.Stroke{Width: figure.Thin}, figure.Fill{White: true}))
			if t.Work > t.Begin {
				items = append(items, figure.Rect(top, x(t.Work)-x(t.Begin), dayBox, figure.Stroke{Width: figure.Thin}, figure.Fill{Tint: 0.35}))
			}
			label := number(t.Number)
			if c.measure.TextWidth(label, dayLetter, false) < x(t.End)-x(t.Work)-0.3 {
				items = append(items, figure.Text{At: figure.Point{X: (x(t.Work) + x(t.End)) / 2, Y: y + dayRow/2 + 0.85}, Size: dayLetter, Anchor: figure.Middle, Words: label})
			}
		}
	}
	for k, b := range s.People {
		for _, t := range b.Turns {
			turns[t.Number] = t
		}
		row(k, b.Name, b.Turns, true)
	}
	for k, m := range s.Machines {
		var here []process.Turn
		for _, n := range m.Turns {
			here = append(here, turns[n])
		}
		row(len(s.People)+k, m.Title, here, false)
	}
	return append(items, figure.Line(figure.Point{X: 0, Y: bottom}, figure.Point{X: dayWide, Y: bottom}, figure.Stroke{Width: figure.Hairline, Light: 0.5}))
}
