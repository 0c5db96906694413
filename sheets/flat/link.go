package flat

import (
	"slices"

	"bodkin/process"
)

// link is two stretches of edges that are sewn together: from and to along each, 0
// to 1 in the way in which it is walked.
type link struct {
	seam   *process.Seam
	a, b   process.Run
	af, at float64
	bf, bt float64
	length float64 // mm
}

// other is the link seen from its other side.
func (l link) other() link {
	l.a, l.af, l.at, l.b, l.bf, l.bt = l.b, l.bf, l.bt, l.a, l.af, l.at
	return l
}

// links are the stretches of a seam's two sides that meet, walked beside each other.
func (y *layer) links(s *process.Seam) []link {
	var out []link
	la, lb := y.runsLength(s.Course.A), y.runsLength(s.Course.B)
	if la == 0 || lb == 0 {
		return nil
	}
	a0 := 0.0
	for _, a := range s.Course.A {
		a1 := a0 + y.runsLength([]process.Run{a})/la
		b0 := 0.0
		for _, b := range s.Course.B {
			b1 := b0 + y.runsLength([]process.Run{b})/lb
			from, to := max(a0, b0), min(a1, b1)
			if to-from > 1e-3 && (a.Piece != b.Piece || a.Edge != b.Edge) {
				out = append(out, link{s, a, b, (from - a0) / (a1 - a0), (to - a0) / (a1 - a0), (from - b0) / (b1 - b0), (to - b0) / (b1 - b0), (to - from) * la})
			}
			b0 = b1
		}
		a0 = a1
	}
	return out
}

// runsLength is the length of edges as they are cut, twice where they go on over
// the centre on a piece that is drawn as its half.
func (y *layer) runsLength(runs []process.Run) float64 {
	sum := 0.0
	for _, r := range runs {
		if c := y.pieces[r.Piece]; c != nil {
			if d, ok := c.side(r.Edge); ok {
				sum += d.To
			}
		}
	}
	return sum
}

// whole reports edges of pieces that are drawn whole, not as halves.
func (y *layer) whole(runs []process.Run) bool {
	return !slices.ContainsFunc(runs, func(r process.Run) bool { return y.pieces[r.Piece] == nil || y.pieces[r.Piece].Cut != "one" })
}

// samples are points along a stretch of an edge, in the way in which it is walked.
func (y *layer) samples(r process.Run, from, to float64) []process.Point {
	d, ok := y.pieces[r.Piece].side(r.Edge)
	if !ok {
		return nil
	}
	if r.Back {
		d.Points = slices.Clone(d.Points)
		slices.Reverse(d.Points)
	}
	const steps = 8
	var out []process.Point
	for k := range steps + 1 {
		out = append(out, at(d.Points, from+(to-from)*float64(k)/steps))
	}
	return out
}

// hand tells on which side of an edge the cloth lies as it is walked.
func (y *layer) hand(r process.Run) bool {
	return (area(y.pieces[r.Piece].outline()) > 0) != r.Back
}
