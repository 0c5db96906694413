package templates

import (
	"slices"

	"bodkin/templates/outline"
)

// Way is an edge of a chain and which way it is walked.
type Way struct {
	ChainPart
	Back bool // from its end to its beginning, as the outline has them
}

// ways are the parts of a chain as they lie in the drawn outlines, which run
// anticlockwise whichever way their drafts do.
func (w *workshop) ways(t walked) []Way {
	out := make([]Way, len(t.parts))
	for k, part := range t.parts {
		out[k] = Way{part, t.backward[k] != w.against(part)}
	}
	return out
}

// against reports an edge that the outline runs against its draft.
func (w *workshop) against(part ChainPart) bool {
	s, p := w.sheet(part.Piece), w.piece(part.Piece)
	k := slices.IndexFunc(s.edges, func(e outline.Edge) bool { return e.Name == part.Edge })
	drawn, _ := p.Outline.Edge(part.Edge)
	from := s.edges[k].From()
	return drawn.To().Distance(from) < drawn.From().Distance(from)
}

// fitsWays are the own edges of something that is sewn along a chain, walked
// beside it. Edges of pieces that are not sewn to one another first have no way of
// their own: the first and the last run so that they come to the centre where the
// chain does, the others as they are drafted.
func (w *workshop) fitsWays(fits []ChainPart, along walked) []Way {
	if len(fits) == 0 {
		return nil
	}
	c := w.g.topology.corners
	t, bad := c.walk(fits, false)
	if bad == 0 && len(fits) > 1 {
		return w.ways(t)
	}
	back := make([]bool, len(fits))
	comes := func(k int, finish bool) bool { return c.central(c.end(fits[k], finish)) }
	last := len(fits) - 1
	if c.central(along.to) {
		back[last] = comes(last, false) && !comes(last, true)
	}
	if c.central(along.from) {
		back[0] = comes(0, true) && !comes(0, false)
	}
	return w.ways(walked{parts: fits, backward: back})
}
