package templates

import (
	"math"

	"bodkin/seams/form"
	"bodkin/seams/length"
)

// treat measures a free edge.
//
// Flare: where a hem is turned up, its raw edge, d outside the hem line, comes
// to lie d inside it. Along a curve that turns by φ (outward bends positive) the
// parallel outside is longer than the edge by d φ and the one inside shorter by
// d φ, so the raw edge is longer than the place it lies on by 2 d φ. At a seam
// the cut line mirrors the neighbouring seam in the hem line, so that a slant
// makes no fullness, however the seams run. Hence Flare = 2 φ in radians, summed
// over the whole run; below 0, where the edge is hollow, the raw edge is too
// short by as much and must be clipped or stretched.
func (w *workshop) treat(i int) {
	e, t := &w.g.Edges[i], w.g.topology.edges[i]
	number := func(f form.Text) length.MM { return mm(w.length(f, e.from.scope)) }
	run := w.run(t, e.Across, e.Closed && !e.Across)
	r := Treatment{
		Name: e.Edge.Value, Title: e.Title, Kind: e.Kind, Along: t.parts, Ways: w.ways(t),
		Across: e.Across, Copies: 1, Closed: e.Closed && len(w.opened(t)) == 0, ClosedBy: e.ClosedBy.Value,
		Length: mm(run.length), TightestRadius: radius(run.tightest),
		Turning: run.turning, Hollow: run.signed < -hollowTurn,
		Bias: w.nearBias(t.parts), Flare: 2 * run.halves * run.signed * math.Pi / 180,
		Cloth: e.Cloth.Value, Depth: number(e.Depth), Elastic: number(e.Elastic), Grip: number(e.Grip),
		Interface: e.Interface, Strain: e.Strain, InsideSeen: e.InsideSeen, Insist: e.Sew.Value,
	}
	if e.EachSide {
		r.Copies = 2
	}
	if r.Interface == "" {
		r.Interface = "none"
	}
	for _, p := range e.Pieces {
		r.Pieces = append(r.Pieces, p.Value)
	}
	if len(e.Fits) > 0 {
		r.Fits, _ = w.g.chain(e.Fits)
		r.FitsWays = w.fitsWays(r.Fits, t)
		w.fit(fitted{at: e.Edge, title: e.Title, scope: e.from.scope, a: t.parts, b: r.Fits,
			lengthA: run.length, lengthB: w.sideLength(r.Fits, e.Across)})
	}
	r.Point = run.point
	r.Gives = w.edgePasses(i) > 1
	w.made.Treatments = append(w.made.Treatments, r)
}

// ran is what a chain measures that something is sewn along, once whole.
type ran struct {
	length, turning  float64
	signed, tightest float64 // of the half where it goes on over the centre
	halves           float64
	point            bool // it comes to a point in the cloth
}

// run measures a chain that something is sewn along, mirrored over the centre
// where it goes across.
func (w *workshop) run(t walked, across, closed bool) ran {
	b := bendsOf(w.edges(t.parts))
	turns, sharpest := w.corners(t, closed)
	halves, point := 1.0, false
	if across {
		halves = 2
		point = w.pointed(t.parts[0]) || w.pointed(t.parts[len(t.parts)-1])
		for _, turn := range []float64{w.overFold(t.parts[0]), w.overFold(t.parts[len(t.parts)-1])} {
			sharpest = max(sharpest, turn)
			turns += turn / 2 // once over the fold, not once a half
		}
	}
	if sharpest > sharpCorner {
		b.tightest = 0
	}
	for _, c := range t.parts {
		b.length -= w.shortened[c]
	}
	return ran{length: halves * b.length, turning: halves * (b.absolute + turns), signed: b.signed, tightest: b.tightest, halves: halves, point: point}
}

// corners returns the turns where one edge of a chain goes over to the next,
// added up, and the sharpest of them, in degrees. At a seam it is what the two
// pieces' angles beside the seam leave of a straight line.
func (w *workshop) corners(t walked, closed bool) (sum, sharpest float64) {
	n := len(t.parts)
	last := n - 1
	if closed {
		last = n
	}
	for k := range last {
		next := (k + 1) % n
		a, b := t.parts[k], t.parts[next]
		var turn float64
		if a.Piece != b.Piece && w.g.topology.corners.overlaid(w.g.topology.corners.end(a, !t.backward[k])) {
			continue // drawn in one sweep
		}
		if inside, ok := w.between(a, b); ok {
			turn = math.Abs(180 - inside)
		} else {
			turn = math.Abs(180 - w.inside(a, !t.backward[k]) - w.inside(b, t.backward[next]))
		}
		sum += turn
		sharpest = max(sharpest, turn)
	}
	return sum, sharpest
}

// between returns the angle inside a piece where two of its edges meet.
func (w *workshop) between(a, b ChainPart) (float64, bool) {
	if a.Piece != b.Piece {
		return 0, false
	}
	for _, c := range w.piece(a.Piece).Corners {
		if c.Before == a.Edge && c.After == b.Edge || c.Before == b.Edge && c.After == a.Edge {
			return c.Inside, true
		}
	}
	return 0, false
}

// inside returns the angle inside the piece at the finish of an edge, as the
// draft runs, or at its start; at a dart up to its leg, for it is sewn shut.
func (w *workshop) inside(p ChainPart, finish bool) float64 {
	if angle, ok := w.besideDart(p, finish); ok {
		return angle
	}
	d := w.g.draft(p.Piece)
	at := d.corner(p.Edge, finish)
	for _, c := range w.piece(p.Piece).Corners {
		if c.Before == at[0] && c.After == at[1] || c.Before == at[1] && c.After == at[0] {
			return c.Inside
		}
	}
	return 180
}

// besideDart returns the angle between an edge and the leg of the dart at an end
// of it, degrees.
func (w *workshop) besideDart(p ChainPart, finish bool) (float64, bool) {
	end := 1
	if finish {
		end = 0
	}
	for _, s := range w.sheet(p.Piece).darts {
		if s.edges[end] != p.Edge {
			continue
		}
		e, _ := w.piece(p.Piece).Outline.Edge(p.Edge)
		_, along := e.At(0)
		if finish {
			_, along = e.At(e.Length())
			along = along.Scale(-1)
		}
		leg := s.point.Sub(s.ends[end])
		across, with := along.X*leg.Y-along.Y*leg.X, along.X*leg.X+along.Y*leg.Y
		return math.Abs(math.Atan2(across, with)) * 180 / math.Pi, true
	}
	return 0, false
}

// corner names the two edges that meet at an end of an edge.
func (d *PieceDraft) corner(edge string, finish bool) [2]string {
	edges := d.edges()
	n := len(edges)
	for k, e := range edges {
		if e == edge && finish {
			return [2]string{e, edges[(k+1)%n]}
		}
		if e == edge {
			return [2]string{edges[(k+n-1)%n], e}
		}
	}
	return [2]string{}
}

// overFold returns the turn that an edge makes where it goes on over the fold,
// degrees; 0 where it does not end there.
func (w *workshop) overFold(p ChainPart) float64 {
	piece := w.piece(p.Piece)
	if piece.FoldEdge == "" {
		return 0
	}
	if inside, ok := w.between(p, ChainPart{p.Piece, piece.FoldEdge}); ok {
		return math.Abs(180 - 2*inside)
	}
	return 0
}

// pointed reports whether an edge that goes on over the fold makes a point in the
// cloth there, as the front of a V neck does.
func (w *workshop) pointed(p ChainPart) bool {
	piece := w.piece(p.Piece)
	if piece.FoldEdge == "" {
		return false
	}
	inside, ok := w.between(p, ChainPart{p.Piece, piece.FoldEdge})
	return ok && 2*inside > 180+sharpCorner
}
