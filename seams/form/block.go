package form

import (
	"strconv"
	"strings"
)

// at reads the value that starts here: a list, a mapping, or a scalar whose
// further lines are indented more than parent.
func (p *parser) at(parent int) *Node {
	p.enter()
	defer p.leave()
	rest := p.rest()
	switch {
	case indicator(rest, '-'):
		return p.sequence(p.pos)
	case indicator(rest, '?'):
		p.fail(p.n, p.pos, "a key is missing or is not a plain word", "write key: value")
	case p.isKey():
		return p.mapping(p.pos)
	}
	return p.value(parent)
}

// below reads the value on the following lines, where they are indented more
// than parent; nil where they are not.
func (p *parser) below(parent int) *Node {
	if !p.skipBlank() || p.pos <= parent || p.pos == 0 && (p.documentStart() || p.documentEnd()) {
		return nil
	}
	return p.at(parent)
}

// indicator reports whether a mark such as - stands alone at the start.
func indicator(rest string, mark byte) bool {
	return rest != "" && rest[0] == mark && (len(rest) == 1 || rest[1] == ' ' || rest[1] == '\t')
}

func (p *parser) sequence(indent int) *Node {
	seq := p.node(p.n, p.pos, sequence)
	for {
		n, pos := p.n, p.pos
		p.pos++
		p.skipSpaces()
		var item *Node
		if p.nothingHere() {
			p.n, p.pos = p.n+1, 0
			if item = p.below(indent); item == nil {
				item = p.node(n, pos, nothing)
			}
		} else {
			item = p.at(indent)
		}
		seq.values = append(seq.values, item)
		if !p.next(indent) || !indicator(p.rest(), '-') {
			return seq
		}
	}
}

// skipSpaces passes over spaces after an indicator; a tab there would make the
// indentation of what follows anybody's guess.
func (p *parser) skipSpaces() {
	rest := p.rest()
	content := strings.TrimLeft(rest, " ")
	p.pos += len(rest) - len(content)
	if strings.HasPrefix(content, "\t") {
		p.fail(p.n, p.pos, "a tab stands here", "write spaces")
	}
}

// nothingHere reports whether the line holds no value after an indicator and
// its spaces.
func (p *parser) nothingHere() bool {
	content := strings.TrimLeft(p.rest(), " \t")
	return content == "" || content[0] == '#'
}

// next goes to the next line with content and reports whether it goes on at
// the same indentation.
func (p *parser) next(indent int) bool {
	if !p.skipBlank() || p.pos < indent || p.pos == 0 && (p.documentStart() || p.documentEnd()) {
		return false
	}
	if p.pos > indent {
		p.fail(p.n, p.pos, "this line is indented deeper than the ones it belongs to", "line it up with them, or put the words above it in quotes")
	}
	return true
}

func (p *parser) mapping(indent int) *Node {
	m := p.node(p.n, p.pos, mapping)
	seen := map[string]int{}
	for {
		key := p.key()
		p.skipSpaces()
		var value *Node
		if p.nothingHere() {
			p.n, p.pos = p.n+1, 0
			value = p.belowKey(indent)
		} else {
			value = p.value(indent)
		}
		p.entry(m, key, value, seen)
		if !p.next(indent) || indicator(p.rest(), '-') {
			return m
		}
		if !p.isKey() {
			p.fail(p.n, p.pos, "a key is missing or is not a plain word", "write key: value")
		}
	}
}

// belowKey reads the value of a key on the following lines. A list may stand
// at the indentation of its key.
func (p *parser) belowKey(indent int) *Node {
	if p.skipBlank() && p.pos == indent && indicator(p.rest(), '-') {
		p.enter()
		defer p.leave()
		return p.sequence(indent)
	}
	return p.below(indent)
}

// entry adds a key and its value, nil for none; seen has the lines of the keys.
func (p *parser) entry(m, key, value *Node, seen map[string]int) {
	if first, twice := seen[key.text]; twice {
		p.faults.add(key.Fault("the key "+strconv.Quote(key.text)+" stands here twice", "",
			"keep one of the two; the first is on line "+strconv.Itoa(first)))
		return
	}
	seen[key.text] = key.line
	if value == nil {
		value = &Node{src: p.src, line: key.line, column: key.column}
	} else if value.kind == nothing {
		value.line, value.column = key.line, key.column
	}
	m.keys, m.values = append(m.keys, key), append(m.values, value)
}

// isKey reports whether a key and its colon stand here.
func (p *parser) isKey() bool {
	rest := p.rest()
	if rest[0] == '\'' || rest[0] == '"' {
		end := closing(rest)
		if end < 0 || end > maxKey {
			return false
		}
		return indicator(strings.TrimLeft(rest[end:], " \t"), ':')
	}
	if strings.ContainsRune("[]{},#&*!|>%@`", rune(rest[0])) || indicator(rest, '?') || indicator(rest, '-') || indicator(rest, ':') {
		return false
	}
	_, _, colon := plainPart(rest, false)
	return colon >= 0 && colon <= maxKey
}

// maxKey is how many bytes a key may take, as in YAML.
const maxKey = 1024

// closing is the byte after the quote that closes the one at the start, on the
// same line; -1 where there is none.
func closing(s string) int {
	for i := 1; i < len(s); i++ {
		switch {
		case s[0] == '"' && s[i] == '\\':
			i++
		case s[i] == s[0] && s[0] == '\'' && i+1 < len(s) && s[i+1] == '\'':
			i++
		case s[i] == s[0]:
			return i + 1
		}
	}
	return -1
}

// key reads a key and its colon.
func (p *parser) key() *Node {
	key := p.node(p.n, p.pos, scalar)
	n, pos := p.n, p.pos
	if rest := p.rest(); rest[0] == '\'' || rest[0] == '"' {
		key.text = p.quoted(-1)
		p.pos += strings.Index(p.rest(), ":") + 1
		return key
	}
	text, _, colon := plainPart(p.rest(), false)
	key.text, key.plain = text, true
	p.pos += colon + 1
	switch {
	case text == "" || null(text):
		p.fail(n, pos, "a key is missing or is not a plain word", "write key: value")
	case text == "<<":
		p.fail(n, pos, "<< merges another mapping in, which has no meaning here", "write the keys out")
	}
	return key
}

func null(text string) bool {
	return text == "~" || text == "null" || text == "Null" || text == "NULL"
}

// value reads a scalar or a value in brackets; its further lines are indented
// more than parent.
func (p *parser) value(parent int) *Node {
	rest := p.rest()
	switch first := rest[0]; {
	case first == '|' || first == '>':
		return p.blockText(parent)
	case first == '\'' || first == '"':
		n := p.node(p.n, p.pos, scalar)
		n.text = p.quoted(parent)
		p.endLine()
		return n
	case first == '[' || first == '{':
		n := p.flow(parent)
		p.endLine()
		return n
	case strings.ContainsRune("!&*", rune(first)):
		n := p.node(p.n, p.pos, nothing)
		message, mend := mark(first)
		p.fault(p.n, p.pos, message, mend)
		for p.n, p.pos = p.n+1, 0; p.skipBlank() && p.pos > parent; p.n, p.pos = p.n+1, 0 {
		}
		return n
	case indicator(rest, '-'):
		p.fail(p.n, p.pos, "a list entry may not start here", "put the - on a line of its own, indented")
	case strings.ContainsRune("%@`,]}", rune(first)):
		p.fail(p.n, p.pos, "words may not start with this sign", "put the words in quotes")
	case indicator(rest, '?') || indicator(rest, ':'):
		p.fail(p.n, p.pos, "a key is missing or is not a plain word", "write key: value")
	}
	return p.plain(parent)
}

// mark says what a sign at the start of a value means in YAML.
func mark(first byte) (message, mend string) {
	switch first {
	case '!':
		return "an exclamation mark at the start of a value is a YAML tag, which has no meaning here", "put the whole value in quotes"
	case '&':
		return "an ampersand at the start of a value is a YAML anchor, which has no meaning here",
			"put the whole value in quotes, or write it out where it is needed"
	}
	return "an asterisk at the start of a value is a YAML alias, which has no meaning here", "put the whole value in quotes, or write it out"
}
