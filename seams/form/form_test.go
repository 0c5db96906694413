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
	if fs, ok := errors.AsType[form.Faults](err); !ok || len(fs) != 1 || fs[0].Nearest != "two" || fs[0].Line != 2 {
		t.Errorf("faults %v", err)
	}
}
