package cutting

import (
	"fmt"
	"math"
)

// CircleRadius is the radius at the waist seam of a skirt that is so large a
// share of a full circle: waist / 2π share. The waist is as sewn, with ease,
// seams and overlap; the radius to cut at is less by the waist's allowance.
func CircleRadius(waist, share float64) (float64, error) {
	if !(waist > 0 && share > 0 && share <= 4) || math.IsInf(waist, 1) {
		return 0, fmt.Errorf("no skirt of %g of a circle fits a waist of %g mm", share, waist)
	}
	return waist / (2 * math.Pi * share), nil
}

// CheckCircleRadius returns an error that says how far off a radius is when its
// hole differs from the waist by more than a tolerance, and names the usual
// slip, which is to divide the waist by four.
func CheckCircleRadius(radius, waist, share, tolerance float64) error {
	right, err := CircleRadius(waist, share)
	if err != nil {
		return err
	}
	hole := 2 * math.Pi * share * radius
	if math.Abs(hole-waist) <= tolerance {
		return nil
	}
	words := fmt.Sprintf("a radius of %.0f mm makes a hole %.0f mm round, %+.0f mm against the waist: it should be %.0f mm", radius, hole, hole-waist, right)
	if math.Abs(radius-waist/4) <= tolerance {
		words += "; the waist was divided by 4, where it is divided by 2π and the share of the circle"
	}
	return fmt.Errorf("%s", words)
}
