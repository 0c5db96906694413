package seams

import (
	"errors"
	"maps"
	"slices"
	"testing"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// FuzzOwnFile puts any text in the place of a user's shelf file: no panic,
// and whatever is refused is refused as faults with places.
func FuzzOwnFile(f *testing.F) {
	files, err := embedded()
	if err != nil {
		f.Fatal(err)
	}
	readers := make([]reader, len(files))
	for i, file := range files {
		readers[i].read(file)
		f.Add([]byte(file.Data[:min(len(file.Data), 3000)]))
	}
	facts := formula.NamesOf(Facts{})
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 4000 {
			return
		}
		own := reader{}
		own.read(File{Name: "own.yaml", Data: data})
		l := &loader{facts: facts}
		for i := range readers {
			l.add(&readers[i], false)
		}
		l.add(&own, true)
		if len(l.faults) == 0 {
			s := l.shelf()
			l.check(s)
			if len(l.faults) == 0 {
				work(t, s, own)
			}
		}
		for _, fault := range l.faults {
			if fault.Line < 1 || fault.Message == "" {
				t.Fatalf("a fault without place or words: %+v", fault)
			}
		}
	})
}

// work uses what the user's file brought; faults are fine, panics are not.
func work(t *testing.T, s *Shelf, own reader) {
	facts := Facts{Cloth: s.Cloths[len(s.Cloths)-1].Facts()}
	for _, p := range own.constructions {
		c, err := s.Construction(p.entry.Name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := c.Measure(facts); err != nil {
			if _, ok := errors.AsType[form.Fault](err); !ok {
				t.Fatalf("%v is no fault", err)
			}
		}
		if _, err := s.judge(c, facts.usable(), formula.ValuesOf(facts.usable())); err != nil {
			if _, ok := errors.AsType[form.Fault](err); !ok {
				t.Fatalf("%v is no fault", err)
			}
		}
	}
}

// The names that rules are written with are those of the facts' tags; a field
// that is renamed breaks users' files, so the list stands here.
func TestFactNames(t *testing.T) {
	values := formula.ValuesOf(Facts{}.usable())
	want := map[string][]string{
		"part":     {"name"},
		"garment":  {"child", "lined", "loose"},
		"workroom": {"dots", "favour", "forms", "house", "iron", "steam"},
		"cloth": {"coated", "crease", "fibre", "flammable", "fraying", "heat_dots", "holes_stay", "knit", "lace", "one_way", "pile", "recovery",
			"sheer", "sheerness", "shine", "slip", "steam", "stretch", "stretch_across", "stretch_along", "thickness", "weight", "woven"},
		"join": {"across", "allowance", "bias", "closed", "closes_band", "curved", "depth", "eased", "elastic", "flat", "fullness", "gives", "grip", "hollow", "inside_seen", "lap", "length", "neatened", "opening", "other_cloth",
			"own_width", "point", "runs_on", "slanting", "strain", "stretch", "tightest_radius", "turning"},
	}
	want["applied"], want["edge"] = want["cloth"], want["join"]
	if got := slices.Sorted(maps.Keys(values)); !slices.Equal(got, slices.Sorted(maps.Keys(want))) {
		t.Fatalf("groups %v", got)
	}
	for group, names := range want {
		if got := slices.Sorted(maps.Keys(values[group].(map[string]any))); !slices.Equal(got, names) {
			t.Errorf("%s has %v, want %v", group, got, names)
		}
	}
}
