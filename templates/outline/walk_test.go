package outline

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// chain of straight edges of these lengths.
func straight(lengths ...float64) Chain {
	var c Chain
	for i, l := range lengths {
		c = append(c, Edge{string(rune('a' + i)), []Segment{Line(Point{}, Point{l, 0})}})
	}
	return c
}

// Worked by hand: sides alike, a sleeve cap eased, a skirt gathered 1 1/2 times,
// and what does not fit.
func TestWalk(t *testing.T) {
	for _, c := range []struct {
		what     string
		a, b     Chain
		onA, onB []float64
		meant    Meant
		offBy    float64 // 0 where it fits
		from     int     // -1 where the whole is off
	}{
		{"alike", straight(100, 50), straight(150), []float64{40}, []float64{40}, Meant{Tolerance: 1}, 0, 0},
		{"within a pencil line", straight(150.8), straight(150), nil, nil, Meant{Tolerance: 1}, 0, 0},
		{"too long", straight(153), straight(150), nil, nil, Meant{Tolerance: 1}, 2, -1},
		{"too short", straight(147), straight(150), nil, nil, Meant{Tolerance: 1}, -2, -1},
		{"cap eased between its notches", straight(480), straight(450), []float64{100, 380}, []float64{100, 350}, Meant{Least: 20, Most: 35, Tolerance: 1}, 0, 0},
		{"eased too little", straight(460), straight(450), nil, nil, Meant{Least: 20, Most: 35, Tolerance: 1}, -9, -1},
		{"a stretch of it is short", straight(480), straight(450), []float64{90}, []float64{100}, Meant{Least: 20, Most: 35, Tolerance: 1}, -9, 0},
		{"the other then holds too much", straight(480), straight(450), []float64{100, 380}, []float64{99.5, 335}, Meant{Least: 20, Most: 35, Tolerance: 1}, 8.5, 1},
		{"gathered", straight(600), straight(400), []float64{200}, []float64{100}, Meant{Ratio: 1.5, Tolerance: 1}, 0, 0},
		{"gathered too little", straight(590), straight(400), nil, nil, Meant{Ratio: 1.5, Tolerance: 1}, -9, -1},
	} {
		f, err := Walk(c.a, c.b, c.onA, c.onB, c.meant)
		misfit, ok := errors.AsType[*MisfitError](err)
		switch {
		case c.offBy == 0 && err != nil, c.offBy != 0 && !ok:
			t.Errorf("%s: %v", c.what, err)
		case ok:
			near(t, c.what, misfit.OffBy, c.offBy, 1e-9)
			if misfit.Everywhere != (c.from < 0) || c.from >= 0 && misfit.From != c.from {
				t.Errorf("%s: %v", c.what, err)
			}
		}
		near(t, c.what+": ratio", f.Ratio, c.a.Length()/c.b.Length(), 1e-12)
	}
	for what, f := range map[string]func() (Fit, error){
		"notches of unlike number": func() (Fit, error) {
			return Walk(straight(9), straight(9), []float64{1}, nil, Meant{})
		},
		"notches out of order": func() (Fit, error) {
			return Walk(straight(9), straight(9), []float64{5, 1}, []float64{1, 5}, Meant{})
		},
		"a notch beyond the end": func() (Fit, error) { return Walk(straight(9), straight(9), []float64{10}, []float64{5}, Meant{}) },
		"a notch that is NaN": func() (Fit, error) {
			return Walk(straight(9), straight(9), []float64{math.NaN()}, []float64{5}, Meant{})
		},
		"least above most":        func() (Fit, error) { return Walk(straight(9), straight(9), nil, nil, Meant{Least: 2, Most: 1}) },
		"eased and gathered":      func() (Fit, error) { return Walk(straight(9), straight(9), nil, nil, Meant{Most: 2, Ratio: 2}) },
		"a chain without an edge": func() (Fit, error) { return Walk(nil, straight(9), nil, nil, Meant{}) },
	} {
		if _, err := f(); err == nil {
			t.Errorf("%s: accepted", what)
		}
	}
}

// Walked along a curve and its mirror image every place matches itself, and with
// notches each of them its partner.
func TestMatching(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := bodice(t)
		m := o.Mirror(Point{}, Point{0, 1})
		var a, b Chain
		for _, name := range []string{"side", "armhole", "shoulder"} {
			e, _ := o.Edge(name)
			g, _ := m.Edge(name)
			a, b = append(a, e), append(b, g.Reverse())
		}
		notch := rapid.Float64Range(0, 1).Draw(t, "notch") * a.Length()
		f, err := Walk(a, b, []float64{notch}, []float64{notch}, Meant{Tolerance: 0.001})
		if err != nil {
			t.Fatal(err)
		}
		d := rapid.Float64Range(0, 1).Draw(t, "share") * a.Length()
		name, p, u := a.At(d)
		other, q, v := b.At(f.Matching(d))
		near(t, "place", p.Distance(q.Reflect(Point{}, Point{0, 1})), 0, 1e-4)
		if name != other && p.Distance(a[1].From()) > 1e-3 && p.Distance(a[1].To()) > 1e-3 {
			t.Errorf("%s against %s", name, other)
		} else if name == other {
			near(t, "direction", u.Distance(Point{-v.X, v.Y}), 0, 1e-4)
		}
		eased := Fit{Sections: []Section{{100, 80}, {50, 60}}}
		near(t, "in the first stretch", eased.Matching(50), 40, 1e-12)
		near(t, "at the notch", eased.Matching(100), 80, 1e-12)
		near(t, "in the second", eased.Matching(125), 110, 1e-12)
		near(t, "at the end", eased.Matching(150), 140, 1e-12)
	})
}
