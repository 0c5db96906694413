package figure

import "math"

// Ply is one layer of cloth in a cross-section: the outline of a band of the
// given thickness (mm on paper) round the centre line through the points, with
// folds rounded to about the given radius (measured to the centre line, at
// least half the thickness where the neighbouring stretches are long enough).
// Its ends are square: raw edges. Fewer than two points give an empty path.
func Ply(points []Point, thickness, radius float64, s Stroke, f Fill) Path {
	line := rounded(points, max(radius, thickness/2))
	if len(line) < 2 {
		return Path{}
	}
	h := thickness / 2
	outline := append(beside(line, h), backwards(beside(line, -h))...)
	return Polygon(s, f, outline...)
}

// rounded replaces every corner by an arc, in chords of about 10 degrees. The
// arc takes at most half of either neighbouring stretch, an end stretch whole.
func rounded(points []Point, radius float64) []Point {
	points = distinct(points)
	if len(points) < 3 {
		return points
	}
	out := []Point{points[0]}
	for i := 1; i+1 < len(points); i++ {
		a, b, c := points[i-1], points[i], points[i+1]
		in, on := towards(a, b), towards(b, c)
		turn := math.Atan2(in.X*on.Y-in.Y*on.X, in.X*on.X+in.Y*on.Y)
		room := min(share(i-1, len(points))*b.minus(a).length(), share(i, len(points))*c.minus(b).length())
		cut := min(radius*math.Abs(math.Tan(turn/2)), room)
		r := cut / max(math.Abs(math.Tan(turn/2)), 1e-9)
		if cut < 1e-6 || math.Abs(turn) < 1e-6 {
			out = append(out, b)
			continue
		}
		start := b.minus(in.times(cut))
		centre := start.minus(in.left().times(math.Copysign(r, turn)))
		steps := max(2, int(math.Ceil(math.Abs(turn)/(math.Pi/18))))
		from := start.minus(centre)
		for k := range steps + 1 {
			sin, cos := math.Sincos(turn * float64(k) / float64(steps))
			out = append(out, centre.plus(Point{from.X*cos - from.Y*sin, from.X*sin + from.Y*cos}))
		}
	}
	return distinct(append(out, points[len(points)-1]))
}

// share is how much of stretch i (of n points) one of its corners may use.
func share(i, n int) float64 {
	if i == 0 || i == n-2 {
		return 1
	}
	return 0.5
}

func distinct(points []Point) []Point {
	var out []Point
	for _, p := range points {
		if len(out) == 0 || p.minus(out[len(out)-1]).length() > 1e-6 {
			out = append(out, p)
		}
	}
	return out
}

// beside is the line moved d mm to its left, each inner point along the
// bisector of its neighbours. It is meant for lines that turn a little at a
// point; a sharp turn is blunted to twice d.
func beside(line []Point, d float64) []Point {
	out := make([]Point, len(line))
	for i, p := range line {
		var n Point
		switch i {
		case 0:
			n = towards(line[0], line[1]).left()
		case len(line) - 1:
			n = towards(line[i-1], p).left()
		default:
			a, b := towards(line[i-1], p).left(), towards(p, line[i+1]).left()
			sum := a.plus(b)
			k := sum.length()
			if k < 1e-6 {
				n = a
				break
			}
			n = sum.times(1 / k).times(min(2/k, 2))
		}
		out[i] = p.plus(n.times(d))
	}
	return out
}

func backwards(points []Point) []Point {
	out := make([]Point, 0, len(points))
	for i := len(points) - 1; i >= 0; i-- {
		out = append(out, points[i])
	}
	return out
}
