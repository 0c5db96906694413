package seams_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bodkin/seams"
)

// A reason that speaks of a knit, of pile or of sheer cloth holds on such cloth
// alone: the garment's or the one applied to it.
func TestReasonsSpeakOfTheClothInHand(t *testing.T) {
	s := everyCloth(t)
	is := map[string]func(seams.Facts) bool{
		"this knit":           func(f seams.Facts) bool { return f.Cloth.Knit || f.Applied.Knit },
		"the knit":            func(f seams.Facts) bool { return f.Cloth.Knit || f.Applied.Knit },
		"so stretchy a knit":  func(f seams.Facts) bool { return f.Cloth.Knit },
		"crush the pile":      func(f seams.Facts) bool { return f.Cloth.Pile || f.Applied.Pile },
		"crushes the pile":    func(f seams.Facts) bool { return f.Cloth.Pile || f.Applied.Pile },
		"through sheer cloth": func(f seams.Facts) bool { return f.Cloth.Sheer || f.Applied.Sheer },
		"of slippery cloth":   func(f seams.Facts) bool { return f.Cloth.Slip >= 2 || f.Applied.Slip >= 2 },
	}
	for _, n := range needs() {
		for _, cloth := range sampled(s.Cloths) {
			f := seams.Facts{Cloth: cloth.Facts(), Applied: cloth.Facts(), Join: n.shapes[0].line, Edge: n.shapes[0].line,
				Workroom: roomOf(t, "everything").facts(s, "", nil)}
			verdicts, err := s.Weigh(n.work, n.kind, f)
			if err != nil {
				t.Fatal(err)
			}
			for _, v := range verdicts {
				said := append([]string{}, v.RuledOut...)
				for _, r := range append(append([]seams.Reason{}, v.For...), v.Against...) {
					said = append(said, r.Because)
				}
				for _, because := range said {
					for words, holds := range is {
						if strings.Contains(because, words) && !holds(f) {
							t.Errorf("%s in %s: %s", v.Construction.Name, cloth.Name, because)
						}
					}
				}
			}
		}
	}
}

// Every size is used: in the words, in another formula, in a check or in the
// section. One that nothing reads is dead.
func TestSizesAreUsed(t *testing.T) {
	s := load(t)
	inBraces, word := regexp.MustCompile(`\{[a-z_]+\}`), regexp.MustCompile(`[a-z_.]+`)
	for i := range s.Constructions {
		c := &s.Constructions[i]
		used := []string{c.Allowance.Value, c.AllowanceB.Value, c.Finished.Value}
		for _, size := range c.Sizes {
			used = append(used, size.Value.Value)
		}
		if c.Strip != nil {
			used = append(used, c.Strip.Width.Value, c.Strip.Ends.Value)
		}
		if c.Elastic != nil {
			used = append(used, c.Elastic.Width.Value, c.Elastic.Length.Value)
		}
		for _, p := range c.Passes {
			used = append(used, p.Length.Value, p.When.Value)
			used = append(used, inBraces.FindAllString(p.Text+p.Good, -1)...)
		}
		for _, k := range c.Checks {
			used = append(used, k.Expect.Value)
		}
		for _, f := range c.Figure {
			used = append(used, f.Size)
			for _, point := range f.Through {
				for _, x := range point {
					used = append(used, x.Value)
				}
			}
		}
		names := word.FindAllString(strings.Join(used, " "), -1)
		for _, size := range c.Sizes {
			if !slices.Contains(names, size.Key.Value) {
				t.Errorf("%s: nothing uses its size %s", c.Name, size.Key.Value)
			}
		}
	}
}

// Strips and allowances of the further constructions use up what they are cut
// with, whatever the house figures: closed forms, our own.
func TestFurtherCutWidthsAddUp(t *testing.T) {
	s := load(t)
	rapid.Check(t, func(r *rapid.T) {
		mm := rapid.Float64Range(4, 40)
		width, seam := mm.Draw(r, "width"), mm.Draw(r, "seam")
		f := plainFacts(t, s, rapid.SampledFrom([]string{"silk-organza", "cotton-lawn", "linen-medium", "cotton-jersey"}).Draw(r, "cloth"))
		f.Join.Depth, f.Edge.Depth = width, width
		for _, row := range []struct {
			name  string
			house map[string]float64
			want  func(z seams.Sized) (got, want float64)
		}{
			{"self-bound", map[string]float64{"self_bound": width + 12}, func(z seams.Sized) (float64, float64) { return 3*sum(z, "bound") + sum(z, "turn"), z.Allowance }},
			{"tucked", map[string]float64{"tuck_seam": width}, func(z seams.Sized) (float64, float64) {
				return z.Allowance - z.AllowanceB, 2*width + sum(z, "turn")
			}},
			{"plain-open-folded-bound", map[string]float64{"folded_bound": width}, func(z seams.Sized) (float64, float64) {
				return z.Strip.Width, 4*width + sum(z, "turn")
			}},
			{"piped", map[string]float64{"piping": seam, "piping_cord": width}, func(z seams.Sized) (float64, float64) {
				return z.Strip.Width, 2*z.Allowance + math.Pi*width + sum(z, "turn")
			}},
			{"knit-band", map[string]float64{"band_seam": seam}, func(z seams.Sized) (float64, float64) {
				return z.Strip.Width, 2*z.Finished + 2*z.Allowance + sum(z, "turn")
			}},
			{"bias-faced", map[string]float64{"faced_seam": seam}, func(z seams.Sized) (float64, float64) {
				return z.Strip.Width, z.Allowance + z.Finished + sum(z, "turn_under")
			}},
			{"self-faced", nil, func(z seams.Sized) (float64, float64) { return z.Allowance, width + sum(z, "turn_under", "turn") }},
			{"drawstring-casing", map[string]float64{"drawcord": seam}, func(z seams.Sized) (float64, float64) {
				return z.Allowance, sum(z, "cord") + 6 + sum(z, "near", "turn_under", "turn")
			}},
			{"placket-bound", map[string]float64{"placket": width, "placket_seam": seam}, func(z seams.Sized) (float64, float64) {
				return z.Strip.Width, 2*width + 2*seam
			}},
			{"loop", map[string]float64{"loop": width, "small_seam": seam}, func(z seams.Sized) (float64, float64) {
				return z.Strip.Width, 2*width + 2*seam
			}},
		} {
			f.Workroom = roomOf(t, "everything").facts(s, "", row.house)
			z, err := constructionOf(t, s, row.name).Measure(f)
			if err != nil {
				r.Fatal(err)
			}
			if got, want := row.want(z); math.Abs(got-want) > 1e-9 {
				r.Fatalf("%s: %g, want %g", row.name, got, want)
			}
		}
	})
}
