package sheets

import (
	"slices"
	"strings"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// Sizes of the thread line on paper, in mm.
const (
	lineWide    = 174
	lineType    = 2.6
	nameWide    = 34  // room for a line of a machine's name, at most
	columnWide  = 8   // a step's column, at most
	columnLeast = 5.2 // and at least, so that its number fits
	rowHigh     = 12.5
	boxHigh     = 5.4
	bandHigh    = 2
)

// threadLine draws which thread each machine carries through the steps.
func (c *composer) threadLine() {
	rows := c.threadRows()
	if len(rows) == 0 || len(c.plan.Steps) == 0 {
		return
	}
	w := c.say.figures
	c.draw(func() figure.Figure {
		l := &threadLine{c: c, rows: rows, hatch: map[string]figure.Hatch{}}
		return figure.Fit(c.slug("thread-line"), w.lineAlt, l.items(), 1, c.measure)
	}, plain(w.lineCaption))
}

// run is a stretch of steps over which a machine keeps one thread, from the
// step for which it is threaded to the last that needs it.
type run struct {
	first, last int // indexes of steps
	thread      string
	change      bool // threaded anew, not for the first time
}

// threadRow is a machine with its runs and the steps at which it is in use.
type threadRow struct {
	station process.Station
	runs    []run
	uses    []int
}

// threadRows are the machines that carry thread, in the plan's order.
func (c *composer) threadRows() []threadRow {
	var rows []threadRow
	for _, s := range c.plan.Stations {
		if s.Kind != "machine" {
			continue
		}
		row := threadRow{station: s}
		for i, st := range c.plan.Steps {
			if st.Station != s.Name || st.Setting.Thread == "" {
				continue
			}
			row.uses = append(row.uses, i)
			n := len(row.runs)
			if n == 0 || row.runs[n-1].thread != st.Setting.Thread {
				row.runs = append(row.runs, run{first: i, last: i, thread: st.Setting.Thread, change: n > 0})
				continue
			}
			row.runs[n-1].last = i
		}
		if len(row.uses) > 0 {
			rows = append(rows, row)
		}
	}
	return rows
}

type threadLine struct {
	c     *composer
	rows  []threadRow
	hatch map[string]figure.Hatch
	seen  []string // threads in the order in which they got a pattern
	names float64  // width of the machines' names
	width float64  // of a column
}

// pattern is a thread's own, the same wherever it is drawn.
func (l *threadLine) pattern(thread string) figure.Hatch {
	h, ok := l.hatch[thread]
	if !ok {
		h = figure.Hatch(len(l.seen)%figure.Hatches + 1)
		l.hatch[thread], l.seen = h, append(l.seen, thread)
	}
	return h
}

func (l *threadLine) items() []figure.Item {
	for _, r := range l.rows {
		for _, part := range l.name(r) {
			l.names = max(l.names, l.c.measure.TextWidth(part, lineType, true))
		}
	}
	l.names += 2
	steps := len(l.c.plan.Steps)
	perBand := int((lineWide - l.names) / columnLeast)
	bands := (steps + perBand - 1) / perBand
	perBand = (steps + bands - 1) / bands
	l.width = min((lineWide-l.names)/float64(perBand), columnWide)
	var out []figure.Item
	y := 0.0
	for from := 0; from < steps; from += perBand {
		out = append(out, l.band(from, min(from+perBand, steps), y)...)
		y += 5 + rowHigh*float64(len(l.rows)) + 3
	}
	k := newKey(l.c.measure, 0, y+1.5, lineWide)
	for _, t := range l.seen {
		k.swatch(figure.Fill{White: true, Hatch: l.hatch[t], Pitch: 1.3}, t)
	}
	return append(out, k.items...)
}

// name is a machine's title in one line or two, the second cut short where it
// would take the steps' room.
func (l *threadLine) name(r threadRow) []string {
	fits := func(s string) bool { return l.c.measure.TextWidth(s, lineType, true) <= nameWide }
	title := []rune(l.c.stationTitle(r.station.Name))
	if fits(string(title)) {
		return []string{string(title)}
	}
	first := ""
	for i, c := range title {
		if c == ' ' && fits(string(title[:i])) {
			first = string(title[:i])
		}
	}
	rest := []rune(strings.TrimSpace(string(title[len([]rune(first)):])))
	for n := len(rest); !fits(string(rest)); n-- {
		rest = append(rest[:n-1:n-1], '…')
	}
	if first == "" {
		return []string{string(rest)}
	}
	return []string{first, string(rest)}
}

// x is where a step's column begins, in a band that begins with step from.
func (l *threadLine) x(step, from int) float64 { return l.names + float64(step-from)*l.width }

// band is a stretch of steps, one row a machine.
func (l *threadLine) band(from, to int, top float64) []figure.Item {
	right := l.x(to, from)
	var out []figure.Item
	for i := from; i <= to; i++ {
		x := l.x(i, from)
		out = append(out, figure.Line(figure.Point{X: x, Y: top}, figure.Point{X: x, Y: top + 5 + rowHigh*float64(len(l.rows))},
			figure.Stroke{Width: figure.Hairline, Light: 0.75}))
		if i < to {
			out = append(out, figure.Text{At: figure.Point{X: x + l.width/2, Y: top + 3.2}, Size: 2.3, Anchor: figure.Middle,
				Words: number(l.c.plan.Steps[i].Number)})
		}
	}
	for k, r := range l.rows {
		y := top + 5 + rowHigh*float64(k)
		out = append(out,
			figure.Line(figure.Point{X: 0, Y: y}, figure.Point{X: right, Y: y}, figure.Stroke{Width: figure.Hairline, Light: 0.5}))
		name := l.name(r)
		for i, part := range name {
			up := 1.35 * lineType * (float64(len(name)-1)/2 - float64(i))
			out = append(out, figure.Text{At: figure.Point{X: 0, Y: y + rowHigh - boxHigh/2 - up}, Size: lineType, Bold: true, Words: part})
		}
		out = append(out, l.row(r, from, to, y)...)
	}
	bottom := top + 5 + rowHigh*float64(len(l.rows))
	return append(out, figure.Line(figure.Point{X: 0, Y: bottom}, figure.Point{X: right, Y: bottom}, figure.Stroke{Width: figure.Hairline, Light: 0.5}))
}

// row draws a machine's runs: a band while it keeps a thread, a box with the
// step's number where it is in use, a wedge where it is threaded anew, and the
// thread's name above.
func (l *threadLine) row(r threadRow, from, to int, y float64) []figure.Item {
	middle := y + rowHigh - 1.2 - boxHigh/2
	var bands, boxes, wedges, names []figure.Item
	var want, size []float64
	var words []string
	for _, n := range r.runs {
		first, last := max(n.first, from), min(n.last, to-1)
		if first > last {
			continue
		}
		fill := figure.Fill{White: true, Hatch: l.pattern(n.thread), Pitch: 1.3}
		thin := figure.Stroke{Width: figure.Thin}
		x0, x1 := l.x(first, from), l.x(last+1, from)
		bands = append(bands, figure.Rect(figure.Point{X: x0 + 0.4, Y: middle - bandHigh/2}, x1-x0-0.8, bandHigh, figure.Stroke{Width: figure.Hairline}, fill))
		for _, i := range r.uses {
			if i < first || i > last {
				continue
			}
			x := l.x(i, from)
			boxes = append(boxes, figure.Rect(figure.Point{X: x + 0.4, Y: middle - boxHigh/2}, l.width-0.8, boxHigh, thin, fill))
			label := figure.Text{At: figure.Point{X: x + l.width/2, Y: middle + 0.95}, Size: lineType, Anchor: figure.Middle, Bold: true,
				Words: number(l.c.plan.Steps[i].Number)}
			boxes = append(boxes, figure.Backed(label, l.c.measure)...)
		}
		if n.change && n.first >= from {
			tip := figure.Point{X: x0, Y: middle - boxHigh/2 + 1.2}
			wedges = append(wedges, figure.Polygon(figure.Stroke{}, figure.Fill{Tint: 1}, tip,
				figure.Point{X: x0 - 1.3, Y: tip.Y - 2.4}, figure.Point{X: x0 + 1.3, Y: tip.Y - 2.4}))
		}
		wide := l.c.measure.TextWidth(n.thread, lineType, false)
		want, size, words = append(want, x0+1.8+wide/2), append(size, wide), append(words, n.thread)
	}
	for i, x := range figure.Spread(want, size, 2, l.names, l.names+float64(to-from)*l.width+nameWide) {
		names = append(names, figure.Backed(figure.Text{At: figure.Point{X: x, Y: y + 3.5}, Size: lineType, Anchor: figure.Middle, Words: words[i]}, l.c.measure)...)
	}
	return slices.Concat(bands, boxes, wedges, names)
}
