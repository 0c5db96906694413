package sheets

import (
	"math"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// Sizes of the rhythm strip on paper, in mm.
const (
	rhythmName  = 42  // room for the name of a place, at most
	rhythmRow   = 4.6 // from one place to the next
	rhythmBlock = 3.2 // height of a stay
	rhythmLeast = 0.7 // of paper to a minute
	rhythmBands = 4   // lines of it, at most: beyond that it is drawn smaller
	rhythmEnd   = 24  // room for what a place adds up to, at the end of the first band
	longWork    = 120 // minutes from which the work is long: a judgement
)

// rhythm draws how the work goes to and fro between machines, iron, table and
// hands: a row a place, a block a stay, to scale in minutes; and for long work
// how the minutes fall to the places.
func (c *composer) rhythm() {
	r := c.newRhythm()
	if len(r.rows) < 2 {
		return
	}
	w := c.say.figures
	caption := say(w.rhythmCaption, values{"moves": plain(number(c.plan.Totals.StationMoves)), "every": plain(number(r.tick()))})
	if r.total >= longWork {
		caption += inline(" ") + plain(w.rhythmBar)
	}
	c.draw(func() figure.Figure {
		return figure.Fit(c.slug("rhythm"), w.rhythmAlt, r.items(), 1, c.measure)
	}, caption)
}

// stay is a stretch of steps at one place, in minutes from the beginning.
type stay struct {
	row        int
	from, till float64
}

// rhythmOf is the rhythm strip on its way.
type rhythmOf struct {
	c     *composer
	rows  []process.Station
	stays []stay
	sums  []float64 // minutes of each row
	trips []int
	total float64
	names float64
}

// newRhythm takes the steps in their order; what has to be changed before a step
// belongs to the stay.
func (c *composer) newRhythm() *rhythmOf {
	r := &rhythmOf{c: c}
	changes := map[int]float64{}
	for _, ch := range c.plan.Changes {
		changes[ch.BeforeStep] += ch.Minutes
	}
	rows := map[string]int{}
	for _, s := range c.plan.Stations {
		for _, st := range c.plan.Steps {
			if st.Station == s.Name {
				rows[s.Name] = len(r.rows)
				r.rows = append(r.rows, s)
				break
			}
		}
	}
	r.sums, r.trips = make([]float64, len(r.rows)), make([]int, len(r.rows))
	for _, st := range c.plan.Steps {
		k, ok := rows[st.Station]
		if !ok {
			continue
		}
		long := st.Minutes + changes[st.Number]
		if n := len(r.stays); n > 0 && r.stays[n-1].row == k {
			r.stays[n-1].till += long
		} else {
			r.stays = append(r.stays, stay{k, r.total, r.total + long})
			r.trips[k]++
		}
		r.total += long
		r.sums[k] += long
	}
	return r
}

// name is a place's title, cut short where it would take the room of the work.
func (r *rhythmOf) name(s process.Station) string {
	title := []rune(r.c.stationTitle(s.Name))
	for cut := title; ; cut = append(title[:len(cut)-2:len(cut)-2], '…') {
		if r.c.measure.TextWidth(string(cut), lineType, true) <= rhythmName {
			return string(cut)
		}
	}
}

// tick is how many minutes lie between the marks of time.
func (r *rhythmOf) tick() int {
	for _, t := range []int{10, 30, 60, 120} {
		if r.total <= float64(12*t) {
			return t
		}
	}
	return 240
}

func (r *rhythmOf) items() []figure.Item {
	for _, s := range r.rows {
		r.names = max(r.names, r.c.measure.TextWidth(r.name(s), lineType, true))
	}
	r.names += 2
	wide := lineWide - r.names - rhythmEnd
	bands := min(max(math.Ceil(r.total*rhythmLeast/wide), 1), rhythmBands)
	long := r.total / bands // minutes in a band
	scale := wide / max(long, 1e-9)
	var out []figure.Item
	y := 0.0
	for b := range int(bands) {
		out = append(out, r.band(float64(b)*long, float64(b+1)*long, scale, y, b == 0)...)
		y += 5 + rhythmRow*float64(len(r.rows)) + 3
	}
	if r.total >= longWork {
		out = append(out, r.bar(y)...)
	}
	return out
}

// band is a stretch of time, a row a place.
func (r *rhythmOf) band(begin, till, scale, top float64, first bool) []figure.Item {
	x := func(m float64) float64 { return r.names + (m-begin)*scale }
	y := func(row int) float64 { return top + 5 + rhythmRow*(float64(row)+0.5) }
	bottom := top + 5 + rhythmRow*float64(len(r.rows))
	hair := figure.Stroke{Width: figure.Hairline, Light: 0.6}
	var out []figure.Item
	step := float64(r.tick())
	for m := math.Ceil(begin/step-1e-9) * step; m <= till+1e-9; m += step {
		out = append(out, figure.Line(figure.Point{X: x(m), Y: top + 3.6}, figure.Point{X: x(m), Y: bottom}, hair))
		if x(m) < r.names+(till-begin)*scale-6 || first && till >= r.total {
			out = append(out, figure.Text{At: figure.Point{X: x(m), Y: top + 2.6}, Size: 2.3, Anchor: figure.Middle, Words: from(m)})
		}
	}
	for k, s := range r.rows {
		out = append(out, figure.Text{At: figure.Point{X: 0, Y: y(k) + 0.9}, Size: lineType, Bold: true, Words: r.name(s)},
			figure.Line(figure.Point{X: r.names, Y: y(k)}, figure.Point{X: x(till), Y: y(k)}, hair))
		if first {
			w := r.c.say.figures
			out = append(out, figure.Text{At: figure.Point{X: x(till) + 2, Y: y(k) + 0.9}, Size: 2.3,
				Words: fillText(w.rhythmSum, "trips", number(r.trips[k]), "minutes", number(int(math.Round(r.sums[k]))))})
		}
	}
	for n, s := range r.stays {
		a, b := max(s.from, begin), min(s.till, till)
		if b <= a {
			continue
		}
		if n > 0 && s.from >= begin {
			out = append(out, figure.Line(figure.Point{X: x(a), Y: y(r.stays[n-1].row)}, figure.Point{X: x(a), Y: y(s.row)}, figure.Stroke{Width: figure.Hairline}))
		}
		out = append(out, figure.Rect(figure.Point{X: x(a), Y: y(s.row) - rhythmBlock/2}, x(b)-x(a), rhythmBlock,
			figure.Stroke{Width: figure.Hairline}, figure.Fill{Tint: rhythmTint(r.rows[s.row])}))
	}
	return out
}

// rhythmTint tells the kinds of places apart where their rows do already.
func rhythmTint(s process.Station) float64 {
	switch s.Kind {
	case "machine":
		return 0.75
	case "iron":
		return 0.45
	case "hand":
		return 0.2
	}
	return 0.08
}

// bar shares the whole width among the places by their minutes.
func (r *rhythmOf) bar(top float64) []figure.Item {
	const high = 4
	var out []figure.Item
	x := 0.0
	k := newKey(r.c.measure, 0, top+high+4, lineWide)
	for i, s := range r.rows {
		wide := r.sums[i] / r.total * lineWide
		fill := figure.Fill{White: true, Hatch: figure.Hatch(i%figure.Hatches + 1), Pitch: 1.3}
		out = append(out, figure.Rect(figure.Point{X: x, Y: top}, wide, high, figure.Stroke{Width: figure.Thin}, fill))
		k.swatch(fill, fillText(r.c.say.figures.rhythmPart, "place", r.c.stationTitle(s.Name), "minutes", number(int(math.Round(r.sums[i])))))
		x += wide
	}
	return append(out, k.items...)
}
