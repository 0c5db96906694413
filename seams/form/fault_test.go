package form_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/seams/form"
)

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

func TestWithSource(t *testing.T) {
	data := []byte("\xef\xbb\xbfmake: x\r\nsize: {bust: 9 cm}\r\n")
	fs := form.Faults{
		form.FaultAt(form.Place{File: "job.yaml", Line: 2, Column: 14}, "a bust is from 60 to 160 cm", "", ""),
		form.FaultAt(form.Place{File: "room.yaml", Line: 1, Column: 1}, "elsewhere", "", ""),
		form.FaultAt(form.Place{File: "job.yaml", Line: 9, Column: 1}, "beyond the end", "", ""),
	}
	got := fs.WithSource("job.yaml", data)
	if got[0].SourceLine != "size: {bust: 9 cm}" || got[1].SourceLine != "" || got[2].SourceLine != "" || fs[0].SourceLine != "" {
		t.Errorf("%+v, of %+v", got, fs)
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
