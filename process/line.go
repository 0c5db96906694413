package process

import (
	"bodkin/seams"
	"bodkin/templates"
)

// work is what a line is for.
type work int

const (
	joining  work = iota // two chains of edges
	treating             // a free edge
	onePiece             // inside one piece: dart, staystitch
)

// line is a join, an edge treatment or a detail on its way through the planner:
// what the garment says of it, what was chosen for it, what it measures.
type line struct {
	name, title string
	work        work
	kind        string // seam; hem, binding, facing, band, casing; dart, staystitch
	join        *templates.Join
	edge        *templates.Treatment
	detail      *templates.Detail
	edges       []edgeOf
	pieces      []string // in garment order, each once
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
	minutes     float64
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
