package figure_test

import (
	"math"
	"slices"
	"testing"

	"bodkin/sheets/figure"

	"pgregory.net/rapid"
)

// recorder keeps what Paint hands out.
type recorder struct {
	paths   []figure.Path
	circles []figure.Circle
	texts   []figure.Text
}

func (r *recorder) Path(p figure.Path)     { r.paths = append(r.paths, p) }
func (r *recorder) Circle(c figure.Circle) { r.circles = append(r.circles, c) }
func (r *recorder) Text(t figure.Text)     { r.texts = append(r.texts, t) }

func TestHatchFillsItsShare(t *testing.T) {
	// Closed form: lines pitch apart on a box have a total length of area/pitch,
	// but for a line or so at the rim.
	for h, rows := range map[figure.Hatch]float64{figure.Rising: 1, figure.Falling: 1, figure.Level: 1, figure.Upright: 1, figure.Crossed: 2, figure.Squares: 2} {
		var r recorder
		box := figure.Rect(figure.Point{X: 3.3, Y: 7.1}, 60, 40, figure.Stroke{}, figure.Fill{Hatch: h, Pitch: 2})
		figure.Paint(figure.Figure{Items: []figure.Item{box}}, &r)
		if len(r.paths) != 1 {
			t.Fatalf("hatch %d: %d paths, want one", h, len(r.paths))
		}
		near(t, "hatched length", r.paths[0].Length(), rows*60*40/2, rows*60)
	}
}

func TestHatchStaysInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(1, 30).Draw(t, "r")
		c := figure.Circle{Centre: figure.Point{X: 40, Y: 40}, Radius: r, Fill: figure.Fill{
			Hatch: figure.Hatch(rapid.IntRange(1, figure.Hatches).Draw(t, "hatch")),
			Pitch: rapid.Float64Range(0.5, 4).Draw(t, "pitch"),
		}}
		var rec recorder
		figure.Paint(figure.Figure{Items: []figure.Item{c}}, &rec)
		for _, p := range rec.paths {
			for _, part := range p.Polylines(1) {
				for _, q := range part {
					if d := math.Hypot(q.X-40, q.Y-40); d > r*1.0004+0.001 {
						t.Fatalf("%v is %v from the centre of a circle of %v", q, d, r)
					}
				}
			}
		}
	})
}

func TestHatchLeavesAHoleEmpty(t *testing.T) {
	ring := figure.Rect(figure.Point{}, 30, 30, figure.Stroke{}, figure.Fill{Hatch: figure.Level, Pitch: 1})
	ring.Segments = append(ring.Segments,
		figure.Segment{Step: figure.MoveTo, To: figure.Point{X: 10, Y: 10}}, figure.Segment{To: figure.Point{X: 20, Y: 10}},
		figure.Segment{To: figure.Point{X: 20, Y: 20}}, figure.Segment{To: figure.Point{X: 10, Y: 20}})
	var rec recorder
	figure.Paint(figure.Figure{Items: []figure.Item{ring}}, &rec)
	near(t, "hatched length round a hole", rec.paths[0].Length(), 900-100, 31)
}

func TestDimension(t *testing.T) {
	a, b := figure.Point{X: 10, Y: 20}, figure.Point{X: 60, Y: 20}
	items := figure.Dimension(a, b, 6, "50 mm", 3, even{})
	var text figure.Text
	heads := 0
	for _, it := range items {
		switch it := it.(type) {
		case figure.Text:
			text = it
		case figure.Path:
			if it.Closed {
				heads++
				if tip := it.Start; tip != (figure.Point{X: 10, Y: 14}) && tip != (figure.Point{X: 60, Y: 14}) {
					t.Errorf("a head points to %v", tip)
				}
			}
		}
	}
	if heads != 2 || text.Words != "50 mm" {
		t.Fatalf("%d heads and text %q", heads, text.Words)
	}
	near(t, "the middle of the words", text.At.X, 35, 1e-9)
	box := figure.TextBox(text, even{})
	if box.Top > 14 || box.Bottom < 14 {
		t.Errorf("the words at %v do not sit on the line at 14", box)
	}
	tight := figure.Dimension(a, figure.Point{X: 14, Y: 20}, 6, "4 mm", 3, even{})
	last := tight[len(tight)-1].(figure.Text)
	if figure.TextBox(last, even{}).Left < 14 {
		t.Errorf("words that do not fit stand at %v, not beyond the end", last.At)
	}
}

func TestDimensionWordsAreClearOfItsLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "angle")
		length := rapid.Float64Range(1, 120).Draw(t, "length")
		from := figure.Point{X: 100, Y: 100}
		to := figure.Point{X: 100 + length*math.Cos(angle), Y: 100 + length*math.Sin(angle)}
		items := figure.Dimension(from, to, rapid.Float64Range(-12, 12).Draw(t, "offset"), "12.5 mm", 3, even{})
		text := items[len(items)-1].(figure.Text)
		// The ink of figures: from the baseline to about 0.73 of the type size.
		w := even{}.TextWidth(text.Words, 3, false) / 2
		ink := figure.Box{Left: text.At.X - w, Right: text.At.X + w, Top: text.At.Y - 0.73*3, Bottom: text.At.Y}
		for _, it := range items[:len(items)-1] {
			p := it.(figure.Path)
			if len(p.Segments) == 1 && math.Abs(math.Hypot(p.Start.X-p.Segments[0].To.X, p.Start.Y-p.Segments[0].To.Y)) > 1e-6 {
				for k := range 101 {
					u := float64(k) / 100
					x, y := p.Start.X+u*(p.Segments[0].To.X-p.Start.X), p.Start.Y+u*(p.Segments[0].To.Y-p.Start.Y)
					along := math.Abs((x-from.X)*math.Cos(angle) + (y-from.Y)*math.Sin(angle))
					if extension := along < 1e-6 || math.Abs(along-length) < 1e-6; extension {
						continue
					}
					if x > ink.Left && x < ink.Right && y > ink.Top && y < ink.Bottom {
						t.Fatalf("the line runs through the words at %v, %v", x, y)
					}
				}
			}
		}
	})
}

func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 12).Draw(t, "n")
		want := rapid.SliceOfN(rapid.Float64Range(-50, 150), n, n).Draw(t, "want")
		size := rapid.SliceOfN(rapid.Float64Range(0.5, 20), n, n).Draw(t, "size")
		got := figure.Spread(want, size, 1, 0, 300)
		order := make([]int, n)
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(a, b int) int {
			if want[a] < want[b] {
				return -1
			} else if want[a] > want[b] {
				return 1
			}
			return 0
		})
		for k, i := range order {
			if got[i]-size[i]/2 < -1e-9 || got[i]+size[i]/2 > 300+1e-9 {
				t.Fatalf("label %d at %v leaves the line", i, got[i])
			}
			if k > 0 {
				j := order[k-1]
				if clear := got[i] - size[i]/2 - got[j] - size[j]/2; clear < 1-1e-9 {
					t.Fatalf("labels %d and %d are %v apart", j, i, clear)
				}
			}
		}
	})
	// Two equal labels that want one place share it evenly: 10 ∓ (4+1)/2.
	if got := figure.Spread([]float64{10, 10}, []float64{4, 4}, 1, 0, 100); got[0] != 7.5 || got[1] != 12.5 {
		t.Errorf("shared place: %v", got)
	}
	// Labels with room stay where they want to be.
	if got := figure.Spread([]float64{30, 10}, []float64{4, 4}, 1, 0, 100); got[0] != 30 || got[1] != 10 {
		t.Errorf("room for all: %v", got)
	}
}

func TestStitchRowEndsOnAStitch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(8, 200).Draw(t, "length")
		stitch := rapid.Float64Range(0.8, 3).Draw(t, "stitch")
		row := figure.StitchRow(figure.Line(figure.Point{}, figure.Point{X: length}, figure.Stroke{}), stitch)
		dash, gap := row.Stroke.Dash[0], row.Stroke.Dash[1]
		if whole := (length + gap) / (dash + gap); math.Abs(whole-math.Round(whole)) > 1e-6 {
			t.Fatalf("%v stitches in the row", whole)
		}
		if got := dash + gap; got < 0.6*stitch || got > 1.5*stitch {
			t.Fatalf("a stitch of %v was drawn %v long", stitch, got)
		}
	})
}

func TestPly(t *testing.T) {
	// Closed form: a fold of two limbs of 20 joined by a half circle of radius 2,
	// 1 thick, has the area of its centre line times its thickness.
	line := []figure.Point{{}, {X: 22}, {X: 22, Y: 4}, {Y: 4}}
	p := figure.Ply(line, 1, 2, solid, figure.Fill{})
	outline := p.Polylines(1)[0]
	area := 0.0
	for i := 1; i < len(outline); i++ {
		area += outline[i-1].X*outline[i].Y - outline[i].X*outline[i-1].Y
	}
	near(t, "area of a folded ply", math.Abs(area)/2, 20+20+math.Pi*2, 0.1)
	for _, q := range outline {
		if q.X > 22.505 || q.Y < -0.505 || q.Y > 4.505 {
			t.Errorf("%v lies outside the fold", q)
		}
	}
	if got := figure.Ply(line[:1], 1, 1, solid, figure.Fill{}); len(got.Segments) != 0 {
		t.Errorf("one point gave %v", got)
	}
}

func TestFit(t *testing.T) {
	items := []figure.Item{
		figure.Line(figure.Point{X: -5, Y: -5}, figure.Point{X: 15, Y: 5}, figure.Stroke{Width: 1}),
		figure.Text{At: figure.Point{X: 10, Y: 9}, Size: 4, Words: "twelve chars"},
	}
	f := figure.Fit("f", "f", items, 2, even{})
	// Left −5.5, right 10 + 12·0.5·4 = 34, top −5.5, bottom 9 + 0.25·4 = 10.
	near(t, "width", f.Width, 34+5.5+4, 1e-9)
	near(t, "height", f.Height, 10+5.5+4, 1e-9)
	b := figure.Bounds(f.Items, even{})
	near(t, "left", b.Left, 2, 1e-9)
	near(t, "top", b.Top, 2, 1e-9)
	if items[1].(figure.Text).At.X != 10 {
		t.Error("the items given were changed")
	}
}

func TestTurnedTextBox(t *testing.T) {
	// A quarter turn anticlockwise makes words read upwards: the box swaps sides.
	b := figure.TextBox(figure.Text{Size: 10, Words: "abcd", Turn: 90}, even{})
	near(t, "top", b.Top, -20, 1e-9)
	near(t, "bottom", b.Bottom, 0, 1e-9)
	near(t, "left", b.Left, -9.5, 1e-9)
	near(t, "right", b.Right, 2.5, 1e-9)
	backed := figure.Backed(figure.Text{Size: 10, Words: "abcd"}, even{})
	if len(backed) != 2 || !backed[0].(figure.Path).Fill.White {
		t.Errorf("backed text: %v", backed)
	}
}
