package seams_test

import (
	"testing"

	"bodkin/seams"
)

// What a cloth rules out whatever the line, and what it does not.
func TestSuits(t *testing.T) {
	s := load(t)
	for _, row := range []struct {
		construction, cloth string
		want                bool
		source              string
	}{
		{"french", "silk-georgette", true, kentucky},
		{"french", "denim", false, "unsuited to thick fabric, bulk: " + conover1},
		{"french", "velvet", false, commonWay},
		{"flat-felled", "denim", true, koester},
		{"flat-felled", "silk-chiffon", false, commonWay},
		{"overlocked-4", "cotton-jersey", true, singer},
		{"plain-open-pinked", "silk-georgette", false, "a wide pinked allowance shows through: " + commonWay},
		{"plain-open-pinked", "boiled-wool", true, "firm fabric only: " + commonWay},
		{"narrow-zigzag", "cotton-poplin", false, commonWay},
		{"mock-french", "silk-georgette", true, "curved seams in sheers and lights: " + commonWay},
	} {
		got, err := s.Suits(row.construction, *mustCloth(t, s, row.cloth))
		if err != nil || got != row.want {
			t.Errorf("%s in %s: %v, %v, want %v (%s)", row.construction, row.cloth, got, err, row.want, row.source)
		}
	}
	if _, err := s.Suits("frensh", *mustCloth(t, s, "denim")); err == nil {
		t.Error("an unknown construction suits")
	}
}

func TestSorts(t *testing.T) {
	s := load(t)
	for _, row := range []struct {
		construction, sort string
		want               bool
	}{
		{"french", "sheer", true}, {"french", "knit", false}, {"overlocked-4", "knit", true}, {"flat-felled", "pile", false},
	} {
		if got, err := s.SuitsSort(row.construction, row.sort); err != nil || got != row.want {
			t.Errorf("%s in %s cloth: %v, %v", row.construction, row.sort, got, err)
		}
	}
	// Every sort has cloths, and every cloth that is woven is no knit.
	for _, sort := range seams.SortsOfCloth() {
		n := 0
		for _, c := range s.Cloths {
			if c.OfSort(sort) {
				n++
			}
			if c.OfSort("woven") && c.OfSort("knit") || c.OfSort("silken") {
				t.Errorf("%s is of sorts that do not go together", c.Name)
			}
		}
		if n == 0 {
			t.Errorf("no cloth is %s", sort)
		}
	}
}

// A user's entry tells which of ours it stands in the place of.
func TestEntriesOver(t *testing.T) {
	entries, err := seams.Entries("cloth", seams.File{Name: "mine.yaml", Data: []byte(
		"- {cloth: cotton-lawn, like: cotton-voile, source: s}\n- {cloth: my-lawn, like: cotton-voile, source: s}\n")})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		switch over := e.Over.String(); {
		case e.Name == "cotton-lawn" && (!e.Own || over == "" || over[:6] != "cloths"):
			t.Errorf("%s stands over %q", e.Name, over)
		case e.Name != "cotton-lawn" && over != "":
			t.Errorf("%s stands over %q", e.Name, over)
		}
	}
}
