package process_test

import (
	"slices"
	"testing"

	"bodkin/process"
	"bodkin/seams/form"
	"bodkin/templates"
)

// What a construction asks for beside the usual things is in the plan, with what it
// is for and where, and with the caution that goes with it; where another
// construction is taken it is not. Which construction asks for which stands on the
// shelf: common practice, no source.
func TestToolsOfConstructions(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct {
		garment, cloth, seam, construction string
		tool                               string
		want                               bool
	}{
		{"a-line-skirt", "denim-light", "side", "plain-open-pinked", "pinking shears", true},
		{"a-line-skirt", "denim-light", "side", "flat-felled", "pinking shears", false},
		{"a-line-skirt", "linen-medium", "side", "plain-open-folded-bound", "bias tape maker", true},
		{"bias-slip", "silk-georgette", "strap", "", "loop turner", true},
		{"shirt-blouse", "cotton-poplin", "collar", "", "point turner", true},
		{"shell-top", "cotton-lawn", "side", "", "point turner", false},
	} {
		g, err := templates.Load(tt.garment)
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, tt.cloth, "cotton-lawn")
		if tt.construction != "" {
			j.Seams = form.Pairs[form.Text]{pair(tt.seam, tt.construction+" anyway")}
		}
		p := plan(t, j, roomOf("steam", "zigzag-machine"), shelf)
		k := slices.IndexFunc(p.Tools, func(x process.Tool) bool { return x.Name == tt.tool })
		if (k >= 0) != tt.want {
			t.Errorf("%s in %s: %s among %v, want %v", tt.garment, tt.cloth, tt.tool, p.Tools, tt.want)
			continue
		}
		if k < 0 {
			continue
		}
		on, err := shelf.Tool(tt.tool)
		if err != nil {
			t.Fatal(err)
		}
		if x := p.Tools[k]; x.Title != on.Title || x.For != on.For || !slices.Contains(x.Seams, tt.seam) {
			t.Errorf("%s: %+v", tt.garment, x)
		}
		if on.Caution == "" {
			continue
		}
		c, err := shelf.Caution(on.Caution)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(p.Cautions, func(x process.Caution) bool { return x.Text == c.Text }) {
			t.Errorf("%s: no caution on the %s", tt.garment, tt.tool)
		}
	}
}
