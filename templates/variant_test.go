package templates_test

import (
	"math"
	"strings"
	"testing"

	"bodkin/templates"
)

// The front neck of the tabard, and one that is round or square by choice.
const (
	roundFront  = "      - {edge: neck, from: d, to: e, curve: [[80, e_y]]}\n      - {edge: front"
	squareFront = `      - {edge: neck, from: d, to: e, curve: [[80, e_y]], if: neck == 'round'}
      - {edge: neck, from: d, to: corner, if: neck == 'square'}
      - {edge: neck, from: corner, to: e, if: neck == 'square'}
      - {edge: front`
)

func squareNeck() string {
	text := strings.Replace(tabard, roundFront, squareFront, 1)
	return strings.Replace(text, "      tip: [", "      corner: [d_x, e_y]\n      tip: [", 1)
}

// A line under if: is drawn where its condition holds: the square neck is its two
// lines, the round one lies between its chord and the two.
func TestLinesByChoice(t *testing.T) {
	g, err := templates.Parse("tabard.yaml", []byte(squareNeck()))
	if err != nil {
		t.Fatal(err)
	}
	length := func(neck string) float64 {
		m, err := g.Make(nil, pairs("neck", neck))
		if err != nil {
			t.Fatal(err)
		}
		return edge(t, m, "front", "neck").Length()
	}
	near(t, "square neck", length("square"), 80+100, 1e-9)
	if round := length("round"); round <= math.Hypot(80, 100) || round >= 180 {
		t.Errorf("the round neck is %v mm long", round)
	}
	near(t, "round neck as without a choice", length("round"), edge(t, makeTabard(t, nil, nil), "front", "neck").Length(), 1e-9)
}

// A dart and its mouth may stand under one choice together.
func TestDartByChoice(t *testing.T) {
	text := strings.NewReplacer(
		"to: low}\n      - {edge: mouth, from: low, to: high, dart: dart}", `to: low}
      - {edge: mouth, from: low, to: high, dart: dart, if: neck == 'round'}
      - {edge: flat, from: low, to: high, if: neck == 'square'}`,
		"b: [back.side], each_side: true}", `b: [back.side], each_side: true, if: neck == 'round'}
  - {join: side, title: side seam, a: [front.side_high, front.flat, front.side_low], b: [back.side], each_side: true, ease: [0 mm, 30 mm], if: neck == 'square'}`,
		"press: down, toward: side_low}", "press: down, toward: side_low, if: neck == 'round'}",
	).Replace(tabard)
	g, err := templates.Parse("tabard.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	for neck, want := range map[string]int{"round": 1, "square": 0} {
		m, err := g.Make(nil, pairs("neck", neck))
		if err != nil {
			t.Fatal(err)
		}
		if len(m.Details) != want {
			t.Errorf("with a %s neck it has %d darts, want %d", neck, len(m.Details), want)
		}
	}
}

// What choices leave of an outline goes round once, and its darts are there.
func TestLinesByChoiceFaults(t *testing.T) {
	for _, x := range []struct {
		name, text string
		words      []string
	}{
		{"a gap at one choice", strings.Replace(squareNeck(), "to: corner, if: neck == 'square'}", "to: corner, if: neck == 'round'}", 1),
			[]string{"with neck round", `ends at "e"`}},
		{"a line that is drawn at all choices", strings.Replace(squareNeck(), ", if: neck == 'round'}", "}", 1),
			[]string{"with neck square", `ends at "e"`}},
		{"an unknown choice", strings.Replace(squareNeck(), "if: neck == 'round'", "if: nek == 'round'", 1),
			[]string{"nek", "neck"}},
		{"a dart left without its mouth", strings.Replace(tabard, "high, dart: dart}", "high, dart: dart, if: neck == 'round'}", 1),
			[]string{"with neck square", `ends at "low"`}},
		{"a mouth left without its dart", strings.Replace(tabard, "toward: side_low}", "toward: side_low, if: neck == 'round'}", 1),
			[]string{"with neck square", `no dart in this piece under details: "dart"`}},
		{"a point's height named like a value", strings.Replace(tabard, "  up: length", "  up: length\n  a_y: 2", 1),
			[]string{":26:", "the point's own figure a_y", "taken", "choose another name"}},
	} {
		t.Run(x.name, func(t *testing.T) {
			_, err := templates.Parse("tabard.yaml", []byte(x.text))
			if err == nil {
				t.Fatal("accepted")
			}
			for _, word := range x.words {
				if !strings.Contains(err.Error(), word) {
					t.Errorf("%q is not in\n%v", word, err)
				}
			}
		})
	}
}

// A piece drawn as another has its darts, and its own name for them; a part may be
// included twice under one name at choices of its own.
func TestDrawnAlikeWithDarts(t *testing.T) {
	text := strings.NewReplacer(
		"joins:\n", `  - {piece: lining, title: Lining, cloth: trim, cut: pair, grain: parallel to the front edge, like: front}
include:
  - {part: patch-pocket, as: pocket, with: {width: 90}, at: {piece: [front]}, if: neck == 'round'}
  - {part: patch-pocket, as: pocket, with: {width: 120}, at: {piece: [front]}, if: neck == 'square'}
joins:
`,
		"edges:\n", `edges:
  - {edge: lining-low, title: lining edge, kind: hem, along: [lining.side_low, lining.hem, lining.front, lining.neck, lining.shoulder, lining.side_high], each_side: true, closed: true, depth: 1 cm}
`).Replace(tabard)
	g, err := templates.Parse("tabard.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	for neck, width := range map[string]float64{"round": 90, "square": 120} {
		m, err := g.Make(nil, pairs("neck", neck))
		if err != nil {
			t.Fatal(err)
		}
		near(t, neck+" pocket", piece(t, m, "pocket").Outline.Bounds().Width(), width, 1e-9)
		found := 0
		for _, d := range m.Details {
			if d.Name == "lining-dart" && d.Piece == "lining" && d.Title == "lining dart" {
				found++
			}
		}
		if found != 1 {
			t.Errorf("the lining has its dart %d times", found)
		}
	}
}
