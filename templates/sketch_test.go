package templates

import (
	"strings"
	"testing"
)

// A garment with a fault is drawn as far as it is understood, and its faulty edges
// say what is amiss.
func TestSketch(t *testing.T) {
	blank := string(Blank())
	short := strings.Replace(blank, "waist_side: [quarter, length]", "waist_side: [quarter, length - 14]", 1)
	for _, tt := range []struct {
		name, text string
		pieces     int
		amiss      map[string]string // piece.edge: words
	}{
		{"nothing amiss", blank, 2, nil},
		{"no hem", withoutLine(blank, "edge: hem, title"), 2, map[string]string{
			"Front.hem": "nothing becomes of it", "Back.hem": "nothing becomes of it"}},
		{"14 mm apart", short, 2, map[string]string{
			"Front.side": "the two sides of the side seam do not fit, 14.0 mm apart", "Back.side": "the two sides of the side seam do not fit, 14.0 mm apart"}},
		{"an opening too small", strings.Replace(blank, "quarter: (hip + 100) / 4", "quarter: (hip - 100) / 4", 1), 2, map[string]string{
			"Front.waist": "the waist edge is 88 cm round, and does not go over 98 cm", "Back.waist": "the waist edge is 88 cm round, and does not go over 98 cm"}},
		{"a formula that fails", strings.Replace(blank, "quarter: (hip", "quarter: (hop", 1), 0, nil},
		{"no YAML", "garment: [", 0, nil},
	} {
		got := Sketch("g.yaml", []byte(tt.text))
		if len(got) != tt.pieces {
			t.Errorf("%s: %d pieces", tt.name, len(got))
		}
		found := 0
		for _, p := range got {
			if len(p.Edges) != len(p.Outline.Edges) {
				t.Errorf("%s: %s has %d edges drawn, %d told", tt.name, p.Title, len(p.Outline.Edges), len(p.Edges))
			}
			for _, e := range p.Edges {
				if e.Amiss != tt.amiss[p.Title+"."+e.Name] {
					t.Errorf("%s: %s.%s: %q", tt.name, p.Title, e.Name, e.Amiss)
				}
				if e.Amiss != "" {
					found++
				}
			}
		}
		if found != len(tt.amiss) {
			t.Errorf("%s: %d edges amiss, want %d", tt.name, found, len(tt.amiss))
		}
	}
}

func withoutLine(text, with string) string {
	var out []string
	for _, l := range strings.Split(text, "\n") {
		if !strings.Contains(l, with) {
			out = append(out, l)
		}
	}
	return strings.Join(out, "\n")
}

// Whatever line is lost from a garment of the shelf, it is drawn in part or not at
// all; a garment without a fault is drawn with nothing amiss.
func TestSketchOfDamagedGarments(t *testing.T) {
	drawn := 0
	for k, name := range Names() {
		data, file := Text(name)
		for _, p := range Sketch(file, data) {
			for _, e := range p.Edges {
				if e.Amiss != "" {
					t.Errorf("%s: %s.%s: %s", name, p.Title, e.Name, e.Amiss)
				}
			}
		}
		lines := strings.Split(string(data), "\n")
		for i := k; i < len(lines); i += 37 {
			damaged := strings.Join(append(append([]string{}, lines[:i]...), lines[i+1:]...), "\n")
			drawn += len(Sketch(file, []byte(damaged)))
		}
	}
	if drawn == 0 {
		t.Error("nothing is drawn")
	}
}
