// Package figure holds drawings as values: lines, curves, circles and words in
// millimetres on paper, with the origin at the top left and y growing downwards.
// In go shapes with their stroke and fill; out come SVG bytes, or calls on a
// Painter that draws on other paper. The one idea is that both see the same
// plain strokes, hatching included, so a figure is the same wherever it is shown.
// Start at Fit, which gathers items into a Figure, and at Figure.SVG.
package figure

import (
	"fmt"
	"math"
)

// Point is a place on the paper in mm: X from the left edge, Y from the top.
type Point struct{ X, Y float64 }

// RGB is a colour. It is meant for the colour of a real thread and nothing
// else; everything else on a sheet is black, white and grey.
type RGB struct{ R, G, B uint8 }

// Line widths in mm that stay clear of one another in print at arm's length.
const (
	Hairline = 0.15
	Thin     = 0.25
	Medium   = 0.4
	Bold     = 0.7
)

// Figure is one drawing. Name is its key (lower case, no spaces), Title the
// words for a reader who cannot see it. Width and Height are mm on paper.
// Items are drawn in order, later ones on top.
type Figure struct {
	Name, Title   string
	Width, Height float64
	Items         []Item
}

// Item is a Path, a Circle or a Text.
type Item interface{ item() }

// Stroke says how an outline is drawn. Width is mm; 0 draws no line. Dash
// holds lengths in mm of dash, gap, dash, gap; empty is a solid line. Light
// runs from 0 (black) to 1 (white). Round gives round ends instead of flat
// ones. Thread, when set, takes the place of the grey.
type Stroke struct {
	Width  float64
	Dash   []float64
	Light  float64
	Round  bool
	Thread *RGB
}

// Fill says how a closed shape is filled; the zero value leaves it empty.
// White covers what lies below. Tint runs from 0 (no grey) to 1 (black).
// Hatch draws a pattern over that, with lines Pitch mm apart (0 means 1.6,
// the least is 0.3); a shape more than 3 m from the origin gets none.
// Thread, when set, takes the place of the tint.
type Fill struct {
	White  bool
	Tint   float64
	Hatch  Hatch
	Pitch  float64
	Thread *RGB
}

// Step is what a Segment does.
type Step int

// The steps of a path.
const (
	LineTo  Step = iota // a straight line to To
	CubicTo             // a cubic curve to To with control points C1 and C2
	MoveTo              // lifts the pen and starts a new part at To
)

// Segment is one step of a path. C1 and C2 are read for CubicTo only.
type Segment struct {
	Step       Step
	C1, C2, To Point
}

// Path runs from Start through Segments. Closed joins each part's end to its
// start. Parts that overlap are filled by the even-odd rule, so an inner part
// is a hole.
type Path struct {
	Start    Point
	Segments []Segment
	Closed   bool
	Stroke   Stroke
	Fill     Fill
}

// Circle is a circle of Radius mm.
type Circle struct {
	Centre Point
	Radius float64
	Stroke Stroke
	Fill   Fill
}

// Anchor says which part of a text stands at its point.
type Anchor int

// The anchors of a text.
const (
	Start Anchor = iota
	Middle
	End
)

// Text is one line of words. At is on the baseline; Size is the type size (em)
// in mm, about 2.8 for 8 pt; Turn is degrees anticlockwise about At.
type Text struct {
	At     Point
	Size   float64
	Anchor Anchor
	Bold   bool
	Turn   float64
	Words  string
}

func (Path) item()   {}
func (Circle) item() {}
func (Text) item()   {}

// Check reports the first thing that cannot be drawn: a figure without a
// positive size, or a number that is not finite.
func (f Figure) Check() error {
	if !(f.Width > 0) || !(f.Height > 0) || !finite(f.Width, f.Height) {
		return fmt.Errorf("figure %q is %v by %v mm; both must be positive", f.Name, f.Width, f.Height)
	}
	for i, it := range f.Items {
		if !sound(it) {
			return fmt.Errorf("figure %q: item %d (%T) has a number that is not finite", f.Name, i, it)
		}
	}
	return nil
}

func sound(it Item) bool {
	switch it := it.(type) {
	case Path:
		ok := finite(it.Start.X, it.Start.Y) && it.Stroke.sound() && it.Fill.sound()
		for _, s := range it.Segments {
			ok = ok && finite(s.To.X, s.To.Y, s.C1.X, s.C1.Y, s.C2.X, s.C2.Y)
		}
		return ok
	case Circle:
		return finite(it.Centre.X, it.Centre.Y, it.Radius) && it.Stroke.sound() && it.Fill.sound()
	case Text:
		return finite(it.At.X, it.At.Y, it.Size, it.Turn)
	}
	return false
}

func (s Stroke) sound() bool { return finite(s.Width, s.Light) && finite(s.Dash...) }
func (f Fill) sound() bool   { return finite(f.Tint, f.Pitch) }

func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
