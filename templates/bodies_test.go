package templates_test

import (
	"strings"
	"testing"

	"bodkin/seams/form"
	"bodkin/templates"
)

// womenMeasured are the 5th, 50th and 95th percentile of the women of ANSUR II
// (US Army, 2012; public release of 1,986 women), cm, reckoned from the data as
// published, nearest rank. The waist is taken at the navel.
var womenMeasured = map[string][3]string{
	"bust":  {"82.4 cm", "94.0 cm", "109.4 cm"},
	"waist": {"71.0 cm", "85.2 cm", "104.0 cm"},
	"hip":   {"90.1 cm", "101.8 cm", "115.6 cm"},
	"neck":  {"30.2 cm", "32.8 cm", "36.3 cm"},
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

// Every garment for adults is made for each of the published bodies in each of
// its variants, and refuses none.
func TestPublishedBodies(t *testing.T) {
	for _, name := range templates.Names() {
		g := load(t, name)
		if g.Child {
			continue
		}
		for k, percentile := range []string{"5th", "50th", "95th"} {
			var size form.Pairs[form.Text]
			for _, m := range g.Measures.Keys() {
				if cm, ok := womenMeasured[m]; ok {
					size = append(size, pairs(m, cm[k])...)
				}
			}
			for _, choices := range variantsOf(g) {
				made, err := g.Make(size, choices)
				if err != nil {
					t.Errorf("%s, %s percentile, %v: %v", name, percentile, words(choices), err)
					continue
				}
				checkLaws(t, made)
			}
		}
	}
}

func words(ps form.Pairs[form.Text]) string {
	var out []string
	for _, p := range ps {
		out = append(out, p.Key.Value+" "+p.Value.Value)
	}
	return strings.Join(out, ", ")
}
