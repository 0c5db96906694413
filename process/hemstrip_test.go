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

// A hem of heavy wool, of firm silk, of a light knit under two needles takes a strip
// of interfacing: chosen by the rules for a hem, as wide as the hem and what reaches
// beyond it, its lengths enough for the edge once they are lapped, listed, and laid
// before the hem is turned. The sources stand beside the rules; that jacket and
// coat hems are interfaced: How Deep Is That Hem, American Sewing Guild, 2025.
func TestHemsTakeAStrip(t *testing.T) {
	shelf := loadShelf(t)
	tests := []struct {
		garment, cloth, hem, construction string
		want, material, on                string // the rule, what is taken, how it is cut; none where the first is empty
		joins                             int
	}{
		{"open-jacket", "wool-coating", "hem", "", "tailored-hem", "medium-sew-in", "bias", 1},
		{"wrap-robe", "wool-flannel", "hem", "", "tailored-hem", "medium-sew-in", "bias", 1},
		{"darted-trousers", "wool-suiting", "hem", "", "tailored-hem", "medium-sew-in", "bias", 0},
		{"open-jacket", "silk-dupion", "hem", "hand-hemmed", "silk-hem", "silk-organza", "bias", 0},
		{"knit-tee", "cotton-jersey", "hem", "twin-needle", "light-knit-hem", "fusible-knit", "straight", 0},
		{"knit-tee", "ponte", "hem", "twin-needle", "", "", "", 0},
		{"a-line-skirt", "wool-flannel", "hem", "deep-double-fold anyway", "", "", "", 0},
		{"a-line-skirt", "wool-crepe", "hem", "", "", "", "", 0},
		{"a-line-skirt", "velvet", "hem", "", "", "", "", 0},
		{"a-line-skirt", "linen-medium", "hem", "", "", "", "", 0},
	}
	const lap = 10
	used := map[string]bool{}
	for _, tt := range tests {
		g, err := templates.Load(tt.garment)
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, tt.cloth, "cotton-lawn")
		if tt.construction != "" {
			j.Seams = form.Pairs[form.Text]{{Key: text(tt.hem), Value: text(tt.construction)}}
		}
		p := plan(t, j, roomOf("steam", "zigzag-machine"), shelf)
		about := tt.garment + " in " + tt.cloth
		at := slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.ID == tt.hem+".strip" })
		k := slices.IndexFunc(p.Interfacing, func(f process.Interfacing) bool { return f.Piece == tt.hem && f.Part == "hem" })
		if tt.want == "" {
			if at >= 0 || k >= 0 {
				t.Errorf("%s: the hem takes a strip", about)
			}
			continue
		}
		if at < 0 || k < 0 {
			t.Errorf("%s: no strip is laid (%d) or cut (%d)", about, at, k)
			continue
		}
		used[tt.want] = true
		f, o := p.Interfacing[k], p.Operations[at]
		s := p.Seams[slices.IndexFunc(p.Seams, func(s process.Seam) bool { return s.Name == tt.hem })]
		rule := shelf.Stays[slices.IndexFunc(shelf.Stays, func(s seams.Stay) bool { return s.Name == tt.want })]
		if f.Material != tt.material || f.On != tt.on || f.Joins != tt.joins || f.Because[0] != rule.Because || f.Count != (f.Joins+1)*s.Copies {
			t.Errorf("%s: %d of %s on the %s with %d joins, because %q", about, f.Count, f.Material, f.On, f.Joins, f.Because[0])
		}
		if got := f.Cut[0]; got != s.Finished+rule.Below+rule.Above {
			t.Errorf("%s: the strip is %g mm wide, the hem %g deep", about, got, s.Finished)
		}
		whole := f.Cut[1]*float64(f.Joins+1) - lap*float64(f.Joins)
		if over := whole - s.Length; over < -1e-6 || over > lap+1e-6 {
			t.Errorf("%s: the strip is %g mm long, the hem %g", about, whole, s.Length)
		}
		m := shelf.Interfacings[slices.IndexFunc(shelf.Interfacings, func(m seams.Interfacing) bool { return m.Name == f.Material })]
		// On the bias, a length lies within the width: its diagonal less the corners (closed form).
		if long := m.Width*math.Sqrt2 - f.Cut[0]; f.On == "bias" && f.Cut[1] > long+1e-6 {
			t.Errorf("%s: %g mm are to be cut, and %g lie in the width", about, f.Cut[1], long)
		}
		if !strings.Contains(o.Text, strings.ToLower(f.MaterialTitle)) || (o.Does == "fuse") != f.Fusible {
			t.Errorf("%s: %s: %q", about, o.Does, o.Text)
		}
		if fitted := slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.ID == "try-on" }); fitted > at {
			t.Errorf("%s: the strip is laid before the length is settled", about)
		}
		for _, q := range p.Operations[:at] {
			if q.Seam == tt.hem {
				t.Errorf("%s: %s comes before the strip is laid", about, q.ID)
			}
		}
	}
	for _, s := range shelf.Stays {
		if s.Strip() && !used[s.Name] {
			t.Errorf("no hem takes the strip of %s", s.Name)
		}
	}
}
