package flat

import (
	"math"
	"slices"

	"bodkin/process"
)

// layer lays pieces.
type layer struct {
	plan   *process.Plan
	pieces map[string]*cloth
	views  map[string]view
	own    map[string]bool // sewn on, not part of the body
	all    []link          // of the body's joins
	parts  map[string][]Part
	darts  map[string]bool

	overlap float64 // the worst of the views so far
}

// fuller is by how much one side of a seam must be shorter than the other for the
// longer to be drawn in.
const fuller = 0.9

// Lay lays a garment flat; false where its plan has no outlines, or does not tell
// where edges begin.
func Lay(plan *process.Plan, words Words) (Garment, bool) {
	y := &layer{plan: plan, pieces: map[string]*cloth{}, views: map[string]view{}, own: map[string]bool{}, parts: Parts(plan), darts: map[string]bool{}}
	for _, p := range plan.Pieces {
		c, ok := newCloth(p)
		if !ok {
			return Garment{}, false
		}
		y.pieces[p.Name] = c
	}
	for i := range plan.Seams {
		y.darts[plan.Seams[i].Name] = plan.Seams[i].Kind == "dart"
		for _, o := range plan.Seams[i].Course.Own {
			y.own[o] = true
		}
	}
	y.central()
	for i := range plan.Seams {
		if s := &plan.Seams[i]; s.Course.In == "" && len(s.Course.Own) == 0 {
			y.all = append(y.all, y.links(s)...)
		}
	}
	y.seen(words)
	y.drawnIn()
	g := Garment{parts: y.parts}
	if g.Front = y.view(front); len(g.Front) == 0 {
		return Garment{}, false
	}
	g.Back = y.view(back)
	g.Overlap = y.overlap
	for _, p := range plan.Pieces {
		here := func(s Shape) bool { return s.Piece == p.Name }
		if !slices.ContainsFunc(g.Front, here) && !slices.ContainsFunc(g.Back, here) {
			c := y.pieces[p.Name]
			s := c.lies(motion{cos: 1}, false)
			g.Loose = append(g.Loose, s)
		}
	}
	return g, true
}

// drawnIn takes in what is gathered, pleated or eased much into something shorter.
func (y *layer) drawnIn() {
	for i := range y.plan.Seams {
		c := y.plan.Seams[i].Course
		a, b := y.runsLength(c.A), y.runsLength(c.B)
		if c.In != "" || a == 0 || b == 0 {
			continue
		}
		switch { // one side goes round both halves
		case y.whole(c.A) && !y.whole(c.B):
			b *= 2
		case y.whole(c.B) && !y.whole(c.A):
			a *= 2
		}
		if b < fuller*a {
			y.takeIn(c.A, b/a)
		}
		if a < fuller*b {
			y.takeIn(c.B, a/b)
		}
	}
}

func (y *layer) takeIn(runs []process.Run, part float64) {
	for k := 0; k < len(runs); {
		piece := runs[k].Piece
		var points []process.Point
		for ; k < len(runs) && runs[k].Piece == piece; k++ {
			points = append(points, y.samples(runs[k], 0, 1)...)
		}
		if !y.own[piece] {
			y.pieces[piece].drawIn(points, part, y.open(y.pieces[piece]))
		}
	}
}

// seen finds out of which view each piece is: by its words, else by what it is sewn
// to, else in front.
func (y *layer) seen(words Words) {
	behind := false
	for _, p := range y.plan.Pieces {
		y.views[p.Name] = words.viewOf(p)
		behind = behind || y.views[p.Name] == back && !y.own[p.Name]
	}
	for _, p := range y.plan.Pieces {
		if y.views[p.Name] != either || y.own[p.Name] {
			continue
		}
		to := map[view]bool{}
		for _, l := range y.all {
			for _, l := range []link{l, l.other()} {
				if l.a.Piece == p.Name {
					to[words.viewOf(y.pieces[l.b.Piece].Piece)] = true
				}
			}
		}
		switch {
		case !behind || to[front] && !to[back] || len(to) == 0:
			y.views[p.Name] = front
		case to[back] && !to[front]:
			y.views[p.Name] = back
		}
	}
}

// view is one side of the garment, what lies below first.
func (y *layer) view(v view) []Shape {
	anchor := ""
	for _, p := range y.plan.Pieces {
		if c := y.pieces[p.Name]; !y.own[p.Name] && y.views[p.Name] == v && (anchor == "" || c.whole() > y.pieces[anchor].whole()) {
			anchor = p.Name
		}
	}
	if anchor == "" {
		return nil
	}
	at := map[string]motion{anchor: y.middle(y.pieces[anchor])}
	order := []string{anchor}
	for {
		var best *link
		var how motion
		for _, l := range y.all {
			for _, l := range []link{l, l.other()} {
				if _, placed := at[l.a.Piece]; !placed || best != nil && l.length <= best.length {
					continue
				}
				if w := y.views[l.b.Piece]; w != v && w != either || y.own[l.b.Piece] {
					continue
				}
				if _, placed := at[l.b.Piece]; placed {
					continue
				}
				if m, ok := y.beside(l, at[l.a.Piece], false); ok {
					best, how = &l, m
				}
			}
		}
		if best == nil {
			break
		}
		at[best.b.Piece] = how
		order = append(order, best.b.Piece)
	}
	var below, body []Shape
	for _, name := range order {
		c := y.pieces[name]
		s := c.lies(at[name], false)
		if y.views[name] == either {
			s = y.halved(c, v, s, at)
			below = append(below, s)
			continue
		}
		body = append(body, s)
	}
	outer := append(below, body...)
	y.overlap = max(y.overlap, covered(outer))
	outer = append(y.bridged(v, at), outer...)
	out := both(outer)
	return append(out, both(y.sewnOn(at, outer))...)
}

// both adds the other half of what there are two of.
func both(in []Shape) []Shape {
	var out []Shape
	for _, s := range in {
		if s.twice {
			out = append(out, s.mirrored())
		}
		out = append(out, s)
	}
	return out
}

// halved is a piece folded in half where it is joined to itself.
func (y *layer) halved(c *cloth, v view, s Shape, at map[string]motion) Shape {
	m := at[c.Name]
	sides, ok := y.folded(c, v)
	if !ok {
		return s
	}
	s.Sides = nil
	for _, d := range sides {
		d.Points = y.sewn(c, d, m, at)
		s.Sides = append(s.Sides, d)
	}
	outline := s.Outline()
	s.Lines = slices.DeleteFunc(s.Lines, func(l Line) bool {
		return !holds(outline, process.Point{X: (l.From.X + l.To.X) / 2, Y: (l.From.Y + l.To.Y) / 2})
	})
	return s
}

// straight is how much longer an edge may be than the line between its ends to count
// as straight.
const straight = 1.03

// central finds the straight edges that are sewn to their own mirror image.
func (y *layer) central() {
	for i := range y.plan.Seams {
		x := y.plan.Seams[i].Course
		for _, r := range x.A {
			c := y.pieces[r.Piece]
			if c == nil || c.mid >= 0 || x.In != "" || !slices.ContainsFunc(x.B, func(o process.Run) bool { return o.Piece == r.Piece && o.Edge == r.Edge }) {
				continue
			}
			k := slices.IndexFunc(c.sides, func(d Side) bool { return d.Edge == r.Edge })
			if line := c.sides[k].Points; lengthOf(line) < straight*distance(line[0], line[len(line)-1]) {
				c.mid = k
			} else {
				c.bent = k
			}
		}
	}
}

// middle lays the largest piece: its centre on the middle, or the upper end of a bent
// seam along its centre, or as it is drafted, where x is counted from the centre.
func (y *layer) middle(c *cloth) motion {
	if c.mid >= 0 {
		f := c.sides[c.mid].Points
		a, b := f[0], f[len(f)-1]
		return upright(a, b, c.middle(), b.Y > a.Y, nil, nil)
	}
	if c.bent < 0 {
		return motion{cos: 1}
	}
	line := c.sides[c.bent].Points
	top := line[0]
	if last := line[len(line)-1]; last.Y < top.Y {
		top = last
	}
	if c.middle().X < top.X {
		return motion{cos: 1, mirror: true, dx: top.X}
	}
	return motion{cos: 1, dx: -top.X}
}

// near is how far a piece on the fold that is of no view may lie from what it is
// sewn to, mm: a yoke that goes over the shoulder lies flat behind and not in front.
const near = 8

// beside is the motion by which a link's second piece lies beside the first, or, to
// lie inside, on it; false where it cannot.
func (y *layer) beside(l link, first motion, inside bool) (motion, bool) {
	to := moved(y.samples(l.a, l.af, l.at), first.point)
	from := y.samples(l.b, l.bf, l.bt)
	c := y.pieces[l.b.Piece]
	side := func(m motion) bool { // whether the two lie on the same side of the line
		return (y.hand(l.a) != first.mirror) == (y.hand(l.b) != m.mirror)
	}
	if c.mid < 0 {
		m := onto(from, to, false)
		if side(m) != inside {
			m = onto(from, to, true)
		}
		return y.asDrafted(c, m, from, to), true
	}
	f := c.sides[c.mid].Points
	best, ok := motion{}, false
	for _, down := range []bool{true, false} {
		m := upright(f[0], f[len(f)-1], c.middle(), down, from, to)
		if side(m) == inside && (!ok || m.apart(from, to) < best.apart(from, to)) {
			best, ok = m, true
		}
	}
	if ok && y.views[c.Name] == either && best.apart(from, to) > near {
		return best, false
	}
	return best, ok
}

// open reports a piece of a pair that ends near the centre, from which it is drafted.
func (y *layer) open(c *cloth) bool {
	const beyond, short = -80, 40 // mm
	inner := boxOf(c.outline())[0]
	return c.mid < 0 && c.Cut == "pair" && y.views[c.Name] != either && inner > beyond && inner < short
}

// asDrafted leaves a piece at the open centre upright, as far from the centre as it
// is drafted, where that is nearly how it would lie.
func (y *layer) asDrafted(c *cloth, m motion, from, to []process.Point) motion {
	const lean, off = 0.9, 40 // cosine, mm
	if !y.open(c) || m.mirror || m.cos < lean {
		return m
	}
	o := motion{cos: 1}
	for k := range from {
		o.dy += (to[k].Y - from[k].Y) / float64(len(from))
	}
	if o.apart(from, to) > m.apart(from, to)+off {
		return m
	}
	return o
}

// holds tells whether a point lies inside an outline, by the even-odd rule.
func holds(outline []process.Point, p process.Point) bool {
	in := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y <= p.Y) != (b.Y <= p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// covered is how much of the cloth of the shapes of one half lies under other outer cloth, told
// from points of a grid.
func covered(shapes []Shape) float64 {
	var outlines [][]process.Point
	box := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, s := range shapes {
		o := s.Outline()
		b := boxOf(o)
		box = [4]float64{min(box[0], b[0]), min(box[1], b[1]), max(box[2], b[2]), max(box[3], b[3])}
		outlines = append(outlines, o)
	}
	const grid = 60
	some, twice := 0, 0
	for i := range grid {
		for j := range grid {
			p := process.Point{X: box[0] + (box[2]-box[0])*(float64(i)+0.5)/grid, Y: box[1] + (box[3]-box[1])*(float64(j)+0.5)/grid}
			n := 0
			for _, o := range outlines {
				if holds(o, p) {
					n++
				}
			}
			if n > 0 {
				some++
			}
			if n > 1 {
				twice++
			}
		}
	}
	return float64(twice) / float64(max(some, 1))
}
