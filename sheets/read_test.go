package sheets

import (
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// The tests read sheets back with goldmark, an implementation of CommonMark
// and of GitHub's tables, task lists and strikethrough that is not ours.

func parse(markdown []byte) ast.Node {
	md := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList, extension.Strikethrough))
	return md.Parser().Parse(text.NewReader(markdown))
}

// words are what a reader sees of a node: escapes and entities resolved, line
// breaks as spaces.
func words(n ast.Node, source []byte) string {
	var b strings.Builder
	_ = ast.Walk(n, func(m ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			if m.Type() == ast.TypeBlock {
				b.WriteByte(' ')
			}
			return ast.WalkContinue, nil
		}
		if t, ok := m.(*ast.Text); ok {
			b.WriteString(read(string(t.Segment.Value(source))))
			if t.SoftLineBreak() || t.HardLineBreak() {
				b.WriteByte(' ')
			}
		}
		return ast.WalkContinue, nil
	})
	return spaced(b.String())
}

// read resolves escapes and entities from left to right, so that an escaped
// ampersand begins no entity.
func read(raw string) string {
	var b strings.Builder
	for i := 0; i < len(raw); i++ {
		if raw[i] == '\\' && i+1 < len(raw) && util.IsPunct(raw[i+1]) {
			i++
			b.WriteByte(raw[i])
			continue
		}
		if end := strings.IndexFunc(raw[i+1:], func(r rune) bool { return r != '#' && !('0' <= r && r <= '9' || 'a' <= r|0x20 && r|0x20 <= 'z') }) + 1; raw[i] == '&' && end > 1 && raw[i+end] == ';' {
			b.Write(util.ResolveEntityNames(util.ResolveNumericReferences([]byte(raw[i : i+end+1]))))
			i += end
			continue
		}
		b.WriteByte(raw[i])
	}
	return b.String()
}

// spaced is a text with its ASCII white space made single spaces.
func spaced(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" \t\n\r\v\f\u0085\u2028\u2029", r) }), " ")
}

// section is a heading of level 2 or 3 with the blocks up to the next.
type part struct {
	level  int
	title  string
	blocks []ast.Node
}

func parts(t testing.TB, markdown []byte) []part {
	t.Helper()
	var out []part
	for n := parse(markdown).FirstChild(); n != nil; n = n.NextSibling() {
		if h, ok := n.(*ast.Heading); ok {
			out = append(out, part{level: h.Level, title: words(h, markdown)})
			continue
		}
		if len(out) == 0 {
			t.Fatal("the sheet does not begin with a heading")
		}
		out[len(out)-1].blocks = append(out[len(out)-1].blocks, n)
	}
	return out
}

// under are the parts from a heading of level 2 to the next of that level.
func under(t testing.TB, all []part, title string) []part {
	t.Helper()
	for i, p := range all {
		if p.level == 2 && p.title == title {
			j := i + 1
			for j < len(all) && all[j].level > 2 {
				j++
			}
			return all[i:j]
		}
	}
	t.Fatalf("no section %q", title)
	return nil
}

// tables are the rows of every table among the blocks, its head first.
func tables(blocks []ast.Node, source []byte) [][][]string {
	var out [][][]string
	for _, b := range blocks {
		if b.Kind() != extast.KindTable {
			continue
		}
		var rows [][]string
		for row := b.FirstChild(); row != nil; row = row.NextSibling() {
			var cells []string
			for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
				cells = append(cells, words(cell, source))
			}
			rows = append(rows, cells)
		}
		out = append(out, rows)
	}
	return out
}

// ticks are the words of every item with a box among the blocks.
func ticks(blocks []ast.Node, source []byte) []string {
	var out []string
	for _, b := range blocks {
		if b.Kind() != ast.KindList {
			continue
		}
		for item := b.FirstChild(); item != nil; item = item.NextSibling() {
			if first := item.FirstChild(); first != nil && first.FirstChild() != nil && first.FirstChild().Kind() == extast.KindTaskCheckBox {
				out = append(out, words(item, source))
			}
		}
	}
	return out
}
