package seams_test

import (
	"slices"
	"testing"

	"bodkin/seams"
)

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
		{"cotton-organdie", []string{"self-fabric", "silk-organza", "cotton-organdie", "cotton-voile"}, "organdy, organza, voile, self: Sheer Fabrics, CT-MMB.179, Kentucky"},
		{"polyester-chiffon", []string{"self-fabric", "silk-organza"}, "the same"},
		{"silk-crepe-de-chine", []string{"silk-organza", "self-fabric"}, "Sew Any Fabric, 2003: same care; most fusibles bubble: common practice, no source"},
		{"silk-dupion", []string{"silk-organza", "self-fabric"}, "the same"},
		{"cotton-lawn", []string{"light-woven-fusible", "self-fabric"}, "feather-weight or self: from memory"},
		{"linen-medium", []string{"light-woven-fusible", "medium-woven-fusible"}, "light to medium: from memory"},
		{"denim-light", []string{"medium-woven-fusible", "self-fabric"}, "medium or self: from memory"},
		{"wool-flannel", []string{"weft-fusible", "medium-woven-fusible"}, "from memory"},
		{"wool-suiting", []string{"weft-fusible"}, "from memory"},
		{"ponte", []string{"low-heat-fusible-knit", "fusible-knit"}, "knit fusible: from memory; one dot: ISO 3758"},
		{"viscose-challis", []string{"low-heat-fusible-knit", "silk-organza"}, "one dot: ISO 3758"},
		{"cotton-corduroy", []string{"medium-sew-in"}, "no press on the pile: Working with Napped Fabrics"},
		{"faux-leather", []string{"light-nonwoven-sew-in"}, "no heat on the film: from memory"},
		{"cotton-lace", []string{"self-fabric", "silk-organza"}, "back lace with organza: common practice, no source"},
		{"swimwear-knit", []string{"sew-in-tricot"}, "it must give: common practice, no source"},
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
	pieces := 0
	for _, in := range s.Interfacings {
		if !in.Tape() {
			pieces++
		}
	}
	if pieces < 14 {
		t.Errorf("%d interfacings for pieces", pieces)
	}
	first := map[string]bool{}
	for _, cloth := range s.Cloths {
		for _, iron := range []bool{true, false} {
			facts := seams.Facts{Cloth: cloth.Facts(), Workroom: seams.WorkroomFacts{Iron: iron}}
			verdicts, err := s.WeighInterfacings(facts)
			if err != nil {
				t.Fatal(err)
			}
			if len(verdicts) != pieces || !verdicts[0].Allowed() {
				t.Errorf("%s, iron %v: %d verdicts, the first %+v", cloth.Name, iron, len(verdicts), verdicts[0])
			}
			for _, v := range verdicts {
				in := v.Interfacing
				first[in.Name] = first[in.Name] || v.Allowed()
				// Choose lighter than the cloth: Interfacings, EM014, Washington. Sheers and pile take no
				// fusible: common practice, no source. No more heat than the cloth bears: ISO 3758.
				mustNot := (!in.Self && in.Weight > cloth.Weight) || (in.Fusible && (cloth.Sheerness >= 2 || cloth.Pile || cloth.Coated || in.HeatDots > cloth.HeatDots || !iron))
				if mustNot && v.Allowed() {
					t.Errorf("%s, iron %v: %s is allowed", cloth.Name, iron, in.Name)
				}
			}
		}
	}
	for _, in := range s.Interfacings {
		if !in.Tape() && !first[in.Name] {
			t.Errorf("no cloth of the shelf may take %s", in.Name)
		}
	}
}

func TestTapes(t *testing.T) {
	s := load(t)
	const books = "Successful Sewing, 2013, p. 288; Complete photo guide to sewing"
	for _, c := range []struct {
		cloth, want, source string
	}{
		{"cotton-jersey", "stay-tape", "shoulder of a knit: " + books},
		{"ponte", "stay-tape", books},
		{"viscose-jersey", "stay-tape", books},
		{"swimwear-knit", "clear-elastic", "where stretch is wanted: " + books},
		{"cotton-rib", "clear-elastic", books},
		{"silk-georgette", "organza-strip", "organza behind sheers: Sheer Fabrics, CT-MMB.179, Kentucky"},
		{"wool-flannel", "stay-tape", "common practice, no source"},
		{"velvet", "stay-tape", "common practice, no source"},
		{"tulle", "wash-away-tape", "from memory"},
	} {
		verdicts, err := s.WeighTapes(seams.Facts{Cloth: clothFacts(t, s, c.cloth), Workroom: roomWithIron()})
		if err != nil || !verdicts[0].Allowed() || verdicts[0].Interfacing.Name != c.want {
			t.Errorf("%s is taped with %s (%v), %v; want %s (%s)", c.cloth, verdicts[0].Interfacing.Name, verdicts[0].For, err, c.want, c.source)
		}
	}
	for _, cloth := range s.Cloths {
		for _, iron := range []bool{true, false} {
			verdicts, err := s.WeighTapes(seams.Facts{Cloth: cloth.Facts(), Workroom: seams.WorkroomFacts{Iron: iron}})
			if err != nil {
				t.Fatal(err)
			}
			for _, v := range verdicts {
				in := v.Interfacing
				if !in.Tape() || in.Fusible && v.Allowed() && (in.HeatDots > cloth.HeatDots || cloth.Sheerness >= 2 || !iron) {
					t.Errorf("%s, iron %v: %s is allowed", cloth.Name, iron, in.Name)
				}
			}
		}
	}
}
