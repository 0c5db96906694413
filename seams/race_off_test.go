//go:build !race

package seams_test

// oneIn is how few of the cloths the matrix walks: one in so many.
const oneIn = 1
