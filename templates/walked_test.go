package templates_test

import (
	"testing"

	"bodkin/seams/form"
	"bodkin/templates"
	"bodkin/templates/outline"
)

// Parts that are walked along one another, at the published bodies of women: a rounded
// sleeve cap is 2 to 4 cm longer than its armhole, that of a shirt or T-shirt as long,
// with its notch where the shoulder seam meets it; a collar's stand is as long as the
// neck line that it goes round, a band or facing as what it is sewn to, and both
// inseams of trousers alike. Common practice, no source (cap ease and collar).
func TestPartsWalkedAlongEachOther(t *testing.T) {
	caps, notches, parts := 0, 0, 0
	for _, at := range []float64{0, 1, 2} {
		body := func(g *templates.Garment) (size form.Pairs[form.Text]) {
			for _, m := range g.Measures.Keys() {
				if cm, ok := womenMeasured[m]; ok {
					size = append(size, pairs(m, between(t, cm, at))...)
				}
			}
			return size
		}
		for _, x := range []struct {
			garment     string
			least, most float64 // mm of ease in the cap
		}{{"waisted-dress", 20, 40}, {"shirt-blouse", 0, 0}, {"shirt-dress", 0, 0}, {"knit-tee", 0, 0}} {
			g := load(t, x.garment)
			m, err := g.Make(body(g), nil)
			if err != nil {
				t.Errorf("%s at %g: %v", x.garment, at, err)
				continue
			}
			for _, j := range m.Joins {
				if j.Name != "sleeve-armhole" {
					continue
				}
				caps++
				if ease := float64(j.LengthA - j.LengthB); ease < x.least-0.01 || ease > x.most+0.01 {
					t.Errorf("%s at %g: the cap is %.1f mm longer than the armhole, and should be by %g to %g", x.garment, at, ease, x.least, x.most)
				}
				front := 0.0 // of the armhole, as far as the shoulder seam
				for _, part := range j.B {
					if part.Piece == "front" {
						e := edge(t, m, part.Piece, part.Edge)
						front += e.Length()
					}
				}
				sleeve := j.A[0].Piece
				crown := edge(t, m, sleeve, "cap")
				share := front * float64(j.LengthA/j.LengthB)
				for _, k := range piece(t, m, sleeve).Marks {
					if k.Name != "shoulder" {
						continue
					}
					if x.garment == "waisted-dress" || x.garment == "knit-tee" { // the shoulder seam lies at the shoulder
						notches++
						along, _ := crown.Nearest(outline.Point{X: k.X, Y: k.Y})
						near(t, x.garment+": the notch of the cap from the front", min(along, crown.Length()-along), min(share, crown.Length()-share), 1)
					}
				}
			}
		}
		for _, x := range []struct{ garment, name string }{
			{"shirt-blouse", "collar"}, {"shirt-dress", "collar"}, {"shirt-blouse", "cuff"}, {"darted-trousers", "waistband"},
			{"circle-skirt", "waistband"}, {"six-gore-skirt", "waistband"}, {"lined-waistcoat", "lining"},
		} {
			g := load(t, x.garment)
			m, err := g.Make(body(g), nil)
			if err != nil {
				t.Errorf("%s at %g: %v", x.garment, at, err)
				continue
			}
			for _, d := range m.Details {
				if d.Name != x.name {
					continue
				}
				parts++
				own := 0.0
				for _, c := range d.Fits {
					e, p := edge(t, m, c.Piece, c.Edge), piece(t, m, c.Piece)
					if own += e.Length(); d.Across && p.Cut != "one" {
						own += e.Length()
					}
				}
				near(t, x.garment+": "+x.name+" against its edge", own, float64(d.Length-d.Eased), 1)
			}
		}
		for _, name := range []string{"darted-trousers", "pull-on-trousers"} {
			g := load(t, name)
			m, err := g.Make(body(g), nil)
			if err != nil {
				t.Errorf("%s at %g: %v", name, at, err)
				continue
			}
			near(t, name+": inseams", edge(t, m, "front", "inseam").Length(), edge(t, m, "back", "inseam").Length(), 1)
		}
	}
	if caps != 3*4 || notches != 3*2 || parts != 3*7 {
		t.Errorf("%d caps, %d notches and %d parts were walked", caps, notches, parts)
	}
}
