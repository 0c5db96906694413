package pdf

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"
)

// paperMargin is the white round the body: at the sides, above and below it,
// mm. Small paper gets less.
func paperMargin(width float64) (side, top, bottom float64) {
	if width < 170 {
		return 12, 17, 15
	}
	return 17, 21, 18
}

// frameOn adds the running head and the page number to every page. They stand
// in the margins, so that the body is the same with and without them.
func frameOn(d *drawing, t *typesetter, title, running string) {
	base := look{size: 8 * mmPerPoint, light: 0.3}
	put := func(p *page, text string, style typeface.Style, x, y float64, right bool) {
		l := base
		l.style = style
		w := t.width(l, text)
		if right {
			x -= w
		}
		if text != "" {
			p.words = append(p.words, words{X: x, Y: y, Width: w, Size: l.size, Style: style, Light: l.light, Text: text, Role: roleFrame})
		}
	}
	width := d.body.Width()
	bold := base
	bold.style = typeface.Bold
	running = t.shorten(base, running, 0.45*width)
	title = t.shorten(bold, title, width-t.width(base, running)-4)
	headY, footY := d.body.Top-7.2, d.body.Bottom+9
	for i := range d.pages {
		p := &d.pages[i]
		put(p, title, typeface.Bold, d.body.Left, headY, false)
		put(p, running, 0, d.body.Right, headY, true)
		p.ink = append(p.ink, figure.Line(figure.Point{X: d.body.Left, Y: headY + 1.7}, figure.Point{X: d.body.Right, Y: headY + 1.7}, figure.Stroke{Width: figure.Hairline, Light: 0.5}))
		put(p, fmt.Sprintf("page %d of %d", i+1, len(d.pages)), 0, d.body.Right, footY, true)
	}
}

// shorten cuts text off with an ellipsis where it is wider than room.
func (t *typesetter) shorten(l look, text string, room float64) string {
	if t.width(l, text) <= room {
		return text
	}
	for text != "" {
		_, n := utf8.DecodeLastRuneInString(text)
		text = text[:len(text)-n]
		if short := strings.TrimRight(text, " ") + "…"; t.width(l, short) <= room {
			return short
		}
	}
	return ""
}
