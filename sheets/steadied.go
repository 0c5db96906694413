package sheets

import (
	"slices"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// steadiedTint is the grey of what interfacing steadies: light enough for the
// piece's words upon it.
const steadiedTint = 0.13

// steadiedBy is the interfacing of a piece as a whole or of half its width; not
// of a line on it or of the strip in its hem.
func (c *composer) steadiedBy(p process.Piece) (process.Interfacing, bool) {
	k := slices.IndexFunc(c.plan.Interfacing, func(f process.Interfacing) bool {
		// A detail may have its piece's name, and tapes lie along a line.
		return f.Piece == p.Name && !f.Tape && f.Cut[1] == p.NetHeight && (f.Part == "whole" || f.Part == "half")
	})
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
	return leftOf(p.Net, contourOf(p.Net, 1).box().Left+f.Cut[0])
}

// leftOf is the part of an outline left of an upright line: each corner on that
// side is kept, and each crossing added (clipping at a half-plane as Sutherland
// and Hodgman describe it, 1974).
func leftOf(outline []process.Point, x float64) []process.Point {
	var out []process.Point
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if a.X <= x {
			out = append(out, a)
		}
		if (a.X < x && b.X > x) || (a.X > x && b.X < x) {
			out = append(out, process.Point{X: x, Y: a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)})
		}
	}
	return out
}

// steadied shades what interfacing lies under.
func (f *pieceFigure) steadied() []figure.Item {
	by, ok := f.c.steadiedBy(f.p)
	if !ok {
		return nil
	}
	area := contourOf(steadiedArea(f.p, by), f.scale).moved(f.at.X, f.at.Y)
	return []figure.Item{figure.Polygon(figure.Stroke{}, figure.Fill{Tint: steadiedTint}, area...)}
}
