package sheets

import (
	"math"
	"strings"
	"testing"

	"bodkin/seams/length"
	"bodkin/sheets/figure"
	"bodkin/templates"
)

// The drawing of a garment with a fault has every edge once, to scale, and heavy
// just those that are amiss, each with the words of what is.
func TestSketchMarksWhatIsAmiss(t *testing.T) {
	blank := string(templates.Blank())
	for _, tt := range []struct {
		name, text string
		heavy      []float64 // mm of the garment
		words      string
		told       int
	}{
		{"nothing", blank, nil, "", 0},
		{"edges of unlike length", strings.Replace(blank, "waist_side: [quarter, length]", "waist_side: [quarter, length - 14]", 1),
			[]float64{586, 600}, "do not fit, 14.0 mm apart", 2},
		{"an opening too small", strings.Replace(blank, "quarter: (hip + 100) / 4", "quarter: (hip - 100) / 4", 1),
			[]float64{220, 220}, "does not go over 98 cm", 2},
	} {
		pieces := templates.Sketch("g.yaml", []byte(tt.text))
		var heavy []float64
		lines, scale, said := 0, 0.0, ""
		for _, item := range Sketch(pieces, length.Centimetres).Items {
			switch x := item.(type) {
			case figure.Path:
				if x.Stroke.Width == 0 { // the white behind words
					continue
				}
				long := pathLength(x)
				if scale == 0 { // the hem of the front is drawn first
					hem := pieces[0].Outline.Edges[0]
					scale = long / hem.Length()
				}
				if x.Stroke.Width >= figure.Bold {
					heavy = append(heavy, long/scale)
				}
				lines++
			case figure.Text:
				said += " " + x.Words
			}
		}
		told := 0
		if tt.words != "" {
			told = strings.Count(said, tt.words)
		}
		if lines != 8 || told != tt.told || len(heavy) != len(tt.heavy) {
			t.Errorf("%s: %d edges, %d of them heavy, %d with words", tt.name, lines, len(heavy), told)
			continue
		}
		for i, want := range tt.heavy {
			if math.Abs(heavy[i]-want) > 0.5 {
				t.Errorf("%s: a heavy edge is drawn %.1f mm long, and is %g", tt.name, heavy[i], want)
			}
		}
	}
}

// pathLength is the length in mm of a path of straight lines.
func pathLength(p figure.Path) float64 {
	sum, from := 0.0, p.Start
	for _, s := range p.Segments {
		sum += math.Hypot(s.To.X-from.X, s.To.Y-from.Y)
		from = s.To
	}
	return sum
}
