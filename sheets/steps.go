package sheets

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"bodkin/process"
)

// theSteps are the work itself, in order.
func (c *composer) theSteps() {
	w := c.say.steps
	c.heading(2, plain(w.title))
	intro := plain(w.intro)
	if c.reader == Bench || c.reader == Class {
		intro = plain(w.introHands)
	}
	if c.brief && c.reader == Maker {
		intro = plain(w.introBrief)
	}
	if c.plan.Quantity > 1 {
		intro = joined(" ", intro, say(w.introAll, values{"garments": c.count(c.plan.Quantity, c.say.counts.garments)}))
	}
	c.para(intro)
	if c.reader == Maker {
		c.threadLine()
	}
	told := map[string]bool{}
	if c.brief && c.reader == Maker {
		var items []inline
		for _, s := range c.selected() {
			items = append(items, c.inOneLine(s, told))
		}
		c.tasks(items...)
		return
	}
	for _, s := range c.selected() {
		c.step(s, told)
	}
}

// inOneLine is a step as somebody reads it who knows how: where, what changes,
// each operation's first sentence, and the figures to check.
func (c *composer) inOneLine(s process.Step, told map[string]bool) inline {
	w := c.say.steps
	lead, v := w.oneLine, values{"n": plain(number(s.Number)), "station": plain(c.stationTitle(s.Station))}
	if len(s.Garments) == 1 && s.Garments[0] <= len(c.garments) { // of several, each part has its own
		lead, v["label"] = c.say.sitting.oneLine, plain(c.garments[s.Garments[0]-1].Label)
	}
	words := []inline{strong(say(lead, v))}
	words = append(words, c.changes(s)...)
	for k := 0; k < len(s.Operations); {
		o := c.operations[s.Operations[k]]
		first, _ := opens(sentence(o.Text))
		parts := []string{lower(o.Part)}
		var checks []inline
		for ; k < len(s.Operations); k++ { // what is said once is said for all that it holds of
			next := c.operations[s.Operations[k]]
			if f, _ := opens(sentence(next.Text)); f != first {
				break
			}
			parts = addOnce(parts, lower(next.Part))
			checks = append(append(checks, c.inOtherSizes(next, told)...), c.checksAfter(s, next.ID)...)
		}
		words = append(words, say(w.onParts, values{"parts": strong(plain(upper(joinWords(parts)))), "act": plain(first)}))
		words = append(words, checks...)
	}
	return joined(" ", append(words, c.checksAfter(s, "")...)...)
}

func joinWords(parts []string) string {
	if n := len(parts); n > 1 {
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return strings.Join(parts, "")
}

// step is one place with one setting: what to change first, what to do, what
// to check. told holds the reasons that have been given before.
func (c *composer) step(s process.Step, told map[string]bool) {
	w := c.say.steps
	pattern := w.step
	switch c.reader { // which have the place among the settings
	case Bench:
		pattern = c.say.bench.step
	case Class:
		pattern = c.say.class.step
	}
	c.heading(3, say(pattern, values{
		"n": plain(number(s.Number)), "station": plain(c.stationTitle(s.Station)), "title": plain(s.Title),
	}))
	c.para(strong(c.setting(s)))
	c.quote(c.changes(s)...)
	again := c.sewnAgain(s, told)
	switch c.reader {
	case Bench:
		c.handed(s, told)
	case Class:
		c.newSeams(s, told)
	}
	c.figures(c.whereAll(again, whereLess)...)
	var items []inline
	var before process.Operation
	for _, id := range s.Operations {
		if o, ok := c.operations[id]; ok {
			items = append(items, c.operation(o, before, told))
			before = o
		}
		items = append(items, c.checksAfter(s, id)...)
	}
	items = append(items, c.checksAfter(s, "")...)
	switch c.reader {
	case Bench:
		c.tasks(items...)
		c.handOn(s)
	case Class:
		c.tasks(append(items, c.showWork(s)...)...)
		c.room()
	default:
		c.tasks(items...)
	}
}

func (c *composer) stationTitle(name string) string {
	if s, ok := c.stations[name]; ok && s.Title != "" {
		return s.Title
	}
	return name
}

// setting is how the station is set for the step, and how long the step takes.
func (c *composer) setting(s process.Step) inline {
	var parts []inline
	if c.reader != Maker {
		parts = append(parts, plain(c.stationTitle(s.Station)))
	}
	parts = append(parts, c.settingParts(s.Setting)...)
	parts = append(parts, say(c.say.steps.about, values{"minutes": c.about(s.Minutes)}))
	return inline(upper(string(joined(inline(c.say.dot), parts...))))
}

// settingParts are what a station is set to, each part by itself.
func (c *composer) settingParts(t process.Setting) []inline {
	w := c.say.steps
	var parts []inline
	add := func(pattern, value string) {
		if value != "" {
			parts = append(parts, say(pattern, values{
				"thread": plain(value), "bobbin": plain(value), "loopers": plain(value), "needle": plain(value), "foot": plain(value), "heat": plain(value), "stitch": plain(value)}))
		}
	}
	switch t.Thread {
	case t.Bobbin:
		add(w.threadBobbin, t.Thread)
	case t.Loopers:
		add(w.threadLoopers, t.Thread)
	default:
		add(w.thread, t.Thread)
		add(w.bobbin, t.Bobbin)
		add(w.loopers, t.Loopers)
	}
	add(w.needle, t.Needle)
	add(w.foot, footName(t.Foot))
	switch {
	case t.Stitch != "" && t.StitchMM > 0:
		parts = append(parts, say(w.stitch, values{"stitch": plain(t.Stitch), "length": stitchLength(t.StitchMM)}))
	case t.StitchMM > 0:
		parts = append(parts, stitchLength(t.StitchMM))
	}
	if t.HeatDots > 0 {
		add(w.heat, c.dots(t.HeatDots))
		if t.Steam {
			parts = append(parts, plain(w.steam))
		} else {
			parts = append(parts, plain(w.dry))
		}
	}
	return parts
}

// stitchLength is in mm whatever the sheet's units: so are the machines' dials.
func stitchLength(mm float64) inline { return plain(decimal(mm) + " mm") }

// changes are what must be altered before the step, parted into what is set
// for the first time and what is changed. Going to the station is said by the
// step's heading.
func (c *composer) changes(s process.Step) []inline {
	w := c.say.steps
	var first, later []inline
	var minutes [2]float64
	for _, ch := range c.changesBefore(s.Number) {
		v := values{"what": c.allThatChanges(ch.all), "from": c.changeWords(ch.Change, ch.From), "to": c.changeWords(ch.Change, ch.To)}
		if ch.From == "" {
			pattern := w.set
			if ch.What == "foot" {
				pattern = w.setFoot
			}
			first = append(first, say(pattern, v))
			minutes[0] += ch.Minutes
		} else {
			later = append(later, say(w.turn, v))
			minutes[1] += ch.Minutes
		}
	}
	var out []inline
	for i, part := range []struct {
		lead string
		list []inline
	}{{w.setUp, first}, {w.change, later}} {
		if len(part.list) == 0 {
			continue
		}
		words := joined(" ", strong(plain(part.lead)), joined("; ", part.list...)+".")
		if minutes[i] > 0 {
			words = joined(" ", words, say(w.takes, values{"minutes": c.about(minutes[i])}))
		}
		out = append(out, words)
	}
	return out
}

// moving is what the plan calls the change of going to another station.
const moving = "move"

// changeTold is a change with all that is changed in it: the thread in needle and
// bobbin, or in needle and loopers, from one colour to the same other is told as
// one.
type changeTold struct {
	process.Change
	all []string
}

// changesBefore are the changes before a step, but for going there.
func (c *composer) changesBefore(step int) []changeTold {
	isThread := func(what string) bool { return what == "thread" || what == "bobbin" || what == "loopers" }
	var out []changeTold
	for _, ch := range c.plan.Changes {
		if ch.BeforeStep != step || ch.What == moving {
			continue
		}
		if k := len(out) - 1; k >= 0 && isThread(ch.What) && isThread(out[k].What) && ch.From == out[k].From && ch.To == out[k].To {
			out[k].all, out[k].Minutes = append(out[k].all, ch.What), out[k].Minutes+ch.Minutes
			continue
		}
		out = append(out, changeTold{ch, []string{ch.What}})
	}
	return out
}

// allThatChanges names what is changed together.
func (c *composer) allThatChanges(what []string) inline {
	words := plain(c.whatChanges(what[0]))
	for _, x := range what[1:] {
		words = say(c.say.steps.whatAnd, values{"what": words, "other": plain(c.whatChanges(x))})
	}
	return words
}

func (c *composer) whatChanges(what string) string {
	w := c.say.steps
	switch what {
	case "thread":
		return w.whatThread
	case "bobbin":
		return w.whatBobbin
	case "loopers":
		return w.whatLoopers
	case "needle":
		return w.whatNeedle
	case "foot":
		return w.whatFoot
	case "stitch":
		return w.whatStitch
	case "heat":
		return w.whatHeat
	}
	return what
}

// changeWords is one side of a change: heat comes as a number of dots.
func (c *composer) changeWords(ch process.Change, value string) inline {
	switch ch.What {
	case "heat":
		if n, err := strconv.Atoi(value); err == nil {
			return plain(c.dots(n))
		}
	case "foot":
		return plain(footName(value))
	}
	return plain(value)
}

// operation is one tick: what is in hand, what to do, how it looks when right,
// and why it had to wait for other seams. Words that the operation before it in
// the step has said are not said again.
func (c *composer) operation(o, before process.Operation, told map[string]bool) inline {
	w := c.say.steps
	words := []inline{c.inHand(o, told)}
	if o.Text == before.Text && o.Good == before.Good && (c.reader == Maker) {
		words = append(words, plain(w.same))
	} else {
		words = append(words, plain(sentence(o.Text)))
		if o.Good != "" {
			words = append(words, soft(say(w.right, values{"good": plain(lower(sentence(o.Good)))})))
		}
	}
	words = append(words, c.inOtherSizes(o, told)...)
	var why []string
	for _, a := range o.After {
		if because := c.acrossSeams(o, a); because != "" && !told[because] {
			told[because] = true
			why = append(why, because)
		}
	}
	if len(why) > 0 && !c.brief && c.reader != Bench {
		words = append(words, say(w.after, values{"because": c.reasons(why)}))
	}
	return joined(" ", words...)
}

// inHand is what the operation works on; the first time a seam comes up, with
// how it is sewn.
func (c *composer) inHand(o process.Operation, told map[string]bool) inline {
	w := c.say.steps
	part := o.Part
	if part == "" {
		part = c.seamTitle(o.Seam)
	}
	s, ok := c.seams[o.Seam]
	if c.reader == Bench || c.reader == Class {
		ok = false // how it is sewn stands above
	}
	if !ok || told[seamKey+o.Seam] {
		return strong(say(w.part, values{"part": plain(upper(part))}))
	}
	told[seamKey+o.Seam] = true
	return say(w.partOf, values{
		"part": strong(plain(upper(part))), "construction": link(plain(s.ConstructionTitle), c.anchors[o.Seam])})
}

// seamKey parts the seams that have come up from the reasons that were given.
const seamKey = "seam\x00"

// acrossSeams is why an operation waits for one of another seam. That cloth is
// cut and settings are tried first goes without saying.
func (c *composer) acrossSeams(o process.Operation, a process.After) string {
	first, ok := c.operations[a.ID]
	if !ok || first.Seam == o.Seam || first.Does == "cut" || first.Does == "test" {
		return ""
	}
	return lower(a.Because)
}

func (c *composer) checksAfter(s process.Step, operation string) []inline {
	var out []inline
	for _, k := range c.plan.Checks {
		if k.AfterStep != s.Number || !c.checkBelongs(s, k, operation) {
			continue
		}
		out = append(out, c.check(k))
	}
	return out
}

// checksOf are those that stand after an operation.
func (c *composer) checksOf(operation string) []inline {
	var out []inline
	for _, k := range c.plan.Checks {
		if k.AfterOperation == operation {
			out = append(out, c.check(k))
		}
	}
	return out
}

func (c *composer) check(k process.Check) inline {
	w := c.say.steps
	pattern := w.within
	if k.Tolerance == 0 {
		pattern = w.exactly
	}
	said := joined(" ", strong(plain(w.check)), say(pattern, values{
		"what": plain(upper(clause(k.What))), "expect": c.mm(k.Expect), "tolerance": c.mm(k.Tolerance)}))
	return joined(" ", append([]inline{said}, c.checkInOtherSizes(k)...)...)
}

// checkBelongs: a check stands after its operation, at the end of the step
// where it names none of the step's.
func (c *composer) checkBelongs(s process.Step, k process.Check, operation string) bool {
	for _, id := range s.Operations {
		if id == k.AfterOperation {
			return id == operation
		}
	}
	return operation == ""
}

// lower is the text with a small first letter, unless it opens with a word in
// capitals or a single letter.
func lower(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	if next, _ := utf8.DecodeRuneInString(text[n:]); unicode.IsUpper(next) || !unicode.IsLetter(next) && r != 'A' {
		return text
	}
	return string(unicode.ToLower(r)) + text[n:]
}
