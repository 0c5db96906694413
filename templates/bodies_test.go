package templates_test

import (
	"fmt"
	"strings"
	"testing"

	"bodkin/seams/form"
	"bodkin/templates"
)

// womenMeasured and menMeasured are the 5th, 50th and 95th percentile of the women
// and the men of ANSUR II (US Army, 2012; public release of 1,986 women and 4,082
// men), cm, reckoned from the data as published, nearest rank. The waist is taken
// at the navel.
var womenMeasured = map[string][3]string{
	"bust":  {"82.4 cm", "94.0 cm", "109.4 cm"},
	"waist": {"71.0 cm", "85.2 cm", "104.0 cm"},
	"hip":   {"90.1 cm", "101.8 cm", "115.6 cm"},
	"neck":  {"30.2 cm", "32.8 cm", "36.3 cm"},
	"arm":   {"49.7 cm", "54.2 cm", "59.4 cm"}, // sleeve outseam

	"nape_to_waist": {"38.4 cm", "42.4 cm", "47.0 cm"}, // waist back length, to the same waist
}

var menMeasured = map[string][3]string{
	"bust":  {"92.2 cm", "105.6 cm", "120.7 cm"},
	"waist": {"76.8 cm", "93.7 cm", "113.1 cm"},
	"hip":   {"89.9 cm", "101.7 cm", "114.9 cm"},
	"neck":  {"36.0 cm", "39.5 cm", "44.3 cm"},
	"arm":   {"54.5 cm", "59.2 cm", "64.5 cm"},

	"nape_to_waist": {"43.3 cm", "47.7 cm", "52.4 cm"},
}

// variantsOf are all combinations of a garment's choices among words.
func variantsOf(g *templates.Garment) []form.Pairs[form.Text] {
	all := []form.Pairs[form.Text]{nil}
	for _, c := range g.Choices {
		words := c.Value.Words()
		if len(words) == 0 {
			continue
		}
		var more []form.Pairs[form.Text]
		for _, have := range all {
			for _, w := range words {
				more = append(more, append(have[:len(have):len(have)], pairs(c.Key.Value, w)...))
			}
		}
		all = more
	}
	return all
}

// Every garment for adults is made for each of the published bodies of women in
// each of its variants, and as it comes for the sizes between them and for men,
// and refuses none.
func TestPublishedBodies(t *testing.T) {
	for _, name := range templates.Names() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			inPublishedBodies(t, load(t, name))
		})
	}
}

func inPublishedBodies(t *testing.T, g *templates.Garment) {
	if g.Child {
		t.Skip("drawn to the measures of a child")
	}
	all := variantsOf(g)
	for _, b := range []struct {
		title    string
		measured map[string][3]string
		at       float64 // 0 for the 5th, 1 for the 50th, 2 for the 95th percentile, and between
		variants []form.Pairs[form.Text]
	}{
		{"5th of women", womenMeasured, 0, all},
		{"50th of women", womenMeasured, 1, all},
		{"95th of women", womenMeasured, 2, all},
		{"5th to 50th of women", womenMeasured, 0.5, all[:1]},
		{"50th to 95th of women", womenMeasured, 1.5, all[:1]},
		{"5th of men", menMeasured, 0, all[:1]},
		{"50th of men", menMeasured, 1, all[:1]},
		{"95th of men", menMeasured, 2, all[:1]},
	} {
		var size form.Pairs[form.Text]
		for _, m := range g.Measures.Keys() {
			if cm, ok := b.measured[m]; ok {
				size = append(size, pairs(m, between(t, cm, b.at))...)
			}
		}
		for _, choices := range b.variants {
			made, err := g.Make(size, choices)
			if err != nil {
				t.Errorf("%s percentile, %v: %v", b.title, words(choices), err)
				continue
			}
			checkLaws(t, made)
		}
	}
}

// between is a length so far along three others.
func between(t fataler, cm [3]string, at float64) string {
	t.Helper()
	k := min(int(at), 1)
	least, most := millimetres(t, form.Text{Value: cm[k]}), millimetres(t, form.Text{Value: cm[k+1]})
	return fmt.Sprintf("%.1f mm", least+(at-float64(k))*(most-least))
}

func words(ps form.Pairs[form.Text]) string {
	var out []string
	for _, p := range ps {
		out = append(out, p.Key.Value+" "+p.Value.Value)
	}
	return strings.Join(out, ", ")
}
