package pdf

import (
	"slices"
	"strings"
	"testing"

	"bodkin/sheets/pdf/typeface"

	"pgregory.net/rapid"
)

// broken are the lines of one paragraph in a column as wide as the measure's
// words.
func broken(text, measure string) []string {
	t := &typesetter{}
	l := look{size: 4}
	var out []string
	for _, ln := range t.lines(t.clusters([]span{{text: text}}, l, struct{ X, Y float64 }{50, 50}), t.width(l, measure)) {
		out = append(out, ln.text())
	}
	return out
}

func TestLineBreaks(t *testing.T) {
	for _, c := range []struct {
		what, text, measure string
		want                []string
	}{
		{"spaces", "aaa bbb ccc", "aaa bbb", []string{"aaa bbb", "ccc"}},
		{"all fits", "aaa bbb", "aaa bbb", []string{"aaa bbb"}},
		{"no break at a no-break space", "aaa bbb\u00a0ccc", "aaa bbb", []string{"aaa", "bbb\u00a0ccc"}},
		{"nor at a narrow one", "aaa bbb\u202fccc", "aaa bbb", []string{"aaa", "bbb\u202fccc"}},
		{"a soft hyphen shows where it breaks", "aa top\u00adstitch", "aa top-", []string{"aa top-", "stitch"}},
		{"and only there", "top\u00adstitch aa", "topstitch", []string{"topstitch", "aa"}},
		{"no room for the hyphen", "aa top\u00adstitch", "aa top", []string{"aa", "top-", "stitch"}},
		{"a hyphen between letters", "flat-felled", "felled", []string{"flat-", "felled"}},
		{"not a minus", "aaa -5", "aaa -", []string{"aaa", "-5"}},
		{"a zero-width space", "aaa\u200bbbb", "aaab", []string{"aaa", "bbb"}},
		{"a long word as a last resort", "aaaaaaa", "aaa", []string{"aaa", "aaa", "a"}},
		{"a mark stays with its letter", "ẹ̀ẹ̀ẹ̀ẹ̀", "ẹẹẹ", []string{"ẹ̀ẹ̀ẹ̀", "ẹ̀"}},
		{"one letter a line at the least", "ab", "i", []string{"a", "b"}},
		{"a figure keeps its unit", "turn 6 mm in", "turn 6", []string{"turn", "6 mm", "in"}},
		{"a number and a word part", "turn 6 pins", "turn 6", []string{"turn 6", "pins"}},
		{"nothing", " \n ", "a", nil},
	} {
		if got := broken(c.text, c.measure); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.what, got, c.want)
		}
	}
}

func TestLinesFitAndLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("aimW ẹ̀\u00ad\u00a0-–½8")), 0, 120, -1).Draw(t, "text")
		room := rapid.Float64Range(5, 60).Draw(t, "room")
		ts := &typesetter{}
		l := look{size: 4}
		var all strings.Builder
		for _, ln := range ts.lines(ts.clusters([]span{{text: text}}, l, struct{ X, Y float64 }{50, 50}), room) {
			if ln.width > room+1e-3 {
				t.Fatalf("%q is %v wide in %v", ln.text(), ln.width, room)
			}
			if w := ts.faces.Width(typeface.Style(0), ln.text(), 4); w-ln.width > 1e-6 || ln.width-w > 1e-6 {
				t.Fatalf("%q says it is %v wide and is %v", ln.text(), ln.width, w)
			}
			words := ln.text()
			if ln.hyphen {
				words = strings.TrimSuffix(words, "-")
			}
			all.WriteString(words)
		}
		drop := strings.NewReplacer(" ", "", "\u00ad", "")
		if got, want := drop.Replace(all.String()), drop.Replace(text); got != want {
			t.Fatalf("%q became %q", want, got)
		}
	})
}
