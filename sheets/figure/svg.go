package figure

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
)

// SVG is the figure as a complete SVG 1.1 element, one viewBox unit a
// millimetre, with the title as its text alternative. The same figure gives
// the same bytes, for any text well-formed XML: characters XML does not know
// become U+FFFD. Numbers have at most three decimals; one that is not finite,
// which Check would report, is written as 0.
func (f Figure) SVG() []byte {
	s := &svg{}
	w, h := number(f.Width), number(f.Height)
	s.printf(`<svg xmlns="http://www.w3.org/2000/svg" role="img" width="%smm" height="%smm" viewBox="0 0 %s %s" font-family="sans-serif" fill="none" stroke="none">`, w, h, w, h)
	s.out.WriteString("\n<title>")
	s.escape(f.Title)
	s.out.WriteString("</title>\n")
	Paint(f, s)
	s.out.WriteString("</svg>\n")
	return s.out.Bytes()
}

type svg struct{ out bytes.Buffer }

func (s *svg) printf(format string, args ...any) { fmt.Fprintf(&s.out, format, args...) }

func (s *svg) escape(words string) {
	// EscapeText fails only when its writer does, and a buffer does not.
	_ = xml.EscapeText(&s.out, []byte(words))
}

func (s *svg) Path(p Path) {
	s.printf(`<path d="M%s`, pair(p.Start))
	for _, seg := range p.Segments {
		switch seg.Step {
		case LineTo:
			s.printf("L%s", pair(seg.To))
		case CubicTo:
			s.printf("C%s %s %s", pair(seg.C1), pair(seg.C2), pair(seg.To))
		case MoveTo:
			if p.Closed {
				s.printf("Z")
			}
			s.printf("M%s", pair(seg.To))
		}
	}
	if p.Closed {
		s.printf("Z")
	}
	s.printf(`"`)
	s.fill(p.Fill)
	s.stroke(p.Stroke)
	s.printf("/>\n")
}

func (s *svg) Circle(c Circle) {
	s.printf(`<circle cx="%s" cy="%s" r="%s"`, number(c.Centre.X), number(c.Centre.Y), number(max(c.Radius, 0)))
	s.fill(c.Fill)
	s.stroke(c.Stroke)
	s.printf("/>\n")
}

func (s *svg) Text(t Text) {
	s.printf(`<text x="%s" y="%s" font-size="%s" fill="#000"`, number(t.At.X), number(t.At.Y), number(max(t.Size, 0)))
	switch t.Anchor {
	case Middle:
		s.printf(` text-anchor="middle"`)
	case End:
		s.printf(` text-anchor="end"`)
	}
	if t.Bold {
		s.printf(` font-weight="bold"`)
	}
	if t.Turn != 0 {
		s.printf(` transform="rotate(%s %s)"`, number(-t.Turn), pair(t.At))
	}
	s.printf(">")
	s.escape(t.Words)
	s.printf("</text>\n")
}

func (s *svg) fill(f Fill) {
	level, ok := f.Grey()
	if !ok {
		return
	}
	s.printf(` fill="%s" fill-rule="evenodd"`, colour(f.Thread, level))
}

func (s *svg) stroke(st Stroke) {
	if st.Width <= 0 {
		return
	}
	s.printf(` stroke="%s" stroke-width="%s" stroke-linejoin="round"`, colour(st.Thread, st.Grey()), number(st.Width))
	if st.Round {
		s.printf(` stroke-linecap="round"`)
	}
	for i, d := range st.Dash {
		if i == 0 {
			s.printf(` stroke-dasharray="`)
		} else {
			s.printf(" ")
		}
		s.printf("%s", number(max(d, 0)))
	}
	if len(st.Dash) > 0 {
		s.printf(`"`)
	}
}

func colour(thread *RGB, level uint8) string {
	c := RGB{level, level, level}
	if thread != nil {
		c = *thread
	}
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}

func pair(p Point) string { return number(p.X) + " " + number(p.Y) }

func number(v float64) string {
	if !finite(v) {
		v = 0
	}
	v = math.Round(v*1000) / 1000
	if v == 0 || !finite(v) {
		return "0"
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
