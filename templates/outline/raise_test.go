package outline_test

import (
	"errors"
	"math"
	"testing"

	"bodkin/templates/outline"
)

// A square, a trapezium and a slice of a ring, each with one side moved in: the
// figures are closed forms.
func TestRaise(t *testing.T) {
	line := func(name string, a, b outline.Point) outline.Edge {
		return outline.Edge{Name: name, Segments: []outline.Segment{outline.Line(a, b)}}
	}
	p := func(x, y float64) outline.Point { return outline.Point{X: x, Y: y} }
	square := []outline.Edge{line("low", p(0, 0), p(100, 0)), line("right", p(100, 0), p(100, 80)), line("top", p(100, 80), p(0, 80)), line("left", p(0, 80), p(0, 0))}
	flared := []outline.Edge{line("low", p(0, 0), p(120, 0)), line("right", p(120, 0), p(100, 80)), line("top", p(100, 80), p(0, 80)), line("left", p(0, 80), p(0, 0))}
	other := make([]outline.Edge, len(square))
	for i, e := range square {
		other[len(square)-1-i] = e.Reverse()
	}
	ring := []outline.Edge{
		{Name: "low", Segments: []outline.Segment{quarter(p(200, 0), p(0, 200), 200)}},
		line("left", p(0, 200), p(0, 80)),
		{Name: "top", Segments: []outline.Segment{quarter(p(0, 80), p(80, 0), 80)}},
		line("right", p(80, 0), p(200, 0)),
	}
	for _, x := range []struct {
		what  string
		edges []outline.Edge
		by    float64
		low   float64 // the moved edge's length
		right float64 // and that beside it
	}{
		{"a square", square, 25, 100, 55},
		{"a square run the other way", other, 25, 100, 55},
		{"a flared side", flared, 20, 115, 60 * math.Hypot(80, 20) / 80},
		{"a slice of a ring", ring, 25, 175 * math.Pi / 2, 95},
	} {
		out, err := outline.Raise(x.edges, "low", x.by)
		if err != nil {
			t.Errorf("%s: %v", x.what, err)
			continue
		}
		o, err := outline.New(out...)
		if err != nil {
			t.Errorf("%s: %v", x.what, err)
			continue
		}
		low, _ := o.Edge("low")
		right, _ := o.Edge("right")
		if math.Abs(low.Length()-x.low) > 0.05 || math.Abs(right.Length()-x.right) > 0.05 {
			t.Errorf("%s: %.3f and %.3f beside it, want %.3f and %.3f", x.what, low.Length(), right.Length(), x.low, x.right)
		}
	}
	for _, x := range []struct {
		what, name string
		by         float64
	}{
		{"further than it is high", "low", 90},
		{"outwards, where the sides are too short to meet it", "low", -10},
		{"an edge that is not there", "hem", 1},
	} {
		if _, err := outline.Raise(square, x.name, x.by); !errors.As(err, new(*outline.ShapeError)) {
			t.Errorf("%s: %v", x.what, err)
		}
	}
}

// quarter is a quarter circle round the origin as a cubic, true to 0.03 %.
func quarter(a, b outline.Point, r float64) outline.Segment {
	const k = 0.5522847498
	u, v := a.Scale(1/r), b.Scale(1/r)
	return outline.Cubic(a, a.Add(v.Scale(k*r)), b.Add(u.Scale(k*r)), b)
}
