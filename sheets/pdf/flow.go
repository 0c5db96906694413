package pdf

import (
	"strconv"
	"strings"
	"unicode"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"
)

// flow sets blocks one below the other as slabs.
type flow struct {
	*typesetter
	measure
	tall   float64 // the height of a page's body, mm
	apart  bool    // headings of level 2 begin a page, but for the first
	parted bool    // there was one already
	slabs  []slab
	panels []panel

	space float64 // wanted above the next slab
	open  []int   // the panels now open
	step  int     // the step now open, 0 for none
	steps int
}

// frame is where blocks may stand across the page, mm from its left edge.
type frame struct{ left, right float64 }

func (fr frame) width() float64 { return fr.right - fr.left }

// indent is the frame with its left end moved in, but for what would leave
// less than 25 mm, as very deep nesting might.
func (fr frame) indent(by float64) frame {
	return frame{fr.left + min(by, max(fr.width()-25, 0)), fr.right}
}

// want asks for space above the next slab; of several wishes the largest holds.
func (f *flow) want(space float64) { f.space = max(f.space, space) }

func (f *flow) add(s slab) {
	s.before, f.space = f.space, 0
	s.step = f.step
	s.panels = append([]int(nil), f.open...)
	f.slabs = append(f.slabs, s)
}

// document sets the top level, where a heading of level 3 with its settings
// below opens a step and the next heading of its level or above ends it.
func (f *flow) document(bs []block, fr frame) {
	for i, b := range bs {
		if h, ok := b.(heading); ok && h.level <= 3 {
			f.step = 0
			if settingsAt(bs, i+1) {
				f.steps++
				f.step = f.steps
			}
		}
		if settingsAt(bs, i) {
			f.strip(b.(paragraph), fr)
			f.rank(rankBlock)
			if k := len(f.slabs) - 1; k >= 0 && i+1 < len(bs) {
				f.slabs[k].keep = true // settings with nothing below them are of no use
			}
			continue
		}
		f.block(bs, i, fr, false)
		f.rank(rankBlock)
	}
}

// settingsAt tells whether the i-th block has the settings of a step: one
// emphasised run below a heading of level 3.
func settingsAt(bs []block, i int) bool {
	if i == 0 || i >= len(bs) {
		return false
	}
	h, isHeading := bs[i-1].(heading)
	p, isParagraph := bs[i].(paragraph)
	return isHeading && isParagraph && h.level == 3 && onlyEmphasis(p.spans)
}

// rank raises the rank of the last slab.
func (f *flow) rank(r rank) {
	if k := len(f.slabs) - 1; k >= 0 {
		f.slabs[k].rank = max(f.slabs[k].rank, r)
	}
}

func (f *flow) blocks(bs []block, fr frame, tight bool) {
	for i := range bs {
		f.block(bs, i, fr, tight)
	}
}

// block sets the i-th of the blocks; tight leaves out the space round it.
func (f *flow) block(bs []block, i int, fr frame, tight bool) {
	gap := 0.55 * f.lead
	if tight {
		gap = 0.12 * f.lead
	}
	from := len(f.slabs)
	switch b := bs[i].(type) {
	case heading:
		f.heading(b, fr)
	case paragraph:
		f.want(gap)
		base := look{size: f.size}
		if i > 0 && onlyEmphasis(b.spans) {
			if drawn(bs[i-1]) {
				base.size, base.light = 0.88*f.size, 0.25
			}
		}
		f.text(b.spans, base, f.lead*base.size/f.size, fr, false)
		f.want(gap)
	case plate:
		f.want(max(gap, 0.5*f.lead))
		f.plate(b.fig, fr)
		f.want(max(gap, 0.4*f.lead))
	case list:
		f.want(gap)
		f.list(b, fr)
		f.want(gap)
	case quote:
		f.want(max(gap, 0.6*f.lead))
		f.within(panel{left: fr.left, width: 0.9, tint: 0.8}, func() { f.blocks(b.blocks, fr.indent(1.15*f.size), tight) })
		f.want(max(gap, 0.6*f.lead))
	case literal:
		f.want(gap)
		f.literal(b, fr)
		f.want(gap)
	case table:
		f.want(max(gap, 0.5*f.lead))
		f.table(b, fr)
		f.want(max(gap, 0.6*f.lead))
	case rule:
		y := 0.5 * f.lead
		f.add(slab{height: f.lead, ink: []figure.Item{figure.Line(figure.Point{X: fr.left, Y: y}, figure.Point{X: fr.right, Y: y}, figure.Stroke{Width: figure.Thin, Light: 0.5})}})
	}
	if len(f.slabs) > from && i+1 < len(bs) && (leadsOn(bs[i], bs[i+1]) || roomToWrite(bs, i) || roomToWrite(bs, i+1)) {
		f.slabs[len(f.slabs)-1].keep = true
	}
}

// leadsOn tells whether a page must not end between two blocks: after a
// figure, whose caption may follow, after words that announce what comes, and
// after a line that stands between a heading and its figure.
func leadsOn(a, b block) bool {
	const longestLeadIn = 220 // bytes
	if _, ok := b.(heading); ok {
		return false
	}
	if drawn(a) {
		return true
	}
	if a, ok := a.(paragraph); ok {
		words := plain(a.spans)
		if drawn(b) && len(words) <= longestLeadIn {
			return true
		}
		if _, ok := b.(paragraph); !ok {
			return strings.HasSuffix(strings.TrimSpace(words), ":")
		}
	}
	return false
}

// roomToWrite tells whether the i-th block heads lines to write on, which would
// be lost on a page of their own.
func roomToWrite(bs []block, i int) bool {
	if i+1 >= len(bs) {
		return false
	}
	p, isParagraph := bs[i].(paragraph)
	_, isRule := bs[i+1].(rule)
	return isParagraph && isRule && onlyEmphasis(p.spans)
}

// within runs set with a panel behind all the slabs it makes.
func (f *flow) within(p panel, set func()) {
	f.panels = append(f.panels, p)
	f.open = append(f.open, len(f.panels)-1)
	set()
	f.open = f.open[:len(f.open)-1]
}

// enlarged are a heading's words, with the number that one of level 3 begins
// with as large as was asked for.
func (f *flow) enlarged(h heading) []span {
	if h.level != 3 || len(h.spans) == 0 {
		return h.spans
	}
	number, words := h.spans[0], h.spans[0]
	end := strings.IndexFunc(words.text, func(r rune) bool { return !unicode.IsDigit(r) })
	if end < 0 {
		end = len(words.text)
	}
	number.text, number.scale, words.text = words.text[:end], f.number/usualStep, words.text[end:]
	return append([]span{number, words}, h.spans[1:]...)
}

func (f *flow) heading(h heading, fr frame) {
	size, lead, before, after, style := f.measure.heading(h.level)
	f.want(before)
	from := len(f.slabs)
	if h.level == 2 || h.level == 3 {
		s := figure.Stroke{Width: figure.Medium}
		if h.level == 3 {
			s = figure.Stroke{Width: figure.Hairline, Light: 0.35}
		}
		f.add(slab{height: 0.28 * f.lead, keep: true, opener: true, ink: []figure.Item{figure.Line(figure.Point{X: fr.left}, figure.Point{X: fr.right}, s)}})
	}
	f.text(f.enlarged(h), look{style: style, size: size}, lead, fr, true)
	if len(f.slabs) == from {
		f.add(slab{height: 0, keep: true})
	}
	f.slabs[from].fresh = f.apart && h.level == 2 && f.parted
	f.parted = f.parted || h.level == 2
	f.slabs[from].marks = []headingMark{{id: h.id, title: strings.Join(strings.Fields(f.showable(0, plain(h.spans), "a heading")), " "), level: h.level}}
	f.want(after)
}

// text sets spans as lines, one slab each. No page begins or ends with a
// single line of a longer paragraph; keep binds the last line to what follows.
func (f *flow) text(spans []span, base look, lead float64, fr frame, keep bool) {
	lines := f.lines(f.clusters(spans, base, f.room(fr.width())), fr.width())
	for i, ln := range lines {
		s := slab{keep: keep || i == 0 && len(lines) > 1 || i == len(lines)-2}
		s.height = f.setLine(&s, ln, fr.left, 0, base.size, lead, roleBody)
		f.add(s)
	}
}

// room is the space a figure among words may take before it is scaled down.
func (f *flow) room(width float64) figure.Point { return figure.Point{X: width, Y: 0.7 * f.tall} }

// setLine puts a line into a slab with its left end at x and its top at y, and
// is its height: lead, or more where a figure stands in it.
func (f *flow) setLine(s *slab, ln line, x, y, size, lead float64, r role) float64 {
	around := lead - (rise+typeface.Descent)*size
	up, down := ln.up, ln.down
	if down > 0 || up == 0 {
		up, down = max(up, rise*size), max(down, typeface.Descent*size)
	}
	baseline := y + around/2 + up
	for _, p := range ln.parts {
		switch {
		case p.fig != nil:
			f.drawFigure(s, *p.fig, x, baseline-p.fig.Height*p.scale, p.scale)
		default:
			f.decorate(s, p, x, baseline)
			s.words = append(s.words, words{X: x, Y: baseline, Width: p.width, Size: p.size, Style: p.style, Light: p.light, Text: p.text, To: p.to, Role: r})
		}
		x += p.width
	}
	return up + down + around
}

// decorate adds what goes with words besides their letters: the ground of
// code, the line through what is struck out, the line below a link.
func (f *flow) decorate(s *slab, p part, x, baseline float64) {
	at := func(up float64) figure.Point { return figure.Point{X: x, Y: baseline - up*p.size} }
	across := func(up float64, st figure.Stroke) {
		a := at(up)
		s.ink = append(s.ink, figure.Line(a, figure.Point{X: a.X + p.width, Y: a.Y}, st))
	}
	if p.code {
		s.ink = append(s.ink, figure.Rect(at(0.82), p.width, 1.06*p.size, figure.Stroke{}, figure.Fill{Tint: 0.08}))
	}
	if p.strike {
		across(0.27, figure.Stroke{Width: 0.055 * p.size})
	}
	if p.to != (target{}) {
		across(-0.13, figure.Stroke{Width: figure.Hairline, Light: 0.4})
	}
}

// strip sets a paragraph that is one emphasised run on a grey ground: the
// settings of the step whose heading it follows.
func (f *flow) strip(p paragraph, fr frame) {
	base := look{size: 0.95 * f.size}
	f.want(0.15 * f.lead)
	f.onGround(fr, 0.09, 0.22*f.lead, func(inner frame) { f.text(p.spans, base, f.lead, inner, false) })
	f.want(0.5 * f.lead)
}

// onGround runs set with a tinted panel behind what it makes, with room of pad
// above and below and of a little more at the sides. The words stand a little
// low in it, since they have more body above the baseline than below.
func (f *flow) onGround(fr frame, tint, pad float64, set func(frame)) {
	from := len(f.slabs)
	side := 0.5 * f.size
	f.within(panel{left: fr.left, width: fr.width(), tint: tint}, func() { set(frame{fr.left + side, fr.right - side}) })
	if len(f.slabs) == from {
		return
	}
	first, last := &f.slabs[from], &f.slabs[len(f.slabs)-1]
	above, below := 1.25*pad, 0.75*pad
	first.height += above
	first.ink = figure.Shift(first.ink, 0, above)
	for i := range first.words {
		first.words[i].Y += above
	}
	last.height += below
}

func (f *flow) literal(l literal, fr frame) {
	base := look{style: typeface.Condensed, size: 0.94 * f.size}
	f.onGround(fr, 0.06, 0.3*f.lead, func(inner frame) {
		for i, text := range l.lines {
			text = f.showable(base.style, text, "line "+strconv.Itoa(l.line+i))
			w := f.width(base, text)
			c := cluster{parts: []part{{look: base, text: text, width: w}}, width: w, after: jointHard}
			for _, ln := range f.lines([]cluster{c}, inner.width()) {
				var s slab
				s.height = f.setLine(&s, ln, inner.left, 0, base.size, 0.95*f.lead, roleBody)
				f.add(s)
			}
		}
	})
}

// plate sets a figure that stands alone, scaled down only where it is wider
// than the text or taller than a page has room for.
func (f *flow) plate(fig figure.Figure, fr frame) {
	k := min(1, fr.width()/fig.Width, (f.tall-4*f.lead)/fig.Height)
	s := slab{height: fig.Height * k}
	f.drawFigure(&s, fig, fr.left, 0, k)
	f.add(s)
}
