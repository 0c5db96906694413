package sheets

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/process"
	"bodkin/sheets/sheettest"
)

var update = flag.Bool("update", false, "rewrite the golden sheets")

// fixtures are the plans in testdata, by name.
func fixtures(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("testdata/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no plans in testdata (%v)", err)
	}
	for i, f := range files {
		files[i] = strings.TrimSuffix(filepath.Base(f), ".json")
	}
	return files
}

// fixture is a plan kept as JSON in testdata.
func fixture(t testing.TB, name string) *process.Plan {
	t.Helper()
	return sheettest.Kept(t, filepath.Join("testdata", name+".json"))
}

func TestGoldenSheets(t *testing.T) {
	wanted := map[string]bool{}
	for _, name := range fixtures(t) {
		for _, c := range []struct {
			file string
			opts Options
		}{
			{name + ".cm.md", Options{Units: "cm", FiguresAt: "figures/"}},
			{name + ".in.md", Options{Units: "in"}},
		} {
			wanted[c.file] = true
			got := Compose(fixture(t, name), c.opts).Markdown
			path := filepath.Join("testdata", c.file)
			if *update {
				if err := os.WriteFile(path, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")); d != "" {
				t.Errorf("%s differs (go test ./sheets -update rewrites it):\n%s", c.file, d)
			}
		}
	}
	there, err := filepath.Glob("testdata/*.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range there {
		if !wanted[filepath.Base(f)] {
			t.Errorf("%s is made by no test", f)
		}
	}
}

func TestSamePlanSameBytes(t *testing.T) {
	for _, name := range fixtures(t) {
		a := Compose(fixture(t, name), Options{FiguresAt: "f/"})
		b := Compose(fixture(t, name), Options{FiguresAt: "f/"})
		if !bytes.Equal(a.Markdown, b.Markdown) {
			t.Errorf("%s: two sheets of one plan differ", name)
		}
		if d := cmp.Diff(a.Figures, b.Figures); d != "" {
			t.Errorf("%s: figures of one plan differ: %s", name, d)
		}
	}
}

// The plan is the caller's: composing must not change it.
func TestPlanIsLeftAlone(t *testing.T) {
	for _, name := range fixtures(t) {
		p := fixture(t, name)
		Compose(p, Options{FiguresAt: "f/"})
		if d := cmp.Diff(fixture(t, name), p); d != "" {
			t.Errorf("%s was changed: %s", name, d)
		}
	}
}

// Prose is broken so that the raw text reads well in 80 columns; only tables,
// headings and images keep to one line each.
func TestProseFitsTheWindow(t *testing.T) {
	for _, n := range plans(t) {
		for _, r := range Readers() {
			for i, line := range strings.Split(string(Compose(n.plan, Options{For: Reader(r), FiguresAt: "figures/"}).Markdown), "\n") {
				if strings.HasPrefix(line, "|") || strings.HasPrefix(line, "#") || strings.HasPrefix(line, "![") {
					continue
				}
				if columns(line) > lineWidth {
					t.Errorf("%s for %s, line %d is %d columns wide: %s", n.name, r, i+1, columns(line), line)
				}
				if strings.HasSuffix(line, " ") {
					t.Errorf("%s for %s, line %d ends in a space: %q", n.name, r, i+1, line)
				}
			}
		}
	}
}

// A placeholder that no value was given for would stand in the sheet.
func TestEveryPlaceholderIsFilled(t *testing.T) {
	for _, n := range plans(t) {
		for _, opts := range []Options{{}, {Units: "in", FiguresAt: "f/"}} {
			s := Compose(n.plan, opts)
			if i := bytes.IndexByte(s.Markdown, '{'); i >= 0 {
				t.Errorf("%s: %.60q", n.name, s.Markdown[max(i-20, 0):])
			}
			for _, d := range s.Figures {
				if svg := d.Figure.SVG(); bytes.ContainsAny(svg, "{}") {
					t.Errorf("%s: %s has a placeholder left", n.name, d.Address)
				}
			}
		}
	}
}
