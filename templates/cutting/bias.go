package cutting

import (
	"fmt"
	"math"
)

// AreaRule is the strip length that a square of cloth gives by the rule of
// thumb side × side / strip width. It counts every thread and no seam, so it is
// an upper bound of what can be cut; plan with [BiasFromSquare] or
// [ContinuousBias].
func AreaRule(side, width float64) float64 { return side * side / width }

// AreaRuleSide is the side of a square by the same rule, √(length × width): a
// lower bound of what is needed.
func AreaRuleSide(length, width float64) float64 { return math.Sqrt(length * width) }

// ContinuousBias is the length of strip that a square gives by the continuous
// method: cut along a diagonal, joined to a slanted panel, marked in strips,
// joined to a tube with the lines one strip out of step, and cut round and
// round. The two joins take twice the seam of the square's side; of what is
// left, only whole strips between the bias edges count.
//
// Source: geometry of the panel, whose bias edges are √2 times the side and lie
// side/√2 apart; the rule n = √(length / 2 width), side = n width √2 + two
// seams is common practice, no source.
func ContinuousBias(side, width, seam float64) (length float64, rounds int, err error) {
	if !(side > 0 && width > 0 && seam >= 0) || math.IsInf(side, 1) {
		return 0, 0, fmt.Errorf("no bias comes from a square of %g mm in strips of %g mm with seams of %g mm", side, width, seam)
	}
	left := side - 2*seam
	rounds = int(math.Floor(left/(width*math.Sqrt2) + 1e-9))
	if rounds < 1 {
		return 0, 0, fmt.Errorf("a square of %g mm is too small for a strip of %g mm", side, width)
	}
	return float64(rounds) * left * math.Sqrt2, rounds, nil
}

// ContinuousSquare is the side of the least square that gives a length of strip
// by the continuous method.
func ContinuousSquare(length, width, seam float64) (side float64, err error) {
	if !(length > 0 && width > 0 && seam >= 0) || math.IsInf(length, 1) {
		return 0, fmt.Errorf("no square gives %g mm of strip %g mm wide with seams of %g mm", length, width, seam)
	}
	// n rounds want a side of at least n width √2 and give n √2 times the side
	n := math.Max(1, math.Floor(math.Sqrt(length/(2*width))))
	best := math.Inf(1)
	for _, k := range []float64{n, n + 1} {
		best = min(best, max(k*width, length/(2*k))*math.Sqrt2)
	}
	return best + 2*seam, nil
}

// BiasStrips are strips cut one by one from a square, side by side from the
// diagonal outwards on both sides of it.
type BiasStrips struct {
	Each  []float64 // mm along the middle, ends on the straight thread, longest first
	Joins int
	Total float64 // mm, joined with diagonal seams
}

// BiasFromSquare returns the strips that a square gives and how long they are
// when all are joined on the thread with the given seam. Strips too short to
// lengthen the whole by a join are left out.
//
// Source: plane geometry; the k-th strip from the diagonal has its middle
// k-½ widths away, where the square is side √2 less twice that across.
func BiasFromSquare(side, width, seam float64) (BiasStrips, error) {
	if !(side > 0 && width > 0 && seam >= 0) || math.IsInf(side, 1) {
		return BiasStrips{}, fmt.Errorf("no bias comes from a square of %g mm in strips of %g mm with seams of %g mm", side, width, seam)
	}
	loss := 2 * seam * math.Sqrt2
	var b BiasStrips
	for k := 1.0; k*width <= side/math.Sqrt2+hair; k++ {
		each := side*math.Sqrt2 - (2*k-1)*width
		if each <= loss {
			break
		}
		b.Each = append(b.Each, each, each)
		b.Total += 2 * (each - loss)
	}
	if len(b.Each) == 0 {
		return BiasStrips{}, fmt.Errorf("a square of %g mm is too small for a strip of %g mm", side, width)
	}
	b.Joins = len(b.Each) - 1
	b.Total += loss // one join fewer than strips
	return b, nil
}
