package sheets

import (
	"math"
	"slices"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// Sizes of the drawing of where a seam lies, in mm.
const (
	whereHigh = 24      // as high as its pieces may get
	whereMost = 1. / 14 // of life size, at most, so that a sleeve looks small beside a front
	whereWide = 150
	whereGap  = 7 // from one piece to the next
	whereType = 2.5
	whereLine = 0.8 // width of the seam
	whereLess = 17  // as high as the drawing in the head of a step
)

// whereFigure draws the garment as it lies flat, front and back, with a seam drawn
// heavy. What is not seen there, such as a buttonhole in a cuff, and the seams of a
// garment that cannot be laid flat are shown on the pieces that they touch, as these
// lie finished, opened out where they are cut on the fold and both of a pair;
// none where they are not known. It has no caption: its words are the seam's title,
// which stands above.
func (c *composer) whereFigure(s process.Seam) []figure.Figure {
	if c.at == "" {
		return nil
	}
	if len(c.garments) > 0 {
		var out []figure.Figure
		c.ofEach([]process.Seam{s}, func(own []process.Seam) { out = c.whereFigure(own[0]) })
		return out
	}
	if g, ok := c.laidFlat(); ok {
		if f := c.onTheGarment(g, whereHigh, s); len(f) > 0 {
			return f
		}
	}
	var shapes []whereShape
	for _, p := range c.plan.Pieces {
		if x, ok := whereOn(p, s.Name); ok {
			shapes = append(shapes, x...)
		}
	}
	if len(shapes) == 0 {
		return nil
	}
	return []figure.Figure{c.whereDrawn(s, shapes)}
}

// whereShape is a piece with what is drawn heavy on it, in mm of the garment.
type whereShape struct {
	title string
	net   []process.Point
	heavy [][]process.Point
}

// whereOn is a piece as it lies finished, if a seam runs along one of its edges or
// over it: of a pair both, mirrored.
func whereOn(p process.Piece, seam string) ([]whereShape, bool) {
	x := whereShape{title: p.Title, net: p.Net}
	for k, e := range p.Edges {
		line := edgeLine(p, k)
		if line == nil {
			return nil, false // of a plan that does not tell where edges begin
		}
		if e.Seam == seam {
			x.heavy = append(x.heavy, line)
		}
	}
	for _, d := range p.Drawn {
		if d.Name == seam && d.Kind != "notch" {
			x.heavy = append(x.heavy, []process.Point{d.From, d.To})
		}
	}
	if len(x.heavy) == 0 {
		return nil, false
	}
	for k, e := range p.Edges {
		if e.Seam == foldEdge {
			line := edgeLine(p, k)
			return []whereShape{x.opened(line[0], line[len(line)-1], k, p)}, true
		}
	}
	if p.Cut == "pair" {
		return []whereShape{x.mirrored(), x}, true
	}
	return []whereShape{x}, true
}

// edgeLine are the points of a piece's k-th edge; nil where the plan does not
// tell.
func edgeLine(p process.Piece, k int) []process.Point {
	n := len(p.Edges)
	from, to := p.Edges[k].Begins, len(p.Net)
	if k+1 < n {
		to = p.Edges[k+1].Begins
	}
	if from < 0 || to <= from || to > len(p.Net) {
		return nil
	}
	return append(slices.Clone(p.Net[from:to]), p.Net[to%len(p.Net)])
}

// opened is a piece with its other half, reflected in the fold from a to b, which
// is its k-th edge.
func (x whereShape) opened(a, b process.Point, k int, p process.Piece) whereShape {
	dx, dy := b.X-a.X, b.Y-a.Y
	l := dx*dx + dy*dy
	reflect := func(q process.Point) process.Point {
		t := ((q.X-a.X)*dx + (q.Y-a.Y)*dy) / max(l, 1e-9)
		return process.Point{X: 2*(a.X+t*dx) - q.X, Y: 2*(a.Y+t*dy) - q.Y}
	}
	// From the end of the fold round to its beginning, then back mirrored.
	after := p.Edges[(k+1)%len(p.Edges)].Begins
	round := append(slices.Clone(x.net[after:]), x.net[:after]...)
	if n := len(edgeLine(p, k)); n > 2 {
		round = round[:len(round)-(n-2)]
	}
	out := whereShape{title: x.title, net: slices.Clone(round)}
	for _, q := range slices.Backward(round) {
		out.net = append(out.net, reflect(q))
	}
	for _, h := range x.heavy {
		other := make([]process.Point, len(h))
		for i, q := range h {
			other[i] = reflect(q)
		}
		out.heavy = append(out.heavy, h, other)
	}
	return out
}

// mirrored is the other of a pair.
func (x whereShape) mirrored() whereShape {
	turn := func(line []process.Point) []process.Point {
		out := make([]process.Point, len(line))
		for i, q := range line {
			out[i] = process.Point{X: -q.X, Y: q.Y}
		}
		return out
	}
	out := whereShape{net: turn(x.net)}
	for _, h := range x.heavy {
		out.heavy = append(out.heavy, turn(h))
	}
	return out
}

func (x whereShape) box() figure.Box { return contourOf(x.net, 1).box() }

func (c *composer) whereDrawn(s process.Seam, shapes []whereShape) figure.Figure {
	wide, high := 0.0, 0.0
	for _, x := range shapes {
		b := x.box()
		wide, high = wide+b.Width(), max(high, b.Height())
	}
	scale := min(whereMost, whereHigh/max(high, 1), (whereWide-whereGap*float64(len(shapes)))/max(wide, 1))
	var lines, heavy, words []figure.Item
	at, first := 0.0, 0.0 // where the other of a pair begins
	for k, x := range shapes {
		b := x.box()
		place := func(q process.Point) figure.Point {
			return figure.Point{X: at + (q.X-b.Left)*scale, Y: (q.Y - b.Top) * scale}
		}
		lines = append(lines, polygon(x.net, place))
		for _, h := range x.heavy {
			for i := 1; i < len(h); i++ {
				heavy = append(heavy, figure.Line(place(h[i-1]), place(h[i]), figure.Stroke{Width: whereLine, Round: true}))
			}
		}
		room := b.Width()*scale + whereGap
		if x.title != "" {
			if k == 0 || shapes[k-1].title != "" {
				first = at
			}
			name := upper(x.title)
			w := c.measure.TextWidth(name, whereType, false)
			middle := max((first+at+b.Width()*scale)/2, first+w/2)
			words = append(words, figure.Text{At: figure.Point{X: middle, Y: high*scale + 4}, Size: whereType, Anchor: figure.Middle, Words: name})
			room = max(room, middle+w/2+2-at)
		} else {
			first = at
		}
		at += room
	}
	return figure.Fit(c.slug("where", s.Name), fillText(c.say.figures.whereAlt, "seam", s.Title), slices.Concat(lines, heavy, words), 1, c.measure)
}

// polygon is a closed thin outline.
func polygon(points []process.Point, place func(process.Point) figure.Point) figure.Item {
	p := figure.Path{Closed: true, Stroke: figure.Stroke{Width: figure.Thin}, Fill: figure.Fill{White: true}}
	last := process.Point{X: math.Inf(1)}
	for k, q := range points {
		switch {
		case k == 0:
			p.Start = place(q)
		case q != last:
			p.Segments = append(p.Segments, figure.Segment{Step: figure.LineTo, To: place(q)})
		}
		last = q
	}
	return p
}
