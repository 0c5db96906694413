package seams_test

import (
	"slices"
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
	used := map[string]bool{}
	for _, c := range s.Cloths {
		n, err := s.NeedleFor(seams.Facts{Cloth: c.Facts()})
		if err != nil {
			t.Fatal(err)
		}
		used["needle "+n.Name] = true
		th, err := s.ThreadFor(seams.Facts{Cloth: c.Facts()})
		if err != nil {
			t.Fatal(err)
		}
		used["thread "+th.Name] = true
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

func roomWithIron() seams.WorkroomFacts { return seams.WorkroomFacts{Iron: true, Steam: true} }

func TestInterfacings(t *testing.T) {
	s := load(t)
	for _, c := range []struct {
		cloth  string
		among  []string // the first choice is one of these
		source string
	}{
		{"silk-georgette", []string{"self-fabric", "silk-organza", "cotton-voile"}, "Sheer Fabrics, CT-MMB.179, Kentucky"},
		{"silk-organza", []string{"self-fabric", "silk-organza"}, "the same"},
		{"cotton-voile", []string{"self-fabric", "silk-organza", "cotton-voile"}, "the same"},
		{"silk-satin", []string{"silk-organza", "self-fabric"}, "Sew Any Fabric, 2003: same care"},
		{"cotton-poplin", []string{"light-woven-fusible"}, "from memory"},
		{"denim", []string{"medium-woven-fusible"}, "from memory"},
		{"wool-coating", []string{"hair-canvas"}, "from memory"},
		{"cotton-jersey", []string{"fusible-knit"}, "from memory"},
		{"velvet", []string{"medium-sew-in", "silk-organza", "cotton-voile"}, "no press on the pile: Working with Napped Fabrics"},
	} {
		cloth, err := s.Cloth(c.cloth)
		if err != nil {
			t.Fatal(err)
		}
		v, err := s.WeighInterfacings(seams.Facts{Cloth: cloth.Facts(), Workroom: roomWithIron()})
		if err != nil || !v[0].Allowed() || !slices.Contains(c.among, v[0].Interfacing.Name) {
			t.Errorf("%s gets %s (%v), %v; want one of %v (%s)", c.cloth, v[0].Interfacing.Name, v[0].RuledOut, err, c.among, c.source)
		}
	}
	for _, cloth := range s.Cloths {
		for _, iron := range []bool{true, false} {
			facts := seams.Facts{Cloth: cloth.Facts(), Workroom: seams.WorkroomFacts{Iron: iron}}
			verdicts, err := s.WeighInterfacings(facts)
			if err != nil {
				t.Fatal(err)
			}
			if len(verdicts) != len(s.Interfacings) || !verdicts[0].Allowed() {
				t.Errorf("%s, iron %v: %d verdicts, the first %+v", cloth.Name, iron, len(verdicts), verdicts[0])
			}
			for _, v := range verdicts {
				in := v.Interfacing
				// Choose lighter than the cloth: Interfacings, EM014, Washington. Sheers and pile take no
				// fusible: common practice, no source. No more heat than the cloth bears: ISO 3758.
				mustNot := (!in.Self && in.Weight > cloth.Weight) || (in.Fusible && (cloth.Sheerness >= 2 || cloth.Pile || in.HeatDots > cloth.HeatDots || !iron))
				if mustNot && v.Allowed() {
					t.Errorf("%s, iron %v: %s is allowed", cloth.Name, iron, in.Name)
				}
			}
		}
	}
}

func TestCautions(t *testing.T) {
	s := load(t)
	georgette, _ := s.Cloth("silk-georgette")
	poplin, _ := s.Cloth("cotton-poplin")
	for _, c := range []struct {
		what  string
		facts seams.Facts
		acts  []string
		want  []string
	}{
		{"nothing dangerous", seams.Facts{Cloth: poplin.Facts()}, []string{"fold"}, nil},
		{"pressing", seams.Facts{Cloth: poplin.Facts()}, []string{"press", "press"}, []string{"iron"}},
		{"a sheer", seams.Facts{Cloth: georgette.Facts()}, nil, []string{"flammable"}},
		{"a loose sheer", seams.Facts{Cloth: georgette.Facts(), Garment: seams.GarmentFacts{Loose: true}}, nil, []string{"flammable", "loose-sleeves"}},
		{"a sheer band", seams.Facts{Cloth: poplin.Facts(), Applied: georgette.Facts()}, nil, []string{"flammable"}},
		{"for a child", seams.Facts{Cloth: poplin.Facts(), Garment: seams.GarmentFacts{Child: true}}, nil, []string{"cords", "small-parts"}},
		{"cutting and sewing", seams.Facts{Cloth: poplin.Facts(), Workroom: seams.WorkroomFacts{Forms: func(s string) bool { return s == "301" }, Steam: true}},
			[]string{"cut", "stitch", "pin", "baste"}, []string{"steam", "machine-needle", "unplug", "hand-needle", "pins", "blade"}},
	} {
		got, err := s.CautionsFor(c.facts, c.acts)
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
		}
		var names []string
		for _, g := range got {
			names = append(names, g.Name)
		}
		if !slices.Equal(names, c.want) {
			t.Errorf("%s: %v, want %v", c.what, names, c.want)
		}
	}
	if _, err := s.CautionsFor(seams.Facts{}, []string{"juggle"}); err == nil {
		t.Error("an act that is not on the shelf is accepted")
	}
}
