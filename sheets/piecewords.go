package sheets

import (
	"math"
	"slices"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// turned is a text whose middle lies at a point, set along a direction and
// never upside down; words that run up and down are read from the right.
func turned(middle, direction figure.Point, size float64, words string) figure.Text {
	angle := -math.Atan2(direction.Y, direction.X) * 180 / math.Pi
	for angle > 105 {
		angle -= 180
	}
	for angle <= -75 {
		angle += 180
	}
	angle = math.Round(angle*10) / 10
	sin, cos := math.Sincos(angle * math.Pi / 180)
	drop := 0.36 * size
	return figure.Text{At: figure.Point{X: middle.X + drop*sin, Y: middle.Y + drop*cos}, Size: size, Anchor: figure.Middle, Turn: angle, Words: words}
}

// title says in the piece what it is, how it is cut and how its grain runs.
// Where there is no room inside, the words stand below it.
func (f *pieceFigure) title() []figure.Item {
	how := fillText(f.c.say.figures.cutOut, "n", number(f.p.Count), "how", f.c.howCut(f.p))
	cloth := f.c.clothName(f.p.Cloth)
	b := f.net.box()
	lines := []figure.Text{{Size: mapTitle, Bold: true, Words: upper(f.p.Title)}, {Size: mapType, Words: how}, {Size: mapType, Words: cloth}}
	wide, high := 0.0, 0.0
	for _, t := range lines {
		wide, high = max(wide, f.c.measure.TextWidth(t.Words, t.Size, t.Bold)), high+t.Size*1.35
	}
	block, inside := f.room(wide+2, high)
	if !inside {
		x, y := (b.Left+b.Right)/2, f.cut.box().Bottom+mapRoom
		block = figure.Box{Left: x - wide/2, Top: y, Right: x + wide/2, Bottom: y + high}
	}
	out := f.grain(block, inside)
	y := block.Top
	for _, t := range lines {
		y += t.Size * 1.35
		t.At, t.Anchor = figure.Point{X: (block.Left + block.Right) / 2, Y: y - 0.35*t.Size}, figure.Middle
		out = append(out, t)
	}
	f.texts = append(f.texts, block)
	return out
}

// room is a place for a block of words inside the seam line, nearest to the
// middle of the piece and clear of what stands there already.
func (f *pieceFigure) room(wide, high float64) (block figure.Box, ok bool) {
	b := f.net.box()
	best := math.Inf(1)
	for i := range 25 {
		y := b.Top + (b.Bottom-b.Top)*(0.1+0.8*float64(i)/24)
		left, right := f.net.span(y)
		for j := range 9 {
			x := left + (right-left)*(0.3+0.05*float64(j))
			try := figure.Box{Left: x - wide/2, Top: y - high/2, Right: x + wide/2, Bottom: y + high/2}
			away := math.Abs(y-(b.Top+b.Bottom)/2) + math.Abs(x-(left+right)/2)
			if away < best && f.net.clear(try) && !slices.ContainsFunc(f.texts, try.Overlaps) {
				block, best, ok = try, away, true
			}
		}
	}
	return block, ok
}

// grain is a double arrow along the lengthwise grain, which runs up and down
// on the piece as it is drafted, aslant where it is laid on the bias, in the first place that is free.
func (f *pieceFigure) grain(block figure.Box, inside bool) []figure.Item {
	if f.p.Grain == "" {
		return nil
	}
	b := f.net.box()
	middle := (block.Left + block.Right) / 2
	if !inside {
		middle = (b.Left + b.Right) / 2
	}
	for _, long := range []float64{28, 22, 16, 12, 8, 5} {
		for _, top := range []figure.Point{
			{X: middle, Y: block.Bottom + 1.5}, {X: middle, Y: block.Top - 1.5 - long},
			{X: block.Left - 2, Y: (block.Top + block.Bottom - long) / 2}, {X: block.Right + 2, Y: (block.Top + block.Bottom - long) / 2},
			{X: middle, Y: (b.Top + b.Bottom - long) / 2},
		} {
			room := figure.Box{Left: top.X - 1, Top: top.Y, Right: top.X + 1, Bottom: top.Y + long}
			from, to := top, figure.Point{X: top.X, Y: top.Y + long}
			if f.p.Bias {
				half := long / 2 / math.Sqrt2
				from, to = figure.Point{X: top.X - half, Y: top.Y + long/2 + half}, figure.Point{X: top.X + half, Y: top.Y + long/2 - half}
				room.Left, room.Right = from.X, to.X
			}
			if f.net.clear(room) && !room.Overlaps(block) && !slices.ContainsFunc(f.texts, room.Overlaps) {
				f.texts = append(f.texts, room)
				return figure.Arrow(from, to, true)
			}
		}
	}
	return nil
}

// allowances stand outside the cutting line, along their edges, with the
// seam's name where the edge is long enough. A dart's mouth has that of the
// seam it opens into, and edges that only darts part have it once, at the longest.
func (f *pieceFigure) allowances() []figure.Item {
	var out []figure.Item
	for i, e := range f.p.Edges {
		if e.Seam == foldEdge || f.isMouth(e) || f.toldBeyond(i) {
			continue
		}
		long := e.Length * f.scale
		words := f.edgeWords(e, 0.8*long)
		if len(words) == 1 && f.toldBeside(i) {
			continue
		}
		middle := f.point(e.Middle)
		d, outward := f.net.along(middle, 0.3*long)
		t := f.free(middle, d, outward, e.Allowance*f.scale+0.8+mapType/2, long, words)
		f.texts = append(f.texts, grown(figure.TextBox(t, f.c.measure), 0.2))
		out = append(out, t)
	}
	return out
}

func (f *pieceFigure) isMouth(e process.Edge) bool { return f.c.seams[e.Seam].Kind == dartKind }

// toldBeyond tells whether the allowance of an edge stands at a longer one of the
// same seam, from which only the mouths of darts part it.
func (f *pieceFigure) toldBeyond(i int) bool {
	n := len(f.p.Edges)
	own := f.p.Edges[i]
	for _, step := range []int{1, n - 1} {
		mouth := false
		for k := (i + step) % n; k != i; k = (k + step) % n {
			e := f.p.Edges[k]
			if f.isMouth(e) {
				mouth = true
				continue
			}
			if !mouth || e.Seam != own.Seam || e.Allowance != own.Allowance {
				break
			}
			if e.Length > own.Length || e.Length == own.Length && k < i {
				return true
			}
			mouth = false
		}
	}
	return false
}

// straightOn is how much two edges may turn where they meet, in degrees, for one
// allowance to stand for both.
const straightOn = 15

// toldBeside tells whether an edge too short for its own words has the allowance of a
// longer one next to it, in one line with it.
func (f *pieceFigure) toldBeside(i int) bool {
	n := len(f.p.Edges)
	own := f.p.Edges[i]
	for _, k := range []int{(i + 1) % n, (i + n - 1) % n} {
		e := f.p.Edges[k]
		if e.Seam == foldEdge || f.isMouth(e) || e.Allowance != own.Allowance || e.Length < own.Length || e.Length == own.Length && k > i {
			continue
		}
		a, _ := f.net.along(f.point(own.Middle), 0.3*own.Length*f.scale)
		b, _ := f.net.along(f.point(e.Middle), 0.3*e.Length*f.scale)
		turn := math.Abs(math.Atan2(a.X*b.Y-a.Y*b.X, a.X*b.X+a.Y*b.Y)) * 180 / math.Pi
		if turn < straightOn {
			return true
		}
	}
	return false
}

// edgeWords are what may stand at an edge with that much room, fullest first.
func (f *pieceFigure) edgeWords(e process.Edge, room float64) []string {
	w := f.c.say
	full, short := f.c.mmText(e.Allowance), f.c.mmText(e.Allowance)
	if e.Allowance == 0 {
		full, short = w.figures.noAllowance, w.cutting.noAllowance
	}
	var out []string
	for _, words := range []string{fillText(w.figures.edge, "seam", f.c.seamTitle(e.Seam), "allowance", full), full} {
		if f.c.measure.TextWidth(words, mapType, false) < room {
			out = append(out, words)
		}
	}
	return append(out, short)
}

// free sets words beside an edge so that they hide nothing: moved outwards or along
// it a little where they must be, the shorter ones where the fuller find no place.
func (f *pieceFigure) free(middle, along, outward figure.Point, away, long float64, words []string) figure.Text {
	set := func(w string, more, aside float64) figure.Text {
		at := figure.Point{X: middle.X + outward.X*(away+more) + along.X*aside, Y: middle.Y + outward.Y*(away+more) + along.Y*aside}
		return turned(at, along, mapType, w)
	}
	for _, aside := range []float64{0, 0.25 * long, -0.25 * long, 0.5 * long, -0.5 * long, 0.75 * long, -0.75 * long} {
		for _, w := range words {
			for _, more := range []float64{0, 1, 2, 3, 4, 5} {
				if t := set(w, more, aside); !f.hides(t) {
					return t
				}
			}
		}
	}
	return set(words[len(words)-1], 4, 0)
}

// hides tells whether a text would stand over the cutting line or other words.
func (f *pieceFigure) hides(t figure.Text) bool {
	if slices.ContainsFunc(f.texts, figure.TextBox(t, f.c.measure).Overlaps) {
		return true
	}
	half := f.c.measure.TextWidth(t.Words, t.Size, t.Bold)/2 + 0.8
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	for i := range 9 {
		x := half * (float64(i)/4 - 1)
		for _, y := range []float64{0.4 * t.Size, -0.9 * t.Size} {
			if f.cut.holds(figure.Point{X: t.At.X + x*cos + y*sin, Y: t.At.Y - x*sin + y*cos}) {
				return true
			}
		}
	}
	return false
}

// clothName is a cloth's colour, or its role where it has none.
func (c *composer) clothName(role string) string {
	for _, cl := range c.plan.Cloths {
		if cl.Role == role && cl.Colour != "" {
			return cl.Colour
		}
	}
	return role
}
