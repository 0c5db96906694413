package form_test

import (
	"strings"
	"testing"

	"bodkin/seams/form"
)

func TestTextPlace(t *testing.T) {
	for _, c := range []struct {
		data, at     string
		line, column int
	}{
		{"k: a + bb\n", "bb", 1, 8},
		{"k: 'a + bb'\n", "bb", 1, 9},
		{"k: 'x(''q'') + bb'\n", "bb", 1, 16},
		{"k: \"x(\\\"q\\\") + bb\"\n", "bb", 1, 16},
		{"k: \"\\u00e9 + bb\"\n", "bb", 1, 14},
		{"k: 'é + bb'\n", "bb", 1, 9},
		{"k: |\n  a +\n  bb\n", "bb", 3, 3},
		{"k: |\n  a +\n    bb\n", "bb", 3, 5},
		{"k: >\n  a +\n  bb\n", "bb", 3, 3},
		{"k: a\n  + bb\n", "bb", 2, 5},
		{"k: 'a\n  + bb'\n", "bb", 2, 5},
		{"k: 'a\n\n  + bb'\n", "bb", 3, 5},
		{"k: \"a \\\n  + bb\"\n", "bb", 2, 5},
		{"j: 1\nk:   bb\n", "bb", 2, 6},
		{"k: |-\n  bb\n", "bb", 2, 3},
		{"k: [1, bb]\n", "", 0, 0},
	} {
		n, err := form.Parse("f", []byte(c.data))
		if err != nil {
			t.Fatal(err)
		}
		text, ok := n.At("k").Text()
		if c.at == "" {
			if ok {
				t.Errorf("%q is taken for a scalar", c.data)
			}
			continue
		}
		i := strings.Index(text.Value, c.at)
		if i < 0 {
			t.Fatalf("%q reads as %q", c.data, text.Value)
		}
		got := text.Place(len([]rune(text.Value[:i])))
		if got.Line != c.line || got.Column != c.column {
			t.Errorf("%q: %q stands at %v, want %d:%d", c.data, c.at, got, c.line, c.column)
		}
	}
}
