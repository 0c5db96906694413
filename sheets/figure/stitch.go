package figure

// StitchRow is a row of stitches seen from above, along the path: dashes of
// about the stitch length (mm on paper), fitted so that the row begins and
// ends with a whole stitch. The path's own stroke and fill are replaced, its
// thread colour kept.
func StitchRow(p Path, stitch float64) Path {
	p.Fill = Fill{}
	s := Stroke{Width: Medium, Round: true, Thread: p.Stroke.Thread}
	if stitch > 0 {
		s.Dash = fitted(p.Length(), stitch)
	}
	p.Stroke = s
	return p
}

// gapPart is the part of a stitch that is drawn as its gap, where the thread
// dips through the cloth.
const gapPart = 0.36

// fitted is the dash and gap for a line of the given length, of which n fill
// it when the last has no gap.
func fitted(length, stitch float64) []float64 {
	n := max(1, float64(int((length+gapPart*stitch)/stitch+0.5)))
	each := length / (n - gapPart)
	if !finite(each) || each <= 0 {
		return nil
	}
	return []float64{(1 - gapPart) * each, gapPart * each}
}

// Needle shows where a row of stitches goes in that is sewn now: a slender
// needle of a length in mm on paper, its point on the cloth.
func Needle(above, below Point, long float64) Path {
	back := towards(below, above)
	side := back.left().times(0.09 * long)
	end := above.plus(back.times(long))
	return Polygon(Stroke{Width: Hairline}, Fill{Tint: 0.75}, above, end.plus(side), end.minus(side))
}

// NeedleMark shows in a cross-section where the needle went through: a line
// through the plies from above to below, with a short bar at either end where
// the thread lies on the cloth.
func NeedleMark(above, below Point) []Item {
	s := Stroke{Width: Medium, Round: true}
	bar := towards(above, below).left().times(0.9)
	return []Item{
		Line(above, below, s),
		Line(above.minus(bar), above.plus(bar), s),
		Line(below.minus(bar), below.plus(bar), s),
	}
}
