package templates

import "math"

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
	edges := w.edges(t.parts)
	b := bendsOf(edges)
	turns, sharpest := w.corners(t, e.Closed && !e.Across)
	halves := 1.0
	if e.Across {
		halves = 2
		for _, turn := range []float64{w.overFold(t.parts[0]), w.overFold(t.parts[len(t.parts)-1])} {
			sharpest = max(sharpest, turn)
			turns += turn / 2 // once over the fold, not once a half
		}
	}
	if sharpest > sharpCorner {
		b.tightest = 0
	}
	r := Treatment{
		Name: e.Edge.Value, Title: e.Title, Kind: e.Kind, Along: t.parts,
		Across: e.Across, Copies: 1, Closed: e.Closed, ClosedBy: e.ClosedBy.Value,
		Length: mm(halves * b.length), TightestRadius: radius(b.tightest),
		Turning: halves * (b.absolute + turns), Hollow: b.signed < -hollowTurn,
		Bias: nearBias(edges), Flare: 2 * halves * b.signed * math.Pi / 180,
		Cloth: e.Cloth.Value, Depth: mm(w.number(e.Depth)), Elastic: mm(w.number(e.Elastic)), Grip: mm(w.number(e.Grip)),
		Interface: e.Interface, Strain: e.Strain, InsideSeen: e.InsideSeen, Insist: e.Sew.Value,
	}
	if e.EachSide {
		r.Copies = 2
	}
	if r.Interface == "" {
		r.Interface = "none"
	}
	w.made.Treatments = append(w.made.Treatments, r)
}

// corners returns the turns where one edge of a chain goes over to the next,
// added up, and the sharpest of them, in degrees. At a seam it is what the two
// pieces' angles beside the seam leave of a straight line.
func (w *workshop) corners(t walked, closed bool) (sum, sharpest float64) {
	n := len(t.parts)
	last := n - 1
	if closed && n > 1 {
		last = n
	}
	for k := range last {
		next := (k + 1) % n
		a, b := t.parts[k], t.parts[next]
		var turn float64
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
// draft runs, or at its start.
func (w *workshop) inside(p ChainPart, finish bool) float64 {
	d := w.g.draft(p.Piece)
	at := d.corner(p.Edge, finish)
	for _, c := range w.piece(p.Piece).Corners {
		if c.Before == at[0] && c.After == at[1] || c.Before == at[1] && c.After == at[0] {
			return c.Inside
		}
	}
	return 180
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
