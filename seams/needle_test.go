package seams_test

import (
	"math"
	"testing"

	"bodkin/seams"
)

func TestNeedleAndStitchForCloth(t *testing.T) {
	s := load(t)
	for _, c := range []struct {
		cloth               string
		nmLow, nmHigh       int
		point               string
		stitchLow, stitchHi float64
		source              string
	}{
		{"silk-georgette", 60, 60, "sharp", 1.3, 1.7, "Choose regular needle size by fabric weight; Sheers, EC 69-458, Nebraska, 1969 (15 to 20 stitches per inch)"},
		{"silk-chiffon", 60, 65, "sharp", 1.3, 2, "common practice, no source; the same bulletin"},
		{"cotton-voile", 65, 75, "sharp", 1, 2, "a domestic machine manual, p. 6 (US 9 to 11); class notes (light fabric 1 to 2 mm)"},
		{"cotton-lawn", 65, 75, "sharp", 1, 2, "two domestic machine manuals; class notes"},
		{"silk-satin", 60, 70, "sharp", 1.5, 2, "charmeuse: common practice, no source"},
		{"viscose-challis", 65, 80, "universal", 2, 2.5, "medium, 80/12, 12 per inch: class notes"},
		{"quilting-cotton", 75, 90, "universal", 1.7, 2.6, "a domestic machine manual, p. 6 (US 11 to 14); regular seams 10 to 15 per inch"},
		{"linen-medium", 75, 90, "universal", 1.7, 2.6, "the same"},
		{"wool-flannel", 80, 90, "universal", 2.4, 2.6, "a thread and needle table; 10 per inch from memory"},
		{"velvet", 65, 75, "sharp", 2.5, 2.5, "Working with Napped Fabrics, Guideline 4.218; class notes"},
		{"denim", 90, 100, "jeans", 2.8, 3, "a domestic machine manual; common practice"},
		{"wool-coating", 100, 100, "universal", 3, 3, "class notes: 100/16, 9 per inch or 3 mm"},
		{"cotton-jersey", 70, 80, "ballpoint", 2.1, 2.6, "a domestic machine manual; a thread maker's booklet, p. 35 (10 to 12 per inch)"},
		{"polyester-chiffon", 60, 70, "sharp", 1.3, 2, "sheers: Choose regular needle size by fabric weight; Sheers, EC 69-458"},
		{"silk-organza", 60, 70, "sharp", 1.3, 2.1, "65/9 to 70/10, 12 to 15 per inch: from memory; 60/8 for very light: Choose regular needle size by fabric weight"},
		{"cotton-organdie", 60, 80, "sharp", 1, 2, "organdy 60/8: Choose regular needle size by fabric weight; 70 to 80 or 75 on two charts"},
		{"silk-crepe-de-chine", 65, 75, "sharp", 1, 2, "a domestic machine manual, p. 6 (US 9 to 11); class notes (light fabric 1 to 2 mm)"},
		{"cotton-batiste", 65, 75, "sharp", 1, 2, "lawn: two domestic machine manuals"},
		{"cotton-poplin", 70, 80, "universal", 1.8, 2.6, "light woven 70/10 to 80/12: a thread and needle table; casual shirts 10 to 14 per inch: a thread maker's table, 2013"},
		{"silk-taffeta", 70, 90, "sharp", 1.7, 2.6, "medium, 75/11 to 90/14 on a manual that counts taffeta so; light woven 70/10 to 80/12 on another table, by its weight"},
		{"microfibre", 65, 80, "sharp", 1.7, 2.6, "light woven 70/10 to 80/12: a thread and needle table"},
		{"wool-suiting", 80, 90, "universal", 2.1, 2.6, "a thread and needle table; trousers and dresses 10 to 12 per inch: a thread maker's table, 2013"},
		{"wool-crepe", 80, 90, "universal", 2.1, 2.6, "the same"},
		{"wool-tweed", 90, 100, "universal", 2.5, 3, "tweed: two domestic machine manuals (US 14 to 16; 90/14 to 100/16)"},
		{"cotton-corduroy", 90, 100, "universal", 2.5, 3, "corduroy 90/14 to 100/16: a domestic machine manual's needle table"},
		{"cotton-velveteen", 65, 75, "sharp", 2.5, 2.5, "Working with Napped Fabrics, Guideline 4.218; class notes"},
		{"denim-light", 90, 90, "jeans", 2.8, 3, "light denim 90/14: common practice, no source"},
		{"cotton-drill", 75, 90, "jeans", 2.5, 3.2, "gabardine, 75/11 to 90/14: a domestic machine manual's needle table; twill trousers 8 to 10 per inch: a thread maker's table, 2013"},
		{"cotton-canvas", 90, 110, "jeans", 3, 3.5, "canvas 90/14 to 100/16: Choose regular needle size by fabric weight; 3.0 to 3.5 mm from memory"},
		{"cotton-interlock", 70, 80, "ballpoint", 2.1, 2.6, "a domestic machine manual; a thread maker's booklet, p. 35"},
		{"ponte", 80, 90, "ballpoint", 2.5, 3, "from memory"},
		{"polar-fleece", 90, 90, "ballpoint", 3, 3, "from memory"},
		{"stretch-mesh", 70, 80, "stretch", 1.6, 2.1, "as swimwear: a thread maker's booklet, p. 35"},
		{"cotton-jersey-fine", 70, 70, "ballpoint", 2.1, 2.6, "the finest for knits: a domestic machine manual"},
		{"cotton-lace", 65, 80, "universal", 2.5, 2.5, "2.5 mm: common practice, no source; size from memory"},
		{"tulle", 60, 70, "sharp", 1.3, 2.6, "very light, 60/8 to 70/10: Choose regular needle size by fabric weight, a thread and needle table"},
		{"faux-leather", 80, 80, "universal", 3, 3, "common practice, no source"},
		{"swimwear-knit", 70, 80, "stretch", 1.6, 2.1, "a thread maker's booklet, p. 35 (12 to 16 per inch)"},
	} {
		cloth, err := s.Cloth(c.cloth)
		if err != nil {
			t.Error(err)
			continue
		}
		n, err := s.NeedleFor(seams.Facts{Cloth: cloth.Facts()})
		if err != nil || n.NM < c.nmLow || n.NM > c.nmHigh || n.Point != c.point || n.Stitch < c.stitchLow || n.Stitch > c.stitchHi {
			t.Errorf("%s: %+v, %v; want NM %d to %d %s, %v to %v mm (%s)", c.cloth, n, err, c.nmLow, c.nmHigh, c.point, c.stitchLow, c.stitchHi, c.source)
		}
	}
}

// Needle and thread by the row that is sewn, where a source tells it.
func TestNeedleForRow(t *testing.T) {
	s := load(t)
	for _, c := range []struct {
		cloth         string
		row           seams.Row
		nmLow, nmHigh int
		point, thread string
		source        string
	}{
		{"denim", seams.Row{Layers: 2, Stitch: "301", Topstitch: true}, 90, 100, "topstitch", "topstitching", "topstitching 90/14 to 100/16, thread 30: a domestic machine manual's needle table"},
		{"linen-medium", seams.Row{Layers: 3, Stitch: "301", Topstitch: true}, 90, 100, "topstitch", "topstitching", "the same"},
		{"cotton-lawn", seams.Row{Layers: 3, Stitch: "301", Topstitch: true}, 65, 75, "sharp", "fine", "no topstitching thread in a thin cloth: common practice, no source"},
		{"denim", seams.Row{Layers: 6, Stitch: "301"}, 110, 120, "jeans", "strong", "very heavy work 110/18 to 120/19: Choose regular needle size by fabric weight"},
		{"cotton-jersey", seams.Row{Layers: 2, Stitch: "301", Twin: true}, 75, 75, "twin", "all-purpose", "stretch twin 4.0/75: common practice, no source"},
		{"denim", seams.Row{Layers: 2, Stitch: "301", Twin: true}, 100, 100, "twin", "strong", "twin 4.0/100: common practice, no source"},
		{"cotton-poplin", seams.Row{Layers: 2, Stitch: "504"}, 70, 80, "universal", "overlock", "from memory"},
		{"cotton-poplin", seams.Row{Layers: 2, Stitch: "purl"}, 70, 80, "universal", "buttonhole-twist", "from memory"},
		{"faux-leather", seams.Row{Layers: 4, Stitch: "301"}, 80, 90, "leather", "all-purpose", "from memory"},
	} {
		facts := seams.Facts{Cloth: clothFacts(t, s, c.cloth)}
		n, err := s.NeedleForRow(facts, c.row)
		if err != nil || n.NM < c.nmLow || n.NM > c.nmHigh || n.Point != c.point {
			t.Errorf("%s, %+v: %+v, %v; want NM %d to %d %s (%s)", c.cloth, c.row, n, err, c.nmLow, c.nmHigh, c.point, c.source)
		}
		if th, err := s.ThreadForRow(facts, c.row); err != nil || th.Name != c.thread {
			t.Errorf("%s, %+v: %+v, %v; want %s", c.cloth, c.row, th, err, c.thread)
		}
	}
}

// Every rule is of use, and every cloth gets a needle that its thread passes:
// the eye is some two fifths of the blade and should be about 40 % wider than
// the thread (Sewing Machine Needle Sizing; the share of the blade from
// memory). A thread of polyester, 1,380 kg/m³, is some three fifths fibre, so
// that it is √(4 tex / (π · 1380 · 0.6)) thick. Topstitching needles are left
// out: they are made with a wider eye.
func TestNeedlesAndThreadsAreOfUse(t *testing.T) {
	s := load(t)
	used := map[string]bool{}
	for _, c := range s.Cloths {
		facts := seams.Facts{Cloth: c.Facts()}
		for _, row := range []seams.Row{{Layers: 2, Stitch: "301"}, {Layers: 6, Stitch: "301"}, {Layers: 2, Stitch: "301", Topstitch: true},
			{Layers: 2, Stitch: "301", Twin: true}, {Layers: 2, Stitch: "504"}, {Layers: 2, Stitch: "purl"}} {
			n, err := s.NeedleForRow(facts, row)
			if err != nil {
				t.Fatal(err)
			}
			th, err := s.ThreadForRow(facts, row)
			if err != nil {
				t.Fatal(err)
			}
			used["needle "+n.Name], used["thread "+th.Name] = true, true
			thread := 1000 * math.Sqrt(4*th.Tex*1e-6/(math.Pi*1380*0.6)) // mm
			if eye := 0.4 * float64(n.NM) / 100; n.Point != "topstitch" && row.Stitch != "purl" && eye < 1.4*thread*0.98 {
				t.Errorf("%s, %+v: the eye of %s is %.2f mm, %s is %.2f mm thick", c.Name, row, n.Title, eye, th.Title, thread)
			}
			// Knits want a point that parts the loops, and only they.
			if parts := n.Point == "ballpoint" || n.Point == "stretch" || n.Point == "twin"; c.Knit() != parts && !c.Lace && n.Point != "twin" {
				t.Errorf("%s gets a %s point", c.Name, n.Point)
			}
		}
	}
	for _, n := range s.Needles {
		if !used["needle "+n.Name] {
			t.Errorf("no cloth of the shelf takes the needle %s", n.Name)
		}
	}
	for _, th := range s.Threads {
		if !used["thread "+th.Name] {
			t.Errorf("no cloth of the shelf takes the thread %s", th.Name)
		}
	}
}

// Stitches to the inch for garments, from a thread maker's table (2013) and
// booklet (p. 35): the stitch length that goes with a cloth lies in the range
// for what is made of it. Other tables go further both ways: the booklet of a
// sewing class has 1 to 2 mm for light cloth.
func TestDensityForGarments(t *testing.T) {
	s := load(t)
	for _, c := range []struct {
		garment   string
		low, high float64
		cloths    []string
	}{
		{"denim jeans, jackets", 7, 9.1, []string{"denim", "denim-light"}}, // the table has 7 to 8, common practice 2.8 to 3.0 mm
		{"twill trousers", 8, 10, []string{"cotton-drill"}},
		{"trousers, dresses, skirts", 10, 12, []string{"wool-suiting", "wool-crepe", "linen-medium", "polyester-crepe", "viscose-challis"}},
		{"casual shirts, blouses", 10, 14, []string{"cotton-poplin", "seersucker", "linen-light", "cotton-lawn", "wax-print"}},
		{"fine blouses", 12, 20, []string{"silk-crepe-de-chine", "silk-habotai", "silk-satin", "cotton-batiste", "cotton-lawn"}},
		{"jersey tops", 10, 12, []string{"cotton-jersey", "cotton-jersey-fine", "cotton-interlock"}},
		{"swimwear", 12, 16, []string{"swimwear-knit", "stretch-mesh"}},
		{"heavy wool coating", 8, 9, []string{"wool-coating"}},
	} {
		for _, name := range c.cloths {
			n, err := s.NeedleFor(seams.Facts{Cloth: clothFacts(t, s, name)})
			if err != nil {
				t.Fatal(err)
			}
			if per := seams.PerInch(n.Stitch); per < c.low-0.05 || per > c.high+0.05 || per > 20 {
				t.Errorf("%s for %s: %.1f to the inch, want %v to %v", name, c.garment, per, c.low, c.high)
			}
		}
	}
}
