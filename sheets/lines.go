package sheets

import (
	"strings"
	"unicode"
)

// lineWidth is where prose is broken, so that the Markdown reads well raw in a
// window of 80 columns.
const lineWidth = 78

// fill breaks words into lines. The first line starts with first, the others
// with rest (the marks and indents of the block they stand in). A number stays
// with its unit. No line begins with something that would start a block.
func fill(words inline, first, rest string) []string {
	var lines []string
	var line strings.Builder
	at := 0 // columns taken in the line, 0 before its first word
	begin := func(prefix, w string) {
		w = lineStart(w)
		line.WriteString(prefix + w)
		at = columns(prefix) + columns(w)
	}
	for _, w := range units(strings.Split(string(words), " ")) {
		wide := columns(w)
		switch {
		case at == 0:
			begin(first, w)
		case at+1+wide <= lineWidth:
			line.WriteString(" " + w)
			at += 1 + wide
		default:
			lines = append(lines, line.String())
			line.Reset()
			begin(rest, w)
		}
	}
	if at == 0 {
		return []string{strings.TrimRight(first, " ")}
	}
	return append(lines, line.String())
}

// units joins a number to the unit after it, so that no line ends between them.
func units(words []string) []string {
	out := words[:0:0]
	for _, w := range words {
		if n := len(out); n > 0 && isUnit(w) && endsInNumber(out[n-1]) {
			out[n-1] += " " + w
			continue
		}
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}

func isUnit(w string) bool {
	w = strings.TrimRight(w, ".,;:)*")
	switch w {
	case "mm", "cm", "m", "in", "yd", "min", "h", "%":
		return true
	}
	return false
}

func endsInNumber(w string) bool {
	r := lastRune(w)
	return unicode.IsNumber(r)
}

// lineStart escapes what Markdown would take for the start of a block.
func lineStart(w string) string {
	first, _, _ := strings.Cut(w, " ")
	switch {
	case first == "":
		return w
	case first == "-" || first == "+" || first[0] == '>' || strings.Trim(first, "=") == "":
		return `\` + w
	case strings.Trim(first, "-:|") == "":
		return `\` + w
	}
	if digits := len(first) - len(strings.TrimLeft(first, "0123456789")); digits > 0 && digits < 10 {
		if mark := first[digits:]; mark == "." || mark == ")" {
			return w[:digits] + `\` + w[digits:]
		}
	}
	return w
}

// columns is how many columns the text takes in a window: marks that stand over
// another letter take none.
func columns(text string) int {
	n := 0
	for _, r := range text {
		if r < 0x300 || !unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
			n++
		}
	}
	return n
}
