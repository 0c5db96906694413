package cutting_test

import (
	"math"
	"testing"

	"bodkin/templates/cutting"
)

// The diagonals of a rhombus of unit sides: 2 cos and 2 sin of half its corner
// angle, over the diagonal of the square, √2.
func TestHungIsARhombus(t *testing.T) {
	for _, shear := range []float64{0, 0.5, 2, 5, 20} {
		half := (90 - shear) / 2 * math.Pi / 180
		long, wide := cutting.Hung(shear)
		if math.Abs(long-math.Sqrt2*math.Cos(half)) > 1e-12 || math.Abs(wide-math.Sqrt2*math.Sin(half)) > 1e-12 {
			t.Errorf("threads turned by %v degrees: %v long and %v wide", shear, long, wide)
		}
		if math.Abs(long*long+wide*wide-2) > 1e-12 {
			t.Errorf("threads turned by %v degrees have changed their length", shear)
		}
	}
}
