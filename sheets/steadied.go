package sheets

import (
	"slices"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// Greys of what interfacing steadies: light enough for the piece's words upon it; a
// tape is narrow, and darker so that it is seen.
const (
	steadiedTint = 0.13
	tapeTint     = 0.35
)

// steadiedBy is the interfacing of a piece as a whole or of half its width; not
// of a line on it or of the strip in its hem.
func (c *composer) steadiedBy(p process.Piece) (process.Interfacing, bool) {
	// A detail may have its piece's name, and tapes lie along a line.
	k := slices.IndexFunc(c.plan.Interfacing, func(f process.Interfacing) bool { return steadies(f, p) })
	if k < 0 {
		return process.Interfacing{}, false
	}
	return c.plan.Interfacing[k], true
}

// steadiedArea is what lies under the interfacing of a piece, inside its seam
// line, in mm of the piece as it is drafted, half of it where it is cut on the
// fold. Half a piece is that of its outer edge, from which such pieces are drafted
// to the right.
func steadiedArea(p process.Piece, f process.Interfacing) []process.Point {
	if f.Part == "whole" {
		return p.Net
	}
	left := contourOf(p.Net, 1).box().Left
	at := left + f.Cut[0]
	return clipped(p.Net, process.Point{X: at}, process.Point{X: at, Y: 1}, process.Point{X: left})
}

// steadied shades what interfacing lies under: the piece or half of it, the strip in a
// hem, what is turned in at an edge, and darker the tapes along its seam lines.
func (f *pieceFigure) steadied() []figure.Item {
	var out []figure.Item
	if by, ok := f.c.steadiedBy(f.p); ok {
		area := contourOf(steadiedArea(f.p, by), f.scale).moved(f.at.X, f.at.Y)
		out = append(out, figure.Polygon(figure.Stroke{}, figure.Fill{Tint: steadiedTint}, area...))
	}
	for _, b := range f.c.bandsOn(f.p) {
		var line []figure.Point
		for _, q := range b.points {
			line = append(line, f.point(q))
		}
		out = append(out, figure.Polygon(figure.Stroke{}, figure.Fill{Tint: b.tint}, line...))
	}
	return out
}
