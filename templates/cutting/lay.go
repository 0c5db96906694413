package cutting

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"bodkin/seams"
)

// Place says where a piece lies on cloth folded lengthwise.
type Place int

const (
	OnFold Place = iota // its half lies against the fold
	Paired              // one laying cuts two, through both layers
	Single              // cut once, right side up
)

// Laid is a kind of piece to be laid out by its box: along and across the grain
// as the cloth runs, opened out where it lies on the fold.
type Laid struct {
	Name   string
	Across float64 // mm
	Along  float64 // mm
	Area   float64 // mm² of one piece, opened out
	Place  Place
	Count  int // pieces of cloth wanted
}

// Row is a stretch of cloth as long as its longest piece.
type Row struct {
	Open   bool // not folded: its pieces are too wide for half the cloth
	Along  float64
	Across float64 // taken of the half width, or of the whole where open
	Pieces []string
	folds  int // pieces at a fold
}

// Estimate is how much cloth a job takes: between what its area asks for and
// what a simple lay takes. Lengths are mm.
type Estimate struct {
	Least float64 // area over width, or the longest piece: no lay does with less
	Rows  []Row   // the simple lay, in order
	Lay   float64 // length of the rows
}

// Lay lays pieces row by row on cloth folded lengthwise, the longest first, each
// in the first row that still has room, with a gap round each. Pieces wider than
// half the cloth are laid in rows opened out. Two pieces on the fold share a row
// by folding both selvedges to the middle, and have it to themselves. Boxes do not nest into each other
// and rows do not overlap, so a person at the table will need no more than this
// and often less.
//
// Rows by falling length, first fit, take at most twice the area over the width
// and the longest piece where all pieces lie on one layer or all on two (Coffman,
// Garey, Johnson and Tarjan, SIAM Journal on Computing 9, 1980).
//
// The error names a piece that is wider than the cloth, or is no piece.
func Lay(pieces []Laid, width, gap float64) (Estimate, error) {
	if !(width > 0 && gap >= 0) || math.IsInf(width, 1) {
		return Estimate{}, fmt.Errorf("nothing can be laid on cloth %g mm wide", width)
	}
	var e Estimate
	var area float64
	for _, p := range pieces {
		if !(p.Across > 0 && p.Along > 0 && p.Area >= 0 && p.Count >= 0) || math.IsInf(p.Across*p.Along, 1) {
			return Estimate{}, fmt.Errorf("%s, %g by %g mm, cannot be laid", p.Name, p.Across, p.Along)
		}
		if p.Across > width+hair {
			return Estimate{}, fmt.Errorf("%s is %.0f mm wide and the cloth only %.0f mm: turn it, or give it a seam", p.Name, p.Across, width)
		}
		area += p.Area * float64(p.Count)
		if p.Count > 0 {
			e.Least = max(e.Least, p.Along)
		}
	}
	e.Least = max(e.Least, area/width)
	order := slices.Clone(pieces)
	slices.SortStableFunc(order, func(a, b Laid) int { return cmp.Compare(b.Along, a.Along) })
	for _, p := range order {
		for range p.layings() {
			e.put(p, width, gap)
		}
	}
	for i, r := range e.Rows {
		e.Lay += r.Along
		if i > 0 {
			e.Lay += gap
		}
	}
	return e, nil
}

// layings is how often the piece is laid to get all of it.
func (p Laid) layings() int {
	if p.Place == Paired {
		return (p.Count + 1) / 2
	}
	return p.Count
}

// put lays one piece in the first row with room, or in a new one.
func (e *Estimate) put(p Laid, width, gap float64) {
	across, room, open := p.Across, width/2, false
	if p.Place == OnFold {
		across /= 2
	}
	times := 1
	if across > room+hair {
		across, room, open = p.Across, width, true
		if p.Place == Paired {
			times = 2
		}
	}
	for range times {
		at := slices.IndexFunc(e.Rows, func(r Row) bool {
			return r.Open == open && r.Across+gap+across <= room+hair && (open || r.takes(p.Place))
		})
		if at < 0 {
			e.Rows = append(e.Rows, Row{Open: open, Along: p.Along, Across: -gap})
			at = len(e.Rows) - 1
		}
		r := &e.Rows[at]
		r.Across += gap + across
		r.Pieces = append(r.Pieces, p.Name)
		if p.Place == OnFold {
			r.folds++
		}
	}
}

// takes reports whether a folded row has a place of this kind left.
func (r Row) takes(p Place) bool {
	if p == OnFold {
		return r.folds == 0 || r.folds == 1 && len(r.Pieces) == 1
	}
	return r.folds < 2
}

// Buy is a length of cloth to buy so that need is left when it has shrunk by so
// many per cent along, and the cloth's width left when it has shrunk by so many
// across. The error is for a shrinkage below 0 or from 100 % on.
func Buy(need, width, along, across float64) (length, left float64, err error) {
	if length, err = seams.Buy(need, along); err != nil {
		return 0, 0, err
	}
	if !(across >= 0 && across < 100) {
		return 0, 0, fmt.Errorf("a cloth cannot shrink by %v %% across", across)
	}
	return length, width * (1 - across/100), nil
}
