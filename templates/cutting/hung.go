package cutting

import "math"

// Hung is what cloth becomes along the bias and across it when its threads, square
// to each other as woven, turn towards each other by so many degrees in all: the
// factors of length and of width. The threads keep their own length, so the two
// are the diagonals of a rhombus of which long² + wide² = 2 (geometry; the weave as
// a lattice of pinned bars).
func Hung(shear float64) (long, wide float64) {
	s := math.Sin(shear * math.Pi / 180)
	return math.Sqrt(1 + s), math.Sqrt(1 - s)
}
