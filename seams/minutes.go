package seams

import "fmt"

// SewingMinutes is the time a machine needs for the stitches alone: their
// number over the speed in stitches a minute. It is the least there can be; no
// start, stop or handling is in it (published as machine time = stitches per
// inch × inches / revolutions per minute, in articles on sewing time).
func SewingMinutes(lengthMM, stitchMM, speed float64) float64 {
	if lengthMM <= 0 || stitchMM <= 0 || speed <= 0 {
		return 0
	}
	return lengthMM / stitchMM / speed
}

// The additions to handling time for a cloth that is hard to handle, as parts
// of it. They are estimates: no figure is published.
const (
	slipAdds  = 0.15 // for each degree of slip
	sheerAdds = 0.10 // for a sheer cloth
	pileAdds  = 0.10 // for pile, which creeps and is pressed with care
	knitAdds  = 0.05 // for a knit whose edges curl
)

// Handling is by how much a cloth lengthens the time of the hands: 1 for a
// cloth that stays put, up to about 1.6. An estimate, no published figure.
func Handling(c Cloth) float64 {
	f := 1 + slipAdds*float64(c.Slip)
	if c.Sheerness >= 2 {
		f += sheerAdds
	}
	if c.Pile {
		f += pileAdds
	}
	if c.Knit() {
		f += knitAdds
	}
	return f
}

// ActMinutes is the time of an act over a length for a cloth, and in words
// what the figure rests on. For machine acts the stitches themselves are not
// in it; add [SewingMinutes].
func ActMinutes(act Act, lengthMM float64, cloth Cloth) (minutes float64, basis string) {
	f := Handling(cloth)
	minutes = act.Start + act.PerMetre*max(0, lengthMM)/1000*f
	if f == 1 {
		return minutes, act.Basis
	}
	return minutes, fmt.Sprintf("%s; × %.2f along the edge because %s is harder to handle (estimate, no published figure)", act.Basis, f, cloth.Title)
}
