package cutting

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"bodkin/templates/outline"
)

type point = outline.Point

func edge(name string, s ...outline.Segment) outline.Edge {
	return outline.Edge{Name: name, Segments: s}
}

// front is half a bodice: fold on the left, hollow neck and armhole.
func front(t interface{ Fatal(...any) }, hem float64) outline.Outline {
	o, err := outline.New(
		edge("hem", outline.Bow(point{X: 0, Y: 0}, point{X: 260, Y: 20}, hem)),
		edge("side", outline.Line(point{X: 260, Y: 20}, point{X: 240, Y: 380})),
		edge("armhole", outline.Cubic(point{X: 240, Y: 380}, point{X: 180, Y: 385}, point{X: 160, Y: 430}, point{X: 170, Y: 560})),
		edge("shoulder", outline.Line(point{X: 170, Y: 560}, point{X: 75, Y: 600})),
		edge("neck", outline.Arc(point{X: 0, Y: 600}, 75, 0, -90)),
		edge("centre", outline.Line(point{X: 0, Y: 525}, point{X: 0, Y: 0})),
	)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func net(t interface{ Fatal(...any) }, o outline.Outline) outline.CutLine {
	line, err := o.Cut(make([]outline.Allowance, len(o.Edges)))
	if err != nil {
		t.Fatal(err)
	}
	return line
}

// The front by hand: the top line is the neck point; the neck is a quarter circle
// of 75, whose sagitta is 75 (1 - √½) = 21.97 into the piece.
func TestChalkByHand(t *testing.T) {
	rows, err := Chalk(net(t, front(t, 0)), "centre", 2)
	if err != nil {
		t.Fatal(err)
	}
	want := []ChalkRow{
		{1, "centre", "neck", 75, 0, Begin, 0},
		{2, "neck", "shoulder", 0, 75, Bowed, -21.967},
		{3, "shoulder", "armhole", 40, 170, Straight, 0},
	}
	if diff := cmp.Diff(want, rows[:3], cmpopts.EquateApprox(0, 0.05)); diff != "" {
		t.Error(diff)
	}
	last := rows[len(rows)-2:]
	want = []ChalkRow{
		{len(rows) - 1, "side", "hem", 580, 260, Straight, 0},
		{len(rows), "hem", "centre", 600, 0, Straight, 0},
	}
	if diff := cmp.Diff(want, last, cmpopts.EquateApprox(0, 1e-6)); diff != "" {
		t.Error(diff)
	}
	// a square without a fold, walked round and closed
	square, err := outline.New(
		edge("a", outline.Line(point{X: 10, Y: 5}, point{X: 30, Y: 5})), edge("b", outline.Line(point{X: 30, Y: 5}, point{X: 30, Y: 45})),
		edge("c", outline.Line(point{X: 30, Y: 45}, point{X: 10, Y: 45})), edge("d", outline.Line(point{X: 10, Y: 45}, point{X: 10, Y: 5})))
	if err != nil {
		t.Fatal(err)
	}
	if rows, err = Chalk(net(t, square), "", 1); err != nil {
		t.Fatal(err)
	}
	want = []ChalkRow{
		{1, "d", "c", 0, 0, Begin, 0}, {2, "c", "b", 0, 20, Straight, 0}, {3, "b", "a", 40, 20, Straight, 0},
		{4, "a", "d", 40, 0, Straight, 0}, {1, "d", "c", 0, 0, Straight, 0},
	}
	if diff := cmp.Diff(want, rows, cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Error(diff)
	}
}

// drawn is what a hand with ruler and curve makes of the rows, as in and up.
func drawn(rows []ChalkRow) []point {
	at := func(r ChalkRow) point { return point{X: r.In, Y: -r.Down} }
	var twice float64
	for i, r := range rows {
		twice += at(r).Cross(at(rows[(i+1)%len(rows)]))
	}
	line := []point{at(rows[0])}
	for i, r := range rows[1:] {
		a, b := at(rows[i]), at(r)
		if r.By == Bowed {
			rise := math.Copysign(r.Depth, r.Depth*twice) // outward is right of an anticlockwise walk
			line = append(line, outline.Edge{Segments: []outline.Segment{outline.Bow(a, b, rise)}}.Flatten(0.01)[1:]...)
			continue
		}
		line = append(line, b)
	}
	return line
}

// What the rows draw lies within the stated error of the line, and the line of
// what they draw, whichever way the piece lies, with allowances or without.
func TestChalkDrawsThePiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := front(t, rapid.Float64Range(-8, 30).Draw(t, "hem"))
		if rapid.Bool().Draw(t, "mirrored") {
			o = o.Mirror(point{}, point{Y: 1})
		}
		o = o.LaidOn(point{Y: 1}.Rotate(point{}, rapid.Float64Range(-60, 60).Draw(t, "turn")))
		widths := make([]outline.Allowance, len(o.Edges))
		fold := ""
		if rapid.Bool().Draw(t, "fold") {
			fold = "centre"
		}
		for i, e := range o.Edges {
			widths[i].Width = rapid.SampledFrom([]float64{0, 6, 15, 40}).Draw(t, "allowance")
			switch e.Name {
			case "hem":
				widths[i].Manner = outline.Turned
			case fold:
				widths[i] = outline.Allowance{Manner: outline.Folded}
			}
		}
		line, err := o.Cut(widths)
		if err != nil {
			t.Fatal(err)
		}
		within := rapid.SampledFrom([]float64{0.5, 1, 2, 5}).Draw(t, "within")
		rows, err := Chalk(line, fold, within)
		if err != nil {
			t.Fatal(err)
		}
		var truth []point
		for _, p := range append(line.Points(), line.Points()[0]) {
			down, in, err := ChalkPlace(line, fold, p)
			if err != nil || down < -1e-6 || in < -1e-6 {
				t.Errorf("%g down, %g in: above the top line or outside the fold, %v", down, in, err)
			}
			truth = append(truth, point{X: in, Y: -down})
		}
		hand := drawn(rows)
		hand = append(hand, hand[0])
		if d := off(truth, hand); d > within+0.02 {
			t.Errorf("the piece is %g mm off the chalk, told %g", d, within)
		}
		if d := off(hand, truth); d > within+0.02 {
			t.Errorf("the chalk is %g mm off the piece, told %g", d, within)
		}
		if most := 60; len(rows) > most {
			t.Errorf("%d rows to within %g mm", len(rows), within)
		}
	})
}

func TestChalkRefuses(t *testing.T) {
	line := net(t, front(t, 9))
	for _, c := range []struct {
		fold   string
		within float64
	}{{"yoke", 2}, {"neck", 2}, {"centre", 0}, {"centre", math.NaN()}} {
		if _, err := Chalk(line, c.fold, c.within); err == nil {
			t.Errorf("fold %q within %g was accepted", c.fold, c.within)
		}
		if _, _, err := ChalkPlace(line, c.fold, point{}); c.fold != "centre" && err == nil {
			t.Errorf("a place against fold %q was accepted", c.fold)
		}
	}
}

func BenchmarkChalk(b *testing.B) {
	line := net(b, front(b, 9))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Chalk(line, "centre", 2); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleChalk() {
	o, err := outline.New(
		edge("hem", outline.Line(point{X: 0, Y: 0}, point{X: 300, Y: 0})),
		edge("side", outline.Line(point{X: 300, Y: 0}, point{X: 220, Y: 600})),
		edge("waist", outline.Bow(point{X: 220, Y: 600}, point{X: 0, Y: 585}, -12)),
		edge("centre", outline.Line(point{X: 0, Y: 585}, point{X: 0, Y: 0})),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	cut, err := o.Cut([]outline.Allowance{{Width: 40, Manner: outline.Turned}, {Width: 15}, {Width: 10}, {Manner: outline.Folded}})
	if err != nil {
		fmt.Println(err)
		return
	}
	rows, err := Chalk(cut, "centre", 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range rows {
		fmt.Printf("%d %s/%s: down %.0f, in %.0f", r.Number, r.Before, r.After, r.Down, r.In)
		if r.By == Bowed {
			fmt.Printf(", bowed by %.0f", r.Depth)
		}
		fmt.Println()
	}
	// Output:
	// 1 centre/waist: down 19, in 0
	// 2 waist/side: down 0, in 233, bowed by -14
	// 3 side/side: down 614, in 315
	// 4 side/hem: down 654, in 310
	// 5 hem/centre: down 654, in 0
}
