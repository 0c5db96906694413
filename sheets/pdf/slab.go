package pdf

import "bodkin/sheets/figure"

// slab is a strip of the page across its whole width that is never torn: a
// line of text, a row of a table, a figure. Its ink and words stand at their
// place across the page, their y counted from the slab's top.
type slab struct {
	height float64
	before float64 // space wanted above it, but for the top of a page
	keep   bool    // the next slab must be on the same page
	rank   rank    // what ends with it
	step   int     // the step it belongs to, 0 for none
	opener bool    // a line above a heading, left out at the top of a page
	fresh  bool    // begins a page
	head   *slab   // the table's head, to be shown again if this opens a page
	panels []int   // the panels it lies in, the outermost first
	marks  []headingMark
	ink    []figure.Item
	words  []words
}

// rank says how good a place for a page's end is after a slab.
type rank int

const (
	rankLine  rank = iota // within a paragraph
	rankItem              // after a list's item or a table's row
	rankBlock             // after a block
)

// panel is a ground or a bar that lies behind a run of slabs, whatever pages
// they come to stand on.
type panel struct {
	left, width float64
	tint        float64
}

type headingMark struct {
	id, title string
	level     int
}

// onto puts the slab's contents on a page at the given height.
func (s slab) onto(p *page, y float64) {
	p.ink = append(p.ink, figure.Shift(s.ink, 0, y)...)
	for _, w := range s.words {
		w.Y += y
		p.words = append(p.words, w)
	}
}

// again is the slab as it is repeated on a later page.
func (s slab) again() slab {
	repeated := append([]words(nil), s.words...)
	for i := range repeated {
		repeated[i].Role = roleRepeat
	}
	s.words, s.marks = repeated, nil
	return s
}
