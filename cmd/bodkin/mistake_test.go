package main

import (
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
)

func TestMistakes(t *testing.T) {
	circular := read(t, "testdata/circular.yaml")
	for _, m := range wrongInputs() {
		t.Run(m.name, func(t *testing.T) {
			alone(t)
			files := map[string]string{"job.yaml": goodJob, "workroom.yaml": goodRoom, "circular.yaml": circular, "out.pdf": "an earlier sheet"}
			maps.Copy(files, m.files)
			write(t, files)
			if m.env[0] != "" {
				t.Setenv(m.env[0], m.env[1])
			}
			args := m.args
			if args == "" {
				args = "plan job.yaml -o out.pdf"
			}
			before := listing(t)
			got := call(t.Context(), "", strings.Fields(args)...)
			t.Log("\n" + got.err)
			if got.code != m.code {
				t.Errorf("exit code %d, want %d", got.code, m.code)
			}
			if got.out != "" {
				t.Errorf("standard output is not empty: %q", got.out)
			}
			if !strings.HasPrefix(got.err, m.at) {
				t.Errorf("it does not begin with %q", m.at)
			}
			if n := strings.Count(got.err, ".yaml:"); m.faults > 0 && n != m.faults {
				t.Errorf("%d faults are told, want %d", n, m.faults)
			}
			for _, w := range m.words {
				if !strings.Contains(got.err, w) {
					t.Errorf("%q is not said", w)
				}
			}
			plainWords(t, got.err)
			if d := cmp.Diff(before, listing(t)); d != "" {
				t.Errorf("files changed (-before +after):\n%s", d)
			}
		})
	}
}

// TestGoodInput makes sure that the rows of the table are wrong by their change
// alone.
func TestGoodInput(t *testing.T) {
	alone(t)
	write(t, map[string]string{"job.yaml": goodJob, "workroom.yaml": goodRoom, "square.yaml": squareGarment, "s.yaml": squareJob})
	must(t, "plan", "job.yaml", "-o", "out.pdf")
	must(t, "plan", "s.yaml", "-o", "square.pdf")
}

// A file that may not be read.
func TestUnreadable(t *testing.T) {
	alone(t)
	write(t, map[string]string{"job.yaml": goodJob})
	asOrdinaryUser(t)
	if err := os.Chmod("job.yaml", 0); err != nil {
		t.Fatal(err)
	}
	got := call(t.Context(), "", "plan", "job.yaml")
	if got.code != exitInput || got.err != "bodkin: cannot read job.yaml: permission denied\n" {
		t.Errorf("exit code %d: %s", got.code, got.err)
	}
}

var place = regexp.MustCompile(`^(bodkin|[^ :]+\.yaml(:\d+:\d+)?): `)

// plainWords holds messages to the form they all have: a place or our name,
// small letters, no full stop, the hint on a line of its own, no Go in it.
func plainWords(t *testing.T, text string) {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	if !place.MatchString(lines[0]) {
		t.Errorf("neither a place nor our name before %q", lines[0])
	}
	for _, l := range lines {
		if strings.HasPrefix(l, "    ") {
			continue // a line of the maker's
		}
		said := []rune(strings.TrimPrefix(strings.TrimSpace(place.ReplaceAllString(l, "")), "Sleeveless top with bust darts ")) // a name
		if len(said) == 0 {
			t.Errorf("an empty line in %q", text)
			continue
		}
		if strings.HasSuffix(l, ".") {
			t.Errorf("a full stop at the end of %q", l)
		}
		if unicode.IsUpper(said[0]) && !strings.HasPrefix(l, "  ") && !strings.HasPrefix(string(said), "BODKIN_") {
			t.Errorf("a capital at the start of %q", l)
		}
	}
	for _, w := range []string{"%!", "<nil>", "goroutine", "strconv", "arg(s)", "interface", "0x"} {
		if strings.Contains(text, w) {
			t.Errorf("%q in %q", w, text)
		}
	}
}

// listing is every file and folder under the working folder, files with what
// they hold.
func listing(t *testing.T) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			all[name] = "folder"
			return err
		}
		data, err := os.ReadFile(name)
		all[name] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}
