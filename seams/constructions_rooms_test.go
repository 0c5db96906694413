package seams_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"bodkin/seams"
	"bodkin/seams/formula"
)

// room is a workroom by what stands in it.
type room struct {
	title    string
	machines []string
	iron     bool
	dots     int // hottest setting of the iron; 0: as hot as any
}

func rooms() []room {
	return []room{
		{title: "hands only"},
		{title: "straight stitcher, no iron", machines: []string{"straight-stitcher"}},
		{title: "straight stitcher", machines: []string{"straight-stitcher"}, iron: true},
		{title: "zigzag machine", machines: []string{"zigzag-machine"}, iron: true},
		{title: "zigzag machine and overlocker", machines: []string{"zigzag-machine", "overlocker-3"}, iron: true},
		{title: "straight stitcher and four-thread overlocker", machines: []string{"straight-stitcher", "overlocker-4"}, iron: true},
		{title: "zigzag machine, overlocker and coverstitch", machines: []string{"zigzag-machine", "overlocker-4", "coverstitch"}, iron: true},
		{title: "straight stitcher and blindstitcher", machines: []string{"straight-stitcher", "blindstitcher"}, iron: true},
		{title: "zigzag machine and blindstitcher", machines: []string{"zigzag-machine", "blindstitcher"}, iron: true},
		{title: "factory", machines: []string{"industrial-lockstitch", "safety-stitcher", "industrial-coverstitch"}, iron: true},
		{title: "zigzag machine, iron of one dot", machines: []string{"zigzag-machine"}, iron: true, dots: 1},
		{title: "class of ten", machines: slices.Concat(slices.Repeat([]string{"straight-stitcher"}, 6), slices.Repeat([]string{"zigzag-machine"}, 4), []string{"overlocker-3", "overlocker-4"}), iron: true},
		{title: "everything", machines: []string{"straight-stitcher", "zigzag-machine", "overlocker-4", "coverstitch", "blindstitcher"}, iron: true},
	}
}

func roomOf(t testing.TB, title string) room {
	t.Helper()
	all := rooms()
	i := slices.IndexFunc(all, func(r room) bool { return r.title == title })
	if i < 0 {
		t.Fatalf("no room %q", title)
	}
	return all[i]
}

// facts are what rules may ask of the room. House figures are mm.
func (r room) facts(s *seams.Shelf, favour string, house map[string]float64) seams.WorkroomFacts {
	formed := map[string]bool{}
	for _, m := range s.Machines {
		if m.Kind == "hand" || slices.Contains(r.machines, m.Name) {
			for _, stitch := range m.Forms {
				formed[stitch] = true
			}
		}
	}
	return seams.WorkroomFacts{
		Iron: r.iron, Dots: r.dots, Steam: r.iron, Favour: favour,
		Forms: func(stitch string) bool { return formed[stitch] },
		House: func(name string, otherwise float64) float64 {
			if v, ok := house[name]; ok {
				return v
			}
			return otherwise
		},
	}
}

// asked is what the constructions for a need ask about: every name in their
// rules and formulas, and the stitches that they want or look for.
type asked struct {
	cloth    []string // of the cloth, in hand or applied
	stitches []string
}

func asks(s *seams.Shelf, n need) asked {
	ofCloth, forms := regexp.MustCompile(`\b(?:cloth|applied)\.([a-z_]+)`), regexp.MustCompile(`forms\('([^']+)'\)`)
	props, stitches := map[string]bool{}, map[string]bool{}
	for i := range s.Constructions {
		c := &s.Constructions[i]
		if c.For != n.work || c.Kind != n.kind {
			continue
		}
		for _, stitch := range c.Stitches {
			stitches[stitch] = true
		}
		for _, p := range c.Passes {
			stitches[p.Stitch] = true
		}
		all := strings.Join(formulasOf(c), " ")
		for _, m := range ofCloth.FindAllStringSubmatch(all, -1) {
			props[m[1]] = true
		}
		for _, m := range forms.FindAllStringSubmatch(all, -1) {
			stitches[m[1]] = true
		}
	}
	return asked{slices.Sorted(maps.Keys(props)), slices.Sorted(maps.Keys(stitches))}
}

// formulasOf are the texts of all rules and formulas of a construction.
func formulasOf(c *seams.Construction) []string {
	out := []string{c.Allowance.Value, c.AllowanceB.Value, c.Finished.Value}
	for _, rules := range [][]seams.Rule{c.RuledOut, c.SpeaksFor, c.SpeaksAgainst} {
		for _, r := range rules {
			out = append(out, r.When.Value)
		}
	}
	for _, size := range c.Sizes {
		out = append(out, size.Value.Value)
	}
	if c.Strip != nil {
		out = append(out, c.Strip.Width.Value, c.Strip.Ends.Value)
	}
	if c.Elastic != nil {
		out = append(out, c.Elastic.Width.Value, c.Elastic.Length.Value)
	}
	for _, p := range c.Passes {
		out = append(out, p.When.Value, p.Length.Value)
	}
	for _, k := range c.Checks {
		out = append(out, k.Expect.Value, k.Tolerance.Value)
	}
	for _, f := range c.Figure {
		for _, point := range f.Through {
			for _, x := range point {
				out = append(out, x.Value)
			}
		}
	}
	return out
}

// firstUnlike are the first of each set of things that have the same key.
func firstUnlike[T any](all []T, key func(T) string) []T {
	var out []T
	met := map[string]bool{}
	for _, one := range all {
		if k := key(one); !met[k] {
			met[k] = true
			out = append(out, one)
		}
	}
	return out
}

// rooms are those that the constructions for a need can tell apart: the others
// form the same of the stitches asked for, and have an iron or not, so that
// they lead to the same verdicts and sizes.
func (a asked) rooms(s *seams.Shelf) []room {
	return firstUnlike(rooms(), func(r room) string {
		forms := r.facts(s, "", nil).Forms
		key := fmt.Sprint(r.iron)
		for _, stitch := range a.stitches {
			key += fmt.Sprint(forms(stitch))
		}
		return key
	})
}

// cloths are those that the constructions for a need can tell apart.
func (a asked) cloths(cloths []seams.Cloth) []seams.Cloth {
	return firstUnlike(cloths, func(c seams.Cloth) string {
		facts := formula.ValuesOf(seams.Facts{Cloth: c.Facts()})["cloth"].(map[string]any)
		key := ""
		for _, name := range a.cloth {
			key += fmt.Sprint(facts[name], " ")
		}
		return key
	})
}
