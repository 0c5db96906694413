package seams_test

import (
	"errors"
	"fmt"
	"os"
	"runtime/debug"
	"strings"
	"sync"
	"testing"

	"bodkin/seams"
)

// ours is the shelf without a user's files, read once for all tests, which
// must leave it as it is.
var ours = sync.OnceValues(func() (*seams.Shelf, error) { return seams.LoadWhole() })

func load(t testing.TB, own ...seams.File) *seams.Shelf {
	t.Helper()
	s, err := ours()
	if len(own) > 0 {
		s, err = seams.Load(own...)
	}
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestEveryEmbeddedFileLoads(t *testing.T) {
	s := load(t)
	for what, n := range map[string][2]int{
		"cloths": {len(s.Cloths), 45}, "stitches": {len(s.Stitches), 30}, "machines": {len(s.Machines), 20}, "needles": {len(s.Needles), 20},
		"threads": {len(s.Threads), 6}, "interfacings": {len(s.Interfacings), 10}, "tools": {len(s.Tools), 25}, "pressing": {len(s.Pressing), 8}, "acts": {len(s.Acts), 18}, "cautions": {len(s.Cautions), 6}, "stays": {len(s.Stays), 6},
		"constructions": {len(s.Constructions), 1},
	} {
		if n[0] < n[1] {
			t.Errorf("%d %s, want at least %d", n[0], what, n[1])
		}
	}
}

func TestEveryRuleAndFormulaCompiles(t *testing.T) {
	s := load(t)
	for i := range s.Constructions {
		if err := s.Constructions[i].Compile(); err != nil {
			t.Error(err)
		}
	}
	for _, c := range s.Cloths {
		facts := seams.Facts{Cloth: c.Facts()}
		if _, err := s.NeedleFor(facts); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
		if _, err := s.ThreadFor(facts); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
		if _, err := s.WeighInterfacings(facts); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
		if _, err := s.CautionsFor(facts, nil); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
	}
	for i := range s.Stitches {
		if _, err := s.Stitches[i].Draws(4, 0.5, 5); err != nil {
			t.Error(err)
		}
	}
}

const ownCloth = `
- cloth: silk-georgette
  title: My own georgette
  fibre: silk
  structure: woven
  weight: 61
  thickness: 0.2
  heat_dots: 1
  widths: [130 cm]
  source: measured
- cloth: curtain-lace
  title: Curtain lace
  fibre: polyester
  structure: knit
  weight: 90
  thickness: 0.5
  heat_dots: 2
  widths: [3 m]
  source: measured
`

const ownNeedle = `
- needle: mine
  title: My needle
  when: "cloth.weight > 0"
  nm: 70
  us: 10
  point: sharp
  stitch_mm: 2
  source: mine
`

func TestOwnEntriesWin(t *testing.T) {
	plain := load(t)
	s := load(t, seams.File{Name: "mine.yaml", Data: []byte(ownCloth)}, seams.File{Name: "needles.yaml", Data: []byte(ownNeedle)})
	c, err := s.Cloth("silk-georgette")
	if err != nil || c.Title != "My own georgette" || c.Weight != 61 || c.Widths[0] != 1300 {
		t.Errorf("%+v, %v", c, err)
	}
	if len(s.Cloths) != len(plain.Cloths)+1 || s.Cloths[len(s.Cloths)-1].Name != "curtain-lace" {
		t.Errorf("a new cloth stands elsewhere than at the end of %d", len(s.Cloths))
	}
	for i, was := range plain.Cloths {
		if s.Cloths[i].Name != was.Name {
			t.Errorf("cloth %d is %s, was %s", i, s.Cloths[i].Name, was.Name)
		}
	}
	n, err := s.NeedleFor(seams.Facts{Cloth: c.Facts()})
	if err != nil || n.Name != "mine" {
		t.Errorf("needle %+v, %v; want the user's rule, which comes first", n, err)
	}
}

func TestLookup(t *testing.T) {
	s := load(t)
	_, err := s.Cloth("silk-georgete")
	e, ok := errors.AsType[*seams.UnknownError](err)
	if !ok || e.Nearest != "silk-georgette" || e.Error() != `"silk-georgete" is no cloth on the shelf; did you mean "silk-georgette"?` {
		t.Errorf("%v", err)
	}
	for _, err := range []error{
		second(s.Stitch("999")), second(s.Machine("x")), second(s.Construction("x")), second(s.Thread("x")), second(s.Interfacing("x")),
		second(s.Act("x")), second(s.Caution("x")),
	} {
		if _, ok := errors.AsType[*seams.UnknownError](err); !ok {
			t.Errorf("%v", err)
		}
	}
	if m, err := s.Machine("zigzag-machine"); err != nil || !seams.FormedBy([]seams.Machine{*m})("304") || seams.FormedBy([]seams.Machine{*m})("504") {
		t.Errorf("zigzag machine: %+v, %v", m, err)
	}
}

func second[T any](_ T, err error) error { return err }

// What the loader refuses in general must hold for the files that come along:
// units at the head, one kind or more in each, no key without a value.
func TestHeadsOfFiles(t *testing.T) {
	files, err := os.ReadDir("shelf")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if f.IsDir() {
			continue
		}
		data, err := os.ReadFile("shelf/" + f.Name())
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(string(data), "# ") {
			t.Errorf("%s has no head that tells its keys", f.Name())
		}
	}
}

func TestSameShelfTwice(t *testing.T) {
	a, b := fmt.Sprint(names(load(t))), fmt.Sprint(names(load(t, seams.File{Name: "none.yaml", Data: []byte("[]")})))
	if a != b {
		t.Errorf("two loads differ:\n%s\n%s", a, b)
	}
}

func names(s *seams.Shelf) []string {
	var out []string
	for _, c := range s.Cloths {
		out = append(out, c.Name)
	}
	for _, c := range s.Constructions {
		out = append(out, c.Name)
	}
	for _, c := range s.Needles {
		out = append(out, c.Name)
	}
	return out
}

func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	defer debug.SetGCPercent(debug.SetGCPercent(400)) // as the command has it
	for b.Loop() {
		if _, err := seams.Load(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLoadWhole(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := seams.LoadWhole(); err != nil {
			b.Fatal(err)
		}
	}
}
