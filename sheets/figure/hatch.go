package figure

import (
	"math"
	"slices"
)

// Hatch is a pattern that tells shapes apart without colour, in a copy or for
// an eye that does not see hues.
type Hatch int

// The hatches, in an order in which neighbours differ most.
const (
	NoHatch   Hatch = iota
	Rising          // lines from bottom left to top right
	Dotted          // dots in rows
	Level           // lines along
	Crossed         // rising and falling lines
	Falling         // lines from top left to bottom right
	Upright         // lines up and down
	Squares         // level and upright lines
	Brickwork       // level dashes, each row shifted
)

// Hatches is how many patterns there are besides NoHatch.
const Hatches = int(Brickwork)

const (
	usualPitch = 1.6
	leastPitch = 0.3     // closer lines run together in print
	farthest   = 3_000.0 // no sheet of paper is larger, so nothing beyond is hatched
)

// hatching is the pattern of a shape as one path of strokes that end on its
// outline. The lines are counted from the figure's origin, so that neighbours
// with one hatch run on into each other.
func hatching(p Path) Path {
	pitch := p.Fill.Pitch
	if pitch <= 0 {
		pitch = usualPitch
	}
	pitch = max(pitch, leastPitch)
	edges := p
	edges.Closed = true
	outline := edges.Polylines(0.02)
	h := Path{Stroke: Stroke{Width: Hairline + 0.03}}
	rule := func(degrees float64, cut func(a, b Point, row int) [][2]Point) {
		for _, ln := range scan(outline, degrees, pitch) {
			for _, piece := range cut(ln.a, ln.b, ln.row) {
				h.add(piece[0], piece[1])
			}
		}
	}
	whole := func(a, b Point, _ int) [][2]Point { return [][2]Point{{a, b}} }
	switch p.Fill.Hatch {
	case Rising:
		rule(45, whole)
	case Falling:
		rule(-45, whole)
	case Level:
		rule(0, whole)
	case Upright:
		rule(90, whole)
	case Crossed:
		rule(45, whole)
		rule(-45, whole)
	case Squares:
		rule(0, whole)
		rule(90, whole)
	case Dotted:
		h.Stroke = Stroke{Width: 0.45, Round: true}
		rule(0, func(a, b Point, row int) [][2]Point { return dashes(a, b, row, pitch, 0.01, pitch) })
	case Brickwork:
		rule(0, func(a, b Point, row int) [][2]Point { return dashes(a, b, row, 2*pitch, 1.3*pitch, 0) })
	}
	if len(h.Segments) > 0 {
		h.Start = h.Segments[0].To
		h.Segments = h.Segments[1:]
	}
	return h
}

func (p *Path) add(a, b Point) {
	p.Segments = append(p.Segments, Segment{Step: MoveTo, To: a}, Segment{Step: LineTo, To: b})
}

// dashes are the parts of a level line a–b that lie on a repeating dash of the
// given length, every second row shifted by half a repeat. A dash nearer than
// keep/4 to an end is left out, so that dots do not sit on the outline.
func dashes(a, b Point, row int, repeat, length, keep float64) [][2]Point {
	shift := 0.0
	if row&1 != 0 {
		shift = repeat / 2
	}
	var out [][2]Point
	for k := math.Floor((a.X - shift) / repeat); k*repeat+shift < b.X; k++ {
		x0, x1 := max(a.X+keep/4, k*repeat+shift), min(b.X-keep/4, k*repeat+shift+length)
		if x1 > x0 {
			out = append(out, [2]Point{{x0, a.Y}, {x1, a.Y}})
		}
	}
	return out
}

type scanLine struct {
	a, b Point
	row  int
}

// scan rules lines at the given angle (degrees anticlockwise from level), pitch
// apart, and keeps what lies inside the outline by the even-odd rule.
func scan(outline [][]Point, degrees, pitch float64) []scanLine {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	into := func(p Point) Point { return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos} }
	back := func(p Point) Point { return Point{p.X*cos + p.Y*sin, -p.X*sin + p.Y*cos} }
	lo, hi := math.Inf(1), math.Inf(-1)
	turned := make([][]Point, len(outline))
	for i, part := range outline {
		for _, p := range part {
			if !finite(p.X, p.Y) || max(math.Abs(p.X), math.Abs(p.Y)) > farthest {
				return nil
			}
			q := into(p)
			turned[i] = append(turned[i], q)
			lo, hi = min(lo, q.Y), max(hi, q.Y)
		}
	}
	if lo > hi {
		return nil
	}
	var lines []scanLine
	for row := int(math.Ceil(lo / pitch)); float64(row)*pitch <= hi; row++ {
		y := float64(row) * pitch
		var xs []float64
		for _, part := range turned {
			for i := 1; i < len(part); i++ {
				a, b := part[i-1], part[i]
				if (a.Y <= y) != (b.Y <= y) {
					xs = append(xs, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
				}
			}
		}
		slices.Sort(xs)
		for i := 1; i < len(xs); i += 2 {
			if xs[i]-xs[i-1] > 1e-6 {
				lines = append(lines, scanLine{back(Point{xs[i-1], y}), back(Point{xs[i], y}), row})
			}
		}
	}
	return lines
}
