package templates_test

import (
	"testing"

	"bodkin/templates"
)

// A waistcoat with darts measures round the waist what it should, 8 cm more than
// the body, darts shut; its lining has the same darts. It is darted of its own
// accord where the waist is much smaller than the bust.
func TestWaistcoatDarts(t *testing.T) {
	for _, x := range []struct {
		waist string
		want  float64 // mm round the waist; 0: no darts
	}{
		{"76 cm", 0}, {"68 cm", 760}, {"64 cm", 720}, {"62 cm", 700},
	} {
		m := makeIt(t, "lined-waistcoat", pairs("bust", "92 cm", "waist", x.waist, "hip", "98 cm"), nil)
		if darts(m) != (x.want > 0) {
			t.Errorf("with a waist of %s it has darts: %v", x.waist, darts(m))
		}
		if x.want > 0 {
			near(t, "round a waist of "+x.waist, waistOf(t, m), x.want, 6)
		}
	}
	m := makeIt(t, "lined-waistcoat", nil, pairs("darts", "hem"))
	if !darts(m) {
		t.Error("no darts, though they are asked for")
	}
	shut := map[string]float64{}
	for _, d := range m.Details {
		if d.Kind == "dart" {
			shut[d.Name] = float64(d.Width)
		}
	}
	near(t, "front dart of the lining", shut["lining-front-front-dart"], shut["front-dart"], 1e-9)
	near(t, "back dart of the lining", shut["lining-back-back-dart"], shut["back-dart"], 1e-9)
	if len(shut) != 4 {
		t.Errorf("the darts are %v", shut)
	}
}

func darts(m *templates.Made) bool {
	for _, d := range m.Details {
		if d.Kind == "dart" {
			return true
		}
	}
	return false
}

// waistOf is twice what front and back measure at the level of the waist from
// the centre to the side, less what their darts take there by their straight legs.
func waistOf(t *testing.T, m *templates.Made) float64 {
	t.Helper()
	at := func(e string, p string) float64 {
		x := edge(t, m, p, e)
		best, found := 0.0, false
		for s := 0.0; s <= x.Length(); s += 0.25 {
			if q, _ := x.At(s); q.Y > -0.2 && q.Y < 0.2 {
				best, found = q.X, true
			}
		}
		if !found {
			t.Fatalf("%s.%s does not pass the waist", p, e)
		}
		return best
	}
	sum := at("side", "front") + at("side", "back") - at("centre", "back")
	for _, d := range m.Details {
		if d.Name == "front-dart" || d.Name == "back-dart" {
			sum -= float64(d.Width) * d.Point.Y / (d.Point.Y - d.Ends[0].Y)
		}
	}
	return 2 * sum
}
