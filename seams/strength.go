package seams

import "errors"

// ErrNoStrength says that no strength factor is published for a stitch.
var ErrNoStrength = errors.New("no strength factor is known for this stitch")

// SeamStrength estimates the strength per unit length of a superimposed seam
// in woven cloth that is stronger than its thread: stitches per unit × thread
// strength × the factor of the stitch. Pounds and inches give pounds per inch,
// newtons and centimetres newtons per cm. With unlike threads give the weaker.
func (s *Stitch) SeamStrength(density, thread float64) (float64, error) {
	if s.Strength == 0 {
		return 0, ErrNoStrength
	}
	return density * thread * s.Strength, nil
}
