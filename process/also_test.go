package process_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/templates"
)

const choir = `
make: shell-top
size: {bust: 92 cm, hip: 98 cm, head: 57 cm}
quantity: 3
cloth:
  main:    {is: cotton-lawn, colour: green, width: 114 cm}
  binding: {is: cotton-lawn, colour: ink, width: 140 cm}
`

// What further sizes take is what plans of their own say, and together they take
// the sum.
func TestFurtherSizes(t *testing.T) {
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	garment, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	work := func(text string) *process.Plan {
		t.Helper()
		job, err := process.ParseJob("choir.yaml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		plan, err := process.Work(context.Background(), process.Input{Job: job, Garment: garment, Workroom: process.DefaultWorkroom(), Shelf: shelf}, order.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return plan
	}
	other := func(size, quantity string) *process.Plan {
		return work(strings.NewReplacer("bust: 92 cm, hip: 98 cm", size, "quantity: 3", "quantity: "+quantity).Replace(choir))
	}
	all := work(choir + "also:\n  - {size: {bust: 100 cm, hip: 106 cm, head: 57 cm}, quantity: 2}\n  - {size: {bust: 83 cm, hip: 91 cm, head: 57 cm}}\n")
	alone := []*process.Plan{work(choir), other("bust: 100 cm, hip: 106 cm", "2"), other("bust: 83 cm, hip: 91 cm", "1")}
	if all.Together.Garments != 6 || len(all.Also) != 2 {
		t.Fatalf("%d garments in %d further sizes", all.Together.Garments, len(all.Also))
	}
	minutes := 0.0
	for _, p := range alone {
		minutes += p.Totals.SewMinutes
	}
	if math.Abs(all.Together.SewMinutes-minutes) > 1e-6 {
		t.Errorf("all sizes are sewn in %g minutes, each alone in %g", all.Together.SewMinutes, minutes)
	}
	for k, s := range all.Also {
		for i, p := range s.Pieces {
			want := alone[k+1].Pieces[i]
			if p.Count != want.Count || p.Width != want.Width || p.Height != want.Height {
				t.Errorf("size %d: %s is cut %d times, %g × %g mm, alone %d times, %g × %g", k, p.Title, p.Count, p.Width, p.Height, want.Count, want.Width, want.Height)
			}
		}
		for _, seam := range alone[k+1].Seams {
			same := slices.ContainsFunc(alone[0].Seams, func(o process.Seam) bool { return o.Name == seam.Name && o.Construction == seam.Construction })
			told := slices.ContainsFunc(s.Otherwise, func(w process.OtherSeam) bool { return w.Seam == seam.Name && w.Construction == seam.Construction })
			if same == told && seam.Kind != "staystitch" {
				t.Errorf("size %d: %s as in the first size: %v, told: %v", k, seam.Title, same, told)
			}
		}
	}
	for i, c := range all.Together.Cloths {
		area, long := 0.0, 0.0
		for _, p := range alone {
			area, long = area+p.Cloths[i].AreaMM2, long+p.Cloths[i].LengthMM
		}
		if math.Abs(area-c.AreaMM2) > 1 || long != c.LengthMM {
			t.Errorf("%s: %g mm², %g mm, alone %g and %g", c.Role, c.AreaMM2, c.LengthMM, area, long)
		}
	}
	for _, x := range all.Together.Thread {
		metres := 0.0
		for _, p := range alone {
			for _, y := range p.Thread {
				if y.Colour == x.Colour && y.Kind == x.Kind {
					metres += y.Metres
				}
			}
		}
		if math.Abs(metres-x.Metres) > 0.01 {
			t.Errorf("%s: %g m, alone %g", x.Colour, x.Metres, metres)
		}
	}
	if len(all.Together.Bias) == 0 {
		t.Error("no bias of all sizes")
	}
	for _, y := range all.Together.Bias {
		total, square := 0.0, 0.0
		for _, p := range alone {
			for _, x := range p.Bias {
				if x.Cloth == y.Cloth && x.WidthMM == y.WidthMM {
					total, square = total+x.TotalMM, max(square, x.SquareMM)
				}
			}
		}
		if math.Abs(total-y.TotalMM) > 1e-6 || y.SquareMM < square {
			t.Errorf("bias %g mm wide: %g mm from a square of %g, alone %g in all, from %g at the most", y.WidthMM, y.TotalMM, y.SquareMM, total, square)
		}
	}
	strips := 0.0
	for _, x := range all.Together.Strips {
		strips += x.AreaMM2
	}
	for _, p := range alone {
		for _, s := range p.Strips {
			strips -= s.CutWidth * s.EachLength * float64(s.Lengths*s.Count)
		}
	}
	if math.Abs(strips) > 1 {
		t.Errorf("the strips differ by %g mm²", strips)
	}
}

func TestFurtherSizesAreRead(t *testing.T) {
	for text, want := range map[string]string{
		"also:\n  - {size: {bust: 100 cm}, quantity: none}\n": `choir.yaml:9:38: quantity "none" is not a number of garments`,
		"also:\n  - {quantity: 2}\n":                          "size",
		"also:\n  - {size: {bust: 100 cm}, quantiy: 2}\n":     `did you mean "quantity"`,
	} {
		if _, err := process.ParseJob("choir.yaml", []byte(choir+text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// A further size has its own elastic: what a plan of that size by itself has.
func TestFurtherSizesHaveTheirOwnNotions(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("pull-on-skirt")
	if err != nil {
		t.Fatal(err)
	}
	work := func(text string) *process.Plan {
		t.Helper()
		j, err := process.ParseJob("skirts.yaml", []byte("make: pull-on-skirt\ncloth: {main: {is: linen-medium, colour: flax}}\n"+text))
		if err != nil {
			t.Fatal(err)
		}
		p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: process.DefaultWorkroom(), Shelf: shelf}, order.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	all := work("size: {waist: 70 cm, hip: 96 cm}\nalso: [{size: {waist: 84 cm, hip: 108 cm}, quantity: 2}]\n")
	alone := work("size: {waist: 84 cm, hip: 108 cm}\nquantity: 2\n")
	if x := all.Together.Notions[0]; x.Count != 3 || math.Abs(x.LengthMM-all.Notions[0].Length-2*alone.Notions[0].Length) > 1e-6 {
		t.Errorf("elastic of all sizes: %+v", x)
	}
	if got := all.Also[0].Notions; !slices.Equal(got, alone.Notions) || len(got) == 0 || got[0].Length <= all.Notions[0].Length {
		t.Errorf("the further size has %+v, alone it has %+v, the first %+v", got, alone.Notions, all.Notions)
	}
}
