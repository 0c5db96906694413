package sheets

import (
	"bodkin/process"
	"bodkin/sheets/figure"
)

// Sizes of a strip's figure on paper, in mm.
const (
	stripWide  = 160
	stripLeast = 7 // high, so that words fit in it
	stripMost  = 14
)

// stripFigure draws the lengths that are joined into one strip: along it to
// scale, across it high enough for words.
func (c *composer) stripFigure(s process.Strip) {
	w := c.say.figures
	scale := reduction(s.CutLength, stripWide)
	c.draw(func() figure.Figure {
		return figure.Fit(c.slug("strip", s.Name), fillText(w.stripAlt, "strip", s.Title), c.stripItems(s, scale), 1.5, c.measure)
	}, say(w.stripCaption, values{"strip": plain(upper(s.Title)), "width": c.mm(s.CutWidth), "scale": c.scaleWords(scale)}))
}

// reduction is the largest usual scale at which a length stays on the sheet.
func reduction(long, room float64) float64 {
	for _, n := range []float64{1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100} {
		if long/n <= room {
			return 1 / n
		}
	}
	return room / long
}

func (c *composer) stripItems(s process.Strip, scale float64) []figure.Item {
	long := s.CutLength * scale
	high := min(max(s.CutWidth*scale, stripLeast), stripMost)
	lean := 0.0
	if s.JoinKind == "diagonal" {
		lean = high
	}
	fine := figure.Stroke{Width: figure.Thin}
	items := []figure.Item{figure.Rect(figure.Point{}, long, high, figure.Stroke{Width: figure.Medium}, figure.Fill{White: true})}
	n := max(s.Lengths, 1)
	each := long / float64(n)
	for i := range n {
		x := each * float64(i)
		if i > 0 {
			items = append(items, figure.Line(figure.Point{X: x + lean/2}, figure.Point{X: x - lean/2, Y: high}, fine))
			items = append(items, figure.Text{At: figure.Point{X: x + lean/2, Y: -1.2}, Size: keyType, Anchor: figure.Middle, Words: c.say.figures.joins})
		}
		for _, words := range []string{number(i+1) + " · " + c.mmText(s.EachLength), number(i + 1)} {
			if c.measure.TextWidth(words, sectionType, false) < each-lean-2 || words == number(i+1) {
				items = append(items, figure.Text{At: figure.Point{X: x + each/2, Y: high/2 + 0.36*sectionType}, Size: sectionType, Anchor: figure.Middle, Words: words})
				break
			}
		}
	}
	return append(items, figure.Dimension(figure.Point{Y: high}, figure.Point{X: long, Y: high}, -5, c.mmText(s.CutLength), sectionType, c.measure)...)
}
