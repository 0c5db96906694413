package form_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/seams/form"
	"bodkin/seams/length"
)

// tool is a form with every kind of field.
type tool struct {
	Name   string                `yaml:"tool,required"`
	Kind   string                `yaml:"kind" oneof:"blade needle iron"`
	Width  length.MM             `yaml:"width"`
	Count  int                   `yaml:"count"`
	Weight float64               `yaml:"weight"`
	Sharp  bool                  `yaml:"sharp"`
	When   form.Text             `yaml:"when"`
	Sizes  form.Pairs[form.Text] `yaml:"sizes"`
	Spans  form.Pairs[length.MM] `yaml:"spans"`
	Uses   []string              `yaml:"uses"`
	Case   *box                  `yaml:"case"`
	Grid   [][]form.Text         `yaml:"grid"`
	Rest   *form.Node            `yaml:"rest"`
	At     form.Place            `yaml:",place"`
}

type box struct {
	Long length.MM `yaml:"long"`
}

func TestDecode(t *testing.T) {
	data := "\xef\xbb\xbf# a drawer\r\n- tool: shears\r\n  kind: blade\r\n  width: 1 5/8 in\r\n  count: 2\r\n  weight: 1.5\r\n  sharp: true\r\n" +
		"  when: 'cloth.fibre == ''silk'''\r\n  sizes: {second: 6, first: \"a + 1\"}\r\n  spans:\r\n    long: 30 cm\r\n    short: 5 mm\r\n" +
		"  uses: [cut, \"301\"]\r\n  case: {long: 20 cm}\r\n  grid: [[1, x], [2]]\r\n  rest: [a]\r\n"
	var got []tool
	if err := form.Decode("drawer.yaml", []byte(data), &got); err != nil {
		t.Fatal(err)
	}
	at := func(line, column int) form.Place { return form.Place{File: "drawer.yaml", Line: line, Column: column} }
	text := func(v string, line, column int) form.Text { return form.Text{Value: v, At: at(line, column)} }
	want := []tool{{
		Name: "shears", Kind: "blade", Width: 41.275, Count: 2, Weight: 1.5, Sharp: true,
		When: text("cloth.fibre == 'silk'", 8, 9),
		Sizes: form.Pairs[form.Text]{
			{Key: text("second", 9, 11), Value: text("6", 9, 19)}, {Key: text("first", 9, 22), Value: text("a + 1", 9, 29)}},
		Spans: form.Pairs[length.MM]{{Key: text("long", 11, 5), Value: 300}, {Key: text("short", 12, 5), Value: 5}},
		Uses:  []string{"cut", "301"}, Case: &box{Long: 200},
		Grid: [][]form.Text{{text("1", 15, 11), text("x", 15, 14)}, {text("2", 15, 19)}},
		At:   at(2, 3),
	}}
	ignoreRest := cmp.FilterPath(func(p cmp.Path) bool { return p.Last().String() == ".Rest" }, cmp.Ignore())
	if d := cmp.Diff(want, got, ignoreRest); d != "" {
		t.Error(d)
	}
	if got[0].Rest == nil || !got[0].Rest.IsList() || len(got[0].Rest.Items()) != 1 {
		t.Errorf("rest is %+v", got[0].Rest)
	}
	if v, ok := got[0].Sizes.Get("first"); !ok || v.Value != "a + 1" {
		t.Errorf("sizes first is %v, %v", v, ok)
	}
	if d := cmp.Diff([]string{"second", "first"}, got[0].Sizes.Keys()); d != "" {
		t.Error(d)
	}
}

func TestDefaultsStay(t *testing.T) {
	got := tool{Count: 7, Case: &box{Long: 5}}
	mine := got.Case
	if err := form.Decode("f", []byte("tool: pins\ncase: {}\n"), &got); err != nil {
		t.Fatal(err)
	}
	if got.Count != 7 || got.Name != "pins" || got.Case.Long != 5 || got.Case == mine {
		t.Errorf("got %+v, case %+v", got, got.Case)
	}
}

// The rows that a lenient reader takes silently come from trying them: an
// unquoted "!" read as a tag, 2.5 cut to 2, 010 read as 8, 1_000, ~.
func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name, data string
		want       []string // file:line:col: message; did you mean; mend (parts, in order)
	}{
		{"unknown keys, all of them", "tool: a\nknd: blade\nwidht: 1 mm\nzzz: 1\n", []string{
			`f:2:1: unknown key "knd"; did you mean "kind"?`, `f:3:1: unknown key "widht"; did you mean "width"?`,
			`f:4:1: unknown key "zzz"; the keys here are tool, kind, width`}},
		{"duplicate key", "tool: a\ntool: b\n", []string{`f:2:1: the key "tool" stands here twice; keep one of the two; the first is on line 1`}},
		{"duplicate in braces", "tool: a\nsizes: {b: 1, b: 2}\n", []string{`f:2:15: the key "b" stands here twice`}},
		{"tag", "tool: a\nwhen: !x.y('5')\n", []string{`f:2:7: an exclamation mark at the start`}},
		{"anchor", "tool: &a b\n", []string{`f:1:7: an ampersand`}},
		{"alias", "tool: a\nkind: *a\n", []string{`f:2:7: an asterisk`}},
		{"merge", "tool: a\n<<: {kind: blade}\n", []string{`f:2:1: << merges`}},
		{"complex key", "? tool\n: a\n", []string{`f:1:1: a key is missing or is not a plain word`}},
		{"directive", "%YAML 1.2\n---\ntool: a\n", []string{`f:1:1: a line that starts with %`, `f:3:1: a second document`}},
		{"leading zero", "tool: a\ncount: 010\n", []string{`f:2:8: a number with a leading zero`}},
		{"leading zero in a formula", "tool: a\nwhen: 010\n", []string{`f:2:7: a number with a leading zero`}},
		{"underscore", "tool: a\ncount: 1_000\n", []string{`f:2:8: a number with an underscore; write 1000`}},
		{"hex", "tool: a\ncount: 0x1F\n", []string{`f:2:8: a number that is not decimal`}},
		{"octal", "tool: a\ncount: 0o17\n", []string{`f:2:8: a number that is not decimal`}},
		{"infinity", "tool: a\nweight: .inf\n", []string{`f:2:9: this is not a number that can be sewn`}},
		{"nan", "tool: a\nweight: .nan\n", []string{`f:2:9: this is not a number that can be sewn`}},
		{"exponent", "tool: a\nweight: 1e3\n", []string{`f:2:9: a number is wanted here, not "1e3"`}},
		{"comma", "tool: a\nweight: 1,5\n", []string{`f:2:9: a number has a comma; write a decimal with a point: 1.5`}},
		{"bare point", "tool: a\nweight: .5\n", []string{`f:2:9: a number needs figures on both sides`}},
		{"huge", "tool: a\ncount: 99999999999999999999\n", []string{`f:2:8: 99999999999999999999 is too large`}},
		{"fraction for whole", "tool: a\ncount: 2.5\n", []string{`f:2:8: a whole number is wanted here, not 2.5`}},
		{"quoted number", "tool: a\nweight: \"8\"\n", []string{`f:2:9: a number is wanted here, not text in quotes; write 8 without quotes`}},
		{"number for text", "tool: 301\n", []string{`f:1:7: text is wanted here, not 301; put it in quotes: "301"`}},
		{"truth for text", "tool: true\n", []string{`f:1:7: text is wanted here, not true`}},
		{"tilde", "tool: ~\n", []string{`f:1:1: a value is missing here`}},
		{"no value", "tool: a\nkind:\n", []string{`f:2:1: a value is missing here`}},
		{"missing", "kind: blade\n", []string{`f:1:1: the key "tool" is missing`}},
		{"empty", "tool: \" \"\n", []string{`f:1:7: the value of "tool" is empty`}},
		{"closed list", "tool: a\nkind: nedle\n", []string{`f:2:7: "nedle" is not one of blade, needle, iron; did you mean "needle"?`}},
		{"yes", "tool: a\nsharp: yes\n", []string{`f:2:8: true or false is wanted here, not "yes"; did you mean "true"?`}},
		{"list wanted", "tool: a\nuses: cut\n", []string{`f:2:7: a list is wanted here, not "cut"; write [cut]`}},
		{"words wanted", "tool: a\nkind: [blade]\n", []string{`f:2:7: text is wanted here, not a list`}},
		{"braces for words", "tool: {size}\n", []string{`f:1:7: text is wanted here, not keys and values; where words start`}},
		{"keys wanted", "tool: a\ncase: big\n", []string{`f:2:7: keys with values are wanted here, not "big"; the keys are long`}},
		{"keys wanted in pairs", "tool: a\nsizes: [1]\n", []string{`f:2:8: keys with values are wanted here, not a list`}},
		{"length without unit", "tool: a\nwidth: 92\n", []string{`f:2:8: "92" has no unit; add a unit, such as 92 mm`}},
		{"length with a wrong unit", "tool: a\nspans: {b: 2 inchs}\n", []string{`f:2:12: "2 inchs" has an unknown unit "inchs"; did you mean "in"?`}},
		{"second document", "tool: a\n---\ntool: b\n", []string{`f:3:1: a second document starts here`}},
		{"nothing", "", []string{`f:1:1: the file holds nothing`}},
		{"comments only", "# nothing\n", []string{`f:1:1: the file holds nothing`}},
		{"nul", "tool: a\x00\n", []string{`f:1:8: an invisible control character (U+0000)`}},
		{"escape", "tool: a\n# \x1b[31m\n", []string{`f:2:3: an invisible control character (U+001B)`}},
		{"utf-8", "tool: \"é\xff\"\n", []string{`f:1:9: a byte here is not UTF-8`}},
		{"lone return", "tool: a\rkind: blade\n", []string{`f:1:8: a carriage return stands alone`}},
		{"tab", "sizes:\n\ta: 1\n", []string{`f:2:1: a tab stands at the start of this line; indent with spaces`}},
		{"second colon", "tool: a: b\n", []string{`f:1:7: a second colon on this line`}},
		{"open bracket", "uses: [a\n", []string{`f:1:7: this list is opened with [ and never closed`}},
		{"open quote", "tool: 'a\n", []string{`f:1:7: this quote is never closed`}},
		{"at sign", "tool: @a\n", []string{`f:1:7: words may not start with this sign`}},
		{"many at once, in order", "count: x\nkind: q\nsharp: 1\n", []string{
			`f:1:1: the key "tool" is missing`, `f:1:8: a number is wanted`, `f:2:7: "q" is not one of`, `f:3:8: true or false`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := tool{Name: "before"}
			err := form.Decode("f", []byte(c.data), &got)
			fs, ok := errors.AsType[form.Faults](err)
			if !ok {
				t.Fatalf("no faults: %v, %+v", err, got)
			}
			if got.Name != "before" || got.Kind != "" || got.Uses != nil {
				t.Errorf("half filled: %+v", got)
			}
			for i, f := range fs {
				if i >= len(c.want) {
					t.Errorf("also: %v", f)
				} else if !strings.HasPrefix(f.Error(), c.want[i]) {
					t.Errorf("fault %d is\n%v\nwant\n%s", i, f, c.want[i])
				}
			}
			if len(fs) < len(c.want) {
				t.Errorf("%d faults, want %d", len(fs), len(c.want))
			}
		})
	}
}

// Brackets inside quotes must not hide the depth of those outside.
func TestDepthAndSize(t *testing.T) {
	deep := func(n int) string { return strings.Repeat("[", n) + "1" + strings.Repeat("]", n) }
	for name, data := range map[string]string{
		"brackets":        deep(101),
		"very many":       strings.Repeat("[", 1<<19),
		"behind quotes":   strings.Repeat(`["]",`, 1<<17),
		"dashes":          strings.Repeat("- ", 1<<18) + "a",
		"question marks":  strings.Repeat("? ", 1<<18) + "a",
		"braces":          strings.Repeat("{a: ", 1<<17),
		"growing indent":  stairs(150),
		"more than 1 MiB": strings.Repeat("# x\n", 1<<18+1),
	} {
		if _, err := form.Parse("f", []byte(data)); err == nil {
			t.Errorf("%s: no fault", name)
		}
	}
	if _, err := form.Parse("f", []byte(deep(90))); err != nil {
		t.Errorf("ninety levels: %v", err)
	}
	if _, err := form.Parse("f", []byte("a: '"+strings.Repeat("[", 200)+"'")); err != nil {
		t.Errorf("brackets in words: %v", err)
	}
}

func stairs(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "%sa:\n", strings.Repeat(" ", i))
	}
	return b.String() + strings.Repeat(" ", n) + "b"
}

func TestShow(t *testing.T) {
	var got tool
	err := form.Decode("job.yaml", []byte("tool: a\nsizes:\n  first: 6\nknd: blade  # é\n"), &got)
	want := "job.yaml:4:1: unknown key \"knd\"\n    knd: blade  # é\n    ^~~\n  did you mean \"kind\"?"
	if d := cmp.Diff(want, err.Error()); d != "" {
		t.Error(d)
	}
	err = form.Decode("job.yaml", []byte("tool: a\nwidth: 'à 6 qq'\n"), &got)
	want = "job.yaml:2:8: \"à 6 qq\" does not start with a number\n    width: 'à 6 qq'\n           ^~~~~~~~\n  write a number and a unit, such as 15 mm"
	if d := cmp.Diff(want, err.Error()); d != "" {
		t.Error(d)
	}
	long := "tool: a\nuses: [" + strings.Repeat("word, ", 100) + "~]\n"
	err = form.Decode("job.yaml", []byte(long), &got)
	for line := range strings.Lines(err.Error()) {
		if n := len([]rune(line)); n > 170 {
			t.Errorf("a line of %d characters: %s", n, line)
		}
	}
	many := "tool: a\n"
	for i := range 50 {
		many += fmt.Sprintf("zz%d: 1\n", i)
	}
	if s := form.Decode("job.yaml", []byte(many), &got).Error(); !strings.HasSuffix(s, "and 30 more") {
		t.Errorf("fifty faults end in %q", s[len(s)-40:])
	}
}

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

func TestNode(t *testing.T) {
	n, err := form.Parse("f", []byte("- tool: a\n  uses: [x, y]\n- tool: b\n"))
	if err != nil {
		t.Fatal(err)
	}
	if got := n.At(0, "uses", 1).Place(); got.Line != 2 || got.Column != 13 {
		t.Errorf("uses[1] stands at %v", got)
	}
	if got := n.At(1, "uses", 1).Place(); got.Line != 3 {
		t.Errorf("a missing path gives %v, want its entry", got)
	}
	if got := n.Items()[0].Keys(); len(got) != 2 || got[1].Value != "uses" {
		t.Errorf("keys %v", got)
	}
	f := n.At(0, "uses", 0).Fault("is blunt", "", "whet it")
	if f.SourceLine != "  uses: [x, y]" || f.Column != 10 {
		t.Errorf("fault %+v", f)
	}
}

type either struct{ one, two string }

func (e *either) ReadForm(n *form.Node) error {
	if t, ok := n.Text(); ok {
		e.one = t.Value
		return nil
	}
	var b struct {
		Two string `yaml:"two,required"`
	}
	if err := n.Decode(&b); err != nil {
		return err
	}
	e.two = b.Two
	return nil
}

func TestFormReader(t *testing.T) {
	var got struct {
		A either `yaml:"a"`
		B either `yaml:"b"`
	}
	if err := form.Decode("f", []byte("a: x\nb: {two: y}\n"), &got); err != nil || got.A.one != "x" || got.B.two != "y" {
		t.Errorf("%+v, %v", got, err)
	}
	err := form.Decode("f", []byte("a: x\nb: {tow: y}\n"), &got)
	if fs, ok := errors.AsType[form.Faults](err); !ok || len(fs) != 2 || fs[1].Nearest != "two" || fs[1].Line != 2 {
		t.Errorf("faults %v", err)
	}
}

func TestNearest(t *testing.T) {
	words := []string{"binding", "binder", "hem", "casing", "facing"}
	for word, want := range map[string]string{
		"bidning": "binding", "hme": "hem", "Hem": "hem", "cacing": "casing", "zipper": "", "": "", "bindr": "binder", "x": "",
	} {
		if got := form.Nearest(word, words); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}

func FuzzDecode(f *testing.F) {
	for _, s := range []string{
		"tool: a\nkind: blade\nwidth: 1 5/8 in\n", "- tool: a\n", "sizes: {a: 1, b: 'x'}\n", "a: &b [*b]\n", "a: !t x\n", "when: |\n  a\n   b\n",
		"? x\n: y\n", "---\na\n---\nb\n", "k: \"\\u00e9\\\n x\"\n", "uses: [[[", "k: >-\n\n\n  a\n\n  b\n", "tool: 'é''", "<<: 1", "- - - a",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		for _, into := range []any{new(tool), new([]tool), new(form.Pairs[form.Text]), new([]form.Text)} {
			err := form.Decode("f", data, into)
			if err == nil {
				continue
			}
			fs, ok := errors.AsType[form.Faults](err)
			if !ok || len(fs) == 0 {
				t.Fatalf("an error that is not faults: %v", err)
			}
			switch v := into.(type) {
			case *tool:
				if v.Name != "" || v.Uses != nil || v.Sizes != nil || v.At.Line != 0 {
					t.Fatalf("half filled: %+v", v)
				}
			case *[]tool:
				if *v != nil {
					t.Fatalf("half filled: %+v", v)
				}
			case *form.Pairs[form.Text]:
				if *v != nil {
					t.Fatalf("half filled: %+v", v)
				}
			}
			for _, fault := range fs {
				if fault.Line < 1 || fault.Column < 1 || fault.Message == "" {
					t.Fatalf("a fault without place or words: %+v", fault)
				}
			}
			_ = err.Error()
		}
		var texts form.Pairs[form.Text]
		if form.Decode("f", data, &texts) == nil {
			for _, p := range texts {
				for i := range len([]rune(p.Value.Value)) + 1 {
					if at := p.Value.Place(i); at.Line < 1 || at.Column < 1 {
						t.Fatalf("character %d of %q stands at %v", i, p.Value.Value, at)
					}
				}
			}
		}
	})
}
