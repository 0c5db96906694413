package figure_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"testing"

	"bodkin/sheets/figure"

	"pgregory.net/rapid"
)

// even sets every letter half an em wide: a measure simple enough to work by hand.
type even struct{}

func (even) TextWidth(words string, size float64, _ bool) float64 {
	return 0.5 * size * float64(len([]rune(words)))
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s is %v, want %v within %v", what, got, want, within)
	}
}

var solid = figure.Stroke{Width: figure.Thin}

func TestLengths(t *testing.T) {
	// Closed forms: a triangle of sides 3, 4, 5, and Euclid's circle, which
	// cubics with kappa = 4(√2−1)/3 meet to within 0.03 % of the radius
	// (error bound from memory).
	triangle := figure.Polygon(solid, figure.Fill{}, figure.Point{}, figure.Point{X: 3}, figure.Point{Y: 4})
	near(t, "round a 3-4-5 triangle", triangle.Length(), 12, 1e-9)
	k := 4.0 / 3 * (math.Sqrt2 - 1) * 10
	quarter := figure.Path{Start: figure.Point{X: 10}}.
		Curve(figure.Point{X: 10, Y: k}, figure.Point{X: k, Y: 10}, figure.Point{Y: 10})
	near(t, "a quarter circle of radius 10", quarter.Length(), math.Pi*5, 0.01)
	// A parabola y = x²/10 for 0 ≤ x ≤ 10 as a cubic, against its arc length
	// ½√(1+4)·5·... = (10/4)(2√5 + asinh 2), the textbook integral of √(1+(x/5)²).
	parabola := figure.Path{}.Curve(figure.Point{X: 10.0 / 3}, figure.Point{X: 20.0 / 3, Y: 10.0 / 3}, figure.Point{X: 10, Y: 10})
	near(t, "a parabola's arc", parabola.Length(), 2.5*(2*math.Sqrt(5)+math.Asinh(2)), 0.01)
}

func TestFlatteningStaysWithinTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(-50, 50)
		pt := func() figure.Point { return figure.Point{X: c.Draw(t, "x"), Y: c.Draw(t, "y")} }
		p0, c1, c2, p3 := pt(), pt(), pt(), pt()
		path := figure.Path{Start: p0}.Curve(c1, c2, p3)
		fine, rough := path.Polylines(1e-4)[0], path.Polylines(0.1)[0]
		for _, p := range fine {
			best := math.Inf(1)
			for i := 1; i < len(rough); i++ {
				best = min(best, distance(p, rough[i-1], rough[i]))
			}
			if best > 0.1+1e-3 {
				t.Fatalf("%v lies %v from the chords", p, best)
			}
		}
	})
}

func distance(p, a, b figure.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	u := 0.0
	if n := dx*dx + dy*dy; n > 0 {
		u = min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/n, 0), 1)
	}
	return math.Hypot(p.X-a.X-u*dx, p.Y-a.Y-u*dy)
}

func TestCheck(t *testing.T) {
	good := figure.Figure{Name: "a", Width: 10, Height: 5, Items: []figure.Item{figure.Circle{Radius: 1}}}
	if err := good.Check(); err != nil {
		t.Errorf("a sound figure: %v", err)
	}
	for name, f := range map[string]figure.Figure{
		"no width":   {Height: 1},
		"NaN height": {Width: 1, Height: math.NaN()},
		"infinite":   {Width: math.Inf(1), Height: 1},
		"bad circle": {Width: 1, Height: 1, Items: []figure.Item{figure.Circle{Radius: math.Inf(1)}}},
		"bad path":   {Width: 1, Height: 1, Items: []figure.Item{figure.Line(figure.Point{X: math.NaN()}, figure.Point{}, solid)}},
		"bad dash":   {Width: 1, Height: 1, Items: []figure.Item{figure.Line(figure.Point{}, figure.Point{}, figure.Stroke{Width: 1, Dash: []float64{math.NaN()}})}},
		"bad text":   {Width: 1, Height: 1, Items: []figure.Item{figure.Text{Size: math.NaN()}}},
	} {
		if f.Check() == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func anyItem() *rapid.Generator[figure.Item] {
	return rapid.Custom(func(t *rapid.T) figure.Item {
		n := rapid.Float64Range(-200, 200)
		pt := func() figure.Point { return figure.Point{X: n.Draw(t, "x"), Y: n.Draw(t, "y")} }
		fill := figure.Fill{
			White: rapid.Bool().Draw(t, "white"),
			Tint:  rapid.Float64Range(0, 1).Draw(t, "tint"),
			Hatch: figure.Hatch(rapid.IntRange(0, figure.Hatches).Draw(t, "hatch")),
			Pitch: rapid.Float64Range(0, 5).Draw(t, "pitch"),
		}
		stroke := figure.Stroke{Width: rapid.Float64Range(0, 2).Draw(t, "width"), Dash: rapid.SliceOfN(rapid.Float64Range(0, 5), 0, 4).Draw(t, "dash")}
		switch rapid.IntRange(0, 2).Draw(t, "kind") {
		case 0:
			return figure.Polygon(stroke, fill, pt(), pt(), pt(), pt())
		case 1:
			return figure.Circle{Centre: pt(), Radius: rapid.Float64Range(0, 60).Draw(t, "r"), Stroke: stroke, Fill: fill}
		}
		return figure.Text{At: pt(), Size: 3, Words: rapid.String().Draw(t, "words"), Anchor: figure.Anchor(rapid.IntRange(0, 2).Draw(t, "anchor")), Turn: n.Draw(t, "turn")}
	})
}

func TestSVGIsWellFormedAndRepeats(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := figure.Figure{
			Name: "any", Title: rapid.String().Draw(t, "title"), Width: 100, Height: 60,
			Items: rapid.SliceOfN(anyItem(), 0, 4).Draw(t, "items"),
		}
		once, again := f.SVG(), f.SVG()
		if !bytes.Equal(once, again) {
			t.Fatal("two runs differ")
		}
		wellFormed(t, once)
	})
}

type fataler interface{ Fatalf(string, ...any) }

func wellFormed(t fataler, data []byte) {
	d := xml.NewDecoder(bytes.NewReader(data))
	d.Strict = true
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Fatalf("%v in %q", err, data)
		}
	}
}

func FuzzSVGText(f *testing.F) {
	for _, s := range []string{"", "ẹ̀", "a<b&c>\"'", "]]>", "\x00\xff", "\ufffe", "--><script>", "½″ × 3 mm"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		fig := figure.Figure{Title: s, Width: 1, Height: 1, Items: []figure.Item{figure.Text{Words: s, Size: 1}}}
		wellFormed(t, fig.SVG())
	})
}

func TestSVGBytes(t *testing.T) {
	f := figure.Figure{Name: "seam", Title: "A <seam>", Width: 20, Height: 10.5, Items: []figure.Item{
		figure.Line(figure.Point{X: 1, Y: 1.00049}, figure.Point{X: -0.0001, Y: 2}, figure.Stroke{Width: 0.25, Dash: []float64{1, 0.5}}),
		figure.Rect(figure.Point{X: 2, Y: 3}, 4, 5, figure.Stroke{}, figure.Fill{Tint: 0.2}),
		figure.Circle{Centre: figure.Point{X: 5, Y: 5}, Radius: 2, Fill: figure.Fill{Thread: &figure.RGB{R: 10, G: 200, B: 3}}},
		figure.Text{At: figure.Point{X: 3, Y: 4}, Size: 2.8, Words: "a & b", Anchor: figure.Middle, Turn: 90, Bold: true},
	}}
	want := `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="20mm" height="10.5mm" viewBox="0 0 20 10.5" font-family="sans-serif" fill="none" stroke="none">
<title>A &lt;seam&gt;</title>
<path d="M1 1L0 2" stroke="#000000" stroke-width="0.25" stroke-linejoin="round" stroke-dasharray="1 0.5"/>
<path d="M2 3L6 3L6 8L2 8Z" fill="#cccccc" fill-rule="evenodd"/>
<circle cx="5" cy="5" r="2" fill="#0ac803" fill-rule="evenodd"/>
<text x="3" y="4" font-size="2.8" fill="#000" text-anchor="middle" font-weight="bold" transform="rotate(-90 3 4)">a &amp; b</text>
</svg>
`
	if got := string(f.SVG()); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
