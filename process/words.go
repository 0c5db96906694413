package process

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"bodkin/seams/length"
)

// listWords writes words as a person would: a, b and c.
func listWords(words []string, last string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + last + " " + words[len(words)-1]
}

// lowerFirst writes a title within a sentence. Names of places and people, and
// words in capitals, keep theirs.
func lowerFirst(s string) string {
	first, _, _ := strings.Cut(s, " ")
	if slices.Contains([]string{"French", "Hong", "Peter"}, first) {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	if r2, _ := utf8.DecodeRuneInString(s[n:]); unicode.IsUpper(r2) {
		return s
	}
	return string(unicode.ToLower(r)) + s[n:]
}

func upperFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// filler puts measured widths and names into a construction's words.
type filler struct {
	style length.Style
	names map[string]string
	sizes map[string]float64
}

// fill replaces {name} by the name's words or the size's length; an unknown one
// is returned as missing.
func (f filler) fill(text string) (out, missing string) {
	var b strings.Builder
	for {
		open := strings.IndexByte(text, '{')
		if open < 0 {
			b.WriteString(text)
			return b.String(), missing
		}
		end := strings.IndexByte(text[open:], '}')
		if end < 0 {
			b.WriteString(text)
			return b.String(), missing
		}
		b.WriteString(text[:open])
		key := text[open+1 : open+end]
		if w, ok := f.names[key]; ok {
			b.WriteString(w)
		} else if mm, ok := f.sizes[key]; ok {
			b.WriteString(length.Format(length.MM(mm), f.style))
		} else {
			missing = key
		}
		text = text[open+end+1:]
	}
}
