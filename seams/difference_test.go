package seams_test

import (
	"fmt"
	"strings"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
)

// Where sources differ, every entry that tells of it says what each has, and what is
// taken lies in the range that they span: for a cloth, a stitch, a needle, a machine
// its own figure, for a construction the size as it comes out in every cloth that it
// is allowed in, where garment and house leave it free. Whoever asks to see the
// entry is told of it. The sources stand in the entries, in each line of says.
func TestDifferencesOfSources(t *testing.T) {
	s := load(t)
	told, within := 0, 0
	for _, kind := range []string{"cloth", "stitch", "machine", "needle", "hand-needle", "interfacing", "construction"} {
		entries, err := seams.Entries(kind)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			list, err := e.Differences()
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range list {
				told++
				about := fmt.Sprintf("%s %s, %s", kind, e.Name, d.On)
				if len(d.Says) < 2 && !strings.Contains(d.Says[0], " or ") {
					t.Errorf("%s: only one thing is said", about)
				}
				for _, says := range d.Says {
					if what, source, ok := strings.Cut(says, ":"); !ok || what == "" || strings.TrimSpace(source) == "" {
						t.Errorf("%s: %q names no source", about, says)
					}
					if !strings.Contains(e.Text, says) {
						t.Errorf("%s: whoever asks to see it is not told %q", about, says)
					}
				}
				for _, got := range figuresOf(t, s, e, d.Of) {
					within++
					if got.mm < d.Least-1e-9 || got.mm > d.Most+1e-9 {
						t.Errorf("%s: %s is %g%s, and the sources have %g to %g", about, d.Of, got.mm, got.in, d.Least, d.Most)
					}
				}
			}
		}
	}
	t.Logf("%d differences are told, %d figures lie within theirs", told, within)
	// practice.md's and standards.md's: seams, hems, buttonholes, needles, thread use, ironing, speed.
	if told < 45 || within < 200 {
		t.Errorf("only %d differences, with %d figures", told, within)
	}
}

// figure is what an entry takes, and in which cloth.
type figure struct {
	mm float64
	in string
}

// figuresOf are what an entry takes for one of its keys or sizes; none where the
// name is empty.
func figuresOf(t *testing.T, s *seams.Shelf, e seams.Entry, of string) []figure {
	t.Helper()
	if of == "" {
		return nil
	}
	if e.Kind != "construction" {
		root, err := form.Parse(e.Place.File, []byte(e.Text))
		if err != nil {
			t.Fatal(err)
		}
		var v float64
		if err := root.At(of).Decode(&v); err != nil {
			t.Fatal(err)
		}
		return []figure{{mm: v}}
	}
	c := constructionOf(t, s, e.Name)
	var out []figure
	for _, cloth := range s.Cloths {
		facts := plainFacts(t, s, cloth.Name)
		facts.Workroom.Forms = func(string) bool { return true }
		if e.Name == "circular-hem" {
			facts.Edge.Fullness = 10 // of an edge of 1 m
		}
		verdicts, err := s.Weigh(c.For, c.Kind, facts)
		if err != nil {
			t.Fatal(err)
		}
		allowed := false
		for _, v := range verdicts {
			allowed = allowed || v.Construction.Name == e.Name && v.Allowed()
		}
		if !allowed {
			continue
		}
		z, err := c.Measure(facts)
		if err != nil {
			t.Fatal(err)
		}
		mm, ok := z.Size(of)
		switch of {
		case "allowance":
			mm, ok = z.Allowance, true
		case "finished":
			mm, ok = z.Finished, true
		}
		if !ok {
			t.Fatalf("%s has no %s", e.Name, of)
		}
		out = append(out, figure{mm, " in " + cloth.Name})
	}
	if len(out) == 0 {
		t.Errorf("%s is allowed in no cloth", e.Name)
	}
	return out
}
