package process_test

import (
	"strings"
	"testing"
)

// A pleated front that is wider than its cloth is joined from panels in the inner
// folds of its pleats, before anything else is done to it: no panel is wider than
// the cloth, and all seams lie halfway between a pleat's line and its fold. The
// lengths of cloth are those of a lay that has the panels.
func TestTooWideForTheCloth(t *testing.T) {
	shelf := loadShelf(t)
	g := garmentOf(t, "pleated-skirt")
	for _, w := range rooms() {
		j := jobFor(g, "cotton-poplin", "cotton-poplin")
		j.Size = append(j.Size, pair("hip", "124 cm"), pair("waist", "100 cm"))
		p := plan(t, j, w, shelf)
		checkOrder(t, p)
		joined, sewn := -1, -1
		for k, o := range p.Operations {
			switch {
			case strings.HasPrefix(o.ID, "panels.front"):
				joined = k
			case (o.Seam == "front-pleat" || o.Seam == "hem" || o.Seam == "side") && sewn < 0:
				sewn = k
			}
			if o.ID == "cut.main" && (!strings.Contains(o.Text, "from panels") || !strings.Contains(o.Text, "in the inner fold of a pleat, because there the seams do not show")) {
				t.Errorf("%s: nothing of panels in %q", w.Name, o.Text)
			}
		}
		if joined < 0 || sewn < joined {
			t.Errorf("%s: panels are joined at %d, the front is sewn at %d", w.Name, joined, sewn)
		}
		if strings.Contains(p.Cloths[0].Basis, "turn it") {
			t.Errorf("%s: %s", w.Name, p.Cloths[0].Basis)
		}
	}
	j := jobFor(g, "cotton-poplin", "cotton-poplin")
	for _, o := range plan(t, j, rooms()[0], shelf).Operations {
		if strings.HasPrefix(o.ID, "panels.") {
			t.Error("a front that the cloth takes is joined from panels")
		}
	}
}
