package sheets

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"pgregory.net/rapid"
)

func html(t interface{ Fatal(...any) }, markdown string) string {
	var out bytes.Buffer
	md := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList, extension.Strikethrough))
	if err := md.Convert([]byte(markdown), &out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestNotesAsText(t *testing.T) {
	for _, c := range []struct{ name, notes, want string }{
		{"nothing", " \n\t\n", ""},
		{"words", "Plain *words*\nover two lines.", "Plain *words*\nover two lines."},
		{"headings go down", "# One\n\nTwo\n===\n\n###### Six", "### One\n\n### Two\n\n###### Six"},
		{"inline HTML", "Ask about <b>buttons</b>.", `Ask about \<b>buttons\</b>.`},
		{"HTML block", "<div>\n*x* | y\n</div>", `\<div> \*x\* \| y \</div>`},
		{"script", "<script>\nalert(1)\n\n# x\n</script>", `\<script> alert(1) \# x \</script>`},
		{"comment", "a <!-- b --> c", `a \<!-- b --> c`},
		{"open fence is closed", "```\ncode <b>", "```\ncode <b>\n```"},
		{"indented code", "    a | b", "```\na | b\n```"},
		{"fence in code", "~~~~\n```\n~~~~", "````\n```\n````"},
		{"lazy line", "> a\n    # b", "> a # b"},
		{"nested list", "1. a\n   - b\n\n     c\n2. d", "1. a\n   - b\n\n     c\n2. d"},
		{"table", "a|b\n:-|-:\n`x`|<i>y</i>", "| a | b |\n| :-- | --: |\n| `x` | \\<i>y\\</i> |"},
		{"tasks", "- [ ] a\n- [x] b", "- [ ] a\n- [x] b"},
		{"hard break", "a  \nb", "a  \nb"},
		{"link and its definition", "see [x]\n\n[x]: http://a.b", "see [x]\n\n[x]: http://a.b"},
		{"rule", "a\n\n---\n\nb", "a\n\n* * *\n\nb"},
		{"Windows lines", "a\r\n\r\n- b\r\n", "a\n\n- b"},
	} {
		if got := strings.Join(rewrite(c.notes), "\n"); got != c.want {
			t.Errorf("%s: %q becomes\n%s\nnot\n%s", c.name, c.notes, got, c.want)
		}
	}
}

// fragments are blocks and pieces of blocks; joined at random they make most
// of what Markdown knows, HTML left out.
var fragments = []string{
	"word", "two words", "*soft*", "**strong**", "`code`", "`a|b`", "~~gone~~", "[link](http://a.b \"t\")", "![pic](a.svg)", "\\*", "a\\", "&amp;",
	"\n", "\n\n", "  \n", "# ", "### three ###", "\n===\n", "\n---\n", "- ", "* ", "+ ", "1. ", "7) ", "  ", "    ", "> ", "```\n", "~~~ go\n",
	"\n| a | b |\n|---|:-:|\n| c | d |\n", "- [ ] ", "- [x] ", "\n[ref]: http://c.d 'x'\n", "[ref]", "***\n", "6 mm", "é", "|", "#", "<http://a.b>", "1986\\. ", "=", "\t",
}

func heading(n int) *regexp.Regexp { return regexp.MustCompile(`<(/?)h` + strconv.Itoa(n) + `\b`) }

// lowered is HTML with its headings two levels down.
func lowered(h string) string {
	for n := 6; n >= 1; n-- {
		h = heading(n).ReplaceAllString(h, "<${1}h"+strconv.Itoa(min(n+notesLevel, 6)))
	}
	return regexp.MustCompile(` id="[^"]*"`).ReplaceAllString(h, "")
}

// Notes read the same after they are written anew, by another program's
// reading: the HTML that goldmark makes of both is one, but for the headings.
func TestNotesReadTheSame(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		notes := strings.Join(rapid.SliceOfN(rapid.SampledFrom(fragments), 1, 24).Draw(r, "notes"), "")
		again := strings.Join(rewrite(notes), "\n")
		got, want := squeezed(html(r, again)), squeezed(lowered(html(r, notes)))
		if got != want {
			r.Fatalf("notes\n%s\nbecome\n%s\nread as\n%s\nnot\n%s", notes, again, got, want)
		}
	})
}

// squeezed leaves out white space that HTML does not show, empty headings,
// which a sheet drops, and the parting of code from prose, which differs where
// indented code becomes fenced.
func squeezed(h string) string {
	h = regexp.MustCompile(`(?s)<h\d>.*?</h\d>`).ReplaceAllStringFunc(h, func(s string) string {
		return strings.ReplaceAll(s, "<br>", " ") // a heading stays on one line
	})
	h = regexp.MustCompile(`<h\d>\s*</h\d>`).ReplaceAllString(h, "")
	h = regexp.MustCompile(`<td style="[^"]*"></td>`).ReplaceAllString(h, "<td></td>")
	h = regexp.MustCompile(`\s+`).ReplaceAllString(h, " ")
	h = strings.NewReplacer("> <", "><", " </", "</").Replace(h)
	for strings.Contains(h, "<blockquote></blockquote>") {
		h = strings.ReplaceAll(h, "<blockquote></blockquote>", "")
	}
	return strings.TrimSpace(h)
}

// Whatever the notes hold, the sheet before them stays as it is, nothing in
// them is a heading of the sheet's own level, and nothing is HTML.
func TestNotesCannotBreakTheSheet(t *testing.T) {
	p := fixture(t, "shell-top")
	p.Notes = ""
	bare := Compose(p, Options{}).Markdown
	all := append(append([]string{}, fragments...), hostile...)
	rapid.Check(t, func(r *rapid.T) {
		p.Notes = strings.Join(rapid.SliceOfN(rapid.SampledFrom(all), 1, 24).Draw(r, "notes"), "")
		md := Compose(p, Options{}).Markdown
		if !bytes.HasPrefix(md, bare) {
			r.Fatal("the sheet before the notes has changed")
		}
		high := 0
		_ = ast.Walk(parse(md), func(n ast.Node, entering bool) (ast.WalkStatus, error) {
			if !entering {
				return ast.WalkContinue, nil
			}
			switch n := n.(type) {
			case *ast.RawHTML, *ast.HTMLBlock:
				r.Fatalf("HTML in\n%s", md[len(bare):])
			case *ast.Heading:
				if n.Level < 3 {
					high++
				}
			}
			return ast.WalkContinue, nil
		})
		want := bytes.Count(bare, []byte("\n## ")) + 1
		if len(md) > len(bare) {
			want++
		}
		if high != want {
			r.Fatalf("%d headings of the sheet's own levels, not %d, in\n%s", high, want, md[len(bare):])
		}
	})
}
