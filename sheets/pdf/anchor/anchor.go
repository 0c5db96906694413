// Package anchor makes the ids of headings, for links within a sheet. In goes
// a heading's text; out comes an id that keeps letters of every script in
// lower case. The one idea is that every form of a sheet asks here, so that
// one link works in all of them. Start at IDs, which fits goldmark's
// parser.WithIDs, or at Of for a single heading.
package anchor

import (
	"strconv"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"
	"golang.org/x/text/unicode/norm"
)

// Of is the id for a heading with this text when no other heading has it:
// letters, marks and digits in lower case, spaces as hyphens, hyphens and
// underscores kept, all else dropped; "section" when nothing is left. Text is
// brought to NFC first.
func Of(text string) string {
	var b strings.Builder
	for _, r := range norm.NFC.String(strings.TrimSpace(text)) {
		switch {
		case unicode.IsLetter(r), unicode.IsDigit(r), unicode.IsMark(r), r == '-', r == '_':
			b.WriteRune(unicode.ToLower(r))
		case unicode.IsSpace(r):
			b.WriteByte('-')
		}
	}
	if b.Len() == 0 {
		return "section"
	}
	return b.String()
}

// IDs hands out ids that differ within one document: the second heading of one
// text gets "-2" at its end, the third "-3". Create it with New, one a document.
type IDs struct{ used map[string]bool }

// New is an empty set of ids.
func New() *IDs { return &IDs{used: map[string]bool{}} }

// Generate is the next free id for the text; it makes IDs a parser.IDs.
func (s *IDs) Generate(text []byte, _ ast.NodeKind) []byte {
	base := Of(string(text))
	id := base
	for n := 2; s.used[id]; n++ {
		id = base + "-" + strconv.Itoa(n)
	}
	s.used[id] = true
	return []byte(id)
}

// Put marks an id as taken.
func (s *IDs) Put(id []byte) { s.used[string(id)] = true }
