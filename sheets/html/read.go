package html

import (
	"bytes"
	"strings"
	"unicode"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/anchor"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
	"golang.org/x/text/unicode/norm"
)

// sheet is the Markdown as it stands in the page.
type sheet struct {
	html     []byte
	title    string
	contents []entry
	tasks    int
	steps    bool
}

// read turns Markdown into the page's body, block by block: goldmark writes
// the blocks, the sections round them are ours.
func read(markdown []byte, figures map[string]figure.Figure) (sheet, error) {
	source := bytes.TrimPrefix(markdown, []byte("\ufeff"))
	source = bytes.ReplaceAll(source, []byte{0}, []byte("\ufffd"))
	source = norm.NFC.Bytes(bytes.ToValidUTF8(source, []byte("\ufffd")))
	ours := &writer{figures: figures}
	md := goldmark.New(
		goldmark.WithExtensions(extension.GFM),
		goldmark.WithParserOptions(parser.WithAutoHeadingID()),
		goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(ours, 100))),
	)
	root := md.Parser().Parse(text.NewReader(source), parser.WithContext(parser.NewContext(parser.WithIDs(anchor.New()))))
	b := body{source: source, render: md.Renderer(), writer: ours}
	if err := b.blocks(root); err != nil {
		return sheet{}, err
	}
	b.s.html, b.s.tasks = b.out.Bytes(), ours.tasks
	return b.s, nil
}

// body is the page's body as it grows.
type body struct {
	source []byte
	render renderer.Renderer
	writer *writer
	out    bytes.Buffer
	s      sheet
	open   []int // the levels of the sections that are open
}

// blocks writes the document's blocks. Headings of level 2 and 3 open sections
// that hold what follows; a figure takes the italic line after it as its
// caption; a line in bold straight after a step's heading is its setting.
func (b *body) blocks(root ast.Node) error {
	for n := root.FirstChild(); n != nil; n = n.NextSibling() {
		if h, ok := n.(*ast.Heading); ok {
			b.section(h)
		}
		figures := b.writer.figuresOf(n)
		switch {
		case len(figures) > 0:
			caption := n.NextSibling()
			if !isLine(caption, 1) {
				caption = nil
			}
			if err := b.figure(figures, caption); err != nil {
				return err
			}
			if caption != nil {
				n = caption
			}
		case isLine(n, 2) && heads(n.PreviousSibling(), 3):
			b.writer.class = "setting"
			if err := b.render.Render(&b.out, b.source, n); err != nil {
				return err
			}
		default:
			if err := b.render.Render(&b.out, b.source, n); err != nil {
				return err
			}
		}
	}
	b.close(0)
	return nil
}

// section closes what a heading ends and opens what it begins.
func (b *body) section(h *ast.Heading) {
	words := plainText(h, b.source)
	if b.s.title == "" {
		b.s.title = words
	}
	b.close(h.Level)
	if h.Level != 2 && h.Level != 3 {
		return
	}
	id := idOf(h)
	class := ""
	if h.Level == 2 {
		b.s.contents = append(b.s.contents, entry{id, words})
	} else {
		class = ` class="part"`
		if strings.IndexFunc(words, unicode.IsDigit) == 0 {
			class = ` class="part numbered"`
		}
	}
	b.out.WriteString(`<section` + class + ` aria-labelledby="` + escape(id) + `">` + "\n")
	b.open = append(b.open, h.Level)
}

// close ends the sections of a level and deeper.
func (b *body) close(level int) {
	for k := len(b.open); k > 0 && b.open[k-1] >= level; k-- {
		b.out.WriteString("</section>\n")
		b.open = b.open[:k-1]
	}
}

func (b *body) figure(figures []figure.Figure, caption ast.Node) error {
	b.out.WriteString("<figure>\n")
	if len(figures) == 1 {
		b.writer.drawing(&b.out, figures[0])
	} else {
		b.writer.sideBySide(&b.out, figures)
	}
	if caption != nil {
		b.out.WriteString("<figcaption>")
		for c := caption.FirstChild().FirstChild(); c != nil; c = c.NextSibling() {
			if err := b.render.Render(&b.out, b.source, c); err != nil {
				return err
			}
		}
		b.out.WriteString("</figcaption>\n")
	}
	b.out.WriteString("</figure>\n")
	return nil
}

// isLine tells whether a block is a paragraph that is all in bold (level 2) or
// in italics (level 1).
func isLine(n ast.Node, level int) bool {
	p, ok := n.(*ast.Paragraph)
	if !ok || p.ChildCount() != 1 {
		return false
	}
	e, ok := p.FirstChild().(*ast.Emphasis)
	return ok && e.Level == level
}

func heads(n ast.Node, level int) bool {
	h, ok := n.(*ast.Heading)
	return ok && h.Level == level
}

func idOf(n ast.Node) string {
	id, _ := n.AttributeString("id")
	name, _ := id.([]byte)
	return string(name)
}

// plainText is what a node says, as text.
func plainText(n ast.Node, source []byte) string {
	var b strings.Builder
	_ = ast.Walk(n, func(m ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch m := m.(type) {
		case *ast.Text:
			words := m.Segment.Value(source)
			if !m.IsRaw() {
				words = util.ResolveEntityNames(util.ResolveNumericReferences(util.UnescapePunctuations(words)))
			}
			b.Write(words)
			if m.SoftLineBreak() || m.HardLineBreak() {
				b.WriteByte(' ')
			}
		case *ast.String:
			b.Write(m.Value)
		case *ast.AutoLink:
			b.Write(m.Label(source))
		case *ast.RawHTML:
			b.Write(m.Segments.Value(source))
		}
		return ast.WalkContinue, nil
	})
	return strings.Join(strings.Fields(b.String()), " ")
}
