package pdf

import (
	"strconv"

	"bodkin/sheets/figure"
)

// list sets the items with their marks hanging in a gutter of one width.
func (f *flow) list(l list, fr frame) {
	base := look{size: f.size}
	numbers := 0.0
	for i := range l.items {
		numbers = max(numbers, f.width(base, l.number(i)))
	}
	boxes := false
	for _, it := range l.items {
		boxes = boxes || it.task != noTask
	}
	gutter := 1.25 * f.size
	if l.ordered {
		gutter = max(gutter, numbers+0.45*f.size)
	}
	box := gutter
	switch {
	case boxes && l.ordered:
		box, gutter = gutter+0.15*f.size, gutter+1.5*f.size
	case boxes:
		box, gutter = 0, 1.6*f.size
	}
	gap := 0.1 * f.lead
	if boxes {
		gap = 0.22 * f.lead
	}
	if !l.tight {
		gap = 0.5 * f.lead
	}
	for i, it := range l.items {
		if i > 0 {
			f.want(gap)
		}
		from := len(f.slabs)
		f.blocks(it.blocks, fr.indent(gutter), l.tight)
		if len(f.slabs) == from {
			f.add(slab{height: f.lead})
		}
		s := &f.slabs[from]
		baseline := f.baseline(*s)
		if l.ordered {
			text := l.number(i)
			w := f.width(base, text)
			mark := words{X: fr.left + numbers - w, Y: baseline, Width: w, Size: f.size, Text: text, Role: roleMarker}
			s.words = append([]words{mark}, s.words...)
		}
		switch {
		case it.task != noTask:
			s.ink = append(s.ink, f.tickBox(figure.Point{X: fr.left + box, Y: baseline}, it.task)...)
		case !l.ordered:
			s.ink = append(s.ink, f.bullet(figure.Point{X: fr.left + 0.5*f.size, Y: baseline}))
		}
		f.rank(rankItem)
	}
}

func (l list) number(i int) string {
	if !l.ordered {
		return ""
	}
	return strconv.Itoa(l.start+i) + l.suffix
}

// baseline is that of the slab's first words, or where one would be.
func (f *flow) baseline(s slab) float64 {
	if len(s.words) > 0 {
		return s.words[0].Y
	}
	return 0.71 * f.lead
}

// bullet is a dot at the middle of the small letters; at is on the baseline.
func (f *flow) bullet(at figure.Point) figure.Item {
	return figure.Circle{Centre: figure.Point{X: at.X, Y: at.Y - 0.28*f.size}, Radius: 0.17 * f.size, Fill: figure.Fill{Tint: 0.85}}
}

// tickBox is a square to tick with a pencil, as tall as a capital and a little;
// at is its left end on the baseline. A done task has its tick.
func (f *flow) tickBox(at figure.Point, t task) []figure.Item {
	side := 0.92 * f.size
	top := at.Y - side + 0.09*f.size
	square := figure.Rect(figure.Point{X: at.X + 0.05*f.size, Y: top}, side, side, figure.Stroke{Width: 0.3}, figure.Fill{})
	if t != doneTask {
		return []figure.Item{square}
	}
	on := func(x, y float64) figure.Point { return figure.Point{X: at.X + 0.05*f.size + x*side, Y: top + y*side} }
	return []figure.Item{square, figure.Polyline(figure.Stroke{Width: 0.5, Round: true}, on(0.2, 0.55), on(0.42, 0.78), on(0.82, 0.22))}
}
