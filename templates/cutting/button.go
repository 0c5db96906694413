package cutting

import (
	"fmt"
	"math"
	"slices"
)

// ButtonholeLength is the button's diameter and thickness and a little ease: 3 mm
// for a worked hole (1/8 in, the Complete photo guide to sewing, Creative
// Publishing), none for a bound one. Try it on a scrap with the same layers.
func ButtonholeLength(diameter, thickness, ease float64) (float64, error) {
	if !(diameter > 0 && thickness >= 0 && ease >= 0) {
		return 0, fmt.Errorf("a button %g mm wide and %g mm thick has no buttonhole", diameter, thickness)
	}
	return diameter + thickness + ease, nil
}

// ButtonExtension is how far the cloth must go beyond the centre line: at least
// three quarters of the button's diameter (the same source).
func ButtonExtension(diameter float64) float64 { return 0.75 * diameter }

// ButtonholeSpan is where a buttonhole across the front lies, measured from the
// centre line: from so far towards the edge, 3 mm, to so far into the piece (the
// same source). The button's shank then pulls to the centre line.
func ButtonholeSpan(length float64) (towardsEdge, inward float64) {
	const past = 3
	return past, length - past
}

// ButtonPlaces divides a front into buttons: one at each place where it must be
// held, such as neck, bust and waist, and between two of these as many, equally
// spaced, as keep the gaps within the widest. Places are distances down from the
// top, in any order. It returns them all, topmost first.
//
// The order, fixed places first and the rest divided evenly, is common practice,
// no source.
func ButtonPlaces(must []float64, widest float64) ([]float64, error) {
	fixed := slices.Clone(must)
	slices.Sort(fixed)
	if len(fixed) == 0 || !(widest > 0) || slices.ContainsFunc(fixed, func(p float64) bool { return math.IsNaN(p) || math.IsInf(p, 0) }) {
		return nil, fmt.Errorf("buttons want at least one place and a widest gap above 0, not %v and %g mm", must, widest)
	}
	const most = 200 // buttons between two places: beyond it the gap is a mistake
	places := fixed[:1:1]
	for i := 1; i < len(fixed); i++ {
		from, to := fixed[i-1], fixed[i]
		if to-from < hair {
			continue
		}
		n := math.Ceil((to-from)/widest - 1e-9)
		if n > most {
			return nil, fmt.Errorf("a widest gap of %g mm wants %.0f buttons between %g and %g mm", widest, n, from, to)
		}
		for k := 1.0; k < n; k++ {
			places = append(places, from+(to-from)*k/n)
		}
		places = append(places, to)
	}
	return places, nil
}
