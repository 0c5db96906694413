package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bodkin/process"
)

// ClassPart is one of the papers of a class.
type ClassPart string

// The papers of a class: what all share, a page for each student, the
// teacher's, and what the room needs. Empty means all of them.
const (
	Handout   ClassPart = "handout"
	OwnPages  ClassPart = "pages"
	RunSheet  ClassPart = "teacher"
	Materials ClassPart = "materials"
)

// ClassParts are the papers in the order in which they are written.
func ClassParts() []string {
	return []string{string(Handout), string(OwnPages), string(RunSheet), string(Materials)}
}

// ComposeClass writes the papers of a class. Of the options it reads Units and
// FiguresAt. It is a pure function.
func ComposeClass(p *process.ClassPlan, part ClassPart, opts Options) Sheet {
	c := &lessons{class: p, opts: opts, shown: map[string]bool{}}
	c.composer = *newComposer(p.Students[0].Plan, opts)
	c.heading(1, plain(p.Title))
	c.opening()
	papers := []struct {
		part  ClassPart
		write func()
	}{{Handout, c.handout}, {OwnPages, c.pages}, {RunSheet, c.runSheet}, {Materials, c.materials}}
	for _, paper := range papers {
		if part == "" || part == paper.part {
			paper.write()
		}
	}
	return Sheet{Title: p.Title, Markdown: c.page.out.Bytes(), Figures: c.drawings}
}

type lessons struct {
	composer
	class *process.ClassPlan
	opts  Options
	shown map[string]bool // constructions that the handout has drawn
}

// take turns to another student's plan, on the same paper.
func (c *lessons) take(plan *process.Plan) {
	next := newComposer(plan, c.opts)
	next.page, next.drawings, next.slugs, next.measure = c.page, c.drawings, c.slugs, c.measure
	c.composer = *next
}

func (c *lessons) opening() {
	p := c.class
	c.para(say(c.say.lesson.intro,
		values{"garment": plain(p.GarmentName), "n": c.listed(plains(namesOfClass(p))), "room": plain(p.Room)}))
	if p.Notes != "" {
		c.quote(plain(strings.Join(strings.Fields(p.Notes), " ")))
	}
	var rows [][]inline
	for _, s := range p.Sessions {
		home := plain(c.say.none)
		if len(s.Homework) > 0 {
			home = plain(c.span(s.Homework[0], s.Homework[len(s.Homework)-1]))
		}
		rows = append(rows, []inline{plain(number(s.Number)), plain(orNone(s.Date, c.say.none)), plain(c.span(s.First, s.Last)), home})
	}
	c.table([]column{{title: plain(c.say.lesson.sessionColumn), right: true}, {title: plain(c.say.lesson.when)}, {title: plain(c.say.lesson.numbersColumn)}, {title: plain(c.say.lesson.homeColumn)}}, rows)
}

func namesOfClass(p *process.ClassPlan) []string {
	var names []string
	for _, s := range p.Students {
		names = append(names, s.Name)
	}
	return names
}

// span is a run of numbers.
func (c *lessons) span(first, last string) string {
	if first == last {
		return first
	}
	return fillText(c.say.lesson.span, "first", first, "last", last)
}

func orNone(text, none string) string {
	if text == "" {
		return none
	}
	return text
}

// handout is what all have in common.
func (c *lessons) handout() {
	session, home := 0, false
	for _, n := range c.class.Numbers {
		if n.Session != session || n.Homework != home {
			session, home = n.Session, n.Homework
			words := say(c.say.lesson.work, values{"n": plain(number(n.Session))})
			if home {
				words = say(c.say.lesson.atHome, values{"n": plain(number(n.Session))})
			}
			c.heading(2, words)
			if session == 1 && !home {
				c.cautionsOfAll()
			}
		}
		c.number(n)
	}
	c.glossary()
}

func (c *lessons) number(n process.ClassNumber) {
	c.heading(3, say(c.say.lesson.number, values{"n": plain(n.Number), "title": plain(n.Title)}))
	c.draws(n)
	var items []inline
	for _, v := range n.Variants {
		items = append(items, c.variant(n, v))
	}
	c.tasks(items...)
	if len(n.Free) > 0 {
		c.para(say(c.say.lesson.free, values{"names": c.listed(plains(n.Free))}))
	}
}

// draws shows each construction cut across where it is first met.
func (c *lessons) draws(n process.ClassNumber) {
	for _, v := range n.Variants {
		if v.Construction == "" || c.shown[v.Construction] {
			continue
		}
		c.shown[v.Construction] = true
		s := c.student(v.Students[0])
		k := slices.IndexFunc(s.Plan.Seams, func(x process.Seam) bool { return x.Name == n.Seam })
		if k < 0 {
			continue
		}
		c.take(s.Plan)
		c.sectionFigure(s.Plan.Seams[k])
	}
}

func (c *lessons) student(name string) process.StudentPlan {
	for _, s := range c.class.Students {
		if s.Name == name {
			return s
		}
	}
	return c.class.Students[0]
}

func (c *lessons) variant(n process.ClassNumber, v process.ClassVariant) inline {
	var head inline
	switch {
	case len(n.Variants) == 1 && v.Construction == "":
	case len(n.Variants) == 1:
		head = strong(say(c.say.lesson.how, values{"how": plain(v.Construction)}))
	case v.Construction == "":
		head = strong(say(c.say.lesson.who, values{"who": c.listed(plains(v.Students))}))
	default:
		head = strong(say(c.say.lesson.whoHow, values{"who": c.listed(plains(v.Students)), "how": plain(v.Construction)}))
	}
	parts := []inline{head, say(c.say.lesson.place, values{"place": c.placeWords(v)}), plain(sentence(v.Text))}
	if v.Good != "" {
		parts = append(parts, soft(say(c.say.lesson.right, values{"good": plain(lower(v.Good))})))
	}
	for _, k := range v.Checks {
		parts = append(parts, strong(plain(c.say.lesson.check)), say(c.say.lesson.within, values{
			"what": plain(k.What), "mm": c.mm(k.Expect), "off": c.mm(k.Tolerance)}))
	}
	return joined(" ", parts...)
}

// placeWords are the place with what all who use it set alike.
func (c *lessons) placeWords(v process.ClassVariant) inline {
	set := v.Setting
	set.Thread, set.Bobbin, set.Loopers, set.Needle = "", "", "", "" // each student's own
	return joined(inline(c.say.list), append([]inline{plain(v.Station)}, c.settingParts(set)...)...)
}

// pages are one for each student.
func (c *lessons) pages() {
	for _, s := range c.class.Students {
		c.take(s.Plan)
		c.heading(2, say(c.say.lesson.own, values{"name": plain(s.Name)}))
		c.sizeTable()
		c.clothTable()
		c.pieceTable()
		c.edgeTable()
		c.strips()
		c.handling()
		c.heading(3, plain(c.say.lesson.seams))
		var rows [][]inline
		for _, x := range s.Plan.Seams {
			rows = append(rows, []inline{plain(upper(x.Title)), plain(x.ConstructionTitle), c.allowance(x), c.mmOr(x.Finished)})
		}
		c.table([]column{{title: plain(c.say.lesson.seam)}, {title: plain(c.say.lesson.sewn)}, {title: plain(c.say.lesson.allowance), right: true}, {title: plain(c.say.lesson.finished), right: true}}, rows)
		c.threads()
		c.needles()
		c.heading(3, plain(c.say.lesson.numbers))
		if len(s.Free) > 0 {
			c.para(say(c.say.lesson.notFor, values{"numbers": c.listed(plains(s.Free))}))
		} else {
			c.para(plain(c.say.lesson.allFor))
		}
		if own := c.ownVariants(s.Name); len(own) > 0 {
			c.para(plain(c.say.lesson.otherwise))
			c.list(own...)
		}
		c.list(append(c.stitchLengths(s), c.changesOf(s)...)...)
	}
}

// stitchLengths are a student's own, where those of others may differ.
func (c *lessons) stitchLengths(s process.StudentPlan) []inline {
	turn := map[string]string{}
	for _, t := range s.Turns {
		turn[t.Operation] = t.Number
	}
	var lengths []float64
	numbers := map[float64][]string{}
	for _, o := range s.Plan.Operations {
		if mm := o.Setting.StitchMM; mm > 0 {
			if numbers[mm] == nil {
				lengths = append(lengths, mm)
			}
			numbers[mm] = append(numbers[mm], turn[o.ID])
		}
	}
	var items []inline
	for k, mm := range lengths {
		if k == 0 && len(lengths) > 1 {
			items = append(items, say(c.say.lesson.stitchFirst, values{"mm": strong(stitchLength(mm))}))
			continue
		}
		if k == 0 {
			items = append(items, say(c.say.lesson.stitch, values{"mm": strong(stitchLength(mm))}))
			continue
		}
		items = append(items, say(c.say.lesson.stitchAt, values{"mm": strong(stitchLength(mm)), "numbers": c.listed(plains(numbers[mm]))}))
	}
	return items
}

// ownVariants are the numbers where students differ in how they are made.
func (c *lessons) ownVariants(name string) []inline {
	var items []inline
	var numbers, ways []string
	for _, n := range c.class.Numbers {
		for _, v := range n.Variants {
			if v.Construction == "" || !slices.Contains(v.Students, name) || !differs(n) {
				continue
			}
			if k := slices.Index(ways, v.Construction); k >= 0 {
				numbers[k] += c.say.list + n.Number
				continue
			}
			ways, numbers = append(ways, v.Construction), append(numbers, n.Number)
		}
	}
	for k, w := range ways {
		items = append(items, say(c.say.lesson.howAt, values{"how": strong(plain(w)), "numbers": plain(numbers[k])}))
	}
	return items
}

func differs(n process.ClassNumber) bool {
	return slices.ContainsFunc(n.Variants, func(v process.ClassVariant) bool { return v.Construction != n.Variants[0].Construction })
}

// changesOf are the changes of thread and needle that a student has to make.
func (c *lessons) changesOf(s process.StudentPlan) []inline {
	var items []inline
	turn := map[string]string{}
	for _, t := range s.Turns {
		turn[t.Operation] = t.Number
	}
	for _, st := range s.Plan.Steps {
		for _, ch := range c.changesBefore(st.Number) {
			if ch.What == "foot" || ch.What == "stitch" || ch.What == "heat" {
				continue
			}
			items = append(items, say(c.say.lesson.change, values{
				"n": plain(turn[st.Operations[0]]), "machine": plain(lower(c.stationTitle(ch.Station))), "what": c.allThatChanges(ch.all), "to": strong(plain(ch.To))}))
		}
	}
	return items
}

// runSheet is the teacher's.
func (c *lessons) runSheet() {
	c.heading(2, plain(c.say.lesson.teacher))
	p := c.class
	verdict := plain(c.say.lesson.bestFound)
	if p.Order.Cheapest {
		verdict = plain(c.say.lesson.cheapest)
	}
	c.para(joined(" ", say(c.say.lesson.spends, values{
		"all": c.minutes(math.Round(p.Order.Change)), "alone": c.minutes(math.Round(p.Order.Alone))}), verdict))
	for _, s := range p.Sessions {
		c.session(s)
	}
	c.heading(3, plain(c.say.lesson.ownBest))
	var rows [][]inline
	for _, s := range p.Students {
		rows = append(rows, []inline{plain(s.Name), plain(fmt.Sprintf("%.1f", s.Pace)), c.minutes(math.Round(minutesOf(s))),
			c.minutes(math.Round(s.Change)), c.minutes(math.Round(s.Alone))})
	}
	c.table([]column{{title: plain(c.say.lesson.whoColumn)}, {title: plain(c.say.lesson.pace), right: true}, {title: plain(c.say.lesson.herWork), right: true}, {title: plain(c.say.lesson.changes), right: true}, {title: plain(c.say.lesson.herself), right: true}}, rows)
	c.cautionsOfAll()
	c.heading(3, plain(c.say.lesson.restsOn))
	for _, n := range p.Notices {
		c.para(joined(" ", strong(say(c.say.lesson.about, values{"about": plain(upper(n.About))})), plain(sentence(n.Text))))
	}
}

func minutesOf(s process.StudentPlan) float64 {
	sum := 0.0
	for _, t := range s.Turns {
		sum += t.Minutes
	}
	return sum
}

func (c *lessons) session(s process.ClassSession) {
	title := say(c.say.lesson.session, values{"n": plain(number(s.Number))})
	if s.Date != "" {
		title = say(c.say.lesson.dated, values{"n": plain(number(s.Number)), "date": plain(s.Date)})
	}
	c.heading(3, title)
	if s.Extra {
		c.quote(plain(c.say.lesson.extra))
	}
	c.para(say(c.say.lesson.meeting, values{
		"up": c.minutes(s.SettingUp), "down": c.minutes(s.Clearing),
		"span": plain(c.span(s.First, s.Last)), "who": plain(s.Slowest), "needs": c.minutes(math.Ceil(s.Needs)),
		"work": c.minutes(s.Work), "rests": plain(s.Rests)}))
	if len(s.Homework) > 0 {
		c.para(say(c.say.lesson.homework, values{"span": plain(c.span(s.Homework[0], s.Homework[len(s.Homework)-1]))}))
	}
	c.ready(s)
	if len(s.Shown) > 0 {
		c.para(strong(plain(c.say.lesson.show)))
		var items []inline
		for _, d := range s.Shown {
			items = append(items, say(c.say.lesson.shown, values{"at": plain(from(d.At)), "n": strong(plain(d.Before)), "what": plain(d.What), "m": c.minutes(d.Minutes)}))
		}
		c.tasks(items...)
	}
	c.checkPoints(s)
	c.lines(s)
}

// ready is what to set up before the session.
func (c *lessons) ready(s process.ClassSession) {
	c.threading(s)
	var items []inline
	if s.Number > 1 {
		if home := c.class.Sessions[s.Number-2].Homework; len(home) > 0 {
			items = append(items, say(c.say.lesson.lookAt, values{"span": plain(c.span(home[0], home[len(home)-1]))}))
		}
	}
	for k, r := range s.Ready {
		if k > 0 && s.Ready[k-1].Kind == r.Kind && s.Ready[k-1].Place == r.Place {
			continue
		}
		var wants []inline
		for _, o := range s.Ready[k:] {
			if o.Kind != r.Kind || o.Place != r.Place {
				break
			}
			what := o.What
			switch o.Kind {
			case "heat":
				what = c.dots(o.HeatDots)
			case "foot":
				what = footName(spoken(what))
			}
			who := c.listed(plains(o.Students))
			if len(o.Students) == len(c.class.Students) {
				who = plain(c.say.lesson.all)
			}
			wants = append(wants, say(c.say.lesson.wanted, values{"what": strong(plain(what)), "who": who}))
		}
		w := c.say.lesson
		pattern := map[string]string{"needle": w.needles, "foot": w.feet, "heat": w.heat, "interfacing": w.interfacing, "notion": w.notions}[r.Kind]
		items = append(items, say(pattern, values{"place": plain(r.Place), "what": joined("; ", wants...)}))
	}
	if tools := c.toolsOf(s); len(tools) > 0 {
		items = append(items, joined(" ", append([]inline{plain(c.say.lesson.atTable)}, plains(tools)...)...))
	}
	if len(s.Shown) > 0 {
		items = append(items, plain(c.say.lesson.forShowing))
	}
	if len(items) > 0 {
		c.para(strong(plain(c.say.lesson.ready)))
		c.tasks(items...)
	}
}

// toolsOf are the small tools that a session's work asks for.
func (c *lessons) toolsOf(s process.ClassSession) []string {
	here := map[string]bool{}
	for _, n := range c.class.Numbers {
		if n.Session == s.Number && !n.Homework {
			here[n.Number] = true
		}
	}
	var out []string
	for _, t := range smallTools(c.say.tools) {
		for _, x := range c.class.Students {
			turn := map[string]bool{}
			for _, t := range x.Turns {
				turn[t.Operation] = here[t.Number]
			}
			part := *x.Plan
			part.Operations = slices.DeleteFunc(slices.Clone(part.Operations), func(o process.Operation) bool { return !turn[o.ID] })
			if t.wanted(&part) {
				out = addOnce(out, t.words)
			}
		}
	}
	return c.constructionTools(here, out)
}

// constructionTools adds what constructions ask for in the session's numbers.
func (c *lessons) constructionTools(here map[string]bool, out []string) []string {
	for _, x := range c.class.Students {
		for _, t := range x.Plan.Tools {
			asked := slices.ContainsFunc(x.Turns, func(turn process.ClassTurn) bool {
				return here[turn.Number] && slices.ContainsFunc(x.Plan.Operations, func(o process.Operation) bool { return o.ID == turn.Operation && slices.Contains(t.Seams, o.Seam) })
			})
			known := slices.ContainsFunc(smallTools(c.say.tools), func(s tool) bool { return slices.Contains(out, s.words) && s.is(t) })
			if asked && !known {
				out = addOnce(out, sentence(t.Title))
			}
		}
	}
	return out
}

func (c *lessons) threading(s process.ClassSession) {
	if len(s.Threading) == 0 {
		return
	}
	c.para(strong(plain(c.say.lesson.thread)))
	var rows [][]inline
	for _, t := range s.Threading {
		machines := plain(number(t.Machines))
		if t.Machines == 0 {
			machines = plain(c.say.lesson.changeOver)
		}
		rows = append(rows, []inline{plain(t.Station), plain(t.Colour), machines, c.listed(plains(t.Students))})
	}
	c.table([]column{{title: plain(c.say.lesson.machine)}, {title: plain(c.say.lesson.threadTitle)}, {title: plain(c.say.lesson.machines), right: true}, {title: plain(c.say.lesson.forWhom)}}, rows)
}

// checkPoints are where a learner shows the work before going on.
func (c *lessons) checkPoints(s process.ClassSession) {
	var items []inline
	for _, n := range c.class.Numbers {
		if n.Session != s.Number || n.Homework {
			continue
		}
		var what []string
		for _, v := range n.Variants {
			for _, k := range v.Checks {
				what = addOnce(what, k.What)
			}
		}
		if len(what) > 0 {
			items = append(items, say(c.say.lesson.showAfter, values{"n": strong(plain(n.Number)), "what": plain(strings.Join(what, "; "))}))
		}
	}
	if len(items) > 0 {
		c.para(strong(plain(c.say.lesson.showWork)))
		c.tasks(items...)
	}
}

// lines tell where students stand in line, and what helps.
func (c *lessons) lines(s process.ClassSession) {
	var rows [][]inline
	for _, q := range s.Queues {
		rows = append(rows, []inline{plain(q.Station), plain(number(q.Count)), c.minutes(q.Wait), c.minutes(q.Worst), plain(number(q.Longest)),
			plain(fillText(c.say.lesson.percent, "n", number(int(math.Round(100*q.Busy)))))})
	}
	if len(rows) == 0 {
		return
	}
	c.para(strong(plain(c.say.lesson.lines)))
	c.table([]column{{title: plain(c.say.lesson.placeColumn)}, {title: plain(c.say.lesson.thereAre), right: true}, {title: plain(c.say.lesson.meanWait), right: true}, {title: plain(c.say.lesson.worst), right: true}, {title: plain(c.say.lesson.most), right: true}, {title: plain(c.say.lesson.inUse), right: true}}, rows)
	if s.Groups > 1 {
		c.para(say(c.say.lesson.groups,
			values{"n": plain(number(s.Groups)), "m": c.minutes(s.Apart)}))
	}
}

// cautionsOfAll are those of any student, each once.
func (c *lessons) cautionsOfAll() {
	var all []process.Caution
	for _, s := range c.class.Students {
		for _, k := range s.Plan.Cautions {
			if !slices.Contains(all, k) {
				all = append(all, k)
			}
		}
	}
	c.cautionList(3, all)
}

// materials are what the room and each student need.
func (c *lessons) materials() {
	c.heading(2, plain(c.say.lesson.materials))
	c.heading(3, plain(c.say.lesson.cloth))
	var rows [][]inline
	for _, b := range c.class.Buy {
		rows = append(rows, []inline{plain(b.Student), plain(b.Title), plain(b.Colour), c.mm(b.WidthMM), c.toBuy(b.LengthMM)})
	}
	c.table([]column{{title: plain(c.say.lesson.forWhom)}, {title: plain(c.say.lesson.cloth)}, {title: plain(c.say.lesson.colour)}, {title: plain(c.say.lesson.width), right: true}, {title: plain(c.say.lesson.buy), right: true}}, rows)
	c.heading(3, plain(c.say.lesson.threadTitle))
	rows = nil
	for _, t := range c.class.Thread {
		rows = append(rows, []inline{plain(t.Colour), plain(t.Kind), c.metres(t.Metres), plain(number(t.Bobbins))})
	}
	c.table([]column{{title: plain(c.say.lesson.colour)}, {title: plain(c.say.lesson.kind)}, {title: plain(c.say.lesson.together), right: true}, {title: plain(c.say.lesson.bobbins), right: true}}, rows)
	c.heading(3, plain(c.say.lesson.interfacings))
	var items []inline
	for _, s := range c.class.Students {
		var what []string
		for _, f := range s.Plan.Interfacing {
			what = addOnce(what, lower(f.MaterialTitle))
		}
		for _, n := range s.Plan.Notions {
			what = addOnce(what, lower(n.Title))
		}
		if len(what) > 0 {
			items = append(items, say(c.say.lesson.nameWhat, values{"name": strong(plain(s.Name)), "what": c.listed(plains(what))}))
		}
	}
	if len(items) == 0 {
		items = []inline{plain(c.say.lesson.noneAtAll)}
	}
	c.list(items...)
	c.heading(3, plain(c.say.lesson.needlesTitle))
	items = nil
	var needles []string
	for _, s := range c.class.Students {
		for _, n := range s.Plan.Needles {
			needles = addOnce(needles, n.Needle)
		}
	}
	c.list(plains(needles)...)
}
