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

// spun is the strength of spun polyester thread in N to the tex: 2.2 lbf at
// Tex 27 (a thread maker's booklet, p. 33). Core-spun thread is a third
// stronger, 2.6 lbf at Tex 24 in the same booklet; cotton and silk vary.
const spun = 2.2 * newtons / 27

// newtons to the pound-force.
const newtons = 4.4482216

// ThreadStrength estimates the strength in N of a thread of a size in tex, as
// that of spun polyester.
func ThreadStrength(tex float64) float64 { return tex * spun }

// SeamStrengthWanted is what a seam should bear, in N to the centimetre, for
// the strain it is under: 0 none, 1 light, 2 worn tight or pulled, 3 seat and
// crotch. Specifications of performance for woven garments ask for about 15 lbf
// to the inch in blouses and 30 in trousers (from memory), which is taken for
// classes 1 and 3; class 2 lies half-way, an estimate.
func SeamStrengthWanted(strain int) float64 {
	lbfToTheInch := [...]float64{0, 15, 22.5, 30}
	return lbfToTheInch[min(max(strain, 0), 3)] * newtons / 2.54
}
