package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams/form"
	"bodkin/templates"
)

// An overlocker needs as many cones as its stitch has threads: three for 504 (one
// needle, two loopers), four for 514 (ISO 4915 class 500: an agricultural
// e-course on stitch classes). Where there are fewer of the seam's colour its
// loopers take another on rows that are hidden, and the row says why; where that
// cannot be, what is lacking is told. Metres follow the threads.
func TestConesOfAColour(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	work := func(cones ...any) *process.Plan {
		j := jobFor(g, "quilting-cotton", "cotton-lawn")
		j.Seams = form.Pairs[form.Text]{{Key: text("side"), Value: text("plain-together-overlocked")}}
		for k := 0; k < len(cones); k += 2 {
			j.Cones = append(j.Cones, form.Pair[int]{Key: text(cones[k].(string)), Value: cones[k+1].(int)})
		}
		w := roomOf("steam", "straight-stitcher", "overlocker-3")
		p := plan(t, j, w, shelf)
		checkOrder(t, p)
		checkWords(t, p)
		return p
	}
	overlocked := func(p *process.Plan) process.Operation {
		return p.Operations[slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.Seam == "side" && o.Setting.Stitch == "504" })]
	}
	metres := func(p *process.Plan, colour string) (m float64) {
		for _, x := range p.Thread {
			if x.Colour == colour {
				m += x.Metres
			}
		}
		return m
	}
	free := work()
	own := overlocked(free).Setting.Thread
	for _, tt := range []struct {
		name    string
		cones   []any
		loopers string
		lacking string
	}{
		{"nobody counted", nil, own, ""},
		{"enough", []any{own, 3, "white", 4}, own, ""},
		{"one, and four white", []any{own, 1, "white", 4, "grey", 2}, "white", ""},
		{"one, and two grey", []any{own, 1, "grey", 2}, "grey", ""},
		{"one, and no other", []any{own, 1, "grey", 1}, own, "no other colour has cones enough for the loopers"},
		{"none", []any{"white", 4}, own, "too few for the needles alone"},
	} {
		p := work(tt.cones...)
		o := overlocked(p)
		if o.Setting.Thread != own || o.Setting.Loopers != tt.loopers || strings.Contains(o.Text, "Thread the loopers with") != (tt.loopers != own) {
			t.Errorf("%s: %s, loopers %q: %s", tt.name, o.Setting.Thread, o.Setting.Loopers, o.Text)
		}
		said := slices.ContainsFunc(p.Notices, func(n process.Notice) bool {
			return strings.Contains(n.Text, "takes 3 cones of "+own) && strings.Contains(n.Text, tt.lacking)
		})
		if said != (tt.lacking != "") {
			t.Errorf("%s: lacking cones told: %v", tt.name, said)
		}
		if tt.loopers != own && (metres(p, tt.loopers) <= 0 || metres(p, own) >= metres(free, own)) {
			t.Errorf("%s: %g m of %s and %g of %s, all in one %g", tt.name, metres(p, tt.loopers), tt.loopers, metres(p, own), own, metres(free, own))
		}
	}
	// Through sheer cloth the row shows, and no other colour will do.
	j := jobFor(g, "silk-georgette", "cotton-lawn")
	j.Seams = form.Pairs[form.Text]{{Key: text("side"), Value: text("plain-together-overlocked anyway")}}
	j.Cones = form.Pairs[int]{{Key: text(own), Value: 1}, {Key: text("white"), Value: 4}}
	p := plan(t, j, roomOf("steam", "straight-stitcher", "overlocker-3"), shelf)
	if o := overlocked(p); o.Setting.Loopers != own {
		t.Errorf("in georgette the loopers are %s", o.Setting.Loopers)
	}
}
