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
	c.para(say("{garment}, sewn by {n} in {room}. A number is the same act on the same part for everybody; where a number is not for you, you are free until the next.",
		values{"garment": plain(p.GarmentName), "n": c.listed(plains(namesOfClass(p))), "room": plain(p.Room)}))
	if p.Notes != "" {
		c.quote(plain(strings.Join(strings.Fields(p.Notes), " ")))
	}
	var rows [][]inline
	for _, s := range p.Sessions {
		home := plain(c.say.none)
		if len(s.Homework) > 0 {
			home = plain(span(s.Homework[0], s.Homework[len(s.Homework)-1]))
		}
		rows = append(rows, []inline{plain(number(s.Number)), plain(orNone(s.Date, c.say.none)), plain(span(s.First, s.Last)), home})
	}
	c.table([]column{{title: "Session", right: true}, {title: "When"}, {title: "Numbers"}, {title: "At home after it"}}, rows)
}

func namesOfClass(p *process.ClassPlan) []string {
	var names []string
	for _, s := range p.Students {
		names = append(names, s.Name)
	}
	return names
}

// span is a run of numbers.
func span(first, last string) string {
	if first == last {
		return first
	}
	return first + " to " + last
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
			words := say("Session {n}: the work", values{"n": plain(number(n.Session))})
			if home {
				words = say("At home after session {n}", values{"n": plain(number(n.Session))})
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
	c.heading(3, say("{n} · {title}", values{"n": plain(n.Number), "title": plain(n.Title)}))
	c.draws(n)
	var items []inline
	for _, v := range n.Variants {
		items = append(items, c.variant(n, v))
	}
	c.tasks(items...)
	if len(n.Free) > 0 {
		c.para(say("Free here: {names}.", values{"names": c.listed(plains(n.Free))}))
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
		head = strong(say("{how}.", values{"how": plain(v.Construction)}))
	case v.Construction == "":
		head = strong(say("{who}.", values{"who": c.listed(plains(v.Students))}))
	default:
		head = strong(say("{who}: {how}.", values{"who": c.listed(plains(v.Students)), "how": plain(v.Construction)}))
	}
	parts := []inline{head, say("{place}.", values{"place": plain(c.placeWords(v))}), plain(sentence(v.Text))}
	if v.Good != "" {
		parts = append(parts, soft(say("Looks right: {good}", values{"good": plain(lower(v.Good))})))
	}
	for _, k := range v.Checks {
		parts = append(parts, strong("Check."), say("{what}: {mm}, give or take {off}.", values{
			"what": plain(k.What), "mm": c.mm(k.Expect), "off": c.mm(k.Tolerance)}))
	}
	return joined(" ", parts...)
}

// placeWords are the place with what all who use it set alike.
func (c *lessons) placeWords(v process.ClassVariant) string {
	words := []string{v.Station}
	if v.Setting.Stitch != "" {
		words = append(words, "stitch "+v.Setting.Stitch)
	}
	if v.Setting.StitchMM > 0 {
		words = append(words, decimal(v.Setting.StitchMM)+" mm")
	}
	if v.Setting.Foot != "" {
		words = append(words, strings.TrimSuffix(v.Setting.Foot, " foot")+" foot")
	}
	if v.Setting.HeatDots > 0 {
		words = append(words, c.dots(v.Setting.HeatDots))
	}
	return strings.Join(words, ", ")
}

// pages are one for each student.
func (c *lessons) pages() {
	for _, s := range c.class.Students {
		c.take(s.Plan)
		c.heading(2, say("{name}: your own figures", values{"name": plain(s.Name)}))
		c.sizeTable()
		c.clothTable()
		c.pieceTable()
		c.edgeTable()
		c.strips()
		c.handling()
		c.heading(3, "Your seams")
		var rows [][]inline
		for _, x := range s.Plan.Seams {
			rows = append(rows, []inline{plain(upper(x.Title)), plain(x.ConstructionTitle), c.allowance(x), c.mmOr(x.Finished)})
		}
		c.table([]column{{title: "Seam"}, {title: "Sewn as"}, {title: "Allowance", right: true}, {title: "Finished", right: true}}, rows)
		c.threads()
		c.needles()
		c.heading(3, "Your numbers")
		if len(s.Free) > 0 {
			c.para(say("Not for you: {numbers}. You are free while the others do them.", values{"numbers": c.listed(plains(s.Free))}))
		} else {
			c.para("Every number is for you.")
		}
		if own := c.ownVariants(s.Name); len(own) > 0 {
			c.para("Where others sew it otherwise, yours is:")
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
			items = append(items, say("Stitch length {mm}, but where the next line says otherwise.", values{"mm": strong(stitchLength(mm))}))
			continue
		}
		if k == 0 {
			items = append(items, say("Stitch length {mm}.", values{"mm": strong(stitchLength(mm))}))
			continue
		}
		items = append(items, say("Stitch length {mm} at {numbers}.", values{"mm": strong(stitchLength(mm)), "numbers": c.listed(plains(numbers[mm]))}))
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
				numbers[k] += ", " + n.Number
				continue
			}
			ways, numbers = append(ways, v.Construction), append(numbers, n.Number)
		}
	}
	for k, w := range ways {
		items = append(items, say("{how}: numbers {numbers}.", values{"how": strong(plain(w)), "numbers": plain(numbers[k])}))
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
	for _, ch := range s.Plan.Changes {
		if ch.What != "thread" && ch.What != "needle" {
			continue
		}
		for _, st := range s.Plan.Steps {
			if st.Number != ch.BeforeStep {
				continue
			}
			items = append(items, say("Before number {n}: {machine}, {what} {to}.", values{
				"n": plain(turn[st.Operations[0]]), "machine": plain(lower(c.stationTitle(ch.Station))), "what": plain(ch.What), "to": strong(plain(ch.To))}))
		}
	}
	return items
}

// runSheet is the teacher's.
func (c *lessons) runSheet() {
	c.heading(2, "For the teacher")
	p := c.class
	verdict := plain("The best sequence that was found for all together.")
	if p.Order.Cheapest {
		verdict = plain("No sequence that all can keep takes the class less: proved.")
	}
	c.para(joined(" ", say("In this sequence the class spends {all} on changes; each for herself would spend {alone}.", values{
		"all": plain(minutesWords(math.Round(p.Order.Change))), "alone": plain(minutesWords(math.Round(p.Order.Alone)))}), verdict))
	for _, s := range p.Sessions {
		c.session(s)
	}
	c.heading(3, "Each student's own best")
	var rows [][]inline
	for _, s := range p.Students {
		rows = append(rows, []inline{plain(s.Name), plain(fmt.Sprintf("%.1f", s.Pace)), plain(minutesWords(math.Round(minutesOf(s)))),
			plain(minutesWords(math.Round(s.Change))), plain(minutesWords(math.Round(s.Alone)))})
	}
	c.table([]column{{title: "Who"}, {title: "Pace", right: true}, {title: "All her work", right: true}, {title: "Changes here", right: true}, {title: "By herself", right: true}}, rows)
	c.cautionsOfAll()
	c.heading(3, "What these figures rest on")
	for _, n := range p.Notices {
		c.para(joined(" ", strong(say("{about}.", values{"about": plain(upper(n.About))})), plain(sentence(n.Text))))
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
	title := say("Session {n}", values{"n": plain(number(s.Number))})
	if s.Date != "" {
		title = say("Session {n}: {date}", values{"n": plain(number(s.Number)), "date": plain(s.Date)})
	}
	c.heading(3, title)
	if s.Extra {
		c.quote("One more than the class has: find a time for it, or let students finish at home what they can.")
	}
	c.para(say("Numbers {span}. {up} to set up, {work} for work, {down} to clear. {who} needs longest, about {needs} without waiting. It ends where {rests}.", values{
		"up": plain(minutesWords(s.SettingUp)), "down": plain(minutesWords(s.Clearing)),
		"span": plain(span(s.First, s.Last)), "who": plain(s.Slowest), "needs": plain(minutesWords(math.Ceil(s.Needs))),
		"work": plain(minutesWords(s.Work)), "rests": plain(s.Rests)}))
	if len(s.Homework) > 0 {
		c.para(say("At home before the next session: numbers {span}.", values{"span": plain(span(s.Homework[0], s.Homework[len(s.Homework)-1]))}))
	}
	c.ready(s)
	if len(s.Shown) > 0 {
		c.para(strong("Show before it is needed; the time is when the quickest comes to it, counted from the beginning:"))
		var items []inline
		for _, d := range s.Shown {
			items = append(items, say("{at} · before number {n}: {what}, about {m}.", values{"at": plain(from(d.At)), "n": strong(plain(d.Before)), "what": plain(d.What), "m": plain(minutesWords(d.Minutes))}))
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
			items = append(items, say("Look at what was done at home: numbers {span}.", values{"span": plain(span(home[0], home[len(home)-1]))}))
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
				who = plain("all")
			}
			wants = append(wants, say("{what} for {who}", values{"what": strong(plain(what)), "who": who}))
		}
		pattern := map[string]string{
			"needle": "{place}, needles: {what}.", "foot": "{place}, feet: {what}.", "heat": "{place}, heat: {what}.",
			"interfacing": "Interfacing, cut: {what}.", "notion": "Notions: {what}.",
		}[r.Kind]
		items = append(items, say(pattern, values{"place": plain(r.Place), "what": joined("; ", wants...)}))
	}
	if tools := c.toolsOf(s); len(tools) > 0 {
		items = append(items, joined(" ", append([]inline{"At the table:"}, plains(tools)...)...))
	}
	if len(s.Shown) > 0 {
		items = append(items, "For showing: two plies of a scrap for each construction below, and one sewn already to pass round.")
	}
	if len(items) > 0 {
		c.para(strong("Have ready:"))
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
	for _, t := range smallTools() {
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
	return out
}

func (c *lessons) threading(s process.ClassSession) {
	if len(s.Threading) == 0 {
		return
	}
	c.para(strong("Thread before they come:"))
	var rows [][]inline
	for _, t := range s.Threading {
		machines := plain(number(t.Machines))
		if t.Machines == 0 {
			machines = plain("change over")
		}
		rows = append(rows, []inline{plain(t.Station), plain(t.Colour), machines, c.listed(plains(t.Students))})
	}
	c.table([]column{{title: "Machine"}, {title: "Thread"}, {title: "Machines", right: true}, {title: "For"}}, rows)
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
			items = append(items, say("After number {n}: {what}.", values{"n": strong(plain(n.Number)), "what": plain(strings.Join(what, "; "))}))
		}
	}
	if len(items) > 0 {
		c.para(strong("Let them show their work:"))
		c.tasks(items...)
	}
}

// lines tell where students stand in line, and what helps.
func (c *lessons) lines(s process.ClassSession) {
	var rows [][]inline
	for _, q := range s.Queues {
		rows = append(rows, []inline{plain(q.Station), plain(number(q.Count)), plain(minutesWords(q.Wait)), plain(minutesWords(q.Worst)), plain(number(q.Longest)),
			plain(fmt.Sprintf("%.0f%%", 100*q.Busy))})
	}
	if len(rows) == 0 {
		return
	}
	c.para(strong("Where a line forms:"))
	c.table([]column{{title: "Place"}, {title: "There are", right: true}, {title: "Mean wait", right: true}, {title: "Worst", right: true}, {title: "Most waiting", right: true}, {title: "In use", right: true}}, rows)
	if s.Groups > 1 {
		c.para(say("Let them begin in {n} groups, {m} apart; those who begin later set up, lay out and mark meanwhile. The lines are shorter then.",
			values{"n": plain(number(s.Groups)), "m": plain(minutesWords(s.Apart))}))
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
	c.heading(2, "Materials for the room")
	c.heading(3, "Cloth")
	var rows [][]inline
	for _, b := range c.class.Buy {
		rows = append(rows, []inline{plain(b.Student), plain(b.Title), plain(b.Colour), c.mm(b.WidthMM), c.toBuy(b.LengthMM)})
	}
	c.table([]column{{title: "For"}, {title: "Cloth"}, {title: "Colour"}, {title: "Width", right: true}, {title: "Buy about", right: true}}, rows)
	c.heading(3, "Thread")
	rows = nil
	for _, t := range c.class.Thread {
		rows = append(rows, []inline{plain(t.Colour), plain(t.Kind), c.metres(t.Metres), plain(number(t.Bobbins))})
	}
	c.table([]column{{title: "Colour"}, {title: "Kind"}, {title: "All together", right: true}, {title: "Bobbins", right: true}}, rows)
	c.heading(3, "Interfacing and notions")
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
			items = append(items, say("{name}: {what}.", values{"name": strong(plain(s.Name)), "what": c.listed(plains(what))}))
		}
	}
	if len(items) == 0 {
		items = []inline{"None."}
	}
	c.list(items...)
	c.heading(3, "Needles")
	items = nil
	var needles []string
	for _, s := range c.class.Students {
		for _, n := range s.Plan.Needles {
			needles = addOnce(needles, n.Needle)
		}
	}
	c.list(plains(needles)...)
}
