package sheets

import (
	"math"
	"testing"

	"bodkin/process"
)

// Of every garment each seam that has an edge is drawn where it lies: the heavy
// lines are as long as the edges that the plan gives it, twice where the piece is
// opened out or has a twin, within what a flattened curve loses; and the opened
// outline has the area of the whole piece's finished shape.
func TestWhereSeamsLie(t *testing.T) {
	measure := &measurer{}
	for _, n := range ofEveryGarment(t) {
		name, p := n.name, n.plan
		c := newComposer(p, Options{FiguresAt: "f/"})
		c.measure = measure
		drawn := 0
		for _, s := range p.Seams {
			want, got := 0.0, 0.0
			for _, q := range p.Pieces {
				twice := 1.0
				if q.Cut == "pair" || q.Cut == "fold" {
					twice = 2
				}
				for _, e := range q.Edges {
					if e.Seam == s.Name {
						want += twice * e.Length
					}
				}
				for _, d := range q.Drawn {
					if d.Name == s.Name && d.Kind != "notch" {
						want += twice * math.Hypot(d.To.X-d.From.X, d.To.Y-d.From.Y)
					}
				}
				shapes, _ := whereOn(q, s.Name)
				for _, x := range shapes {
					for _, h := range x.heavy {
						for i := 1; i < len(h); i++ {
							got += math.Hypot(h[i].X-h[i-1].X, h[i].Y-h[i-1].Y)
						}
					}
				}
				if len(shapes) == 1 && q.Cut == "fold" {
					if whole, half := areaOf(shapes[0].net), areaOf(q.Net); math.Abs(whole-2*half) > 1e-6*half+1 {
						t.Errorf("%s: %s opened out has %g mm², twice its half %g", name, q.Name, whole, 2*half)
					}
				}
			}
			if math.Abs(got-want) > 0.01*want+1 {
				t.Errorf("%s: %s is drawn %g mm long, its edges are %g", name, s.Name, got, want)
			}
			c.figures(c.whereFigure(s)...)
			if n := len(c.drawings); n > drawn != (want > 0 || len(s.Course.A) > 0) {
				t.Errorf("%s: %s with edges of %g mm: %d drawings, before it %d", name, s.Name, want, n, drawn)
			}
			drawn = len(c.drawings)
		}
		for _, d := range c.drawings {
			wellFormed(t, d)
			apart(t, d, measure)
			if d.Figure.Width > 180 || d.Figure.Height > whereHigh+10 {
				t.Errorf("%s %s is %.0f by %.0f mm", name, d.Address, d.Figure.Width, d.Figure.Height)
			}
		}
	}
}

func areaOf(line []process.Point) float64 {
	sum := 0.0
	for i, a := range line {
		b := line[(i+1)%len(line)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return math.Abs(sum) / 2
}
