package form

import "strings"

// flow reads a list in brackets or a mapping in braces, on one line or more.
func (p *parser) flow(parent int) *Node {
	p.enter()
	defer p.leave()
	if p.rest()[0] == '[' {
		return p.flowSequence(parent)
	}
	return p.flowMapping(parent)
}

func (p *parser) flowSequence(parent int) *Node {
	n, pos := p.n, p.pos
	seq := p.node(n, pos, sequence)
	seq.flow = true
	p.pos++
	for {
		if p.flowSpace(n, pos, parent) == ']' {
			p.pos++
			return seq
		}
		seq.values = append(seq.values, p.flowValue(parent))
		switch p.flowSpace(n, pos, parent) {
		case ',':
			p.pos++
		case ']':
		case ':':
			p.fail(p.n, p.pos, "a colon stands inside a list", "write {key: value}, or put the words in quotes")
		default:
			p.fail(p.n, p.pos, "a comma is missing before this", "write a comma, or put the words in quotes")
		}
	}
}

func (p *parser) flowMapping(parent int) *Node {
	n, pos := p.n, p.pos
	m := p.node(n, pos, mapping)
	m.flow = true
	seen := map[string]int{}
	p.pos++
	for {
		if p.flowSpace(n, pos, parent) == '}' {
			p.pos++
			return m
		}
		key, value := p.flowKey(), (*Node)(nil)
		if line := p.n; p.flowSpace(n, pos, parent) == ':' {
			if p.n != line {
				p.fail(p.n, p.pos, "this colon is apart from its key", "write the key and its colon on one line")
			}
			p.pos++
			if next := p.rest(); key.plain && next != "" && next[0] != ' ' && next[0] != '\t' {
				p.fail(p.n, p.pos, "a space is missing after the colon", "write key: value")
			}
			if c := p.flowSpace(n, pos, parent); c != ',' && c != '}' {
				value = p.flowValue(parent)
			}
		}
		p.entry(m, key, value, seen)
		switch p.flowSpace(n, pos, parent) {
		case ',':
			p.pos++
		case '}':
		case ':':
			p.secondColon(p.n, p.pos)
		default:
			p.fail(p.n, p.pos, "a comma is missing before this", "write a comma, or put the words in quotes")
		}
	}
}

// flowSpace passes over blanks, comments and line ends inside brackets and
// returns the character it comes to.
func (p *parser) flowSpace(n, pos, parent int) byte {
	for {
		rest := p.rest()
		content := strings.TrimLeft(rest, " \t")
		commented := content != "" && content[0] == '#' && (p.pos == 0 || len(content) < len(rest))
		if content != "" && !commented {
			p.pos += len(rest) - len(content)
			return content[0]
		}
		p.n, p.pos = p.n+1, 0
		if p.done() {
			p.unclosed(n, pos)
		}
		line := p.line()
		inner := strings.TrimLeft(line, " ")
		if inner == "" || inner[0] == '#' {
			continue
		}
		if inner[0] == '\t' {
			p.fail(p.n, len(line)-len(inner), "a tab stands at the start of this line", "indent with spaces")
		}
		if len(line)-len(inner) <= parent || inner == line && (p.documentStart() || p.documentEnd()) {
			p.unclosed(n, pos)
		}
	}
}

func (p *parser) unclosed(n, pos int) {
	if p.src.line(n)[pos] == '[' {
		p.fail(n, pos, "this list is opened with [ and never closed", "add the missing ], or indent its further lines")
	}
	p.fail(n, pos, "this is opened with { and never closed", "add the missing }, or indent its further lines")
}

// flowKey reads a key in braces, without its colon.
func (p *parser) flowKey() *Node {
	rest := p.rest()
	key := p.node(p.n, p.pos, scalar)
	switch {
	case rest[0] == '\'' || rest[0] == '"':
		if end := closing(rest); end < 0 || end > maxKey {
			p.fail(p.n, p.pos, "this quote is never closed", "add the missing quote at the end of the key")
		}
		key.text = p.quoted(-1)
		return key
	case strings.ContainsRune("[]{},#|>%@`:&*!?", rune(rest[0])),
		indicator(rest, '-'):
		p.fail(p.n, p.pos, "a key is missing or is not a plain word", "write {key: value}")
	}
	text, _, _ := plainPart(rest, true)
	switch {
	case null(text) || len(text) > maxKey:
		p.fail(p.n, p.pos, "a key is missing or is not a plain word", "write {key: value}")
	case text == "<<":
		p.fail(p.n, p.pos, "<< merges another mapping in, which has no meaning here", "write the keys out")
	}
	key.text, key.plain = text, true
	p.pos += len(text)
	return key
}

// flowValue reads a value inside brackets or braces.
func (p *parser) flowValue(parent int) *Node {
	rest := p.rest()
	switch first := rest[0]; {
	case first == '[' || first == '{':
		return p.flow(parent)
	case first == '\'' || first == '"':
		n := p.node(p.n, p.pos, scalar)
		n.text = p.quoted(parent)
		return n
	case strings.ContainsRune("!&*", rune(first)):
		message, mend := mark(first)
		p.fail(p.n, p.pos, message, mend)
	case first == ',':
		p.fail(p.n, p.pos, "a value is missing before this comma", "write the value, or delete the comma")
	case first == ']' || first == '}':
		p.fail(p.n, p.pos, "this bracket closes what was not opened", "look for the bracket that it should match")
	case strings.ContainsRune("|>%@`#:?", rune(first)),
		first == '-' && (len(rest) == 1 || strings.ContainsRune(" \t,[]{}", rune(rest[1]))):
		p.fail(p.n, p.pos, "words may not start with this sign", "put the words in quotes")
	}
	n := p.node(p.n, p.pos, scalar)
	n.plain = true
	text, end, _ := plainPart(rest, true)
	p.pos += len(text)
	if end == len(rest) {
		text += p.plainLines(parent, true)
	}
	return asScalar(n, text)
}
