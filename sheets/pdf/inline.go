package pdf

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"bodkin/sheets/pdf/typeface"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"
	"golang.org/x/text/unicode/norm"
)

// inline gathers the words below a block's node. Neighbours of one look are
// joined, since the parser cuts text wherever a mark might have begun.
func (r *reader) inline(n ast.Node) ([]span, error) {
	g := gatherer{reader: r}
	err := g.children(n, span{line: r.line(n)})
	for i := range g.spans {
		g.spans[i].text = norm.NFC.String(g.spans[i].text)
	}
	return g.spans, err
}

type gatherer struct {
	*reader
	spans []span
}

func (g *gatherer) children(n ast.Node, look span) error {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if err := g.node(c, look); err != nil {
			return err
		}
	}
	return nil
}

func (g *gatherer) node(n ast.Node, look span) error {
	switch n := n.(type) {
	case *ast.Text:
		look.line = g.lineAt(n.Segment.Start)
		raw := string(n.Segment.Value(g.source))
		if !n.IsRaw() {
			raw = unescape(raw)
		}
		g.add(look, raw)
		switch {
		case n.HardLineBreak():
			g.spans = append(g.spans, span{breaks: true, line: look.line})
		case n.SoftLineBreak():
			g.add(look, " ")
		}
	case *ast.String:
		g.add(look, string(n.Value))
	case *ast.CodeSpan:
		look.code = true
		look.style |= typeface.Condensed
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			if t, ok := c.(*ast.Text); ok {
				look.line = g.lineAt(t.Segment.Start)
				g.add(look, strings.ReplaceAll(string(t.Segment.Value(g.source)), "\n", " "))
			}
		}
	case *ast.Emphasis:
		if n.Level == 2 {
			look.style |= typeface.Bold
		} else {
			look.style |= typeface.Oblique
		}
		return g.children(n, look)
	case *east.Strikethrough:
		look.strike = true
		return g.children(n, look)
	case *ast.Link:
		look.to = targetOf(n.Destination)
		return g.children(n, look)
	case *ast.AutoLink:
		address := n.URL(g.source)
		if n.AutoLinkType == ast.AutoLinkEmail {
			address = append([]byte("mailto:"), address...)
		}
		look.to = targetOf(address)
		g.add(look, string(n.Label(g.source)))
	case *ast.Image:
		fig, ok := g.figures[string(n.Destination)]
		if !ok {
			return g.children(n, look)
		}
		look.fig = &fig
		g.spans = append(g.spans, look)
	case *ast.RawHTML:
		look.code = true
		look.style |= typeface.Condensed
		for i := range n.Segments.Len() {
			seg := n.Segments.At(i)
			g.add(look, strings.ReplaceAll(string(seg.Value(g.source)), "\n", " "))
		}
	case *east.TaskCheckBox:
		// Drawn by the list, which looks for it itself.
	default:
		return g.unknown(n)
	}
	return nil
}

func (g *gatherer) add(look span, words string) {
	if words == "" {
		return
	}
	if k := len(g.spans) - 1; k >= 0 {
		last := &g.spans[k]
		if !last.breaks && last.fig == nil && last.style == look.style && last.code == look.code && last.strike == look.strike && last.to == look.to {
			last.text += words
			return
		}
	}
	look.text = words
	g.spans = append(g.spans, look)
}

// unescape resolves backslash escapes and character references in one pass, so
// that an escaped ampersand starts no reference (CommonMark 0.31.2, 2.4 and 2.5).
func unescape(s string) string {
	if !strings.ContainsAny(s, `\&`) {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		switch {
		case s[i] == '\\' && i+1 < len(s) && util.IsPunct(s[i+1]):
			i++
			b.WriteByte(s[i])
		case s[i] == '&':
			if end := strings.IndexByte(s[i:], ';'); end > 1 {
				if words, ok := reference(s[i+1 : i+end]); ok {
					b.WriteString(words)
					i += end
					continue
				}
			}
			b.WriteByte('&')
		default:
			b.WriteByte(s[i])
		}
	}
	return b.String()
}

func reference(name string) (string, bool) {
	if !strings.HasPrefix(name, "#") {
		e, ok := util.LookUpHTML5EntityByName(name)
		if !ok {
			return "", false
		}
		return string(e.Characters), true
	}
	digits, base, most := name[1:], 10, 7
	if len(digits) > 0 && (digits[0] == 'x' || digits[0] == 'X') {
		digits, base, most = digits[1:], 16, 6
	}
	v, err := strconv.ParseUint(digits, base, 32)
	if err != nil || len(digits) > most || strings.HasPrefix(digits, "+") {
		return "", false
	}
	if v == 0 || !utf8.ValidRune(rune(v)) {
		return "\ufffd", true
	}
	return string(rune(v)), true
}
