package seams_test

import (
	"strings"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
)

// Every entry, read again by itself as a one-entry file, must be the entry.
func TestEntriesReadBackAsThemselves(t *testing.T) {
	shelf := load(t)
	for kind, want := range map[string]int{
		"cloth": len(shelf.Cloths), "stitch": len(shelf.Stitches), "machine": len(shelf.Machines), "construction": len(shelf.Constructions),
		"needle": len(shelf.Needles), "thread": len(shelf.Threads), "interfacing": len(shelf.Interfacings), "tool": len(shelf.Tools),
		"pressing": len(shelf.Pressing), "act": len(shelf.Acts), "caution": len(shelf.Cautions), "stay": len(shelf.Stays),
	} {
		entries, err := seams.Entries(kind)
		if err != nil {
			t.Fatal(err)
		}
		if len(entries) != want {
			t.Errorf("%d entries of kind %s, and the shelf has %d", len(entries), kind, want)
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

// A comment keeps its sign wherever it stands, and one between two entries
// belongs to the second, even in column 1.
func TestEntriesKeepComments(t *testing.T) {
	own := seams.File{Name: "mine.yaml", Data: []byte(`# A head.
- cloth: first
  title: First
# within, in the first column
  # within, indented
  source: >-
    weighed
    twice

# Belongs to the second.
  # So does this.
-   cloth: second
    title: Second
  # half way in
    source: guessed
# The end.
`)}
	want := map[string]string{
		"first":  "cloth: first\ntitle: First\n# within, in the first column\n# within, indented\nsource: >-\n  weighed\n  twice\n",
		"second": "cloth: second\ntitle: Second\n# half way in\nsource: guessed\n",
	}
	entries, err := seams.Entries("cloth", own)
	if err != nil {
		t.Fatal(err)
	}
	met := 0
	for _, e := range entries {
		if text, ok := want[e.Name]; ok && e.Own {
			met++
			if e.Text != text {
				t.Errorf("%s reads\n%s\nwant\n%s", e.Name, e.Text, text)
			}
		}
	}
	if met != len(want) {
		t.Errorf("%d of %d entries were met", met, len(want))
	}
}
