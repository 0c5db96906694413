package outline

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

func arc() *rapid.Generator[Segment] {
	return rapid.Custom(func(t *rapid.T) Segment {
		sweep := rapid.Float64Range(1, 359).Draw(t, "sweep")
		if rapid.Bool().Draw(t, "right") {
			sweep = -sweep
		}
		return Arc(Point{rapid.Float64Range(-300, 300).Draw(t, "x"), 40}, rapid.Float64Range(5, 900).Draw(t, "radius"),
			rapid.Float64Range(-360, 360).Draw(t, "start"), sweep)
	})
}

// An arc and the cubics that stand for it agree in all that can be measured, to
// within what the cubics are off. Their lengths are also compared with gonum's
// quadrature of the arc's own speed.
func TestArcAgainstItsCubics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := arc().Draw(t, "arc")
		centre, r, sweep, ok := s.Circle()
		if !ok {
			t.Fatal("an arc is part of no circle")
		}
		one, many := Edge{"e", []Segment{s}}, Edge{"e", s.Beziers()}
		off := 1e-6 * r
		near(t, "length", one.Length(), r*math.Abs(sweep)*math.Pi/180, 1e-9*r)
		near(t, "length of the cubics", many.Length(), one.Length(), 7*off)
		near(t, "gonum", quad.Fixed(func(u float64) float64 { return s.velocity(u).Norm() }, 0, 1, 20, nil, 0), one.Length(), 1e-9*r)
		a, b := one.Turning()
		c, d := many.Turning()
		near(t, "turning", a, c, 1e-6)
		near(t, "signed turning", b, d, 1e-6)
		near(t, "radius", one.LeastRadius(), many.LeastRadius(), 1e-3*r)
		share := rapid.Float64Range(0, 1).Draw(t, "share") * one.Length()
		p, u := one.At(share)
		q, v := many.At(share)
		near(t, "place", p.Distance(q), 0, 8*off)
		near(t, "tangent", u.Distance(v), 0, 1e-4)
		near(t, "on the circle", p.Distance(centre), r, 1e-9*r)
		box, other := s.Bounds(), s.Beziers()[0].Bounds()
		for _, part := range s.Beziers() {
			other = other.with(part.Bounds().Min).with(part.Bounds().Max)
		}
		near(t, "left", box.Min.X, other.Min.X, 2*off)
		near(t, "top", box.Max.Y, other.Max.Y, 2*off)
		near(t, "right", box.Max.X, other.Max.X, 2*off)
		near(t, "bottom", box.Min.Y, other.Min.Y, 2*off)
		if before, after, ok := one.SplitAt(share); ok {
			near(t, "before", before.Length(), share, 1e-9*r)
			near(t, "after", after.Reverse().Length(), one.Length()-share, 1e-9*r)
		}
		for _, tolerance := range []float64{0.01, 1, 50} {
			line := one.Flatten(tolerance)
			for i := range len(line) - 1 {
				near(t, "corner of the polygon", line[i].Distance(centre), r, 1e-9*r)
				if sagitta := r - line[i].Toward(line[i+1], 0.5).Distance(centre); sagitta > tolerance+1e-9 {
					t.Errorf("%g mm off, tolerance %g", sagitta, tolerance)
				}
			}
		}
		m := s.Map(func(p Point) Point { return p.Reflect(Point{1, 2}, Point{50, 9}) })
		if _, back := (Edge{"e", []Segment{m}}).Turning(); math.Abs(back+b) > 1e-9 {
			t.Errorf("mirrored it turns %g, before %g", back, b)
		}
		near(t, "mirrored end", m.To().Distance(s.To().Reflect(Point{1, 2}, Point{50, 9})), 0, 1e-9)
		near(t, "mirrored middle", m.At(0.5).Distance(s.At(0.5).Reflect(Point{1, 2}, Point{50, 9})), 0, 1e-9*r)
	})
}

// Sagitta of a circular segment s = r - √(r² - l²), its area
// r²/2 (φ - sin φ): closed forms of plane trigonometry.
func TestBow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := Point{3, 4}, Point{3, 4}.Add(Point{rapid.Float64Range(10, 600).Draw(t, "chord"), 0}.Rotate(Point{}, rapid.Float64Range(0, 360).Draw(t, "turn")))
		rise := rapid.Float64Range(0.01, 1.5).Draw(t, "rise") * a.Distance(b)
		for _, h := range []float64{rise, -rise} {
			s := Bow(a, b, h)
			near(t, "from", s.From().Distance(a), 0, 0)
			near(t, "to", s.To().Distance(b), 0, 0)
			middle := a.Toward(b, 0.5).Add(b.Sub(a).Unit().right().Scale(h))
			near(t, "middle", s.At(0.5).Distance(middle), 0, 1e-9*a.Distance(b))
		}
		_, r, sweep, _ := Bow(a, b, rise).Circle()
		o, err := New(Edge{"bow", []Segment{Bow(a, b, rise)}}, Edge{"chord", []Segment{Line(b, a)}})
		if err != nil {
			t.Fatal(err)
		}
		phi := sweep * math.Pi / 180
		near(t, "area of a circular segment", o.Area(), r*r/2*(phi-math.Sin(phi)), 1e-9*r*r)
	})
	if s := Bow(Point{}, Point{10, 0}, 0); s != Line(Point{}, Point{10, 0}) {
		t.Errorf("a bow without rise is %v", s)
	}
}

// Ring sectors: area (R² - r²) φ/2, and the box of half and quarter rings.
func TestSector(t *testing.T) {
	names := [4]string{"waist", "side", "hem", "centre"}
	for _, sweep := range []float64{30, 90, 180, 270, 359} {
		o, err := Sector(100, 700, sweep, names)
		if err != nil {
			t.Fatal(err)
		}
		phi := sweep * math.Pi / 180
		near(t, "area", o.Area(), (700*700-100*100)*phi/2, 1e-6)
		for name, want := range map[string]float64{"waist": 100 * phi, "side": 600, "hem": 700 * phi, "centre": 600} {
			e, _ := o.Edge(name)
			near(t, name, e.Length(), want, 1e-9)
		}
	}
	half, err := Sector(100, 700, 180, names)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "width of a half ring", half.Bounds().Width(), 700, 1e-9)
	near(t, "height of a half ring", half.Bounds().Height(), 1400, 1e-9)
	for _, bad := range [][3]float64{{0, 1, 90}, {5, 5, 90}, {5, 9, 0}, {5, 9, 360}, {math.NaN(), 9, 90}} {
		if _, err := Sector(bad[0], bad[1], bad[2], names); err == nil {
			t.Errorf("%v was accepted", bad)
		}
	}
}

// On the bias a square stands on its corner and takes √2 times its side.
func TestBoundsOnTheGrain(t *testing.T) {
	o := polygon(t, Point{0, 0}, Point{200, 0}, Point{200, 200}, Point{0, 200})
	for _, grain := range []Point{{1, 1}, {-3, 3}, {1, -1}} {
		near(t, "width", o.BoundsOn(grain).Width(), 200*math.Sqrt2, 1e-9)
		near(t, "height", o.BoundsOn(grain).Height(), 200*math.Sqrt2, 1e-9)
	}
	long := polygon(t, Point{0, 0}, Point{100, 0}, Point{100, 300}, Point{0, 300})
	near(t, "grain along x: height", long.BoundsOn(Point{1, 0}).Height(), 100, 1e-9)
	near(t, "no grain", long.BoundsOn(Point{}).Height(), 300, 1e-9)
	// a square cut on the fold gains its allowances on the grain too
	cut, err := long.Cut(all(long, 10))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cut line on the bias", cut.BoundsOn(Point{1, 1}).Width(), (120+320)/math.Sqrt2, 1e-9)
	rapid.Check(t, func(t *rapid.T) {
		turn := rapid.Float64Range(0, 360).Draw(t, "turn")
		grain := Point{0, 1}.Rotate(Point{}, turn)
		b := bodice(t)
		laid := b.LaidOn(grain)
		near(t, "area", laid.Area(), b.Area(), 1e-6)
		box, want := b.BoundsOn(grain), math.Inf(-1)
		for _, p := range b.Flatten(0.01) {
			want = max(want, p.Dot(grain))
		}
		near(t, "highest point", box.Max.Y, want, 0.02)
	})
}

// Gathering to 2/3 of the width is cutting 1 1/2 times as wide: area goes by the
// factor, lengths across stay. An affine map, Archimedes, On Conoids and
// Spheroids: the ellipse π a b.
func TestStretch(t *testing.T) {
	wide, err := round(100).Stretch(Point{1, 0}, 1.5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "area of an ellipse", wide.Area(), math.Pi*150*100, 0.1)
	near(t, "width", wide.Bounds().Width(), 300, 1e-3)
	near(t, "height", wide.Bounds().Height(), 200, 1e-3)
	for _, k := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := round(100).Stretch(Point{1, 0}, k); err == nil {
			t.Errorf("widened by %g", k)
		}
	}
	if _, err := round(100).Stretch(Point{}, 2); err == nil {
		t.Error("widened along nothing")
	}
}
