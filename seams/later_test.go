package seams_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"bodkin/seams"
	"bodkin/seams/form"
)

// What is put off comes to the same as what is read at once, places and all:
// every size, pass, check and line of the figure of every construction.
func TestPutOffIsTheSame(t *testing.T) {
	whole, err := seams.LoadWhole()
	if err != nil {
		t.Fatal(err)
	}
	parts, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	facts := seams.Facts{Cloth: clothFacts(t, whole, "cotton-jersey-fine"), Workroom: roomWithIron(),
		Join: seams.LineFacts{Length: 500, TightestRadius: 1e6, Eased: 5},
		Edge: seams.LineFacts{Length: 500, TightestRadius: 1e6, Elastic: 20, Grip: 300}}
	facts.Applied = facts.Cloth
	same := cmp.Options{cmpopts.IgnoreUnexported(form.Text{}), cmpopts.EquateComparable(form.Place{})}
	measured := 0
	for i := range whole.Constructions {
		a, b := &whole.Constructions[i], &parts.Constructions[i]
		if b.For != a.For || b.Kind != a.Kind || b.Title != a.Title {
			t.Errorf("%s: the heads differ: %+v", a.Name, b)
		}
		b, err := parts.Construction(a.Name)
		if err != nil {
			t.Fatal(err)
		}
		if b.Name != a.Name || len(b.Passes)+len(b.Checks)+len(b.Figure) > 0 {
			t.Fatalf("%s beside %s, with %d passes", a.Name, b.Name, len(b.Passes))
		}
		apart := cmpopts.IgnoreFields(seams.Construction{}, "Passes", "Checks", "Figure", "Stages", "Differ", "Source")
		if d := cmp.Diff(a, b, same, apart, cmpopts.IgnoreUnexported(seams.Construction{})); d != "" {
			t.Errorf("%s: %s", a.Name, d)
		}
		if err := b.Compile(); err != nil {
			t.Error(err)
		}
		sized, err := a.Measure(facts)
		again, err2 := b.Measure(facts)
		if (err == nil) != (err2 == nil) || err != nil && err.Error() != err2.Error() {
			t.Errorf("%s: %v beside %v", a.Name, err, err2)
		}
		if err == nil {
			measured += len(sized.Passes)
		}
		if d := cmp.Diff(sized, again, same); d != "" {
			t.Errorf("%s: %s", a.Name, d)
		}
	}
	if measured < 300 {
		t.Errorf("only %d passes were compared", measured)
	}
	if d := cmp.Diff(whole.Cloths, parts.Cloths, cmpopts.IgnoreFields(seams.Cloth{}, "Differ")); d != "" {
		t.Error(d)
	}
}

// A stitch, an act or a machine of the user's that does not suit a making of
// ours is told when the file is read, as before; so is everything in a
// construction of the user's.
func TestPutOffHidesNoFault(t *testing.T) {
	for _, c := range []struct{ data, want string }{
		{"- act: press\n  title: Press\n  station: machine\n  basis: b\n  source: s\n", "press is done on a machine and needs a stitch"},
		{"- machine: mine\n  title: Mine\n  kind: machine\n  forms: [\"301\"]\n  speed: 100\n  threads: 1\n  feet: [f]\n  source: s\n", ""},
		{entryWith("does: stitch\n", "does: stich\n"), `"stich" is no act on the shelf`},
		{entryWith("{first} from", "{frist} from"), `{frist} is no size of this construction`},
		{entryWith(`expect: "first"`, `expect: "fisrt"`), `unknown name "fisrt"`},
	} {
		_, err := seams.Load(seams.File{Name: "mine.yaml", Data: []byte(c.data)})
		fs, ok := errors.AsType[form.Faults](err)
		if c.want == "" && err != nil || c.want != "" && (!ok || !strings.Contains(fs[0].Message, c.want)) {
			t.Errorf("%q: %v, want %s", c.data, err, c.want)
		}
	}
}
