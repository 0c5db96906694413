//go:build race

package seams_test

// oneIn is how few of the cloths the matrix walks: one in so many, since the
// race detector makes a judgement ten times slower.
const oneIn = 8
