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
	title := s.Title + ": shared work"
	c.heading(1, plain(title))
	c.shareOpening()
	if opts.For != Bench {
		c.makersPage()
		c.row()
	}
	if cutters := s.Cutters(); len(cutters) > 0 {
		c.cutOut()
		c.para(say("Whoever cuts has this page at the table: {who}.", values{"who": c.listed(plains(cutters))}))
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

func minutesWords(m float64) string {
	if m == math.Trunc(m) {
		return fmt.Sprintf("%.0f min", m)
	}
	return fmt.Sprintf("%.1f min", m)
}

func (c *sharer) shareOpening() {
	s := c.share
	c.para(say("The work on {garment} shared among {n} in {room}. All times count from the beginning at {begins}; all is done after {finish}.",
		values{"garment": plain(s.Garment), "n": plain(namesOf(s.People)), "room": plain(s.Workroom), "begins": plain(s.Begins), "finish": strong(plain(from(s.Finish)))}))
	if s.Begun != nil {
		c.para(say("Of the work {n} are done already and left out here.", values{"n": c.count(len(s.Begun.Done), c.say.counts.operations)}))
	}
	switch {
	case s.Proved && s.Fewest:
		c.para("No sharing ends sooner, and none that ends then has fewer hand-overs: proved.")
	case s.Proved:
		c.para("No sharing ends sooner: proved. Fewer hand-overs may be possible.")
	default:
		c.para(say("The best that was found; none can end before {bound}.", values{"bound": plain(from(s.Bound))}))
	}
	if s.Alone > 0 && len(s.People) > 1 {
		c.para(say("{name} alone would need {alone}; the help saves her {saved}.", values{
			"name": plain(s.People[0].Name), "alone": plain(from(s.Alone)), "saved": plain(minutesWords(math.Round(max(s.Alone-s.Finish, 0))))}))
	}
}

func namesOf(people []process.Bench) string {
	var names []string
	for _, b := range people {
		names = append(names, b.Name)
	}
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}

func (c *sharer) makersPage() {
	s := c.share
	c.heading(2, "For the maker")
	c.theDay()
	c.heading(3, "What each has in hand")
	var rows [][]inline
	for _, b := range s.People {
		rows = append(rows, []inline{plain(b.Name), plain(number(len(b.Turns))), plain(minutesWords(b.Busy)), plain(minutesWords(b.Waiting))})
	}
	c.table([]column{{title: "Who"}, {title: "Operations", right: true}, {title: "At work", right: true}, {title: "Waiting", right: true}}, rows)
	c.heading(3, "Hand-over points")
	if len(s.Handed) == 0 {
		c.para("Nothing is handed over.")
	}
	rows = nil
	numbers := map[string]int{}
	for _, b := range s.People {
		for _, t := range b.Turns {
			numbers[t.Operation.ID] = t.Number
		}
	}
	for _, h := range s.Handed {
		rows = append(rows, []inline{plain(from(h.At)), plain(h.Part), plain(h.From + ", after " + number(numbers[h.After])), plain(h.To + ", for " + number(numbers[h.Next]))})
	}
	c.table([]column{{title: "At", right: true}, {title: "What"}, {title: "From"}, {title: "To"}}, rows)
	c.giveAway()
	rows = nil
	for _, e := range s.Extras {
		rows = append(rows, []inline{plain(e.What), plain(from(e.Finish)), plain(minutesWords(e.Saves))})
	}
	if len(rows) > 0 {
		c.heading(3, "What one more would change")
		c.table([]column{{title: "With"}, {title: "Done after", right: true}, {title: "Saves", right: true}}, rows)
	}
	if c.brief {
		return
	}
	c.heading(3, "What these figures rest on")
	for _, n := range s.Notices {
		c.para(plain(n.Text))
	}
}

// giveAway tells what would take most off the maker, one other at a time.
func (c *sharer) giveAway() {
	if len(c.share.GiveAway) == 0 {
		return
	}
	c.heading(3, "What can be given away")
	c.para("For a day with one helper only: the most that was found to take off the maker's hands, even where all is not done sooner.")
	for _, g := range c.share.GiveAway {
		if len(g.Operations) == 0 {
			c.para(say("To {name}: nothing that is worth carrying to her in her hours.", values{"name": plain(g.Person)}))
			continue
		}
		c.para(say("To {name}: it takes {m} off the maker's hands, with {n} hand-overs; all is done after {finish}.", values{
			"name": strong(plain(g.Person)), "m": plain(minutesWords(g.Frees)), "n": plain(number(g.Handovers)), "finish": plain(from(g.Finish))}))
		var rows [][]inline
		for _, o := range g.Operations {
			rows = append(rows, []inline{plain(from(o.Begin)), plain(upper(spoken(o.Does))), plain(o.Part), plain(minutesWords(o.Minutes))})
		}
		c.table([]column{{title: "At", right: true}, {title: "What"}, {title: "On"}, {title: "Takes her", right: true}}, rows)
	}
}

// row tells how many garments would move down a row of tables.
func (c *sharer) row() {
	w := c.share.Row
	if w == nil {
		return
	}
	c.heading(2, say("{n} of them: a row of tables", values{"n": plain(number(w.Garments))}))
	c.para(say("Each person does her part of every garment and passes it on. One garment is {m} of work at the pace of the plan; trial rows are made once for all and left out, and so is setting machines up between garments, since each table keeps its own. Cut and share out in bundles.",
		values{"m": plain(minutesWords(w.Work))}))
	var rows [][]inline
	for _, r := range w.Rows {
		best := plain("proved")
		if !r.Proved {
			best = say("none under {m}", values{"m": plain(minutesWords(r.Bound))})
		}
		rows = append(rows, []inline{plain(number(r.People)), plain(minutesWords(r.Every)), plain(fmt.Sprintf("%.1f", r.PerHour)), plain(from(r.All)), best, plain(orNone(strings.Join(r.Lacking, ", "), c.say.none))})
	}
	c.table([]column{{title: "People", right: true}, {title: "One every", right: true}, {title: "An hour", right: true}, {title: "All after", right: true}, {title: "Best"}, {title: "The room lacks"}}, rows)
	if r := w.Fewest; r != nil {
		words := say("{rate} an hour take {n}: proved to be the fewest.", values{"rate": plain(fmt.Sprintf("%g", w.Rate)), "n": strong(c.count(r.People, counted{"1 person", "{n} people"}))})
		if !r.Proved {
			words = say("{rate} an hour take {n} as far as was found; fewer than {b} cannot do it.", values{"rate": plain(fmt.Sprintf("%g", w.Rate)), "n": strong(c.count(r.People, counted{"1 person", "{n} people"})), "b": plain(number(int(r.Bound)))})
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
	c.heading(3, say("The tables of {n}", values{"n": c.count(r.People, counted{"1 person", "{n} people"})}))
	var rows [][]inline
	for k, t := range r.Tables {
		rows = append(rows, []inline{plain(number(k + 1)), plain(minutesWords(t.Minutes)), plain(strings.Join(t.Places, ", ")), plain(strings.Join(t.Operations, ", "))})
	}
	c.table([]column{{title: "Table", right: true}, {title: "Takes", right: true}, {title: "Places"}, {title: "Operations"}}, rows)
}

// bench is one person's sheet.
func (c *sharer) bench(b process.Bench) {
	c.heading(2, say("Bench sheet: {name}", values{"name": plain(b.Name)}))
	if len(b.Turns) == 0 {
		c.para("Nothing here asks for her skills in her hours.")
		return
	}
	c.para(say("Here from {from} to {until}, counted from the beginning. Numbers are the same on every bench.",
		values{"from": plain(from(b.From)), "until": plain(from(b.Until))}))
	c.cautionList(3, c.plan.Cautions)
	c.heading(3, "Your work")
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
	head := say("{m} to wait.", values{"m": plain(minutesWords(w.Minutes))})
	v := values{"who": plain(w.Person), "n": plain(number(c.numberOf(w.For)))}
	switch w.Cause {
	case "earlier", "coming":
		head = say("{m} to wait, for number {n} by {who}.", values{"m": plain(minutesWords(w.Minutes)), "n": v["n"], "who": v["who"]})
	case "engaged":
		head = say("{m} to wait until {who} leaves the machine after number {n}.", values{"m": plain(minutesWords(w.Minutes)), "n": v["n"], "who": v["who"]})
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
	parts := []inline{strong(say("{at} · {n} · {machine}: {part}", values{
		"at": plain(from(t.Begin)), "n": plain(number(t.Number)), "machine": plain(t.Machine), "part": plain(t.Operation.Part)}))}
	for _, f := range t.From {
		parts = append(parts, say("Comes from {who}, number {n}.", values{"who": plain(f.Person), "n": plain(number(f.Number))}))
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
			parts = append(parts, say("Asks for {skill}, level {level}: {why}.", values{
				"skill": plain(a.Title), "level": plain(number(a.Level)), "why": plain(why)}))
		}
	}
	for _, to := range t.To {
		parts = append(parts, strong(say("Hand on to {who}, number {n}.", values{"who": plain(to.Person), "n": plain(number(to.Number))})))
	}
	parts = append(parts, say("Done at {end}.", values{"end": plain(from(t.End))}))
	return joined(" ", parts...)
}

func (c *sharer) settingWords(t process.Turn) inline {
	s := t.Operation.Setting
	var words []string
	if s.Thread != "" {
		words = append(words, s.Thread+" thread")
	}
	if s.Needle != "" {
		words = append(words, "needle "+s.Needle)
	}
	if s.Foot != "" {
		words = append(words, strings.TrimSuffix(spoken(s.Foot), " foot")+" foot")
	}
	if s.StitchMM > 0 {
		words = append(words, fmt.Sprintf("stitch %.1f mm", s.StitchMM))
	}
	if t.Work > t.Begin {
		words = append(words, minutesWords(math.Round((t.Work-t.Begin)*10)/10)+" to set up")
	}
	if len(words) == 0 {
		return ""
	}
	return plain(upper(strings.Join(words, ", ")) + ".")
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
	c.heading(3, "The day")
	name := func() figure.Figure {
		return figure.Fit(c.slug("day"), "Who does what when, and when each machine is in use, to scale.", c.dayItems(), 1, c.measure)
	}
	if s.Finish <= 0 {
		return
	}
	c.draw(name, "Numbers are those of the operations; grey is setting up; hours and minutes from the beginning.")
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
