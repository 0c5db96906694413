package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/templates"
)

// A zip's allowances are neatened once: by the seam that it lies in where that
// neatens its edges, by the zip's own pass where the seam leaves them raw.
func TestZipAllowancesNeatenedOnce(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range []string{"a-line-skirt", "circle-skirt", "waisted-dress", "darted-trousers"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, cloth := range []string{"cotton-poplin", "wool-flannel"} {
			for _, w := range rooms() {
				for _, raw := range []bool{false, true} {
					j := jobFor(g, cloth, "cotton-lawn")
					if raw && (len(w.Machines) == 0 || w.Iron.Value == "none") {
						continue // that seam is stitched and pressed open
					}
					if raw {
						seam := "centre-back"
						if name == "darted-trousers" {
							seam = "front-crotch"
						}
						j.Seams = form.Pairs[form.Text]{{Key: text(seam), Value: text("plain-open-raw anyway")}}
					}
					p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf}, order.Options{Nodes: 1_000})
					if err != nil {
						t.Fatal(err)
					}
					at := slices.IndexFunc(p.Seams, func(s process.Seam) bool { return s.Kind == "zip" })
					own := 0
					for _, o := range p.Operations {
						if o.Seam == p.Seams[at].Name && strings.Contains(o.Text, "both allowances, single") {
							own++
						}
					}
					if want := map[bool]int{true: 1}[raw]; own != want {
						t.Errorf("%s of %s in %s, seam raw %v: the zip neatens the allowances %d times, want %d", name, cloth, w.Name, raw, own, want)
					}
				}
			}
		}
	}
}
