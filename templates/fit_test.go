package templates_test

import (
	"strings"
	"testing"

	"bodkin/templates"
)

// A figure is found by the length of an edge: the leg of a right-angled triangle
// by its other sides (Euclid I.47: 5, 12, 13), and a fault where no figure in its
// range makes the length.
func TestFigureFoundByLength(t *testing.T) {
	flag := func(long string) string {
		return strings.ReplaceAll(`garment: flag
title: Flag
source: drafted for this test
measures:
  wide: {title: Width, how: across, default: 120 mm, least: 50 mm, most: 300 mm}
cloths:
  main: {title: the flag}
pieces:
  - piece: flag
    title: Flag
    cloth: main
    cut: one
    grain: along its side
    fit: {find: up, edges: [fly], long: LONG, least: 10, most: 400}
    points: {low: [0, 0], out: [wide, 0], high: [0, up]}
    outline:
      - {edge: foot, from: low, to: out}
      - {edge: fly, from: out, to: high}
      - {edge: mast, from: high, to: low}
edges:
  - {edge: hem, title: hem, kind: hem, along: [flag.foot, flag.fly, flag.mast], closed: true}
`, "LONG", long)
	}
	for _, x := range []struct {
		wide, long string
		up         float64
	}{
		{"120 mm", "130", 50}, {"50 mm", "130", 120}, {"50 mm", "wide * 13 / 5", 120},
	} {
		g, err := templates.Parse("flag.yaml", []byte(flag(x.long)))
		if err != nil {
			t.Fatal(err)
		}
		m, err := g.Make(pairs("wide", x.wide), nil)
		if err != nil {
			t.Fatal(err)
		}
		near(t, x.wide+" by "+x.long, float64(edge(t, m, "flag", "mast").Length()), x.up, 1e-6)
	}
	for _, x := range []struct{ name, old, new, words string }{
		{"out of reach", "long: LONG", "long: 100", "the fly of the flag is 12 cm to 41.8 cm long, and should be 10 cm"},
		{"no such edge", "edges: [fly]", "edges: [flight]", `there is no edge "flight"`},
		{"a name that is taken", "find: up", "find: wide", "the name is taken"},
	} {
		g, err := templates.Parse("flag.yaml", []byte(strings.Replace(strings.Replace(flag("LONG"), x.old, x.new, 1), "LONG", "130", 1)))
		if err == nil {
			_, err = g.Make(nil, nil)
		}
		if err == nil || !strings.Contains(err.Error(), x.words) || !strings.Contains(err.Error(), "flag.yaml:14:") {
			t.Errorf("%s: %q is not in\n%v", x.name, x.words, err)
		}
	}
}
