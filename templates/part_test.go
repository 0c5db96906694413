package templates_test

import (
	"errors"
	"strings"
	"testing"

	"bodkin/seams/form"
	"bodkin/templates"
)

// pocketed is the tabard with one part used twice, each to its own measures.
func pocketed() string {
	return strings.Replace(tabard, "joins:\n", `include:
  - {part: patch-pocket, as: small, title: small pocket, with: {width: 90}, at: {piece: [front]}}
  - {part: patch-pocket, as: large, title: large pocket, with: {width: 160, depth: up / 3}, at: {piece: [front]}}
joins:
`, 1)
}

func TestPartUsedTwice(t *testing.T) {
	g, err := templates.Parse("tabard.yaml", []byte(pocketed()))
	if err != nil {
		t.Fatal(err)
	}
	m, err := g.Make(nil, pairs("length", "66 cm"))
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		name, title  string
		width, depth float64
	}{
		{"small", "small pocket", 90, 150},
		{"large", "large pocket", 160, 220},
	} {
		p := piece(t, m, x.name)
		if p.Title != x.title {
			t.Errorf("%s is titled %q", x.name, p.Title)
		}
		near(t, x.name+" width", p.Outline.Bounds().Width(), x.width, 1e-6)
		near(t, x.name+" depth", p.Outline.Bounds().Height(), x.depth, 1e-6)
	}
}

// Faults of parts, details and choices, told as the garment is read or made.
func TestFormFaults(t *testing.T) {
	for _, x := range []struct {
		name, old, new string
		line           string // of the fault, as file:line:
		words          []string
	}{
		{"no such part", "part: patch-pocket, as: small", "part: patch-poket, as: small", "tabard.yaml:62:12", []string{`did you mean "patch-pocket"`}},
		{"a figure that the part does not want", "with: {width: 90}", "with: {wdith: 90}", "tabard.yaml:62:", []string{"width"}},
		{"a place that is not there", "at: {piece: [front]}}\n  - {part", "at: {piece: [frnt]}}\n  - {part", "tabard.yaml:62:", []string{"front"}},
		{"a place not handed over", ", at: {piece: [front]}}\n  - {part", "}\n  - {part", "tabard.yaml:62:", []string{"takes piece"}},
		{"two parts of one name", "as: large", "as: small", "tabard.yaml:63:", []string{"small"}},
		{"a fault inside the part", "with: {width: 90}", "with: {width: 30}", "parts/patch-pocket.yaml:23:12", []string{"the small pocket cannot be drawn", "crosses itself"}},
		{"a detail of no kind", "details:\n", "details:\n  - {detail: fold, title: fold, kind: tukc, piece: front}\n", "tabard.yaml:", []string{`did you mean "tuck"`}},
		{"a pocket whose side piece goes on nowhere", "details:\n", "details:\n  - {detail: pocket, title: pocket, kind: slanted-pocket, along: [front.front], each_side: true, pieces: [back]}\n", "tabard.yaml:", []string{"a slanted pocket wants beyond"}},
		{"a side piece of edges that do not meet", "details:\n", "details:\n  - {detail: pocket, title: pocket, kind: slanted-pocket, along: [front.front], each_side: true, pieces: [back], beyond: [back.hem, back.neck]}\n", "tabard.yaml:", []string{"back.neck does not go on where back.hem ends"}},
		{"a lap on a dart", "press: down, toward: side_low", "press: down, toward: side_low, lap: 30", "tabard.yaml:", []string{"a dart has no lap"}},
		{"a detail on no edge", "details:\n", "details:\n  - {detail: fold, title: fold, kind: tuck, piece: front, each_side: true, depth: 10, count: 2, takes: [front.shouldr]}\n", "tabard.yaml:", []string{"front.shoulder"}},
		{"a detail that lacks its depth", "details:\n", "details:\n  - {detail: fold, title: fold, kind: tuck, piece: front, each_side: true, count: 2}\n", "tabard.yaml:", []string{"a tuck wants depth"}},
		{"a choice that leaves out a piece", "    title: Back\n", "    title: Back\n    if: neck == 'round'\n", "tabard.yaml:", []string{"left out", "shoulder seam needs it"}},
		{"a dart longer than its piece", "tip: [width - 100, ", "tip: [width - 1400, ", "tabard.yaml:", []string{"longer than its piece", "nearer to its mouth"}},
		{"gathers out of their ratio", "{join: shoulder, title: shoulder seam, ", "{join: shoulder, title: shoulder seam, gather: [1.5, 2], ", "tabard.yaml:", []string{"shoulder seam", "1.5"}},
		{"an opening too small", "across: true, cloth: trim", "across: true, goes_over: 2 * bust, cloth: trim", "tabard.yaml:", []string{"does not go over 184 cm", "the opening longer"}},
	} {
		t.Run(x.name, func(t *testing.T) {
			text := strings.Replace(pocketed(), x.old, x.new, 1)
			if text == pocketed() {
				t.Fatal("nothing was changed")
			}
			g, err := templates.Parse("tabard.yaml", []byte(text))
			if err == nil {
				_, err = g.Make(nil, nil)
			}
			if _, ok := errors.AsType[form.Faults](err); !ok {
				t.Fatalf("not faults but %v", err)
			}
			for _, word := range append(x.words, x.line) {
				if !strings.Contains(err.Error(), word) {
					t.Errorf("%q is not in\n%v", word, err)
				}
			}
		})
	}
}

// What the zip opens counts on both its sides: the skirt passes the hips with
// it, and without it would not.
func TestZipOpensTheWaist(t *testing.T) {
	data, file := templates.Text("a-line-skirt")
	text := strings.Replace(string(data), "{detail: zip, title: zip, kind: zip, in: centre-back, length: zip, at: from}",
		"{detail: zip, title: zip, kind: zip, in: centre-back, length: 60, at: from}", 1)
	g, err := templates.Parse(file, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	_, err = g.Make(nil, nil)
	if err == nil {
		t.Fatal("a zip of 6 cm lets the skirt over the hips")
	}
	for _, w := range []string{"waist edge", "zip of 60 mm", "100 cm", "the opening longer"} {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("%q is not in\n%v", w, err)
		}
	}
}
