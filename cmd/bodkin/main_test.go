package main

import (
	"bytes"
	"context"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite what the scripts compare with, and give the plans that the sheets are tried on the keys that have come since")

func TestMain(m *testing.M) {
	thriftless() // as main does, since most tests call run in this process
	testscript.Main(m, map[string]func(){"bodkin": main})
}

// TestScripts runs the program as a maker does, in an empty home.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Setup: func(e *testscript.Env) error {
			for _, v := range e.Vars {
				if name, _, _ := strings.Cut(v, "="); strings.HasPrefix(name, "BODKIN_") {
					e.Setenv(name, "")
				}
			}
			home := filepath.Join(e.WorkDir, "home")
			e.Setenv("HOME", home)
			e.Setenv("XDG_CONFIG_HOME", filepath.Join(home, ".config"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"leftovers": leftovers},
	})
}

// leftovers fails where a folder holds a file on its way to the disk.
func leftovers(ts *testscript.TestScript, neg bool, folders []string) {
	for _, folder := range folders {
		found, err := filepath.Glob(filepath.Join(ts.MkAbs(folder), ".bodkin-*"))
		ts.Check(err)
		if (len(found) > 0) != neg {
			ts.Fatalf("left in %s: %v", folder, found)
		}
	}
}

// alone puts a test into an empty folder, with an empty home and no variables
// of ours.
func alone(t testing.TB) {
	t.Helper()
	for _, v := range os.Environ() {
		if name, _, _ := strings.Cut(v, "="); strings.HasPrefix(name, "BODKIN_") {
			t.Setenv(name, "")
		}
	}
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("XDG_CONFIG_HOME", filepath.Join(home, ".config"))
	t.Chdir(t.TempDir())
}

// write puts files into the working folder.
func write(t testing.TB, files map[string]string) {
	t.Helper()
	for name, text := range files {
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// said is what a run came to.
type said struct {
	code     int
	out, err string
}

// call runs the program in this process.
func call(ctx context.Context, stdin string, args ...string) said {
	var out, errs bytes.Buffer
	code := run(ctx, args, streams{in: strings.NewReader(stdin), out: &out, err: &errs})
	return said{code, out.String(), errs.String()}
}

// complaint is what stands on standard error besides how the search goes, which
// a slow machine tells and a quick one does not.
func (s said) complaint() string {
	var b strings.Builder
	for line := range strings.Lines(s.err) {
		if !strings.HasPrefix(line, "bodkin: looking for the best order") {
			b.WriteString(line)
		}
	}
	return b.String()
}

// must runs the program in this process and wants it done without a complaint.
func must(t testing.TB, args ...string) string {
	t.Helper()
	r := call(t.Context(), "", args...)
	if r.code != exitDone || r.complaint() != "" {
		t.Fatalf("bodkin %s: exit code %d\n%s", strings.Join(args, " "), r.code, r.err)
	}
	return r.out
}

// completions runs the program as a shell does to complete a word; cobra tells
// its directive on standard error too.
func completions(t testing.TB, args ...string) string {
	t.Helper()
	r := call(t.Context(), "", args...)
	if r.code != exitDone {
		t.Fatalf("bodkin %s: exit code %d\n%s", strings.Join(args, " "), r.code, r.err)
	}
	return r.out
}

func read(t testing.TB, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// never is a reader that gives nothing and does not end, as a terminal where
// nobody types.
type never struct{ until <-chan struct{} }

func (n never) Read([]byte) (int, error) {
	<-n.until
	return 0, io.EOF
}
