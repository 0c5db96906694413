package seams_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"bodkin/seams"
)

func TestResembles(t *testing.T) {
	s := load(t)
	for _, c := range []struct{ cloth, nearest string }{
		{"cotton-batiste", "cotton-lawn"}, {"cotton-lawn", "cotton-batiste"}, {"polyester-lining", "acetate-lining"},
		{"viscose-twill", "viscose-challis"}, {"wool-suiting", "wool-crepe"}, {"silk-georgette", "polyester-chiffon"},
		{"cotton-velveteen", "cotton-corduroy"}, {"silk-dupion", "silk-taffeta"}, {"linen-light", "linen-medium"},
	} {
		got, how := s.Resembles(*mustCloth(t, s, c.cloth))
		if got.Name != c.nearest || len(how) < 3 {
			t.Errorf("%s resembles %s (%q), want %s", c.cloth, got.Name, how, c.nearest)
		}
	}
	mine := *mustCloth(t, s, "silk-georgette")
	mine.Name, mine.Weight, mine.Steam = "mine", 55, true
	got, how := s.Resembles(mine)
	want := []string{"both are woven", "both are of silk", "it weighs 55 g/m², the other 43", "it alone bears steam"}
	if got.Name != "silk-georgette" || !slices.Equal(how, want) {
		t.Errorf("%s, %q", got.Name, how)
	}
	if got, how := (&seams.Shelf{}).Resembles(mine); got != nil || how != nil {
		t.Errorf("on an empty shelf: %v, %v", got, how)
	}
}

// Distance is a metric on the properties it reads.
func TestDistance(t *testing.T) {
	s := load(t)
	one := rapid.IntRange(0, len(s.Cloths)-1)
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := s.Cloths[one.Draw(t, "a")], s.Cloths[one.Draw(t, "b")], s.Cloths[one.Draw(t, "c")]
		ab, ba, bc, ac := seams.Distance(a, b), seams.Distance(b, a), seams.Distance(b, c), seams.Distance(a, c)
		if seams.Distance(a, a) != 0 || !near(ab, ba, 1e-9) || ac > ab+bc+1e-9 || (a.Name != b.Name && ab <= 0) || math.IsInf(ab, 0) {
			t.Fatalf("%s, %s, %s: %v %v %v %v", a.Name, b.Name, c.Name, ab, ba, bc, ac)
		}
	})
	// The weights as they are told: a doubled weight and thickness, a degree, pile.
	a := s.Cloths[0]
	b := a
	b.Weight, b.Thickness, b.Sheerness, b.Pile = 2*a.Weight, 2*a.Thickness, a.Sheerness+1, !a.Pile
	if d := seams.Distance(a, b); !near(d, 7, 1e-12) {
		t.Errorf("%v", d)
	}
}

func TestUnderlined(t *testing.T) {
	s := load(t)
	for _, outer := range s.Cloths {
		for _, under := range s.Cloths {
			c := seams.Underlined(outer, under)
			f, o, u := c.Facts(), outer.Facts(), under.Facts()
			if f.Weight != o.Weight+u.Weight || f.Thickness != o.Thickness+u.Thickness || f.Sheerness != min(o.Sheerness, u.Sheerness) ||
				f.HeatDots != min(o.HeatDots, u.HeatDots) || f.StretchAcross != min(o.StretchAcross, u.StretchAcross) ||
				f.Steam != (o.Steam && u.Steam) || f.Flammable != (o.Flammable || u.Flammable) || f.Woven && f.Knit ||
				c.Fraying != max(outer.Fraying, under.Fraying) || f.Knit != (o.Knit && u.Knit) {
				t.Errorf("%s: %+v", c.Name, f)
			}
			if _, err := s.NeedleFor(seams.Facts{Cloth: f}); err != nil {
				t.Errorf("%s: %v", c.Name, err)
			}
		}
	}
	c := seams.Underlined(*mustCloth(t, s, "silk-georgette"), *mustCloth(t, s, "silk-organza"))
	if c.Title != "Silk georgette over silk organza" || c.Sheerness != 2 || c.Weight != 68 || !slices.Contains(c.Estimates, "weight") || c.Source == "" {
		t.Errorf("%+v", c)
	}
	// A double layer in the bodice hides what a single one shows: over lawn the georgette is no sheer any more.
	if c := seams.Underlined(*mustCloth(t, s, "silk-georgette"), *mustCloth(t, s, "cotton-lawn")); c.Facts().Sheer || c.HeatDots != 1 {
		t.Errorf("%+v", c)
	}
}
