package sheets

import (
	"slices"

	"bodkin/process"
	"bodkin/seams/length"
	"bodkin/sheets/figure"
)

// Sizes of the piece map on paper, in mm.
const (
	mapWide  = 172
	mapHigh  = 205
	mapBrief = 85  // as high as it may get on a brief sheet
	mapType  = 2.6 // allowances and what is said of a piece
	mapTitle = 3.4 // a piece's title
	mapRoom  = 7   // round a piece, for the allowances
	mapSlim  = 60  // a piece narrower than this, with its room, may have its words below it
	mapLeast = 38  // across, even for a slim piece, so that the words of two stand apart
	mapWords = 9   // what they need there beyond the room
)

// pieceMap draws all pieces at one scale, each with its seam and its cutting
// line, half where it is cut on the fold.
func (c *composer) pieceMap() {
	var drawn []process.Piece
	for _, p := range c.plan.Pieces {
		if len(p.Net) > 2 && len(p.CutLine) > 2 {
			drawn = append(drawn, p)
		}
	}
	if len(drawn) == 0 {
		return
	}
	w := c.say.figures
	lines := ""
	if slices.ContainsFunc(drawn, hasLines) {
		lines = w.mapLines
	}
	if slices.ContainsFunc(drawn, func(p process.Piece) bool { _, ok := c.steadiedBy(p); return ok || c.banded(p, false) }) {
		lines += w.mapSteadied
	}
	if slices.ContainsFunc(drawn, func(p process.Piece) bool { return c.banded(p, true) }) {
		lines += w.mapTaped
	}
	caption, size := w.mapCaption+lines, plain("")
	if c.size > 0 { // the lines have been told of
		caption, size = c.say.also.drawn, plain(number(c.size))
	}
	high := float64(mapHigh)
	if c.brief {
		high = mapBrief
	}
	scale, places := layPieces(drawn, high)
	c.draw(func() figure.Figure {
		var items []figure.Item
		for i, p := range drawn {
			items = append(items, newPieceFigure(c, p, scale, places[i]).items()...)
		}
		b := figure.Bounds(items, c.measure)
		items = append(items, c.scaleBar(scale, figure.Point{X: b.Left, Y: b.Bottom + 5})...)
		return figure.Fit(c.slug("pieces"), w.mapAlt, items, 1, c.measure)
	}, say(caption, values{"scale": c.scaleWords(scale), "n": size}))
}

// PieceMap is the piece map of a plan by itself, with the seams' names at their
// edges where there is room; false where the plan has no piece to draw.
func PieceMap(plan *process.Plan) (figure.Figure, bool) {
	c := newComposer(plan, Options{FiguresAt: "figures/"})
	c.pieceMap()
	if len(c.drawings) == 0 {
		return figure.Figure{}, false
	}
	return c.drawings[0].Figure, true
}

func hasLines(p process.Piece) bool {
	return slices.ContainsFunc(p.Drawn, func(d process.Drawn) bool { return d.Kind == detailLine })
}

// layPieces sets the pieces in rows at the largest usual scale at which they
// all stay within a height, mm on paper, and tells by how much each is moved.
func layPieces(pieces []process.Piece, most float64) (scale float64, places []figure.Point) {
	for _, n := range []float64{4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 100} {
		scale = 1 / n
		var high float64
		var fits bool
		if places, high, fits = inRows(pieces, scale); fits && high <= most {
			break
		}
	}
	return scale, places
}

// inRows sets pieces side by side from left to right, beginning a new row
// where the sheet ends.
func inRows(pieces []process.Piece, scale float64) (places []figure.Point, high float64, fits bool) {
	x, y, row, words := 0.0, 0.0, 0.0, 0.0
	fits = true
	for _, p := range pieces {
		b := grown(contourOf(p.CutLine, scale).box(), mapRoom)
		wide := max(b.Width(), mapLeast)
		if x > 0 && x+wide > mapWide {
			x, y, row, words = 0, y+row+words, 0, 0
		}
		places = append(places, figure.Point{X: x + (wide-b.Width())/2 - b.Left, Y: y - b.Top})
		if b.Width() < mapSlim {
			words = mapWords
		}
		x, row = x+wide, max(row, b.Height())
		fits = fits && b.Width() <= mapWide
	}
	return places, y + row, fits
}

// scaleBar is a length to check a print by.
func (c *composer) scaleBar(scale float64, at figure.Point) []figure.Item {
	long := 10 * length.Centimetre
	if c.style == length.Inches {
		long = 4 * length.Inch
	}
	end := figure.Point{X: at.X + float64(long)*scale, Y: at.Y}
	s := figure.Stroke{Width: figure.Medium}
	items := []figure.Item{figure.Line(at, end, s)}
	for _, p := range []figure.Point{at, end} {
		items = append(items, figure.Line(figure.Point{X: p.X, Y: p.Y - 1}, figure.Point{X: p.X, Y: p.Y + 1}, s))
	}
	return append(items, figure.Text{At: figure.Point{X: end.X + 2, Y: end.Y + 0.36*mapType}, Size: mapType, Words: c.mmText(float64(long))})
}

// pieceFigure is one piece on its way to the map.
type pieceFigure struct {
	c        *composer
	p        process.Piece
	scale    float64
	at       figure.Point
	net, cut contour
	texts    []figure.Box
}

func newPieceFigure(c *composer, p process.Piece, scale float64, at figure.Point) *pieceFigure {
	return &pieceFigure{c: c, p: p, scale: scale, at: at,
		net: contourOf(p.Net, scale).moved(at.X, at.Y), cut: contourOf(p.CutLine, scale).moved(at.X, at.Y)}
}

func (f *pieceFigure) point(p process.Point) figure.Point {
	return figure.Point{X: p.X*f.scale + f.at.X, Y: p.Y*f.scale + f.at.Y}
}

func (f *pieceFigure) items() []figure.Item {
	out := append(f.steadied(), f.lines()...)
	out = append(out, f.drawn()...)
	out = append(out, f.points()...)
	out = append(out, f.title()...)
	return append(out, f.allowances()...)
}

// lines are the cutting line, the seam line and the fold.
func (f *pieceFigure) lines() []figure.Item {
	cut := figure.Stroke{Width: figure.Medium}
	seam := figure.Stroke{Width: figure.Thin, Dash: []float64{1.8, 1.1}}
	k := slices.IndexFunc(f.p.Edges, func(e process.Edge) bool { return e.Seam == foldEdge })
	if k < 0 || f.p.Cut != "fold" {
		return []figure.Item{closed(f.cut, cut), closed(f.net, seam)}
	}
	middle := f.point(f.p.Edges[k].Middle)
	onCut, _ := f.cut.nearest(middle)
	onNet, _ := f.net.nearest(middle)
	a, b := f.cut.side(onCut)
	out := []figure.Item{openedAt(f.cut, onCut, cut), openedAt(f.net, onNet, seam),
		figure.Line(a, b, figure.Stroke{Width: figure.Medium, Dash: []float64{4, 1, 0.6, 1}})}
	if f.p.Bias { // it is cut opened out, and the line is its middle
		return out
	}
	return append(out, f.foldMark(middle, f.p.Edges[k].Length*f.scale*0.3)...)
}

func closed(c contour, s figure.Stroke) figure.Item {
	return figure.Polygon(s, figure.Fill{}, c...)
}

// openedAt is the outline without one of its sides.
func openedAt(c contour, side int, s figure.Stroke) figure.Item {
	points := append(slices.Clone(c[side+1:]), c[:side+1]...)
	return figure.Polyline(s, points...)
}

// foldMark is a bracket with its heads on the fold half mm to either side of
// its middle, and the word.
func (f *pieceFigure) foldMark(middle figure.Point, half float64) []figure.Item {
	d, out := f.net.along(middle, 10)
	at := func(along, in float64) figure.Point {
		return figure.Point{X: middle.X + d.X*along - out.X*in, Y: middle.Y + d.Y*along - out.Y*in}
	}
	thin := figure.Stroke{Width: figure.Thin}
	items := []figure.Item{figure.Line(at(-half, 3), at(half, 3), thin)}
	for _, s := range []float64{-half, half} {
		items = append(items, figure.Arrow(at(s, 3), at(s, 0.2), false)...)
	}
	label := turned(at(0, 4.6), d, mapType, f.c.say.figures.foldHere)
	f.texts = append(f.texts, grown(figure.TextBox(label, f.c.measure), 0.4))
	b := figure.Bounds(items, f.c.measure)
	f.texts = append(f.texts, b)
	return append(items, label)
}

// Radius of the ring of a mark, in mm: as it is where marks stand apart, and at the
// least, where two are close, as the legs of a narrow dart.
const (
	markRing  = 0.9
	markLeast = 0.3
)

// points are the marks to transfer: a small cross in a ring, small enough that no
// two rings meet.
func (f *pieceFigure) points() []figure.Item {
	var out []figure.Item
	thin := figure.Stroke{Width: figure.Thin}
	var at []figure.Point
	for _, m := range f.p.Marks {
		if p := f.point(process.Point{X: m.X, Y: m.Y}); !slices.Contains(at, p) {
			at = append(at, p)
		}
	}
	for _, p := range at {
		r := markRing
		for _, q := range at {
			if q != p {
				r = max(markLeast, min(r, distance(p, q)/2-0.15))
			}
		}
		out = append(out, figure.Circle{Centre: p, Radius: r, Stroke: thin, Fill: figure.Fill{White: true}},
			figure.Line(figure.Point{X: p.X - r, Y: p.Y}, figure.Point{X: p.X + r, Y: p.Y}, thin),
			figure.Line(figure.Point{X: p.X, Y: p.Y - r}, figure.Point{X: p.X, Y: p.Y + r}, thin))
		f.texts = append(f.texts, figure.Box{Left: p.X - 1.2, Top: p.Y - 1.2, Right: p.X + 1.2, Bottom: p.Y + 1.2})
	}
	return out
}

// detailLine is what the plan calls a line along which a detail lies.
const detailLine = "line"

// dartKind is what the plan calls a seam that is a dart.
const dartKind = "dart"

// drawn are the notches, across the allowance, the legs of darts, from the
// cutting line to their points, and the lines along which details lie.
func (f *pieceFigure) drawn() []figure.Item {
	var out []figure.Item
	for _, d := range f.p.Drawn {
		s := figure.Stroke{Width: figure.Medium}
		switch d.Kind {
		case "leg":
			s = figure.Stroke{Width: figure.Thin, Dash: []float64{1.8, 1.1}}
		case detailLine:
			s = figure.Stroke{Width: figure.Thin, Dash: []float64{0.5, 0.9}}
		}
		out = append(out, figure.Line(f.point(d.From), f.point(d.To), s))
	}
	return out
}
