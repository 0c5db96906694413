package outline

import "math"

// Edge is a named run of segments, each starting where the one before ends.
type Edge struct {
	Name     string
	Segments []Segment
}

// kink is the least turn between two segments, in degrees, that counts as a
// corner inside the edge; below it the edge is smooth.
const kink = 0.5

// From returns where the edge starts.
func (e Edge) From() Point { return e.Segments[0].From() }

// To returns where the edge ends.
func (e Edge) To() Point { return e.Segments[len(e.Segments)-1].To() }

// Length returns the arc length, mm.
func (e Edge) Length() float64 {
	var sum float64
	for _, s := range e.Segments {
		sum += s.Length()
	}
	return sum
}

// LeastRadius returns the radius of the tightest bend, mm: +Inf for a straight
// edge, 0 where two segments meet at a corner.
func (e Edge) LeastRadius() float64 {
	least := math.Inf(1)
	for i, s := range e.Segments {
		if i > 0 && math.Abs(e.corner(i)) > kink {
			return 0
		}
		least = min(least, s.LeastRadius())
	}
	return least
}

// Turning returns how far the direction turns along the edge, degrees, corners
// between segments included: absolute adds all bends, signed counts left bends
// positive. In an anticlockwise outline a hollow edge has a negative sum.
func (e Edge) Turning() (absolute, signed float64) {
	for i, s := range e.Segments {
		if i > 0 {
			turn := e.corner(i)
			absolute += math.Abs(turn)
			signed += turn
		}
		a, b := s.Turning()
		absolute += a
		signed += b
	}
	return absolute, signed
}

// corner returns the turn in degrees where segment i begins.
func (e Edge) corner(i int) float64 {
	return degrees(angle(e.Segments[i-1].Tangent(1), e.Segments[i].Tangent(0)))
}

// At returns the place and the unit direction at the arc length d from the
// start. Beyond either end it is the end.
func (e Edge) At(d float64) (place, tangent Point) {
	i, t := e.find(d)
	return e.Segments[i].At(t), e.Segments[i].Tangent(t)
}

// Nearest returns the arc length to the place of the edge nearest to p, and how
// far away that is, both to within a few hundredths of a mm.
func (e Edge) Nearest(p Point) (at, away float64) {
	line := e.Flatten(crossingTolerance)
	var run float64
	away = math.Inf(1)
	for i := range len(line) - 1 {
		step := line[i+1].Sub(line[i])
		share := min(max(p.Sub(line[i]).Dot(step)/step.Dot(step), 0), 1)
		if d := p.Distance(line[i].Toward(line[i+1], share)); d < away {
			at, away = run+share*step.Norm(), d
		}
		run += step.Norm()
	}
	return at * e.Length() / run, away
}

// find returns the segment and its parameter at the arc length d.
func (e Edge) find(d float64) (segment int, t float64) {
	for i, s := range e.Segments {
		whole := s.Length()
		if d <= whole || i == len(e.Segments)-1 {
			return i, s.parameterAt(d, whole)
		}
		d -= whole
	}
	return 0, 0
}

// SplitAt cuts the edge at the arc length d into two of the same name. Where d
// is not inside the edge it returns false.
func (e Edge) SplitAt(d float64) (before, after Edge, ok bool) {
	if !(d > 0 && d < e.Length()) {
		return e, Edge{}, false
	}
	i, t := e.find(d)
	before, after = Edge{Name: e.Name}, Edge{Name: e.Name}
	before.Segments = append(before.Segments, e.Segments[:i]...)
	switch t {
	case 0:
		after.Segments = append(after.Segments, e.Segments[i:]...)
	case 1:
		before.Segments = append(before.Segments, e.Segments[i])
		after.Segments = append(after.Segments, e.Segments[i+1:]...)
	default:
		a, b := e.Segments[i].Split(t)
		before.Segments = append(before.Segments, a)
		after.Segments = append(append(after.Segments, b), e.Segments[i+1:]...)
	}
	return before, after, len(before.Segments) > 0 && len(after.Segments) > 0
}

// Reverse returns the same edge run the other way.
func (e Edge) Reverse() Edge {
	r := Edge{Name: e.Name, Segments: make([]Segment, len(e.Segments))}
	for i, s := range e.Segments {
		r.Segments[len(e.Segments)-1-i] = s.Reverse()
	}
	return r
}

// Map returns the edge with f applied to every point; see [Segment.Map].
func (e Edge) Map(f func(Point) Point) Edge {
	m := Edge{Name: e.Name, Segments: make([]Segment, len(e.Segments))}
	for i, s := range e.Segments {
		m.Segments[i] = s.Map(f)
	}
	return m
}

// Flatten returns points along the edge, both ends included, such that the
// straight lines between them stay within tolerance mm of it.
func (e Edge) Flatten(tolerance float64) []Point {
	line := []Point{e.From()}
	for _, s := range e.Segments {
		part, _ := s.offset(0, tolerance)
		line = append(line, part[1:]...)
	}
	return line
}
