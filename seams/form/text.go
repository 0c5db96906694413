package form

import (
	"strings"
	"unicode/utf8"
)

// Text is a scalar as written, with its place: words, a condition, a formula,
// a plain number. The zero Text is a key that was left out.
type Text struct {
	Value string
	At    Place
	src   *source // nil where the text was made in code
}

// IsZero reports whether the key was left out.
func (t Text) IsZero() bool { return t.Value == "" && t.At == Place{} }

// Equal compares value and place.
func (t Text) Equal(o Text) bool { return t.Value == o.Value && t.At == o.At }

func (t Text) String() string { return t.Value }

// Pair is a key of a mapping and its value.
type Pair[T any] struct {
	Key   Text
	Value T
}

// Pairs is a mapping in the order of the file.
type Pairs[T any] []Pair[T]

// Get is the value under a key, and whether the key is there.
func (ps Pairs[T]) Get(key string) (value T, ok bool) {
	for _, p := range ps {
		if p.Key.Value == key {
			return p.Value, true
		}
	}
	return value, false
}

// Keys are the keys in the order of the file.
func (ps Pairs[T]) Keys() []string {
	keys := make([]string, len(ps))
	for i, p := range ps {
		keys[i] = p.Key.Value
	}
	return keys
}

// Place is where the n-th character of the value stands in the file, counted
// from 0, seeing through quotes, escapes and folded lines. Where that cannot
// be told it is the place of the whole text.
func (t Text) Place(n int) Place {
	if t.src == nil {
		return t.At
	}
	w := walker{rest: t.src.from(t.At.Line, t.At.Column), line: t.At.Line, column: t.At.Column}
	if w.rest == "" {
		return t.At
	}
	switch first := w.rest[0]; first {
	case '\'', '"':
		w.quote = first
		w.skip(1)
	case '|', '>':
		w.block = first
		for w.rest != "" && w.column > 1 || w.line == t.At.Line && w.rest != "" {
			w.skip(1)
		}
		w.indent = indentation(w.rest)
	}
	var last rune
	for i, want := range []rune(t.Value) {
		if i == n {
			break
		}
		if !w.match(want, last) {
			return t.At
		}
		last = want
	}
	if w.block != 0 && w.column == 1 {
		w.skip(min(w.indent, leading(w.rest)))
	}
	return Place{File: t.At.File, Line: w.line, Column: w.column}
}

// Fault is a fault inside the text, length characters from the n-th on.
func (t Text) Fault(n, length int, message, nearest, mend string) Fault {
	f := FaultAt(t.Place(n), message, nearest, mend)
	f.Length = length
	if t.src != nil {
		f.SourceLine = t.src.at(f.Line)
	}
	return f
}

// walker steps through the source of a scalar beside its value.
type walker struct {
	rest         string
	line, column int
	quote, block byte
	indent       int
}

// skip passes over n characters of the source.
func (w *walker) skip(n int) {
	for range n {
		r, size := utf8.DecodeRuneInString(w.rest)
		if size == 0 {
			return
		}
		w.rest = w.rest[size:]
		w.column++
		if r == '\n' {
			w.line, w.column = w.line+1, 1
		}
	}
}

// match passes over the source of one character of the value.
func (w *walker) match(want, last rune) bool {
	if w.block != 0 && w.column == 1 {
		w.skip(min(w.indent, leading(w.rest)))
	}
	blank := leading(w.rest)
	atBreak := strings.HasPrefix(w.rest[blank:], "\n") && (w.block == 0 || blank == 0)
	switch {
	case (want == ' ' || want == '\n') && atBreak:
		breaks := 1
		if want == '\n' && last != '\n' && w.block != '|' {
			breaks = 2
		}
		for range breaks {
			if b := leading(w.rest); strings.HasPrefix(w.rest[b:], "\n") {
				w.skip(b + 1)
			}
		}
		if w.block == 0 {
			w.skip(leading(w.rest))
		}
		return true
	case w.quote == '\'' && want == '\'' && strings.HasPrefix(w.rest, "''"):
		w.skip(2)
		return true
	case w.quote == '"' && strings.HasPrefix(w.rest, `\`):
		for strings.HasPrefix(w.rest, "\\\n") {
			w.skip(2)
			w.skip(leading(w.rest))
		}
		if !strings.HasPrefix(w.rest, `\`) {
			return w.match(want, last)
		}
		w.skip(escapeLength(w.rest))
		return true
	}
	if r, _ := utf8.DecodeRuneInString(w.rest); r != want || w.rest == "" {
		return false
	}
	w.skip(1)
	return true
}

func escapeLength(s string) int {
	if len(s) > 1 {
		switch s[1] {
		case 'x':
			return 4
		case 'u':
			return 6
		case 'U':
			return 10
		}
	}
	return 2
}

// leading counts the blanks before anything else on the line.
func leading(s string) int { return len(s) - len(strings.TrimLeft(s, " \t")) }

// indentation of a block scalar is that of its first line that is not blank.
func indentation(s string) int {
	for line := range strings.Lines(s) {
		if strings.TrimSpace(line) != "" {
			return len(line) - len(strings.TrimLeft(line, " "))
		}
	}
	return 0
}
