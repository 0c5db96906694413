package pdf

import (
	"math"
	"strings"
	"unicode"

	"bodkin/sheets/pdf/typeface"
)

// line is one line of set words, its parts from left to right. up and down are
// how far it reaches from its baseline, mm.
type line struct {
	parts    []part
	width    float64
	up, down float64
	hyphen   bool // the last letter is a hyphen that the writer's word has not
}

// lines breaks the clusters into lines no wider than room, each as full as it
// may be. Where a single cluster is wider, it is parted between letters.
func (t *typesetter) lines(cs []cluster, room float64) []line {
	room += 1e-6 // sums of widths are not exact
	var out []line
	for at := 0; at < len(cs); {
		end, width, fits := at, 0.0, -1
		for ; end < len(cs); end++ {
			if end > at && cs[end-1].after == jointSpace {
				width += cs[end-1].space.width
			}
			width += cs[end].width
			shown := width
			if cs[end].after == jointSoft {
				shown += cs[end].space.width
			}
			if width > room {
				break
			}
			if shown <= room {
				fits = end
			}
			if cs[end].after == jointHard {
				break
			}
		}
		if fits < 0 {
			if head, tail, ok := t.cutCluster(cs[at], room); ok {
				out = append(out, lineOf([]cluster{head}))
				cs[at] = tail
				continue
			}
			fits = at
			if cs[at].after == jointSoft && cs[at].width <= room {
				cs[at].after = jointFree // the word fits, its hyphen does not
			}
		}
		out = append(out, lineOf(cs[at:fits+1]))
		at = fits + 1
	}
	return out
}

// cutCluster cuts a cluster so that its head is as wide as room allows, one
// letter at the least; ok is false when nothing is left to cut. Marks stay with
// their letter.
func (t *typesetter) cutCluster(c cluster, room float64) (head, tail cluster, ok bool) {
	head.after, head.space = jointFree, part{}
	for i, p := range c.parts {
		if head.width+p.width <= room || p.fig != nil && i == 0 {
			head.parts, head.width = append(head.parts, p), head.width+p.width
			continue
		}
		cut, width := 0, 0.0
		if p.fig == nil {
			cut, width = t.cut(p, room-head.width, i == 0)
		}
		if cut == 0 && i == 0 {
			return c, cluster{}, false
		}
		rest := c
		rest.parts = append([]part(nil), c.parts[i:]...)
		rest.width = c.width - head.width - width
		if cut > 0 {
			first := p
			first.text, first.width = p.text[:cut], width
			head.parts, head.width = append(head.parts, first), head.width+width
			rest.parts[0].text, rest.parts[0].width = p.text[cut:], p.width-width
		}
		return head, rest, true
	}
	return c, cluster{}, false
}

// cut is how many bytes of the part fit into room, and their width; with least,
// one letter is taken even if it does not fit. It is 0 when all of it fits.
func (t *typesetter) cut(p part, room float64, least bool) (bytes int, width float64) {
	for i, r := range p.text {
		w := t.width(p.look, string(r))
		if width+w > room && !unicode.IsMark(r) && (i > 0 || !least) {
			return i, width
		}
		width += w
	}
	return 0, 0
}

// lineOf joins the clusters' parts and the spaces between them, neighbours of
// one look to one stretch.
func lineOf(cs []cluster) line {
	var ln line
	add := func(p part) {
		if p.text == "" && p.fig == nil {
			return
		}
		ln.width += p.width
		if k := len(ln.parts) - 1; k >= 0 && p.fig == nil && ln.parts[k].fig == nil && ln.parts[k].look == p.look {
			ln.parts[k].text += p.text
			ln.parts[k].width += p.width
			return
		}
		ln.parts = append(ln.parts, p)
	}
	for i, c := range cs {
		for _, p := range c.parts {
			add(p)
		}
		last := i == len(cs)-1
		switch {
		case last && c.after == jointSoft:
			add(c.space)
			ln.hyphen = true
		case !last && c.after == jointSpace:
			add(c.space)
		}
	}
	for _, p := range ln.parts {
		if p.fig != nil {
			ln.up = max(ln.up, p.fig.Height*p.scale)
			continue
		}
		ln.up = max(ln.up, rise*p.size)
		ln.down = max(ln.down, typeface.Descent*p.size)
	}
	return ln
}

// rise is how far ordinary letters reach above the baseline, in type sizes:
// the ascenders of DejaVu Sans (from its outlines, 1556 of 2048 units).
const rise = 1556.0 / 2048

// naturalWidth is how wide the clusters are with no line end but the wanted
// ones, and leastWidth the widest of them alone.
func naturalWidth(cs []cluster) (natural, least float64) {
	width := 0.0
	for i, c := range cs {
		width += c.width
		natural, least = max(natural, width), max(least, c.width)
		switch c.after {
		case jointHard:
			width = 0
		case jointSpace:
			if i+1 < len(cs) {
				width += c.space.width
			}
		}
	}
	return natural, math.Min(least, natural)
}

// text is the line's words alone.
func (ln line) text() string {
	var b strings.Builder
	for _, p := range ln.parts {
		b.WriteString(p.text)
	}
	return b.String()
}
