package process_test

import (
	"math"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// offLine is how far a place lies from a closed line, brute force.
func offLine(p process.Point, line []process.Point) float64 {
	least := math.Inf(1)
	for i, a := range line {
		b := line[(i+1)%len(line)]
		dx, dy := b.X-a.X, b.Y-a.Y
		k := 0.0
		if n := dx*dx + dy*dy; n > 0 {
			k = min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/n, 0), 1)
		}
		least = min(least, math.Hypot(a.X+k*dx-p.X, a.Y+k*dy-p.Y))
	}
	return least
}

// What is drawn on a cut piece starts on its cutting line; a notch ends on the
// seam line and a leg at its dart's point; the chalk's points lie on the cutting
// line, none of them above the top line or beyond the fold; and no estimate of
// cloth is below what the area asks for.
func TestWhatTheCutterGets(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range []string{"open-jacket", "pull-on-skirt", "shell-top"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		p := plan(t, jobFor(g, "cotton-lawn", "cotton-lawn"), roomOf("steam", "straight-stitcher"), shelf)
		kinds := map[string]int{}
		for _, piece := range p.Pieces {
			for _, d := range piece.Drawn {
				kinds[d.Kind]++
				if off := offLine(d.From, piece.CutLine); off > 0.1 {
					t.Errorf("%s, %s: %s begins %.2f mm from the cutting line", name, piece.Name, d.Name, off)
				}
				if off := offLine(d.To, piece.Net); d.Kind == "notch" && off > 0.3 || d.Kind == "leg" && off < 20 {
					t.Errorf("%s, %s: %s ends %.2f mm from the seam line", name, piece.Name, d.Name, off)
				}
			}
			if len(piece.Chalk.Points) < 4 || len(piece.Chalk.Marks) != len(piece.Marks) {
				t.Errorf("%s, %s: %d points and %d marks to chalk", name, piece.Name, len(piece.Chalk.Points), len(piece.Chalk.Marks))
			}
			for _, c := range piece.Chalk.Points {
				if c.Down < 0 || c.In < 0 {
					t.Errorf("%s, %s: point %d at %g, %g", name, piece.Name, c.Number, c.Down, c.In)
				}
			}
		}
		if want := map[string][2]int{"open-jacket": {0, 0}, "pull-on-skirt": {3, 0}, "shell-top": {0, 2}}[name]; kinds["leg"] != want[1] || kinds["notch"] < want[0] {
			t.Errorf("%s: drawn %v", name, kinds)
		}
		for _, c := range p.Cloths {
			if c.LengthMM < c.LeastMM || c.LeastMM < c.AreaMM2/c.WidthMM {
				t.Errorf("%s, %s: buy %g, at least %g for %g mm²", name, c.Role, c.LengthMM, c.LeastMM, c.AreaMM2)
			}
		}
	}
}
