package outline

// Mouth returns the line across the mouth of a dart so that, sewn shut and
// pressed, its raw edge lies along the seam: from the end beside the seam towards
// which it is pressed, the seam's own direction is mirrored in that leg as far as
// the fold, and mirrored in the fold from there to the other leg. Near is that
// end, far the other, on the sheet at the same distance from point; seam is the
// direction in which the seam goes on from near, away from the dart. It returns
// the place of the fold on the line, and false where no such line can be drawn:
// the dart is too wide, or too far from square with the seam.
func Mouth(point, near, far, seam Point) (fold Point, ok bool) {
	middle := near.Toward(far, 0.5)
	fold, ok = foldOn(near, far, near.Sub(point), middle.Sub(point), seam)
	return fold, ok && fold.Sub(point).Dot(middle.Sub(point)) > 0 && fold.Distance(middle) <= near.Distance(point)
}

// PleatMouth is [Mouth] for a pleat or tuck, whose two fold lines run side by
// side along a direction from inside the piece out to the seam.
func PleatMouth(near, far, along, seam Point) (fold Point, ok bool) {
	return foldOn(near, far, along, along, seam)
}

// foldOn meets the seam, mirrored in a leg, with the line of the fold.
func foldOn(near, far, leg, axis, seam Point) (Point, bool) {
	line := near.Add(seam).Reflect(near.Sub(leg), near).Sub(near)
	middle := near.Toward(far, 0.5)
	fold, ok := Meet(near, line, middle, axis)
	return fold, ok && fold.Sub(near).Dot(line) > 0
}
