package sheets

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// Sizes of a cross-section on paper, in mm. Along the cloth it is to scale; up
// and down the plies are drawn apart so that each can be followed.
const (
	plyGap       = 3.6  // from one ply to the next
	plyThick     = 1.3  // a ply as drawn
	sectionWide  = 126  // as wide as a section may get
	sectionLess  = 82   // where another figure is to stand beside it
	besideWide   = 70   // as wide as one may get that stands beside another
	stageWide    = 50   // as wide as a stage may get
	needleLong   = 5    // a needle, where a row goes in
	sectionType  = 2.9  // type of the figures in it
	keyType      = 2.5  // type of its key
	laneHigh     = 4.6  // from one row of dimensions to the next
	sectionEdge  = 1.5  // margin round it
	enlargedMost = 5    // times life size
	pointsAlike  = 1e-9 // mm
)

// sectionFigure draws how a seam is built, cut across, from stage to stage, with
// other figures beside it.
func (c *composer) sectionFigure(s process.Seam, beside ...figure.Figure) {
	if len(s.Section.Items) == 0 {
		c.figures(beside...)
		return
	}
	w := c.say.figures
	wide := float64(sectionWide)
	if len(beside) > 0 {
		wide = sectionLess
	}
	caption := w.sectionCaption
	var drawn []*section
	if len(s.Section.Stages) > 0 {
		drawn, caption = newStages(c, s), w.stagesCaption
	} else {
		drawn = []*section{newSection(c, s, wide)}
	}
	if c.at != "" {
		var all []figure.Figure
		for _, d := range drawn {
			alt := fillText(w.sectionAlt, "construction", s.ConstructionTitle)
			if d.title != "" {
				alt = fillText(w.stageAlt, "construction", s.ConstructionTitle, "stage", d.title)
			}
			all = append(all, figure.Fit(c.slug("section", s.Construction), alt, d.titled(), sectionEdge, c.measure))
		}
		c.figures(append(all, beside...)...)
	}
	c.para(soft(say(caption, values{"construction": plain(s.ConstructionTitle), "scale": c.scaleWords(drawn[0].scale)})))
}

// sectionsBeside draws sections close together, each under its own name, with one
// caption for all.
func (c *composer) sectionsBeside(groups [][]process.Seam) {
	w := c.say.figures
	var figures []figure.Figure
	for _, g := range groups {
		s := g[0]
		if len(s.Section.Items) == 0 {
			continue
		}
		d := newSection(c, s, besideWide)
		d.title = fillText(w.sectionName, "construction", s.ConstructionTitle, "scale", string(c.scaleWords(d.scale)))
		figures = append(figures, figure.Fit(c.slug("section", s.Construction), fillText(w.sectionAlt, "construction", s.ConstructionTitle), d.titled(), sectionEdge, c.measure))
	}
	if len(figures) == 0 {
		return
	}
	if c.at != "" {
		c.figures(figures...)
	}
	c.para(soft(plain(w.sectionsCaption)))
}

// scaleWords says how large a drawing is beside the thing.
func (c *composer) scaleWords(scale float64) inline {
	w := c.say.figures
	switch {
	case scale == 1:
		return plain(w.lifeSize)
	case scale > 1:
		return say(w.larger, values{"n": plain(decimal(scale))})
	}
	return say(w.smaller, values{"n": plain(decimal(1 / scale))})
}

// section is a cross-section on its way to paper.
type section struct {
	c      *composer
	kind   string
	title  string // above it; empty for none
	parts  []process.SectionItem
	keyed  []process.SectionItem // what the key explains; none where it has no key
	fresh  []int                 // rows that are sewn here, each with its needle
	room   float64               // as wide as it may get
	scale  float64
	around figure.Box // of the plies and stitches, on paper
	placed []figure.Box
}

// newSection is the finished section alone.
func newSection(c *composer, s process.Seam, room float64) *section {
	items := s.Section.Items
	return &section{c: c, kind: s.Kind, parts: items, keyed: items, room: room, scale: enlargement(acrossOf(items), room)}
}

// newStages are the stages and the finished section, to one scale, lettered and
// each under the acts that lead to it. The key stands below the last and
// explains them all.
func newStages(c *composer, s process.Seam) []*section {
	stages := append(slices.Clone(s.Section.Stages), process.Stage{Does: s.Section.Does, Items: s.Section.Items})
	var all []process.SectionItem
	wide := 0.0
	for _, st := range stages {
		all = append(all, st.Items...)
		wide = max(wide, acrossOf(st.Items))
	}
	seen := map[int]bool{}
	var out []*section
	for i, st := range stages {
		d := &section{c: c, kind: s.Kind, parts: st.Items, room: stageWide, scale: enlargement(wide, stageWide)}
		d.title = fillText(c.say.figures.stageName, "letter", string(rune('A'+i)), "acts", c.actsOf(st.Does))
		for _, it := range st.Items {
			if row := max(it.Row, 1); it.Stitch != "" && !seen[row] {
				d.fresh = append(d.fresh, row)
			}
		}
		for _, row := range d.fresh {
			seen[row] = true
		}
		out = append(out, d)
	}
	out[len(out)-1].keyed = all
	return out
}

// actsOf lists acts in small letters.
func (c *composer) actsOf(acts []string) string {
	var words []string
	for _, a := range acts {
		words = append(words, lower(a))
	}
	return strings.Join(words, c.say.list)
}

// acrossOf is how wide the lines of a section are, in mm of the thing.
func acrossOf(items []process.SectionItem) float64 {
	left, right := math.Inf(1), math.Inf(-1)
	for _, it := range items {
		for _, p := range it.Through {
			left, right = min(left, p.X), max(right, p.X)
		}
	}
	return right - left
}

// enlargement is the largest usual scale at which a width stays within its room.
func enlargement(wide, room float64) float64 {
	for _, k := range []float64{enlargedMost, 4, 3, 2, 1.5, 1} {
		if wide*k <= room {
			return k
		}
	}
	for _, n := range []float64{2, 3, 4, 5, 10, 20, 50} {
		if wide/n <= room {
			return 1 / n
		}
	}
	return room / wide
}

func (d *section) at(p process.Point) figure.Point {
	return figure.Point{X: p.X * d.scale, Y: p.Y * plyGap}
}

func (d *section) line(it process.SectionItem) []figure.Point {
	out := make([]figure.Point, len(it.Through))
	for i, p := range it.Through {
		out[i] = d.at(p)
	}
	return out
}

// items are the plies, the stitches, their numbers, the dimensions and the key,
// later ones on top.
func (d *section) items() []figure.Item {
	var out []figure.Item
	for _, it := range d.parts {
		if it.Ply != "" {
			out = append(out, d.ply(it)...)
		}
	}
	var rows []process.SectionItem
	for _, it := range d.parts {
		if it.Stitch != "" && len(it.Through) >= 2 {
			rows = append(rows, it)
			out = append(out, figure.NeedleMark(d.at(it.Through[0]), d.at(it.Through[1]))...)
			if slices.Contains(d.fresh, max(it.Row, 1)) {
				out = append(out, figure.Needle(d.at(it.Through[0]), d.at(it.Through[1]), needleLong))
			}
		}
	}
	d.around = figure.Bounds(out, d.c.measure)
	out = append(out, d.rowNumbers(rows)...)
	out = append(out, d.dimensions()...)
	if len(d.keyed) == 0 {
		return out
	}
	return append(out, d.key(figure.Bounds(out, d.c.measure))...)
}

// titled is the drawing under its title.
func (d *section) titled() []figure.Item {
	items := d.items()
	if d.title == "" {
		return items
	}
	box := figure.Bounds(items, d.c.measure)
	lines := d.c.measure.wrapped(d.title, sectionType, d.room+8)
	for i, line := range lines {
		items = append(items, figure.Text{
			At:   figure.Point{X: box.Left, Y: box.Top - 2 - float64(len(lines)-1-i)*1.3*sectionType},
			Size: sectionType, Words: line,
		})
	}
	return items
}

// ply is a layer of cloth with its right side drawn heavy.
func (d *section) ply(it process.SectionItem) []figure.Item {
	line := d.line(it)
	band := figure.Ply(line, plyThick, plyGap/2, figure.Stroke{Width: figure.Hairline}, d.fill(it.Ply))
	if len(band.Segments) == 0 {
		return nil
	}
	out := []figure.Item{band}
	if side := sideOf(band, it.Right); len(side) > 1 {
		out = append(out, figure.Polyline(figure.Stroke{Width: figure.Bold}, side...))
	}
	return out
}

// sideOf is the line along one side of a band that figure.Ply made: its outline
// runs along the left side and back along the right, with as many points on
// either.
func sideOf(band figure.Path, right string) []figure.Point {
	points := []figure.Point{band.Start}
	for _, s := range band.Segments {
		points = append(points, s.To)
	}
	half := len(points) / 2
	switch right {
	case "left":
		return points[:half]
	case "right":
		return points[half:]
	}
	return nil
}

// fill tells the plies apart without colour.
func (d *section) fill(ply string) figure.Fill {
	switch ply {
	case "b":
		return figure.Fill{Tint: 0.22}
	case "strip":
		return figure.Fill{White: true, Hatch: figure.Rising, Pitch: 0.9}
	case "interfacing":
		return figure.Fill{White: true, Hatch: figure.Dotted, Pitch: 0.9}
	case "elastic":
		return figure.Fill{White: true, Hatch: figure.Upright, Pitch: 0.8}
	}
	return figure.Fill{White: true}
}

// rowNumbers stand above the drawing, each joined to its row by a fine line.
func (d *section) rowNumbers(rows []process.SectionItem) []figure.Item {
	var want, size []float64
	for _, it := range rows {
		a, b := d.at(it.Through[0]), d.at(it.Through[1])
		want = append(want, (a.X+b.X)/2)
		size = append(size, d.c.measure.TextWidth(number(max(it.Row, 1)), sectionType, true))
	}
	base := d.around.Top - 2.2
	var out []figure.Item
	for i, x := range figure.Spread(want, size, 1.5, math.Inf(-1), math.Inf(1)) {
		a, b := d.at(rows[i].Through[0]), d.at(rows[i].Through[1])
		end := figure.Point{X: want[i], Y: min(a.Y, b.Y)}
		if math.Abs(a.X-b.X) > plyThick {
			end.Y = (a.Y + b.Y) / 2 // a slanting stitch is met in its middle
		}
		out = append(out,
			figure.Line(figure.Point{X: x, Y: base + 0.7}, end, figure.Stroke{Width: figure.Hairline, Dash: []float64{0.6, 0.6}}),
			figure.Text{At: figure.Point{X: x, Y: base}, Size: sectionType, Anchor: figure.Middle, Bold: true, Words: number(max(rows[i].Row, 1))})
	}
	return out
}

// dimensions stand below, the shortest nearest, none over another.
func (d *section) dimensions() []figure.Item {
	var sizes []process.SectionItem
	for _, it := range d.parts {
		if it.Size != "" && len(it.Through) >= 2 && math.Abs(it.Through[0].X-it.Through[1].X) > pointsAlike {
			if it.Through[0].X > it.Through[1].X {
				it.Through = []process.Point{it.Through[1], it.Through[0]}
			}
			sizes = append(sizes, it)
		}
	}
	slices.SortStableFunc(sizes, func(a, b process.SectionItem) int {
		return cmp.Compare(a.Through[1].X-a.Through[0].X, b.Through[1].X-b.Through[0].X)
	})
	var lines, words []figure.Item
	for _, it := range sizes {
		ls, ws := d.dimension(it)
		lines, words = append(lines, ls...), append(words, ws...)
	}
	return append(lines, words...)
}

// dimension takes the first row in which it hides no words and its words hide
// no line.
func (d *section) dimension(it process.SectionItem) (lines, words []figure.Item) {
	from := figure.Point{X: it.Through[0].X * d.scale, Y: d.around.Bottom}
	to := figure.Point{X: it.Through[1].X * d.scale, Y: d.around.Bottom}
	for lane := 1; ; lane++ {
		offset := -laneHigh * float64(lane)
		parts := figure.Dimension(from, to, offset, d.c.mmText(it.MM), sectionType, d.c.measure)
		lines, words = lines[:0:0], words[:0:0]
		box := figure.Box{}
		for _, p := range parts {
			if t, ok := p.(figure.Text); ok {
				words = append(words, figure.Backed(t, d.c.measure)...)
				box = grown(figure.TextBox(t, d.c.measure), 0.8)
				continue
			}
			lines = append(lines, p)
		}
		row := figure.Box{Left: min(from.X, box.Left), Right: max(to.X, box.Right),
			Top: from.Y - offset - laneHigh/2 + 0.1, Bottom: from.Y - offset + laneHigh/2 - 0.1}
		if !slices.ContainsFunc(d.placed, row.Overlaps) {
			d.placed = append(d.placed, row)
			return lines, words
		}
	}
}

func grown(b figure.Box, by float64) figure.Box {
	return figure.Box{Left: b.Left - by, Top: b.Top - by, Right: b.Right + by, Bottom: b.Bottom + by}
}

// key names what the lines and fills of this drawing mean.
func (d *section) key(drawn figure.Box) []figure.Item {
	k := newKey(d.c.measure, drawn.Left, drawn.Bottom+5.2, d.room)
	w := d.c.say.figures
	for _, ply := range []struct{ name, words string }{
		{"a", d.firstPly()}, {"b", w.plyB}, {"strip", w.plyStrip}, {"interfacing", w.plyInterfacing}, {"elastic", w.plyElastic},
	} {
		if slices.ContainsFunc(d.keyed, func(it process.SectionItem) bool { return it.Ply == ply.name }) {
			k.swatch(d.fill(ply.name), ply.words)
		}
	}
	if slices.ContainsFunc(d.keyed, func(it process.SectionItem) bool { return it.Right != "" }) {
		k.sample(figure.Stroke{Width: figure.Bold}, w.rightSide)
	}
	return k.items
}

// firstPly is what ply a is: one of two pieces, or the garment.
func (d *section) firstPly() string {
	if slices.ContainsFunc(d.keyed, func(it process.SectionItem) bool { return it.Ply == "b" }) {
		return d.c.say.figures.plyA
	}
	return d.c.say.figures.plyOnly
}
