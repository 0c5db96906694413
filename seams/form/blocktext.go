package form

import "strings"

// blockText reads the lines after | (kept as they are) or > (joined like
// words); the first line with anything on it sets their indentation.
func (p *parser) blockText(parent int) *Node {
	node := p.node(p.n, p.pos, scalar)
	folded := p.rest()[0] == '>'
	chomp := byte(0)
	p.pos++
	if rest := p.rest(); rest != "" {
		switch c := rest[0]; {
		case c == '+' || c == '-':
			chomp = c
			p.pos++
		case c >= '0' && c <= '9':
			p.fail(p.n, p.pos, "a figure after | or > is not used here", "indent the first line like the others")
		}
	}
	p.endLine()
	lines, open := p.blockLines(parent)
	last := len(lines)
	for last > 0 && lines[last-1] == "" {
		last--
	}
	var b strings.Builder
	if folded {
		fold(&b, lines[:last])
	} else {
		b.WriteString(strings.Join(lines[:last], "\n"))
	}
	switch {
	case open:
	case chomp == '+' && last == 0:
		b.WriteString(strings.Repeat("\n", len(lines)))
	case chomp == '+':
		b.WriteString(strings.Repeat("\n", 1+len(lines)-last))
	case chomp == 0 && last > 0:
		b.WriteByte('\n')
	}
	node.text = b.String()
	return node
}

// blockLines are the lines of a block text without their indentation, and
// whether the last of them ends with the file and without a line end.
func (p *parser) blockLines(parent int) (lines []string, open bool) {
	indent := -1
	for ; !p.done(); p.n++ {
		line := p.line()
		content := strings.TrimLeft(line, " ")
		spaces := len(line) - len(content)
		if p.n == len(p.src.starts)-1 && content == "" && (indent < 0 || spaces <= indent) {
			continue // what follows the last line end is no line
		}
		if content != "" && indent < 0 {
			if spaces <= parent || spaces == 0 && (p.documentStart() || p.documentEnd()) {
				break
			}
			if content[0] == '\t' {
				p.fail(p.n, spaces, "a tab stands at the start of this line", "indent with spaces")
			}
			for i, before := range lines {
				if len(before) > spaces {
					p.fail(p.n-len(lines)+i, 0, "this blank line has more spaces than the words after it", "delete its spaces")
				}
				lines[i] = ""
			}
			indent = spaces
		}
		switch {
		case content != "" && (spaces < indent || indent == 0 && (p.documentStart() || p.documentEnd())):
			return lines, false
		case indent < 0:
			lines = append(lines, line) // blank so far: its spaces are looked at above
		case spaces < indent:
			lines = append(lines, "")
		default:
			lines = append(lines, line[indent:])
			open = p.n == len(p.src.starts)-1
		}
	}
	if indent < 0 {
		for i := range lines {
			lines[i] = ""
		}
	}
	return lines, open
}

// fold joins lines by spaces; blank lines are line ends, and lines that are
// indented more keep theirs.
func fold(b *strings.Builder, lines []string) {
	blanks, begun, before := 0, false, false
	for _, line := range lines {
		if line == "" {
			blanks++
			continue
		}
		deeper := line[0] == ' ' || line[0] == '\t'
		switch {
		case !begun:
			b.WriteString(strings.Repeat("\n", blanks))
		case deeper || before:
			b.WriteString(strings.Repeat("\n", blanks+1))
		case blanks > 0:
			b.WriteString(strings.Repeat("\n", blanks))
		default:
			b.WriteByte(' ')
		}
		b.WriteString(line)
		blanks, begun, before = 0, true, deeper
	}
}
