package form

import (
	"reflect"
	"slices"
	"strings"
	"unicode/utf8"
)

type kind int

const (
	nothing  kind = iota // a null, or a key with no value
	scalar               // words or a number
	mapping              // keys and values
	sequence             // a list
)

func (k kind) String() string {
	return [...]string{"nothing", "text", "keys and values", "a list"}[k]
}

// Node is a value in a parsed file: text, keys with values, or a list.
type Node struct {
	src    *source
	line   int
	column int
	kind   kind
	flow   bool    // written in braces or brackets
	plain  bool    // a scalar without quotes
	text   string  // scalar: its value
	keys   []*Node // mapping: its keys, each a scalar
	values []*Node // mapping: the values; sequence: the items
}

// source is a file's name and text, with the byte at which each line starts.
type source struct {
	file   string
	text   string
	starts []int
	shapes map[reflect.Type][]field // of the structs read from this file
}

func newSource(file, text string) *source {
	s := &source{file: file, text: text, starts: []int{0}, shapes: map[reflect.Type][]field{}}
	for i := range len(text) {
		if text[i] == '\n' {
			s.starts = append(s.starts, i+1)
		}
	}
	return s
}

// Place is where the node starts.
func (n *Node) Place() Place { return Place{n.src.file, n.line, n.column} }

// Items are the entries of a list, in order; none where n is not a list.
func (n *Node) Items() []*Node {
	if n.kind != sequence {
		return nil
	}
	return n.values
}

// Keys are the keys of a mapping, in order; none where n is not one.
func (n *Node) Keys() []Text {
	keys := make([]Text, len(n.keys))
	for i, k := range n.keys {
		keys[i] = k.asText()
	}
	return keys
}

// FirstKey is the first key of a mapping; "" where n is not one.
func (n *Node) FirstKey() string {
	if len(n.keys) == 0 {
		return ""
	}
	return n.keys[0].text
}

// Only is the mapping with those of its keys that are named, in its own order.
func (n *Node) Only(keys ...string) *Node {
	out := *n
	out.keys, out.values = nil, nil
	for i, k := range n.keys {
		if slices.Contains(keys, k.text) {
			out.keys, out.values = append(out.keys, k), append(out.values, n.values[i])
		}
	}
	return &out
}

// IsList reports whether the node is a list.
func (n *Node) IsList() bool { return n.kind == sequence }

// Text is a scalar with its place; ok is false for anything else.
func (n *Node) Text() (t Text, ok bool) {
	if n.kind != scalar {
		return Text{}, false
	}
	return n.asText(), true
}

// At follows keys (string) and list positions (int, from 0) downwards and
// returns the node there, or the last one on the way where the path ends early.
func (n *Node) At(path ...any) *Node {
	for _, step := range path {
		next := n.child(step)
		if next == nil {
			return n
		}
		n = next
	}
	return n
}

func (n *Node) child(step any) *Node {
	switch step := step.(type) {
	case string:
		for i, k := range n.keys {
			if k.text == step {
				return n.values[i]
			}
		}
	case int:
		if n.kind == sequence && step >= 0 && step < len(n.values) {
			return n.values[step]
		}
	}
	return nil
}

// Fault is a fault at this node, with its source line.
func (n *Node) Fault(message, nearest, mend string) Fault {
	return Fault{
		Place: n.Place(), Length: n.length(), SourceLine: n.src.at(n.line),
		Message: message, Nearest: nearest, Mend: mend,
	}
}

// at is a line without its end; "" where there is no such line.
func (s *source) at(line int) string {
	if line < 1 || line > len(s.starts) {
		return ""
	}
	l, _, _ := strings.Cut(s.text[s.starts[line-1]:], "\n")
	return l
}

// from is the source from a line and column on.
func (s *source) from(line, column int) string {
	if line < 1 || line > len(s.starts) {
		return ""
	}
	rest := s.text[s.starts[line-1]:]
	for range column - 1 {
		_, size := utf8.DecodeRuneInString(rest)
		rest = rest[size:]
	}
	return rest
}

func (n *Node) asText() Text {
	return Text{Value: n.text, At: n.Place(), src: n.src}
}

// length is how many characters of its first line the node takes.
func (n *Node) length() int {
	if n.kind != scalar {
		return 1
	}
	if n.plain {
		first, _, _ := strings.Cut(n.text, "\n")
		return max(1, utf8.RuneCountInString(first))
	}
	end := n.asText().Place(utf8.RuneCountInString(n.text))
	if end.Line != n.line {
		return 1
	}
	return max(1, end.Column-n.column+1)
}
