package process

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

// dress looks up the job's cloths for the garment's roles.
//
// whole is the garment with what the choices leave out: a cloth named for that
// is not asked for, and not wrong.
func dress(j *Job, g, whole *templates.Garment, shelf *seams.Shelf) ([]clothIn, error) {
	var faults form.Faults
	roles := g.Roles()
	names := make([]string, 0, len(roles))
	for _, r := range whole.Roles() {
		names = append(names, r.Name)
	}
	var meant []string // roles that misspelt ones probably stand for
	for _, p := range j.Cloth {
		if !slices.Contains(names, p.Key.Value) {
			nearest := form.Nearest(p.Key.Value, names)
			faults = append(faults, form.FaultAt(p.Key.At, "this garment has no cloth called "+strconv.Quote(p.Key.Value),
				nearest, "its cloths are "+listWords(names, "and")))
			meant = append(meant, nearest)
		}
	}
	var out []clothIn
	for _, r := range roles {
		at := slices.IndexFunc(j.Cloth, func(p form.Pair[JobCloth]) bool { return p.Key.Value == r.Name })
		if at < 0 {
			if slices.Contains(meant, r.Name) {
				continue // the misspelt one is told
			}
			if !r.Optional {
				faults = append(faults, form.FaultAt(j.Make.At, "no cloth is named for "+r.Title, "",
					"add under cloth: "+r.Name+": {is: …, colour: …, width: …}"))
			} else if len(out) > 0 {
				c := out[0]
				c.role, c.title = r.Name, r.Title
				c.cloth, c.under = c.outer, nil // what is cut from it besides is of the layer that is seen
				out = append(out, c)
			}
			continue
		}
		in, err := j.Cloth[at].Value.lookUp(r, shelf)
		if err != nil {
			more, ok := errors.AsType[form.Faults](err)
			if !ok {
				return nil, err
			}
			faults = append(faults, more...)
			continue
		}
		out = append(out, in)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}

// shallowHem is the depth at which a hem's fullness is judged where the garment
// leaves the depth free: a usual deep hem.
const shallowHem = 40

// lay turns the made garment into lines: its staystitching, details, joins and
// treatments, each with the facts that its construction is chosen by.
func lay(made *templates.Made, cloths []clothIn, r *room) []*line {
	b := layer{made: made, cloths: cloths, room: r}
	var out []*line
	for i := range made.Details {
		if d := &made.Details[i]; d.Kind == "dart" {
			out = append(out, b.dart(d))
		} else {
			out = append(out, b.detail(d))
		}
	}
	for i := range made.Joins {
		out = append(out, b.joinLine(&made.Joins[i]))
	}
	for i := range made.Treatments {
		out = append(out, b.treatment(&made.Treatments[i]))
	}
	return slices.Concat(b.staystitches(out), b.gathers(out), out)
}

type layer struct {
	made   *templates.Made
	cloths []clothIn
	room   *room
}

func (b *layer) clothOf(role string) seams.Cloth { return clothRole(b.cloths, role).cloth }

func (b *layer) pieceOf(name string) templates.Piece {
	i := slices.IndexFunc(b.made.Pieces, func(p templates.Piece) bool { return p.Name == name })
	return b.made.Pieces[i]
}

func (b *layer) base(role, appliedRole string) *line {
	l := &line{role: role, appliedRole: appliedRole, cloth: b.clothOf(role), applied: b.clothOf(appliedRole)}
	l.facts = seams.Facts{
		Cloth: l.cloth.Facts(), Applied: l.applied.Facts(),
		Garment:  seams.GarmentFacts{Lined: b.made.Garment.Lined, Child: b.made.Garment.Child, Loose: b.made.Garment.Loose},
		Workroom: b.room.facts(),
	}
	return l
}

func (b *layer) joinLine(j *templates.Join) *line {
	l := b.base(b.pieceOf(j.A[0].Piece).Cloth, b.pieceOf(j.B[0].Piece).Cloth)
	l.name, l.title, l.work, l.kind, l.join = j.Name, j.Title, joining, "seam", j
	l.edges, l.copies = edgesOf(j.A, j.B), j.Copies
	l.pieces = b.piecesOf(l.edges)
	l.length = float64(max(j.LengthA, j.LengthB))
	l.facts.Join = seams.LineFacts{
		Length: l.length, TightestRadius: float64(j.TightestRadius), Turning: j.Turning,
		Curved: j.TightestRadius < curvedBelow, Strain: j.Strain, Eased: float64(j.Eased),
		InsideSeen: j.InsideSeen, OtherCloth: l.role != l.appliedRole, Closed: j.Closed, Opening: float64(j.OpenLength),
		RunsOn: b.runsOn(j.A) || b.runsOn(j.B), ClosesBand: b.closesBand(j.Name),
	}
	b.laidAs(&l.facts.Join, edgesOf(j.B), l.applied)
	l.facts.Garment.Lined = b.covered(l.pieces)
	return l
}

// covered reports whether a lining hides what lies inside these pieces: it is
// drawn as they are, or they are the lining's own.
func (b *layer) covered(pieces []string) bool {
	var under []string
	for _, d := range b.made.Details {
		if !strings.HasPrefix(d.Kind, "lining") {
			continue
		}
		for _, name := range d.Pieces {
			under = append(under, name, b.pieceOf(name).Like)
		}
	}
	if len(under) == 0 {
		return b.made.Garment.Lined
	}
	return !slices.ContainsFunc(pieces, func(p string) bool { return !slices.Contains(under, p) })
}

// straightOn is how far from straight the angle at the end of a join may be, in
// degrees, for its line to go on as the next edge. An estimate.
const straightOn = 20

// runsOn reports whether a chain's line goes on beyond one of its ends as
// another edge of the piece: as a slit or a zip under a seam, not round a
// corner. Folds and the mouths of darts are no edges in this.
func (b *layer) runsOn(chain []templates.ChainPart) bool {
	in := map[edgeOf]bool{}
	for _, part := range chain {
		in[edgeOf{part.Piece, part.Edge}] = true
	}
	for _, part := range chain {
		p := b.pieceOf(part.Piece)
		for _, c := range p.Corners {
			next := ""
			switch part.Edge {
			case c.Before:
				next = c.After
			case c.After:
				next = c.Before
			}
			k := slices.IndexFunc(p.Edges, func(e templates.PieceEdge) bool { return e.Name == next })
			if k < 0 || in[edgeOf{p.Name, next}] || math.Abs(c.Inside-180) > straightOn {
				continue
			}
			if use := p.Edges[k].Use; use != "fold" && !strings.HasPrefix(use, "dart ") {
				return true
			}
		}
	}
	return false
}

// closesBand reports whether a join takes in the ends of a band that is worked flat.
func (b *layer) closesBand(join string) bool {
	return slices.ContainsFunc(b.made.Treatments, func(t templates.Treatment) bool { return t.Kind == "band" && t.ClosedBy == join })
}

// curvedBelow is the radius in mm under which a line is called curved: the
// hand can no longer treat it as straight. Common practice, no source.
const curvedBelow = 500

func (b *layer) treatment(t *templates.Treatment) *line {
	role := b.pieceOf(t.Along[0].Piece).Cloth
	applied := t.Cloth
	if applied == "" {
		applied = role
	}
	if len(t.Pieces) > 0 {
		applied = b.pieceOf(t.Pieces[0]).Cloth
	}
	l := b.base(role, applied)
	// A strip is cut from the outer layer alone.
	l.applied = clothRole(b.cloths, applied).outer
	l.facts.Applied = l.applied.Facts()
	l.name, l.title, l.work, l.kind, l.edge = t.Name, t.Title, treating, t.Kind, t
	l.edges, l.copies, l.length = edgesOf(t.Along), t.Copies, float64(t.Length)
	l.own = t.Pieces
	l.pieces = append(b.piecesOf(l.edges), l.own...)
	depth := float64(t.Depth)
	if depth == 0 {
		depth = shallowHem
	}
	l.facts.Edge = seams.LineFacts{
		Length: l.length, TightestRadius: float64(t.TightestRadius), Turning: t.Turning,
		Curved: t.TightestRadius < curvedBelow, Hollow: t.Hollow, Closed: t.Closed,
		Strain: t.Strain, InsideSeen: t.InsideSeen, Depth: float64(t.Depth), Fullness: t.Flare * depth,
		Elastic: float64(t.Elastic), Grip: float64(t.Grip), OtherCloth: applied != role,
		Gives: t.Gives, Point: t.Point,
	}
	b.laidAs(&l.facts.Edge, l.edges, l.cloth)
	l.flat, l.flatBecause = b.flatOrRound(t)
	l.facts.Edge.Flat = !t.Closed || l.flat
	return l
}

func (b *layer) titleOfJoin(name string) string {
	for _, j := range b.made.Joins {
		if j.Name == name {
			return j.Title
		}
	}
	return name
}

func (b *layer) dart(d *templates.Detail) *line {
	p := b.pieceOf(d.Piece)
	l := b.base(p.Cloth, p.Cloth)
	l.name, l.title, l.work, l.kind, l.detail = d.Name, d.Title, onePiece, d.Kind, d
	l.edges = []edgeOf{{d.Piece, d.Between[0]}, {d.Piece, d.Between[1]}}
	l.pieces, l.copies, l.length = []string{d.Piece}, d.Copies, float64(d.Length)
	l.facts.Join = seams.LineFacts{Length: l.length, TightestRadius: 1e6, InsideSeen: true}
	return l
}

// staystitches are the edges that would stretch while the cloth is handled:
// hollow or bias edges that take a binding, a facing or a band, or a detail with
// pieces of its own.
func (b *layer) staystitches(lines []*line) []*line {
	var out []*line
	for _, l := range lines {
		if l.hangs() || l.work != along && (l.work != treating || !(l.edge.Hollow || l.edge.Bias) ||
			!slices.Contains([]string{"binding", "facing", "band"}, l.kind)) {
			continue
		}
		if l.edge != nil && l.edge.Gives {
			continue // a row of lockstitch would break, or stop the edge from passing the body
		}
		var held []edgeOf
		length := 0.0
		for _, e := range l.edges {
			p := b.pieceOf(e.piece)
			k := slices.IndexFunc(p.Edges, func(pe templates.PieceEdge) bool { return pe.Name == e.edge })
			if pe := p.Edges[k]; pe.Hollow || (pe.Bias > 20 && pe.Bias < 70) {
				held = append(held, e)
				length += float64(pe.Length) * float64(halves(p))
			}
		}
		if len(held) == 0 {
			continue
		}
		s := b.base(l.role, l.role)
		s.name, s.title, s.work, s.kind = l.name+"-staystitch", l.title, onePiece, "staystitch"
		if l.work == along {
			s.title = "edge for the " + l.title
		}
		s.edges, s.pieces, s.copies, s.length = held, b.piecesOf(held), 1, length
		s.facts.Edge = l.facts.Edge
		if l.work == along {
			s.facts.Edge = l.facts.Join
			s.facts.Edge.Hollow = true
		}
		s.facts.Edge.Length = length
		out = append(out, s)
	}
	return out
}

// halves is how often a drafted edge occurs on the cut pieces.
func halves(p templates.Piece) int {
	if p.Cut == "one" {
		return 1
	}
	return 2
}

func (b *layer) piecesOf(edges []edgeOf) []string {
	var out []string
	for _, p := range b.made.Pieces {
		if slices.ContainsFunc(edges, func(e edgeOf) bool { return e.piece == p.Name }) {
			out = append(out, p.Name)
		}
	}
	return out
}
