package process_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams"
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

// Lines that would grow are taped though their construction knows nothing of a
// tape: it is chosen with its reason, as long as the line, laid before the first
// pass and after what the line runs over. The sources stand beside the rules.
func TestLinesThatGrowAreTaped(t *testing.T) {
	shelf := loadShelf(t)
	tests := []struct {
		garment, cloth, line, construction string
		want                               string // the rule; none: no tape
		material                           string
		after                              string // an operation that comes before it
	}{
		{"knit-tee", "cotton-jersey", "shoulder", "overlocked-4", "knit-that-hangs", "stay-tape", "cut.main"},
		{"child-dress", "cotton-jersey", "waist", "", "gathered-waist", "stay-tape", "side."},
		{"shirt-dress", "wool-flannel", "waist", "", "gathered-waist", "stay-tape", "front-dart."},
		{"waisted-dress", "denim", "shoulder", "", "slanting-seam", "stay-tape", "cut.main"},
		{"shell-top", "cotton-jersey", "neck", "", "hollow-edge-of-knit", "stay-tape", "shoulder."},
		{"bias-slip", "silk-georgette", "top", "", "slanting-edge", "organza-strip", "side."},
		{"pull-on-trousers", "ponte", "pocket", "", "pocket-mouth", "stay-tape", "cut.main"},
		{"knit-tee", "cotton-jersey", "neck", "", "", "", ""}, // it has to pass the head
		{"waisted-dress", "cotton-lawn", "shoulder", "", "", "", ""},
		{"waisted-dress", "silk-georgette", "shoulder", "", "", "", ""}, // it would show through
		{"bias-slip", "silk-georgette", "side", "", "", "", ""},         // a bias side seam is to hang freely
		{"shell-top", "cotton-lawn", "neck", "", "", "", ""},
	}
	used := map[string]bool{}
	for _, tt := range tests {
		g, err := templates.Load(tt.garment)
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, tt.cloth, "cotton-lawn")
		if tt.construction != "" {
			j.Seams = form.Pairs[form.Text]{{Key: text(tt.line), Value: text(tt.construction)}}
		}
		p := plan(t, j, rooms()[4], shelf)
		at := slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.ID == tt.line+".tape" })
		k := slices.IndexFunc(p.Interfacing, func(f process.Interfacing) bool { return f.Piece == tt.line && f.Tape })
		if tt.want == "" {
			if at >= 0 || k >= 0 {
				t.Errorf("%s in %s: the %s is taped", tt.garment, tt.cloth, tt.line)
			}
			continue
		}
		if at < 0 || k < 0 {
			t.Errorf("%s in %s: no tape is laid (%d) or cut (%d) for the %s", tt.garment, tt.cloth, at, k, tt.line)
			continue
		}
		used[tt.want] = true
		f, o := p.Interfacing[k], p.Operations[at]
		stay := shelf.Stays[slices.IndexFunc(shelf.Stays, func(s seams.Stay) bool { return s.Name == tt.want })]
		s := p.Seams[slices.IndexFunc(p.Seams, func(s process.Seam) bool { return s.Name == tt.line })]
		if f.Material != tt.material || f.Because[0] != stay.Because || f.Count != s.Copies || f.Cut[1] > s.Length+0.5 || f.Cut[1] < 0.4*s.Length {
			t.Errorf("%s in %s: %d of %s, %g mm, because %q; want %s of at most %g mm, because %q", tt.garment, tt.cloth, f.Count, f.Material, f.Cut[1], f.Because[0], tt.material, s.Length, stay.Because)
		}
		if !strings.Contains(o.Text, strings.ToLower(f.MaterialTitle)) || math.Abs(o.Length-f.Cut[1]*float64(f.Count)) > 0.5 {
			t.Errorf("%s: %q over %g mm", o.ID, o.Text, o.Length)
		}
		before := func(id string) bool {
			return slices.ContainsFunc(p.Operations[:at], func(o process.Operation) bool { return strings.HasPrefix(o.ID, id) })
		}
		if !before(tt.after) || before(tt.line+".1") {
			t.Errorf("%s in %s: %s comes before %s or after the first pass", tt.garment, tt.cloth, o.ID, tt.after)
		}
	}
	for _, s := range shelf.Stays {
		if !s.Strip() && !used[s.Name] {
			t.Errorf("no garment is held by %s", s.Name)
		}
	}
}
