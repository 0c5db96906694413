package seams_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/seams"
)

func TestLike(t *testing.T) {
	s := load(t, seams.File{Name: "mine.yaml", Data: []byte(`
- cloth: my-lawn
  like: cotton-lawn
  weight: 60
  source: weighed
- cloth: my-stretchy-lawn
  like: my-lawn
  title: Lawn with elastane
  thickness: 0.3
  stretch: {across: 12}
  estimates: [stretch]
  source: pulled
`)})
	lawn, _ := s.Cloth("cotton-lawn")
	mine, err := s.Cloth("my-lawn")
	if err != nil {
		t.Fatal(err)
	}
	// The same yarns set as closely: thickness goes with weight.
	if mine.Title != "My lawn" || mine.Weight != 60 || !near(mine.Thickness, lawn.Thickness*60/lawn.Weight, 1e-12) || mine.HeatDots != lawn.HeatDots {
		t.Errorf("%+v", mine)
	}
	if slices.Contains(mine.Inferred, "weight") || !slices.Contains(mine.Inferred, "thickness") || len(mine.Inferred) != 20 {
		t.Errorf("inferred %v", mine.Inferred)
	}
	if !strings.HasPrefix(mine.InferredWords(), "taken over from cotton-lawn: fibre, structure, thickness, ") || lawn.InferredWords() != "" {
		t.Errorf("%q, %q", mine.InferredWords(), lawn.InferredWords())
	}
	again, err := s.Cloth("my-stretchy-lawn")
	if err != nil || again.Weight != 60 || again.Thickness != 0.3 || again.Stretch.Across != 12 || again.Stretch.Along != lawn.Stretch.Along || again.Title != "Lawn with elastane" {
		t.Errorf("%+v, %v", again, err)
	}
	if len(again.Estimates) != 1 || slices.Contains(again.Inferred, "stretch") || !slices.Contains(again.Inferred, "weight") {
		t.Errorf("estimates %v, inferred %v", again.Estimates, again.Inferred)
	}
	// The cloth it is like stays as it was.
	if d := cmp.Diff(*mustCloth(t, load(t), "cotton-lawn"), *lawn); d != "" {
		t.Error(d)
	}
}

func mustCloth(t testing.TB, s *seams.Shelf, name string) *seams.Cloth {
	t.Helper()
	c, err := s.Cloth(name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestLikeFaults(t *testing.T) {
	entry := func(name, like, more string) string {
		return "- cloth: " + name + "\n  like: " + like + "\n" + more + "  source: s\n"
	}
	cases := []struct{ data, want string }{
		{entry("a", "cotton-lwan", ""), `mine.yaml:2:9: "cotton-lwan" is no cloth on the shelf; did you mean "cotton-lawn"?`},
		{entry("a", "a", ""), `mine.yaml:2:9: cloths are like one another in a ring: a is like a; give one of them in full`},
		{entry("a", "b", "") + entry("b", "c", "") + entry("c", "a", ""), `mine.yaml:2:9: cloths are like one another in a ring: a is like b is like c is like a`},
		{entry("a", "b", "") + entry("b", "b", ""), `mine.yaml:5:9: cloths are like one another in a ring: b is like b`},
		{entry("cotton-lawn", "cotton-voile", "  weight: 3000\n"), `mine.yaml:3:11: weight must be from 5 to 2000 g/m²`},
		{entry("a", "denim", "  wieght: 300\n"), `mine.yaml:3:3: unknown key "wieght"; did you mean "weight"?`},
		{"- cloth: a\n  title: A\n  fibre: silk\n  structure: woven\n  weight: 60\n  thickness: 0.2\n  widths: [1 m]\n  source: s\n",
			`mine.yaml:1:3: the key "heat_dots" is missing; add heat_dots: and its value, or like: and a cloth of the shelf`},
		{"- cloth: a\n  title: \"\"\n  fibre: silk\n  structure: woven\n  weight: 60\n  thickness: 0.2\n  heat_dots: 1\n  widths: [1 m]\n  source: s\n",
			`mine.yaml:2:10: the value of "title" is empty`},
	}
	var texts []string
	for _, c := range cases {
		texts = append(texts, c.data)
	}
	for i, fs := range faultsApart(t, texts) {
		if len(fs) != 1 || !strings.HasPrefix(fs[0].Error(), cases[i].want) {
			t.Errorf("%q:\n%v\nwant\n%s", cases[i].data, fs, cases[i].want)
		}
	}
}

// A cloth of ours may be like one of the user's: whatever is on the shelf.
func TestLikeFollowsOwnEntries(t *testing.T) {
	s := load(t, seams.File{Name: "mine.yaml", Data: []byte(strings.ReplaceAll(ownCloth, "curtain-lace", "cotton-lawn") + "- {cloth: b, like: cotton-lawn, source: s}\n")})
	if b := mustCloth(t, s, "b"); b.Fibre != "polyester" || b.Weight != 90 {
		t.Errorf("%+v", b)
	}
}

func TestLikeAsWritten(t *testing.T) {
	file := seams.File{Name: "mine.yaml", Data: []byte("- cloth: my-lawn\n  like: cotton-lawn\n  weight: 60\n  source: weighed\n")}
	entries, err := seams.Entries("cloth", file)
	if err != nil {
		t.Fatal(err)
	}
	e := entries[len(entries)-1]
	if e.Title != "My lawn" || e.Source != "weighed" || !e.Own || e.Text != "cloth: my-lawn\nlike: cotton-lawn\nweight: 60\nsource: weighed\n" {
		t.Errorf("%+v", e)
	}
}
