package templates_test

import (
	"errors"
	"strings"
	"testing"

	"bodkin/seams/form"
	"bodkin/templates"
)

// tabard is the least garment with something of everything: a fold, a pair, a
// dart, a closed and an open edge, an eased join.
const tabard = `garment: tabard
title: Tabard
source: made up for these tests
measures:
  bust: {title: Bust, how: round the bust, default: 92 cm, least: 70 cm, most: 150 cm}
  arm:  {title: Arm, how: round the arm, reckoned: "bust / 3", least: 20 cm, most: 60 cm}
choices:
  length: {title: Length, default: 60 cm, least: 40 cm, most: 90 cm}
  fullness: {title: Fullness, default: 1.0, least: 0.5, most: 2}
  neck: {title: Neck, one_of: [round, square], default: round}
cloths:
  main: {title: the tabard}
  trim: {title: the trim, optional: true}
values:
  width: quarter * fullness
  quarter: bust / 4 + 20
  up: length
pieces:
  - piece: front
    title: Front
    cloth: main
    cut: pair
    grain: parallel to the front edge
    points:
      a: [0, 0]
      b: [width, 0]
      low: [width, up / 2]
      high: [width, up / 2 + 20]
      c: [width, up + 20]
      d: [80, up + 50]
      e: [0, d_y - 100]
      tip: [width - 100, up / 2 + 10]
    outline:
      - {edge: hem, from: a, to: b}
      - {edge: side_low, from: b, to: low}
      - {edge: mouth, from: low, to: high, dart: dart}
      - {edge: side_high, from: high, to: c}
      - {edge: shoulder, from: c, to: d}
      - {edge: neck, from: d, to: e, curve: [[80, e_y]]}
      - {edge: front, from: e, to: a}
    marks:
      - {mark: notch, edge: front, after: 50 mm}
  - piece: back
    title: Back
    cloth: main
    cut: fold
    fold: centre
    grain: parallel to the centre
    points:
      a: [0, 0]
      b: [width, 0]
      c: [width, up]
      d: [80, up + 30]
      e: [0, up]
    outline:
      - {edge: hem, from: a, to: b}
      - {edge: side, from: b, to: c}
      - {edge: shoulder, from: c, to: d}
      - {edge: neck, from: d, to: e, curve: [[80, e_y]]}
      - {edge: centre, from: e, to: a}
joins:
  - {join: shoulder, title: shoulder seam, a: [front.shoulder], b: [back.shoulder], each_side: true}
  - {join: side, title: side seam, a: [front.side_high, front.side_low], b: [back.side], each_side: true}
edges:
  - {edge: neck, title: neck edge, kind: binding, along: [front.neck, back.neck], across: true, cloth: trim}
  - {edge: front, title: front edge, kind: hem, along: [front.front], each_side: true, depth: 2 cm}
  - {edge: hem, title: hem, kind: hem, along: [front.hem, back.hem], across: true, depth: "length / 20"}
details:
  - {detail: dart, title: Dart, kind: dart, piece: front, each_side: true, between: [side_high, side_low], point: tip, press: down, toward: side_low}
checks:
  - {holds: "neck_length > 100", because: "the neck is only {neck_length} for {neck}", mend: take more}
`

func TestParseFaults(t *testing.T) {
	if _, err := templates.Parse("tabard.yaml", []byte(tabard)); err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		name, old, new string
		line           string // of the fault, as file:line:
		words          []string
	}{
		{"misspelt key", "measures:", "mesures:", ":4:", []string{"measures"}},
		{"no source", "source: made up for these tests\n", "", ":1:", []string{"source"}},
		{"a garment's name in capitals", "garment: tabard", "garment: Tabard", "tabard.yaml", []string{"small letters"}},
		{"least above most", "least: 70 cm, most: 150 cm", "least: 170 cm, most: 150 cm", ":5:", []string{"range"}},
		{"default outside", "default: 92 cm", "default: 9.2 cm", ":5:", []string{"default"}},
		{"bare length", "default: 92 cm", "default: 92", ":5:", []string{"unit"}},
		{"default and formula", `reckoned: "bust / 3"`, `reckoned: "bust / 3", default: 30 cm`, ":6:", []string{"not both"}},
		{"reckoned from a later measure", `reckoned: "bust / 3"`, `reckoned: "leg / 3"`, ":6:", []string{"leg"}},
		{"measure named like a function", "  arm:  {", "  sqrt:  {", ":6:", []string{"meaning in formulas"}},
		{"choice named like a measure", "  length: {title", "  bust: {title", ":8:", []string{"taken"}},
		{"choice without range", ", least: 40 cm, most: 90 cm", "", ":8:", []string{"least and most"}},
		{"choice out of range", "default: 60 cm", "default: 6 cm", ":8:", []string{"default"}},
		{"choice of no number", "default: 1.0", "default: one", ":9:", []string{"not a number"}},
		{"choice that is no word", "default: round", "default: rund", ":10:", []string{"round"}},
		{"words with a range", "one_of: [round, square], default: round", "one_of: [round, square], default: round, least: 1", ":10:", []string{"no least or most"}},
		{"circle of values", "quarter: bust / 4 + 20", "quarter: width + 1", ":15:", []string{"width needs quarter needs width"}},
		{"unknown name in a value", "quarter: bust / 4 + 20", "quarter: buts / 4 + 20", ":16:12", []string{"bust"}},
		{"value named like a choice", "  up: length", "  neck: 20", ":17:", []string{"taken"}},
		{"formula cut short", "quarter: bust / 4 + 20", "quarter: bust / 4 +", ":16:", []string{"too early"}},
		{"unknown cloth", "cloth: main\n    cut: pair", "cloth: mian\n    cut: pair", ":21:", []string{"main"}},
		{"unknown way of cutting", "cut: pair", "cut: bias", ":22:", []string{"pair"}},
		{"count of pieces out of all measure", "cut: fold", "cut: fold\n    count: 30", ":43:", []string{"count"}},
		{"no fold named", "    fold: centre\n", "", ":43:", []string{"fold"}},
		{"unknown fold", "fold: centre", "fold: center", ":47:", []string{"centre"}},
		{"one figure for a point", "tip: [width - 100, up / 2 + 10]", "tip: [width - 100]", ":32:", []string{"two figures"}},
		{"point that uses a later one", "b: [width, 0]\n      low", "b: [c_x, 0]\n      low", ":26:", []string{"c_x"}},
		{"point named twice over", "  up: length", "  up: length\n  a_x: 2", ":26:", []string{"a_x", "taken"}},
		{"outline broken off", "from: b, to: low}", "from: low, to: low}", ":35:", []string{"ends at \"b\""}},
		{"unknown point", "from: c, to: d}\n      - {edge: neck, from: d, to: e, curve: [[80, e_y]]}\n      - {edge: front", "from: c, to: dd}\n      - {edge: neck, from: d, to: e, curve: [[80, e_y]]}\n      - {edge: front", ":38:", []string{"did you mean \"d\""}},
		{"edge drawn twice", "edge: front, from: e, to: a}", "edge: hem, from: e, to: a}", ":40:", []string{"stands twice"}},
		{"three control points", "curve: [[80, e_y]]}\n      - {edge: front", "curve: [[80, e_y], [80, e_y], [80, e_y]]}\n      - {edge: front", ":39:", []string{"one or two"}},
		{"a curved mouth", "dart: dart}", "dart: dart, curve: [[1, 1]]}", ":36:", []string{"no curve of its own"}},
		{"a mark nowhere", "edge: front, after: 50 mm", "edge: front", ":19:", []string{"notch"}},
		{"a mark on no edge", "edge: front, after: 50 mm", "edge: frnt, after: 50 mm", ":42:", []string{"front"}},
		{"unknown edge in a join", "b: [back.shoulder]", "b: [back.sholder]", ":62:", []string{"back.shoulder"}},
		{"piece without edge", "b: [back.shoulder]", "b: [back]", ":62:", []string{"back"}},
		{"a chain that jumps", "a: [front.side_high, front.side_low]", "a: [front.side_high, front.hem]", ":63:", []string{"front.hem does not go on where front.side_high ends"}},
		{"sides not said", "b: [back.side], each_side: true", "b: [back.side]", ":63:", []string{"each_side"}},
		{"strain too great", "b: [back.side], each_side: true", "b: [back.side], each_side: true, strain: 4", ":63:", []string{"strain"}},
		{"half an ease", "b: [back.side], each_side: true", "b: [back.side], each_side: true, ease: [2 mm]", ":63:", []string{"ease"}},
		{"one edge joined twice", "b: [back.side]", "b: [back.shoulder]", ":63:", []string{"used for the join shoulder already"}},
		{"both sides the same", "b: [back.side]", "b: [front.side_low]", ":63:", []string{"on both sides"}},
		{"an edge left over", "  - {edge: front, title: front edge, kind: hem, along: [front.front], each_side: true, depth: 2 cm}\n", "", ":40:", []string{"nothing becomes of the edge front.front"}},
		{"unknown kind of edge", "kind: binding", "kind: bindin", ":65:", []string{"binding"}},
		{"across and each side", "across: true, cloth: trim", "across: true, each_side: true, cloth: trim", ":65:", []string{"not both"}},
		{"across that misses the centre", "along: [front.front], each_side: true", "along: [front.front], across: true", ":66:", []string{"neither of its ends"}},
		{"closed that is open", "across: true, cloth: trim", "across: true, closed: true, cloth: trim", ":65:", []string{"ends do not meet"}},
		{"closed by nothing", "each_side: true, depth: 2 cm", "each_side: true, closed_by: side, depth: 2 cm", ":66:", []string{"not closed"}},
		{"no such join", "each_side: true, depth: 2 cm", "each_side: true, closed_by: sied, depth: 2 cm", ":66:", []string{"side"}},
		{"unknown trim", "cloth: trim}", "cloth: trimm}", ":65:", []string{"trim"}},
		{"formula in a depth", `depth: "length / 20"`, `depth: "lenght / 20"`, ":67:", []string{"length"}},
		{"a dart that is not drawn", "dart: dart}", "dart: drat}", ":36:", []string{"dart"}},
		{"a dart between others", "between: [side_high, side_low]", "between: [side_high, hem]", ":69:", []string{"hem"}},
		{"a dart to no point", "point: tip", "point: tap", ":69:", []string{"tip"}},
		{"a dart in no piece", "piece: front, each_side", "piece: frond, each_side", ":69:", []string{"front"}},
		{"a check on no length", "neck_length > 100", "nek_length > 100", ":71:", []string{"neck_length"}},
		{"a check that is a number", "neck_length > 100", "neck_length + 100", ":71:", []string{"true or false"}},
	} {
		t.Run(x.name, func(t *testing.T) {
			text := strings.Replace(tabard, x.old, x.new, 1)
			if text == tabard {
				t.Fatal("nothing was changed")
			}
			g, err := templates.Parse("tabard.yaml", []byte(text))
			if err == nil || g != nil {
				t.Fatalf("accepted, or a garment with the error %v", err)
			}
			fs, ok := errors.AsType[form.Faults](err)
			if !ok || len(fs) == 0 {
				t.Fatalf("not faults but %v", err)
			}
			for _, word := range append(x.words, x.line) {
				if !strings.Contains(err.Error(), word) {
					t.Errorf("%q is not in\n%v", word, err)
				}
			}
			if x.name == "circle of values" && len(fs) != 1 {
				t.Errorf("a circle is told in %d faults:\n%v", len(fs), err)
			}
			for _, f := range fs {
				if strings.ToLower(f.Message[:1]) != f.Message[:1] || strings.HasSuffix(f.Message, ".") {
					t.Errorf("message %q", f.Message)
				}
			}
		})
	}
}

// A centre back seam joins a piece to its own mirror image.
func TestCentreSeam(t *testing.T) {
	text := strings.NewReplacer("cut: fold\n    fold: centre", "cut: pair",
		"joins:\n", "joins:\n  - {join: centre, title: centre back seam, a: [back.centre], b: [back.centre]}\n").Replace(tabard)
	text = strings.Replace(text, "b: [back.centre]}", "b: [back.centre]}", 1)
	g, err := templates.Parse("tabard.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	m, err := g.Make(nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if j := m.Joins[0]; j.Copies != 1 || j.LengthA != j.LengthB || j.LengthA == 0 {
		t.Errorf("the centre seam is %+v", j)
	}
}

// An outline may be drawn the other way round; it is turned, and walks the same.
func TestOutlineDrawnClockwise(t *testing.T) {
	text := strings.Replace(tabard, `      - {edge: hem, from: a, to: b}
      - {edge: side, from: b, to: c}
      - {edge: shoulder, from: c, to: d}
      - {edge: neck, from: d, to: e, curve: [[80, e_y]]}
      - {edge: centre, from: e, to: a}
`, `      - {edge: centre, from: a, to: e}
      - {edge: neck, from: e, to: d, curve: [[80, e_y]]}
      - {edge: shoulder, from: d, to: c}
      - {edge: side, from: c, to: b}
      - {edge: hem, from: b, to: a}
`, 1)
	if _, err := templates.Parse("tabard.yaml", []byte(text)); err == nil {
		t.Fatal("shoulders that run against each other were taken to match")
	}
	text = strings.Replace(text, "b: [back.shoulder], each_side: true", "b: [back.shoulder], each_side: true, opposite: true", 1)
	text = strings.Replace(text, "b: [back.side], each_side: true", "b: [back.side], each_side: true, opposite: true", 1)
	g, err := templates.Parse("tabard.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	m, err := g.Make(nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := makeTabard(t, nil, nil)
	for i := range m.Treatments {
		near(t, m.Treatments[i].Name, float64(m.Treatments[i].Length), float64(want.Treatments[i].Length), 1e-6)
		near(t, m.Treatments[i].Name+" turning", m.Treatments[i].Turning, want.Treatments[i].Turning, 1e-6)
		near(t, m.Treatments[i].Name+" flare", m.Treatments[i].Flare, want.Treatments[i].Flare, 1e-6)
	}
}

func FuzzParse(f *testing.F) {
	f.Add(tabard)
	f.Fuzz(func(t *testing.T, data string) {
		if len(data) > 20_000 {
			return
		}
		g, err := templates.Parse("f.yaml", []byte(data))
		if (g == nil) == (err == nil) {
			t.Fatalf("garment %v, error %v", g, err)
		}
		if g == nil {
			return
		}
		if m, err := g.Make(nil, nil); (m == nil) == (err == nil) {
			t.Fatalf("made %v, error %v", m, err)
		}
	})
}
