package sheets

import (
	"bytes"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"

	"bodkin/sheets/pdf/anchor"
)

// page is Markdown as it grows, a block at a time, with a blank line between
// blocks.
type page struct {
	out    bytes.Buffer
	ids    *anchor.IDs
	deeper int // levels by which headings stand lower
}

// open parts the next block from the one before.
func (p *page) open() {
	if p.out.Len() > 0 {
		p.out.WriteByte('\n')
	}
}

func (p *page) line(s string) {
	p.out.WriteString(strings.TrimRight(s, " "))
	p.out.WriteByte('\n')
}

func (p *page) lines(ls []string) {
	for _, l := range ls {
		p.line(l)
	}
}

// heading is a heading of the given level; it stays on one line. The id is
// where a link to it leads.
func (p *page) heading(level int, words inline) (id string) {
	p.open()
	p.line(strings.Repeat("#", level+p.deeper) + " " + string(words))
	return string(p.ids.Generate([]byte(words), ast.KindHeading))
}

// link leads to a heading of the sheet. Its address has letters, digits,
// hyphens and underscores only.
func link(words inline, id string) inline {
	if words == "" || id == "" {
		return words
	}
	return "[" + words + "](#" + inline(id) + ")"
}

// para is a paragraph, or nothing when there are no words.
func (p *page) para(words inline) {
	if words == "" {
		return
	}
	p.open()
	p.lines(fill(words, "", ""))
}

// quote is a block quote of one paragraph or more.
func (p *page) quote(paras ...inline) {
	if len(paras) == 0 {
		return
	}
	p.open()
	for i, words := range paras {
		if i > 0 {
			p.line(">")
		}
		p.lines(fill(words, "> ", "> "))
	}
}

// list is a tight list; tasks have a box to tick.
func (p *page) list(items ...inline) { p.marked("- ", items) }

func (p *page) tasks(items ...inline) { p.marked("- [ ] ", items) }

func (p *page) marked(mark string, items []inline) {
	if len(items) == 0 {
		return
	}
	p.open()
	for _, it := range items {
		p.lines(fill(it, mark, "  "))
	}
}

// image is a figure in a line of Markdown.
func image(alt, address string) string {
	return "![" + string(plain(alt)) + "](" + destination(address) + ")"
}

// destination is an address as Markdown reads it: bare where nothing in it
// could mean something else.
func destination(address string) string {
	bare := strings.IndexFunc(address, func(r rune) bool {
		return !(r == '/' || r == '-' || r == '.' || r == '_' || r < 0x80 && (unicode.IsLetter(r) || unicode.IsDigit(r)))
	}) < 0
	if bare && address != "" {
		return address
	}
	return "<" + strings.NewReplacer(`\`, `\\`, "<", `\<`, ">", `\>`, "&", `\&`, "\n", " ", "\r", " ").Replace(address) + ">"
}

// column is the head of a table's column.
type column struct {
	title inline
	right bool // figures, lined up at the right
}

// table is a table with its columns padded so that they line up in the raw
// text. Cells beyond the head's count are a mistake of ours and are dropped by
// Markdown; short rows are filled up.
func (p *page) table(head []column, rows [][]inline) {
	if len(rows) == 0 {
		return
	}
	wide := make([]int, len(head))
	for i, c := range head {
		wide[i] = max(columns(string(c.title)), 3)
		for _, row := range rows {
			if i < len(row) {
				wide[i] = max(wide[i], columns(string(row[i])))
			}
		}
	}
	p.open()
	titles := make([]inline, len(head))
	var rule strings.Builder
	for i, c := range head {
		titles[i] = c.title
		dashes := strings.Repeat("-", wide[i])
		if c.right {
			dashes = dashes[1:] + ":"
		}
		rule.WriteString("| " + dashes + " ")
	}
	p.row(head, wide, titles)
	p.line(rule.String() + "|")
	for _, row := range rows {
		p.row(head, wide, row)
	}
}

func (p *page) row(head []column, wide []int, cells []inline) {
	var b strings.Builder
	for i, c := range head {
		var cell string
		if i < len(cells) {
			cell = string(cells[i])
		}
		pad := strings.Repeat(" ", wide[i]-columns(cell))
		if c.right {
			b.WriteString("| " + pad + cell + " ")
		} else {
			b.WriteString("| " + cell + pad + " ")
		}
	}
	p.line(b.String() + "|")
}
