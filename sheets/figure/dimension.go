package figure

import "math"

// Sizes of the marks on a dimension line, in mm.
const (
	arrowLength = 1.9
	arrowHalf   = 0.5
	lineGap     = 0.8 // between the thing measured and its extension line
	lineOver    = 1.0 // how far an extension line runs past the dimension line
	textPad     = 0.7
)

// ArrowHead is a filled head with its point at tip, looking along the line
// from tail to tip.
func ArrowHead(tail, tip Point) Path {
	u := towards(tail, tip)
	foot := tip.minus(u.times(arrowLength))
	side := u.left().times(arrowHalf)
	return Polygon(Stroke{}, Fill{Tint: 1}, tip, foot.plus(side), foot.minus(side))
}

// Arrow is a thin line with a head at to, and one at from too when both is set
// (a grain line).
func Arrow(from, to Point, both bool) []Item {
	u := towards(from, to)
	a, b := from, to.minus(u.times(arrowLength*0.8))
	if both {
		a = from.plus(u.times(arrowLength * 0.8))
	}
	items := []Item{Line(a, b, Stroke{Width: Thin}), ArrowHead(from, to)}
	if both {
		items = append(items, ArrowHead(to, from))
	}
	return items
}

// Dimension measures from one point to the other: extension lines, a line
// between arrow heads offset mm to the left hand of someone walking from–to
// (above for left to right; negative for the other side), and words of the
// given type size (mm), always upright. Where the words do not fit between the
// heads they stand beyond to and the heads point inwards.
func Dimension(from, to Point, offset float64, words string, size float64, m Measurer) []Item {
	u := towards(from, to)
	n := u.left()
	fine := Stroke{Width: Hairline}
	a, b := from.plus(n.times(offset)), to.plus(n.times(offset))
	var items []Item
	if side := math.Copysign(1, offset); math.Abs(offset) > lineGap {
		for _, p := range []Point{from, to} {
			items = append(items, Line(p.plus(n.times(side*lineGap)), p.plus(n.times(offset+side*lineOver)), fine))
		}
	}
	text := Text{Size: size, Anchor: Middle, Words: words}
	wide, high := m.TextWidth(words, size, false)+2*textPad, size+textPad
	// along is how much of the line the words hide.
	along := min(wide/max(math.Abs(u.X), 1e-9), high/max(math.Abs(u.Y), 1e-9))
	length := b.minus(a).length()
	centred := func(c Point) Point { return Point{c.X, c.Y + 0.36*size} }
	if along+2*arrowLength+1 <= length {
		mid := between(a, b, 0.5)
		text.At = centred(mid)
		return append(items,
			Line(a.plus(u.times(arrowLength*0.8)), mid.minus(u.times(along/2)), fine),
			Line(mid.plus(u.times(along/2)), b.minus(u.times(arrowLength*0.8)), fine),
			ArrowHead(b, a), ArrowHead(a, b), text)
	}
	tail := arrowLength + 1.2
	end := b.plus(u.times(tail))
	text.At = centred(end.plus(u.times((wide*math.Abs(u.X) + high*math.Abs(u.Y)) / 2)))
	outerA := a.minus(u.times(tail))
	return append(items,
		Line(outerA, a.minus(u.times(arrowLength*0.8)), fine), Line(a, b, fine),
		Line(b.plus(u.times(arrowLength*0.8)), end, fine),
		ArrowHead(outerA, a), ArrowHead(end, b), text)
}
