package sheets

import (
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/text"
)

// notesLevel is how far the maker's own headings are moved down, so that they
// stand below the sheet's.
const notesLevel = 2

// deepest is how far blocks of the notes may be nested; what lies deeper is
// written as plain text.
const deepest = 20

// rewrite writes the maker's Markdown anew, block by block, as lines. Her words
// and marks stay; headings move down two levels, every list, quote and fence
// is closed, and HTML is kept as text.
func rewrite(notes string) []string {
	notes = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(strings.ToValidUTF8(notes, "\uFFFD"))
	if strings.TrimSpace(notes) == "" {
		return nil
	}
	source := []byte(notes)
	md := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList, extension.Strikethrough))
	r := rewriter{source: source}
	return r.blocks(md.Parser().Parse(text.NewReader(source)), 0, false)
}

type rewriter struct{ source []byte }

// blocks are the lines of a node's child blocks, with blank lines between them
// unless tight.
func (r rewriter) blocks(parent ast.Node, depth int, tight bool) []string {
	var out []string
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		block := r.block(n, depth+1)
		if len(block) == 0 {
			continue
		}
		if len(out) > 0 && !tight {
			out = append(out, "")
		}
		out = append(out, block...)
	}
	return out
}

func (r rewriter) block(n ast.Node, depth int) []string {
	if depth > deepest {
		return fill(plain(r.deepText(n)), "", "")
	}
	switch n := n.(type) {
	case *ast.Heading:
		return r.heading(n)
	case *ast.Paragraph, *ast.TextBlock:
		return r.prose(n)
	case *ast.List:
		return r.list(n, depth)
	case *ast.Blockquote:
		return indented(r.blocks(n, depth, false), "> ", "> ")
	case *ast.FencedCodeBlock:
		return fenced(r.lines(n), plain(string(n.Language(r.source))))
	case *ast.CodeBlock:
		return fenced(r.lines(n), "")
	case *ast.HTMLBlock:
		raw := r.raw(n)
		if n.HasClosure() {
			raw += string(n.ClosureLine.Value(r.source))
		}
		return fill(plain(raw), "", "")
	case *ast.ThematicBreak:
		return []string{"* * *"}
	case *ast.LinkReferenceDefinition:
		return r.lines(n)
	case *extast.Table:
		return r.table(n)
	}
	return fill(plain(r.deepText(n)), "", "")
}

func (r rewriter) heading(n *ast.Heading) []string {
	lines := r.prose(n)
	for i := range lines[:max(len(lines)-1, 0)] {
		if escapes(lines[i]) {
			lines[i] = lines[i][:len(lines[i])-1] // no hard break in a heading
		}
	}
	words := strings.Join(lines, " ")
	if strings.TrimSpace(words) == "" {
		return nil
	}
	if open := strings.TrimRight(words, "#"); open != words && (open == "" || strings.HasSuffix(open, " ") || strings.HasSuffix(open, "\t")) {
		words = open + `\` + words[len(open):]
	}
	return []string{strings.Repeat("#", min(n.Level+notesLevel, 6)) + " " + words}
}

func (r rewriter) list(n *ast.List, depth int) []string {
	var out []string
	number := n.Start
	for item := n.FirstChild(); item != nil; item = item.NextSibling() {
		mark := string(n.Marker) + " "
		if n.IsOrdered() {
			mark = strconv.Itoa(number) + mark
			number++
		}
		if len(out) > 0 && !n.IsTight {
			out = append(out, "")
		}
		lines := r.blocks(item, depth, n.IsTight)
		if len(lines) == 0 {
			lines = []string{""}
		}
		out = append(out, indented(lines, mark, strings.Repeat(" ", len(mark)))...)
	}
	return out
}

func (r rewriter) table(n *extast.Table) []string {
	var out []string
	for row := n.FirstChild(); row != nil; row = row.NextSibling() {
		line, rule := "|", "|"
		for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
			line += " " + strings.Join(r.prose(cell), " ") + " |"
			if c, ok := cell.(*extast.TableCell); ok {
				rule += " " + delimiter(c.Alignment) + " |"
			}
		}
		out = append(out, line)
		if len(out) == 1 {
			out = append(out, rule)
		}
	}
	return out
}

func delimiter(a extast.Alignment) string {
	switch a {
	case extast.AlignLeft:
		return ":--"
	case extast.AlignRight:
		return "--:"
	case extast.AlignCenter:
		return ":-:"
	}
	return "---"
}

// fenced is code between fences longer than any run of backquotes in it.
func fenced(lines []string, language inline) []string {
	fence := "```"
	for strings.Contains(strings.Join(lines, "\n"), fence) {
		fence += "`"
	}
	return append(append([]string{fence + string(language)}, lines...), fence)
}

func indented(lines []string, first, rest string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		prefix := rest
		if i == 0 {
			prefix = first
		}
		if l == "" {
			prefix = strings.TrimRight(prefix, " ")
		}
		out[i] = prefix + l
	}
	return out
}

func (r rewriter) raw(n ast.Node) string { return string(n.Lines().Value(r.source)) }

func (r rewriter) lines(n ast.Node) []string {
	return strings.Split(strings.TrimSuffix(r.raw(n), "\n"), "\n")
}

// deepText is all the source text below a node, whatever it means.
func (r rewriter) deepText(n ast.Node) string {
	var b strings.Builder
	_ = ast.Walk(n, func(m ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering && m.Type() == ast.TypeBlock && m.Lines().Len() > 0 {
			b.WriteString(r.raw(m) + "\n")
			return ast.WalkSkipChildren, nil
		}
		return ast.WalkContinue, nil
	})
	return b.String()
}
