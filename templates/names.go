package templates

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
	"bodkin/seams/length"
)

// named checks the garment's own name.
func (p *parser) named() {
	if strings.Trim(p.g.Name, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" {
		p.faults = append(p.faults, form.FaultAt(form.Place{File: p.file()},
			fmt.Sprintf("%q cannot be the name of a garment", p.g.Name), "", "use small letters, figures and hyphens"))
	}
}

func (p *parser) file() string {
	if len(p.g.Measures) > 0 {
		return p.g.Measures[0].Key.At.File
	}
	return ""
}

// measures declares the measures; each reckoned one may use those above it.
func (p *parser) measures() {
	for _, m := range p.g.Measures {
		if why := p.names.Refuses(m.Key.Value); why != "" {
			p.fault(m.Key, why, "", "choose another name")
			continue
		}
		v := m.Value
		if !(v.Least > 0 && v.Least < v.Most) {
			p.fault(m.Key, "its least and most are not a range", "", "least is more than nothing and less than most")
		}
		if v.Default != 0 && (v.Default < v.Least || v.Default > v.Most) {
			p.fault(m.Key, "its default is not between its least and most", "", "widen the range or change the default")
		}
		if v.Default != 0 && !v.Reckoned.IsZero() {
			p.fault(v.Reckoned, "it has a default already", "", "keep the default or the formula, not both")
		}
		if !v.Reckoned.IsZero() {
			p.compile(v.Reckoned, formula.Number, p.names)
		}
		p.names = p.names.With(formula.Number, m.Key.Value)
	}
}

// choices declares the choices and checks their defaults and ranges.
func (p *parser) choices() {
	for _, c := range p.g.Choices {
		if why := p.names.Refuses(c.Key.Value); why != "" {
			p.fault(c.Key, why, "", "choose another name")
			continue
		}
		v := c.Value
		if words := v.Words(); len(words) > 0 {
			p.known(v.Default, "choice", words)
			if !v.Least.IsZero() || !v.Most.IsZero() {
				p.fault(c.Key, "a choice among words has no least or most", "", "leave them out")
			}
			p.names = p.names.With(formula.Words, c.Key.Value)
			continue
		}
		p.names = p.names.With(formula.Number, c.Key.Value)
		if v.Least.IsZero() || v.Most.IsZero() {
			p.fault(c.Key, "a choice of a length or number needs its least and most", "", "add least: and most:, or one_of: for words")
			continue
		}
		least, ok1 := p.quantity(v.Least, v.IsLength())
		most, ok2 := p.quantity(v.Most, v.IsLength())
		usual, ok3 := p.quantity(v.Default, v.IsLength())
		if ok1 && ok2 && ok3 && !(least < most && usual >= least && usual <= most) {
			p.fault(c.Key, "its default is not between its least and most", "", "widen the range or change the default")
		}
	}
}

// quantity reads a length or a plain number of the file.
func (p *parser) quantity(t form.Text, isLength bool) (float64, bool) {
	x, fault := quantity(t, isLength)
	if fault != nil {
		p.faults = append(p.faults, *fault)
	}
	return x, fault == nil
}

// quantity reads a length or a plain number.
func quantity(t form.Text, isLength bool) (float64, *form.Fault) {
	whole := len([]rune(t.Value))
	if isLength {
		mm, err := length.Parse(t.Value)
		if e, ok := errors.AsType[*length.Error](err); ok {
			nearest, mend := e.Hint()
			f := t.Fault(0, whole, strconv.Quote(t.Value)+" "+e.Trouble(), nearest, mend)
			return 0, &f
		}
		return float64(mm), nil
	}
	x, err := strconv.ParseFloat(t.Value, 64)
	if err != nil || x-x != 0 {
		f := t.Fault(0, whole, fmt.Sprintf("%q is not a number", t.Value), "", "write a plain number, such as 1.5")
		return 0, &f
	}
	return x, nil
}

// pieces checks each draft: names, outline in one line, formulas.
func (p *parser) pieces() {
	for i := range p.g.Drafts {
		d := &p.g.Drafts[i]
		p.spelt(d.Piece, "piece")
		p.known(d.Cloth, "cloth", p.g.Cloths.Keys())
		if d.Count < 0 || d.Count > 20 {
			p.fault(d.Piece, fmt.Sprintf("its count cannot be %d", d.Count), "", "count says how many are cut, or how many pairs where cut is pair")
		}
		before := p.g.scopes[d.from.scope].before(i)
		p.tried(d, before)
		before = d.found(before)
		p.points(d, before)
		p.outline(d, before)
		for _, t := range d.JoinsAt {
			p.compile(t, formula.Number, pointNames(d, before))
		}
		edges := d.edges()
		for _, r := range d.Raise {
			p.known(r.Key, "edge", edges)
			p.compile(r.Value, formula.Number, p.g.scopes[d.from.under].before(i))
		}
		if (d.Cut == "fold") != !d.Fold.IsZero() {
			p.fault(d.Piece, "a piece cut on the fold names its fold edge, and no other does", "", "write cut: fold and fold: with the edge's name, or neither")
		} else if d.Cut == "fold" {
			p.known(d.Fold, "edge", edges)
		}
		for _, m := range d.Marks {
			switch {
			case !m.At.IsZero() && m.Edge.IsZero() && m.After.IsZero():
				p.known(m.At, "point", d.Points.Keys())
			case m.At.IsZero() && !m.Edge.IsZero() && !m.After.IsZero():
				p.known(m.Edge, "edge", edges)
				p.compile(m.After, formula.Number, pointNames(d, before))
			default:
				p.fault(d.Piece, fmt.Sprintf("the mark %q has no one place", m.Mark), "", "write at: with a point, or edge: and after: with a length")
			}
		}
	}
}

// pointNames are the names that the outline may use.
func pointNames(d *PieceDraft, before formula.Names) formula.Names {
	var names []string
	for _, q := range d.Points {
		names = append(names, q.Key.Value+"_x", q.Key.Value+"_y")
	}
	return before.With(formula.Number, names...)
}

// alike draws every piece that is like another as that one is.
func (p *parser) alike() {
	for i := range p.g.Drafts {
		d := &p.g.Drafts[i]
		if d.Like.IsZero() {
			if len(d.Raise) > 0 {
				p.fault(d.Piece, "an edge is raised only where the piece is drawn as another", "", "leave raise: out, and draw the edge where it should lie")
			}
			if len(d.Points) == 0 || len(d.Outline) == 0 {
				p.fault(d.Piece, fmt.Sprintf("the piece %q is not drawn", d.Piece.Value), "",
					"give it points: and outline:, or like: and the piece that it is drawn as")
			}
			continue
		}
		var names []string
		for k := range p.g.Drafts[:i] {
			names = append(names, p.g.Drafts[k].Piece.Value)
		}
		if !p.known(d.Like, "piece above it", names) {
			continue
		}
		if len(d.Points) > 0 || len(d.Outline) > 0 || d.Fit != nil {
			p.fault(d.Like, "it has points or an outline of its own", "", "leave them out, or leave like: out")
		}
		other := p.g.draft(d.Like.Value)
		d.Points, d.Outline, d.Fit, d.from.scope = other.Points, other.Outline, other.Fit, other.from.scope
		if len(d.JoinsAt) == 0 {
			d.JoinsAt, d.JoinsHide = other.JoinsAt, other.JoinsHide
		}
		if d.Piece.Value != other.Piece.Value {
			p.dartsOf(d, other.Piece.Value)
		}
	}
}

// dartsOf gives a piece that is drawn as another the other's darts, such as a
// lining those of the cloth over it.
func (p *parser) dartsOf(d *PieceDraft, other string) {
	d.Outline = slices.Clone(d.Outline)
	named := func(t form.Text) form.Text {
		t.Value = d.Piece.Value + "-" + t.Value
		return t
	}
	for i := range d.Outline {
		if s := &d.Outline[i]; !s.Dart.IsZero() {
			s.Dart = named(s.Dart)
		}
	}
	for _, t := range p.g.Details {
		if t.Kind.Value != "dart" || t.Piece.Value != other {
			continue
		}
		t.Detail, t.Piece, t.follows = named(t.Detail), d.Piece, true
		t.Title = strings.ToLower(d.Title + " " + t.Title)
		if p.g.detail(t.Detail.Value, t.Piece.Value) == nil { // a piece may be drawn twice, at choices of its own
			p.g.Details = append(p.g.Details, t)
		}
	}
}

// points declares the points; each may use those above it.
func (p *parser) points(d *PieceDraft, before formula.Names) {
	all := pointNames(d, before)
	var above []string
	for i, q := range d.Points {
		x, y := q.Key.Value+"_x", q.Key.Value+"_y"
		for _, own := range []string{x, y} {
			if why := before.Refuses(own); why != "" {
				p.fault(q.Key, "for the point's own figure "+own+": "+why, "", "choose another name")
			}
		}
		names := all
		if usesAny(q.Value, d.Points[i:].Keys()) {
			names = before.With(formula.Number, above...)
		}
		p.coordinates(q.Key, q.Value, names)
		above = append(above, x, y)
	}
}

// usesAny reports whether formulas use a figure of one of these points.
func usesAny(texts []form.Text, points []string) bool {
	for _, t := range texts {
		for used := range identifiers(t.Value) {
			name, axis := strings.CutSuffix(used, "_x")
			if !axis {
				name, axis = strings.CutSuffix(used, "_y")
			}
			if axis && slices.Contains(points, name) {
				return true
			}
		}
	}
	return false
}

func (p *parser) coordinates(at form.Text, xy []form.Text, names formula.Names) {
	if len(xy) != 2 {
		p.fault(at, fmt.Sprintf("a point has two figures, and here are %d", len(xy)), "",
			"write [x, y], and put a formula with a comma in quotes")
		return
	}
	for _, t := range xy {
		p.compile(t, formula.Number, names)
	}
}

// outline checks the names and figures of every stroke.
func (p *parser) outline(d *PieceDraft, before formula.Names) {
	names := pointNames(d, before)
	points := d.Points.Keys()
	for _, s := range d.Outline {
		p.spelt(s.Edge, "edge")
		p.known(s.From, "point", points)
		p.known(s.To, "point", points)
		if len(s.Curve) > 2 {
			p.fault(s.Edge, fmt.Sprintf("a curve has one or two control points, and here are %d", len(s.Curve)), "", "draw it in two lines with a point between")
		}
		for _, c := range s.Curve {
			p.coordinates(s.Edge, c, names)
		}
		if !s.Dart.IsZero() && len(s.Curve) > 0 {
			p.fault(s.Edge, "the mouth of a dart has no curve of its own", "", "leave curve: out; the mouth is drawn from the dart's point and the seam")
		}
	}
	if !d.changes() {
		p.round(d)
	}
}

// changes reports whether some choices draw other lines than others.
func (d *PieceDraft) changes() bool {
	return slices.ContainsFunc(d.Outline, func(s Stroke) bool { return !s.If.IsZero() })
}

// round checks that the strokes go round once and that each edge is drawn in one
// go.
func (p *parser) round(d *PieceDraft) {
	drawn := map[string]bool{}
	for i, s := range d.Outline {
		before := d.Outline[(i+len(d.Outline)-1)%len(d.Outline)]
		if i == 0 || s.Edge.Value != before.Edge.Value {
			p.once(s.Edge, "edge", drawn)
		}
		if before.To.Value != s.From.Value {
			p.fault(s.From, fmt.Sprintf("the line before ends at %q", before.To.Value), "", "start where it ends; the last line ends where the first starts")
		}
	}
	if len(d.Outline) < 2 {
		p.fault(d.Piece, "an outline has two lines at least", "", "")
	}
}

// edges are the names of the edges in the draft's order.
func (d *PieceDraft) edges() []string {
	var names []string
	for i, s := range d.Outline {
		if i == 0 || s.Edge.Value != d.Outline[i-1].Edge.Value {
			names = append(names, s.Edge.Value)
		}
	}
	return names
}

// isMouth reports whether the edge is the mouth of a dart, and of which.
func (d *PieceDraft) isMouth(edge string) (dart string, ok bool) {
	i := slices.IndexFunc(d.Outline, func(s Stroke) bool { return s.Edge.Value == edge })
	if i < 0 || d.Outline[i].Dart.IsZero() {
		return "", false
	}
	return d.Outline[i].Dart.Value, true
}
