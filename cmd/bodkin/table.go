package main

import (
	"strings"
	"text/tabwriter"
	"unicode/utf8"
)

// table is rows of words in columns, for a terminal.
type table struct{ rows [][]string }

func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

// String lays the columns out two spaces apart.
func (t table) String() string {
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, r := range t.rows {
		_, _ = w.Write([]byte(strings.Join(r, "\t") + "\n")) // a Builder takes everything
	}
	_ = w.Flush()
	var out strings.Builder
	for line := range strings.Lines(b.String()) {
		out.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return out.String()
}

// columns is how wide text for a terminal runs.
const columns = 80

// wrapped breaks text at spaces into lines of at most 80 columns, the first
// after one indentation and the others after another.
func wrapped(text, first, rest string) string {
	var out strings.Builder
	line := first
	empty := true
	for _, word := range strings.Fields(text) {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			out.WriteString(line + "\n")
			line, empty = rest, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	out.WriteString(line + "\n")
	return out.String()
}
