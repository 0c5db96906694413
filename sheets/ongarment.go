package sheets

import (
	"slices"
	"strings"

	"bodkin/process"
	"bodkin/sheets/figure"
	"bodkin/sheets/flat"
)

// coveredMost is how much of a half may lie under other outer cloth before the flat
// drawing would mislead, and the pieces are drawn by themselves.
const coveredMost = 0.2

// laidFlat is the garment as it lies; false where it cannot be laid so that one sees
// where things are.
func (c *composer) laidFlat() (flat.Garment, bool) {
	g, laid := c.flat[c.plan]
	if !laid {
		w := c.say.figures
		g, _ = flat.Lay(c.plan, flat.Words{Front: w.knownFront, Back: w.knownBack})
		c.flat[c.plan] = g
	}
	return g, len(g.Front) > 0 && g.Overlap <= coveredMost
}

// flatGroup is what stands together over one name: a view, or a loose piece.
type flatGroup struct {
	name   string
	shapes []flat.Shape
}

// whereAll is one drawing of where some seams lie, no higher than some mm; none where
// the garment cannot be laid flat. In a sitting it is one of each garment.
func (c *composer) whereAll(seams []process.Seam, high float64) []figure.Figure {
	if c.at == "" || len(seams) == 0 {
		return nil
	}
	if len(c.garments) > 0 {
		var out []figure.Figure
		c.ofEach(seams, func(own []process.Seam) { out = append(out, c.whereAll(own, high)...) })
		return out
	}
	g, ok := c.laidFlat()
	if !ok {
		return nil
	}
	return c.onTheGarment(g, high, seams...)
}

// onTheGarment draws front and back, and beside them what the seams lie on besides;
// none where they lie on no edge and along no line.
func (c *composer) onTheGarment(g flat.Garment, most float64, seams ...process.Seam) []figure.Figure {
	on := func(x flat.Shape) bool {
		return slices.ContainsFunc(seams, func(s process.Seam) bool { return len(g.On(x, s.Name)) > 0 })
	}
	names := []string{c.say.figures.viewFront, c.say.figures.viewBack}
	for k := range names {
		if c.of != "" {
			names[k] = fillText(c.say.sitting.of, "part", names[k], "label", c.of)
		}
	}
	var groups []flatGroup
	var banded []string
	found := false
	for k, v := range g.Views() {
		groups = append(groups, flatGroup{names[k], v})
		for _, x := range v {
			found = found || on(x)
			if x.Strip != "" {
				banded = append(banded, x.Strip)
			}
		}
	}
	for _, x := range g.Loose {
		drawn := slices.ContainsFunc(seams, func(s process.Seam) bool {
			return len(g.On(x, s.Name)) > 0 && !slices.Contains(banded, s.Name)
		})
		if !drawn {
			continue
		}
		found = true
		k := slices.IndexFunc(c.plan.Pieces, func(p process.Piece) bool { return p.Name == x.Piece })
		groups = append(groups, flatGroup{upper(c.plan.Pieces[k].Title), []flat.Shape{x}})
	}
	if !found {
		return nil
	}
	wide, high := 0.0, 0.0
	for _, v := range groups {
		b := v.box(1)
		wide, high = wide+b.Width(), max(high, b.Height())
	}
	scale := min(whereMost, most/max(high, 1), (whereWide-whereGap*float64(len(groups)))/max(wide, 1))
	var items, words []figure.Item
	left := 0.0
	for _, v := range groups {
		b := v.box(scale)
		w := c.measure.TextWidth(v.name, whereType, false)
		room := max(b.Width(), w)
		middle := left + room/2
		f := flatFigure{g: g, seams: seams, scale: scale, at: figure.Point{X: middle - (b.Left+b.Right)/2, Y: -b.Top}}
		items = append(items, f.items(v.shapes)...)
		words = append(words, figure.Text{At: figure.Point{X: middle, Y: high*scale + 4}, Size: whereType, Anchor: figure.Middle, Words: v.name})
		left += room + whereGap
	}
	var titles []string
	for _, s := range seams {
		titles = addOnce(titles, s.Title)
	}
	return []figure.Figure{figure.Fit(c.slug("where", seams[0].Name), fillText(c.say.figures.whereAlt, "seam", strings.Join(titles, c.say.list)), append(items, words...), 1, c.measure)}
}

func (v flatGroup) box(scale float64) figure.Box {
	var all []process.Point
	for _, s := range v.shapes {
		all = append(all, s.Outline()...)
	}
	return contourOf(all, scale).box()
}

// flatFigure draws the shapes of a view.
type flatFigure struct {
	g     flat.Garment
	seams []process.Seam
	scale float64
	at    figure.Point
}

func (f flatFigure) items(shapes []flat.Shape) []figure.Item {
	thin, under := figure.Stroke{Width: figure.Thin}, figure.Stroke{Width: figure.Hairline, Dash: []float64{0.8, 0.6}}
	heavy := figure.Stroke{Width: whereLine, Round: true}
	hidden := figure.Stroke{Width: figure.Bold, Dash: []float64{0.9, 0.6}}
	var out, over []figure.Item
	for _, s := range shapes {
		stroke, bold := thin, heavy
		if s.Inside {
			stroke, bold = under, hidden
		} else {
			out = append(out, figure.Polygon(figure.Stroke{}, figure.Fill{White: true}, f.line(s.Outline())...))
		}
		for _, d := range s.Sides {
			if d.Edge == "" && s.Opened { // the fold in its middle
				continue
			}
			out = append(out, figure.Polyline(stroke, f.line(d.Points)...))
		}
		for _, l := range s.Lines {
			if l.Kind == "leg" {
				out = append(out, figure.Polyline(figure.Stroke{Width: figure.Hairline}, f.line([]process.Point{l.From, l.To})...))
			}
		}
		for _, seam := range f.seams {
			for _, line := range f.g.On(s, seam.Name) {
				over = append(over, figure.Polyline(bold, f.line(line)...))
			}
		}
	}
	return append(out, over...)
}

// line are points as they are drawn, those that fall together once.
func (f flatFigure) line(points []process.Point) []figure.Point {
	var out []figure.Point
	for _, q := range points {
		p := figure.Point{X: q.X*f.scale + f.at.X, Y: q.Y*f.scale + f.at.Y}
		if len(out) == 0 || distance(out[len(out)-1], p) > 1e-6 {
			out = append(out, p)
		}
	}
	return out
}

// sewnAgain are the seams of a step that one drawing in its head shows. A bench or
// class sheet draws each seam by itself where it comes up, and here those that are
// sewn on later; the maker's draws each here where it is first sewn.
func (c *composer) sewnAgain(s process.Step, told map[string]bool) []process.Seam {
	key := sizesKey
	if c.reader == Maker {
		key = whereKey
	}
	var out []process.Seam
	for _, name := range c.seamsOf(s) {
		sewn := slices.ContainsFunc(s.Operations, func(id string) bool {
			o := c.operations[id]
			return o.Seam == name && o.Does == "stitch"
		})
		if sewn && told[key+name] == (c.reader != Maker) {
			told[key+name] = true
			out = append(out, c.seams[name])
		}
	}
	return out
}

// whereKey parts the seams that were drawn on the garment from other things that were
// told.
const whereKey = "where\x00"
