package form

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

const (
	maxBytes = 1 << 20 // of a file
	maxDepth = 100     // of lists and mappings inside one another
)

// Parse reads a file's text into nodes. file is the name used in faults.
//
// It reads the part of YAML 1.2 that our forms are written in, by itself: a
// general reader takes several times as long over the shelf (see
// BenchmarkParseShelf), stops at one fault, and lets pass what must be refused.
// What ours takes, it takes as a general reader does: see TestShelfAgainstOracle.
// It does not take tags, anchors, aliases, merge keys, directives, keys that
// are not plain words, explicit indentation of block text, or a second
// document. The error is [Faults].
func Parse(file string, data []byte) (*Node, error) {
	text, err := clean(file, data)
	if err != nil {
		return nil, err
	}
	p := &parser{src: newSource(file, text)}
	p.counted.column = 1
	root := p.document()
	if err := p.faults.Err(); err != nil {
		return nil, err
	}
	return root, nil
}

// clean refuses what is not readable text and evens out line ends.
func clean(file string, data []byte) (string, error) {
	if len(data) > maxBytes {
		return "", Faults{FaultAt(Place{file, 1, 1}, "the file is over 1 MiB", "", "split it into several files")}
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	line, column := 1, 1
	for rest := data; len(rest) > 0; column++ {
		r, size := rune(rest[0]), 1
		if r >= utf8.RuneSelf {
			r, size = utf8.DecodeRune(rest)
		}
		message, mend := "", ""
		switch {
		case r == utf8.RuneError && size <= 1:
			message, mend = "a byte here is not UTF-8 text", "save the file as UTF-8"
		case r == '\n':
			line, column = line+1, 0
		case r == '\r' && (len(rest) < 2 || rest[1] != '\n'):
			message, mend = "a carriage return stands alone here", "save the file with ordinary line ends"
		case invisible(r) && r != '\r':
			message, mend = fmt.Sprintf("an invisible control character (U+%04X) stands here", r), "delete it"
		}
		if message != "" {
			return "", Faults{FaultAt(Place{file, line, column}, message, "", mend)}
		}
		rest = rest[size:]
	}
	return strings.ReplaceAll(string(data), "\r\n", "\n"), nil
}

// invisible characters have no place in our files: they hide, or move what is
// printed beside them.
func invisible(r rune) bool {
	return r < ' ' && r != '\t' && r != '\n' || r >= 0x7f && r < 0xa0 || r == '\u2028' || r == '\u2029' || r == '\uFEFF'
}

// parser reads a file line by line. What cannot be read on from stops it by
// the panic of a stop, which never leaves document.
type parser struct {
	src    *source
	n, pos int // current line, from 0, and byte in it
	depth  int
	faults Faults
	// counted is the last place whose column was counted, so that a long line
	// is not counted from its start for everything on it.
	counted struct{ n, pos, column int }
}

type stop struct{}

func (p *parser) document() (root *Node) {
	defer func() {
		if r := recover(); r != nil {
			if _, ours := r.(stop); !ours {
				panic(r)
			}
		}
	}()
	if p.skipBlank() && strings.HasPrefix(p.rest(), "%") {
		p.fault(p.n, 0, "a line that starts with % is a YAML directive, which has no meaning here", "delete the line")
		p.n++
	}
	if p.skipBlank() && p.documentStart() {
		p.pos = 3
		p.endLine()
	}
	if !p.skipBlank() || p.documentStart() || p.documentEnd() {
		p.fail(0, 0, "the file holds nothing", "write at least one entry")
	}
	if strings.ContainsRune("|>", rune(p.rest()[0])) {
		p.fail(p.n, p.pos, "a file does not start with a block of text", "write keys with values, or a list")
	}
	root = p.at(-1)
	if p.skipBlank() && p.documentEnd() {
		p.pos = 3
		p.endLine()
		if p.skipBlank() && !p.documentStart() {
			p.fail(p.n, 0, "something stands after the end of the document", "delete the line of three points")
		}
	}
	if p.skipBlank() {
		if p.documentStart() {
			p.fail(p.n, 0, "a second document starts here", "keep one document in a file")
		}
		p.fail(p.n, p.pos, "this line does not belong to what stands above it", "indent it like the entry it belongs to")
	}
	return root
}

func (p *parser) line() string { return p.src.line(p.n) }
func (p *parser) rest() string { return p.line()[p.pos:] }
func (p *parser) done() bool   { return p.n >= len(p.src.starts) }

func (p *parser) documentStart() bool { return p.mark("---") }
func (p *parser) documentEnd() bool   { return p.mark("...") }

func (p *parser) mark(m string) bool {
	rest, ok := strings.CutPrefix(p.line(), m)
	return ok && (rest == "" || rest[0] == ' ' || rest[0] == '\t')
}

// node is a new node at a line and byte, both from 0.
func (p *parser) node(n, pos int, k kind) *Node {
	c := &p.counted
	if c.n != n || c.pos > pos {
		c.n, c.pos, c.column = n, 0, 1
	}
	c.column += utf8.RuneCountInString(p.src.line(n)[c.pos:pos])
	c.pos = pos
	return &Node{src: p.src, line: n + 1, column: c.column, kind: k}
}

func (p *parser) fault(n, pos int, message, mend string) {
	p.faults.add(p.node(n, pos, nothing).Fault(message, "", mend))
}

// fail adds a fault and gives up.
func (p *parser) fail(n, pos int, message, mend string) {
	p.fault(n, pos, message, mend)
	panic(stop{})
}

func (p *parser) enter() {
	if p.depth++; p.depth > maxDepth {
		p.fail(p.n, p.pos, "the file is nested too deeply", "close the brackets opened before this place, or take the entry apart")
	}
}

func (p *parser) leave() { p.depth-- }

// skipBlank goes to the next line that is neither blank nor a comment and
// stands at its first character; false at the end of the file. It expects to
// stand at the start of a line.
func (p *parser) skipBlank() bool {
	for ; !p.done(); p.n++ {
		line := p.line()
		content := strings.TrimLeft(line, " ")
		p.pos = len(line) - len(content)
		switch {
		case content == "" || content[0] == '#':
		case content[0] == '\t':
			p.fail(p.n, p.pos, "a tab stands at the start of this line", "indent with spaces")
		default:
			return true
		}
	}
	p.pos = 0
	return false
}

// blank reports whether nothing but a comment is left of a line.
func blank(rest string) bool {
	content := strings.TrimLeft(rest, " \t")
	return content == "" || content[0] == '#' && len(content) < len(rest)
}

// endLine passes over what may stand after a finished value.
func (p *parser) endLine() {
	if rest := p.rest(); !blank(rest) {
		skip := len(rest) - len(strings.TrimLeft(rest, " \t"))
		if strings.HasPrefix(rest[skip:], ":") {
			p.secondColon(p.n, p.pos+skip)
		}
		p.fail(p.n, p.pos+skip, "the value has ended, and something stands after it", "delete it, or put the whole value in quotes")
	}
	p.n, p.pos = p.n+1, 0
}

func (p *parser) secondColon(n, pos int) {
	p.fail(n, pos, "a second colon on this line starts another value", "put the words after the first colon in quotes")
}
