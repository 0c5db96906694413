package main

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/templates"
)

// dartedGarment is a garment with a dart, a piece by choice and a value that rests on
// another. Rows of the table below change one thing of it.
const dartedGarment = `garment: bib
title: Bib
source: made up for a test
measures: {bust: {title: Bust, how: round the bust, default: 92 cm, least: 70 cm, most: 150 cm}}
choices: {back: {title: Back, how: one or none, one_of: [plain, none], default: plain}}
cloths: {main: {title: the cloth}}
loose: true
values:
  wide: bust / 4 + 20
  tall: wide * 2
pieces:
  - piece: front
    title: Front
    cloth: main
    cut: pair
    grain: parallel to the front edge
    points:
      a: [0, 0]
      b: [wide, 0]
      low: [wide, 200]
      high: [wide, 220]
      c: [wide, tall + 20]
      d: [0, tall + 20]
      tip: [wide - 100, 210]
    outline:
      - {edge: hem, from: a, to: b}
      - {edge: side_low, from: b, to: low}
      - {edge: mouth, from: low, to: high, dart: dart}
      - {edge: side_high, from: high, to: c}
      - {edge: top, from: c, to: d}
      - {edge: front, from: d, to: a}
  - piece: back
    title: Back
    cloth: main
    cut: fold
    fold: centre
    grain: parallel to the centre
    points: {a: [0, 0], b: [wide, 0], c: [wide, tall], d: [0, tall]}
    outline:
      - {edge: hem, from: a, to: b}
      - {edge: side, from: b, to: c}
      - {edge: top, from: c, to: d}
      - {edge: centre, from: d, to: a}
joins:
  - {join: side, title: side seam, a: [front.side_high, front.side_low], b: [back.side], each_side: true}
edges:
  - {edge: top, title: top edge, kind: hem, along: [front.top, back.top], across: true}
  - {edge: hem, title: hem, kind: hem, along: [front.hem, back.hem], across: true}
  - {edge: front, title: front edge, kind: hem, along: [front.front], each_side: true}
details:
  - {detail: dart, title: Dart, kind: dart, piece: front, each_side: true, between: [side_high, side_low], point: tip, press: down, toward: side_low}
`

// What is wrong in a garment is told with the place in its file, what it is, and how
// to mend it; exit 2, and nothing is drawn or written.
func TestWrongGarments(t *testing.T) {
	alone(t)
	write(t, map[string]string{"bib.yaml": dartedGarment})
	must(t, "check", "bib.yaml")
	for _, x := range []struct {
		name     string
		old, new string
		at       string
		words    []string
		mend     string
	}{
		{"an outline that crosses itself", "d: [0, tall]}", "d: [2 * wide, tall / 2]}", "bib.yaml:32:12: ",
			[]string{"the back cannot be drawn at this size", "crosses itself"}, "look again at the measures and choices; if they are right, the draft must be changed for them"},
		{"edges that do not match", "c: [wide, tall], d: [0, tall]}", "c: [wide, tall - 14], d: [0, tall]}", "bib.yaml:45:12: ",
			[]string{"the two sides of the side seam do not fit", "front.side_high + front.side_low is 500.0 mm", "back.side is 486.0 mm", "a difference of 14.0 mm"},
			"draw them equally long to within 1.0 mm, or declare the ease: [least, most]"},
		{"a dart longer than its piece", "tip: [wide - 100, 210]", "tip: [wide - 400, 210]", "bib.yaml:51:115: ",
			[]string{"the dart is longer than its piece", "its point lies outside the front"}, "bring its point nearer to its mouth"},
		{"a dart wider than its edges", "high: [wide, 220]\n      c: [wide, tall + 20]\n      d: [0, tall + 20]\n      tip: [wide - 100, 210]",
			"high: [wide, 700]\n      c: [wide, tall + 20]\n      d: [0, tall + 20]\n      tip: [wide - 100, 450]", "bib.yaml:51:14: ",
			[]string{"its mouth is 50 cm wide, and longer than the edges side_low and side_high that it lies between, 38 cm together"}, "make the dart narrower"},
		{"a depth less than nothing", "each_side: true}\ndetails", "each_side: true, depth: wide - bust}\ndetails", "bib.yaml:49:95: ",
			[]string{"this comes out as -67 cm, less than nothing"}, "look again at the measures and choices; if they are right, the formula must be changed for them"},
		{"a choice that removes a piece which a join needs", "    title: Back\n", "    title: Back\n    if: back == 'plain'\n", "bib.yaml:46:78: ",
			[]string{"with back none: the edge back.side is left out here, and the side seam needs it"}, "give both the same if:, or name another"},
		{"formulas in a circle", "wide: bust / 4 + 20", "wide: tall / 2", "bib.yaml:9:3: ",
			[]string{"the values go round in a circle: wide needs tall needs wide"}, "work one of them out from measures and choices alone"},
	} {
		t.Run(x.name, func(t *testing.T) {
			if strings.Count(dartedGarment, x.old) != 1 {
				t.Fatalf("%q is not there once", x.old)
			}
			alone(t)
			write(t, map[string]string{"bib.yaml": strings.Replace(dartedGarment, x.old, x.new, 1)})
			before := listing(t)
			got := call(t.Context(), "", "check", "bib.yaml")
			t.Log("\n" + got.err)
			if got.code != 2 || got.out != "" {
				t.Errorf("exit code %d, said %q", got.code, got.out)
			}
			if !strings.HasPrefix(got.err, x.at) {
				t.Errorf("it does not begin with %q", x.at)
			}
			if n := strings.Count(got.err, ".yaml:"); n != 1 && x.name != "a choice that removes a piece which a join needs" {
				t.Errorf("%d faults are told for one", n)
			}
			for _, w := range append(x.words, "\n  "+x.mend) {
				if !strings.Contains(got.err, w) {
					t.Errorf("%q is not said", w)
				}
			}
			if d := cmp.Diff(before, listing(t)); d != "" {
				t.Errorf("files changed (-before +after):\n%s", d)
			}
		})
	}
}

// A measure that makes a length less than nothing would turn a piece inside out: the
// outline is sound, and the piece would be cut with what is lacking. The measure is
// told with its place in the job.
func TestMeasureThatTurnsAPieceInsideOut(t *testing.T) {
	alone(t)
	job := "make: skirt.yaml\nsize: {waist: 60 cm, hip: 80 cm}\ncloth: {main: {is: cotton-lawn}}\n"
	write(t, map[string]string{"job.yaml": job, "skirt.yaml": strings.NewReplacer(
		"(hip + 100) / 4", "(hip - 900) / 4", "goes_over: hip, ", "").Replace(string(templates.Blank()))})
	must(t, "check", "skirt.yaml")
	got := call(t.Context(), "", "plan", "job.yaml", "-o", "out.pdf")
	want := "job.yaml:2:27: quarter = (hip - 900) / 4 comes out as -25 mm, less than nothing, and turns the front inside out\n"
	if got.code != 2 || !strings.HasPrefix(got.err, want) || strings.Count(got.err, ".yaml:") != 1 || !strings.Contains(got.err, "\n  look again at the measures") {
		t.Errorf("exit code %d:\n%s", got.code, got.err)
	}
}
