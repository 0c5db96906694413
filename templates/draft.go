package templates

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
	"bodkin/templates/outline"
)

// sheet is a piece on the drafting table: its points, and its edges in the
// draft's own order and direction.
type sheet struct {
	draft  *PieceDraft
	values formula.Values // with NAME_x and NAME_y of its points
	points map[string]outline.Point
	edges  []outline.Edge
	raised map[string]float64 // mm, of edges that lie further in than on the piece that this one is like
	darts  map[string]dartShape
}

// lay draws a piece, once the figure is found that it is fitted by.
func (g *Garment) lay(d *PieceDraft, values formula.Values) (*sheet, error) {
	values, err := g.try(d, values)
	if err != nil {
		return nil, err
	}
	return g.draw(d, values)
}

// plot sets the points of a piece.
func (g *Garment) plot(d *PieceDraft, values formula.Values) (*sheet, error) {
	s := &sheet{draft: d, values: maps.Clone(values), points: map[string]outline.Point{}, darts: map[string]dartShape{}}
	for _, p := range d.Points {
		at, err := g.point(p.Value, s.values)
		if err != nil {
			return nil, err
		}
		s.points[p.Key.Value] = at
		s.values[p.Key.Value+"_x"], s.values[p.Key.Value+"_y"] = at.X, at.Y
	}
	return s, nil
}

// draw draws a piece with all its figures known.
func (g *Garment) draw(d *PieceDraft, values formula.Values) (*sheet, error) {
	s, err := g.plot(d, values)
	if err != nil {
		return nil, err
	}
	segments := make([][]outline.Segment, len(d.Outline))
	for i, line := range d.Outline {
		if !line.Dart.IsZero() {
			continue
		}
		segment, err := g.segment(s, line)
		if err != nil {
			return nil, err
		}
		segments[i] = segment
	}
	for i, line := range d.Outline {
		if line.Dart.IsZero() {
			continue
		}
		mouth, err := g.mouth(s, i, segments)
		if err != nil {
			return nil, err
		}
		segments[i] = mouth
	}
	for i, line := range d.Outline {
		if i == 0 || line.Edge.Value != d.Outline[i-1].Edge.Value {
			s.edges = append(s.edges, outline.Edge{Name: line.Edge.Value})
		}
		last := &s.edges[len(s.edges)-1]
		last.Segments = append(last.Segments, segments[i]...)
	}
	return s, nil
}

// raise moves edges of a piece that is drawn as another further in.
func (w *workshop) raise(s *sheet) error {
	d := s.draft
	for _, r := range d.Raise {
		by := w.length(r.Value, d.from.under)
		if err := w.faults.Err(); err != nil {
			return err
		}
		edges, err := outline.Raise(s.edges, r.Key.Value, by)
		if err != nil {
			return shapeFault(d, err)
		}
		s.edges = edges
		if s.raised == nil {
			s.raised = map[string]float64{}
		}
		s.raised[r.Key.Value] = by
	}
	return nil
}

func (g *Garment) point(xy []form.Text, values formula.Values) (outline.Point, error) {
	x, err := g.number(xy[0], values)
	if err != nil {
		return outline.Point{}, err
	}
	y, err := g.number(xy[1], values)
	return outline.Point{X: x, Y: y}, err
}

// segment draws one stroke. A stroke of no length is left out, so that a draft
// may have a curve that vanishes at some sizes.
func (g *Garment) segment(s *sheet, line Stroke) ([]outline.Segment, error) {
	from, to := s.points[line.From.Value], s.points[line.To.Value]
	control := make([]outline.Point, len(line.Curve))
	for i, c := range line.Curve {
		var err error
		if control[i], err = g.point(c, s.values); err != nil {
			return nil, err
		}
	}
	var out outline.Segment
	switch len(control) {
	case 0:
		out = outline.Line(from, to)
	case 1:
		out = outline.Quadratic(from, control[0], to)
	default:
		out = outline.Cubic(from, control[0], control[1], to)
	}
	const nothing = 1e-6 // mm
	if out.Length() < nothing {
		return nil, nil
	}
	return []outline.Segment{out}, nil
}

// piece makes the finished piece of a draft.
func (g *Garment) piece(s *sheet, t *topology) (Piece, error) {
	d := s.draft
	shape, err := outline.New(s.edges...)
	if err != nil {
		return Piece{}, shapeFault(d, err)
	}
	p := Piece{
		Name: d.Piece.Value, Title: d.Title, Cloth: d.Cloth.Value, Cut: d.Cut, Count: max(d.Count, 1),
		Like: d.Like.Value, FoldEdge: d.Fold.Value, Grain: d.Grain, Bias: d.Bias, Turned: d.Turned, Outline: shape, Corners: shape.Corners(), Interface: d.Interface,
	}
	if d.Cut == "pair" {
		p.Count *= 2
	}
	if p.Interface == "" {
		p.Interface = "none"
	}
	for _, e := range shape.Edges {
		edge := measured(e, p.laid(), t.uses[ChainPart{p.Name, e.Name}])
		edge.Raised = mm(s.raised[e.Name])
		p.Edges = append(p.Edges, edge)
	}
	if fold, ok := shape.Edge(p.FoldEdge); ok {
		if bent, _ := fold.Turning(); bent > 1e-6 {
			return Piece{}, shapeFault(d, &outline.ShapeError{Edges: []string{fold.Name}, What: "a fold must be straight", At: fold.From()})
		}
	}
	for _, t := range d.JoinsAt {
		x, err := g.number(t, s.values)
		if err != nil {
			return p, err
		}
		p.JoinsAt = append(p.JoinsAt, x)
	}
	slices.Sort(p.JoinsAt)
	p.JoinsHide = d.JoinsHide
	p.Marks, err = g.marks(s)
	return p, err
}

// marks are the marks of the draft, the points of the darts and the ends of the
// lines along which details lie.
func (g *Garment) marks(s *sheet) ([]Mark, error) {
	var marks []Mark
	for _, m := range s.draft.Marks {
		at := s.points[m.At.Value]
		if m.At.IsZero() {
			after, err := g.number(m.After, s.values)
			if err != nil {
				return nil, err
			}
			for _, e := range s.edges {
				if e.Name == m.Edge.Value {
					at, _ = e.At(after)
				}
			}
		}
		marks = append(marks, Mark{m.Mark, at.X, at.Y})
	}
	for _, t := range g.Details {
		told := map[string]bool{}
		for _, end := range slices.Concat(t.Lines...) {
			if t.Piece.Value == s.draft.Piece.Value && !told[end.Value] {
				told[end.Value] = true
				at := s.points[end.Value]
				marks = append(marks, Mark{"line of the " + t.Title, at.X, at.Y})
			}
		}
		if shape, ok := s.darts[t.Detail.Value]; ok && t.Piece.Value == s.draft.Piece.Value {
			marks = append(marks,
				Mark{t.Title + " point", shape.point.X, shape.point.Y},
				Mark{t.Title + " leg", shape.ends[0].X, shape.ends[0].Y},
				Mark{t.Title + " leg", shape.ends[1].X, shape.ends[1].Y})
		}
	}
	return marks, nil
}

// shapeFault tells what is wrong with a piece's outline at this size.
func shapeFault(d *PieceDraft, err error) error {
	message := err.Error()
	if shape, ok := errors.AsType[*outline.ShapeError](err); ok {
		message = fmt.Sprintf("the %s cannot be drawn at this size: %s", strings.ToLower(d.Title), shape.Error())
	}
	return form.Faults{d.Piece.Fault(0, len([]rune(d.Piece.Value)), message, "",
		"look again at the measures and choices; if they are right, the draft must be changed for them")}
}
