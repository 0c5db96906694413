package process_test

import (
	"math"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/seams/length"
	"bodkin/templates"
)

// The long open coat as the trade makes it. All figures: common practice, no
// source.
func TestFactsOfTheCoat(t *testing.T) {
	const in = 25.4
	g, err := templates.Load("open-jacket")
	if err != nil {
		t.Fatal(err)
	}
	j := jobFor(g, "linen-medium", "linen-medium")
	for i := range j.Cloth {
		j.Cloth[i].Value.Width = 45 * in
	}
	j.Choices = append(j.Choices, pair("length", "61 in"), pair("hem_depth", "4 in"))
	w := rooms()[0]
	w.House = append(w.House, form.Pair[length.MM]{Key: text("band_seam"), Value: in / 2})
	p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: w, Shelf: loadShelf(t)}, order.Options{})
	if err != nil {
		t.Fatal(err)
	}
	near := func(what string, got, want, within float64) {
		if math.Abs(got-want) > within {
			t.Errorf("%s: %.2f in, want %.2f", what, got/in, want/in)
		}
	}
	strips := map[string]process.Strip{}
	for _, s := range p.Strips {
		strips[s.Seam] = s
	}
	sleeve, front := strips["sleeve"], strips["front"]
	near("sleeve opening of 10 in flat, round", sleeve.Finished, 20*in, 1)
	near("a band strip 5 in wide", sleeve.CutWidth, 5*in, 2.5)
	if sleeve.CutLength < 21*in {
		t.Errorf("a sleeve found at 21 in cannot be banded: the strip is %.1f in", sleeve.CutLength/in)
	}
	if sleeve.CutLength > 45*in/2 {
		t.Errorf("half of a 45 in strip is not enough: %.1f in", sleeve.CutLength/in)
	}
	near("front and neck band of the long coat", front.Finished, 133*in, 2*in)
	if front.Lengths != 3 || front.Joins != 2 {
		t.Errorf("from 45 in cloth the band takes %d lengths, want 3", front.Lengths)
	}
	for _, f := range p.Interfacing {
		if f.Part != "half" {
			t.Errorf("%s: %s of the strip is interfaced, want half", f.Title, f.Part)
		}
		near(f.Title+": interfaced half", f.Cut[0], sleeve.CutWidth/2, 0.01)
	}
	for _, s := range p.Seams {
		if s.Name == "hem" {
			near("hem of the coat", s.Finished, 4*in, 0.01)
		}
	}
}
