package templates

import (
	"fmt"

	"bodkin/seams/form"
	"bodkin/templates/outline"
)

// dartShape is a dart as drawn: its point, the two ends of its mouth with the
// edges beside them, and the place where its fold meets the mouth.
type dartShape struct {
	point, fold outline.Point
	ends        [2]outline.Point
	edges       [2]string
}

// beside returns the end of the mouth at an edge.
func (s dartShape) beside(edge string) outline.Point {
	if s.edges[1] == edge {
		return s.ends[1]
	}
	return s.ends[0]
}

// legDifference is how much the two legs may differ, mm.
const legDifference = 0.5

// mouth draws the mouth of a dart so that, folded shut and pressed, its raw edge
// lies along the seam: the line of the edge towards which it is pressed is
// mirrored in the leg beside it as far as the middle of the dart, where the
// fold will be, and mirrored in the fold from there to the other leg.
func (g *Garment) mouth(s *sheet, i int, segments [][]outline.Segment) ([]outline.Segment, error) {
	line := s.draft.Outline[i]
	t := g.detail(line.Dart.Value, s.draft.Piece.Value)
	shape := dartShape{
		point: s.points[t.Point.Value],
		ends:  [2]outline.Point{s.points[line.From.Value], s.points[line.To.Value]},
	}
	n := len(s.draft.Outline)
	before, after := (i+n-1)%n, (i+1)%n
	shape.edges = [2]string{s.draft.Outline[before].Edge.Value, s.draft.Outline[after].Edge.Value}
	fail := func(message, mend string) ([]outline.Segment, error) {
		return nil, form.Faults{t.Detail.Fault(0, len([]rune(t.Detail.Value)), message, "", mend)}
	}
	a, b := shape.point.Distance(shape.ends[0]), shape.point.Distance(shape.ends[1])
	if d := a - b; d > legDifference || d < -legDifference {
		return fail(fmt.Sprintf("its legs are %.1f and %.1f mm long, and are sewn together", a, b),
			"move one end of the mouth so that both are as far from the point")
	}
	if wide, beside := shape.ends[0].Distance(shape.ends[1]), lengthOf(segments[before])+lengthOf(segments[after]); wide > beside {
		return fail(fmt.Sprintf("its mouth is %s wide, and longer than the edges %s and %s that it lies between, %s together",
			said(wide), shape.edges[0], shape.edges[1], said(beside)), "make the dart narrower")
	}
	near, far := shape.ends[1], shape.ends[0]
	var seam outline.Point // the way the seam goes on from the mouth
	if t.Toward.Value == shape.edges[1] && len(segments[after]) > 0 {
		seam = segments[after][0].Tangent(0)
	} else if beside := segments[before]; len(beside) > 0 {
		near, far = far, near
		seam = beside[len(beside)-1].Tangent(1).Scale(-1)
	}
	fold, ok := outline.Mouth(shape.point, near, far, seam)
	if !ok {
		return fail("its mouth cannot be drawn so that it lies on the seam when pressed",
			"make the dart narrower, or bring its point nearer to square with the seam")
	}
	shape.fold = fold
	s.darts[t.Detail.Value] = shape
	return []outline.Segment{outline.Line(shape.ends[0], fold), outline.Line(fold, shape.ends[1])}, nil
}

func lengthOf(segments []outline.Segment) float64 {
	sum := 0.0
	for _, s := range segments {
		sum += s.Length()
	}
	return sum
}

func (g *Garment) detail(name, piece string) *DetailDraft {
	for i := range g.Details {
		if g.Details[i].Detail.Value == name && g.Details[i].Piece.Value == piece {
			return &g.Details[i]
		}
	}
	return nil
}

// made describes a dart at this size.
func (s dartShape) made(t *DetailDraft) Detail {
	d := Detail{
		Name: t.Detail.Value, Title: t.Title, Kind: t.Kind.Value, Piece: t.Piece.Value, Copies: 1, Count: 1, TightestRadius: straightRadius,
		Between: [2]string{t.Between[0].Value, t.Between[1].Value}, Press: t.Press,
		Point: s.point, Fold: s.fold,
		Ends:   [2]outline.Point{s.beside(t.Between[0].Value), s.beside(t.Between[1].Value)},
		Length: mm(s.point.Distance(s.ends[0])), Width: mm(s.ends[0].Distance(s.ends[1])),
	}
	if t.EachSide {
		d.Copies = 2
	}
	return d
}
