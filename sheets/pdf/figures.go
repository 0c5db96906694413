package pdf

import (
	"math"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"

	"golang.org/x/text/unicode/norm"
)

// figurePen draws a figure into a slab at a place and scale; it is a
// figure.Painter.
type figurePen struct {
	*typesetter
	slab  *slab
	at    figure.Point
	scale float64
	name  string
}

func (f *flow) drawFigure(s *slab, fig figure.Figure, x, y, scale float64) {
	figure.Paint(fig, &figurePen{f.typesetter, s, figure.Point{X: x, Y: y}, scale, "figure " + fig.Name})
}

func (p *figurePen) place(q figure.Point) figure.Point {
	return figure.Point{X: p.at.X + p.scale*q.X, Y: p.at.Y + p.scale*q.Y}
}

func (p *figurePen) Path(path figure.Path) {
	segs := make([]figure.Segment, len(path.Segments))
	for i, s := range path.Segments {
		segs[i] = figure.Segment{Step: s.Step, C1: p.place(s.C1), C2: p.place(s.C2), To: p.place(s.To)}
	}
	dash := make([]float64, len(path.Stroke.Dash))
	for i, d := range path.Stroke.Dash {
		dash[i] = d * p.scale
	}
	path.Start, path.Segments, path.Stroke.Dash = p.place(path.Start), segs, dash
	path.Stroke.Width *= p.scale
	p.slab.ink = append(p.slab.ink, path)
}

func (p *figurePen) Circle(c figure.Circle) { p.Path(c.Outline()) }

func (p *figurePen) Text(t figure.Text) {
	var style typeface.Style
	if t.Bold {
		style = typeface.Bold
	}
	text := p.showable(style, norm.NFC.String(t.Words), p.name)
	size := t.Size * p.scale
	width := p.faces.Width(style, text, size)
	at := p.place(t.At)
	back := 0.0
	switch t.Anchor {
	case figure.Middle:
		back = width / 2
	case figure.End:
		back = width
	}
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	p.slab.words = append(p.slab.words, words{
		X: at.X - back*cos, Y: at.Y + back*sin, Width: width, Size: size,
		Style: style, Turn: t.Turn, Text: text, Role: roleFigure,
	})
}
