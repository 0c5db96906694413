package outline

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestBends(t *testing.T) {
	straight := math.Inf(1)
	for _, c := range []struct {
		what                     string
		segments                 []Segment
		radius, absolute, signed float64 // NaN: no closed form at hand, or undefined
		tolerance                float64
	}{
		{"line", []Segment{Line(Point{}, Point{9, 9})}, straight, 0, 0, 0},
		{"straight cubic", []Segment{Cubic(Point{}, Point{1, 1}, Point{3, 3}, Point{9, 9})}, straight, 0, 0, 0},
		{"straight cubic with its control points on its ends", []Segment{Cubic(Point{}, Point{}, Point{9, 9}, Point{9, 9})}, straight, 0, 0, 0},
		{"quarter circle, left", []Segment{Arc(Point{}, 80, 0, 90)}, 80, 90, 90, 1e-9},
		{"quarter circle, right", []Segment{Arc(Point{}, 80, 90, -90)}, 80, 90, -90, 1e-9},
		{"circle", []Segment{Arc(Point{5, 5}, 80, 10, 360)}, 80, 360, 360, 1e-9},
		{"parabola y = x²/100 through its vertex: radius 1/(2a), turn 2 atan 2", []Segment{Quadratic(Point{-100, 100}, Point{0, -100}, Point{100, 100})}, 50, 2 * degrees(math.Atan(2)), 2 * degrees(math.Atan(2)), 1e-9},
		{"S of two like parabolas", []Segment{Quadratic(Point{0, 0}, Point{50, 0}, Point{100, 100}), Quadratic(Point{100, 100}, Point{150, 200}, Point{200, 200})}, 50, 2 * degrees(math.Atan(2)), 0, 1e-9},
		{"S in one cubic y = x³ from -1 to 1: turn up and back", []Segment{Cubic(Point{-1, -1}, Point{-1. / 3, 1}, Point{1. / 3, -1}, Point{1, 1})}, math.Pow(1.2, 1.5) * math.Pow(45, 0.25) / 6, 2 * degrees(math.Atan(3)), 0, 1e-9},
		{"corner", []Segment{Line(Point{}, Point{9, 0}), Line(Point{9, 0}, Point{9, 9})}, 0, 90, 90, 1e-9},
		{"loop of a cubic, more than half a turn", []Segment{Cubic(Point{0, 0}, Point{300, 100}, Point{-200, 100}, Point{100, 0})}, math.NaN(), 360 - 2*degrees(math.Atan(1./3)), 360 - 2*degrees(math.Atan(1./3)), 1e-9},
		{"cusp of y² = x³ scaled by 3, atan 3/2 on either side and half a turn", []Segment{Cubic(Point{3, -3}, Point{-1, 3}, Point{-1, -3}, Point{3, 3})}, 0, 180 + 2*degrees(math.Atan(1.5)), math.NaN(), 1e-6},
	} {
		e := Edge{"e", c.segments}
		if r := e.LeastRadius(); c.radius == straight && r != straight {
			t.Errorf("%s: radius %g, want straight", c.what, r)
		} else if r != straight && !math.IsNaN(c.radius) {
			near(t, c.what+": radius", r, c.radius, max(c.tolerance, 1e-9))
		}
		absolute, signed := e.Turning()
		near(t, c.what+": turning", absolute, c.absolute, c.tolerance)
		if !math.IsNaN(c.signed) {
			near(t, c.what+": signed turning", signed, c.signed, c.tolerance)
		}
	}
}

// Against many samples of the textbook formula |v|³/|v×a|, with v and a written
// out by hand, and of the direction, which cannot lose its way in small steps.
func TestBendsAgainstSampling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := points(4).Draw(t, "points")
		s := Cubic(p[0], p[1], p[2], p[3])
		d1, d2, d3 := p[1].Sub(p[0]), p[2].Sub(p[1]), p[3].Sub(p[2])
		const n = 3000
		var absolute, signed float64
		sampled := math.Inf(1)
		var old Point
		for i := range n + 1 {
			u := float64(i) / n
			v := d1.Scale(3 * (1 - u) * (1 - u)).Add(d2.Scale(6 * u * (1 - u))).Add(d3.Scale(3 * u * u))
			a := d2.Sub(d1).Scale(6 * (1 - u)).Add(d3.Sub(d2).Scale(6 * u))
			sampled = min(sampled, math.Pow(v.Norm(), 3)/math.Abs(v.Cross(a)))
			if v.Norm() < 1e-12 {
				continue // no direction at this very place
			}
			if old != (Point{}) {
				absolute += math.Abs(angle(old, v))
				signed += angle(old, v)
			}
			old = v
		}
		least := s.LeastRadius()
		if least > sampled*1.000001 {
			t.Errorf("least radius %g, but sampled %g", least, sampled)
		}
		if sampled < s.reach()/500 {
			return // too sharp a point for samples to follow
		}
		if sampled < 1e8 && least < sampled*0.95 {
			t.Errorf("least radius %g, sampled only %g", least, sampled)
		}
		a, b := s.Turning()
		near(t, "turning", a, degrees(absolute), 1)
		// at a cusp on the way half a turn may be counted to either side
		near(t, "signed turning", math.Remainder(b-degrees(signed), 360), 0, 1)
	})
}

func TestRoots(t *testing.T) {
	p := polynomial{-1, 4}.times(polynomial{-1, 2}).times(polynomial{-3, 4}).times(polynomial{1, 0, 1})
	got := roots(p)
	if len(got) != 3 {
		t.Fatalf("roots %v, want three", got)
	}
	for i, want := range []float64{0.25, 0.5, 0.75} {
		near(t, "root", got[i], want, 1e-12)
	}
	if got := roots(polynomial{1, -2, 1}); len(got) != 0 {
		t.Errorf("a double root at the end is no change of sign, got %v", got)
	}
}
