package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams/form"
	"bodkin/templates"
)

// thickAt is what the plan says of crossings that stand too high.
func thickAt(p *process.Plan) string {
	var said []string
	for _, n := range p.Notices {
		if strings.Contains(n.Text, "plies thick") {
			said = append(said, n.Text)
		}
	}
	return strings.Join(said, "\n")
}

// Plies × thickness against what goes under the foot, which is arithmetic.
// Hammering crossings and turning the wheel by hand over them: common practice,
// no source.
func TestClearanceAtCrossings(t *testing.T) {
	tests := []struct {
		cloth string
		words []string // none: no notice
	}{
		// Seam of three plies under a hem of three: nine plies of 0.9 mm.
		{"denim", []string{"Where it crosses the side seam", "9 plies thick, about 8.1 mm", "hammer", "turn the wheel by hand", "takes 5 mm"}},
		{"faux-fur", []string{"pile is counted standing"}},
		{"cotton-lawn", nil},
	}
	for _, tt := range tests {
		said := thickAt(sewn(t, tt.cloth, "side", "mock-felled", "zigzag-machine"))
		for _, w := range tt.words {
			if !strings.Contains(said, w) {
				t.Errorf("%s does not say %q: %s", tt.cloth, w, said)
			}
		}
		if tt.words == nil && said != "" {
			t.Errorf("%s: %s", tt.cloth, said)
		}
	}
}

// Where a construction's own plies do not go under the foot another is taken, at
// worst by hand, and the one that was passed over says by how much; plies ×
// thickness, which is arithmetic. What is insisted on stays, with a warning.
func TestWhatIsTooThickIsSewnOtherwise(t *testing.T) {
	shelf := loadShelf(t)
	job := func(seams string) *process.Job {
		j, err := process.ParseJob("job.yaml", []byte(`make: open-jacket
cloth:
  main: {like: wool-coating, title: Blanket, thickness: 2.7, colour: grey, width: 150 cm}
  contrast: {is: cotton-poplin, colour: red}
`+seams))
		if err != nil {
			t.Fatal(err)
		}
		return j
	}
	room := roomOf("steam", "straight-stitcher")
	for _, s := range plan(t, job(""), room, shelf).Seams {
		if s.Kind != "seam" || s.Copies == 0 {
			continue
		}
		if slices.Contains(s.Stitches, "301") {
			t.Errorf("%s: %s in two plies of 2.7 mm under a foot that takes 5 mm", s.Name, s.Construction)
		}
		if !slices.ContainsFunc(s.Rejected, func(r process.Rejected) bool {
			return r.RuledOut && strings.Contains(strings.Join(r.Because, " "), "its 2 plies are about 5.4 mm thick, and no more than 5 mm goes under the foot")
		}) {
			t.Errorf("%s does not say what was too thick: %v", s.Name, s.Rejected)
		}
	}
	p := plan(t, job("seams: {side: plain-open-pinked anyway}\n"), room, shelf)
	if said := thickAt(p); !strings.Contains(said, "takes 5 mm") {
		t.Errorf("no warning of what is insisted on: %s", said)
	}
}

// What would stand too high where it crosses another seam is weighed, not only
// warned of: in boiled wool of 2 mm the hem crosses a side seam, and what goes
// under the foot there is taken; a flat-felled seam of denim, a little too high
// over a dart, stays what it is. Plies × thickness, which is arithmetic.
func TestCrossingsAreWeighed(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct{ garment, cloth, line, want, over string }{
		{"pull-on-skirt", "boiled-wool", "hem", "blind-stitched-by-hand", "twin-needle"},
		{"waisted-dress", "wool-coating", "side", "plain-open-zigzagged", "plain-open-bound"},
		{"shell-top", "denim", "side", "flat-felled", ""},
	} {
		g, err := templates.Load(tt.garment)
		if err != nil {
			t.Fatal(err)
		}
		p := plan(t, jobFor(g, tt.cloth, "cotton-lawn"), roomOf("steam", "zigzag-machine"), shelf)
		s := p.Seams[slices.IndexFunc(p.Seams, func(s process.Seam) bool { return s.Name == tt.line })]
		if s.Construction != tt.want {
			t.Errorf("%s in %s: %s is a %s (%g), want %s; against it %v", tt.garment, tt.cloth, tt.line, s.Construction, s.Score, tt.want, s.Against)
		}
		said := slices.ContainsFunc(s.Rejected, func(r process.Rejected) bool {
			return r.Construction == tt.over && strings.Contains(strings.Join(r.Because, " "), "goes under the foot")
		})
		if said != (tt.over != "") {
			t.Errorf("%s in %s: that a %s stands too high over %s: %v", tt.garment, tt.cloth, tt.over, tt.line, s.Rejected)
		}
	}
}

// Where it is too high for the machine in use and another in the room takes it, it
// is sewn there; where none does, the row says how to get over it. The heights are
// plies × thickness, which is arithmetic; hammering and the wheel by hand: common
// practice, no source.
func TestCrossingsGoToTheMachineThatTakesThem(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct {
		machines []string
		at       string // where the hem's row is sewn
		told     bool   // that it is thick
	}{
		{[]string{"straight-stitcher"}, "straight-stitcher", true},
		{[]string{"straight-stitcher", "industrial-walking-foot"}, "industrial-walking-foot", false},
	} {
		g, err := templates.Load("pull-on-skirt")
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, "denim", "cotton-lawn")
		j.Seams = form.Pairs[form.Text]{pair("side", "mock-felled"), pair("hem", "deep-double-fold anyway")}
		p := plan(t, j, roomOf("steam", tt.machines...), shelf)
		rows := 0
		for _, o := range p.Operations {
			if o.Seam != "hem" || o.Does != "stitch" {
				continue
			}
			rows++
			k := slices.IndexFunc(p.Stations, func(s process.Station) bool { return s.Name == o.Station })
			if told := strings.Contains(o.Text, "hammer the place flat"); p.Stations[k].Machine != tt.at || told != tt.told {
				t.Errorf("with %v the hem is sewn on the %s: %q", tt.machines, p.Stations[k].Machine, o.Text)
			}
		}
		if said := thickAt(p); rows == 0 || strings.Contains(said, "Where it crosses the side seam") != tt.told {
			t.Errorf("with %v, %d rows, it says: %s", tt.machines, rows, said)
		}
	}
}
