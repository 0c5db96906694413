package outline

import (
	"errors"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// A square with a hem all round, worked by hand: the mitre runs at 45 degrees
// through the corner, its seam of 6 mm beyond it.
func TestMitredSquare(t *testing.T) {
	o := polygon(t, Point{0, 0}, Point{300, 0}, Point{300, 300}, Point{0, 300})
	hems := slices.Repeat([]Allowance{{Width: 40, Manner: Turned, Mitre: 6}}, 4)
	cut, err := o.Cut(hems)
	if err != nil {
		t.Fatal(err)
	}
	k := 6 * math.Sqrt2
	want := []Point{{300 - 40 + k, -40}, {340, 40 - k}, {340, 260 + k}, {260 + k, 340}, {40 - k, 340}, {-40, 260 + k}, {-40, 40 - k}, {40 - k, -40}}
	near(t, "area", cut.Area(), 380*380-4*(80-k)*(80-k)/2, 1e-6)
	for _, p := range want {
		if !slices.ContainsFunc(cut.Points(), func(q Point) bool { return p.Distance(q) < 1e-6 }) {
			t.Errorf("no corner at %v in %v", p, cut.Points())
		}
	}
	narrow := slices.Repeat([]Allowance{{Width: 4, Manner: Turned, Mitre: 6}}, 4)
	if cut, err = o.Cut(narrow); err != nil {
		t.Fatal(err)
	}
	near(t, "a hem narrower than its mitre's seam is squared", cut.Area(), 308*308, 1e-6)
}

// With hems of one width all round a convex figure, what folds back tiles the
// border of the figure, so that the cut line encloses as much beyond the figure
// as lies between it and its parallel inside: by Steiner's formula for an inner
// parallel P d - d² Σ cot(θ/2).
func TestMitredHemsTile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := polygon(t, convex().Draw(t, "corners")...)
		d := rapid.Float64Range(1, 40).Draw(t, "hem")
		corners := o.Corners()
		cot := make([]float64, len(corners)) // at the end of each edge
		area := o.Area() + o.Perimeter()*d
		for i, c := range corners {
			cot[i] = 1 / math.Tan(c.Inside*math.Pi/360)
			area -= d * d * cot[i]
		}
		for i, e := range o.Edges {
			if e.Length() < 1.01*d*(cot[i]+cot[(i+len(cot)-1)%len(cot)])+1 {
				t.Skip("the hems meet along this edge")
			}
		}
		cut, err := o.Cut(slices.Repeat([]Allowance{{Width: d, Manner: Turned}}, len(o.Edges)))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "area", cut.Area(), area, 1e-6*area)
	})
}

// Brute force: hems of different widths, folded back, cover the border of the
// piece once and only once.
func TestMitredHemsCoverOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := polygon(t, convex().Draw(t, "corners")...)
		hems := all(o, 0)
		for i := range hems {
			hems[i] = Allowance{Width: rapid.Float64Range(2, 25).Draw(t, "hem"), Manner: Turned}
		}
		cut, err := o.Cut(hems)
		if _, ok := errors.AsType[*ShapeError](err); ok {
			t.Skip("two hems meet along an edge")
		}
		if err != nil {
			t.Fatal(err)
		}
		box := o.Bounds()
		for range 60 {
			p := Point{rapid.Float64Range(box.Min.X, box.Max.X).Draw(t, "x"), rapid.Float64Range(box.Min.Y, box.Max.Y).Draw(t, "y")}
			covered, wanted, unsure := 0, 0, false
			for i, e := range o.Edges {
				off := e.From().Sub(p).Dot(e.To().Sub(e.From()).Unit().right())
				unsure = unsure || off < 1e-3 || math.Abs(off-hems[i].Width) < 1e-3
				if off < hems[i].Width {
					wanted = 1
				}
				flap := append(slices.Clone(cut[i].Points), e.To(), e.From())
				q := p.Reflect(e.From(), e.To())
				if inside(flap, q) {
					covered++
				}
				for j := range flap {
					unsure = unsure || clearance(q, flap[j], flap[(j+1)%len(flap)]) < 1e-3
				}
			}
			if !unsure && covered != wanted {
				t.Errorf("%v is covered %d times, want %d", p, covered, wanted)
			}
		}
	})
}

// A corner of 120 degrees wants a notch between the hems, one of 60 degrees a
// blunt point; both worked by hand for hems of 20 mm without a seam.
func TestMitreShapes(t *testing.T) {
	rhomb := polygon(t, Point{0, 0}, Point{200, 0}, Point{300, 100 * math.Sqrt(3)}, Point{100, 100 * math.Sqrt(3)})
	cut, err := rhomb.Cut(slices.Repeat([]Allowance{{Width: 20, Manner: Turned}}, 4))
	if err != nil {
		t.Fatal(err)
	}
	k := 20 / math.Sqrt(3)
	want := []Point{{20 * math.Sqrt(3), -20}, {200 - k, -20}, {200, 0}}
	if diff := cmp.Diff(want, cut[0].Points[1:], cmpopts.EquateApprox(0, 1e-6)); diff != "" {
		t.Error(diff, cut[0].Points)
	}
}

func TestMitreRefuses(t *testing.T) {
	small := polygon(t, Point{0, 0}, Point{60, 0}, Point{60, 300}, Point{0, 300})
	if _, err := small.Cut(slices.Repeat([]Allowance{{Width: 40, Manner: Turned}}, 4)); err == nil {
		t.Error("two hems of 40 on an edge of 60 were mitred")
	}
	hems := all(small, 20)
	hems[0] = Allowance{Width: 20, Manner: Turned, Mitre: -1}
	if _, err := small.Cut(hems); err == nil {
		t.Error("a mitre of -1 mm was cut")
	}
}
