package seams_test

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"sync"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
)

// ours is the shelf without a user's files, read once for all tests, which
// must leave it as it is.
var ours = sync.OnceValues(func() (*seams.Shelf, error) { return seams.Load() })

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
		"cloths": {len(s.Cloths), 14}, "stitches": {len(s.Stitches), 12}, "machines": {len(s.Machines), 8}, "needles": {len(s.Needles), 6},
		"threads": {len(s.Threads), 3}, "interfacings": {len(s.Interfacings), 8}, "acts": {len(s.Acts), 18}, "cautions": {len(s.Cautions), 6},
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

// entryWith is a small construction of the user's with one line changed.
func entryWith(was, is string) string {
	const good = `- construction: mine
  title: Mine
  for: join
  kind: seam
  iso4916: {class: 1}
  stitches: ["301"]
  inside: enclosed
  sizes:
    first: "workroom.house('mine', 6)"
    second: "first"
    turn: "cloth.thickness"
    trim: "3"
  allowance: "first + second + turn"
  finished: "second"
  strip: {on: bias, width: "4 * second"}
  ruled_out:
    - {when: "cloth.knit", because: "it is knitted"}
  speaks_for:
    - {when: "cloth.sheer", worth: 2, because: "it is sheer"}
  passes:
    - does: stitch
      stitch: "301"
      text: "Stitch {first} from the edge of the {a}."
  checks:
    - {after_pass: 1, what: "row", expect: "first", tolerance: "1.5"}
  figure:
    - {ply: a, through: [["0", "0"], ["second", "0"]]}
    - {stitch: "301", through: [["0", "0"], ["0", "1"]]}
    - {size: second, through: [["0", "2"], ["second", "2"]]}
  source: mine
`
	if was == "" {
		return good
	}
	if !strings.Contains(good, was) {
		panic("no such text: " + was)
	}
	return strings.Replace(good, was, is, 1)
}

func TestFaultsOfEntries(t *testing.T) {
	load(t, seams.File{Name: "mine.yaml", Data: []byte(entryWith("", ""))})
	for _, c := range []struct{ was, is, want string }{
		{"  source: mine\n", "", `mine.yaml:1:3: the key "source" is missing`},
		{`stitches: ["301"]`, `stitches: ["310"]`, `mine.yaml:6:14: "310" is no stitch on the shelf; did you mean "301"?`},
		{"does: stitch\n", "does: stich\n", `mine.yaml:21:13: "stich" is no act on the shelf; did you mean "stitch"?`},
		{`      stitch: "301"` + "\n", "", `mine.yaml:21:7: stitch is done on a machine and needs a stitch`},
		{`      stitch: "301"` + "\n", "      stitch: slip\n", `mine.yaml:22:15: slip is sewn by hand, and stitch is done at the machine`},
		{"kind: seam", "kind: hem", `mine.yaml:4:9: "hem" is no kind for join`},
		{"for: join", "for: jion", `mine.yaml:3:8: "jion" is not one of join, edge, detail; did you mean "join"?`},
		{"inside: enclosed", "inside: closed", `mine.yaml:7:11: "closed" is not one of enclosed, neatened, raw`},
		{"{class: 1}", "{class: 9}", `mine.yaml:5:20: class must be from 1 to 8`},
		{"    trim: ", "    cloth: ", `mine.yaml:12:5: the name is taken`},
		{"    trim: ", "    min: ", `mine.yaml:12:5: the name has a meaning in formulas`},
		{"worth: 2, ", "", `mine.yaml:19:7: a rule under speaks_for needs a worth`},
		{`because: "it is knitted"`, `worth: 1, because: "it is knitted"`, `mine.yaml:17:35: a rule that rules out has no worth`},
		{"{first} from", "{frist} from", `mine.yaml:23:13: {frist} is no size of this construction; did you mean "first"?`},
		{"after_pass: 1", "after_pass: 2", `mine.yaml:25:20: after_pass must be from 1 to 1`},
		{"{ply: a, ", "{ply: c, ", `mine.yaml:27:13: "c" is not one of a, b, strip`},
		{"{ply: a, ", "{", `mine.yaml:27:7: a line of the figure is a ply, a stitch or a size`},
		{`["0", "1"]]}`, `["0", "1"], ["0", "2"]]}`, `mine.yaml:28:32: a stitch or a size runs through two points`},
		{"{size: second", "{size: secnd", `mine.yaml:29:14: "secnd" is no size of this construction; did you mean "second"?`},
		{`["second", "0"]]}`, `["second"]]}`, `mine.yaml:27:38: a point has two numbers`},
		{`"cloth.knit"`, `"cloth.kint"`, `mine.yaml:17:21: unknown name "kint" after the point; did you mean "knit"?`},
		{`second: "first"`, `second: "third"`, `mine.yaml:10:14: unknown name "third"`},
		{`first: "workroom.house('mine', 6)"`, `first: "second"`, `mine.yaml:9:13: unknown name "second"`},
		{"- construction: mine\n", "- constriction: mine\n", `mine.yaml:1:3: an entry starts with its kind, not with "constriction"; did you mean "construction"?`},
		{"{on: bias", "{on: byas", `mine.yaml:15:15: "byas" is not one of bias, straight, shaped; did you mean "bias"?`},
	} {
		_, err := seams.Load(seams.File{Name: "mine.yaml", Data: []byte(entryWith(c.was, c.is))})
		fs, ok := errors.AsType[form.Faults](err)
		if !ok {
			t.Errorf("%q for %q: no faults but %v", c.is, c.was, err)
			continue
		}
		if !strings.HasPrefix(fs[0].Error(), c.want) || fs[0].SourceLine == "" {
			t.Errorf("%q for %q:\n%v\nwant\n%s", c.is, c.was, fs[0], c.want)
		}
	}
}

func TestFaultsOfMaterials(t *testing.T) {
	for _, c := range []struct{ data, want string }{
		{ownCloth + ownCloth, `mine.yaml:21:3: "silk-georgette" stands here twice; keep one of the two; the first is at mine.yaml:2:3`},
		{strings.Replace(ownCloth, "weight: 61", "weight: 61000", 1), "mine.yaml:6:11: weight must be from 5 to 2000 g/m²"},
		{strings.Replace(ownCloth, "heat_dots: 1", "heat_dots: 0\n  steam: true", 1), "mine.yaml:9:10: a cloth that must not be ironed cannot be steamed"},
		{strings.Replace(ownCloth, "widths: [130 cm]", "widths: [130 cm]\n  estimates: [wieght]", 1), `mine.yaml:10:15: "wieght" is no key of this entry; did you mean "weight"?`},
		{strings.Replace(ownCloth, "130 cm", "130", 1), `mine.yaml:9:12: "130" has no unit`},
		{strings.Replace(ownCloth, "130 cm", "13 mm", 1), "mine.yaml:9:12: a cloth is from 10 cm to 5 m wide"},
		{strings.Replace(ownNeedle, "us: 10", "us: 11", 1), "mine.yaml:6:7: needle NM 70 is not US 11"},
		{strings.Replace(ownNeedle, "weight > 0", "weight > ", 1), "mine.yaml:4:24: the formula ends too early"},
		{"- thread: t\n  title: T\n  tex: 30\n  ticket: 30\n  source: s\n", "mine.yaml:4:11: ticket 30 does not go with tex 30"},
		{"- machine: m\n  title: M\n  kind: machine\n  forms: [\"301\", \"333\"]\n  speed: 100\n  threads: 1\n  feet: [f]\n  source: s\n", `mine.yaml:4:18: "333" is no stitch on the shelf`},
		{"- machine: m\n  title: M\n  kind: iron\n  source: s\n", "mine.yaml:1:3: an iron that gives no heat"},
		{"- interfacing: i\n  title: I\n  fusible: true\n  weight: 50\n  width: 900\n  trim: t\n  attach: a\n  source: s\n", "mine.yaml:1:3: a fusible needs heat"},
		{"- act: a\n  title: A\n  station: table\n  basis: b\n  caution: irom\n  source: s\n", `mine.yaml:5:12: "irom" is no caution on the shelf; did you mean "iron"?`},
		{"- stitch: x\n  title: X\n  ratio: 2\n  ratio_source: r\n  source: s\n", "mine.yaml:1:3: a stitch needs at least one thread"},
		{"cloth: x\n", "mine.yaml:1:1: a shelf file is a list of entries"},
		{"- x\n", `mine.yaml:1:3: an entry starts with its kind, not with ""`},
		{"- [\n", "mine.yaml:1:3: this list is opened with [ and never closed"},
	} {
		_, err := seams.Load(seams.File{Name: "mine.yaml", Data: []byte(c.data)})
		fs, ok := errors.AsType[form.Faults](err)
		if !ok || !strings.HasPrefix(fs[0].Error(), c.want) {
			t.Errorf("%q:\n%v\nwant\n%s", c.data, err, c.want)
		}
	}
}

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
	for b.Loop() {
		if _, err := seams.Load(); err != nil {
			b.Fatal(err)
		}
	}
}
