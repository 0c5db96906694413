package templates_test

import (
	"errors"
	"strings"
	"testing"

	"bodkin/seams/form"
	"bodkin/templates"
)

func tabardGarment(t fataler, replace ...string) *templates.Garment {
	t.Helper()
	g, err := templates.Parse("tabard.yaml", []byte(strings.NewReplacer(replace...).Replace(tabard)))
	if err != nil {
		t.Fatalf("%v", err)
	}
	return g
}

func makeTabard(t fataler, size, choices form.Pairs[form.Text], replace ...string) *templates.Made {
	t.Helper()
	m, err := tabardGarment(t, replace...).Make(size, choices)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return m
}

func TestValuesAsUsed(t *testing.T) {
	m := makeTabard(t, pairs("bust", "36 in"), pairs("neck", "square", "fullness", "1.5"))
	want := []templates.Value{
		{Name: "bust", Title: "Bust", MM: 914.4, IsLength: true},
		{Name: "arm", Title: "Arm", MM: 304.8, IsLength: true, Default: true},
		{Name: "length", Title: "Length", MM: 600, IsLength: true, Default: true},
		{Name: "fullness", Title: "Fullness", Number: 1.5},
		{Name: "neck", Title: "Neck", Word: "square"},
	}
	got := append(m.Measures, m.Choices...)
	if len(got) != len(want) {
		t.Fatalf("%d values, want %d", len(got), len(want))
	}
	for i := range want {
		near(t, want[i].Name, float64(got[i].MM), float64(want[i].MM), 1e-9)
		got[i].MM = want[i].MM
		if got[i] != want[i] {
			t.Errorf("got %+v, want %+v", got[i], want[i])
		}
	}
	near(t, "width by formula", edge(t, m, "back", "hem").Length(), 1.5*(914.4/4+20), 1e-9)
}

func TestMadeStructure(t *testing.T) {
	m := makeTabard(t, nil, nil)
	front := piece(t, m, "front")
	if front.Count != 2 || piece(t, m, "back").Count != 1 || piece(t, m, "back").FoldEdge != "centre" {
		t.Errorf("front %d, back %+v", front.Count, piece(t, m, "back"))
	}
	uses := map[string]string{}
	for _, e := range front.Edges {
		uses[e.Name] = e.Use
	}
	for name, want := range map[string]string{"hem": "edge hem", "side_low": "join side", "mouth": "dart dart",
		"side_high": "join side", "shoulder": "join shoulder", "neck": "edge neck", "front": "edge front"} {
		if uses[name] != want {
			t.Errorf("%s is used for %q, want %q", name, uses[name], want)
		}
	}
	neck := treatment(t, m, "neck")
	near(t, "neck over both halves", float64(neck.Length), 2*(edge(t, m, "front", "neck").Length()+edge(t, m, "back", "neck").Length()), 1e-9)
	if !neck.Hollow || !neck.Across || neck.Copies != 1 || neck.Cloth != "trim" {
		t.Errorf("neck %+v", neck)
	}
	if f := treatment(t, m, "front"); f.Copies != 2 || f.Depth != 20 || f.TightestRadius != 1e6 || f.Turning != 0 {
		t.Errorf("front edge %+v", f)
	}
	near(t, "depth by formula", float64(treatment(t, m, "hem").Depth), 30, 1e-9)
	side := m.Joins[1]
	near(t, "side without the dart", float64(side.LengthA), 600, 1e-9)
	if side.Copies != 2 || side.Eased != 0 {
		t.Errorf("side %+v", side)
	}
	d := m.Details[0]
	near(t, "mouth", float64(d.Width), 20, 1e-9)
	if d.Ends[0].Y < d.Ends[1].Y || d.Copies != 2 || d.Point.X >= d.Fold.X {
		t.Errorf("dart %+v", d)
	}
	var names []string
	for _, k := range front.Marks {
		names = append(names, k.Name)
	}
	if got := strings.Join(names, ", "); got != "notch, Dart point, Dart leg, Dart leg" {
		t.Errorf("marks: %s", got)
	}
	near(t, "a notch 5 cm down the front edge", front.Marks[0].Y, 600+50-100-50, 1e-9)
	if n := len(front.Corners); n != len(front.Edges) || front.Corners[0].Before != "hem" || front.Corners[0].After != "side_low" {
		t.Errorf("corners %+v", front.Corners)
	}
	if roles := m.Garment.Roles(); len(roles) != 2 || roles[0].Name != "main" || !roles[1].Optional {
		t.Errorf("roles %+v", roles)
	}
}

func TestMakeRefuses(t *testing.T) {
	at := func(name, value string) form.Pairs[form.Text] {
		place := form.Place{File: "job.yaml", Line: 3, Column: 9}
		return form.Pairs[form.Text]{{Key: form.Text{Value: name, At: place}, Value: form.Text{Value: value, At: place}}}
	}
	for _, x := range []struct {
		name          string
		size, choices form.Pairs[form.Text]
		replace       []string
		words         []string
	}{
		{"unknown measure", at("buts", "92 cm"), nil, nil, []string{"job.yaml:3:9", "buts", `did you mean "bust"`}},
		{"unknown choice", nil, at("lenght", "60 cm"), nil, []string{"job.yaml:3:9", `did you mean "length"`}},
		{"no unit", at("bust", "92"), nil, nil, []string{"job.yaml:3:9", "bust", "unit"}},
		{"negative", at("bust", "-92 cm"), nil, nil, []string{"job.yaml:3:9", "70 cm to 150 cm"}},
		{"metres for centimetres", at("bust", "92 m"), nil, nil, []string{"outside", "look at the unit"}},
		{"words for a length", at("bust", "wide"), nil, nil, []string{"bust"}},
		{"choice out of range", nil, at("length", "2 m"), nil, []string{"40 cm to 90 cm"}},
		{"number out of range", nil, at("fullness", "3"), nil, []string{"0.5 to 2"}},
		{"number with a unit", nil, at("fullness", "3 cm"), nil, []string{"not a number"}},
		{"not a number", nil, at("fullness", "NaN"), nil, []string{"not a number"}},
		{"no such word", nil, at("neck", "squaer"), nil, []string{`did you mean "square"`, "round, square"}},
		{"measure missing", nil, nil, []string{"default: 92 cm, ", ""}, []string{`"bust" is missing`, "round the bust"}},
		{"sides that differ", nil, nil, []string{"b: [width, 0]\n      c: [width, up]", "b: [width, 0]\n      c: [width, up - 7]"},
			[]string{"tabard.yaml:63", "front.side_high + front.side_low is 600.0 mm", "back.side is 593.0 mm", "difference of 7.0 mm"}},
		{"ease beyond what is declared", nil, nil, []string{"c: [width, up]", "c: [width, up - 7]", "b: [back.side], each_side: true", "b: [back.side], each_side: true, ease: [0 mm, 5 mm]"},
			[]string{"difference of 7.0 mm"}},
		{"an outline that crosses itself", nil, nil, []string{"e: [0, d_y - 100]", "e: [0 - 2 * width, 0 - 400]"}, []string{"tabard.yaml:19", "front", "crosses itself"}},
		{"an edge of no length", nil, nil, []string{"d: [80, up + 30]", "d: [width, up]"}, []string{"back", "shoulder", "no segments"}},
		{"a crooked fold", nil, nil, []string{"    points:\n      a: [0, 0]\n      b: [width, 0]\n      c: [width, up]", "    points:\n      a: [0, 0]\n      b: [width, 0]\n      c: [width, up]",
			"{edge: centre, from: e, to: a}", "{edge: centre, from: e, to: a, curve: [[20, 100]]}"}, []string{"fold must be straight"}},
		{"legs that differ", nil, nil, []string{"tip: [width - 100, up / 2 + 10]", "tip: [width - 100, up / 2 + 30]"}, []string{"tabard.yaml:69", "legs are"}},
		{"a division by nothing", nil, nil, []string{"quarter: bust / 4 + 20", "quarter: bust / (up - length) + 20"}, []string{"tabard.yaml:16", "division by zero"}},
		{"a depth below nothing", nil, nil, []string{"each_side: true, depth: 2 cm", "each_side: true, depth: up - 200 - bust / 2"},
			[]string{"tabard.yaml:66", "comes out as -60 mm, less than nothing"}},
		{"a law broken", nil, nil, []string{"neck_length > 100", "neck_length > 1000"}, []string{"tabard.yaml:71", "the neck is only", "cm for round", "take more"}},
		{"a law that a given measure breaks", at("bust", "80 cm"), nil, []string{"neck_length > 100", "bust > 810"}, []string{"job.yaml:3:9", "take more"}},
		{"a law that a value breaks which rests on a given measure", at("bust", "80 cm"), nil, []string{"neck_length > 100", "width > 230"}, []string{"job.yaml:3:9", "take more"}},
	} {
		t.Run(x.name, func(t *testing.T) {
			m, err := tabardGarment(t, x.replace...).Make(x.size, x.choices)
			if err == nil || m != nil {
				t.Fatal("made")
			}
			if _, ok := errors.AsType[form.Faults](err); !ok {
				t.Fatalf("not faults but %v", err)
			}
			for _, word := range x.words {
				if !strings.Contains(err.Error(), word) {
					t.Errorf("%q is not in\n%v", word, err)
				}
			}
		})
	}
}

func TestDeclaredEase(t *testing.T) {
	m := makeTabard(t, nil, nil, "c: [width, up]", "c: [width, up - 4]", "d: [80, up + 30]", "d: [80, up + 26]", "e: [0, up]", "e: [0, up - 4]",
		"b: [back.side], each_side: true", "b: [back.side], each_side: true, ease: [0 mm, 5 mm]")
	near(t, "ease", float64(m.Joins[1].Eased), 4, 1e-6)
}

// A band carried round a square corner meets a point, not a curve.
func TestCornerInAChain(t *testing.T) {
	m := makeTabard(t, nil, nil,
		"  - {edge: front, title: front edge, kind: hem, along: [front.front], each_side: true, depth: 2 cm}\n", "",
		"along: [front.neck, back.neck]", "along: [front.front, front.neck, back.neck]", "curve: [[80, e_y]]}\n      - {edge: front", "curve: [[80, d_y]]}\n      - {edge: front")
	neck := treatment(t, m, "neck")
	if neck.TightestRadius != 0 {
		t.Errorf("a corner has the radius %.1f", neck.TightestRadius)
	}
}
