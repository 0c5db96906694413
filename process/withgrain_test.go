package process_test

import (
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
)

// Seams are stitched with the grain, from wide to narrow, from the hem to the waist,
// those of legs all from the bottom to the top, and alike ones the same way (Apparel:
// Design, Textiles & Construction, Goodheart-Willcox, 2012). Each seam is told once;
// what runs across, on the thread or on the bias is not.
func TestStitchedWithTheGrain(t *testing.T) {
	shelf := loadShelf(t)
	const up, down, neither = "Sew both from the lower end up, with the grain.", "Sew both from the upper end down, with the grain.", ""
	for garment, seams := range map[string]map[string]string{
		"a-line-skirt":     {"side": up, "centre-back": neither}, // the centre back lies on the thread
		"six-gore-skirt":   {"front-gore": up, "side": up, "back-gore": up},
		"pull-on-trousers": {"inseam": up, "side": up, "crotch": neither},
		"darted-trousers":  {"inseam": up, "front-crotch": neither},
		"waisted-dress":    {"side": down, "skirt-side": up, "shoulder": neither, "waist": neither},
		"shell-top":        {"side": up, "shoulder": neither},
		"bias-slip":        {"side": neither},
	} {
		g := garmentOf(t, garment)
		p, err := process.Work(t.Context(), process.Input{Job: jobFor(g, "cotton-poplin", "cotton-lawn"), Garment: g, Workroom: rooms()[0], Shelf: shelf}, order.Options{Nodes: 1})
		if err != nil {
			t.Fatalf("%s: %v", garment, err)
		}
		for seam, want := range seams {
			told := 0
			for _, o := range p.Operations {
				if o.Seam != seam || !strings.Contains(o.Text, "with the grain") {
					continue
				}
				told++
				if want == neither || !strings.Contains(o.Text, want) {
					t.Errorf("%s, %s: %s", garment, seam, o.Text)
				}
			}
			if (told == 1) != (want != neither) {
				t.Errorf("%s, %s: the way is told %d times", garment, seam, told)
			}
			if seamOf(t, p, seam).Name != seam {
				t.Errorf("%s has no %s", garment, seam)
			}
		}
	}
}
