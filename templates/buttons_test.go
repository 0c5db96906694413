package templates_test

import (
	"math"
	"testing"

	"bodkin/templates"
)

// Buttons and their holes as the trade places them: on the centre line, evenly, the
// last about 4 in from a hem (a web page, common practice), and the front reaches
// past the centre by three quarters of the button's width at the least (Complete
// photo guide to sewing, Creative Publishing), here for buttons of 15 mm.
func TestButtonsOnTheFront(t *testing.T) {
	for _, name := range []string{"shirt-blouse", "shirt-dress", "lined-waistcoat"} {
		m := makeIt(t, name, nil, nil)
		rows := 0
		for _, hole := range m.Details {
			if hole.Kind != "buttonhole" || len(hole.Lines) != 1 || hole.Count < 2 {
				continue
			}
			rows++
			first, last := hole.Lines[0][0], hole.Lines[0][1]
			p := piece(t, m, hole.Piece)
			if math.Abs(first.X) > 0.01 || math.Abs(last.X) > 0.01 { // drawn from the centre
				t.Errorf("%s: %s runs from x %.1f to %.1f, off the centre", name, hole.Name, first.X, last.X)
			}
			if past := -p.Outline.Bounds().Min.X; past < 0.75*15 {
				t.Errorf("%s: the %s reaches %.1f mm past the centre", name, p.Title, past)
			}
			if gap := first.Distance(last) / float64(hole.Count-1); gap < 50 || gap > 110 {
				t.Errorf("%s: %s are %.0f mm apart", name, hole.Name, gap)
			}
			var button templates.Detail
			for _, d := range m.Details {
				if d.Kind == "button" && len(d.Lines) == 1 && d.Lines[0] == hole.Lines[0] {
					button = d
				}
			}
			if button.Count != hole.Count {
				t.Errorf("%s: %d buttons to %d holes of the %s", name, button.Count, hole.Count, hole.Name)
			}
			if name == "shirt-blouse" {
				near(t, name+": last button from the hem, in", (last.Y-p.Outline.Bounds().Min.Y)/inch, 4, 0.5)
			}
		}
		if rows == 0 {
			t.Errorf("%s has no row of buttons", name)
		}
	}
}
