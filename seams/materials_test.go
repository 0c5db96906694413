package seams_test

import (
	"slices"
	"testing"

	"bodkin/seams"
)

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
