package pdf

import (
	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"
)

// drawing is the finished layout: what stands where on which page. Nothing in
// it depends on how it will be drawn, so the laws of the layout are tested here.
type drawing struct {
	width, height float64    // of the paper, mm
	body          figure.Box // where the text may stand
	pages         []page
	bookmarks     []bookmark
	places        map[string]place // by id
}

type page struct {
	ink   []figure.Item // drawn first, below the words
	words []words
}

// words is one stretch of text in one look. X is its left end and Y its
// baseline, mm from the top left of the page; Size is the type size in mm.
type words struct {
	X, Y, Width, Size float64
	Style             typeface.Style
	Light             float64 // 0 black, 1 white
	Turn              float64 // degrees anticlockwise about X, Y
	Text              string
	To                target
	Role              role
}

// role tells why words are on the page.
type role int

const (
	roleBody   role = iota // the writer's own words, once each
	roleMarker             // an item's number
	roleRepeat             // a table's head again on a later page
	roleFrame              // running head and page number
	roleFigure             // inside a figure
)

func (w words) box() figure.Box {
	return figure.Box{Left: w.X, Top: w.Y - 0.76*w.Size, Right: w.X + w.Width, Bottom: w.Y + typeface.Descent*w.Size}
}

type place struct {
	page int // from 0
	y    float64
}

type bookmark struct {
	title string
	level int // from 0, never more than one deeper than the one before
	place
}
