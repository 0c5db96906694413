package process

import (
	"bodkin/seams/length"
	"bodkin/templates"
)

// roundTheArm is the length in mm of a closed edge from which it goes round the
// free arm of a domestic machine with room to turn it: an estimate, common
// practice, no source.
const roundTheArm = 400

// flatOrRound decides how a closed edge is worked that a later join could close,
// and says why; of an edge that is not closed there is nothing to decide. A band has
// its ends taken in by the join and is always worked flat. A hem is worked flat in a
// child's garment and in a narrow sleeve, else unless neat work is favoured.
func (b *layer) flatOrRound(t *templates.Treatment) (flat bool, because string) {
	closes := "the " + b.titleOfJoin(t.ClosedBy)
	switch {
	case t.ClosedBy == "" && t.Closed:
		return false, "it runs all the way round, so it is worked in the round once its seams are closed"
	case t.ClosedBy == "":
		return false, ""
	case t.Kind == "band":
		return true, "it can be worked flat before " + closes + " closes it and takes in the ends of the band, and flat work is easier to see and press"
	case b.made.Garment.Child:
		return true, "a child's size makes too small a ring to turn under the needle, so it is worked flat before " + closes + " closes it"
	case float64(t.Length) < roundTheArm:
		return true, "a ring of " + length.Format(t.Length, b.room.style) + " is too small to turn under the needle with ease, so it is worked flat before " + closes + " closes it"
	case b.room.favour == "neat":
		return false, "neat work is favoured, and a ring of " + length.Format(t.Length, b.room.style) + " goes round the arm of the machine: worked in the round, it covers the end of " + closes
	}
	return true, "it can be worked flat before " + closes + " closes it, and flat work is easier to see and press"
}
