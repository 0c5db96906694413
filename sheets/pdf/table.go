package pdf

import (
	"math"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"
)

// Sizes a table may be set in, in body sizes, tried in this order until every
// cell fits on one line. When none does, cells are broken into lines in the
// last; the spare one is for tables whose words alone are too wide for it.
func tableLooks() (inTurn []look, spare look) {
	return []look{
		{size: 0.93},
		{size: 0.93, style: typeface.Condensed},
		{size: 0.87, style: typeface.Condensed},
	}, look{size: 0.76, style: typeface.Condensed}
}

// grid is a table with the widths of its columns settled.
type grid struct {
	*flow
	table
	look
	lead       float64
	padX, padY float64
	lefts      []float64 // of the columns' text
	widths     []float64 // of the columns' text
	right      float64
}

func (f *flow) table(t table, fr frame) {
	if len(t.aligns) == 0 {
		return
	}
	g := f.grid(t, fr)
	most := f.tall
	var head *slab
	if t.head != nil {
		rows := g.row(t.head, true, f.tall)
		for _, s := range rows {
			s.keep = true
			f.add(s)
		}
		if len(rows) == 1 && rows[0].height < 0.4*f.tall {
			head = &rows[0]
			most -= head.height
		}
	} else {
		f.add(slab{keep: true, ink: []figure.Item{g.ruled(0, figure.Stroke{Width: figure.Thin})}})
	}
	for i, cells := range t.rows {
		// Neither the first row nor the last stands alone on its page.
		bound := len(t.rows) > 2 && (i == 0 || i == len(t.rows)-2)
		for _, s := range g.row(cells, false, most) {
			s.head, s.rank, s.keep = head, rankItem, bound
			f.add(s)
		}
	}
}

// grid chooses the look and the widths of the columns.
func (f *flow) grid(t table, fr frame) grid {
	n := float64(len(t.aligns))
	g := grid{flow: f, table: t, padX: min(0.52*f.size, fr.width()/(6*n)), padY: 0.14 * f.lead}
	room := fr.width() - 2*n*g.padX
	inTurn, spare := tableLooks()
	var natural, least []float64
	for _, l := range append(inTurn, spare) {
		g.look = l
		g.look.size *= f.size
		if natural, _ = g.columns(0.6 * room); total(natural) <= room {
			return g.at(fr.left, widened(natural, room))
		}
		natural, least = g.columns(1.4 * room / n)
		if l == inTurn[len(inTurn)-1] && total(least) <= room {
			break
		}
	}
	if whole := g.unbroken(natural, least); total(whole) <= room {
		least = whole
	}
	best, cost := g, math.Inf(1)
	for _, power := range []float64{0, 0.25, 0.5, 0.75, 1} {
		try := g.at(fr.left, shares(natural, least, room, power))
		if c := try.cost(); c < cost-1e-6 {
			best, cost = try, c
		}
	}
	return best
}

// at is the grid with its columns of these widths, from left on.
func (g grid) at(left float64, widths []float64) grid {
	g.lead = g.look.size / g.flow.size * g.flow.lead * 0.95
	g.widths, g.lefts, g.right = widths, nil, left
	for _, w := range widths {
		g.lefts = append(g.lefts, g.right+g.padX)
		g.right += w + 2*g.padX
	}
	return g
}

// cost is the height of all the rows, and a fifth of a line for each line that
// a cell has beyond its first, so that of equal heights the calmer is chosen.
func (g grid) cost() float64 {
	sum := 0.0
	add := func(cells [][]span, head bool) {
		lines := g.cells(cells, head, g.tall)
		for _, c := range lines {
			sum += 0.2 * g.lead * float64(max(len(c)-1, 0))
		}
		for longest(lines) > 0 {
			sum += g.slab(lines, g.size, head, g.tall).height
		}
	}
	add(g.head, true)
	for _, r := range g.rows {
		add(r, false)
	}
	return sum
}

// columns is, for each column, the width of its widest cell on one line and of
// its widest word; a figure counts as no wider than given.
func (g grid) columns(figures float64) (natural, least []float64) {
	natural, least = make([]float64, len(g.aligns)), make([]float64, len(g.aligns))
	measure := func(cells [][]span, base look) {
		for i, c := range cells {
			n, l := naturalWidth(g.clusters(c, base, figure.Point{X: figures, Y: 0.7 * g.tall}))
			natural[i], least[i] = max(natural[i], n), max(least[i], l)
		}
	}
	measure(g.head, g.headLook())
	for _, r := range g.rows {
		measure(r, g.look)
	}
	return natural, least
}

// unbroken is the least widths, but the natural ones for columns of figures,
// which are those set to the right.
func (g grid) unbroken(natural, least []float64) []float64 {
	out := append([]float64(nil), least...)
	for i, a := range g.aligns {
		if a == alignRight {
			out[i] = natural[i]
		}
	}
	return out
}

func (g grid) headLook() look {
	l := g.look
	l.style |= typeface.Bold
	return l
}

func total(vs []float64) float64 {
	sum := 0.0
	for _, v := range vs {
		sum += v
	}
	return sum
}

// widened is the columns' natural widths, or, if they nearly fill the room,
// those made to fill it.
func widened(natural []float64, room float64) []float64 {
	spare := 0.0
	if sum := total(natural); sum > 0.55*room {
		spare = (room - sum) / float64(len(natural))
	}
	out := make([]float64, len(natural))
	for i, v := range natural {
		out[i] = v + spare
	}
	return out
}

// shares deals the room out to columns that cannot all have their natural
// width: each gets a share by that power of what it needs, but no less than
// its widest word, while that can be had, and no more than it needs.
func shares(natural, least []float64, room, power float64) []float64 {
	if total(least) > room {
		return level(room, len(least), func(i int, t float64) float64 { return min(least[i], t) })
	}
	return level(room, len(natural), func(i int, t float64) float64 {
		return min(max(t*math.Pow(natural[i], power), least[i]), natural[i])
	})
}

// level finds the t for which the n widths add up to the room, for a width
// that does not fall as t rises, and is those widths.
func level(room float64, n int, width func(i int, t float64) float64) []float64 {
	lo, hi := 0.0, 1.0
	out := make([]float64, n)
	set := func(t float64) float64 {
		for i := range out {
			out[i] = width(i, t)
		}
		return total(out)
	}
	for k := 0; k < 60 && set(hi) < room; k++ {
		hi *= 2
	}
	for range 60 {
		if mid := (lo + hi) / 2; set(mid) <= room {
			lo = mid
		} else {
			hi = mid
		}
	}
	set(lo)
	return out
}

// cells breaks a row's cells into lines.
func (g grid) cells(cells [][]span, head bool, most float64) [][]line {
	base := g.look
	if head {
		base = g.headLook()
	}
	out := make([][]line, len(cells))
	for i, c := range cells {
		room := figure.Point{X: g.widths[i], Y: min(0.7*g.tall, most-2*g.padY-g.lead)}
		out[i] = g.lines(g.clusters(c, base, room), g.widths[i])
	}
	return out
}

// row sets one row as one slab, or, if that would be taller than most, as
// several, each as many lines of every cell as fit.
func (g grid) row(cells [][]span, head bool, most float64) []slab {
	left := g.cells(cells, head, most)
	var out []slab
	for first := true; first || longest(left) > 0; first = false {
		out = append(out, g.slab(left, g.size, head, most))
	}
	return out
}

func longest(cells [][]line) int {
	n := 0
	for _, c := range cells {
		n = max(n, len(c))
	}
	return n
}

// slab sets the lines that fit below one another in a height of most, and
// takes them off the cells. At least one line is taken.
func (g grid) slab(cells [][]line, size float64, head bool, most float64) slab {
	var s slab
	height := g.lead
	for i := range cells {
		y := 1.15 * g.padY
		taken := 0
		for _, ln := range cells[i] {
			var try slab
			h := g.setLine(&try, ln, g.start(i, ln), y, size, g.lead, roleBody)
			if y+h+0.85*g.padY > most && taken > 0 {
				break
			}
			s.ink, s.words = append(s.ink, try.ink...), append(s.words, try.words...)
			y += h
			taken++
		}
		cells[i] = cells[i][taken:]
		height = max(height, y-1.15*g.padY)
	}
	s.height = height + 2*g.padY
	if head {
		ground := figure.Rect(figure.Point{X: g.lefts[0] - g.padX}, g.right-g.lefts[0]+g.padX, s.height, figure.Stroke{}, figure.Fill{Tint: 0.1})
		s.ink = append([]figure.Item{ground, g.ruled(s.height, figure.Stroke{Width: figure.Thin, Light: 0.2})}, s.ink...)
	} else {
		s.ink = append([]figure.Item{g.ruled(s.height, figure.Stroke{Width: figure.Hairline, Light: 0.55})}, s.ink...)
	}
	return s
}

// start is the left end of a line in column i, by the column's alignment.
func (g grid) start(i int, ln line) float64 {
	switch spare := g.widths[i] - ln.width; g.aligns[i] {
	case alignRight:
		return g.lefts[i] + spare
	case alignCentre:
		return g.lefts[i] + spare/2
	}
	return g.lefts[i]
}

func (g grid) ruled(y float64, st figure.Stroke) figure.Item {
	return figure.Line(figure.Point{X: g.lefts[0] - g.padX, Y: y}, figure.Point{X: g.right, Y: y}, st)
}
