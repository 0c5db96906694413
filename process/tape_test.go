package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams/form"
	"bodkin/templates"
)

// TestTapeIsCutAndNamed: a seam that is taped says with what, and the tape is
// among what to cut, as long as the seam. Taped shoulders of knits: Successful
// Sewing, Goodheart-Willcox, 2013, p. 288; clear elastic where the seam is to
// give: same page.
func TestTapeIsCutAndNamed(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	for cloth, want := range map[string]string{"cotton-jersey": "stay-tape", "swimwear-knit": "clear-elastic"} {
		j := jobFor(g, cloth, "cotton-jersey")
		j.Seams = form.Pairs[form.Text]{{Key: text("shoulder"), Value: text("taped")}}
		p := plan(t, j, rooms()[0], shelf)
		k := slices.IndexFunc(p.Interfacing, func(f process.Interfacing) bool { return f.Piece == "shoulder" })
		s := p.Seams[slices.IndexFunc(p.Seams, func(s process.Seam) bool { return s.Name == "shoulder" })]
		if k < 0 {
			t.Fatalf("%s: no tape is cut for a %s shoulder", cloth, s.Construction)
		}
		f := p.Interfacing[k]
		if f.Material != want || f.Cut[1] != s.Length || f.Count != s.Copies {
			t.Errorf("%s: %d of %s, %g mm long, want %s, %d of %g mm", cloth, f.Count, f.Material, f.Cut[1], want, s.Copies, s.Length)
		}
		if !slices.ContainsFunc(p.Operations, func(o process.Operation) bool {
			return o.Seam == "shoulder" && strings.Contains(o.Text, strings.ToLower(f.MaterialTitle[:1])+f.MaterialTitle[1:])
		}) {
			t.Errorf("%s: no step names the %s", cloth, f.MaterialTitle)
		}
	}
}
