package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
)

// jobOfCloth is the demo's garment with its first cloth as written.
func jobOfCloth(t testing.TB, cloth string) *process.Job {
	t.Helper()
	j, err := process.ParseJob("job.yaml", []byte("make: shell-top\nsize: {bust: 92 cm}\ncloth: {main: {"+cloth+"}}\n"))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func noticeOf(p *process.Plan, about string) string {
	k := slices.IndexFunc(p.Notices, func(n process.Notice) bool { return n.About == about })
	if k < 0 {
		return ""
	}
	return p.Notices[k].Text
}

// A cloth of her own is judged by what she tells of it: common practice, no
// source; what is chosen for sheer and for firm light cotton: Sheer Fabrics,
// CT-MMB.179, Univ. of Kentucky Extension, and Complex Seams for Woven Fabrics,
// Oregon State Univ. Extension.
func TestOwnClothInTheJob(t *testing.T) {
	shelf := loadShelf(t)
	p := chosen(t, shelf, jobOfCloth(t, "like: cotton-lawn, weight: 60 g/m2, colour: white"), rooms()[3])
	u := p.Cloths[0]
	if !u.Own || u.Like != "cotton-lawn" || slices.Contains(u.Inferred, "weight") || !slices.Contains(u.Inferred, "thickness") ||
		u.Resembles == nil || u.Resembles.Name != "cotton-lawn" || u.WidthMM != 1140 {
		t.Errorf("%+v", u)
	}
	said := noticeOf(p, "Cloth like cotton lawn")
	for _, w := range []string{"Taken over from cotton-lawn: fibre", "The thickness goes with the weight: 0.15 mm", "most like cotton lawn: both are woven", "it weighs 60 g/m², the other 72"} {
		if !strings.Contains(said, w) {
			t.Errorf("the notice does not say %q: %s", w, said)
		}
	}
	firm := seamOf(t, p, "side").Construction
	sheer := seamOf(t, chosen(t, shelf, jobOfCloth(t, "like: cotton-lawn, sheerness: 3, width: 1 m"), rooms()[3]), "side").Construction
	if firm != "plain-together-overlocked" || sheer != "french" {
		t.Errorf("firm %s, sheer %s", firm, sheer)
	}
}

// Two layers are judged as one: a lawn under a sheer hides the edges and bears
// no more heat than the silk (common practice, no source). The one underneath is
// cut, bought and basted to the other before anything else is done.
func TestUnderlinedCloth(t *testing.T) {
	shelf := loadShelf(t)
	alone := chosen(t, shelf, jobOfCloth(t, "is: silk-georgette"), rooms()[3])
	p, err := process.Work(t.Context(), process.Input{Job: jobOfCloth(t, "is: silk-georgette, under: cotton-lawn"),
		Garment: garmentOf(t, "shell-top"), Workroom: rooms()[3], Shelf: shelf}, order.Options{Nodes: 20_000})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := seamOf(t, alone, "side").Construction, seamOf(t, p, "side").Construction; a != "french" || b == "french" {
		t.Errorf("alone %s, over lawn %s", a, b)
	}
	u := p.Cloths[0]
	if u.Name != "silk-georgette" || u.Title != "Silk georgette over cotton lawn" || u.HeatDots != 1 || u.Under == nil || u.Resembles == nil {
		t.Fatalf("%+v", u)
	}
	pieces := 0.0
	for _, x := range p.Pieces {
		pieces += x.AreaMM2 * float64(x.Count)
	}
	if u.Under.AreaMM2 != pieces || u.AreaMM2 != pieces || u.Under.LengthMM <= 0 {
		t.Errorf("pieces %.0f, of the outer layer %.0f, underneath %.0f mm²", pieces, u.AreaMM2, u.Under.AreaMM2)
	}
	if !strings.Contains(noticeOf(p, u.Title), "sewn as one cloth of 115 g/m²") {
		t.Errorf("%q", noticeOf(p, u.Title))
	}
	checkOrder(t, p)
	at := slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.ID == "layers.main" })
	if at < 0 {
		t.Fatal("the layers are not basted together")
	}
	for k, o := range p.Operations {
		if o.Seam != "" && !strings.Contains(o.Text, "strip") && !strings.Contains(o.Text, "binding") && k < at {
			t.Errorf("%s is done before the layers are one: %s", o.ID, o.Text)
		}
	}
	var cut process.Operation
	for _, o := range p.Operations {
		if o.ID == "cut.main" {
			cut = o
		}
	}
	if !strings.Contains(cut.Text, "Cut the same pieces in cotton lawn.") {
		t.Errorf("cutting out says %q", cut.Text)
	}
	// Strips are cut from the outer layer alone.
	if s := p.Cloths[1]; s.Under != nil || s.Title != "Silk georgette" {
		t.Errorf("strips are of %+v", s)
	}
	for i, s := range p.Strips {
		if i < len(alone.Strips) && s.CutWidth != alone.Strips[i].CutWidth {
			t.Errorf("%s is %.1f mm wide over lawn and %.1f alone", s.Name, s.CutWidth, alone.Strips[i].CutWidth)
		}
	}
}

// An entry on her own shelf tells what it resembles too.
func TestOwnShelfResembles(t *testing.T) {
	shelf, err := seams.Load(seams.File{Name: "mine.yaml", Data: []byte("- {cloth: attic-silk, like: silk-habotai, weight: 45 g/m2, source: weighed}\n")})
	if err != nil {
		t.Fatal(err)
	}
	p := chosen(t, shelf, jobOfCloth(t, "is: attic-silk"), rooms()[0])
	if u := p.Cloths[0]; !u.Own || u.Name != "attic-silk" || u.Resembles == nil || !strings.Contains(noticeOf(p, "Attic silk"), "Taken over from silk-habotai") {
		t.Errorf("%+v, %q", u, noticeOf(p, "Attic silk"))
	}
}
