package seams_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"bodkin/seams"
	"bodkin/seams/form"
)

const measured = `- construction: mine
  title: Mine
  for: edge
  kind: casing
  inside: enclosed
  sizes:
    first: "workroom.house('mine', 6)"
    second: "first + 1"
    turn: "cloth.thickness"
    trim: "3"
  allowance: "first + second + turn"
  allowance_b: "allowance + 2"
  finished: "second"
  strip: {on: bias, width: "4 * second", ends: "6"}
  elastic: {width: "edge.elastic", length: "edge.grip * 0.9"}
  passes:
    - {does: pin, text: "Pin {elastic_length} to {strip_width}."}
    - {does: stitch, stitch: "301", stitch_mm: "cloth.sheer ? 1.5 : 2.5", when: "workroom.forms('301')", text: "Stitch {first}."}
    - {does: hand-stitch, stitch: slip, when: "!workroom.forms('301')", text: "Sew {allowance}."}
  checks:
    - {after_pass: 2, what: "row", expect: "first", tolerance: "1.5"}
    - {after_pass: 3, what: "width", expect: "finished_width", tolerance: "1.5"}
  figure:
    - {ply: a, through: [["0", "0"], ["second * 2", "1 + 1"]]}
    - {size: elastic_width, through: [["0", "2"], ["edge.elastic", "2"]]}
  source: mine
`

func measure(t testing.TB, data string, facts seams.Facts) (seams.Sized, *seams.Construction, error) {
	t.Helper()
	s := load(t, seams.File{Name: "mine.yaml", Data: []byte(data)})
	c, err := s.Construction("mine")
	if err != nil {
		t.Fatal(err)
	}
	sized, err := c.Measure(facts)
	return sized, c, err
}

func TestMeasure(t *testing.T) {
	data := strings.Replace(measured, "finished_width", "second", 1)
	facts := seams.Facts{
		Cloth: seams.ClothFacts{Thickness: 0.25, Sheer: true}, Edge: seams.LineFacts{Elastic: 10, Grip: 700},
		Workroom: seams.WorkroomFacts{Forms: func(s string) bool { return s == "301" }, House: func(name string, otherwise float64) float64 {
			if name == "mine" {
				return 5
			}
			return otherwise
		}},
	}
	got, c, err := measure(t, data, facts)
	if err != nil {
		t.Fatal(err)
	}
	want := seams.Sized{
		Sizes:     []seams.Size{{Name: "first", MM: 5}, {Name: "second", MM: 6}, {Name: "turn", MM: 0.25}, {Name: "trim", MM: 3}},
		Allowance: 11.25, AllowanceB: 13.25, Finished: 6, Source: "mine",
		Strip: &seams.SizedStrip{Width: 24, Ends: 6}, Elastic: &seams.SizedElastic{Width: 10, Length: 630},
		Passes: []seams.SizedPass{{Number: 1, Pass: &c.Passes[0]}, {Number: 2, Pass: &c.Passes[1], StitchMM: 1.5}},
		Checks: []seams.SizedCheck{{AfterPass: 2, What: "row", Expect: 5, Tolerance: 1.5}, {AfterPass: 2, What: "width", Expect: 6, Tolerance: 1.5}},
		Figure: []seams.Drawn{{Item: &c.Figure[0], Through: [][2]float64{{0, 0}, {12, 2}}},
			{Item: &c.Figure[1], Through: [][2]float64{{0, 2}, {10, 2}}, MM: 10}},
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	for name, want := range map[string]float64{"first": 5, "allowance": 11.25, "finished": 6, "strip_width": 24, "elastic_width": 10, "elastic_length": 630} {
		if mm, ok := got.Size(name); !ok || mm != want {
			t.Errorf("size %s is %v, %v; want %v", name, mm, ok, want)
		}
	}
	if _, ok := got.Size("third"); ok {
		t.Error("there is a third size")
	}
	// By hand: the other pass, and no fact functions given.
	facts.Workroom = seams.WorkroomFacts{}
	got, _, err = measure(t, data, facts)
	if err != nil || len(got.Passes) != 2 || got.Passes[1].Number != 3 || got.Passes[1].StitchMM != 0 || got.Checks[0].AfterPass != 1 || got.Sizes[0].MM != 6 {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestMeasureFaults(t *testing.T) {
	facts := seams.Facts{Cloth: seams.ClothFacts{Thickness: 0.2, Weight: 50}, Edge: seams.LineFacts{Elastic: 10, Grip: 700}}
	good := strings.Replace(measured, "finished_width", "second", 1)
	if _, _, err := measure(t, good, facts); err != nil {
		t.Fatal(err)
	}
	cases := []struct{ was, is, want string }{
		{`allowance: "first + second + turn"`, `allowance: "first + second"`,
			"mine.yaml:1:3: mine: the seam does not close: first 6 + second 7 + turn 0.2 = 13.2 mm, and the allowance is 13 mm"},
		{`trim: "3"`, `trim: "7"`, "mine.yaml:1:3: mine: the edges trimmed to 7 mm reach the second row at 7 mm"},
		{`allowance: "first + second + turn"`, `allowance: "-1"`, "mine.yaml:11:14: mine: the allowance comes out as -1 mm"},
		{`width: "4 * second"`, `width: "0"`, "mine.yaml:14:28: mine: the width of the strip comes out as 0 mm"},
		{`length: "edge.grip * 0.9"`, `length: "edge.grip - 700"`, "mine.yaml:15:44: mine: the length of the elastic comes out as 0 mm"},
		{`tolerance: "1.5"`, `tolerance: "0"`, "mine.yaml:21:64: mine: the tolerance comes out as 0 mm"},
		{`second: "first + 1"`, `second: "first / (cloth.weight - 50)"`, "mine.yaml:8:20: a division by zero"},
	}
	var files []seams.File
	for i, c := range cases {
		if !strings.Contains(good, c.was) {
			t.Fatalf("no such text %q", c.was)
		}
		f, _ := apart(i, strings.Replace(good, c.was, c.is, 1))
		files = append(files, f)
	}
	s := load(t, files...)
	for i, c := range cases {
		_, mark := apart(i, "")
		got, err := constructionOf(t, s, "mine"+mark).Measure(facts)
		f, ok := errors.AsType[form.Fault](err)
		if said := strings.ReplaceAll(f.Error(), mark, ""); !ok || !strings.HasPrefix(said, c.want) || got.Allowance != 0 || got.Sizes != nil {
			t.Errorf("%q: %v, %+v\nwant %s", c.is, err, got, c.want)
		}
	}
}

// The law of an enclosed seam on whatever the shelf has: either it closes, or
// it is refused. Facts run over what cloths and houses may be.
func TestLawOfEnclosedSeams(t *testing.T) {
	s := load(t)
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		cloth := rapid.SampledFrom(s.Cloths).Draw(t, "cloth").Facts()
		cloth.Thickness = figure("thickness", 0.05, 3)
		house := figure("house", 1, 25)
		facts := seams.Facts{Cloth: cloth, Applied: cloth,
			Join: seams.LineFacts{Length: 400, TightestRadius: figure("radius", 20, 2000)}, Edge: seams.LineFacts{Length: 400, TightestRadius: 1e6, Elastic: 10, Grip: 700},
			Workroom: seams.WorkroomFacts{Iron: true, Forms: seams.FormedBy(s.Machines), House: func(name string, otherwise float64) float64 {
				if strings.Contains(name, "first") || strings.Contains(name, "second") {
					return house
				}
				return otherwise
			}}}
		for i := range s.Constructions {
			c := &s.Constructions[i]
			if c.Inside != "enclosed" {
				continue
			}
			got, err := c.Measure(facts)
			if err != nil {
				if _, ok := errors.AsType[form.Fault](err); !ok {
					t.Fatalf("%s: %v", c.Name, err)
				}
				continue
			}
			first, ok1 := got.Size("first")
			second, ok2 := got.Size("second")
			turn, ok3 := got.Size("turn")
			trim, ok4 := got.Size("trim")
			if ok1 && ok2 && ok3 && ok4 && (!near(first+second+turn, got.Allowance, 0.01) || trim >= second) {
				t.Fatalf("%s: first %v, second %v, turn %v, trim %v, allowance %v", c.Name, first, second, turn, trim, got.Allowance)
			}
		}
	})
}

func BenchmarkMeasure(b *testing.B) {
	s := load(b)
	facts := seams.Facts{Cloth: seams.ClothFacts{Thickness: 0.2, Weight: 50}, Join: seams.LineFacts{TightestRadius: 1e6}}
	c := &s.Constructions[0]
	if _, err := c.Measure(facts); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Measure(facts); err != nil {
			b.Fatal(err)
		}
	}
}
