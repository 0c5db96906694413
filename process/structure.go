package process

import (
	"math"
	"slices"

	"bodkin/templates"
	"bodkin/templates/outline"
)

// edgeOf names an edge of a piece.
type edgeOf struct{ piece, edge string }

// relation says that one line's work waits for another's, and why. Lines are
// given by index.
type relation struct {
	first, then int
	// flatOnly: only the flat-worked part of first must be done (what waits for
	// the closing join comes later).
	flatOnly bool
	// closingOnly: only the closing part of then waits.
	closingOnly bool
	because     string
}

// structure derives from the garment which line waits for which. The rules look
// only at which edges meet at the corners of the pieces; no garment file states
// an order.
func structure(made *templates.Made, lines []*line) []relation {
	s := structureOf{made: made, lines: lines, user: map[edgeOf]int{}}
	for i, l := range lines {
		if l.work != joining && !l.edging() || l.hangs() {
			continue
		}
		for _, e := range l.edges {
			s.user[e] = i
		}
	}
	var out []relation
	for i, l := range lines {
		switch l.work {
		case joining:
			out = append(out, s.crossings(i, l)...)
		case onePiece:
			out = append(out, s.insidePiece(i, l)...)
			if l.draws != nil {
				out = append(out, s.gathering(i, l)...)
			}
		}
		if l.detail != nil && l.kind != "dart" {
			out = append(out, s.details(i, l)...)
		}
	}
	return append(out, s.corners()...)
}

type structureOf struct {
	made  *templates.Made
	lines []*line
	user  map[edgeOf]int // line that a joined or treated edge belongs to
}

// crossings: what runs over the end of a join waits for it, unless it is worked
// flat and this is the join that closes it; what ends in the join comes first.
func (s *structureOf) crossings(j int, join *line) []relation {
	a := setOf(edgesOf(join.join.EndsA))
	b := setOf(edgesOf(join.join.EndsB))
	var out []relation
	for i, x := range s.lines {
		if i == j || x.work != joining && !x.edging() {
			continue
		}
		inA, inB := meets(x.edges, a), meets(x.edges, b)
		switch {
		case inA && inB && x.flat && x.closedBy() == join.name:
			out = append(out,
				relation{first: i, then: j, flatOnly: true,
					because: "the " + x.title + " is worked flat, and the " + join.title + " closes it"},
				relation{first: j, then: i, closingOnly: true,
					because: "the " + x.title + " is finished all round once the " + join.title + " has closed it"})
		case inA && inB:
			out = append(out, relation{first: j, then: i,
				because: "the " + x.title + " runs over the end of the " + join.title})
		case (inA || inB) && x.work == treating && s.goesOn(append(slices.Clone(join.join.A), join.join.B...), x.edges):
			out = append(out, relation{first: j, then: i,
				because: "the " + x.title + " goes on from the end of the " + join.title + ", and its turn from the allowance that is pressed there"})
		case (inA || inB) && x.edging():
			out = append(out, relation{first: i, then: j,
				because: "the " + join.title + " closes over the end of the " + x.title})
		}
	}
	return out
}

// insidePiece: a dart is sewn before the seam that takes its mouth in, and
// staystitching before anything else handles the piece.
func (s *structureOf) insidePiece(d int, l *line) []relation {
	var out []relation
	for i, x := range s.lines {
		if i == d {
			continue
		}
		switch {
		case l.draws != nil:
		case l.kind == "staystitch":
			if x.kind != "staystitch" && touches(x, l.pieces) {
				out = append(out, relation{first: d, then: i,
					because: "staystitching holds the " + l.title + " before the cloth is handled"})
			}
		case l.kind == "dart" && x.work != onePiece && meets(x.edges, setOf(l.edges)):
			out = append(out, relation{first: d, then: i,
				because: "the " + x.title + " takes in the mouth of the " + l.title})
		}
	}
	return out
}

func touches(x *line, pieces []string) bool {
	return slices.ContainsFunc(x.pieces, func(p string) bool { return slices.Contains(pieces, p) })
}

// corners: where two treated edges meet at a corner, the one that covers waits
// for the one that is turned; where neither does, the garment's order holds.
func (s *structureOf) corners() []relation {
	seen := map[[2]int]bool{}
	var out []relation
	for _, p := range s.made.Pieces {
		n := len(p.Edges)
		for k := range n {
			i, okI := s.user[edgeOf{p.Name, p.Edges[k].Name}]
			j, okJ := s.user[edgeOf{p.Name, p.Edges[(k+1)%n].Name}]
			if !okI || !okJ || i == j || !s.lines[i].edging() || !s.lines[j].edging() {
				continue
			}
			first, then := min(i, j), max(i, j)
			because := "the two meet at a corner, and the garment names the " + s.lines[first].title + " first"
			if cf, ct := s.lines[first].covers(), s.lines[then].covers(); cf != ct {
				if cf {
					first, then = then, first
				}
				because = "the " + s.lines[then].title + " covers the end of the " + s.lines[first].title
			}
			if !seen[[2]int{first, then}] {
				seen[[2]int{first, then}] = true
				out = append(out, relation{first: first, then: then, because: because})
			}
		}
	}
	return out
}

// goesOn reports whether one of the edges goes straight on from the end of a
// chain, as a slit does under a seam.
func (s *structureOf) goesOn(chain []templates.ChainPart, edges []edgeOf) bool {
	return slices.ContainsFunc(chain, func(part templates.ChainPart) bool {
		return slices.ContainsFunc(s.piece(part.Piece).Corners, func(c outline.Corner) bool {
			next := c.After
			if next == part.Edge {
				next = c.Before
			} else if c.Before != part.Edge {
				return false
			}
			return slices.Contains(edges, edgeOf{part.Piece, next}) && math.Abs(c.Inside-180) <= straightOn
		})
	})
}

func (s *structureOf) piece(name string) *templates.Piece {
	i := slices.IndexFunc(s.made.Pieces, func(p templates.Piece) bool { return p.Name == name })
	return &s.made.Pieces[i]
}

func meets(edges []edgeOf, set map[edgeOf]bool) bool {
	return slices.ContainsFunc(edges, func(e edgeOf) bool { return set[e] })
}

func setOf(edges []edgeOf) map[edgeOf]bool {
	m := map[edgeOf]bool{}
	for _, e := range edges {
		m[e] = true
	}
	return m
}

func edgesOf(chains ...[]templates.ChainPart) []edgeOf {
	var out []edgeOf
	for _, c := range chains {
		for _, p := range c {
			out = append(out, edgeOf{p.Piece, p.Edge})
		}
	}
	return out
}
