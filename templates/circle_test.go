package templates_test

import (
	"math"
	"strings"
	"testing"

	"bodkin/templates"
)

// The radius of the waist seam for a waist of 71 cm: arithmetic, waist / (2 pi
// share), worked out to 11.3, 15.1, 22.6 and 45.2 cm for a full, three-quarter, half and
// quarter circle.
func TestCircleSkirtRadius(t *testing.T) {
	for circle, cm := range map[string]float64{"full": 11.3, "three-quarter": 15.1, "half": 22.6, "quarter": 45.2} {
		m := makeIt(t, "circle-skirt", pairs("waist", "69.4 cm", "hip", "90 cm"), pairs("circle", circle)) // and 16 mm of ease
		waist := edge(t, m, "front", "waist")
		chord := waist.From().Distance(waist.To())
		share := map[string]float64{"full": 1, "three-quarter": 0.75, "half": 0.5, "quarter": 0.25}[circle]
		near(t, circle, chord/2/math.Sin(share*math.Pi/4), 10*cm, 0.6)
		near(t, circle+", the band", edge(t, m, "waistband", "outer").Length(), 710, 1e-6)
	}
}

// The usual slip, a waist divided by four, makes the hole far too large: for 32 in
// it is 50.3 in round (a dressmaker's page on the mistake, common practice). The
// band does not fit it, and the garment is refused.
func TestCircleSkirtRadiusOfAQuarterWaist(t *testing.T) {
	data, file := templates.Text("circle-skirt")
	text := strings.Replace(string(data), "band_length / (2 * 3.14159265 * share)", "band_length / 4", 1)
	g, err := templates.Parse(file, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	_, err = g.Make(pairs("waist", "796.8 mm"), nil) // 32 in with 16 mm of ease
	if err == nil {
		t.Fatal("made")
	}
	for _, words := range []string{"do not fit", "waistband.outer is 812.8 mm", "a difference of 464"} {
		if !strings.Contains(err.Error(), words) {
			t.Errorf("%q is not in %v", words, err)
		}
	}
}
