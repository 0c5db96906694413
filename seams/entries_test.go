package seams_test

import (
	"strings"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
)

// Every entry, read again by itself as a one-entry file, must be the entry.
func TestEntriesReadBackAsThemselves(t *testing.T) {
	for _, kind := range []string{"cloth", "stitch", "machine", "construction", "needle", "thread", "interfacing", "act", "caution"} {
		entries, err := seams.Entries(kind)
		if err != nil {
			t.Fatal(err)
		}
		if len(entries) == 0 {
			t.Errorf("no entries of kind %s", kind)
		}
		for _, e := range entries {
			if e.Name == "" || e.Source == "" {
				t.Errorf("%s at %s: name %q, source %q", kind, e.Place, e.Name, e.Source)
			}
			root, err := form.Parse("one.yaml", []byte(e.Text))
			if err != nil {
				t.Errorf("%s %s: %v\n%s", kind, e.Name, err, e.Text)
				continue
			}
			if name, _ := root.At(kind).Text(); name.Value != e.Name {
				t.Errorf("%s %s reads back as %q", kind, e.Name, name.Value)
			}
			if source, _ := root.At("source").Text(); source.Value != e.Source {
				t.Errorf("%s %s: source reads back as %q", kind, e.Name, source.Value)
			}
		}
	}
}

func TestEntriesOwnWinsByName(t *testing.T) {
	own := seams.File{Name: "mine.yaml", Data: []byte("- cloth: silk-georgette\n  title: My georgette\n  source: weighed on the kitchen scale\n")}
	entries, err := seams.Entries("cloth", own)
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, e := range entries {
		if e.Name == "silk-georgette" {
			count++
			if !e.Own || e.Title != "My georgette" || !strings.HasPrefix(e.Place.String(), "mine.yaml:1") {
				t.Errorf("got %+v", e)
			}
		}
	}
	if count != 1 {
		t.Errorf("silk-georgette stands %d times", count)
	}
}
