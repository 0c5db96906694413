package cutting

import "fmt"

// ElasticTake is what waist elastic is shorter than the body: 2 in, then tried
// on and adjusted. Common practice, no source.
const ElasticTake = 2 * 25.4

// Elastic is the length of elastic that grips a body measure, with what its
// join takes. The error is for a body too small to take 2 in from.
func Elastic(body, join float64) (float64, error) {
	if !(body > 2*ElasticTake && join >= 0) {
		return 0, fmt.Errorf("a body measure of %g mm is too small to be gripped by elastic 2 in shorter", body)
	}
	return body - ElasticTake + join, nil
}

// StretchOf is by how many per cent a piece has stretched.
func StretchOf(flat, stretched float64) (float64, error) {
	if !(flat > 0 && stretched >= flat) {
		return 0, fmt.Errorf("a piece of %g mm cannot have stretched to %g mm", flat, stretched)
	}
	return 100 * (stretched - flat) / flat, nil
}

// KnitBand is the cut length of a band for a knitted edge: a share of the edge
// below 1, by which it draws in, and the two allowances of its join. 0.85 to 0.9
// of the edge: common practice, no source.
func KnitBand(edge, share, allowance float64) (float64, error) {
	if !(edge > 0 && share > 0 && share <= 1 && allowance >= 0) {
		return 0, fmt.Errorf("a band of %g times an edge of %g mm cannot be cut", share, edge)
	}
	return edge*share + 2*allowance, nil
}
