package sheets

import (
	"bytes"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	dom "golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"bodkin/sheets/sheettest"
)

// cmark-gfm is another implementation of CommonMark with the tables, boxes and
// strikethrough of GitHub, in C, from Debian. What it makes of a sheet has the
// same headings, items, boxes and cells with the same words in the same order
// as what goldmark makes. A machine of one's own may lack it; under CI it must
// be there.
func TestAnotherReaderOfTablesAndBoxes(t *testing.T) {
	path := sheettest.Program(t, "cmark-gfm")
	ours := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList, extension.Strikethrough))
	for _, n := range plans(t) {
		for _, r := range Readers() {
			t.Run(n.name+"/"+r, func(t *testing.T) {
				md := Compose(n.plan, Options{For: Reader(r), FiguresAt: "figures/"}).Markdown
				cmd := exec.CommandContext(t.Context(), path, "-e", "table", "-e", "tasklist", "-e", "strikethrough", "--to", "html")
				cmd.Stdin = bytes.NewReader(md)
				theirs, err := cmd.Output()
				if err != nil {
					t.Fatal(err)
				}
				var by bytes.Buffer
				if err := ours.Convert(md, &by); err != nil {
					t.Fatal(err)
				}
				want, got := rendered(t, by.Bytes()), rendered(t, theirs)
				for _, kind := range []string{"h1", "h2", "h3", "li", "th", "td", "input"} {
					if !slices.ContainsFunc(want, func(s string) bool { return strings.HasPrefix(s, kind+":") }) {
						t.Errorf("the sheet has no %s", kind)
					}
				}
				if d := cmp.Diff(want, got); d != "" {
					t.Errorf("cmark-gfm (+) reads otherwise than goldmark (-):\n%.3000s", d)
				}
			})
		}
	}
}

// rendered are the headings, items, cells and boxes of a page with their words,
// in order.
func rendered(t *testing.T, page []byte) []string {
	t.Helper()
	root, err := dom.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for n := range root.Descendants() {
		switch n.DataAtom {
		case atom.H1, atom.H2, atom.H3, atom.H4, atom.Li, atom.Th, atom.Td, atom.Input:
			var words strings.Builder
			for m := range n.Descendants() {
				if m.Type == dom.TextNode {
					words.WriteString(m.Data)
				}
			}
			out = append(out, n.Data+": "+spaced(words.String()))
		}
	}
	return out
}
