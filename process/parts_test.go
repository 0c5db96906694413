package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

// The bands of a jacket of poplin are steadied as bands: a light woven fusible
// for collar, stand, cuff and band of poplin, from memory.
func TestBandsAreSteadiedAsBands(t *testing.T) {
	g, err := templates.Load("open-jacket")
	if err != nil {
		t.Fatal(err)
	}
	p, err := process.Work(t.Context(), process.Input{Job: jobFor(g, "cotton-poplin", "cotton-poplin"), Garment: g, Workroom: rooms()[0], Shelf: loadShelf(t)}, order.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Interfacing) == 0 {
		t.Fatal("nothing is steadied")
	}
	for _, f := range p.Interfacing {
		asBand := slices.ContainsFunc(f.Because, func(why string) bool { return strings.Contains(why, "cuff or band") })
		if f.Material != "light-woven-fusible" || !asBand {
			t.Errorf("%s gets %s because %v", f.Title, f.Material, f.Because)
		}
	}
}
