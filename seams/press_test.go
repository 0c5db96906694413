package seams_test

import (
	"slices"
	"testing"

	"bodkin/seams"
)

func TestPressing(t *testing.T) {
	s := load(t)
	for _, c := range []struct {
		cloth             string
		side, press, over string
		dots              int
		steam             bool
		source            string
	}{
		{"velvet", "wrong", "none", "needle board", 3, true, "Working with Napped Fabrics, Guideline 4.218"},
		{"polar-fleece", "wrong", "none", "needle board", 1, false, "pile; low or no press from memory"},
		{"wool-flannel", "wrong", "damp", "", 2, true, "Extension Bulletin 533, Oregon State College, 1939"},
		{"boiled-wool", "wrong", "damp", "", 2, true, "the same"},
		{"silk-satin", "wrong", "dry", "", 1, false, "Conover, vol. 1, 1921, p. 115; Sew Any Fabric, 2003"},
		{"silk-georgette", "wrong", "dry", "", 1, false, "the same"},
		{"linen-medium", "wrong", "dry", "", 3, true, "wrong side against shine: common practice, no source"},
		{"viscose-challis", "wrong", "dry", "", 1, false, "one dot, steam may harm: care-label pages (ISO 3758)"},
		{"ponte", "wrong", "dry", "", 1, false, "pressed with a cloth: from memory"},
		{"cotton-jersey", "wrong", "none", "", 3, true, "lift and lower: Koester, Pressing"},
		{"cotton-lawn", "either", "none", "", 3, true, "cottons mostly no cloth: Conover, vol. 1, p. 115"},
		{"denim", "either", "none", "clapper", 3, true, "common practice, no source"},
		{"cotton-lace", "wrong", "dry", "press cloth", 3, true, "common practice, no source"},
		{"faux-leather", "wrong", "dry", "", 1, false, "from memory"},
		{"faux-fur", "none", "none", "", 0, false, "crossed iron: care-label pages (ISO 3758)"},
	} {
		facts := seams.Facts{Cloth: clothFacts(t, s, c.cloth), Workroom: roomWithIron()}
		p, err := s.PressingFor(facts)
		if err != nil || p.Side != c.side || p.Cloth != c.press || p.Over != c.over || p.Dots != c.dots || p.Steam != c.steam {
			t.Errorf("%s: %+v, %v; want %+v", c.cloth, p, err, c)
		}
	}
	used := map[string]bool{}
	for _, cloth := range s.Cloths {
		for _, room := range []seams.WorkroomFacts{{}, {Iron: true}, roomWithIron()} {
			p, err := s.PressingFor(seams.Facts{Cloth: cloth.Facts(), Workroom: room})
			if err != nil {
				t.Fatal(err)
			}
			used[p.Name] = true
			if p.Dots > cloth.HeatDots || p.Dots > 0 != (room.Iron && cloth.HeatDots > 0) || p.Steam && (!cloth.Steam || !room.Steam || !room.Iron) {
				t.Errorf("%s in %+v: %d dots, steam %v", cloth.Name, room, p.Dots, p.Steam)
			}
			// Pile is never touched by the iron, nor is what takes a shine on its right side.
			if (cloth.Pile || cloth.Shine || cloth.Coated) && p.Side == "either" || cloth.Pile && p.Moves == "slide" || cloth.Knit() && p.Moves == "slide" {
				t.Errorf("%s: %s, %s", cloth.Name, p.Side, p.Moves)
			}
		}
	}
	for _, p := range s.Pressing {
		if !used[p.Name] {
			t.Errorf("no cloth of the shelf is pressed as %s", p.Name)
		}
	}
}

// Start with the cool settings and go up, as the iron heats faster than it
// cools (a steam iron's manual).
func TestCoolFirst(t *testing.T) {
	s := load(t)
	var cloths []seams.Cloth
	for _, name := range []string{"cotton-lawn", "silk-satin", "wool-crepe", "linen-light", "ponte"} {
		cloths = append(cloths, *mustCloth(t, s, name))
	}
	var got []string
	for _, c := range seams.CoolFirst(cloths) {
		got = append(got, c.Name)
	}
	if want := []string{"silk-satin", "ponte", "wool-crepe", "cotton-lawn", "linen-light"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if cloths[0].Name != "cotton-lawn" {
		t.Error("the list given was turned round")
	}
}
