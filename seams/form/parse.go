package form

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

const (
	maxBytes = 1 << 20 // of a file
	maxDepth = 100     // of lists and mappings inside one another
)

// Parse reads a file's text into nodes. file is the name used in faults. The
// error is [Faults]: a file that is too big, not UTF-8, empty, more than one
// document or not YAML, and every tag, anchor, alias, merge or duplicate key.
func Parse(file string, data []byte) (*Node, error) {
	text, faults := clean(file, data)
	if faults != nil {
		return nil, faults
	}
	src := newSource(file, text)
	tree, faults := parse(src)
	if faults != nil {
		return nil, faults
	}
	c := converter{src: src}
	root := c.document(tree)
	if err := c.faults.Err(); err != nil {
		return nil, err
	}
	return root, nil
}

// clean refuses what is not readable text and evens out line ends.
func clean(file string, data []byte) (string, Faults) {
	fail := func(at Place, message, mend string) (string, Faults) {
		return "", Faults{FaultAt(at, message, "", mend)}
	}
	if len(data) > maxBytes {
		return fail(Place{File: file}, "the file is over 1 MiB", "split it into several files")
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	line, column := 1, 1
	for rest := data; len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		at := Place{file, line, column}
		switch {
		case r == utf8.RuneError && size <= 1:
			return fail(at, "a byte here is not UTF-8 text", "save the file as UTF-8")
		case r == '\n':
			line, column = line+1, 0
		case r == '\r' && !bytes.HasPrefix(rest, []byte("\r\n")):
			return fail(at, "a carriage return stands alone here", "save the file with ordinary line ends")
		case r < ' ' && r != '\t' && r != '\r', r == 0x7f, r == 0x85, r == '\u2028', r == '\u2029', r == '\uFEFF':
			return fail(at, fmt.Sprintf("an invisible control character (U+%04X) stands here", r), "delete it")
		}
		column++
		rest = rest[size:]
	}
	return strings.ReplaceAll(string(data), "\r\n", "\n"), nil
}

// nesting looks for depth before the parser does, because a parser that calls
// itself once a level cannot be stopped when the stack is full.
func nesting(src *source, tokens token.Tokens) Faults {
	brackets, marks, line := 0, 0, 0
	for _, tk := range tokens {
		if tk.Position.Line != line {
			line, marks = tk.Position.Line, 0
		}
		switch tk.Type {
		case token.MappingStartType, token.SequenceStartType:
			brackets++
		case token.MappingEndType, token.SequenceEndType:
			brackets = max(0, brackets-1)
		case token.SequenceEntryType, token.MappingKeyType, token.TagType, token.AnchorType:
			marks++
		}
		if brackets > maxDepth || marks > maxDepth {
			n := Node{src: src, line: line, column: max(1, tk.Position.Column)}
			return Faults{n.Fault("the file is nested too deeply", "", "close the brackets opened before this place, or take the entry apart")}
		}
	}
	return nil
}

// parse calls the YAML parser and turns its errors, and its own panics on
// input it did not foresee, into faults.
func parse(src *source) (tree *ast.File, faults Faults) {
	defer func() {
		if p := recover(); p != nil {
			tree, faults = nil, Faults{{Place: Place{src.file, 1, 1}, Message: "the file cannot be read as YAML",
				Mend: "look for a stray bracket, quote or sign"}}
		}
	}()
	tokens := lexer.Tokenize(src.text)
	if faults := nesting(src, tokens); faults != nil {
		return nil, faults
	}
	tree, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err == nil {
		return tree, nil
	}
	f := Fault{Place: Place{File: src.file, Line: 1, Column: 1}, Message: err.Error()}
	if e, ok := err.(yaml.Error); ok {
		f.Message = e.GetMessage()
		if tk := e.GetToken(); tk != nil && tk.Position != nil {
			f.Line, f.Column = tk.Position.Line, max(1, tk.Position.Column)
		}
	}
	f.Message, f.Mend = plainWords(f.Message)
	f.SourceLine = src.at(f.Line)
	return nil, Faults{f}
}

// plainWords says the parser's commonest complaints as a dressmaker would.
func plainWords(message string) (said, mend string) {
	switch {
	case strings.Contains(message, "cannot start any token") && strings.Contains(message, "\t"):
		return "a tab stands at the start of this line", "indent with spaces"
	case strings.Contains(message, "mapping value is not allowed"), strings.Contains(message, "invalid key for this map"):
		return "a second colon on this line starts another value", "put the words after the first colon in quotes"
	case strings.Contains(message, "sequence end token"):
		return "this list is opened with [ and never closed", "add the missing ]"
	case strings.Contains(message, "flow mapping end token"), strings.Contains(message, "flow map content"):
		return "this { is never closed, or a comma is missing inside it", "add the missing } or comma"
	case strings.Contains(message, "end character of double-quoted"), strings.Contains(message, "end character of single-quoted"):
		return "this quote is never closed", "add the missing quote at the end of the words"
	case strings.Contains(message, "block sequence entries are not allowed"):
		return "a list entry may not start here", "put the - on a line of its own, indented"
	case strings.Contains(message, "reserved character"):
		return "words may not start with this sign", "put the words in quotes"
	}
	return "this is not YAML: " + message, ""
}
