package sheets

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"pgregory.net/rapid"

	"bodkin/process"
)

// skeleton is what Markdown makes of a sheet, without its words: every node but
// text, with what a reader would notice of it.
func skeleton(markdown []byte) []string {
	var out []string
	depth := 0
	_ = ast.Walk(parse(markdown), func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			depth--
			return ast.WalkContinue, nil
		}
		depth++
		switch n := n.(type) {
		case *ast.Text:
		case *ast.Heading:
			out = append(out, fmt.Sprintf("%d heading %d", depth, n.Level))
		case *ast.Emphasis:
			out = append(out, fmt.Sprintf("%d emphasis %d", depth, n.Level))
		case *ast.List:
			out = append(out, fmt.Sprintf("%d list %q tight %t", depth, n.Marker, n.IsTight))
		case *extast.TableCell:
			out = append(out, fmt.Sprintf("%d cell %v", depth, n.Alignment))
		default:
			out = append(out, fmt.Sprintf("%d %v", depth, n.Kind()))
		}
		return ast.WalkContinue, nil
	})
	return out
}

// hostile are texts that mean something to Markdown, to HTML or to a sheet's
// own patterns.
var hostile = []string{
	"|", "||", "*", "**", "_", "__", "`", "```", "~~", "~~~", "[", "]", "[x]", "[ ] ", "](http://a.b)", "![", "<", ">", "<b>", "</td>",
	"<!--", "-->", "<script>", "<http://a.b>", "&lt;", "&#124;", "&", "#", "# ", "## h", "- ", "+ ", "* ", "1. ", "2) ", "> ", "===", "---",
	"| - | - |", ":--", "\n", "\n\n", "\n# h\n", "\n- x\n", "\r\n\r\n", "\t", "    ", "\\", "\\\\", "\\|", "\\*", "{seam}", "{", "}", "$x$",
	"\x00", "\x1b[31m", "\u2028", "\u0085", "\u00a0", "\ufeff", "\xff", "’", "é", "e\u0301", "Ẹ̀", "縫い", "👗", "a", "b c", "6 mm", "10", ".", "...", ":", "x",
}

func hostileText() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(rapid.SampledFrom(hostile), 1, 8).Draw(t, "parts"), "")
	})
}

// logic are the fields that sheets are built by, not only told in.
var logic = []string{"Schema", "Units", "Name", "Cut", "Cloth", "Seam", "Kind", "Construction", "Work", "ID", "Does", "Station",
	"Machine", "Piece", "On", "AfterOperation", "Operations", "Ply", "Stitch", "Size", "Right", "What", "Notes", "JoinKind", "Material"}

// dress puts one hostile text before and another after every word of the plan
// that is only told. Empty texts stay empty; equal ones stay equal.
func dress(v reflect.Value, field, before, after string) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			dress(v.Field(i), v.Type().Field(i).Name, before, after)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			dress(v.Index(i), field, before, after)
		}
	case reflect.String:
		if v.String() != "" && !slices.Contains(logic, field) && !(field == "Part" && v.String() == "half") {
			v.SetString(before + v.String() + after)
		}
	}
}

// Nothing a plan says can alter what a sheet is made of: dressed in hostile
// texts, it has the same headings, tables, lists and boxes, and no HTML.
func TestHostileWordsAlterNothing(t *testing.T) {
	for _, name := range fixtures(t) {
		want := map[string][]string{}
		for _, at := range []string{"", "figures/"} {
			want[at] = skeleton(Compose(fixture(t, name), Options{FiguresAt: at}).Markdown)
		}
		rapid.Check(t, func(r *rapid.T) {
			at := rapid.SampledFrom([]string{"", "figures/"}).Draw(r, "figures at")
			want := want[at]
			p := fixture(t, name)
			before, after := hostileText().Draw(r, "before"), hostileText().Draw(r, "after")
			dress(reflect.ValueOf(p).Elem(), "", before, after)
			s := Compose(p, Options{FiguresAt: at})
			got := skeleton(s.Markdown)
			if !slices.Equal(got, want) {
				for i := range min(len(got), len(want)) {
					if got[i] != want[i] {
						r.Fatalf("node %d is %s, not %s, in\n%s", i, got[i], want[i], s.Markdown)
					}
				}
				r.Fatalf("%d nodes, not %d", len(got), len(want))
			}
			for _, d := range s.Figures {
				wellFormed(r, d)
			}
		})
	}
}

// What was written is what is read: the words survive their escaping.
func TestWordsSurvive(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text := hostileText().Draw(r, "text")
		md := page{}
		md.tasks(plain("x " + text))
		md.table([]column{{title: "a"}}, [][]inline{{plain("x " + text)}})
		want := spaced("x " + visibleText(text))
		doc := parse(md.out.Bytes())
		for n := doc.FirstChild(); n != nil; n = n.NextSibling() {
			got := words(n, md.out.Bytes())
			got = strings.TrimPrefix(got, "a ")
			if got != want {
				r.Fatalf("%q is read as %q from\n%s", want, got, md.out.Bytes())
			}
		}
	})
}

// visibleText is what is left of a text when what cannot be seen is dropped.
func visibleText(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' && !strings.ContainsRune("\t\n\v\f\r", r) || r == 0x7f || r > 0x7f && r < 0xa0 && r != 0x85 {
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
}

// The file names of figures are safe, and each its own, whatever seams are called.
func TestFigureNames(t *testing.T) {
	p := fixture(t, "shell-top")
	for i := range p.Seams {
		p.Seams[i].Construction = []string{"../../etc/passwd", "A b", "a-b", "", "縫い", "a b", "CON\x00"}[i%7]
		p.Seams[i].Sizes = []process.Size{{Name: "n", MM: float64(i)}}
	}
	seen := map[string]bool{}
	for _, d := range Compose(p, Options{FiguresAt: "f/"}).Figures {
		if seen[d.Address] {
			t.Errorf("two figures at %s", d.Address)
		}
		seen[d.Address] = true
		if strings.Trim(d.Figure.Name, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" || d.Address != "f/"+d.Figure.Name+".svg" {
			t.Errorf("figure %q at %q", d.Figure.Name, d.Address)
		}
	}
}

// Wherever the figures are kept, the Markdown leads to them.
func TestAddressesSurvive(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		at := strings.NewReplacer("\n", "", "\r", "", "\x00", "").Replace(strings.ToValidUTF8(hostileText().Draw(r, "at"), "")) + "/"
		s := Compose(&process.Plan{Stations: []process.Station{{Name: "m", Kind: "machine"}},
			Steps: []process.Step{{Number: 1, Station: "m", Setting: process.Setting{Thread: "ink"}}}}, Options{FiguresAt: at})
		var got []string
		_ = ast.Walk(parse(s.Markdown), func(n ast.Node, entering bool) (ast.WalkStatus, error) {
			if image, ok := n.(*ast.Image); ok && entering {
				got = append(got, read(string(image.Destination)))
			}
			return ast.WalkContinue, nil
		})
		if len(got) != 1 || got[0] != s.Figures[0].Address {
			r.Fatalf("%q leads to %q", s.Figures[0].Address, got)
		}
	})
}
