package sheets

import (
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams"
)

// A sheet of several sizes numbers them, tells how pieces are chalked once, gives
// each size its table of edges and its minutes, and says at every step what a
// further size has otherwise there, to every reader.
func TestFurtherSizesOnTheSheet(t *testing.T) {
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	plan := worked(t, shelf, `
make: pleated-skirt
size: {hip: 96 cm, waist: 72 cm}
cloth: {main: {is: cotton-poplin, colour: flax, width: 114 cm}}
also:
  - {size: {hip: 124 cm, waist: 100 cm}, quantity: 2}
  - {size: {hip: 100 cm, waist: 76 cm}, choices: {length: 50 cm}}
`, "name: Back room\nmachines: [{is: straight-stitcher}]\niron: steam")
	for _, reader := range []Reader{Maker, Bench, Class} {
		text := strings.Join(strings.Fields(string(Compose(plan, Options{For: reader}).Markdown)), " ")
		has := func(what string, n int) {
			t.Helper()
			if got := strings.Count(text, what); got != n {
				t.Errorf("%s: %q stands there %d times, not %d", reader, what, got, n)
			}
		}
		has("### Size 2: 2 garments", 1)
		has("### Size 3: 1 garment", 1)
		has("Its sewing, changes left out, takes about", 2)
		has("Otherwise than size 1 it has length 50 cm.", 1)
		has("Edges and their allowances, size 2", 1)
		has("Panels of the front.", 1)
		if reader != Class {
			has("Square a line across the cloth as the top line.", 1)
			has("Points to mark on the cloth, size 3", 1)
		}
		_, steps, _ := strings.Cut(text, "## The steps")
		for _, s := range plan.Also {
			for _, d := range s.Differs {
				if d.Kind != process.FiguresDiffer {
					continue
				}
				for _, f := range d.Figures {
					if !strings.Contains(steps, f.Here+" instead of "+f.Own) {
						t.Errorf("%s: size %d has %s instead of %s at %s, and no step says so", reader, s.Number, f.Here, f.Own, d.Operation)
					}
				}
			}
		}
		has("**Size 2:** The front is 133 cm wide and the cloth 114 cm.", 1)
		has("Front pleat: depth of the pleat: 41 mm, give or take 1.5 mm. Size 2: 49.5 mm. Size 3: 42 mm.", 1)
	}
}
