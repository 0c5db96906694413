package seams_test

import (
	"errors"
	"slices"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
)

// ownJoins score higher than anything on the shelf.
const ownJoins = `
- construction: zz-plain
  title: Plain
  for: join
  kind: seam
  stitches: ["301"]
  allowance: "15"
  speaks_for:
    - {when: "cloth.weight > 100", worth: 20, because: "it is heavy enough"}
    - {when: "cloth.weight > 110", worth: 10.5, because: "it is heavy"}
  passes: [{does: stitch, stitch: "301", text: "Stitch."}]
  source: mine
- construction: aa-plain
  title: Plain too
  for: join
  kind: seam
  stitches: ["301"]
  allowance: "15"
  speaks_for:
    - {when: "cloth.weight > 100", worth: 18, because: "it is heavy enough"}
    - {when: "cloth.thickness > 0", worth: 12.5, because: "it has a thickness"}
    - {when: "cloth.pile", worth: 5, because: "it has pile"}
  passes: [{does: stitch, stitch: "301", text: "Stitch."}]
  source: mine
- construction: mm-covered
  title: Covered
  for: join
  kind: seam
  stitches: ["406", "slip"]
  iron: true
  allowance: "6"
  speaks_against:
    - {when: "true", worth: 1, because: "it is never asked for"}
  ruled_out:
    - {when: "!cloth.knit", because: "it is for knits"}
  passes: [{does: stitch, stitch: "406", text: "Stitch."}]
  source: mine
`

func lockstitchRoom(s *seams.Shelf, iron bool) seams.WorkroomFacts {
	m, _ := s.Machine("straight-stitcher")
	return seams.WorkroomFacts{Forms: seams.FormedBy([]seams.Machine{*m}), Iron: iron}
}

func TestWeigh(t *testing.T) {
	s := load(t, seams.File{Name: "mine.yaml", Data: []byte(ownJoins)})
	facts := seams.Facts{Cloth: seams.ClothFacts{Weight: 120, Thickness: 0.3, Woven: true}, Workroom: lockstitchRoom(s, false)}
	verdicts, err := s.Weigh("join", "seam", facts)
	if err != nil {
		t.Fatal(err)
	}
	// Both score 30.5, more than anything else here: by name, then.
	if verdicts[0].Construction.Name != "aa-plain" || verdicts[1].Construction.Name != "zz-plain" || verdicts[0].Score != 30.5 || verdicts[1].Score != 30.5 {
		t.Errorf("first are %s (%v) and %s (%v)", verdicts[0].Construction.Name, verdicts[0].Score, verdicts[1].Construction.Name, verdicts[1].Score)
	}
	if len(verdicts[0].For) != 2 || verdicts[0].For[1].Because != "it has a thickness" {
		t.Errorf("reasons %+v", verdicts[0].For)
	}
	i := slices.IndexFunc(verdicts, func(v seams.Verdict) bool { return v.Construction.Name == "mm-covered" })
	covered := verdicts[i]
	want := []string{
		"it is for knits",
		"nothing in the room forms the stitch 406 (two-needle coverstitch); a coverstitch machine or a coverstitch machine with top cover would",
		"there is no iron in the room, and this must be pressed as it is made",
	}
	if !slices.Equal(covered.RuledOut, want) || covered.Score != -1 || covered.Allowed() {
		t.Errorf("covered is ruled out by %q, score %v", covered.RuledOut, covered.Score)
	}
	checkOrder(t, verdicts)
}

func checkOrder(t *testing.T, verdicts []seams.Verdict) {
	t.Helper()
	for i, v := range verdicts {
		score := 0.0
		for _, r := range v.For {
			score += r.Worth
		}
		for _, r := range v.Against {
			score -= r.Worth
		}
		if score != v.Score {
			t.Errorf("%s scores %v, its reasons add up to %v", v.Construction.Name, v.Score, score)
		}
		if i == 0 {
			continue
		}
		u := verdicts[i-1]
		inOrder := u.Allowed() && !v.Allowed() ||
			u.Allowed() == v.Allowed() && (u.Score > v.Score || u.Score == v.Score && u.Construction.Name < v.Construction.Name)
		if !inOrder {
			t.Errorf("%s (%v, %v) stands before %s (%v, %v)", u.Construction.Name, u.Allowed(), u.Score, v.Construction.Name, v.Allowed(), v.Score)
		}
	}
}

// Every kind over every cloth of the shelf, with and without machines and iron.
func TestWeighEverything(t *testing.T) {
	s := load(t)
	rooms := []seams.WorkroomFacts{{}, lockstitchRoom(s, true), {Forms: seams.FormedBy(s.Machines), Iron: true, Steam: true}}
	for _, cloth := range s.Cloths {
		for _, room := range rooms {
			facts := seams.Facts{Cloth: cloth.Facts(), Applied: cloth.Facts(), Workroom: room}
			for _, k := range [][2]string{{"join", "seam"}, {"edge", "hem"}, {"edge", "binding"}, {"edge", "facing"}, {"edge", "band"}, {"edge", "casing"},
				{"detail", "dart"}, {"detail", "staystitch"}, {"detail", "strip"}} {
				verdicts, err := s.Weigh(k[0], k[1], facts)
				if err != nil {
					t.Fatal(err)
				}
				checkOrder(t, verdicts)
			}
		}
	}
}

func TestWeighUnknown(t *testing.T) {
	s := load(t)
	for _, c := range []struct{ what, kind, nearest string }{{"edge", "hme", "hem"}, {"joint", "seam", "join"}, {"join", "hem", "seam"}} {
		_, err := s.Weigh(c.what, c.kind, seams.Facts{})
		e, ok := errors.AsType[*seams.UnknownError](err)
		if !ok || (c.nearest != "seam" && e.Nearest != c.nearest) {
			t.Errorf("%s %s: %v", c.what, c.kind, err)
		}
	}
}

// A construction made in code works without a loader, and a rule that divides
// by zero is told with its place.
func TestWeighFault(t *testing.T) {
	s := load(t, seams.File{Name: "mine.yaml", Data: []byte(ownJoins)})
	for i := range s.Constructions {
		if s.Constructions[i].Name == "zz-plain" {
			c := seams.Construction{Name: "broken", For: "join", Kind: "seam",
				RuledOut: []seams.Rule{{When: form.Text{Value: "1 / cloth.weight > 2", At: form.Place{File: "x", Line: 3, Column: 5}}, Because: "no"}}}
			s.Constructions[i] = c
		}
	}
	_, err := s.Weigh("join", "seam", seams.Facts{})
	f, ok := errors.AsType[form.Fault](err)
	if !ok || f.Message != "a division by zero" || f.Line != 3 {
		t.Errorf("%v", err)
	}
}

func BenchmarkWeighJoins(b *testing.B) {
	s := load(b)
	cloth, err := s.Cloth("silk-georgette")
	if err != nil {
		b.Fatal(err)
	}
	facts := seams.Facts{Cloth: cloth.Facts(), Applied: cloth.Facts(), Join: seams.LineFacts{Length: 400, TightestRadius: 1e6}, Workroom: lockstitchRoom(s, true)}
	if _, err := s.Weigh("join", "seam", facts); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Weigh("join", "seam", facts); err != nil {
			b.Fatal(err)
		}
	}
}
