package process

import (
	"slices"
	"testing"

	"bodkin/seams"
)

// TestSkillRules: every rule names a skill, acts of the shelf and facts that
// there are, says why, and has a source.
func TestSkillRules(t *testing.T) {
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	skills := skillNames()
	facts := []string{"radius", "eased", "slip", "fraying", "sheerness", "stretch", "thickness", "pile", "layers"}
	asked := 0
	for k, e := range skillEntries() {
		for _, name := range []string{e.Asked, e.Harder, e.For} {
			if name != "" && !slices.Contains(skills, name) {
				t.Errorf("entry %d names the skill %q", k, name)
			}
		}
		for _, a := range e.Acts {
			if _, err := shelf.Act(a); err != nil {
				t.Errorf("entry %d: %v", k, err)
			}
		}
		if e.Fact != "" && (!slices.Contains(facts, e.Fact) || (e.AtLeast > 0) == (e.Below > 0)) {
			t.Errorf("entry %d asks for %q from %g, below %g", k, e.Fact, e.AtLeast, e.Below)
		}
		if e.Harder != "" && (e.Level < 1 || e.Level > 3 || e.Because == "") {
			t.Errorf("entry %d raises to level %d because %q", k, e.Level, e.Because)
		}
		if e.Source == "" || e.Skill != "" && e.Title == "" {
			t.Errorf("entry %d lacks its source or title", k)
		}
		if e.Asked != "" {
			asked++
			if last := e.Station == "" && len(e.Acts)+len(e.Stitches) == 0; last != (e.Asked == "pin") {
				t.Errorf("entry %d: pinning is what is asked where nothing else is", k)
			}
		}
	}
	if asked < len(skills)-2 { // curves and delicate come with what is harder
		t.Errorf("%d of %d skills are asked for", asked, len(skills))
	}
}

func TestDifficultyFollowsShape(t *testing.T) {
	rules := skillEntries()
	o := &operator{room: &room{stations: []station{{Station: Station{Kind: "machine"}}, {Station: Station{Kind: "table"}}}}}
	for _, c := range []struct {
		does, stitch string
		at, line     int
		radius       float64
		want         string
		level        int
	}{
		{"stitch", "301", 0, 0, 1e6, "straight", 1},
		{"stitch", "301", 0, 0, 400, "curves", 1},
		{"stitch", "301", 0, 0, 100, "curves", 2},
		{"stitch", "301", 0, 0, 40, "curves", 3},
		{"stitch", "504", 0, 0, 1e6, "overlocker", 1},
		{"clip", "", 1, 0, 1e6, "cut", 2},
		{"trim", "", 1, 0, 1e6, "cut", 1},
		{"turn", "", 1, 0, 1e6, "pin", 1},
	} {
		l := &line{work: joining}
		l.facts.Join.TightestRadius = c.radius
		o.lines = []*line{l}
		n := &op{station: c.at}
		n.Does, n.Setting.Stitch = c.does, c.stitch
		asked := o.difficulty(rules, n)
		if !slices.ContainsFunc(asked, func(a Asked) bool {
			return a.Skill == c.want && a.Level == c.level && a.Title != "" && (c.level == 1 && c.want != "curves" || len(a.Because) > 0)
		}) {
			t.Errorf("%s %s at %g mm: %+v, want %s %d", c.does, c.stitch, c.radius, asked, c.want, c.level)
		}
	}
}
