package outline

import (
	"errors"
	"math"
	"slices"
)

// smooth is the turn between two edges, in degrees, up to which they count as
// one line run on.
const smooth = 0.5

// runsOn is the turn at a corner, in degrees, up to which a hem goes on from the
// edge beside it, as a slit does from its seam or a rising hem from the side. What
// is turned up then lies along that edge and not against it, and has nothing to be
// mirrored in. Common practice, no source.
const runsOn = 30

// corner joins the end of one run's cut line to the start of the next.
func corner(prev, next *run) error {
	for _, form := range [2]func(edge, neighbour *run) (bool, error){endOnFold, turnUp} {
		if done, err := form(next, prev); done || err != nil {
			return err
		}
		// the same corner seen in a mirror, where prev comes second
		p, n := prev.mirrored(), next.mirrored()
		if done, err := form(p, n); done || err != nil {
			prev.line, next.line = backward(p.line), backward(n.line)
			if shape, ok := errors.AsType[*ShapeError](err); ok {
				shape.At.X = -shape.At.X
			}
			return err
		}
	}
	if done, err := mitre(prev, next); done || err != nil {
		return err
	}
	square(prev, next)
	return nil
}

// square produces both lines until they meet, or trims them where they cross.
func square(prev, next *run) {
	end, start := prev.line[len(prev.line)-1], next.line[0]
	turn := degrees(angle(prev.end, next.start))
	if turn < 0 && prev != next && trim(prev, next) {
		return
	}
	reach := mitreLimit * max(prev.allowance.Width, next.allowance.Width)
	on, back := reach, reach // how far each line is produced
	m, ok := Meet(end, prev.end, start, next.start)
	if ok {
		on, back = m.Sub(end).Dot(prev.end), start.Sub(m).Dot(next.start)
	}
	near := ok && m.Distance(prev.to) <= reach
	switch {
	case math.Abs(turn) <= smooth,
		turn > 0 && (on < -gap || back < -gap),
		turn < 0 && !near:
		// a step, so that neither allowance is cut into
		next.line = appendNew([]Point{end}, next.line...)
	case turn > 0 && near:
		prev.line = appendNew(prev.line, m)
		next.line = appendNew([]Point{m}, next.line...)
	case turn > 0:
		p := end.Add(prev.end.Scale(min(on, reach)))
		prev.line = appendNew(prev.line, p)
		next.line = appendNew([]Point{p, start.Sub(next.start.Scale(min(back, reach)))}, next.line...)
	default:
		// hollow, and one line falls short of the other: produce it, then trim
		const over = 10 * gap // so that the crossing is not lost to rounding
		prev.line = appendNew(prev.line, end.Add(prev.end.Scale(max(on+over, 0))))
		next.line = appendNew([]Point{start.Sub(next.start.Scale(max(back+over, 0)))}, next.line...)
		if prev == next || !trim(prev, next) {
			next.line = appendNew([]Point{prev.line[len(prev.line)-1]}, next.line...)
		}
	}
}

// trim cuts two crossing lines off at the crossing nearest their corner, and
// reports whether there was one.
func trim(prev, next *run) bool {
	for i := len(prev.line) - 2; i >= 0; i-- {
		for j := range len(next.line) - 1 {
			if p, ok := intersect(prev.line[i], prev.line[i+1], next.line[j], next.line[j+1]); ok {
				prev.line = appendNew(prev.line[:i+1:i+1], p)
				next.line = appendNew([]Point{p}, next.line[j+1:]...)
				return true
			}
		}
	}
	return false
}

// endOnFold ends the neighbour's cut line on the line of the fold produced. The
// fold comes after the neighbour. It reports false where the edge is no fold.
func endOnFold(fold, neighbour *run) (bool, error) {
	if fold.allowance.Manner != Folded || neighbour.allowance.Width == 0 {
		return false, nil
	}
	line, ok := neighbour.toLine(fold.from, fold.start)
	if !ok {
		return false, &ShapeError{[]string{neighbour.name, fold.name}, "they meet at too sharp an angle for a fold", fold.from}
	}
	neighbour.line = line
	fold.line[0] = line[len(line)-1]
	return true, nil
}

// turnUp forms the corner where the neighbour's cut line ends at a hem: it is
// brought to the line the hem turns on, mirrored in it, and cut off at the hem's
// own cut line. The hem comes after the neighbour. It reports false where the
// edge is no hem, where the neighbour is one too, and where the hem runs on from it.
func turnUp(hem, neighbour *run) (bool, error) {
	if hem.allowance.Manner != Turned || hem.allowance.Width == 0 || neighbour.allowance.Manner != Plain {
		return false, nil
	}
	if math.Abs(degrees(angle(neighbour.end, hem.start))) <= runsOn {
		return false, nil
	}
	fail := func(what string) (bool, error) {
		return false, &ShapeError{[]string{neighbour.name, hem.name}, what, hem.from}
	}
	at, along := hem.from, hem.start
	upright, ok := neighbour.toLine(at, along)
	if !ok {
		return fail("they meet at too sharp an angle for the hem to turn up")
	}
	turned := make([]Point, len(upright))
	for i, p := range upright {
		turned[len(upright)-1-i] = p.Reflect(at, at.Add(along))
	}
	// both are produced far enough to cross where they can
	far := 4*hem.allowance.Width + neighbour.allowance.Width
	last := len(turned) - 1
	away := turned[last].Sub(turned[last-1]).Unit()
	turned = append(turned, turned[last].Add(away.Scale(far)))
	edge := append([]Point{hem.line[0].Sub(along.Scale(far))}, hem.line...)
	for i := range len(turned) - 1 {
		for j := range len(edge) - 1 {
			if p, ok := intersect(turned[i], turned[i+1], edge[j], edge[j+1]); ok {
				neighbour.line = appendNew(appendNew(upright, turned[:i+1]...), p)
				hem.line = appendNew([]Point{p}, edge[j+1:]...)
				return true, nil
			}
		}
	}
	return fail("the turned hem does not fit beside the seam here")
}

// toLine returns the cut line of r brought exactly to a line, produced or
// trimmed; the line passes through the end of r's net edge and has the shape on
// its left.
func (r *run) toLine(at, along Point) ([]Point, bool) {
	inside := func(p Point) float64 { return along.Cross(p.Sub(at)) }
	line := slices.Clone(r.line)
	if len(line) < 2 { // used up by the corner at its other end
		return nil, false
	}
	for len(line) > 2 && inside(line[len(line)-2]) <= 0 {
		line = line[:len(line)-1]
	}
	last := len(line) - 1
	short := inside(line[last]) > 0
	direction := r.end
	if !short {
		direction = line[last].Sub(line[last-1])
	}
	p, ok := Meet(line[last], direction, at, along)
	if !ok || inside(line[last-1]) <= 0 || p.Distance(at) > 2*mitreLimit*max(r.allowance.Width, 1) {
		return nil, false
	}
	if !short {
		line = line[:last]
	}
	return append(line, p), true
}

// mirrored is the run seen in a mirror: the other way round, so that outward
// stays on its right.
func (r *run) mirrored() *run {
	flip := func(p Point) Point { return Point{-p.X, p.Y} }
	m := *r
	m.from, m.to = flip(r.to), flip(r.from)
	m.start, m.end = flip(r.end).Scale(-1), flip(r.start).Scale(-1)
	m.line = backward(r.line)
	return &m
}

// backward is a line in a mirror, run the other way.
func backward(line []Point) []Point {
	b := make([]Point, len(line))
	for i, p := range line {
		b[len(line)-1-i] = Point{-p.X, p.Y}
	}
	return b
}
