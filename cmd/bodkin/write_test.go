package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// All files are written or none, and none is left on its way.
func TestWriteFiles(t *testing.T) {
	files := []file{{"out/sheet.md", []byte("new sheet")}, {"out/figures/a.svg", []byte("new a")}, {"out/figures/b.svg", []byte("new b")}}
	written := map[string]string{"out/sheet.md": "new sheet", "out/figures/a.svg": "new a", "out/figures/b.svg": "new b"}
	for _, tt := range []struct {
		name   string
		before map[string]string
		failed string            // the error, empty where all is written
		after  map[string]string // empty where it is as before
	}{
		{name: "nothing there", before: map[string]string{"out/note": "x"}, after: with(written, "out/note", "x")},
		{name: "all there", before: map[string]string{"out/sheet.md": "old", "out/figures/a.svg": "old", "out/figures/b.svg": "old", "out/figures/own.svg": "own"},
			after: with(written, "out/figures/own.svg", "own")},
		{name: "no folder", failed: "there is no folder out"},
		{name: "the sheet is a folder", before: map[string]string{"out/sheet.md/x": ""}, failed: "sheet.md: it is a folder"},
		{name: "a figure is a folder", before: map[string]string{"out/sheet.md": "old", "out/figures/b.svg/x": ""}, failed: "b.svg: it is a folder"},
		{name: "the figures are a file", before: map[string]string{"out/sheet.md": "old", "out/figures": "x"}, failed: "cannot write out/figures/a.svg"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			alone(t)
			write(t, tt.before)
			before := listing(t)
			err := writeFiles(files)
			switch {
			case tt.failed == "" && err != nil:
				t.Fatal(err)
			case tt.failed != "" && (err == nil || !strings.Contains(err.Error(), tt.failed)):
				t.Errorf("the error is %v", err)
			case tt.failed != "" && exitCode(err) != exitCouldNot:
				t.Errorf("the exit code is %d", exitCode(err))
			}
			after := listing(t)
			if tt.failed != "" {
				if d := cmp.Diff(before, after); d != "" {
					t.Errorf("(-before +after):\n%s", d)
				}
				return
			}
			for name, kind := range after {
				if kind == "folder" {
					delete(after, name)
				}
			}
			if d := cmp.Diff(tt.after, slashed(after)); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
		})
	}
}

func with(m map[string]string, name, text string) map[string]string {
	out := map[string]string{name: text}
	for k, v := range m {
		out[k] = v
	}
	return out
}

func slashed(m map[string]string) map[string]string {
	out := map[string]string{}
	for k, v := range m {
		out[filepath.ToSlash(k)] = v
	}
	return out
}

// Should placing fail half-way, what was replaced is put back.
func TestPlacingFailsHalfWay(t *testing.T) {
	alone(t)
	write(t, map[string]string{"sheet.md": "old sheet", "later/b": ""})
	before := listing(t)
	var b batch
	for _, f := range []file{{"sheet.md", []byte("new")}, {"fresh.svg", []byte("new")}, {"a.svg", []byte("new")}} {
		if err := b.add(f, true); err != nil {
			t.Fatal(err)
		}
	}
	b.files[2].target = "later" // a folder that is not empty came in between
	var failed error
	for i := range b.files {
		if failed = b.files[i].place(); failed != nil {
			break
		}
	}
	if failed == nil || !b.files[1].placed {
		t.Fatalf("the error is %v, and two are placed: %v", failed, b.files[1].placed)
	}
	if read(t, "sheet.md") != "new" {
		t.Fatal("the first was not placed, so there is nothing to put back")
	}
	b.end(failed)
	if d := cmp.Diff(before, listing(t)); d != "" {
		t.Errorf("(-before +after):\n%s", d)
	}
}

// A file keeps its mode, and a new one has that of the maker's other files.
func TestModes(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("modes are not kept there")
	}
	alone(t)
	write(t, map[string]string{"kept.json": "", "like": ""})
	if err := os.Chmod("kept.json", 0o640); err != nil {
		t.Fatal(err)
	}
	if err := writeFiles([]file{{"kept.json", []byte("{}")}}); err != nil {
		t.Fatal(err)
	}
	if err := writeFiles([]file{{"fresh.json", []byte("{}")}}); err != nil {
		t.Fatal(err)
	}
	if m := mode(t, "kept.json"); m != 0o640 {
		t.Errorf("the mode became %o", m)
	}
	if m, like := mode(t, "fresh.json"), mode(t, "like"); m != like {
		t.Errorf("the mode of a new file is %o, of others %o", m, like)
	}
}

func mode(t *testing.T, name string) fs.FileMode {
	t.Helper()
	info, err := os.Stat(name)
	if err != nil {
		t.Fatal(err)
	}
	return info.Mode().Perm()
}

// What is protected is neither replaced nor written beside.
func TestProtected(t *testing.T) {
	alone(t)
	write(t, map[string]string{"here/kept.json": "old", "shut/kept.json": "old"})
	asOrdinaryUser(t)
	for name, mode := range map[string]fs.FileMode{"here/kept.json": 0o444, "shut": 0o555} {
		if err := os.Chmod(name, mode); err != nil {
			t.Fatal(err)
		}
	}
	defer os.Chmod("shut", 0o777) // so that the folder can be removed
	before := listing(t)
	for _, name := range []string{"here/kept.json", "shut/kept.json", "shut/fresh.json"} {
		r := call(t.Context(), "", "plan", "-o", name)
		if r.code != exitCouldNot || r.complaint() != "bodkin: cannot write "+name+": permission denied\n" {
			t.Errorf("%s: exit code %d, %s", name, r.code, r.err)
		}
	}
	if d := cmp.Diff(before, listing(t)); d != "" {
		t.Errorf("(-before +after):\n%s", d)
	}
}
