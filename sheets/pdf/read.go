package pdf

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/anchor"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"golang.org/x/text/unicode/norm"
)

// reader turns goldmark's tree into blocks.
type reader struct {
	source  []byte
	figures map[string]figure.Figure
	starts  []int // byte offsets of the lines
}

// read parses the Markdown. It fails on bytes that are not UTF-8, and on a
// kind of node it does not know, so that nothing is left out in silence.
func read(markdown []byte, figures map[string]figure.Figure) ([]block, error) {
	source := bytes.TrimPrefix(markdown, []byte("\ufeff"))
	source = bytes.ReplaceAll(source, []byte("\r\n"), []byte("\n"))
	source = bytes.ReplaceAll(source, []byte{0}, []byte("\ufffd"))
	for rest, line := source, 1; len(rest) > 0; {
		r, n := utf8.DecodeRune(rest)
		if r == utf8.RuneError && n == 1 {
			return nil, fmt.Errorf("line %d: byte 0x%02x is not UTF-8; save the text as UTF-8", line, rest[0])
		}
		if r == '\n' {
			line++
		}
		rest = rest[n:]
	}
	source = norm.NFC.Bytes(source)
	r := &reader{source: source, figures: figures, starts: []int{0}}
	for i, b := range source {
		if b == '\n' {
			r.starts = append(r.starts, i+1)
		}
	}
	md := goldmark.New(
		goldmark.WithExtensions(extension.GFM),
		goldmark.WithParserOptions(parser.WithAutoHeadingID()),
	)
	root := md.Parser().Parse(text.NewReader(source), parser.WithContext(parser.NewContext(parser.WithIDs(anchor.New()))))
	return r.blocks(root)
}

func (r *reader) blocks(parent ast.Node) ([]block, error) {
	var out []block
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		b, err := r.block(n)
		if err != nil {
			return nil, err
		}
		if b != nil {
			out = append(out, b)
		}
	}
	return out, nil
}

func (r *reader) block(n ast.Node) (block, error) {
	switch n := n.(type) {
	case *ast.Heading:
		spans, err := r.inline(n)
		id, _ := n.AttributeString("id")
		name, _ := id.([]byte)
		return heading{level: n.Level, id: string(name), spans: spans}, err
	case *ast.Paragraph:
		return r.paragraph(n)
	case *ast.TextBlock:
		return r.paragraph(n)
	case *ast.List:
		return r.list(n)
	case *ast.Blockquote:
		inner, err := r.blocks(n)
		return quote{inner}, err
	case *ast.FencedCodeBlock:
		return r.literal(n), nil
	case *ast.CodeBlock:
		return r.literal(n), nil
	case *ast.HTMLBlock:
		l := r.literal(n)
		if n.HasClosure() {
			l.lines = append(l.lines, clean(n.ClosureLine.Value(r.source)))
		}
		return l, nil
	case *ast.ThematicBreak:
		return rule{}, nil
	case *ast.LinkReferenceDefinition:
		return nil, nil
	case *east.Table:
		return r.table(n)
	}
	return nil, r.unknown(n)
}

func (r *reader) unknown(n ast.Node) error {
	return fmt.Errorf("line %d: %v cannot be set", r.line(n), n.Kind())
}

// line is where the node begins, from 1; 0 when the tree does not tell.
func (r *reader) line(n ast.Node) int {
	for ; n != nil; n = n.Parent() {
		if t, ok := n.(*ast.Text); ok {
			return r.lineAt(t.Segment.Start)
		}
		if n.Type() == ast.TypeBlock && n.Lines() != nil && n.Lines().Len() > 0 {
			return r.lineAt(n.Lines().At(0).Start)
		}
	}
	return 0
}

func (r *reader) lineAt(offset int) int {
	lo, hi := 0, len(r.starts)
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; r.starts[mid] <= offset {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + 1
}

func (r *reader) paragraph(n ast.Node) (block, error) {
	if img, ok := n.FirstChild().(*ast.Image); ok && img.NextSibling() == nil {
		if fig, ok := r.figures[string(img.Destination)]; ok {
			return plate{fig}, nil
		}
	}
	spans, err := r.inline(n)
	if err != nil || len(spans) == 0 {
		return nil, err
	}
	return paragraph{spans}, nil
}

func (r *reader) list(n *ast.List) (block, error) {
	l := list{ordered: n.IsOrdered(), start: n.Start, suffix: string(n.Marker), tight: n.IsTight}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		it := item{task: taskOf(c)}
		var err error
		if it.blocks, err = r.blocks(c); err != nil {
			return nil, err
		}
		l.items = append(l.items, it)
	}
	return l, nil
}

func taskOf(listItem ast.Node) task {
	if listItem.FirstChild() == nil {
		return noTask
	}
	box, ok := listItem.FirstChild().FirstChild().(*east.TaskCheckBox)
	switch {
	case !ok:
		return noTask
	case box.IsChecked:
		return doneTask
	}
	return openTask
}

func (r *reader) literal(n ast.Node) literal {
	l := literal{line: r.line(n)}
	for i := range n.Lines().Len() {
		seg := n.Lines().At(i)
		l.lines = append(l.lines, clean(seg.Value(r.source)))
	}
	return l
}

// clean takes a line's end off and sets tabs to every fourth column.
func clean(line []byte) string {
	s := strings.TrimRight(string(line), "\r\n")
	if !strings.ContainsRune(s, '\t') {
		return s
	}
	var b strings.Builder
	column := 0
	for _, c := range s {
		if c != '\t' {
			b.WriteRune(c)
			column++
			continue
		}
		for fill := 4 - column%4; fill > 0; fill-- {
			b.WriteByte(' ')
			column++
		}
	}
	return b.String()
}

func (r *reader) table(n *east.Table) (block, error) {
	t := table{}
	for _, a := range n.Alignments {
		switch a {
		case east.AlignRight:
			t.aligns = append(t.aligns, alignRight)
		case east.AlignCenter:
			t.aligns = append(t.aligns, alignCentre)
		default:
			t.aligns = append(t.aligns, alignLeft)
		}
	}
	for row := n.FirstChild(); row != nil; row = row.NextSibling() {
		var cells [][]span
		filled := false
		for c := row.FirstChild(); c != nil; c = c.NextSibling() {
			spans, err := r.inline(c)
			if err != nil {
				return nil, err
			}
			cells = append(cells, spans)
			filled = filled || len(spans) > 0
		}
		for len(cells) < len(t.aligns) {
			cells = append(cells, nil)
		}
		switch row.(type) {
		case *east.TableHeader:
			if filled {
				t.head = cells
			}
		case *east.TableRow:
			t.rows = append(t.rows, cells)
		default:
			return nil, r.unknown(row)
		}
	}
	return t, nil
}
