package outline

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

// near fails unless got is within tolerance of want.
func near(t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.9g, want %.9g within %g", what, got, want, tolerance)
	}
}

func points(n int) *rapid.Generator[[]Point] {
	coordinate := rapid.Map(rapid.IntRange(-8000, 8000), func(n int) float64 { return float64(n) / 16 })
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Point {
		return Point{coordinate.Draw(t, "x"), coordinate.Draw(t, "y")}
	}), n, n)
}

func curve() *rapid.Generator[Segment] {
	return rapid.Custom(func(t *rapid.T) Segment {
		p := points(4).Draw(t, "points")
		if rapid.Bool().Draw(t, "cubic") {
			return Cubic(p[0], p[1], p[2], p[3])
		}
		return Quadratic(p[0], p[1], p[2])
	})
}

func TestLengthClosedForms(t *testing.T) {
	parabola := func(a, b float64) float64 { // y = a x² from 0 to b
		u := 2 * a * b
		return (u*math.Sqrt(1+u*u) + math.Asinh(u)) / (4 * a)
	}
	for _, c := range []struct {
		source    string
		segments  []Segment
		want      float64
		tolerance float64
	}{
		{"Pythagoras", []Segment{Line(Point{1, 2}, Point{4, 6})}, 5, 1e-12},
		{"a cubic that is a line", []Segment{Cubic(Point{0, 0}, Point{10, 0}, Point{20, 0}, Point{30, 0})}, 30, 1e-9},
		{"arc of y = x²/100 to x = 100, closed form by asinh", []Segment{Quadratic(Point{0, 0}, Point{50, 0}, Point{100, 100})}, parabola(0.01, 100), 1e-7},
		{"the same parabola as a cubic", []Segment{Cubic(Point{0, 0}, Point{100. / 3, 0}, Point{200. / 3, 100. / 3}, Point{100, 100})}, parabola(0.01, 100), 1e-7},
		{"semicubical parabola y² = x³ to x = 1: (13√13-8)/27 (Neile 1657)", []Segment{Cubic(Point{0, 0}, Point{0, 0}, Point{1. / 3, 0}, Point{1, 1})}, (13*math.Sqrt(13) - 8) / 27, 1e-8},
		{"the same on both sides of its cusp", []Segment{Cubic(Point{1, -1}, Point{-1. / 3, 1}, Point{-1. / 3, -1}, Point{1, 1})}, 2 * (13*math.Sqrt(13) - 8) / 27, 1e-8},
		{"quarter circle πr/2", []Segment{Arc(Point{3, 4}, 100, 0, 90)}, 50 * math.Pi, 1e-12},
		{"circle 2πr", []Segment{Arc(Point{}, 250, 30, 360)}, 500 * math.Pi, 1e-12},
	} {
		near(t, c.source, Edge{"e", c.segments}.Length(), c.want, c.tolerance)
	}
}

// The outside reference is gonum's fixed Gauss–Legendre rule with 20000 points,
// used on the derivative written out here by hand.
func TestLengthAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := points(4).Draw(t, "points")
		speed := func(u float64) float64 {
			w := 1 - u
			dx := 3 * (w*w*(p[1].X-p[0].X) + 2*w*u*(p[2].X-p[1].X) + u*u*(p[3].X-p[2].X))
			dy := 3 * (w*w*(p[1].Y-p[0].Y) + 2*w*u*(p[2].Y-p[1].Y) + u*u*(p[3].Y-p[2].Y))
			return math.Hypot(dx, dy)
		}
		s := Cubic(p[0], p[1], p[2], p[3])
		var want float64
		for i := range 50 {
			want += quad.Fixed(speed, float64(i)/50, float64(i+1)/50, 40, nil, 0)
		}
		near(t, "length", s.Length(), want, 1e-3)
		if l := s.Length(); l < s.From().Distance(s.To())-1e-6 || l > s.reach()+1e-6 {
			t.Errorf("length %g is not between chord and control polygon", l)
		}
	})
}

func TestWalkingAndSplitting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := curve().Draw(t, "a"), curve().Draw(t, "b")
		if a.reach() < 1 || b.reach() < 1 {
			t.Skip("no curve")
		}
		b = b.Map(func(p Point) Point { return p.Add(a.To()).Sub(b.From()) })
		e := Edge{"e", []Segment{a, b}}
		whole := e.Length()
		d := rapid.Float64Range(0.001, 0.999).Draw(t, "share") * whole
		before, after, ok := e.SplitAt(d)
		if !ok {
			t.Fatalf("no split at %g of %g", d, whole)
		}
		near(t, "length before", before.Length(), d, 1e-6)
		near(t, "length after", after.Length(), whole-d, 1e-6)
		place, _ := e.At(d)
		near(t, "place", place.Distance(before.To()), 0, 1e-6)
		back, _ := e.Reverse().At(whole - d)
		near(t, "walked from the other end", place.Distance(back), 0, 1e-5)
		near(t, "reversed length", e.Reverse().Length(), whole, 1e-6)
	})
}

// A place set off square from the edge is nearest to where it was set off.
func TestNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, e := range bodice(t).Edges {
			d := rapid.Float64Range(0, 1).Draw(t, "share") * e.Length()
			off := rapid.Float64Range(0, 5).Draw(t, "off")
			p, along := e.At(d)
			at, away := e.Nearest(p.Add(along.right().Scale(off)))
			near(t, e.Name+": away", away, off, 0.03)
			near(t, e.Name+": along", at, d, 0.6)
		}
	})
}

func TestSplitOutsideTheEdge(t *testing.T) {
	e := Edge{"e", []Segment{Line(Point{}, Point{10, 0})}}
	for _, d := range []float64{-1, 0, 10, 11, math.NaN()} {
		if _, _, ok := e.SplitAt(d); ok {
			t.Errorf("split at %g of 10 was accepted", d)
		}
	}
	for _, c := range []struct{ d, x float64 }{{-5, 0}, {0, 0}, {2.5, 2.5}, {10, 10}, {99, 10}} {
		place, tangent := e.At(c.d)
		near(t, "place", place.X, c.x, 1e-12)
		near(t, "tangent", tangent.X, 1, 1e-12)
	}
}

func BenchmarkLength(b *testing.B) {
	s := Cubic(Point{0, 0}, Point{30, 0}, Point{70, 40}, Point{70, 110})
	b.ReportAllocs()
	for b.Loop() {
		s.Length()
	}
}
