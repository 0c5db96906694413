package seams

import (
	"bodkin/seams/formula"
)

func (s *Stitch) prepare(formula.Names) {
	if !s.Formula.IsZero() {
		s.draws = formula.New(s.Formula, formula.Number, drawNames())
	}
}

func (s *Stitch) formulas() []*formula.Formula {
	if s.draws == nil {
		return nil
	}
	return given(s.draws)
}

// drawNames are the names a stitch's thread formula may use: s stitches per
// unit, t thickness of the whole seam, w width of the overedge bight.
func drawNames() formula.Names { return formula.Names{}.With(formula.Number, "s", "t", "w") }

// Draws is thread per unit length of seam, all threads together, from the
// density (stitches per unit), the thickness of the whole seam and the bight
// of an overedge stitch, all three in one unit, mm or cm or inches. Where no
// formula is known for the stitch it is the published ratio whatever the
// density. The paths of the formulas are straight lines and ignore the
// thickness of the thread: see the source beside each. The error is a fault in
// the formula.
func (s *Stitch) Draws(density, thickness, bight float64) (float64, error) {
	if s.Formula.IsZero() {
		return s.Ratio, nil
	}
	f := s.draws
	if f == nil {
		f = formula.New(s.Formula, formula.Number, drawNames())
	}
	return f.Number(formula.Values{"s": density, "t": thickness, "w": bight})
}

// Split is how a length of thread divides between the needles and what is
// below or around: bobbin, loopers and covers.
func (s *Stitch) Split(thread float64) (needle, below float64) {
	return thread * s.NeedleShare, thread * (1 - s.NeedleShare)
}

// Waste is the part of thread lost in starting, ending and breaking, on top of
// what lies in the seam: 15 %, the upper figure of 10 to 15 % added to net
// consumption on a shop floor ("Measuring actual thread consumption",
// apparelscience.com) and the lower of 15 to 20 % for chaining off, breaks and
// repairs (a thread maker's text).
const Waste = 0.15

// WithWaste is net thread with [Waste] added.
func WithWaste(net float64) float64 { return net * (1 + Waste) }

// Bobbins is how many full bobbins hold a length of thread, in metres.
func Bobbins(metres, perBobbin float64) int {
	if metres <= 0 || perBobbin <= 0 {
		return 0
	}
	n := int(metres / perBobbin)
	if float64(n)*perBobbin < metres {
		n++
	}
	return n
}
