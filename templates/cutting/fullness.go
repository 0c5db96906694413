package cutting

import (
	"fmt"
	"math"
)

// Ruffle is the length of strip that gathers to an edge: the edge times the
// fullness, which is 1 or more, plus what the ends take.
//
// 1 1/2 to 3 times by cloth and taste (common practice, no source); 1 1/3 to
// 1 1/2 on underwear: L. I. Baldt, Clothing for Women, 1916.
func Ruffle(edge, fullness, ends float64) (float64, error) {
	if !(edge > 0 && fullness >= 1 && ends >= 0) || math.IsInf(edge*fullness+ends, 1) {
		return 0, fmt.Errorf("an edge of %g mm cannot take a ruffle of %g times its length", edge, fullness)
	}
	return edge*fullness + ends, nil
}

// Pleats are equal pleats along an edge.
type Pleats struct {
	Count int
	Each  float64 // mm of the finished edge that one pleat takes
	Flat  float64 // mm of cloth before pleating
}

// KnifePleats divides a finished edge into pleats as near to the wanted spacing
// as whole pleats come, each with two depths of cloth folded under it. A depth
// equal to the spacing takes three times the edge, and a greater one would lie
// over its neighbour and is refused.
func KnifePleats(finished, spacing, depth float64) (Pleats, error) {
	if !(finished > 0 && spacing > 0 && depth > 0) || math.IsInf(finished, 1) {
		return Pleats{}, fmt.Errorf("no pleats %g mm apart and %g mm deep go on an edge of %g mm", spacing, depth, finished)
	}
	p := Pleats{Count: max(1, int(math.Round(finished/spacing)))}
	p.Each = finished / float64(p.Count)
	if depth > p.Each+hair {
		return Pleats{}, fmt.Errorf("pleats %.1f mm deep lie over each other when they are only %.1f mm apart", depth, p.Each)
	}
	p.Flat = finished + 2*depth*float64(p.Count)
	return p, nil
}

// PleatTake is how much each of n pleats takes up at one level of a skirt, when
// so much cloth is to be brought to so much, both measured on the same half, and
// a panel pleat has taken its part already.
//
// Source: I. D. Conover, A Complete Course in Dressmaking, vol. 5, Skirts, 1922.
func PleatTake(cloth, wanted, panel float64, n int) (float64, error) {
	take := cloth - wanted - panel
	if n < 1 || !(take >= 0) || math.IsInf(take, 1) {
		return 0, fmt.Errorf("%g mm of cloth cannot be pleated down to %g mm in %d pleats", cloth-panel, wanted, n)
	}
	return take / float64(n), nil
}
