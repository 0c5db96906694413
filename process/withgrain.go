package process

import (
	"math"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/templates"
	"bodkin/templates/outline"
)

// Figures for the way a seam is stitched, all estimates.
const (
	acrossPart = 0.5  // a seam that goes so far out of the grain for its height runs across
	uprightTo  = 0.02 // one that goes no farther out of it stretches neither way
	widerBy    = 1.02 // a piece is wide at one end and narrow at the other from here
	crotchTurn = 60   // degrees: a seam that bends more has no one way
	nearEnd    = 0.05 // of a seam's height, from its end to where the piece is measured
)

// withGrain says at the first row of a seam which way it is stitched: with the grain,
// from where the piece is wide to where it is narrow, so from the hem to the waist;
// all seams of legs from the bottom to the top; the same on both sides. Seams that run
// across the garment, on the thread, or on pieces laid on the bias have no such way.
//
// Source: Apparel: Design, Textiles & Construction, Goodheart-Willcox, 2012.
func (o *operator) withGrain(i int, l *line, act *seams.Act) string {
	if l.work != joining || act.Name != "stitch" ||
		slices.ContainsFunc(o.span[i], func(k int) bool { return o.ops[k].Does == "stitch" }) {
		return ""
	}
	sew := " Sew "
	if l.copies > 1 {
		sew += "both "
	}
	switch o.wayOf(l) {
	case 1:
		return sew + "from the lower end up, with the grain."
	case -1:
		return sew + "from the upper end down, with the grain."
	}
	return ""
}

// wayOf is 1 for a seam that is stitched upwards, -1 for one downwards, 0 for neither.
func (o *operator) wayOf(l *line) int {
	at := slices.IndexFunc(o.made.Pieces, func(p templates.Piece) bool { return p.Name == l.join.A[0].Piece })
	p := o.made.Pieces[at]
	if p.Bias || l.facts.Join.Turning > crotchTurn || l.join.Closed {
		return 0
	}
	var low, high outline.Point
	for k, part := range l.join.A {
		e, ok := p.Outline.Edge(part.Edge)
		if part.Piece != p.Name || !ok {
			return 0
		}
		for j, q := range []outline.Point{e.From(), e.To()} {
			if k+j == 0 {
				low, high = q, q
			}
			if q.Y < low.Y {
				low = q
			}
			if q.Y > high.Y {
				high = q
			}
		}
	}
	up, out := high.Y-low.Y, math.Abs(high.X-low.X)
	if up <= 0 || out > acrossPart*up || out < uprightTo*up {
		return 0
	}
	if o.ofLegs(p.Name) {
		return 1
	}
	below, above := spanAt(p.Outline, low.Y+nearEnd*up), spanAt(p.Outline, high.Y-nearEnd*up)
	switch {
	case below > widerBy*above:
		return 1
	case above > widerBy*below:
		return -1
	}
	return 0
}

// ofLegs reports a piece that an inseam lies on.
func (o *operator) ofLegs(piece string) bool {
	return slices.ContainsFunc(o.lines, func(l *line) bool {
		return l.work == joining && strings.Contains(l.name, "inseam") && slices.Contains(l.pieces, piece)
	})
}

// spanAt is how wide a piece is at a level, mm, hollows between left out.
func spanAt(shape outline.Outline, y float64) float64 {
	left, right := math.Inf(1), math.Inf(-1)
	points := shape.Flatten(chalkWithin)
	for k, a := range points {
		b := points[(k+1)%len(points)]
		if (a.Y > y) == (b.Y > y) {
			continue
		}
		x := a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)
		left, right = min(left, x), max(right, x)
	}
	return max(right-left, 0)
}
