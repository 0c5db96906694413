package outline

import (
	compare "cmp"
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

func all(o Outline, width float64) []Allowance {
	return slices.Repeat([]Allowance{{Width: width}}, len(o.Edges))
}

func round(r float64) Outline { return Outline{[]Edge{{"rim", []Segment{Arc(Point{}, r, 0, 360)}}}} }

// convex draws a convex polygon of 3 to 9 corners on an ellipse, anticlockwise.
func convex() *rapid.Generator[[]Point] {
	return rapid.Custom(func(t *rapid.T) []Point {
		n := rapid.IntRange(3, 9).Draw(t, "corners")
		a, b := rapid.Float64Range(80, 400).Draw(t, "a"), rapid.Float64Range(80, 400).Draw(t, "b")
		start := rapid.Float64Range(0, 360).Draw(t, "start")
		corners := make([]Point, n)
		for i := range n {
			jitter := rapid.Float64Range(-0.3, 0.3).Draw(t, "jitter")
			p := Point{1, 0}.Rotate(Point{}, start+360/float64(n)*(float64(i)+jitter))
			corners[i] = Point{a * p.X, b * p.Y}
		}
		return corners
	})
}

func TestCutSquare(t *testing.T) {
	o := polygon(t, Point{0, 0}, Point{100, 0}, Point{100, 100}, Point{0, 100})
	cut, err := o.Cut([]Allowance{{Width: 40, Manner: Turned}, {Width: 10}, {Width: 5}, {Manner: Folded}})
	if err != nil {
		t.Fatal(err)
	}
	want := CutLine{
		{"a", []Point{{0, -40}, {110, -40}}},
		{"b", []Point{{110, -40}, {110, 105}}},
		{"c", []Point{{110, 105}, {0, 105}}},
		{"d", []Point{{0, 105}, {0, -40}}},
	}
	if diff := cmp.Diff(want, cut, cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Error(diff)
	}
	near(t, "area", cut.Area(), 110*145, 1e-9)
	near(t, "height", cut.Bounds().Height(), 145, 1e-9)
	if n := len(cut.Points()); n != 4 {
		t.Errorf("%d corners of the polygon, want 4", n)
	}
}

// Steiner's formula for the parallel of a convex figure, J. Steiner 1840: the
// area grows by P d + corners. A corner of turn φ squared off adds d² tan(φ/2).
func TestSteinerSquaredCorners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := polygon(t, convex().Draw(t, "corners")...)
		d := rapid.Float64Range(0.5, 60).Draw(t, "d")
		area, perimeter := o.Area()+o.Perimeter()*d, o.Perimeter()
		for _, c := range o.Corners() {
			if c.Inside < 40 {
				t.Skip("this corner would be blunted")
			}
			k := math.Tan((180 - c.Inside) * math.Pi / 360)
			area += d * d * k
			perimeter += 2 * d * k
		}
		cut, err := o.Cut(all(o, d))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "area", cut.Area(), area, 1e-6*area)
		var length float64
		points := cut.Points()
		for i, p := range points {
			length += p.Distance(points[(i+1)%len(points)])
		}
		near(t, "perimeter", length, perimeter, 1e-6*perimeter)
	})
}

// The same for smooth convex figures, where the corners make up π d².
func TestSteinerSmooth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(20, 300).Draw(t, "r")
		w, h := rapid.Float64Range(1, 300).Draw(t, "w"), rapid.Float64Range(1, 300).Draw(t, "h")
		d := rapid.Float64Range(1, 100).Draw(t, "d")
		o, err := New(
			Edge{"bottom", []Segment{Line(Point{0, -r}, Point{w, -r})}},
			Edge{"se", []Segment{Arc(Point{w, 0}, r, -90, 90)}},
			Edge{"right", []Segment{Line(Point{w + r, 0}, Point{w + r, h})}},
			Edge{"ne", []Segment{Arc(Point{w, h}, r, 0, 90)}},
			Edge{"top", []Segment{Line(Point{w, h + r}, Point{0, h + r})}},
			Edge{"nw", []Segment{Arc(Point{0, h}, r, 90, 90)}},
			Edge{"left", []Segment{Line(Point{-r, h}, Point{-r, 0})}},
			Edge{"sw", []Segment{Arc(Point{0, 0}, r, 180, 90)}},
		)
		if err != nil {
			t.Fatal(err)
		}
		cut, err := o.Cut(all(o, d))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "area", cut.Area(), o.Area()+o.Perimeter()*d+math.Pi*d*d, cutTolerance*(o.Perimeter()+7*d))
	})
}

func TestCutOfACircleIsACircle(t *testing.T) {
	for _, d := range []float64{0, 3, 15, 400} {
		cut, err := round(120).Cut([]Allowance{{Width: d}})
		if err != nil {
			t.Fatal(err)
		}
		points := cut.Points()
		if len(points) < 12 {
			t.Fatalf("only %d points", len(points))
		}
		for i, p := range points {
			near(t, "corner", p.Norm(), 120+d, 1e-3)
			near(t, "middle", p.Toward(points[(i+1)%len(points)], 0.5).Norm(), 120+d, 1.1*cutTolerance)
		}
	}
}

// A hollow quarter circle: the cut line draws in.
func TestCutOfAHollow(t *testing.T) {
	o, err := New(
		Edge{"neck", []Segment{Arc(Point{0, 200}, 80, 0, -90)}},
		Edge{"fold", []Segment{Line(Point{0, 120}, Point{0, 0})}},
		Edge{"hem", []Segment{Line(Point{0, 0}, Point{200, 0})}},
		Edge{"side", []Segment{Line(Point{200, 0}, Point{200, 200})}},
		Edge{"shoulder", []Segment{Line(Point{200, 200}, Point{80, 200})}},
	)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range []float64{10, 79, 200} {
		widths := all(o, 0)
		widths[slices.IndexFunc(o.Edges, func(e Edge) bool { return e.Name == "neck" })].Width = d
		cut, err := o.Cut(widths)
		if d > 80 {
			if shape, ok := errors.AsType[*ShapeError](err); !ok || !slices.Contains(shape.Edges, "neck") {
				t.Errorf("an allowance of %g round a neck of 80: %v", d, err)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		want := o.Area() + math.Pi/4*(80*80-(80-d)*(80-d))
		near(t, "area", cut.Area(), want, 10)
	}
}

// A notch rounded off at its bottom by less than the allowance is cut like one
// with a sharp bottom: the loop of the parallel is taken out.
func TestCutOfATightHollow(t *testing.T) {
	const r, d = 4.0, 15.0
	sharp := polygon(t, Point{-200, -100}, Point{200, -100}, Point{200, 200}, Point{0, 0}, Point{-200, 200})
	turn := []Point{{r * math.Sqrt2, r * math.Sqrt2}, {0, 0}, {-r * math.Sqrt2, r * math.Sqrt2}}
	rounded, err := New(
		Edge{"base", []Segment{Line(Point{-200, -100}, Point{200, -100})}},
		Edge{"right", []Segment{Line(Point{200, -100}, Point{200, 200})}},
		Edge{"notch", []Segment{Line(Point{200, 200}, turn[0]), Quadratic(turn[0], turn[1], turn[2]), Line(turn[2], Point{-200, 200})}},
		Edge{"left", []Segment{Line(Point{-200, 200}, Point{-200, -100})}},
	)
	if err != nil {
		t.Fatal(err)
	}
	a, err := sharp.Cut(all(sharp, d))
	if err != nil {
		t.Fatal(err)
	}
	b, err := rounded.Cut(all(rounded, d))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "area", b.Area(), a.Area(), 0.5)
	lowest := slices.MinFunc(b[2].Points, func(p, q Point) int { return compare.Compare(p.Y, q.Y) })
	near(t, "bottom of the notch", lowest.Y, d*math.Sqrt2, 0.05)
}

// A hem turned up on a slanted seam lies on the piece, edge on edge: every point
// of the hem's ends, mirrored in the hem line, is on the seam's cut line.
func TestTurnedHemLiesFlat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slant := rapid.Float64Range(-120, 120).Draw(t, "slant")
		other := rapid.Float64Range(-120, 120).Draw(t, "other")
		depth := rapid.Float64Range(5, 150).Draw(t, "depth")
		wide := rapid.Float64Range(0, 25).Draw(t, "allowance")
		o := polygon(t, Point{0, 0}, Point{300, 0}, Point{300 + slant, 400}, Point{other, 400})
		cut, err := o.Cut([]Allowance{{Width: depth, Manner: Turned}, {Width: wide}, {Width: 10}, {Width: wide}})
		if err != nil {
			t.Fatal(err)
		}
		hem := cut[0].Points
		near(t, "depth", hem[0].Y, -depth, 1e-9)
		fold := func(p Point) Point { return Point{p.X, -p.Y} }
		right, left := hem[len(hem)-1], hem[0]
		distance := func(p Point, e Edge) float64 {
			return e.To().Sub(e.From()).Unit().right().Dot(p.Sub(e.From()))
		}
		near(t, "right end", distance(fold(right), o.Edges[1]), wide, 1e-6)
		near(t, "left end", distance(fold(left), o.Edges[3]), wide, 1e-6)
	})
}

// A slit turned in below a seam, on the same line: each keeps its own width, with
// a step between, so that the area is that of three rectangles.
func TestTurnedEdgeGoesStraightOn(t *testing.T) {
	o := polygon(t, Point{0, 0}, Point{300, 0}, Point{300, 100}, Point{300, 400}, Point{0, 400})
	slit, seam := Allowance{Width: 16, Manner: Turned}, Allowance{Width: 15}
	cut, err := o.Cut([]Allowance{{}, slit, seam, {}, {}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "slit below its seam", cut.Area(), 300*400+100*16+300*15, 1e-6)
	if cut, err = o.Cut([]Allowance{{}, seam, slit, {}, {}}); err != nil {
		t.Fatal(err)
	}
	near(t, "slit above its seam", cut.Area(), 300*400+100*15+300*16, 1e-6)
}

// A slit below a seam that slants away from it: whatever their widths, each is cut
// with its own beside its middle.
func TestTurnedEdgeRunsOnAtASlant(t *testing.T) {
	for _, slant := range []float64{-8, -3, -1, 1, 3, 8, 15} { // degrees
		at := Point{200, 150}
		top := Point{200 - 350*math.Tan(slant*math.Pi/180), 500}
		o := polygon(t, Point{0, 0}, Point{200, 0}, at, top, Point{0, 500})
		for _, w := range [][2]float64{{25, 15}, {15, 25}, {15, 15}, {40, 6}, {6, 40}} {
			cut, err := o.Cut([]Allowance{{Width: 20, Manner: Turned}, {Width: w[0], Manner: Turned}, {Width: w[1]}, {Width: 15}, {Manner: Folded}})
			if err != nil {
				t.Errorf("at %g degrees: %v", slant, err)
				continue
			}
			for k, wide := range w {
				e := o.Edges[1+k]
				middle, along := e.At(e.Length() / 2)
				beyond := middle.Add(along.right().Scale(2 * wide))
				found := false
				for i := range len(cut[1+k].Points) - 1 {
					if p, ok := intersect(middle, beyond, cut[1+k].Points[i], cut[1+k].Points[i+1]); ok {
						found = true
						near(t, fmt.Sprintf("at %g degrees beside %s", slant, e.Name), p.Distance(middle), wide, 1e-6)
					}
				}
				if !found {
					t.Errorf("at %g degrees nothing is cut beside %s", slant, e.Name)
				}
			}
		}
	}
}

// The raw edge of a curved hem is longer than the line it is sewn to by twice
// depth times turning; for a hem of concentric arcs this is exact.
func TestFullnessOfACurvedHem(t *testing.T) {
	const r, sweep, depth = 600.0, 40.0, 50.0
	o, err := New(
		Edge{"hem", []Segment{Arc(Point{}, r, -90-sweep/2, sweep)}},
		Edge{"right", []Segment{Line(Point{0, -r}.Rotate(Point{}, sweep/2), Point{0, -100}.Rotate(Point{}, sweep/2))}},
		Edge{"waist", []Segment{Arc(Point{}, 100, -90+sweep/2, -sweep)}},
		Edge{"left", []Segment{Line(Point{0, -100}.Rotate(Point{}, -sweep/2), Point{0, -r}.Rotate(Point{}, -sweep/2))}},
	)
	if err != nil {
		t.Fatal(err)
	}
	cut, err := o.Cut([]Allowance{{Width: depth, Manner: Turned}, {}, {}, {}})
	if err != nil {
		t.Fatal(err)
	}
	var raw float64
	for i := range len(cut[0].Points) - 1 {
		raw += cut[0].Points[i].Distance(cut[0].Points[i+1])
	}
	_, turn := o.Edges[0].Turning()
	lies := (r - depth) * sweep * math.Pi / 180
	near(t, "fullness", raw-lies, 2*depth*turn*math.Pi/180, 0.05)
}

func TestFoldEndsOnItsLine(t *testing.T) {
	o := polygon(t, Point{0, 0}, Point{200, -30}, Point{180, 300}, Point{0, 330})
	cut, err := o.Cut([]Allowance{{Width: 30}, {Width: 10}, {Width: 15}, {Manner: Folded}})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range cut[3].Points {
		near(t, "fold", p.X, 0, 1e-9)
	}
	b := cut.Bounds()
	near(t, "nothing beyond the fold", b.Min.X, 0, 1e-9)
}

// Hand-worked corners: mitre, blunt, step, hollow.
func TestCornerShapes(t *testing.T) {
	// a long point of 2 atan(0.1) = 11.4 degrees is blunted, not drawn out
	needle := polygon(t, Point{0, -50}, Point{500, 0}, Point{0, 50})
	cut, err := needle.Cut(all(needle, 10))
	if err != nil {
		t.Fatal(err)
	}
	if x := cut.Bounds().Max.X; x < 510 || x > 500+10*mitreLimit+5 {
		t.Errorf("the point is cut at x = %g", x)
	}
	// a nearly straight line with two widths steps at the corner
	bent := polygon(t, Point{0, 0}, Point{200, 0}, Point{400, 4}, Point{400, 200}, Point{0, 200})
	widths := all(bent, 0)
	widths[0].Width, widths[1].Width = 10, 30
	cut, err = bent.Cut(widths)
	if err != nil {
		t.Fatal(err)
	}
	first := cut[0].Points
	near(t, "the narrow allowance ends at the corner", first[len(first)-1].X, 200, 1)
	near(t, "at its own width", first[len(first)-1].Y, -10, 0.1)
	// an L: the hollow corner is drawn in on both sides
	l := polygon(t, Point{0, 0}, Point{200, 0}, Point{200, 100}, Point{100, 100}, Point{100, 200}, Point{0, 200})
	widths = all(l, 0)
	widths[2].Width, widths[3].Width = 10, 20
	cut, err = l.Cut(widths)
	if err != nil {
		t.Fatal(err)
	}
	want := []CutEdge{
		{"c", []Point{{200, 110}, {120, 110}}},
		{"d", []Point{{120, 110}, {120, 200}}},
	}
	if diff := cmp.Diff(want, []CutEdge(cut[2:4]), cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Error(diff)
	}
}

func TestCutRefuses(t *testing.T) {
	slot := polygon(t, Point{0, 0}, Point{200, 0}, Point{200, 200}, Point{120, 200}, Point{120, 50}, Point{80, 50}, Point{80, 200}, Point{0, 200})
	for _, x := range []struct {
		allowances []Allowance
		names      []string
		what       string
	}{
		{all(slot, -1), []string{"a"}, "cannot be cut"},
		{all(slot, math.NaN()), []string{"a"}, "cannot be cut"},
		{all(slot, math.Inf(1)), []string{"a"}, "cannot be cut"},
		{slices.Repeat([]Allowance{{Width: 5, Manner: Folded}}, 8), []string{"a"}, "cannot be cut"},
		{all(slot, 25), []string{"c", "f"}, "crosses itself"},
	} {
		_, err := slot.Cut(x.allowances)
		shape, ok := errors.AsType[*ShapeError](err)
		if !ok || !slices.Equal(shape.Edges, x.names) || !strings.Contains(shape.What, x.what) {
			t.Errorf("want %q at %q, got %v", x.what, x.names, err)
		}
	}
	if _, err := slot.Cut(nil); err == nil {
		t.Error("eight edges with no allowances were accepted")
	}
	if _, err := slot.Cut(all(slot, 15)); err != nil {
		t.Errorf("15 mm fit into a slot of 40: %v", err)
	}
}

// Whatever the widths, the cut line of a convex piece is simple, leaves each
// edge at least its allowance at its middle, and keeps the edges' names in order.
func TestCutOfConvexShapes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := polygon(t, convex().Draw(t, "corners")...)
		widths := all(o, 0)
		for i := range widths {
			widths[i].Width = rapid.SampledFrom([]float64{0, 6, 10, 15, 40}).Draw(t, "width")
		}
		cut, err := o.Cut(widths)
		if err != nil {
			t.Fatal(err)
		}
		for i, e := range cut {
			if e.Name != o.Edges[i].Name {
				t.Fatalf("edge %d is %q, want %q", i, e.Name, o.Edges[i].Name)
			}
			if next := cut[(i+1)%len(cut)]; e.Points[len(e.Points)-1].Distance(next.Points[0]) > gap {
				t.Errorf("%q and %q do not join", e.Name, next.Name)
			}
			middle, _ := o.Edges[i].At(o.Edges[i].Length() / 2)
			far := math.Inf(1)
			for j := range len(e.Points) - 1 {
				far = min(far, clearance(middle, e.Points[j], e.Points[j+1]))
			}
			// beside a step to a narrower neighbour a short edge has its corner nearer
			if far < min(widths[i].Width, o.Edges[i].Length()/2)-1e-6 {
				t.Errorf("%q: only %g of %g mm", e.Name, far, widths[i].Width)
			}
		}
	})
}

// Brute force on curves: along the middle of every edge the cut line is as far
// away as the edge's own allowance, and nowhere nearer than the narrowest.
func TestCutKeepsItsDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := bodice(t)
		o.Edges[0].Segments = []Segment{Bow(Point{0, 0}, Point{260, 20}, rapid.Float64Range(-20, 60).Draw(t, "hem"))}
		widths := all(o, 0)
		narrowest := math.Inf(1)
		for i := range widths {
			widths[i].Width = rapid.Float64Range(0, 25).Draw(t, "width")
			narrowest = min(narrowest, widths[i].Width)
		}
		cut, err := o.Cut(widths)
		if err != nil {
			t.Fatal(err)
		}
		line := cut.Points()
		for i, e := range o.Edges {
			for k := range 11 {
				p, _ := e.At(e.Length() * float64(k) / 10)
				if far := clearanceOf(line, p); far < narrowest-2*cutTolerance {
					t.Errorf("%q at %d/10: only %g of %g mm", e.Name, k, far, narrowest)
				}
			}
			middle, _ := e.At(e.Length() / 2)
			far := math.Inf(1)
			for j := range len(cut[i].Points) - 1 {
				far = min(far, clearance(middle, cut[i].Points[j], cut[i].Points[j+1]))
			}
			near(t, e.Name, far, widths[i].Width, 2*cutTolerance)
		}
	})
}

func FuzzCut(f *testing.F) {
	f.Add([]byte{0, 0, 100, 0, 100, 100, 0, 100}, byte(15))
	f.Add([]byte{0, 0, 200, 0, 200, 200, 120, 200, 120, 50, 80, 50, 80, 200, 0, 200}, byte(19))
	f.Add([]byte{0, 0, 250, 5, 0, 10}, byte(40))
	f.Add([]byte("\x0000\n\n\n\n\x00"), byte(38)) // a sliver whose edge the corner before has used up
	f.Fuzz(func(t *testing.T, data []byte, width byte) {
		if len(data) > 40 {
			return
		}
		var corners []Point
		for i := 0; i+1 < len(data); i += 2 {
			corners = append(corners, Point{float64(data[i]), float64(data[i+1])})
		}
		var edges []Edge
		for i, p := range corners {
			edges = append(edges, Edge{string(rune('a' + i)), []Segment{Line(p, corners[(i+1)%len(corners)])}})
		}
		o, err := New(edges...)
		if err != nil {
			return
		}
		widths := all(o, float64(width))
		widths[0].Manner = Turned
		if width%2 == 1 { // hems all round
			widths = slices.Repeat([]Allowance{{Width: float64(width), Manner: Turned, Mitre: 6}}, len(widths))
		}
		cut, err := o.Cut(widths)
		if err == nil && cut.Area() < o.Area()-1 {
			t.Errorf("cut area %g of a shape of %g", cut.Area(), o.Area())
		}
	})
}

func BenchmarkCut(b *testing.B) {
	o := bodice(b)
	widths := []Allowance{{Width: 40, Manner: Turned}, {Width: 15}, {Width: 6}, {Width: 15}, {Width: 6}, {Manner: Folded}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := o.Cut(widths); err != nil {
			b.Fatal(err)
		}
	}
}
