package process_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// Whatever seam is chosen, an edge that is longer than it can be eased is drawn up
// before it is sewn: a pass of rows, a pass that draws them up, then the seam, once.
// The ratio is that of the two edges.
func TestGatheredAsAStep(t *testing.T) {
	shelf := loadShelf(t)
	chosen := map[string]bool{}
	for _, name := range []string{"child-dress", "shirt-dress"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, cloth := range []string{"silk-georgette", "cotton-lawn", "wool-flannel", "cotton-jersey"} {
			for _, w := range rooms() {
				p := plan(t, jobFor(g, cloth, cloth), w, shelf)
				k := slices.IndexFunc(p.Seams, func(s process.Seam) bool { return s.Name == "waist" })
				waist := p.Seams[k]
				chosen[waist.Construction] = true
				where := fmt.Sprintf("%s of %s in %s, %s", name, cloth, w.Name, waist.Construction)
				drawn, sewn, rows := -1, -1, -1
				for i, o := range p.Operations {
					own := o.Seam == "waist-gathers"
					switch {
					case o.Does == "gather" && (own || o.Seam == "waist"):
						if drawn >= 0 {
							t.Errorf("%s: drawn up twice", where)
						}
						drawn = i
					case own && rows < 0:
						rows = i
					case o.Seam == "waist" && drawn < 0 && !own && o.Does == "stitch" && rows < 0:
						rows = i // the construction's own
					case o.Seam == "waist" && drawn >= 0 && sewn < 0 && (o.Does == "stitch" || o.Does == "hand-stitch"):
						sewn = i
					}
				}
				if rows < 0 || drawn < rows || sewn < drawn {
					t.Errorf("%s: rows at %d, drawn up at %d, sewn at %d", where, rows, drawn, sewn)
					continue
				}
				if waist.Construction == "gathered" {
					continue
				}
				m, err := g.Make(nil, nil)
				if err != nil {
					t.Fatal(err)
				}
				for _, j := range m.Joins {
					if ratio := float64(j.LengthA) / float64(j.LengthB); j.Name == "waist" &&
						!strings.Contains(p.Operations[drawn].Text, fmt.Sprintf(", %.3g to 1", math.Round(10*ratio)/10)) {
						t.Errorf("%s: %.2f to 1 in %q", where, ratio, p.Operations[drawn].Text)
					}
				}
			}
		}
	}
	if len(chosen) < 3 {
		t.Errorf("only %v are met", chosen)
	}
}
