package pdf

import (
	"slices"
	"strings"
	"testing"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"

	"github.com/google/go-cmp/cmp"
)

// set lays Markdown out and fails the test if that fails.
func set(t *testing.T, markdown string, o Options) *drawing {
	t.Helper()
	d, err := lay([]byte(markdown), &o)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// shown is what stands in the body, each stretch of one look by itself.
func shown(d *drawing) (out []words) {
	for _, p := range d.pages {
		for _, w := range p.words {
			if w.Role != roleFrame {
				out = append(out, w)
			}
		}
	}
	return out
}

func texts(d *drawing) (out []string) {
	for _, w := range shown(d) {
		out = append(out, w.Text)
	}
	return out
}

// Each row is a construct of CommonMark 0.31.2 (John MacFarlane, 2024) by the
// number of its section, or of the GitHub Flavored Markdown Spec 0.29 (GitHub,
// 2019), with the words it stands for.
func TestConstructs(t *testing.T) {
	for _, c := range []struct {
		section, markdown string
		want              []string
	}{
		{"2.4 backslash escapes", `\*not emphasised\* \# \[a\]`, []string{"*not emphasised* # [a]"}},
		{"2.4 no escape before a letter", `\a\ b`, []string{`\a\ b`}},
		{"2.5 entities", `&copy; &auml; &frac34; &amp;`, []string{"© ä ¾ &"}},
		{"2.5 numeric references", `&#35; &#x2192; &#0;`, []string{"# → \ufffd"}},
		{"2.5 not references", `&nosuch; &copy &#; &#12345678;`, []string{"&nosuch; &copy &#; &#12345678;"}},
		{"2.5 an escaped ampersand", `\&amp;`, []string{"&amp;"}},
		{"4.1 thematic break", "a\n\n---\n\nb", []string{"a", "b"}},
		{"4.2 ATX heading", "## a ##", []string{"a"}},
		{"4.3 setext heading", "a\n===", []string{"a"}},
		{"4.4 indented code", "    a  *b*\n      c", []string{"a  *b*", "  c"}},
		{"4.5 fenced code", "```\na &amp; <b>\n\tc\n```", []string{"a &amp; <b>", "    c"}},
		{"4.6 HTML block", "<div>\n*a*\n</div>", []string{"<div>", "*a*", "</div>"}},
		{"4.6 HTML comment", "<!-- a\n\nb -->", []string{"<!-- a", "b -->"}},
		{"4.7 link reference definition", "[a]\n\n[a]: https://example.org", []string{"a"}},
		{"4.8 paragraph, soft breaks", "a\n   b", []string{"a b"}},
		{"5.1 block quote", "> a\n> > b", []string{"a", "b"}},
		{"5.2 list items", "- a\n\n  b\n- c", []string{"a", "b", "c"}},
		{"5.3 ordered list, its start", "7) a\n8) b", []string{"7)", "a", "8)", "b"}},
		{"5.3 nested lists", "1. a\n   - b\n     1. c", []string{"1.", "a", "b", "1.", "c"}},
		{"5.3 an empty item", "- a\n-\n- c", []string{"a", "c"}},
		{"6.1 code span", "a ``b ` c``", []string{"a ", "b ` c"}},
		{"6.2 emphasis", "*a* _b_ **c** ***d***", []string{"a", " ", "b", " ", "c", " ", "d"}},
		{"6.2 within a word", "snake_case_word 3\\*4", []string{"snake_case_word 3*4"}},
		{"6.3 link", "[a *b*](https://example.org 'c')", []string{"a ", "b"}},
		{"6.4 image without its figure", "![a *b*](x.png)", []string{"a ", "b"}},
		{"6.5 autolink", "<https://example.org/a>", []string{"https://example.org/a"}},
		{"6.6 raw HTML", `a <b class="c">d</b>`, []string{"a ", `<b class="c">`, "d", "</b>"}},
		{"6.7 hard line break", "a  \nb\\\nc", []string{"a", "b", "c"}},
		{"GFM 4.10 table", "| a | b |\n|--|--|\n| c | `d` |\n| e |", []string{"a", "b", "c", "d", "e"}},
		{"GFM 5.3 task list", "- [ ] a\n- [x] b", []string{"a", "b"}},
		{"GFM 6.5 strikethrough", "~~a~~ b", []string{"a", " b"}},
		{"GFM 6.9 autolink", "see www.example.org", []string{"see ", "www.example.org"}},
		{"spaces run together", "a   b\u00a0 c", []string{"a b\u00a0 c"}},
		{"a byte order mark and CRLF", "\ufeffa\r\nb", []string{"a b"}},
		{"marks are composed", "e\u0323\u0300 &#101;&#x301;", []string{"ẹ̀ é"}},
		{"a table without words in its head", "| | |\n|--|--|\n| a | b |", []string{"a", "b"}},
	} {
		t.Run(c.section, func(t *testing.T) {
			if got := texts(set(t, c.markdown, Options{})); !cmp.Equal(got, c.want) {
				t.Error(cmp.Diff(c.want, got))
			}
		})
	}
}

func TestLooks(t *testing.T) {
	d := set(t, "a **b** *c* `d` ***e***\n\n| f |\n|--|\n| g |", Options{})
	want := map[string]typeface.Style{
		"a ": 0, "b ": typeface.Bold, "b": typeface.Bold, "c": typeface.Oblique, "d": typeface.Condensed,
		"e": typeface.Bold | typeface.Oblique, "f": typeface.Bold, "g": 0,
	}
	for _, w := range shown(d) {
		text := strings.TrimSpace(w.Text)
		if text == "" {
			continue
		}
		if style, ok := want[text]; ok && style != w.Style {
			t.Errorf("%q is set in style %d, want %d", text, w.Style, style)
		}
	}
}

func TestLinks(t *testing.T) {
	d := set(t, "# Đường may\n\n[in](#đường-may) [coded](#%C4%91%C6%B0%E1%BB%9Dng-may) [gone](#gone) "+
		"[js](javascript:alert(1)) [JS](JavaScript:alert) [data](data:text/html,x) [file](file:///etc/passwd) [rel](other.md) "+
		"[net](https://example.org/ẹ?a=b&amp;c) [mail](mailto:a@example.org) <b@example.org>", Options{})
	got := map[string]target{}
	for _, w := range shown(d) {
		if w.To != (target{}) {
			got[w.Text] = w.To
		}
	}
	want := map[string]target{
		"in": {id: "đường-may"}, "coded": {id: "đường-may"},
		"net":           {uri: "https://example.org/%E1%BA%B9?a=b&c"},
		"mail":          {uri: "mailto:a@example.org"},
		"b@example.org": {uri: "mailto:b@example.org"},
	}
	if !cmp.Equal(got, want, cmp.AllowUnexported(target{})) {
		t.Error(cmp.Diff(want, got, cmp.AllowUnexported(target{})))
	}
	if at, ok := d.places["đường-may"]; !ok || at.page != 0 || at.y < d.body.Top-1 {
		t.Errorf("the heading is at %+v, %v", at, ok)
	}
}

func TestBookmarksNeverSkipALevel(t *testing.T) {
	d := set(t, "### a\n\n# b\n\n#### c\n\n## b\n\n###### d\n\n##### `e` *f*", Options{})
	type mark struct {
		title string
		level int
	}
	var got []mark
	for _, b := range d.bookmarks {
		got = append(got, mark{b.title, b.level})
	}
	want := []mark{{"a", 0}, {"b", 0}, {"c", 1}, {"b", 1}, {"d", 2}, {"e f", 3}}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	for _, id := range []string{"a", "b", "b-2", "c", "d"} {
		if _, ok := d.places[id]; !ok {
			t.Errorf("no place for %q among %v", id, d.places)
		}
	}
}

// ink counts the shapes on all pages that fit.
func ink(d *drawing, fits func(figure.Path) bool) int {
	n := 0
	for _, p := range d.pages {
		for _, it := range p.ink {
			if path, ok := it.(figure.Path); ok && fits(path) {
				n++
			}
		}
	}
	return n
}

func TestTickBoxesAreDrawn(t *testing.T) {
	d := set(t, "- [ ] a\n- [x] b\n- [X] c\n- d\n\n1. [ ] e", Options{})
	squares := ink(d, func(p figure.Path) bool { return p.Closed && p.Stroke.Width == 0.3 && len(p.Segments) == 3 })
	ticks := ink(d, func(p figure.Path) bool { return !p.Closed && len(p.Segments) == 2 })
	if squares != 4 || ticks != 2 {
		t.Errorf("%d boxes and %d ticks, want 4 and 2", squares, ticks)
	}
	if got, want := texts(d), []string{"a", "b", "c", "d", "1.", "e"}; !slices.Equal(got, want) {
		t.Errorf("words %q, want %q", got, want)
	}
}

func TestStripOnlyAfterAStepsHeading(t *testing.T) {
	strips := func(md string) int {
		d := set(t, md, Options{})
		return ink(d, func(p figure.Path) bool { return p.Closed && p.Fill.Tint == 0.09 })
	}
	for md, want := range map[string]int{
		"### a\n\n**b · c**\n\nd": 1,
		"### a\n\n*b*":            1,
		"### a\n\n**b** c":        0,
		"## a\n\n**b**":           0,
		"### a\n\nc\n\n**b**":     0,
	} {
		if got := strips(md); got != want {
			t.Errorf("%q: %d strips, want %d", md, got, want)
		}
	}
}

func TestAlignment(t *testing.T) {
	d := set(t, "| left | right | middle |\n|:--|--:|:-:|\n| a | b | c |\n| long long | long long | long long |", Options{})
	ends := map[string][2]float64{}
	for _, w := range shown(d) {
		ends[w.Text] = [2]float64{w.X, w.X + w.Width}
	}
	var long []words
	for _, w := range shown(d) {
		if w.Text == "long long" {
			long = append(long, w)
		}
	}
	same := func(what string, a, b float64) {
		if a-b > 1e-6 || b-a > 1e-6 {
			t.Errorf("%s: %v and %v", what, a, b)
		}
	}
	same("left edges", ends["a"][0], long[0].X)
	same("right edges", ends["b"][1], long[1].X+long[1].Width)
	same("middles", ends["c"][0]+ends["c"][1], 2*long[2].X+long[2].Width)
	same("the head's right edge", ends["right"][1], long[1].X+long[1].Width)
}

func TestWideTablesAreCondensedBeforeTheyWrap(t *testing.T) {
	row := func(words int) string {
		cell := strings.TrimSpace(strings.Repeat("seam ", words))
		return "| a | b | c |\n|--|--|--|\n| " + cell + " | " + cell + " | " + cell + " |"
	}
	var last words
	for n := 1; n < 30; n++ {
		cells := 0
		for _, w := range shown(set(t, row(n), Options{})) {
			if strings.HasPrefix(w.Text, "seam") {
				last = w
				cells++
			}
		}
		if cells > 3 {
			if last.Style&typeface.Condensed == 0 {
				t.Errorf("%d words a cell are broken into lines in the wide face", n)
			}
			return
		}
	}
	t.Error("no cell was broken")
}

func TestFigures(t *testing.T) {
	m := &typeface.Faces{}
	fig := figure.Fit("f", "a figure", []figure.Item{
		figure.Rect(figure.Point{}, 300, 20, figure.Stroke{Width: 0.5}, figure.Fill{}),
		figure.Text{At: figure.Point{X: 5, Y: 10}, Size: 4, Words: "inside"},
		figure.Text{At: figure.Point{X: 150, Y: 10}, Size: 4, Words: "turned", Turn: 90, Anchor: figure.Middle},
	}, 0, m)
	small := figure.Fit("s", "a small one", []figure.Item{figure.Circle{Radius: 4, Fill: figure.Fill{Hatch: figure.Rising}}}, 0, m)
	o := Options{Figures: map[string]figure.Figure{"f": fig, "s": small}}
	d := set(t, "![alt](f)\n\nsome ![alt](s) words\n\n| ![alt](s) |\n|--|\n| ![alt](none) |", o)
	if got, want := texts(d), []string{"inside", "turned", "some ", " words", "alt"}; !slices.Equal(got, want) {
		t.Errorf("words %q, want %q", got, want)
	}
	for _, p := range d.pages {
		for _, it := range p.ink {
			path, ok := it.(figure.Path)
			if !ok {
				continue
			}
			b := figure.Bounds([]figure.Item{path}, m)
			if b.Left < d.body.Left-0.3 || b.Right > d.body.Right+0.3 {
				t.Errorf("ink at %+v leaves the body %+v", b, d.body)
			}
		}
	}
	// 176 mm of room for 300.5 mm: the type shrinks by that much.
	if got, want := shown(d)[0].Size, 4*176/300.5; got < want-1e-6 || got > want+1e-6 {
		t.Errorf("type in the scaled figure is %v mm, want %v", got, want)
	}
}
