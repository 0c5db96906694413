package seams_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"bodkin/seams"
)

// room is a workroom by what stands in it.
type room struct {
	title    string
	machines []string
	iron     bool
}

func rooms() []room {
	return []room{
		{"hands only", nil, false},
		{"straight stitcher, no iron", []string{"straight-stitcher"}, false},
		{"straight stitcher", []string{"straight-stitcher"}, true},
		{"zigzag machine", []string{"zigzag-machine"}, true},
		{"zigzag machine and overlocker", []string{"zigzag-machine", "overlocker-3"}, true},
		{"straight stitcher and four-thread overlocker", []string{"straight-stitcher", "overlocker-4"}, true},
		{"straight stitcher and blindstitcher", []string{"straight-stitcher", "blindstitcher"}, true},
		{"zigzag machine and blindstitcher", []string{"zigzag-machine", "blindstitcher"}, true},
		{"factory", []string{"industrial-lockstitch", "safety-stitcher", "industrial-coverstitch"}, true},
		{"everything", []string{"straight-stitcher", "zigzag-machine", "overlocker-4", "coverstitch", "blindstitcher"}, true},
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
		Iron: r.iron, Steam: r.iron, Favour: favour,
		Forms: func(stitch string) bool { return formed[stitch] },
		House: func(name string, otherwise float64) float64 {
			if v, ok := house[name]; ok {
				return v
			}
			return otherwise
		},
	}
}

// unlike are the rooms that the constructions for a need can tell apart: the
// first of those that form the same of the stitches which the constructions ask
// for, and have an iron or not. The others lead to the same verdicts.
func unlike(s *seams.Shelf, n need) []room {
	asks := regexp.MustCompile(`forms\('([^']+)'\)`)
	asked := map[string]bool{}
	for _, c := range s.Constructions {
		if c.For != n.work || c.Kind != n.kind {
			continue
		}
		var formulas []string
		for _, rules := range [][]seams.Rule{c.RuledOut, c.SpeaksFor, c.SpeaksAgainst} {
			for _, r := range rules {
				formulas = append(formulas, r.When.Value)
			}
		}
		for _, size := range c.Sizes {
			formulas = append(formulas, size.Value.Value)
		}
		for _, stitch := range c.Stitches {
			asked[stitch] = true
		}
		for _, p := range c.Passes {
			formulas = append(formulas, p.When.Value)
			asked[p.Stitch] = true
		}
		for _, m := range asks.FindAllStringSubmatch(strings.Join(formulas, " "), -1) {
			asked[m[1]] = true
		}
	}
	stitches := slices.Sorted(maps.Keys(asked))
	var out []room
	met := map[string]bool{}
	for _, r := range rooms() {
		forms := r.facts(s, "", nil).Forms
		key := fmt.Sprint(r.iron)
		for _, stitch := range stitches {
			key += fmt.Sprint(forms(stitch))
		}
		if !met[key] {
			met[key] = true
			out = append(out, r)
		}
	}
	return out
}
