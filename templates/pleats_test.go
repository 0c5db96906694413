package templates_test

import (
	"strings"
	"testing"

	"bodkin/templates"
)

// What is to be pleated is the width of the material less the width wanted,
// reckoned at waist and hips by themselves and shared among the pleats: I. D.
// Conover, A Complete Course in Dressmaking, vol. 5, Skirts, 1922.
func TestPleatsAtWaistAndHips(t *testing.T) {
	m := makeIt(t, "pleated-skirt", pairs("waist", "76 cm", "hip", "98 cm"), pairs("fullness", "3", "ease", "6 cm"))
	material := edge(t, m, "front", "hem").Length()
	near(t, "pleats that meet behind take three times the width at the hips (common practice)", material, 3*1040/4, 1e-6)
	for _, d := range m.Details {
		if d.Kind != "pleat" {
			continue
		}
		near(t, d.Name+": lines", float64(len(d.Lines)), 16, 0)
		near(t, d.Name+" at the waist", 2*float64(d.Depth)*4, material-776/4, 1e-6)
		waist, hips := 0.0, 0.0
		for i := 0; i < len(d.Lines); i += 4 { // line and fold, each above and below the hips
			line, fold := d.Lines[i], d.Lines[i+2]
			waist += fold[0].X - line[0].X
			hips += fold[1].X - line[1].X
		}
		near(t, d.Name+": lines at the waist", waist, material-776/4, 1e-6)
		near(t, d.Name+": lines at the hips", hips, material-1040/4, 1e-6)
	}
	var band templates.Detail
	for _, d := range m.Details {
		if d.Kind == "waistband" {
			band = d
		}
	}
	near(t, "the band", float64(band.Length), 776, 1e-6)
}

// A tuck takes up twice its depth (geometry): the side that is drawn longer by as
// much is as long as it should be when the tucks are sewn.
func TestTucksTakeUpTwiceTheirDepth(t *testing.T) {
	plain := makeIt(t, "apron", nil, pairs("tucks", "none"))
	tucked := makeIt(t, "apron", nil, pairs("tucks", "three"))
	near(t, "cut longer", edge(t, tucked, "body", "side").Length()-edge(t, plain, "body", "side").Length(), 3*2*10, 1e-6)
	near(t, "as long when sewn", float64(treatment(t, tucked, "side").Length), float64(treatment(t, plain, "side").Length), 1e-6)
}

// Gathers make an edge as long as they are drawn up to: the back of the tabard,
// cut wider at its side by what is gathered there, fits the front.
func TestGathersDrawAnEdgeUp(t *testing.T) {
	text := strings.NewReplacer(
		"details:\n", "details:\n  - {detail: side-gathers, title: side gathers, kind: gathers, piece: back, each_side: true, takes: [back.side], length: 600}\n",
		"b: [back.side], each_side: true}", "b: [back.side], each_side: true, ease: [drawn - 600, drawn - 600]}",
		"values:\n", "values:\n  drawn: up + 20 - 20\n",
	).Replace(tabard)
	g, err := templates.Parse("tabard.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	m, err := g.Make(nil, pairs("length", "70 cm"))
	if err != nil {
		t.Fatal(err)
	}
	side := edge(t, m, "back", "side").Length()
	for _, d := range m.Details {
		if d.Kind == "gathers" {
			near(t, "cut", float64(d.Length), side, 1e-9)
			near(t, "drawn up", float64(d.Eased), side-600, 1e-9)
		}
	}
	for _, j := range m.Joins {
		if j.Name == "side" {
			near(t, "what is sewn to the front", float64(j.LengthB), 600, 1e-9)
		}
	}
	if _, err := g.Make(nil, pairs("length", "45 cm")); err == nil || !strings.Contains(err.Error(), "cannot draw an edge of") {
		t.Errorf("an edge is drawn up to more than its length: %v", err)
	}
}
