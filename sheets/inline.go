package sheets

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// inline is Markdown that may stand in a line: every character that would mean
// something to Markdown has been escaped, or was put there on purpose. It has
// single spaces and no line breaks.
type inline string

// plain is the text as it reads, with nothing in it that Markdown could act on.
// White space becomes single spaces; characters that cannot be seen are dropped.
// What is harmful at the start of a line only is left to the line breaking.
func plain(text string) inline {
	var b strings.Builder
	b.Grow(len(text) + 8)
	space := false
	text = strings.ToValidUTF8(text, "\uFFFD")
	for i, r := range text {
		switch {
		case r == ' ' || r == '\t' || r == '\n' || r == '\r' || r == '\v' || r == '\f',
			r == '\u0085' || r == '\u2028' || r == '\u2029':
			space = b.Len() > 0
			continue
		case unicode.IsControl(r):
			continue
		}
		if space {
			b.WriteByte(' ')
			space = false
		}
		if marked(r) || r == '&' && entity(text[i+1:]) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return inline(b.String())
}

// marked tells whether a character is escaped wherever it stands.
func marked(r rune) bool {
	switch r {
	case '\\', '`', '*', '_', '[', ']', '<', '{', '#', '|', '~':
		return true
	}
	return false
}

// entity tells whether what follows an ampersand could make it a character
// reference.
func entity(after string) bool {
	return after != "" && (after[0] == '#' || after[0] < 0x80 && unicode.IsLetter(rune(after[0])))
}

// strong is the words in bold, or nothing when there are none.
func strong(words inline) inline { return wrapped(words, "**") }

// soft is the words in italics, or nothing when there are none.
func soft(words inline) inline { return wrapped(words, "*") }

// wrapped leaves white space of any kind outside the marks, where it would
// stop them from working.
func wrapped(words inline, mark string) inline {
	w := strings.TrimFunc(string(words), unicode.IsSpace)
	if w == "" {
		return ""
	}
	return inline(mark + w + mark)
}

// joined puts the parts that are not empty one after another.
func joined(separator inline, parts ...inline) inline {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, string(p))
		}
	}
	return inline(strings.Join(kept, string(separator)))
}

// values are what a pattern's placeholders stand for.
type values map[string]inline

// say fills a pattern of wording.go: {name} is replaced by its value, all else
// is plain text. A name without a value stays as it is written, which a test
// of the wording finds.
func say(pattern string, v values) inline {
	var b strings.Builder
	for pattern != "" {
		open := strings.IndexByte(pattern, '{')
		if open < 0 {
			open = len(pattern)
		}
		b.WriteString(escaped(pattern[:open]))
		pattern = pattern[open:]
		end := strings.IndexByte(pattern, '}')
		if end < 0 {
			b.WriteString(escaped(pattern))
			break
		}
		value, ok := v[pattern[1:end]]
		if !ok {
			value = plain(pattern[:end+1])
		}
		b.WriteString(string(value))
		pattern = pattern[end+1:]
	}
	words := strings.FieldsFunc(b.String(), func(r rune) bool { return r == ' ' })
	return inline(strings.Join(words, " "))
}

// escaped is plain for a part of a sentence, whose outer spaces count.
func escaped(part string) string {
	core := string(plain(part))
	if core == "" {
		if part != "" && strings.TrimSpace(part) == "" {
			return " "
		}
		return ""
	}
	if strings.HasPrefix(part, " ") {
		core = " " + core
	}
	if strings.HasSuffix(part, " ") {
		core += " "
	}
	return core
}

// upper is the text with a capital first letter, for a word of data that opens
// a cell or a heading.
func upper(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	if n == 0 || r == utf8.RuneError {
		return text
	}
	return string(unicode.ToUpper(r)) + text[n:]
}

// sentence is the text as a sentence: capital first letter, closing full stop.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return ""
	}
	if !strings.ContainsRune(".!?:;…", lastRune(text)) {
		text += "."
	}
	return upper(text)
}

// clause is the text without its closing full stop, to stand inside a sentence
// or a cell.
func clause(text string) string {
	text = strings.TrimSpace(text)
	if strings.HasSuffix(text, ".") && !strings.HasSuffix(text, "..") {
		return text[:len(text)-1]
	}
	return text
}

func lastRune(text string) rune {
	var last rune
	for _, r := range text {
		last = r
	}
	return last
}

// spoken is a name of the data as a person says it: "side_upper" is "side upper".
func spoken(name string) string {
	return strings.NewReplacer("_", " ", "-", " ").Replace(name)
}

// fillText is say for words that are not Markdown: those in and about figures.
// Names and values alternate.
func fillText(pattern string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		pairs[i] = "{" + pairs[i] + "}"
	}
	return strings.NewReplacer(pairs...).Replace(pattern)
}
