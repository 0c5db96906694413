package seams

import "fmt"

// Buy is how much cloth to buy so that need is left after it has shrunk by the
// given percentage of its length: need / (1 − s). The error is for a shrinkage
// below 0 or from 100 % on.
func Buy(need, shrinkage float64) (float64, error) {
	if shrinkage < 0 || shrinkage >= 100 {
		return 0, fmt.Errorf("a cloth cannot shrink by %v %%", shrinkage)
	}
	return need / (1 - shrinkage/100), nil
}
