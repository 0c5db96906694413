package pdf

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"
)

// MissingGlyphsError lists the runes the fonts cannot show.
type MissingGlyphsError struct {
	Runes []MissingGlyph // in the order they were met, each once
}

// MissingGlyph is one rune and where it was first met: a line of the Markdown
// or the name of what holds it.
type MissingGlyph struct {
	Rune  rune
	Where string
}

func (e *MissingGlyphsError) Error() string {
	var b strings.Builder
	b.WriteString("the font has no glyph for")
	for i, m := range e.Runes {
		if i == 12 {
			fmt.Fprintf(&b, " and %d more", len(e.Runes)-i)
			break
		}
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, " %U", m.Rune)
		if unicode.IsPrint(m.Rune) {
			fmt.Fprintf(&b, " %q", m.Rune)
		}
		fmt.Fprintf(&b, " (%s)", m.Where)
	}
	b.WriteString("; write it another way or choose a replacement")
	return b.String()
}

// typesetter measures words and keeps account of runes without a glyph.
type typesetter struct {
	faces   typeface.Faces
	replace string
	ids     map[string]bool // of the headings that a link may lead to
	missing MissingGlyphsError
}

// showable is the text with every rune that has no glyph replaced, or, when
// nothing is to replace it, noted and left out.
func (t *typesetter) showable(s typeface.Style, text, where string) string {
	bad := func(r rune) bool {
		_, ok := t.faces.Advance(s, r)
		return !ok
	}
	if strings.IndexFunc(text, bad) < 0 {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		switch {
		case !bad(r):
			b.WriteRune(r)
		case t.replace != "":
			b.WriteString(t.replace)
		case !slices.ContainsFunc(t.missing.Runes, func(m MissingGlyph) bool { return m.Rune == r }):
			t.missing.Runes = append(t.missing.Runes, MissingGlyph{r, where})
		}
	}
	return b.String()
}

func (t *typesetter) width(l look, text string) float64 {
	return t.faces.Width(l.style, text, l.size)
}

// err is what kept the words from being set, nil when nothing did.
func (t *typesetter) err() error {
	if t.faces.Err() != nil {
		return t.faces.Err()
	}
	if len(t.missing.Runes) > 0 {
		return &t.missing
	}
	return nil
}

// joint is what may happen between one cluster and the next.
type joint int

const (
	jointSpace joint = iota // a space; a line may end here
	jointSoft               // a soft hyphen: a line that ends here shows a hyphen
	jointFree               // a line may end here, nothing is shown
	jointHard               // the line ends here
)

// cluster is a stretch that no line break may part, but for want of room, and
// what follows it.
type cluster struct {
	parts []part
	width float64
	after joint
	space part // the space, or the hyphen of a soft one
}

// part is words of one look within a cluster, or a figure.
type part struct {
	look
	text  string
	width float64
	fig   *figure.Figure
	scale float64 // of the figure
}

// clusters cuts spans at the places where a line may end. Spaces run together
// to one, as Markdown has it; spaces at the ends are dropped. base gives the
// size and what spans add their own style to; room is the largest a figure may
// be before it is scaled down.
func (t *typesetter) clusters(spans []span, base look, room figure.Point) []cluster {
	c := &clusterer{typesetter: t}
	for _, s := range spans {
		l := base
		l.style |= s.style
		if s.scale > 0 {
			l.size *= s.scale
		}
		l.code, l.strike, l.to = s.code, s.strike, s.to
		if l.to.id != "" && !t.ids[l.to.id] {
			l.to = target{}
		}
		where := fmt.Sprintf("line %d", s.line)
		switch {
		case s.breaks:
			c.end(jointHard, part{look: l})
		case s.fig != nil:
			k := min(1, room.X/s.fig.Width, room.Y/s.fig.Height)
			c.cur.parts = append(c.cur.parts, part{look: l, width: s.fig.Width * k, fig: s.fig, scale: k})
			c.cur.width += s.fig.Width * k
		default:
			c.text(s.text, l, where)
		}
	}
	c.end(jointHard, part{look: base})
	return c.done
}

type clusterer struct {
	*typesetter
	done []cluster
	cur  cluster
}

func (c *clusterer) text(text string, l look, where string) {
	runes := []rune(text)
	from := 0
	flush := func(to int) {
		if to > from {
			words := c.showable(l.style, string(runes[from:to]), where)
			w := c.width(l, words)
			c.cur.parts = append(c.cur.parts, part{look: l, text: words, width: w})
			c.cur.width += w
		}
		from = to
	}
	for i, r := range runes {
		switch {
		case r == ' ' && tied(runes, i):
		case r == ' ' || r == '\t' || r == '\n':
			flush(i)
			from = i + 1
			c.end(jointSpace, part{look: l, text: " ", width: c.width(l, " ")})
		case r == '\u00ad':
			flush(i)
			from = i + 1
			c.end(jointSoft, part{look: l, text: "-", width: c.width(l, "-")})
		case r == '\u200b':
			flush(i)
			from = i + 1
			c.end(jointFree, part{look: l})
		case i > 0 && i+1 < len(runes) && mayEndAfter(runes[i-1], r, runes[i+1]):
			flush(i + 1)
			c.end(jointFree, part{look: l})
		}
	}
	flush(len(runes))
}

// tied tells whether the space at i stands between a figure and its unit, which
// a line's end should not part. The units are those of lengths, areal weights,
// times and heat by the SI Brochure (BIPM, 9th edition, 2019) and the inch, foot
// and yard.
func tied(runes []rune, i int) bool {
	if i == 0 || !unicode.IsNumber(runes[i-1]) {
		return false
	}
	end := i + 1
	for end < len(runes) && (unicode.IsLetter(runes[end]) || strings.ContainsRune("°%²/", runes[end])) {
		end++
	}
	switch string(runes[i+1 : end]) {
	case "mm", "cm", "m", "in", "ft", "yd", "min", "h", "s", "g", "kg", "g/m²", "pt", "%", "°C", "°F":
		return true
	}
	return false
}

// mayEndAfter allows a line to end after a hyphen between letters, and after a
// dash or a slash between words that have no spaces round it.
func mayEndAfter(before, r, after rune) bool {
	switch r {
	case '-', '–', '—', '/':
		return unicode.IsLetter(before) && unicode.IsLetter(after)
	}
	return false
}

// end closes the current cluster. An empty one only hands its joint on to the
// cluster before: a hard break outdoes all, a space outdoes what shows nothing.
func (c *clusterer) end(after joint, space part) {
	if len(c.cur.parts) > 0 {
		c.cur.after, c.cur.space = after, space
		c.done = append(c.done, c.cur)
		c.cur = cluster{}
		return
	}
	if len(c.done) == 0 {
		return
	}
	last := &c.done[len(c.done)-1]
	if after == jointHard || after == jointSpace && (last.after == jointSoft || last.after == jointFree) {
		last.after, last.space = after, space
	}
}
