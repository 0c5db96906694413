package process_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
)

// What the plan of several sizes says that a further size has otherwise leads from
// the words of the first size to those of a plan of that size by itself: the same
// operations, the same words, the same checks, and nothing else is told.
func TestFurtherSizesDifferAsTold(t *testing.T) {
	shelf := loadShelf(t)
	kinds := map[string]int{}
	for _, tt := range []struct{ garment, cloth, own, other string }{
		{"pull-on-skirt", "linen-medium", "size: {waist: 70 cm, hip: 96 cm}", "size: {waist: 84 cm, hip: 108 cm}, quantity: 2"},
		{"shell-top", "silk-georgette", "size: {bust: 84 cm, hip: 90 cm}", "size: {bust: 118 cm, hip: 124 cm}"},
		{"pleated-skirt", "cotton-poplin", "size: {hip: 96 cm, waist: 72 cm}", "size: {hip: 124 cm, waist: 100 cm}"},
		{"circle-skirt", "cotton-poplin", "size: {waist: 70 cm}", "size: {waist: 70 cm}, choices: {length: 45 cm}"},
		{"pull-on-trousers", "cotton-poplin", "size: {waist: 76 cm, hip: 100 cm}", "size: {waist: 90 cm, hip: 112 cm}, choices: {pockets: none}"},
		{"pull-on-skirt", "linen-medium", "size: {waist: 70 cm, hip: 96 cm}", "size: {waist: 70 cm, hip: 96 cm}, choices: {pockets: patch}"},
	} {
		g := garmentOf(t, tt.garment)
		roles := make([]string, len(g.Cloths))
		for i, r := range g.Roles() {
			roles[i] = r.Name + ": {is: " + tt.cloth + ", colour: flax, width: 114 cm}"
		}
		work := func(text string) *process.Plan {
			t.Helper()
			j, err := process.ParseJob("sizes.yaml", []byte("make: "+tt.garment+"\ncloth: {"+strings.Join(roles, ", ")+"}\n"+text+"\n"))
			if err != nil {
				t.Fatal(err)
			}
			p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: process.DefaultWorkroom(), Shelf: shelf}, order.Options{Nodes: 500})
			if err != nil {
				t.Fatal(err)
			}
			return p
		}
		all := work(tt.own + "\nalso: [{" + tt.other + "}]")
		size := all.Also[0]
		alone := work(strings.NewReplacer("}, ", "}\n", " cm, quantity", " cm\nquantity").Replace(tt.other))
		if size.Number != 2 || math.Abs(size.SewMinutes-alone.Totals.SewMinutes) > 1e-6 {
			t.Errorf("%s: size %d takes %g minutes, alone %g", tt.garment, size.Number, size.SewMinutes, alone.Totals.SewMinutes)
		}
		otherwise := func(seam string) int {
			return slices.IndexFunc(size.Otherwise, func(s process.OtherSeam) bool { return s.Seam == seam })
		}
		differs := func(id string) process.Differs {
			if k := slices.IndexFunc(size.Differs, func(d process.Differs) bool { return d.Operation == id }); k >= 0 {
				kinds[size.Differs[k].Kind]++
				return size.Differs[k]
			}
			return process.Differs{}
		}
		for _, o := range all.Operations {
			if o.Does == "test" || otherwise(o.Seam) >= 0 || slices.ContainsFunc(alone.Operations, func(a process.Operation) bool { return a.ID == o.ID }) {
				continue
			}
			if d := differs(o.ID); d.Kind != process.Without {
				t.Errorf("%s: %s falls away: %+v", tt.garment, o.ID, d)
			}
		}
		for _, o := range alone.Operations {
			if o.Does == "test" {
				continue
			}
			if k := otherwise(o.Seam); k >= 0 {
				kinds["otherwise"]++
				if !slices.Contains(size.Otherwise[k].Work, o.Text) {
					t.Errorf("%s: of %s is not told: %s", tt.garment, o.Seam, o.Text)
				}
				continue
			}
			own := ""
			if k := slices.IndexFunc(all.Operations, func(a process.Operation) bool { return a.ID == o.ID }); k >= 0 {
				own = all.Operations[k].Text
			}
			d := differs(o.ID)
			switch d.Kind {
			case process.FiguresDiffer:
				for _, f := range d.Figures {
					own = strings.ReplaceAll(own, f.Own, f.Here)
				}
			case process.WordsDiffer, process.Besides:
				own = d.Text
			}
			if own != o.Text {
				t.Errorf("%s: %s is told %q, by itself it has %q", tt.garment, o.ID, own, o.Text)
			}
		}
		for _, c := range alone.Checks {
			c.AfterStep = 0
			same := slices.ContainsFunc(all.Checks, func(own process.Check) bool { own.AfterStep = 0; return own == c })
			if told := slices.Contains(size.Checks, c); told == same {
				t.Errorf("%s: %+v is a check of the first size: %v, told: %v", tt.garment, c, same, told)
			}
		}
	}
	for _, kind := range []string{process.FiguresDiffer, process.WordsDiffer, process.Without, process.Besides, "otherwise"} {
		if kinds[kind] == 0 {
			t.Errorf("no size has an operation of the kind %s", kind)
		}
	}
}
