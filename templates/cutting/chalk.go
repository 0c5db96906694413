package cutting

import (
	"fmt"
	"math"
	"slices"

	"bodkin/templates/outline"
)

// Stroke is how the chalk comes to a point from the one marked before it.
type Stroke int

const (
	Begin    Stroke = iota // the first point of all
	Straight               // along a ruler
	Bowed                  // a smooth curve, as deep at the middle of the straight line as the row says
	Smooth                 // on along a curve that runs through several points
)

// ChalkRow is one point to mark on the cloth.
type ChalkRow struct {
	Number        int    // from 1; the last row of a piece without a fold comes back to 1
	Before, After string // edges that meet here, as marked; alike within an edge
	Down          float64
	In            float64
	By            Stroke
	Depth         float64 // mm of a bow at its middle, above 0 outward of the piece, below 0 into it
}

// kinked is the turn, in degrees, from which a bend of a drawn line is a corner
// to be marked. A line drawn to within 0.05 mm turns less round any curve that
// chalk can follow.
const kinked = 15

// Chalk returns the points by which a piece is marked straight on the cloth, as
// mm down from its top line and mm in from its fold or centre line, in the order
// of walking round it: from the top of the fold outward and back to the foot of
// the fold. Without a fold, in is counted from the left and the walk starts at
// the highest corner, the leftmost of these, and closes.
//
// The line is a cut line, or a net line cut with no allowance. What is drawn by
// the rows, bows taken for arcs of a circle and smooth curves even for straight
// lines from point to point, lies within the given error (mm) of it. The error
// returned is for a fold that is no straight edge of the line, and for an error
// that is no length.
func Chalk(line outline.CutLine, fold string, within float64) ([]ChalkRow, error) {
	if !(within > 0) || math.IsInf(within, 1) {
		return nil, fmt.Errorf("a piece cannot be marked to within %g mm", within)
	}
	f, at, err := frameOn(line, fold)
	if err != nil {
		return nil, err
	}
	lines := f.walk(line, at)
	rows := []ChalkRow{{Number: 1, After: lines[0].name, Before: fold, Down: lines[0].points[0].Y, In: lines[0].points[0].X}}
	if fold == "" {
		rows[0].Before = lines[len(lines)-1].name
	}
	for i, s := range lines {
		after := fold
		switch {
		case i+1 < len(lines):
			after = lines[i+1].name
		case fold == "":
			after = lines[0].name
		}
		rows = append(rows, f.mark(s, after, within)...)
	}
	for i := range rows {
		r := &rows[i]
		r.Number, r.Down, r.In = i+1, max(r.Down, 0), max(r.In, 0) // -0 is rounding
	}
	if fold == "" {
		rows[len(rows)-1].Number = 1
	}
	return rows, nil
}

// frame measures places of the draft as in (X) and down (Y).
type frame struct {
	origin   outline.Point
	in, down outline.Point
	outward  float64 // 1 where outward is to the right of the walk as measured, else -1
}

// frameOn lays the frame on the fold, or upright against the piece's left side,
// and returns the fold's place in the line, -1 where there is none.
func frameOn(line outline.CutLine, name string) (f frame, fold int, err error) {
	fold = slices.IndexFunc(line, func(e outline.CutEdge) bool { return e.Name == name })
	if name != "" && fold < 0 {
		return f, fold, fmt.Errorf("there is no edge %q to lie on the fold", name)
	}
	f = frame{in: outline.Point{X: 1}, down: outline.Point{Y: -1}}
	if fold >= 0 {
		points := line[fold].Points
		a, b := points[0], points[len(points)-1]
		along := b.Sub(a).Unit()
		for _, p := range points {
			if math.Abs(along.Cross(p.Sub(a))) > hair {
				return f, fold, fmt.Errorf("the edge %q is not straight and cannot lie on a fold", line[fold].Name)
			}
		}
		f.down = along
		if along.Y > 0 {
			f.down = along.Scale(-1)
		}
		f.in = outline.Point{X: -along.Y, Y: along.X} // the piece lies on the left of its edges
		f.origin = a
	}
	box := outline.Point{X: math.Inf(1), Y: math.Inf(1)}
	for _, p := range line.Points() {
		q := f.place(p)
		box = outline.Point{X: min(box.X, q.X), Y: min(box.Y, q.Y)}
	}
	if fold >= 0 {
		box.X = 0
	}
	f.origin = f.origin.Add(f.in.Scale(box.X)).Add(f.down.Scale(box.Y))
	return f, fold, nil
}

// ChalkPlace returns where a place of the draft, such as the point of a dart, is
// marked: down and in as [Chalk] has them, mm, in below 0 beyond the fold.
func ChalkPlace(line outline.CutLine, fold string, at outline.Point) (down, in float64, err error) {
	f, _, err := frameOn(line, fold)
	if err != nil {
		return 0, 0, err
	}
	p := f.place(at)
	return p.Y, p.X, nil
}

func (f frame) place(p outline.Point) outline.Point {
	v := p.Sub(f.origin)
	return outline.Point{X: v.Dot(f.in), Y: v.Dot(f.down)}
}

// stretch is a line without a corner in it, in walking order, as measured.
type stretch struct {
	name   string
	points []outline.Point
}

// walk returns the stretches in the order in which they are marked.
func (f *frame) walk(line outline.CutLine, fold int) []stretch {
	var lines []stretch
	for i := range line {
		e := line[(fold+1+i)%len(line)]
		if fold >= 0 && i == len(line)-1 {
			break // the fold itself
		}
		var points []outline.Point
		for _, p := range e.Points {
			points = append(points, f.place(p))
		}
		lines = append(lines, split(e.Name, points)...)
	}
	// the cut line runs anticlockwise; down is turned over against y, so that
	// outward lies to the right as drafted and as measured unless in is mirrored
	mirrored := f.in.Cross(f.down) > 0
	f.outward = -1
	if mirrored {
		f.outward = 1
	}
	first, last := lines[0].points[0], lines[len(lines)-1].points
	if back := fold >= 0 && last[len(last)-1].Y < first.Y || fold < 0; back {
		slices.Reverse(lines)
		for i := range lines {
			slices.Reverse(lines[i].points)
		}
		f.outward = -f.outward
	}
	if fold < 0 {
		top := 0
		for i, s := range lines {
			p, q := s.points[0], lines[top].points[0]
			if p.Y < q.Y-hair || p.Y < q.Y+hair && p.X < q.X {
				top = i
			}
		}
		lines = slices.Concat(lines[top:], lines[:top])
	}
	return lines
}

// split parts a line at its corners.
func split(name string, points []outline.Point) []stretch {
	lines := []stretch{{name, points[:1:1]}}
	for i := 1; i < len(points); i++ {
		last := &lines[len(lines)-1]
		last.points = append(last.points, points[i])
		if i+1 < len(points) {
			u, v := points[i].Sub(points[i-1]), points[i+1].Sub(points[i])
			if math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) > kinked*math.Pi/180 {
				lines = append(lines, stretch{name, points[i : i+1 : i+1]})
			}
		}
	}
	return lines
}

// mark returns the rows by which one stretch is drawn, its start left out.
func (f frame) mark(s stretch, after string, within float64) []ChalkRow {
	a, b := s.points[0], s.points[len(s.points)-1]
	end := ChalkRow{Before: s.name, After: after, Down: b.Y, In: b.X, By: Straight}
	if off(s.points, []outline.Point{a, b}) <= within {
		return []ChalkRow{end}
	}
	if rise, ok := bow(s.points, within); ok {
		end.By, end.Depth = Bowed, f.outward*rise
		return []ChalkRow{end}
	}
	through := even(s.points, within)
	var rows []ChalkRow
	for _, p := range through[1 : len(through)-1] {
		rows = append(rows, ChalkRow{Before: s.name, After: s.name, Down: p.Y, In: p.X, By: Smooth})
	}
	end.By = Smooth
	return append(rows, end)
}

// off is the greatest distance of a line from another that runs beside it.
func off(line, other []outline.Point) float64 {
	var far float64
	for _, p := range line {
		near := math.Inf(1)
		for i := range len(other) - 1 {
			a, v := other[i], other[i+1].Sub(other[i])
			share := 0.0
			if n := v.Dot(v); n > 0 {
				share = min(max(p.Sub(a).Dot(v)/n, 0), 1)
			}
			near = min(near, p.Distance(a.Add(v.Scale(share))))
		}
		far = max(far, near)
	}
	return far
}

// bow returns how far a line lies to the right of the middle of the straight line
// between its ends, and whether the arc of a circle as deep as that follows it.
func bow(line []outline.Point, within float64) (rise float64, ok bool) {
	a, b := line[0], line[len(line)-1]
	chord := b.Sub(a)
	if chord.Norm() < hair {
		return 0, false
	}
	middle, out := a.Toward(b, 0.5), outline.Point{X: chord.Y, Y: -chord.X}.Unit()
	for i := range len(line) - 1 {
		p, q := line[i].Sub(middle).Dot(chord), line[i+1].Sub(middle).Dot(chord)
		if p <= 0 && q > 0 {
			rise = line[i].Toward(line[i+1], p/(p-q)).Sub(middle).Dot(out)
			break
		}
	}
	if math.Abs(rise) < hair || math.Abs(rise) > chord.Norm()/2 { // no more than half a circle
		return 0, false
	}
	const fine = 0.01 // mm
	arc := outline.Edge{Segments: []outline.Segment{outline.Bow(a, b, rise)}}.Flatten(fine)
	return rise, max(off(line, arc), off(arc, line)) <= within
}

// even returns the fewest places evenly spaced along a line, ends included, such
// that straight lines between them follow it.
func even(line []outline.Point, within float64) []outline.Point {
	run := make([]float64, len(line))
	for i := 1; i < len(line); i++ {
		run[i] = run[i-1] + line[i].Distance(line[i-1])
	}
	whole := run[len(run)-1]
	for n := 2; n < len(line); n++ {
		through := line[:1:1]
		far, k := 0.0, 1
		for part := 1; part <= n && far <= within; part++ {
			to := whole * float64(part) / float64(n)
			from := k
			for k < len(line)-1 && run[k] < to {
				k++
			}
			p := line[k-1].Toward(line[k], min(max((to-run[k-1])/(run[k]-run[k-1]), 0), 1))
			if part == n {
				p = line[len(line)-1]
			}
			far = max(far, off(line[from:k], []outline.Point{through[len(through)-1], p}))
			through = append(through, p)
		}
		if far <= within {
			return through
		}
	}
	return line
}
