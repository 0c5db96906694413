package process

import (
	"fmt"
	"math"
	"slices"

	"bodkin/seams"
	"bodkin/templates"
)

// gatheredFrom is the part of the longer edge from which fullness is gathered and
// not eased: an estimate, as the constructions for eased and gathered seams have it.
const gatheredFrom = 0.15

// gathers are the longer edges of what is sewn with more fullness than can be
// eased: each is drawn up on rows of its own before that, whatever seam is chosen.
func (b *layer) gathers(lines []*line) []*line {
	var out []*line
	for _, l := range lines {
		if l.work != joining && l.work != along || l.facts.Join.Eased <= gatheredFrom*l.length {
			continue
		}
		edges := l.edges
		if l.work == joining {
			edges = edgesOf(l.join.A)
			if l.join.LengthB > l.join.LengthA {
				edges = edgesOf(l.join.B)
			}
		}
		role := b.pieceOf(edges[0].piece).Cloth
		g := b.base(role, role)
		g.name, g.title, g.work, g.kind, g.draws = l.name+"-gathers", "gathers of the "+l.title, onePiece, "gathers", l
		g.edges, g.pieces, g.copies, g.length = edges, b.piecesOf(edges), l.copies, l.length
		g.facts.Join = l.facts.Join
		out = append(out, g)
	}
	return out
}

// drawnUp leaves out the gathers of what draws them up itself.
func drawnUp(lines []*line) []*line {
	return slices.DeleteFunc(lines, func(l *line) bool {
		return l.draws != nil && slices.ContainsFunc(l.draws.sized.Passes, func(p seams.SizedPass) bool { return p.Pass.Does == "gather" })
	})
}

// ratio is how many times as long as it will be an edge is before it is drawn up.
func (l *line) ratio() string {
	long, eased := l.facts.Join.Length, l.facts.Join.Eased
	if eased <= 0 || eased >= long {
		return "1 to 1"
	}
	return fmt.Sprintf("%.3g to 1", math.Round(10*long/(long-eased))/10)
}

// gathering: gathers are drawn up before what takes them in, and when the seams
// are sewn that they run over.
func (s *structureOf) gathering(d int, l *line) []relation {
	var out []relation
	for i, x := range s.lines {
		switch {
		case x == l.draws:
			out = append(out, relation{first: d, then: i,
				because: "the " + x.title + " takes the fullness in when it is drawn up"})
		case x != l && x.work == joining && within(l.pieces, x.join.A) && within(l.pieces, x.join.B) && x.join.A[0].Piece != x.join.B[0].Piece:
			out = append(out, relation{first: i, then: d,
				because: "the rows of the " + l.title + " run on over the " + x.title})
		}
	}
	return out
}

func within(pieces []string, chain []templates.ChainPart) bool {
	return !slices.ContainsFunc(chain, func(c templates.ChainPart) bool { return !slices.Contains(pieces, c.Piece) })
}
