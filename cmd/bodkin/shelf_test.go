package main

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"
)

// Every kind lists entries with a name, a title and a source, in words and as
// JSON, and the whole entry under its own name.
func TestEveryKindLists(t *testing.T) {
	alone(t)
	for _, k := range kinds() {
		kind, opens := k[0], k[1]
		entries := listed(t, "list", kind, "--json")
		words := strings.Split(strings.TrimSpace(must(t, "list", kind)), "\n")
		if len(entries) == 0 || len(words) != len(entries) {
			t.Errorf("%s: %d lines and %d objects", kind, len(words), len(entries))
			continue
		}
		for i, e := range entries {
			if e.Name == "" || e.Title == "" || e.Source == "" || e.Own {
				t.Errorf("%s: %+v", kind, e)
			}
			if !strings.HasPrefix(words[i], e.Name+" ") || !strings.Contains(words[i], e.Title) {
				t.Errorf("%s: %q is not %s, %s", kind, words[i], e.Name, e.Title)
			}
			if e.Entry[opens] != e.Name || e.Entry["title"] != e.Title {
				t.Errorf("%s: the entry of %s is %v, %v", kind, e.Name, e.Entry[opens], e.Entry["title"])
			}
		}
	}
}

type entry struct {
	Name, Title, Source string
	Own                 bool
	Entry               map[string]any
}

func listed(t *testing.T, args ...string) []entry {
	t.Helper()
	var entries []entry
	if err := json.Unmarshal([]byte(must(t, args...)), &entries); err != nil {
		t.Fatalf("%v: %v", args, err)
	}
	return entries
}

// What show prints is a shelf file as it stands, whose entry takes the place of
// ours without a difference; a garment so saved can be made.
func TestShowCanBeReadAgain(t *testing.T) {
	alone(t)
	for _, k := range kinds() {
		kind := k[0]
		entries := listed(t, "list", kind, "--json")
		if kind == "sizes" {
			continue // published tables, which nobody puts her own in the place of
		}
		if kind == "garments" {
			for k, e := range entries {
				if k%3 > 0 {
					continue // one in three will do
				}
				job := must(t, "start", e.Name)
				write(t, map[string]string{"mine.yaml": must(t, "show", kind, e.Name),
					"job.yaml": strings.Replace(job, "make: "+e.Name, "make: ./mine.yaml", 1)})
				must(t, "check", "job.yaml", "--within", "0s")
			}
			continue
		}
		// Two are enough to try the printing.
		for _, e := range entries[:min(2, len(entries))] {
			write(t, map[string]string{filepath.Join(kind, e.Name+".yaml"): must(t, "show", kind, e.Name)})
		}
		after := listed(t, "list", kind, "--json", "--shelf", kind)
		if len(after) != len(entries) {
			t.Errorf("%s: %d entries, and %d with two of them as one's own", kind, len(entries), len(after))
		}
		owned := 0
		for i := range after {
			if after[i].Own {
				owned++
			}
			if after[i].Name != entries[i].Name || after[i].Title != entries[i].Title || after[i].Source != entries[i].Source {
				t.Errorf("%s: %s, %s became %s, %s", kind, entries[i].Name, entries[i].Title, after[i].Name, after[i].Title)
			}
		}
		if owned != min(2, len(entries)) {
			t.Errorf("%s: %d are one's own", kind, owned)
		}
		if shown := must(t, "show", kind, entries[0].Name, "--shelf", kind); !strings.Contains(shown, "from your own shelf") {
			t.Errorf("%s: %s", kind, shown)
		}
	}
}

// Words are completed from what a kind has.
func TestCompletionKnowsTheShelf(t *testing.T) {
	alone(t)
	for _, kind := range []string{"garments", "machines"} {
		offered := completions(t, "__complete", "show", kind, "")
		for _, e := range listed(t, "list", kind, "--json") {
			if !strings.Contains(offered, e.Name+"\t"+e.Title+"\n") {
				t.Errorf("%s: %s is not offered", kind, e.Name)
			}
		}
	}
}
