package process_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
)

// A child's garment carries the caution about cords, and an adult's does not
// (ASTM F1816-18 and EN 14682, as the shelf of cautions tells them).
func TestCordsOnChildrensClothes(t *testing.T) {
	shelf := loadShelf(t)
	for garment, want := range map[string]bool{"child-dress": true, "raglan-blouse": false} {
		p := plan(t, jobFor(garmentOf(t, garment), "cotton-lawn", "cotton-lawn"), rooms()[0], shelf)
		got := slices.ContainsFunc(p.Cautions, func(c process.Caution) bool { return strings.Contains(c.Text, "drawstring") })
		if got != want {
			t.Errorf("%s: a caution about drawstrings: %v, want %v", garment, got, want)
		}
	}
}

// The skirt of the dress is gathered to its bodice, whatever the cloth and the
// room: by a seam that draws it up, or in steps of its own before it, which say how
// far (closed form: twice the edge less the edge).
func TestGatheredWaist(t *testing.T) {
	shelf, g := loadShelf(t), garmentOf(t, "child-dress")
	for _, cloth := range []string{"cotton-lawn", "silk-organza", "velvet", "swimwear-knit", "wool-coating"} {
		for _, w := range []*process.Workroom{rooms()[0], rooms()[1]} {
			p := plan(t, jobFor(g, cloth, "cotton-lawn"), w, shelf)
			drawn := slices.ContainsFunc(p.Operations, func(o process.Operation) bool {
				return o.Seam == "waist" && strings.Contains(o.Text, "70 cm drawn up")
			})
			before := slices.ContainsFunc(p.Operations, func(o process.Operation) bool {
				return o.Seam == "waist-gathers" && o.Does == "gather" && strings.Contains(o.Text, "70 cm")
			})
			if drawn == before {
				t.Errorf("%s in %s: drawn up in the seam %v, in steps before it %v; want one of them", cloth, w.Name, drawn, before)
			}
			for _, s := range p.Seams {
				if s.Name == "waist" && math.Abs(s.Length-1400) > 1 {
					t.Errorf("%s: the waist seam is %.0f mm; want 2 x 70 cm", cloth, s.Length)
				}
			}
		}
	}
}
