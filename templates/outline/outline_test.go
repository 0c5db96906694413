package outline

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// polygon makes an outline with straight edges named a, b, c … from its corners.
func polygon(t interface{ Fatal(...any) }, corners ...Point) Outline {
	var edges []Edge
	for i, p := range corners {
		edges = append(edges, Edge{string(rune('a' + i)), []Segment{Line(p, corners[(i+1)%len(corners)])}})
	}
	o, err := New(edges...)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// bodice is a half front with every kind of edge: fold, hem, slanted seam,
// hollow curves.
func bodice(t interface{ Fatal(...any) }) Outline {
	o, err := New(
		Edge{"hem", []Segment{Quadratic(Point{0, 0}, Point{150, 0}, Point{260, 20})}},
		Edge{"side", []Segment{Line(Point{260, 20}, Point{240, 380})}},
		Edge{"armhole", []Segment{Cubic(Point{240, 380}, Point{180, 385}, Point{160, 430}, Point{170, 560})}},
		Edge{"shoulder", []Segment{Line(Point{170, 560}, Point{75, 600})}},
		Edge{"neck", []Segment{Cubic(Point{75, 600}, Point{70, 560}, Point{45, 520}, Point{0, 520})}},
		Edge{"centre", []Segment{Line(Point{0, 520}, Point{0, 0})}},
	)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func TestAreaAndBounds(t *testing.T) {
	circle, err := New(Edge{"rim", []Segment{Arc(Point{1000, -2000}, 100, 0, 360)}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "area of a circle πr²", circle.Area(), math.Pi*1e4, 1e-8)
	near(t, "width of a circle", circle.Bounds().Width(), 200, 1e-9)
	near(t, "height of a circle", circle.Bounds().Height(), 200, 1e-9)
	segment, err := New(
		Edge{"arc", []Segment{Quadratic(Point{0, 0}, Point{50, 100}, Point{100, 0})}},
		Edge{"chord", []Segment{Line(Point{100, 0}, Point{0, 0})}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "segment of a parabola, two thirds of base by height (Archimedes)", segment.Area(), 2./3*100*50, 1e-9)
	near(t, "height of its bow", segment.Bounds().Height(), 50, 1e-9)
	if segment.Edges[0].Name != "arc" {
		t.Errorf("turned round, the first edge is %q", segment.Edges[0].Name)
	}
	near(t, "perimeter of 3-4-5", polygon(t, Point{0, 0}, Point{3, 0}, Point{0, 4}).Perimeter(), 12, 1e-12)
}

func TestCorners(t *testing.T) {
	o := polygon(t, Point{0, 0}, Point{100, 0}, Point{100, 100}, Point{50, 50}, Point{0, 100})
	want := []Corner{
		{Point{100, 0}, "a", "b", 90}, {Point{100, 100}, "b", "c", 45},
		{Point{50, 50}, "c", "d", 270}, {Point{0, 100}, "d", "e", 45}, {Point{0, 0}, "e", "a", 90},
	}
	if diff := cmp.Diff(want, o.Corners(), cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Error(diff)
	}
}

func TestNewRefuses(t *testing.T) {
	line := func(name string, p ...Point) Edge {
		e := Edge{Name: name}
		for i := range len(p) - 1 {
			e.Segments = append(e.Segments, Line(p[i], p[i+1]))
		}
		return e
	}
	a, b, c, d := Point{0, 0}, Point{100, 0}, Point{100, 100}, Point{0, 100}
	for _, x := range []struct {
		edges []Edge
		names []string
		what  string
	}{
		{nil, nil, "no edges"},
		{[]Edge{line("", a, b)}, []string{""}, "no name"},
		{[]Edge{line("p", a, b), {Name: "q"}}, []string{"q"}, "no segments"},
		{[]Edge{{Name: "p", Segments: []Segment{{}}}}, []string{"p"}, "empty"},
		{[]Edge{line("p", a, b), line("p", b, c, a)}, []string{"p"}, "this name"},
		{[]Edge{line("p", a, b), line("q", c, a)}, []string{"p", "q"}, "not the start"},
		{[]Edge{line("p", a, Point{math.NaN(), 1}, a)}, []string{"p"}, "finite"},
		{[]Edge{line("p", a, Point{math.Inf(1), 1}, a)}, []string{"p"}, "finite"},
		{[]Edge{line("p", a, b), line("tiny", b, Point{100, 0.05}), line("q", Point{100, 0.05}, c, a)}, []string{"tiny"}, "only 0.050 mm"},
		{[]Edge{{Name: "p", Segments: []Segment{Line(a, b), Line(c, a)}}}, []string{"p"}, "do not join"},
		{[]Edge{line("p", a, b, b), line("q", b, c, a)}, []string{"p"}, "no length"},
		{[]Edge{line("p", a, c), line("q", c, b), line("r", b, d), line("s", d, a)}, []string{"p", "r"}, "crosses itself"},
		{[]Edge{line("p", a, c, b, d, a)}, []string{"p"}, "crosses itself"},
		{[]Edge{line("p", a, b), line("q", b, a)}, []string{"p", "q"}, "crosses itself"},
		{[]Edge{line("p", a, b), line("spike", b, c, b), line("q", b, d, a)}, []string{"p", "spike"}, "crosses itself"},
	} {
		_, err := New(x.edges...)
		shape, ok := errors.AsType[*ShapeError](err)
		if !ok || !slices.Equal(shape.Edges, x.names) || !strings.Contains(shape.What, x.what) {
			t.Errorf("want %q at %q, got %v", x.what, x.names, err)
		}
	}
}

func TestReflections(t *testing.T) {
	o := bodice(t)
	m := o.Mirror(Point{0, 0}, Point{0, 1})
	near(t, "mirrored area", m.Area(), o.Area(), 1e-6)
	for _, e := range o.Edges {
		other, ok := m.Edge(e.Name)
		if !ok {
			t.Fatalf("edge %q was lost", e.Name)
		}
		near(t, "mirrored length of "+e.Name, other.Length(), e.Length(), 1e-6)
		near(t, "mirrored bend of "+e.Name, other.LeastRadius(), e.LeastRadius(), 1e-6*e.LeastRadius())
	}
	back := m.Mirror(Point{0, 0}, Point{0, 1})
	if diff := cmp.Diff(o, back, cmp.AllowUnexported(Segment{}), cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Errorf("mirrored twice: %s", diff)
	}

	whole, err := o.Unfold("centre", func(s string) string { return s + " left" })
	if err != nil {
		t.Fatal(err)
	}
	near(t, "unfolded area", whole.Area(), 2*o.Area(), 1e-6)
	var names []string
	for _, e := range whole.Edges {
		names = append(names, e.Name)
	}
	want := []string{"hem", "side", "armhole", "shoulder", "neck", "neck left", "shoulder left", "armhole left", "side left", "hem left"}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Error(diff)
	}
	for fold, what := range map[string]string{"no such": "no such edge", "neck": "must be straight"} {
		if _, err := o.Unfold(fold, strings.ToUpper); err == nil || !strings.Contains(err.Error(), what) {
			t.Errorf("unfolding about %q: %v", fold, err)
		}
	}
}

// A shape and its mirror image, walked edge by edge, agree at every place.
func TestWalksAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := bodice(t)
		angle := rapid.Float64Range(0, 360).Draw(t, "angle")
		a := Point{rapid.Float64Range(-100, 100).Draw(t, "x"), 7}
		b := a.Add(Point{100, 0}).Rotate(a, angle)
		m := o.Mirror(a, b)
		for _, e := range o.Edges {
			f, _ := m.Edge(e.Name)
			d := rapid.Float64Range(0, 1).Draw(t, "share") * e.Length()
			p, _ := e.At(d)
			q, _ := f.Reverse().At(d)
			near(t, e.Name, q.Distance(p.Reflect(a, b)), 0, 1e-6)
		}
	})
}

func TestFlattenKeepsWithinTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := curve().Draw(t, "curve")
		tolerance := rapid.SampledFrom([]float64{0.01, 0.05, 1}).Draw(t, "tolerance")
		line := Edge{"e", []Segment{s}}.Flatten(tolerance)
		for i := range 201 {
			p, far := s.At(float64(i)/200), math.Inf(1)
			for j := range len(line) - 1 {
				far = min(far, clearance(p, line[j], line[j+1]))
			}
			if far > tolerance {
				t.Fatalf("%.4f mm off at %d/200, tolerance %g", far, i, tolerance)
			}
		}
	})
}

func BenchmarkNew(b *testing.B) {
	edges := bodice(b).Edges
	b.ReportAllocs()
	for b.Loop() {
		if _, err := New(edges...); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleNew() {
	o, err := New(
		Edge{"hem", []Segment{Line(Point{0, 0}, Point{240, 0})}},
		Edge{"side", []Segment{Line(Point{240, 0}, Point{230, 400})}},
		Edge{"neck", []Segment{Quadratic(Point{230, 400}, Point{0, 400}, Point{0, 300})}},
		Edge{"fold", []Segment{Line(Point{0, 300}, Point{0, 0})}},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range o.Edges {
		_, turn := e.Turning()
		fmt.Printf("%s %.1f mm, turns %+.0f degrees\n", e.Name, e.Length(), turn)
	}
	// Output:
	// hem 240.0 mm, turns +0 degrees
	// side 400.1 mm, turns +0 degrees
	// neck 276.1 mm, turns +90 degrees
	// fold 300.0 mm, turns +0 degrees
}
