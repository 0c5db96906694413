package pdf

import (
	"strings"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"
)

// block is a piece of the document as it was read: one of the types below.
type block any

type heading struct {
	level int // 1 to 6
	id    string
	spans []span
}

type paragraph struct{ spans []span }

type list struct {
	ordered bool
	start   int
	suffix  string // what follows an item's number
	tight   bool
	items   []item
}

type item struct {
	task   task
	blocks []block
}

type task int

const (
	noTask task = iota
	openTask
	doneTask
)

type quote struct{ blocks []block }

// literal is text shown as it stands: code, or HTML that is not interpreted.
type literal struct {
	lines []string
	line  int // of the first of them
}

type rule struct{}

type align int

const (
	alignLeft align = iota
	alignCentre
	alignRight
)

type table struct {
	aligns []align
	head   [][]span // nil when every cell of it is empty
	rows   [][][]span
}

// plate is a figure that stands alone.
type plate struct{ fig figure.Figure }

// drawn tells whether a block is a figure that stands alone or a row of them.
func drawn(b block) bool {
	switch b := b.(type) {
	case plate:
		return true
	case paragraph:
		figures := 0
		for _, s := range b.spans {
			switch {
			case s.fig != nil:
				figures++
			case strings.TrimSpace(s.text) != "":
				return false
			}
		}
		return figures > 0
	}
	return false
}

// span is a stretch of words of one look, a figure among words, or a line
// break that the writer wants.
type span struct {
	text   string
	style  typeface.Style
	code   bool
	strike bool
	to     target
	fig    *figure.Figure
	scale  float64 // of its type beside that round it; 0 means 1
	breaks bool
	line   int // where it stands in the Markdown, from 1
}

// target is where a link leads: an address on the net, or an id within the
// sheet. The zero value is no link.
type target struct{ uri, id string }

// onlyEmphasis tells whether the spans are one emphasised run and nothing else.
func onlyEmphasis(spans []span) bool {
	for _, s := range spans {
		if s.style&(typeface.Bold|typeface.Oblique) == 0 || s.fig != nil {
			return false
		}
	}
	return len(spans) > 0
}

// plain is the words of the spans without their looks.
func plain(spans []span) string {
	words := ""
	for _, s := range spans {
		if s.breaks {
			words += " "
		}
		words += s.text
	}
	return words
}

// headingIDs adds the ids of all headings among the blocks, however deep.
func headingIDs(bs []block, ids map[string]bool) map[string]bool {
	for _, b := range bs {
		switch b := b.(type) {
		case heading:
			ids[b.id] = true
		case quote:
			headingIDs(b.blocks, ids)
		case list:
			for _, it := range b.items {
				headingIDs(it.blocks, ids)
			}
		}
	}
	return ids
}
