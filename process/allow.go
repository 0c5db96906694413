package process

import (
	"errors"
	"math"
	"slices"
	"strings"

	"bodkin/templates"
	"bodkin/templates/outline"
)

// flat is how closely, in mm, a drawn outline keeps to the true curve.
const flat = 0.2

// mitreSeam is the allowance of the seam that joins two hems at a corner, mm.
// Common practice, no source.
const mitreSeam = 6

// allow gives every edge its allowance and every piece its cut line.
func allow(made *templates.Made, lines []*line, quantity int) ([]Piece, error) {
	out := []Piece{}
	spares, err := spareRules()
	if err != nil {
		return nil, err
	}
	for _, p := range made.Pieces {
		piece, err := allowPiece(p, made.Details, lines, spares, quantity)
		if err != nil {
			return nil, err
		}
		out = append(out, piece)
	}
	return out, nil
}

func allowPiece(p templates.Piece, details []templates.Detail, lines []*line, spares []spareRule, quantity int) (Piece, error) {
	out := Piece{Name: p.Name, Title: p.Title, Cloth: p.Cloth, Cut: p.Cut, Count: p.Count * quantity,
		Grain: p.Grain, Bias: p.Bias, Edges: []Edge{}, Net: points(p.Outline.Flatten(flat)), Marks: []Mark{}}
	allowances := make([]outline.Allowance, len(p.Edges))
	begins := 0
	for i, e := range p.Edges {
		a, seam := allowanceOf(p, i, lines)
		spare, because := 0.0, ""
		if k := slices.IndexFunc(lines, func(l *line) bool { return l.name == seam }); k >= 0 {
			spare, because = spareAt(spares, p, e, lines[k], a.Width)
		}
		a.Width += spare
		allowances[i] = a
		drawn, _ := p.Outline.Edge(e.Name)
		middle, _ := drawn.At(drawn.Length() / 2)
		out.Edges = append(out.Edges, Edge{Name: e.Name, Length: float64(e.Length), Allowance: a.Width,
			Spare: spare, Because: because, Seam: seam, Middle: pointOf(middle), Begins: begins})
		begins += len(p.Outline.Edges[i].Flatten(flat)) - 1
	}
	cut, err := p.Outline.Cut(allowances)
	if err != nil {
		if shape, ok := errors.AsType[*outline.ShapeError](err); ok {
			return out, &CannotError{About: strings.ToLower(p.Title), Why: []string{shape.Error(),
				"choose a construction with a narrower allowance there"}}
		}
		return out, err
	}
	out.CutLine = points(cut.Points())
	for _, m := range p.Marks {
		at := pointOf(outline.Point{X: m.X, Y: m.Y})
		out.Marks = append(out.Marks, Mark{Name: m.Name, X: at.X, Y: at.Y})
	}
	if out.Drawn, err = carried(p, details, allowances, cut); err != nil {
		return out, err
	}
	if out.Chalk, err = chalk(p, cut); err != nil {
		return out, err
	}
	net, whole := p.Outline.Bounds(), cut.Bounds()
	out.NetWidth, out.NetHeight = net.Width(), net.Height()
	out.Width, out.Height, out.AreaMM2 = whole.Width(), whole.Height(), cut.Area()
	if p.FoldEdge != "" {
		out.AreaMM2 *= 2
		if fold, ok := p.Outline.Edge(p.FoldEdge); ok {
			if math.Abs(fold.From().X-fold.To().X) <= math.Abs(fold.From().Y-fold.To().Y) {
				out.Width, out.NetWidth = 2*out.Width, 2*out.NetWidth
			} else {
				out.Height, out.NetHeight = 2*out.Height, 2*out.NetHeight
			}
		}
	}
	return out, nil
}

// allowanceOf is the allowance of the i-th edge of a piece and the name of what
// it is for.
func allowanceOf(p templates.Piece, i int, lines []*line) (outline.Allowance, string) {
	e := p.Edges[i]
	if e.Use == "fold" {
		return outline.Allowance{Manner: outline.Folded}, "fold"
	}
	for _, l := range lines {
		if slices.Contains(l.own, p.Name) && strings.HasSuffix(e.Use, " "+l.name) {
			if over, ok := l.hangsAt(edgeOf{p.Name, e.Name}); ok {
				return outline.Allowance{Width: widthAt(over, lines)}, l.name
			}
			return outline.Allowance{Width: l.ownAllowance(p, i)}, l.name
		}
		if l.work != joining && !l.edging() || l.hangs() || !slices.Contains(l.edges, edgeOf{p.Name, e.Name}) {
			continue
		}
		a := outline.Allowance{Width: l.sized.Allowance}
		if l.work == joining && !slices.Contains(edgesOf(l.join.A), edgeOf{p.Name, e.Name}) {
			a.Width = l.sized.AllowanceB
		}
		switch l.kind {
		case "hem", "casing":
			a.Manner, a.Mitre = outline.Turned, mitreSeam
		case "front-band":
			a.Manner, a.First = outline.Turned, true
		}
		return a, l.name
	}
	// A dart's mouth is cut with the allowance of the seam that it opens into.
	if name, ok := strings.CutPrefix(e.Use, "dart "); ok {
		n := len(p.Edges)
		for _, k := range []int{(i + n - 1) % n, (i + 1) % n} {
			if !strings.HasPrefix(p.Edges[k].Use, "dart ") {
				a, _ := allowanceOf(p, k, lines)
				return a, name
			}
		}
	}
	return outline.Allowance{}, ""
}

// hangsAt is the edge of the garment that an edge of a hung lining is laid under.
func (l *line) hangsAt(own edgeOf) (edgeOf, bool) {
	if !l.hangs() {
		return edgeOf{}, false
	}
	k := slices.Index(l.fits(), own)
	if k < 0 || k >= len(l.edges) {
		return edgeOf{}, false
	}
	return l.edges[k], true
}

// widthAt is the allowance of an edge of the garment, by the line that finishes it.
func widthAt(e edgeOf, lines []*line) float64 {
	for _, x := range lines {
		if (x.work == joining || x.edging()) && !x.hangs() && slices.Contains(x.edges, e) {
			if x.work == joining && !slices.Contains(edgesOf(x.join.A), e) {
				return x.sized.AllowanceB
			}
			return x.sized.Allowance
		}
	}
	return 0
}

func points(ps []outline.Point) []Point {
	out := make([]Point, 0, len(ps))
	for _, p := range ps {
		out = append(out, pointOf(p))
	}
	return out
}

// pointOf turns a point of the draft, whose y runs upwards, into one of the
// plan, whose y runs downwards as on a table seen from its near side.
func pointOf(p outline.Point) Point { return Point{p.X, -p.Y} }

func distance(a, b Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }
