package cutting

import (
	"fmt"
	"math"
)

// OtherWidth is how much cloth of another width holds the same area. It is an
// estimate: the widest piece must still fit, and where the widths differ much,
// the cloth has one way up, or sleeves are cut in one with the body, 1/4 yd is
// added (the fabric conversion chart, which keeps to the area law within that
// reserve up to 4 yd of narrow cloth, and less closely beyond).
func OtherWidth(length, from, to float64) (float64, error) {
	if !(length > 0 && from > 0 && to > 0) || math.IsInf(length*from/to, 1) {
		return 0, fmt.Errorf("%g mm of cloth %g mm wide cannot be had %g mm wide", length, from, to)
	}
	return length * from / to, nil
}
