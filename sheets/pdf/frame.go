package pdf

import (
	"fmt"
	"regexp"
	"slices"
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

// frameOn adds the running head, with the steps that stand on the page, and the page
// number to every page. They stand in the margins, so that the body is the same with
// and without them. A running head that is the title is not said again.
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
	if running == title {
		running = ""
	}
	headY, footY := d.body.Top-7.2, d.body.Bottom+9
	steps := stepsOn(d)
	for i := range d.pages {
		p := &d.pages[i]
		right := steps[i]
		if running != "" && right != "" {
			right = " · " + right
		}
		right = t.shorten(base, running, 0.45*width-t.width(base, right)) + right
		put(p, t.shorten(bold, title, width-t.width(base, right)-4), typeface.Bold, d.body.Left, headY, false)
		put(p, right, 0, d.body.Right, headY, true)
		p.ink = append(p.ink, figure.Line(figure.Point{X: d.body.Left, Y: headY + 1.7}, figure.Point{X: d.body.Right, Y: headY + 1.7}, figure.Stroke{Width: figure.Hairline, Light: 0.5}))
		put(p, fmt.Sprintf("page %d of %d", i+1, len(d.pages)), 0, d.body.Right, footY, true)
	}
}

// stepNumber is what the heading of a step begins with: its number, perhaps with a
// word before it.
var stepNumber = regexp.MustCompile(`^(\PN{0,24})(\pN+\pL?) · `)

// stepsOn says of every page which steps stand on it, as their headings have it:
// Step 3, or Step 3–7. A step that goes on from the page before counts.
func stepsOn(d *drawing) []string {
	out := make([]string, len(d.pages))
	open, next := []string(nil), 0 // the step that goes on: its word and its number
	for n := range d.pages {
		var here [][]string
		if next == len(d.bookmarks) || d.bookmarks[next].page > n || d.bookmarks[next].y > d.body.Top+0.01 {
			here = append(here, open)
		}
		for ; next < len(d.bookmarks) && d.bookmarks[next].page == n; next++ {
			open = nil
			if b := d.bookmarks[next]; b.level == 2 {
				open = stepNumber.FindStringSubmatch(b.title)
			}
			here = append(here, open)
		}
		here = slices.DeleteFunc(here, func(s []string) bool { return s == nil })
		if k := len(here); k > 0 {
			out[n] = here[0][1] + here[0][2]
			if k > 1 {
				out[n] += "–" + here[k-1][2]
			}
		}
	}
	return out
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
