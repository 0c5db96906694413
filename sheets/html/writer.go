package html

import (
	stdhtml "html"
	"io"
	"net/url"
	"strings"

	"bodkin/sheets/figure"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// writer writes the nodes that a sheet wants otherwise than goldmark does.
type writer struct {
	figures map[string]figure.Figure
	tasks   int
	class   string // of the next paragraph
}

// RegisterFuncs makes writer a renderer.NodeRenderer.
func (w *writer) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindParagraph, w.paragraph)
	r.Register(ast.KindTextBlock, w.textBlock)
	r.Register(ast.KindListItem, w.item)
	r.Register(ast.KindImage, w.image)
	r.Register(ast.KindLink, w.link)
	r.Register(ast.KindAutoLink, w.autoLink)
	r.Register(ast.KindHTMLBlock, w.htmlBlock)
	r.Register(ast.KindRawHTML, w.rawHTML)
	r.Register(east.KindTaskCheckBox, w.box)
	r.Register(east.KindTable, w.table)
	r.Register(east.KindTableHeader, w.head)
	r.Register(east.KindTableRow, w.row)
	r.Register(east.KindTableCell, w.cell)
}

func escape(words string) string { return stdhtml.EscapeString(words) }

// put writes to goldmark's buffer, which keeps its first error itself.
func put(w io.Writer, words string) { _, _ = io.WriteString(w, words) }

// boxed tells whether a block opens with a box to tick.
func boxed(n ast.Node) bool {
	_, ok := n.FirstChild().(*east.TaskCheckBox)
	return ok
}

func (w *writer) paragraph(b util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	switch {
	case boxed(n):
		return w.textBlock(b, nil, n, entering)
	case !entering:
		put(b, "</p>\n")
	case w.class != "":
		put(b, `<p class="`+w.class+`">`)
		w.class = ""
	default:
		put(b, "<p>")
	}
	return ast.WalkContinue, nil
}

// textBlock: a box and its words are one label, so that a tap on the words
// ticks it too.
func (w *writer) textBlock(b util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	switch {
	case boxed(n) && entering:
		put(b, "<label>")
	case boxed(n):
		put(b, "</span></label>\n")
	case !entering && n.NextSibling() != nil:
		put(b, "\n")
	}
	return ast.WalkContinue, nil
}

func (w *writer) box(b util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		w.tasks++
		checked := ""
		if n.(*east.TaskCheckBox).IsChecked {
			checked = " checked"
		}
		put(b, `<input type="checkbox" autocomplete="off"`+checked+`><span>`)
	}
	return ast.WalkContinue, nil
}

func (w *writer) item(b util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	switch {
	case !entering:
		put(b, "</li>\n")
	case n.FirstChild() != nil && boxed(n.FirstChild()):
		put(b, `<li class="task">`)
	default:
		put(b, "<li>")
	}
	return ast.WalkContinue, nil
}

// figuresOf are the figures of a block that stand alone, one or a row of them;
// none where it has words.
func (w *writer) figuresOf(n ast.Node) []figure.Figure {
	p, ok := n.(*ast.Paragraph)
	if !ok {
		return nil
	}
	var out []figure.Figure
	for c := p.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Image:
			f, ok := w.figures[string(c.Destination)]
			if !ok {
				return nil
			}
			out = append(out, f)
		case *ast.Text:
			if c.Segment.Len() > 0 {
				return nil
			}
		default:
			return nil
		}
	}
	return out
}

// narrow is how wide a figure may be to fit a small phone with its margins, mm.
const narrow = 80

// drawing is a figure at its size. One that may be wider than the window can
// be moved sideways by itself, by keyboard too.
func (w *writer) drawing(out io.Writer, f figure.Figure) {
	reach := ""
	if f.Width > narrow {
		reach = ` role="group" aria-label="` + escape(f.Title) + `" tabindex="0"`
	}
	put(out, `<div class="drawing"`+reach+">\n")
	_, _ = out.Write(f.SVG())
	put(out, "</div>\n")
}

// sideBySide is several figures side by side, as many as fit.
func (w *writer) sideBySide(out io.Writer, fs []figure.Figure) {
	put(out, `<div class="row">`+"\n")
	for _, f := range fs {
		_, _ = out.Write(f.SVG())
	}
	put(out, "</div>\n")
}

func (w *writer) image(b util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	f, ok := w.figures[string(n.(*ast.Image).Destination)]
	if !ok {
		return ast.WalkContinue, nil
	}
	if entering {
		_, _ = b.Write(f.SVG())
	}
	return ast.WalkSkipChildren, nil
}

// leads is where a link may lead from the page: within it, or to the net by
// http, https or mailto; empty for anything else, which is no link.
func leads(destination string) string {
	d := stdhtml.UnescapeString(string(util.UnescapePunctuations([]byte(destination))))
	if id, ok := strings.CutPrefix(d, "#"); ok {
		if plain, err := url.PathUnescape(id); err == nil {
			id = plain
		}
		return "#" + id
	}
	scheme, _, ok := strings.Cut(d, ":")
	if !ok {
		return ""
	}
	switch strings.ToLower(scheme) {
	case "http", "https", "mailto":
		return string(util.URLEscape([]byte(d), false))
	}
	return ""
}

func (w *writer) link(b util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	to := leads(string(n.(*ast.Link).Destination))
	switch {
	case to == "":
	case entering:
		put(b, `<a href="`+escape(to)+`"`+away(to)+`>`)
	default:
		put(b, "</a>")
	}
	return ast.WalkContinue, nil
}

// away keeps another site from learning where the reader came from.
func away(to string) string {
	if strings.HasPrefix(to, "#") {
		return ""
	}
	return ` rel="noreferrer"`
}

func (w *writer) autoLink(b util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	a := n.(*ast.AutoLink)
	address := string(a.URL(source))
	if a.AutoLinkType == ast.AutoLinkEmail {
		address = "mailto:" + address
	}
	label := escape(string(a.Label(source)))
	if to := leads(address); to != "" {
		label = `<a href="` + escape(to) + `"` + away(to) + `>` + label + "</a>"
	}
	put(b, label)
	return ast.WalkContinue, nil
}

// htmlBlock shows HTML as the text it is.
func (w *writer) htmlBlock(b util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	h := n.(*ast.HTMLBlock)
	raw := string(h.Lines().Value(source))
	if h.HasClosure() {
		raw += string(h.ClosureLine.Value(source))
	}
	put(b, "<pre><code>"+escape(raw)+"</code></pre>\n")
	return ast.WalkContinue, nil
}

func (w *writer) rawHTML(b util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		put(b, "<code>"+escape(string(n.(*ast.RawHTML).Segments.Value(source)))+"</code>")
	}
	return ast.WalkSkipChildren, nil
}
