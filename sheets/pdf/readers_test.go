package pdf

import (
	"fmt"
	"strings"
	"testing"

	"bodkin/sheets"
	"bodkin/sheets/sheettest"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
	"golang.org/x/text/unicode/norm"
)

// said is what Markdown says, by goldmark's own tree, without spaces.
func said(markdown []byte) string {
	var b strings.Builder
	root := goldmark.New(goldmark.WithExtensions(extension.GFM)).Parser().Parse(text.NewReader(markdown))
	_ = ast.Walk(root, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if _, ok := n.(*ast.Image); ok {
			return ast.WalkSkipChildren, nil
		}
		if t, ok := n.(*ast.Text); ok && entering {
			b.Write(util.ResolveEntityNames(util.ResolveNumericReferences(util.UnescapePunctuations(t.Segment.Value(markdown)))))
		}
		return ast.WalkContinue, nil
	})
	return squeeze(norm.NFC.String(b.String()))
}

// The sheets of real plans, for every reader and on every paper: all their words
// in order, none beyond the margins and none over another.
func TestSheetsOfEveryReaderOnEveryPaper(t *testing.T) {
	for _, name := range []string{"shell-top", "open-coat"} {
		p := sheettest.Kept(t, "../testdata/"+name+".json")
		for _, r := range sheets.Readers() {
			for _, brief := range []bool{false, true} {
				as := sheets.Options{For: sheets.Reader(r), Brief: brief, FiguresAt: "figures/"}
				s := sheets.Compose(p, as)
				want := said(s.Markdown)
				for _, paper := range []Paper{A4, Letter, A5} {
					t.Run(fmt.Sprintf("%s/%s brief %t/%d", name, r, brief, paper), func(t *testing.T) {
						o := Options{Paper: paper, TypeSize: as.TypeSize(), StepHead: as.StepHead(), Title: s.Title, Figures: s.ByAddress()}
						d, err := lay(s.Markdown, &o)
						if err != nil {
							t.Fatal(err)
						}
						if got := d.told(roleBody); got != want {
							t.Errorf("words lost, doubled or out of order: %s", difference(got, want))
						}
						for n, p := range d.pages {
							standsInPlace(t, d, n, p)
						}
					})
				}
			}
		}
	}
}
