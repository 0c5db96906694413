package html

import (
	"bytes"
	"strings"
	"testing"

	"bodkin/sheets/figure"

	nethtml "golang.org/x/net/html"
	"pgregory.net/rapid"
)

// The tests read pages with golang.org/x/net/html, a parser made to the HTML
// standard and not ours.

func page(t interface{ Fatal(...any) }, markdown string, o Options) *nethtml.Node {
	var out bytes.Buffer
	if err := Write(&out, []byte(markdown), o); err != nil {
		t.Fatal(err)
	}
	root, err := nethtml.Parse(&out)
	if err != nil {
		t.Fatal(err)
	}
	return root
}

func attribute(n *nethtml.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// all are the elements of a name, in the order of the page.
func all(root *nethtml.Node, name string) []*nethtml.Node {
	var out []*nethtml.Node
	for n := range root.Descendants() {
		if n.Type == nethtml.ElementNode && n.Data == name {
			out = append(out, n)
		}
	}
	return out
}

func words(n *nethtml.Node) string {
	var b strings.Builder
	for m := range n.Descendants() {
		if m.Type == nethtml.TextNode {
			b.WriteString(m.Data)
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

var square = figure.Figure{Name: "square", Title: "A <square>", Width: 100, Height: 20, Items: []figure.Item{
	figure.Rect(figure.Point{X: 1, Y: 1}, 18, 18, figure.Stroke{Width: figure.Thin}, figure.Fill{}),
	figure.Text{At: figure.Point{X: 2, Y: 9}, Size: 3, Words: "6 mm & more"},
}}

const sample = `# Two & one

Before the *work*.

| Seam | Wide |
| ---- | ---: |
| Side | 6 mm |
|      | 7 mm |

## To lay out

- [ ] **Shears.**
- [x] Chalk

![A square](f/square.svg)

*The square, cut across.*

## The steps

### Step 1 · Table

**Thread white · about 4 min**

> **Change:** thread.

- [ ] Pin it. See [the square](#to-lay-out).

### Step 2 · Iron

- [ ] Press.
`

// What a reader, a screen reader or a keyboard finds the page by.
func TestStructure(t *testing.T) {
	root := page(t, sample, Options{Figures: map[string]figure.Figure{"f/square.svg": square}})
	if got := attribute(all(root, "html")[0], "lang"); got != "en" {
		t.Errorf("the language is %q", got)
	}
	if got := words(all(root, "title")[0]); got != "Two & one" {
		t.Errorf("the title is %q", got)
	}
	var contents []string
	for _, a := range all(all(root, "nav")[0], "a") {
		contents = append(contents, words(a)+" "+attribute(a, "href"))
	}
	if got := strings.Join(contents, "; "); got != "To lay out #to-lay-out; The steps #the-steps" {
		t.Errorf("the contents are %q", got)
	}
	main := all(root, "main")[0]
	var sections []string
	for _, s := range all(main, "section") {
		head := s.FirstChild.NextSibling
		if attribute(s, "aria-labelledby") != attribute(head, "id") {
			t.Errorf("a section is named by %q, its heading is %q", attribute(s, "aria-labelledby"), attribute(head, "id"))
		}
		sections = append(sections, head.Data+" "+words(head)+" in "+s.Parent.Data)
	}
	if got := strings.Join(sections, "; "); got != "h2 To lay out in main; h2 The steps in main; h3 Step 1 · Table in section; h3 Step 2 · Iron in section" {
		t.Errorf("the sections are %q", got)
	}
	boxes := all(main, "input")
	for i, box := range boxes {
		if box.Parent.Data != "label" || words(box.Parent) == "" {
			t.Errorf("box %d has no words of its own", i+1)
		}
		if _, off := find(box, "disabled"); off {
			t.Errorf("box %d cannot be ticked", i+1)
		}
		if _, on := find(box, "checked"); on != (i == 1) {
			t.Errorf("box %d is ticked: %t", i+1, on)
		}
	}
	if len(boxes) != 4 {
		t.Errorf("%d boxes, not 4", len(boxes))
	}
	figures := all(main, "figure")
	if len(figures) != 1 {
		t.Fatalf("%d figures", len(figures))
	}
	if got := words(all(figures[0], "figcaption")[0]); got != "The square, cut across." {
		t.Errorf("the caption is %q", got)
	}
	if svg := all(figures[0], "svg")[0]; words(all(svg, "title")[0]) != "A <square>" || words(all(svg, "text")[0]) != "6 mm & more" {
		t.Error("the figure has lost its words")
	}
	if got := attribute(all(main, "p")[1], "class"); got != "setting" {
		t.Errorf("the step's setting is set as %q", got)
	}
}

func find(n *nethtml.Node, name string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val, true
		}
	}
	return "", false
}

// Every cell of a table knows the head of its column, in words too, for a
// window in which the columns do not stand side by side.
func TestTablesKeepTheirHeads(t *testing.T) {
	table := all(page(t, sample, Options{}), "table")[0]
	var got []string
	for _, row := range all(table, "tr") {
		for c := range row.ChildNodes() {
			if c.Type == nethtml.ElementNode {
				got = append(got, strings.Join([]string{c.Data, attribute(c, "role"), attribute(c, "scope"), attribute(c, "data-head"), attribute(c, "class"), words(c)}, ","))
			}
		}
	}
	want := "th,columnheader,col,,,Seam th,columnheader,col,,right,Wide th,rowheader,row,,,Side td,cell,,Wide,right,6 mm td,cell,,Seam,, td,cell,,Wide,right,7 mm"
	if g := strings.Join(got, " "); g != want {
		t.Errorf("cells\n%s\nnot\n%s", g, want)
	}
}

// Words that would act if a page let them.
var smuggled = []string{
	"<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "<b onclick=\"x()\">", "</main>", "</style><script>x</script>", "<style>*{display:none}</style>",
	"<iframe src=//a.b>", "<svg onload=x()>", "<!-- ", "-->", "<![CDATA[", "<a href='javascript:x'>y</a>", "[l](javascript:alert(1))", "[l](JaVaScRiPt:x)",
	"[l](&#106;avascript:x)", "[l](data:text/html,<script>x</script>)", "[l](vbscript:x)", "![i](http://a.b/c.png)", "![i](\"onerror=x)", "[l](# \"t\")", "[l](#\"onclick=x)",
	"<http://a.b/\"onclick=x>", "<javascript:x>", "<a@b.c>", "[l](https://a.b/?\"><script>)", "{{.Body}}", "{{", "&lt;script&gt;", "&#60;script&#62;", "\x00", "\xff", "\"", "'", "`", "```\n", "\n\n", "\n- [ ] ",
	"\n| a | b |\n| - | - |\n| <td onclick=x> | \" onclick=x |\n", "\n# <script>h</script>\n", "\n### \" onclick=\"x\n", "\n<div onclick=x>\n", "\n\n<script>\nx\n</script>\n\n", "x", " ", "*", "**",
}

// Nothing in a sheet's words can act, whatever it is made of: the page has one
// script, its own, no handler, no style, nothing loaded, and links that lead
// within the page, to the net or to a letter only.
func TestNothingSmuggledActs(t *testing.T) {
	var alone bytes.Buffer
	if err := Write(&alone, nil, Options{}); err != nil {
		t.Fatal(err)
	}
	clean, err := nethtml.Parse(&alone)
	if err != nil {
		t.Fatal(err)
	}
	script := words(all(clean, "script")[0])
	rapid.Check(t, func(r *rapid.T) {
		markdown := strings.Join(rapid.SliceOfN(rapid.SampledFrom(smuggled), 1, 12).Draw(r, "parts"), "")
		title := rapid.SampledFrom(smuggled).Draw(r, "title")
		root := page(r, markdown, Options{Title: title, Author: title, Key: title,
			Figures: map[string]figure.Figure{"f.svg": {Name: "f", Title: title, Width: 1, Height: 1, Items: []figure.Item{figure.Text{Words: title}}}}})
		if s := all(root, "script"); len(s) != 1 || words(s[0]) != script {
			r.Fatalf("%d scripts", len(s))
		}
		if n := len(all(root, "style")); n != 1 {
			r.Fatalf("%d styles", n)
		}
		for n := range root.Descendants() {
			if n.Type != nethtml.ElementNode {
				continue
			}
			switch n.Data {
			case "iframe", "img", "object", "embed", "form", "link", "base", "audio", "video":
				r.Fatalf("there is a <%s>", n.Data)
			}
			for _, a := range n.Attr {
				switch {
				case strings.HasPrefix(a.Key, "on"), a.Key == "style", a.Key == "src", a.Key == "srcdoc":
					r.Fatalf("<%s> has %s=%q", n.Data, a.Key, a.Val)
				case a.Key == "href":
					ok := false
					for _, start := range []string{"#", "http://", "https://", "mailto:", "http:", "https:"} {
						ok = ok || strings.HasPrefix(strings.ToLower(a.Val), start)
					}
					if !ok {
						r.Fatalf("a link leads to %q", a.Val)
					}
				}
			}
		}
	})
}

// HTML in notes is read as the text it is.
func TestHTMLIsShown(t *testing.T) {
	root := page(t, "a <b onclick=\"x\">bold</b>\n\n<div>\nblock\n</div>\n", Options{})
	if got := words(all(root, "main")[0]); got != `a <b onclick="x">bold</b> <div> block </div>` {
		t.Errorf("shown as %q", got)
	}
}

func TestSameBytes(t *testing.T) {
	var a, b bytes.Buffer
	o := Options{Figures: map[string]figure.Figure{"f/square.svg": square}}
	if err := Write(&a, []byte(sample), o); err != nil {
		t.Fatal(err)
	}
	if err := Write(&b, []byte(sample), o); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two pages of one sheet differ")
	}
}

// The ticks of a sheet that has changed are its own.
func TestKeyIsOfTheSheet(t *testing.T) {
	key := func(markdown string, o Options) string {
		return attribute(all(page(t, markdown, o), "body")[0], "data-key")
	}
	if key(sample, Options{}) != key(sample, Options{Lang: "de"}) {
		t.Error("one sheet has two keys")
	}
	if key(sample, Options{}) == key(sample+"\n", Options{}) {
		t.Error("two sheets have one key")
	}
	if key(sample, Options{Key: "mine"}) != "mine" {
		t.Error("the key that was given is not used")
	}
}

func TestWhatCannotBeWritten(t *testing.T) {
	for _, c := range []struct {
		name string
		o    Options
		want string
	}{
		{"language", Options{Lang: "no tag"}, "language tag"},
		{"figure", Options{Figures: map[string]figure.Figure{"f": {Name: "f"}}}, `figure under "f"`},
	} {
		var out bytes.Buffer
		if err := Write(&out, []byte(sample), c.o); err == nil || !strings.Contains(err.Error(), c.want) || out.Len() > 0 {
			t.Errorf("%s: %v, %d bytes", c.name, err, out.Len())
		}
	}
}

// Figures that follow one another without words are one figure, side by side,
// with the caption of all; words among them make them part of a paragraph.
func TestRowOfFigures(t *testing.T) {
	o := Options{Figures: map[string]figure.Figure{"f/square.svg": square}}
	root := page(t, "# Squares\n\n![one](f/square.svg)\n![two](f/square.svg)\n\n*Both of them.*\n\nHere is ![one](f/square.svg) again.\n", o)
	figures := all(root, "figure")
	if len(figures) != 1 {
		t.Fatalf("%d figures", len(figures))
	}
	if n := len(all(figures[0], "svg")); n != 2 {
		t.Errorf("the row has %d drawings", n)
	}
	if got := words(all(figures[0], "figcaption")[0]); got != "Both of them." {
		t.Errorf("the caption of the row is %q", got)
	}
	if n := len(all(root, "svg")); n != 3 {
		t.Errorf("%d drawings in all", n)
	}
}
