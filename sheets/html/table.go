package html

import (
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"
)

// The roles of a table are written out, because a narrow window shows each row
// as a block of its own and browsers then forget what it was.

func (w *writer) table(b util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		reach := ""
		if least(n, source) > roomy {
			head := plainText(n.FirstChild(), source)
			reach = ` role="group" aria-label="` + escape(head) + `" tabindex="0"`
		}
		put(b, `<div class="grid"`+reach+`><table role="table">`+"\n")
	} else {
		put(b, "</tbody>\n</table></div>\n")
	}
	return ast.WalkContinue, nil
}

func (w *writer) head(b util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		put(b, `<thead role="rowgroup"><tr role="row">`+"\n")
	} else {
		put(b, "</tr></thead>\n"+`<tbody role="rowgroup">`+"\n")
	}
	return ast.WalkContinue, nil
}

func (w *writer) row(b util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		put(b, `<tr role="row">`+"\n")
	} else {
		put(b, "</tr>\n")
	}
	return ast.WalkContinue, nil
}

// cell: the heads head their columns, the first cell of a row heads its row,
// and every other cell carries its head along for narrow windows.
func (w *writer) cell(b util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	row := n.Parent()
	_, ofHead := row.(*east.TableHeader)
	heading := n.HasChildren() && (ofHead || n.PreviousSibling() == nil)
	tag := "td"
	if heading {
		tag = "th"
	}
	if !entering {
		put(b, "</"+tag+">\n")
		return ast.WalkContinue, nil
	}
	put(b, "<"+tag)
	switch {
	case heading && ofHead:
		put(b, ` role="columnheader" scope="col"`)
	case heading:
		put(b, ` role="rowheader" scope="row"`)
	default:
		put(b, ` role="cell"`)
		if h := headOf(n); h != nil && !ofHead {
			put(b, ` data-head="`+escape(plainText(h, source))+`"`)
		}
	}
	switch n.(*east.TableCell).Alignment {
	case east.AlignRight:
		put(b, ` class="right"`)
	case east.AlignCenter:
		put(b, ` class="centre"`)
	}
	put(b, ">")
	return ast.WalkContinue, nil
}

// headOf is the head of a cell's column.
func headOf(n ast.Node) ast.Node {
	h := n.Parent().Parent().FirstChild().FirstChild()
	for c := n.PreviousSibling(); c != nil && h != nil; c = c.PreviousSibling() {
		h = h.NextSibling()
	}
	return h
}

// roomy is how many letters wide a table may have to be and still fits any
// window in which its columns stand side by side. A wider one can be moved
// sideways by itself, by keyboard too.
const roomy = 50

// least is how many letters wide a table has to be: the longest word of every
// column and the space between columns.
func least(table ast.Node, source []byte) int {
	var longest []int
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		i := 0
		for c := row.FirstChild(); c != nil; c = c.NextSibling() {
			if i == len(longest) {
				longest = append(longest, 0)
			}
			for word := range strings.FieldsSeq(plainText(c, source)) {
				longest[i] = max(longest[i], utf8.RuneCountInString(word))
			}
			i++
		}
	}
	sum := 0
	for _, n := range longest {
		sum += n + 3
	}
	return sum
}
