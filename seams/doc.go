// Package seams holds the knowledge of the bench: cloths, stitches, machines,
// small tools, constructions, needles, thread, interfacing, pressing and the
// acts of the hand, with the rules that choose among them and the arithmetic
// that sizes them.
//
// In goes embedded YAML (and a user's own files in the same form), out comes a
// [Shelf]. The one idea: knowledge is data with its source beside it; a rule is
// a condition over [Facts], an effect, and the words printed as the reason.
// Cloth is judged by its properties, never by its name.
//
// Start at [Load] and [Shelf.Weigh]. Reading the YAML forms strictly is the
// business of seams/form, conditions and formulas of seams/formula, and
// lengths of seams/length.
//
//	shelf/*.yaml            the knowledge, each file with its units at its head
//	load.go, check*.go      reading it, and what entries must be to one another
//	later.go                how a construction is made, read when it is wanted
//	weigh.go, choose.go     which construction, needle, thread, interfacing; which cautions
//	handneedle.go, stay.go  the needle of the hand; tape along a line, a strip in a hem
//	difference.go           what sources differ on
//	press.go                how a cloth is pressed
//	like.go, resemble.go    a cloth told by what differs; the known cloth it resembles
//	told.go, underline.go   a cloth told outside the shelf; two layers sewn as one
//	suits.go                which construction suits which cloth
//	measure.go, works.go    the sizes, passes, checks and figure of a construction
//	thread.go, count.go     thread drawn, lost and wound; thread numbering
//	needle.go, density.go   needle sizes, stitches to the inch
//	strength.go, shrink.go  seam strength, cloth to buy
//	minutes.go              time of the hands and of the machine
package seams
