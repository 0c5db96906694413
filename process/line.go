package process

import (
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
)

// work is what a line is for.
type work int

const (
	joining  work = iota // two chains of edges
	treating             // a free edge
	onePiece             // inside one piece: dart, staystitch, pocket
	setIn                // in a join: zip, pocket in the seam
	along                // along a free edge, with pieces of its own: collar, cuff, waistband
)

// line is a join, an edge treatment or a detail on its way through the planner:
// what the garment says of it, what was chosen for it, what it measures.
type line struct {
	name, title string
	work        work
	kind        string // seam; hem, binding, facing, band, casing; dart, staystitch, or another detail's kind
	join        *templates.Join
	edge        *templates.Treatment
	detail      *templates.Detail
	edges       []edgeOf
	pieces      []string // in garment order, each once
	own         []string // of these, the pieces that are sewn on: a facing's, a pocket's, a collar's
	copies      int
	length      float64 // one copy

	role, appliedRole string
	cloth, applied    seams.Cloth // applied is the garment's own where there is no second cloth
	facts             seams.Facts

	construction *seams.Construction
	sized        seams.Sized
	chosen       seams.Verdict
	others       []seams.Verdict
	equals       map[*seams.Construction]float64 // those for which as much speaks, with the minutes of one copy
	insisted     bool
	byDesign     bool // it is the garment's design that insists
	anyway       bool
	otherwise    string // what it would be if no quick, neat or strong work were favoured; empty where the same

	flat        bool // worked flat and closed by a later join
	flatBecause string
	strip       *Strip
	steadied    *Interfacing // of the strip
	taped       *Interfacing // what holds the seam line
	stayed      bool         // it is no pass of the construction that lays the tape
	rounded     *Interfacing // the strip in the hem
	lays        *seams.Stay  // what asks for that strip
	draws       *line        // of gathers: what takes their edge in
	minutes     float64
	raised      length.MM // in a sitting: what it is in its garment, see operator.raised
}

// edging reports what finishes a free edge: a treatment, or a detail along it.
func (l *line) edging() bool { return l.work == treating || l.work == along }

// hangs reports the edge of a lining that is laid under one of the garment, which
// another line finishes.
func (l *line) hangs() bool { return l.kind == "lining-hung" }

// closedBy is the join that closes an edge that was worked flat, or empty.
func (l *line) closedBy() string {
	if l.edge == nil {
		return ""
	}
	return l.edge.ClosedBy
}

// covers reports whether the construction closes over what lies at its ends.
func (l *line) covers() bool { return l.construction != nil && l.construction.Covers }

// forWhat is the word by which constructions say what they are for.
func (w work) forWhat() string {
	switch w {
	case joining:
		return "join"
	case treating:
		return "edge"
	}
	return "detail"
}
