package cutting

import (
	"fmt"
	"math"
)

// hair is the difference below which two lengths are one, mm.
const hair = 1e-6

// Strip is a band, binding or ruffle to be cut from cloth of a given width.
// All lengths are mm.
type Strip struct {
	Length   float64 // wanted, joins not counted
	Width    float64 // as cut
	Cloth    float64 // usable width of the cloth
	Join     float64 // allowance on both sides of a join
	Bias     bool    // cut at 45 degrees instead of selvedge to selvedge
	Diagonal bool    // joined at 45 degrees to the strip instead of square to it
}

// StripPlan says how a strip is made up when the cloth does not give it in one.
type StripPlan struct {
	Lengths int     // pieces that make one strip
	Each    float64 // mm, cut length of each piece, measured along its middle
	Joins   int
	Loss    float64 // mm of length that one join takes up
	Longest float64 // mm, the longest piece that the cloth gives
	Along   float64 // mm of the cloth's length that all pieces take, laid side by side
}

// Plan divides the strip into equal pieces, as few as will do.
//
// Pieces cut straight lie across the cloth, so the longest is the cloth's width.
// Pieces on the bias lie at 45 degrees with their ends along the selvedges: the
// longest is √2 times the cloth's width; with square ends it is shorter by the
// strip's width. A square join takes two allowances. A diagonal join of bias
// pieces follows the thread of their ends and takes two allowances times √2;
// of straight pieces, laid across each other at right angles and stitched from
// corner to corner, it takes the strip's width, and what lies beyond is trimmed.
//
// The error is for a length, width or allowance that is no length, and for
// cloth too narrow to gain anything by a join.
//
// Source: plane geometry; joins on the straight thread as School Sewing (public
// domain) has them.
func (s Strip) Plan() (StripPlan, error) {
	for _, l := range []struct {
		what string
		mm   float64
		zero bool
	}{{"length", s.Length, false}, {"width", s.Width, false}, {"cloth", s.Cloth, false}, {"join", s.Join, true}} {
		if !(l.mm > 0 || l.zero && l.mm == 0) || math.IsInf(l.mm, 1) {
			return StripPlan{}, fmt.Errorf("a strip cannot be planned from a %s of %g mm", l.what, l.mm)
		}
	}
	p := StripPlan{Longest: s.Cloth, Loss: 2 * s.Join, Lengths: 1}
	switch {
	case s.Bias && s.Diagonal:
		p.Longest, p.Loss = s.Cloth*math.Sqrt2, 2*s.Join*math.Sqrt2
	case s.Bias:
		p.Longest = s.Cloth*math.Sqrt2 - s.Width
	case s.Diagonal:
		p.Loss = s.Width
	}
	if s.Length > p.Longest+hair {
		if p.Longest <= p.Loss+hair {
			return StripPlan{}, fmt.Errorf("cloth of %.0f mm is too narrow: a join takes %.0f mm and a piece is only %.0f mm long", s.Cloth, p.Loss, max(p.Longest, 0))
		}
		p.Lengths = int(math.Ceil((s.Length-p.Loss)/(p.Longest-p.Loss) - 1e-9))
	}
	p.Joins = p.Lengths - 1
	p.Each = (s.Length + float64(p.Joins)*p.Loss) / float64(p.Lengths)
	switch side := float64(p.Lengths) * s.Width; {
	case s.Bias && s.Diagonal:
		p.Along = BiasAlong(p.Each, side)
	case s.Bias: // square ends stick out by half the width on either side
		p.Along = (p.Each+s.Width)/math.Sqrt2 + (side-s.Width)*math.Sqrt2
	default:
		p.Along = side
	}
	return p, nil
}

// BiasAlong is the length of cloth that bias strips take side by side, with their
// ends along the selvedges, from the longest of them and the sum of their widths.
func BiasAlong(longest, widths float64) float64 {
	return longest/math.Sqrt2 + widths*math.Sqrt2
}
