package form

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// plain reads words without quotes, on one line or several.
func (p *parser) plain(parent int) *Node {
	n := p.node(p.n, p.pos, scalar)
	n.plain = true
	text, end, colon := plainPart(p.rest(), false)
	if colon >= 0 {
		p.secondColon(p.n, p.pos+colon)
	}
	if p.pos+end == len(p.line()) {
		text += p.plainLines(parent, false)
	}
	p.n, p.pos = p.n+1, 0
	return asScalar(n, text)
}

// asScalar gives a plain scalar its text; a null stays nothing.
func asScalar(n *Node, text string) *Node {
	if null(text) {
		n.kind = nothing
		return n
	}
	n.text = text
	return n
}

// plainLines reads the further lines of plain words: joined by a space, or by
// a line end for each blank line between them. It stands after the last of
// them, or stays where it was.
func (p *parser) plainLines(parent int, inFlow bool) string {
	var b strings.Builder
	for {
		blanks, n := 0, p.n+1
		for n < len(p.src.starts) && strings.TrimLeft(p.src.line(n), " ") == "" {
			n, blanks = n+1, blanks+1
		}
		if n >= len(p.src.starts) {
			return b.String()
		}
		line := p.src.line(n)
		content := strings.TrimLeft(line, " ")
		indent := len(line) - len(content)
		if indent <= parent || content[0] == '#' || indent == 0 && (strings.HasPrefix(line, "---") || strings.HasPrefix(line, "...")) {
			return b.String()
		}
		if content[0] == '\t' {
			p.fail(n, indent, "a tab stands at the start of this line", "indent with spaces")
		}
		if inFlow && (strings.ContainsRune(",[]{}", rune(content[0])) || indicator(content, ':')) {
			return b.String()
		}
		if indicator(content, '-') && !inFlow {
			p.fail(n, indent, "a list entry may not start here", "put the words above it in quotes, or end them")
		}
		text, end, colon := plainPart(content, inFlow)
		if colon >= 0 && !inFlow {
			p.secondColon(n, indent+colon)
		}
		if blanks == 0 {
			b.WriteByte(' ')
		} else {
			b.WriteString(strings.Repeat("\n", blanks))
		}
		b.WriteString(text)
		p.n, p.pos = n, indent+len(text)
		if end < len(content) {
			return b.String()
		}
	}
}

// plainPart is the plain words at the start of a line's rest: their text, the
// byte where they end, and that of a colon that makes them a key, or -1.
func plainPart(s string, inFlow bool) (text string, end, colon int) {
	for end < len(s) {
		c := s[end]
		switch {
		case c == '#' && end > 0 && (s[end-1] == ' ' || s[end-1] == '\t'):
			return strings.TrimRight(s[:end], " \t"), end, -1
		case c == ':' && (end+1 == len(s) || s[end+1] == ' ' || s[end+1] == '\t' || inFlow && strings.ContainsRune(",[]{}", rune(s[end+1]))):
			return strings.TrimRight(s[:end], " \t"), end, end
		case inFlow && strings.ContainsRune(",[]{}", rune(c)):
			return strings.TrimRight(s[:end], " \t"), end, -1
		}
		end++
	}
	return strings.TrimRight(s, " \t"), end, -1
}

// quoted reads words in single or double quotes, on one line or several, and
// stands after the closing quote.
func (p *parser) quoted(parent int) string {
	n, pos := p.n, p.pos
	quote := p.line()[p.pos]
	p.pos++
	if end := strings.IndexByte(p.rest(), quote); end >= 0 && !strings.ContainsAny(p.rest()[:end], `'\`) && !strings.HasPrefix(p.rest()[end+1:], "'") {
		text := p.rest()[:end]
		p.pos += end + 1
		return text
	}
	var b strings.Builder
	kept := 0 // bytes of b that are not blanks at the end of a line
	for {
		rest := p.rest()
		if rest == "" {
			b2 := strings.TrimRight(b.String()[kept:], " \t")
			whole := b.String()[:kept] + b2
			b.Reset()
			b.WriteString(whole)
			if breaks := p.quotedBreak(n, pos, parent); breaks == 0 {
				b.WriteByte(' ')
			} else {
				b.WriteString(strings.Repeat("\n", breaks))
			}
			kept = b.Len()
			continue
		}
		switch c := rest[0]; {
		case c == '\'' && quote == '\'' && strings.HasPrefix(rest, "''"):
			b.WriteByte('\'')
			p.pos += 2
		case c == quote:
			p.pos++
			return b.String()
		case c == '\\' && quote == '"' && len(rest) == 1:
			p.pos++
			b.WriteString(strings.Repeat("\n", p.quotedBreak(n, pos, parent)))
			kept = b.Len()
		case c == '\\' && quote == '"':
			b.WriteRune(p.escape())
			kept = b.Len()
		default:
			_, size := utf8.DecodeRuneInString(rest)
			b.WriteString(rest[:size])
			p.pos += size
		}
	}
}

// quotedBreak passes over the line ends inside quotes and the blanks at the
// start of the next line, and counts the blank lines between.
func (p *parser) quotedBreak(n, pos, parent int) (blanks int) {
	for p.n, p.pos = p.n+1, 0; ; p.n++ {
		if p.done() {
			p.fail(n, pos, "this quote is never closed", "add the missing quote at the end of the words")
		}
		content := strings.TrimLeft(p.line(), " \t")
		if content == "" {
			blanks++
			continue
		}
		spaces := len(p.line()) - len(strings.TrimLeft(p.line(), " "))
		if spaces <= parent || spaces == 0 && (p.documentStart() || p.documentEnd()) {
			p.fail(n, pos, "this quote is never closed", "add the missing quote at the end of the words, or indent their further lines")
		}
		p.pos = len(p.line()) - len(content)
		return blanks
	}
}

// escape reads a character written with a backslash in double quotes.
func (p *parser) escape() rune {
	rest := p.rest()
	digits := 0
	var r rune
	switch rest[1] {
	case 'n':
		r = '\n'
	case 't', '\t':
		r = '\t'
	case ' ', '"', '\\':
		r = rune(rest[1])
	case '_':
		r = '\u00a0'
	case 'x':
		digits = 2
	case 'u':
		digits = 4
	case 'U':
		digits = 8
	default:
		p.fail(p.n, p.pos, "a backslash and this sign mean nothing in double quotes", `write \\ for a backslash, or use single quotes`)
	}
	if len(rest) < 2+digits {
		digits = len(rest) - 2
	}
	for _, c := range rest[2 : 2+digits] {
		value := strings.IndexRune("0123456789abcdef", unicode.ToLower(c))
		if value < 0 {
			r = utf8.MaxRune + 1
			break
		}
		r = min(r*16+rune(value), utf8.MaxRune+1)
	}
	if digits > 0 && (digits%2 != 0 || !utf8.ValidRune(r) || invisible(r)) || r == 0 {
		p.fail(p.n, p.pos, "this number stands for no character that can be printed", "write the character itself")
	}
	p.pos += 2 + digits
	return r
}
