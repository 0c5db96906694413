package outline

import (
	"math"
	"slices"
)

// polynomial holds coefficients, lowest power first.
type polynomial []float64

func (p polynomial) at(t float64) float64 {
	var v float64
	for _, c := range slices.Backward(p) {
		v = v*t + c
	}
	return v
}

func (p polynomial) derivative() polynomial {
	if len(p) < 2 {
		return polynomial{0}
	}
	d := make(polynomial, len(p)-1)
	for i := range d {
		d[i] = float64(i+1) * p[i+1]
	}
	return d
}

func (p polynomial) times(q polynomial) polynomial {
	r := make(polynomial, len(p)+len(q)-1)
	for i, a := range p {
		for j, b := range q {
			r[i+j] += a * b
		}
	}
	return r
}

// plus returns p + k q.
func (p polynomial) plus(k float64, q polynomial) polynomial {
	r := make(polynomial, max(len(p), len(q)))
	copy(r, p)
	for i, c := range q {
		r[i] += k * c
	}
	return r
}

// roots returns the places in (0, 1) where p changes sign, ascending. Between
// two neighbouring extremes p is monotone, so each change is found by halving:
// slow beside closed forms, but it cannot miss one or lose digits.
func roots(p polynomial) []float64 {
	if len(p) < 2 {
		return nil
	}
	marks := append(append([]float64{0}, roots(p.derivative())...), 1)
	var found []float64
	for i := range len(marks) - 1 {
		lo, hi := marks[i], marks[i+1]
		flo, fhi := p.at(lo), p.at(hi)
		if flo == 0 && lo > 0 {
			found = append(found, lo)
			continue
		}
		if flo*fhi >= 0 {
			continue
		}
		for hi-lo > 1e-15 {
			mid := lo + (hi-lo)/2
			if mid <= lo || mid >= hi {
				break
			}
			if math.Signbit(p.at(mid)) == math.Signbit(flo) {
				lo = mid
			} else {
				hi = mid
			}
		}
		found = append(found, lo+(hi-lo)/2)
	}
	return slices.Compact(found)
}
