package figure

// Painter draws plain shapes. The paths and circles it is given have no hatch
// left in their fill: Paint has turned it into strokes before.
type Painter interface {
	Path(Path)
	Circle(Circle)
	Text(Text)
}

// Measurer tells how wide words are: mm, for a type size in mm. What draws the
// words should measure them, or something known to set wider.
type Measurer interface {
	TextWidth(words string, size float64, bold bool) float64
}

// Paint hands the figure's items to p in order, each hatch as strokes after
// the shape's plain fill and before its outline.
func Paint(f Figure, p Painter) {
	for _, it := range f.Items {
		switch it := it.(type) {
		case Path:
			if it.Fill.Hatch == NoHatch {
				p.Path(it)
				continue
			}
			ground, outline := it, it
			ground.Stroke, ground.Fill.Hatch = Stroke{}, NoHatch
			outline.Fill = Fill{}
			if ground.Fill.solid() {
				p.Path(ground)
			}
			if h := hatching(it); len(h.Segments) > 0 {
				p.Path(h)
			}
			if outline.Stroke.Width > 0 {
				p.Path(outline)
			}
		case Circle:
			if it.Fill.Hatch == NoHatch {
				p.Circle(it)
				continue
			}
			Paint(Figure{Items: []Item{it.Outline()}}, p)
		case Text:
			p.Text(it)
		}
	}
}

func (f Fill) solid() bool { return f.White || f.Tint > 0 || f.Thread != nil }

// Grey is the solid fill as a level from 0 (black) to 255 (white), and whether
// there is one at all; a thread colour is told by Thread instead.
func (f Fill) Grey() (level uint8, ok bool) {
	return grey(1 - f.Tint), f.solid()
}

// Grey is the line's level from 0 (black) to 255 (white).
func (s Stroke) Grey() uint8 { return grey(s.Light) }

func grey(light float64) uint8 { return uint8(min(max(light, 0), 1)*255 + 0.5) }
