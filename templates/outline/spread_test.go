package outline

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A dart folded by hand: its fold lies on the seam produced, so that the folded
// point, mirrored in the leg towards which it is pressed, is on the seam's line.
func TestMouth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		deep := rapid.Float64Range(60, 200).Draw(t, "deep")
		half := rapid.Float64Range(3, 15).Draw(t, "half")
		tilt := rapid.Float64Range(-35, 35).Draw(t, "tilt")
		point, beside, far := Point{0, 0}, Point{-half, deep}, Point{half, deep}
		seam := Point{-1, 0}.Rotate(Point{}, tilt)
		fold, ok := Mouth(point, beside, far, seam)
		if !ok {
			t.Fatalf("no mouth %g wide, %g deep, tilted %g", 2*half, deep, tilt)
		}
		back := fold.Reflect(point, beside)
		near(t, "on the seam", seam.Cross(back.Sub(beside)), 0, 1e-9)
		near(t, "on the fold", fold.X, 0, 1e-9)
		if back.Sub(beside).Dot(seam) <= 0 {
			t.Error("it is folded off the seam's end")
		}
		pleat, ok := PleatMouth(beside, far, Point{0, 1}, seam)
		if !ok {
			t.Fatal("no mouth for the pleat")
		}
		back = pleat.Reflect(beside, beside.Add(Point{0, 1}))
		near(t, "pleat on the seam", seam.Cross(back.Sub(beside)), 0, 1e-9)
		near(t, "pleat on its fold", pleat.X, 0, 1e-9)
	})
	if fold, ok := Mouth(Point{}, Point{-90, 100}, Point{90, 100}, Point{-1, 0.2}); ok {
		t.Errorf("a dart nearly as wide as it is long was folded at %v", fold)
	}
}

// A rectangle slashed across: a pleat adds its width times the height, a wedge
// half of it to first order and by Pythagoras exactly.
func TestSpread(t *testing.T) {
	o := polygon(t, Point{0, 0}, Point{400, 0}, Point{400, 600}, Point{0, 600})
	cut := func(open, shut float64) Slash {
		return Slash{Spot{"a", 150}, Spot{"c", 250}, open, shut}
	}
	pleat, err := o.Spread(cut(60, 60))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "area with a pleat", pleat.Area(), o.Area()+60*600, 1e-6)
	for name, want := range map[string]float64{"a": 460, "b": 600, "c": 460, "d": 600} {
		e, _ := pleat.Edge(name)
		near(t, name, e.Length(), want, 1e-9)
	}
	wedge, err := o.Spread(cut(60, 0))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "hem with a wedge", wedge.Edges[0].Length(), 460, 1e-9)
	near(t, "waist with a wedge", wedge.Edges[2].Length(), 400, 1e-9)
	near(t, "area with a wedge", wedge.Area(), o.Area()+30*math.Sqrt(600*600-30*30), 1e-6)
	_, turn := wedge.Edges[2].Turning()
	near(t, "the waist turns by the wedge", math.Abs(turn), degrees(2*math.Asin(0.05)), 1e-9)
}

// Whatever is slashed keeps its edges' names and order, its other edges' lengths,
// and gains at the two slashed edges what was opened; opened by nothing it is the
// same piece.
func TestSpreadLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := bodice(t)
		open, shut := rapid.Float64Range(0, 60).Draw(t, "open"), rapid.Float64Range(0, 60).Draw(t, "shut")
		hem, _ := o.Edge("hem")
		shoulder, _ := o.Edge("shoulder")
		s := Slash{
			Spot{"hem", rapid.Float64Range(0.1, 0.6).Draw(t, "from") * hem.Length()},
			Spot{"shoulder", rapid.Float64Range(0.2, 0.9).Draw(t, "to") * shoulder.Length()}, open, shut,
		}
		got, err := o.Spread(s)
		if err != nil {
			t.Fatal(err)
		}
		added := map[string]float64{"hem": open, "shoulder": shut}
		for i, e := range got.Edges {
			if e.Name != o.Edges[i].Name {
				t.Fatalf("edge %d is %q", i, e.Name)
			}
			near(t, e.Name, e.Length(), o.Edges[i].Length()+added[e.Name], 1e-5)
		}
		whole, err := o.Spread(Slash{s.From, s.To, 0, 0})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "opened by nothing", whole.Area(), o.Area(), 1e-6)
	})
}

func TestSpreadRefuses(t *testing.T) {
	o := bodice(t)
	for what, s := range map[string]Slash{
		"no such edge":      {Spot{"hem", 50}, Spot{"yoke", 50}, 9, 9},
		"one edge":          {Spot{"hem", 50}, Spot{"hem", 90}, 9, 9},
		"no such place":     {Spot{"hem", 5000}, Spot{"shoulder", 50}, 9, 9},
		"less than nothing": {Spot{"hem", 50}, Spot{"shoulder", 50}, -1, 9},
		"not a number":      {Spot{"hem", 50}, Spot{"shoulder", 50}, math.NaN(), 9},
		"not inside":        {Spot{"side", 350}, Spot{"shoulder", 5}, 9, 9},
		"too unequally":     {Spot{"hem", 50}, Spot{"shoulder", 50}, 900, 0},
	} {
		if got, err := o.Spread(s); err == nil {
			t.Errorf("%s: %v", what, got.Bounds())
		}
	}
}

// Every mark of the bodice comes where a ruler would bring it.
func TestCarry(t *testing.T) {
	o := bodice(t)
	widths := []Allowance{{Width: 0}, {Width: 15}, {Width: 6}, {Width: 15}, {Width: 6}, {Manner: Folded}}
	cut, err := o.Cut(widths)
	if err != nil {
		t.Fatal(err)
	}
	got, err := o.Carry(cut, widths, Marks{
		Notches: []Notch{{"front", Spot{"armhole", 70}}, {"hip", Spot{"side", 100}}, {"hem", Spot{"hem", 100}}},
		Drills:  []Drill{{"pocket", Point{100, 200}}},
		Grain:   Point{0, 1},
	})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{6, 15, 0} {
		near(t, got.Notches[i].Name, got.Notches[i].From.Distance(got.Notches[i].To), want, 0.06)
	}
	if len(got.Folds) != 1 || got.Folds[0].Name != "centre" {
		t.Fatalf("folds %v", got.Folds)
	}
	near(t, "the fold reaches out to the cut neck", got.Folds[0].From.Distance(got.Folds[0].To), 526, 0.1)
	near(t, "grain is upright", got.Grain.From.X, got.Grain.To.X, 1e-9)
	// 80 of the highest 600 or so
	if l := got.Grain.From.Distance(got.Grain.To); l < 0.8*560 || l > 0.8*600 {
		t.Errorf("grain line %g mm long", l)
	}

	// a dart of the side seam, 20 wide and 100 deep, square to a straight side
	d, err := New(
		Edge{"hem", []Segment{Line(Point{0, 0}, Point{200, 0})}},
		Edge{"low", []Segment{Line(Point{200, 0}, Point{200, 190})}},
		Edge{"mouth", []Segment{Line(Point{200, 190}, Point{202, 200}), Line(Point{202, 200}, Point{200, 210})}},
		Edge{"high", []Segment{Line(Point{200, 210}, Point{200, 400})}},
		Edge{"top", []Segment{Line(Point{200, 400}, Point{0, 400})}},
		Edge{"centre", []Segment{Line(Point{0, 400}, Point{0, 0})}},
	)
	if err != nil {
		t.Fatal(err)
	}
	widths = []Allowance{{Width: 30, Manner: Turned}, {Width: 15}, {Width: 15}, {Width: 15}, {Width: 10}, {Manner: Folded}}
	if cut, err = d.Cut(widths); err != nil {
		t.Fatal(err)
	}
	dart := DartMark{"bust", [2]Point{{200, 190}, {200, 210}}, Point{100, 200}}
	if got, err = d.Carry(cut, widths, Marks{Darts: []DartMark{dart}}); err != nil {
		t.Fatal(err)
	}
	for i, leg := range got.Legs {
		near(t, "leg runs on", leg.From.Sub(dart.Point).Unit().Cross(dart.Ends[i].Sub(dart.Point).Unit()), 0, 1e-9)
		if off := clearanceOf(cut.Points(), leg.From); off > 1e-6 || leg.From.X < 210 {
			t.Errorf("leg ends at %v, %g from the cut line", leg.From, off)
		}
	}
	if len(got.Folds) != 2 || got.Folds[0].Name != "hem" {
		t.Fatalf("folds %v", got.Folds)
	}
	near(t, "the hem turns right across", got.Folds[0].To.X, 215, 1e-6)
	near(t, "from the fold", got.Folds[0].From.X, 0, 1e-6)

	for what, m := range map[string]Marks{
		"no edge": {Notches: []Notch{{"n", Spot{"sleeve", 1}}}}, "beyond": {Notches: []Notch{{"n", Spot{"hem", 999}}}},
		"dart": {Darts: []DartMark{{"bust", dart.Ends, Point{-9, 0}}}}, "drill": {Drills: []Drill{{"d", Point{900, 0}}}},
	} {
		if _, err := d.Carry(cut, widths, m); err == nil {
			t.Errorf("%s: accepted", what)
		}
	}
}
