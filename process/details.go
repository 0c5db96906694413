package process

import (
	"fmt"
	"slices"

	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
)

// detail makes a line of a detail other than a dart: one that is worked in a
// piece, set into a join, or sewn along an edge with pieces of its own.
func (b *layer) detail(d *templates.Detail) *line {
	l := &line{}
	applied := ""
	if len(d.Pieces) > 0 {
		applied = b.pieceOf(d.Pieces[0]).Cloth
	}
	from := func(role string) {
		if applied == "" {
			applied = role
		}
		l = b.base(role, applied)
	}
	switch {
	case len(d.Along) > 0:
		from(b.pieceOf(d.Along[0].Piece).Cloth)
		l.work, l.edges, l.length = along, edgesOf(d.Along), float64(d.Length)
		l.pieces = b.piecesOf(l.edges)
	case d.In != "":
		j := b.joinOf(d.In)
		from(b.pieceOf(j.A[0].Piece).Cloth)
		l.work, l.length = setIn, float64(d.Length)
		l.pieces = b.piecesOf(edgesOf(j.A, j.B))
	default:
		piece := d.Piece
		if piece == "" {
			piece = d.Pieces[0]
		}
		from(b.pieceOf(piece).Cloth)
		l.work, l.length, l.pieces = onePiece, b.worked(d), []string{piece}
	}
	l.name, l.title, l.kind, l.detail = d.Name, d.Title, d.Kind, d
	l.copies, l.own = d.Copies*d.Count, d.Pieces
	for _, p := range d.Pieces {
		if !slices.Contains(l.pieces, p) {
			l.pieces = append(l.pieces, p)
		}
	}
	l.facts.Join = seams.LineFacts{
		Length: l.length, TightestRadius: float64(d.TightestRadius), Turning: d.Turning,
		Curved: d.TightestRadius < curvedBelow, Closed: d.Closed, Strain: d.Strain,
		Eased: float64(d.Eased), Depth: float64(d.Depth), Lap: float64(d.Lap), OwnWidth: b.ownWidth(d), InsideSeen: true, OtherCloth: l.role != l.appliedRole,
	}
	lies := l.edges
	if d.In != "" {
		lies = edgesOf(b.joinOf(d.In).A)
	}
	b.laidAs(&l.facts.Join, lies, l.cloth)
	return l
}

// ownWidth is the width of the first of a detail's own pieces as it is finished,
// opened out where it lies on the fold; 0 where it has none.
func (b *layer) ownWidth(d *templates.Detail) float64 {
	if len(d.Pieces) == 0 {
		return 0
	}
	p := b.pieceOf(d.Pieces[0])
	width := p.Outline.Bounds().Width()
	if p.FoldEdge != "" {
		return 2 * width
	}
	return width
}

func (b *layer) joinOf(name string) *templates.Join {
	i := slices.IndexFunc(b.made.Joins, func(j templates.Join) bool { return j.Name == name })
	return &b.made.Joins[i]
}

// smallLength is the length in mm that a detail is reckoned with where the
// garment gives none: a buttonhole or a hook. An estimate.
const smallLength = 20

// worked is the length that is sewn for one detail in a piece: what the garment
// says, else its marked lines on the average, else the edges of its own piece.
func (b *layer) worked(d *templates.Detail) float64 {
	if d.Length > 0 {
		return float64(d.Length)
	}
	sum := 0.0
	for _, line := range d.Lines {
		if d.InRow() {
			break // it is the row's length
		}
		sum += line[0].Distance(line[1])
	}
	if sum > 0 {
		return sum / float64(len(d.Lines))
	}
	for _, name := range d.Pieces {
		for _, e := range b.pieceOf(name).Edges {
			sum += float64(e.Length)
		}
	}
	return max(sum, smallLength)
}

// widen gives every join the allowance that what is set into it asks for.
func widen(lines []*line) error {
	for _, l := range lines {
		if l.work != setIn {
			continue
		}
		l.facts.Join.Neatened = slices.ContainsFunc(lines, func(j *line) bool {
			return j.work == joining && j.name == l.detail.In && (j.construction.Inside != "raw" || j.facts.Garment.Lined)
		})
		sized, err := l.construction.Measure(l.facts)
		if err != nil {
			return err
		}
		// What its seam closes is finished when that is sewn.
		l.flat = slices.ContainsFunc(sized.Passes, func(p seams.SizedPass) bool { return p.Pass.After == "closing" })
		for _, j := range lines {
			if j.work == joining && j.name == l.detail.In {
				j.facts.Join.Allowance = max(j.facts.Join.Allowance, sized.Allowance)
			}
		}
	}
	return nil
}

// ownAllowance is what the i-th edge of a piece that is sewn on is cut with. A
// facing's outer edge is neatened as it is cut; what is beside the edge that is
// sewn to the garment meets the next part in a seam.
func (l *line) ownAllowance(p templates.Piece, i int) float64 {
	fits := l.fits()
	sewn := func(k int) bool {
		n := len(p.Edges)
		return slices.Contains(fits, edgeOf{p.Name, p.Edges[(k+n)%n].Name})
	}
	switch {
	case sewn(i):
		return l.sized.Allowance
	case l.work != treating:
		return l.sized.AllowanceB
	case sewn(i-1) || sewn(i+1):
		return l.sized.Allowance
	}
	return 0
}

func (l *line) fits() []edgeOf {
	if l.edge != nil {
		return edgesOf(l.edge.Fits)
	}
	return edgesOf(l.detail.Fits)
}

// details: what is worked in a piece comes while it lies flat, what is set into
// a seam comes before or after it as its construction says, and what closes a
// garment comes last.
func (s *structureOf) details(d int, l *line) []relation {
	switch {
	case l.kind == "lining-opening":
		return s.beside(d, l)
	case l.work == setIn:
		return s.setIn(d, l)
	case slices.Contains(closures(), l.kind):
		return s.closing(d, l)
	case l.work == onePiece:
		return s.flat(d, l)
	case l.hangs():
		return append(s.laidOn(d, l), s.hung(d, l)...)
	case l.work == along:
		return append(s.laidOn(d, l), s.beyond(d, l)...)
	}
	return s.beyond(d, l)
}

// beyond: a pocket is finished before its side piece is taken in for the piece
// that was cut away.
func (s *structureOf) beyond(d int, l *line) []relation {
	var out []relation
	own := setOf(edgesOf(l.detail.Beyond))
	for i, x := range s.lines {
		if i != d && (x.work == joining || x.edging()) && meets(x.edges, own) {
			out = append(out, relation{first: d, then: i,
				because: "the " + x.title + " takes in the side piece of the " + l.title})
		}
	}
	return out
}

// laidOn: what is sewn along an edge with pieces of its own waits for the seams
// that join these to each other; and where the pieces are another's, such as a
// lining's at the armholes, for that.
func (s *structureOf) laidOn(d int, l *line) []relation {
	var out []relation
	fits := l.fits()
	theirs := func(x *line) bool {
		return slices.ContainsFunc(fits, func(e edgeOf) bool { return slices.Contains(x.own, e.piece) && !slices.Contains(l.own, e.piece) })
	}
	within := func(x *line) bool {
		return !slices.ContainsFunc(x.edges, func(e edgeOf) bool { return !slices.Contains(l.own, e.piece) })
	}
	for i, x := range s.lines {
		switch {
		case i == d:
		case x.work == joining && within(x):
			out = append(out, relation{first: i, then: d,
				because: "the " + x.title + " is sewn before the " + l.title + " takes in what it joins"})
		case x.work == along && theirs(x):
			out = append(out, relation{first: i, then: d,
				because: "the " + l.title + " takes in what the " + x.title + " brings, and stays open until that is done"})
		}
	}
	return out
}

// hung: a lining is laid under an edge before that is finished; its own hem waits
// for that of the garment, above which it ends.
func (s *structureOf) hung(d int, l *line) []relation {
	var out []relation
	edges := setOf(l.edges)
	over := func(piece string) string { return s.piece(piece).Like }
	for i, x := range s.lines {
		switch {
		case i == d:
		case x.hangs():
			if l.detail.Across && !x.detail.Across && touches(x, l.own) {
				out = append(out, relation{first: d, then: i, because: "the " + l.title + " hangs before it is laid under other edges"})
			}
		case (x.work == joining || x.edging()) && meets(x.edges, edges):
			out = append(out, relation{first: d, then: i,
				because: "the " + x.title + " takes in the " + l.title + " that is laid under it"})
		case x.kind == "hem" && touches(x, l.own):
			for k, y := range s.lines {
				if y.kind == "hem" && slices.ContainsFunc(x.pieces, func(p string) bool { return slices.Contains(y.pieces, over(p)) }) {
					out = append(out, relation{first: k, then: i,
						because: "the " + x.title + " is measured up from the " + y.title + ", when that is done"})
				}
			}
		}
	}
	return out
}

// beside: a lining is left open at a zip, and felled to its tapes when it hangs
// and the zip is in.
func (s *structureOf) beside(d int, l *line) []relation {
	var out []relation
	join := s.lines[slices.IndexFunc(s.lines, func(x *line) bool { return x.work == joining && x.name == l.detail.In })]
	for i, x := range s.lines {
		switch {
		case x == join:
			out = append(out, relation{first: i, then: d,
				because: "the " + x.title + " is sewn below the opening before its edges are turned in"})
		case x.hangs() && x.detail.Across && touches(x, join.pieces):
			out = append(out, relation{first: i, then: d, because: "the " + x.title + " hangs before it is felled beside the zip"})
		case x.edging() && s.takesIn(x, join):
			out = append(out, relation{first: d, then: i,
				because: "the " + x.title + " lies over the upper ends of the " + l.title})
		case x.kind == "zip" && slices.ContainsFunc(join.pieces, func(p string) bool { return slices.Contains(x.pieces, s.piece(p).Like) }):
			out = append(out, relation{first: i, then: d, because: "the lining is felled to the tapes of the " + x.title})
		}
	}
	return out
}

// takesIn reports whether a line finishes the edge from which a lining hangs that
// has this seam.
func (s *structureOf) takesIn(x, join *line) bool {
	return slices.ContainsFunc(s.lines, func(h *line) bool {
		return h.hangs() && h.detail.Across && x != h && touches(h, join.pieces) && meets(x.edges, setOf(h.edges))
	})
}

// closures are the details that are sewn on or in when an edge is finished.
func closures() []string { return []string{"buttonhole", "button", "hook", "snap", "tie", "strap"} }

// setIn: a zip or a pocket and the join in which it lies.
func (s *structureOf) setIn(d int, l *line) []relation {
	var out []relation
	for i, x := range s.lines {
		switch {
		case i == d:
		case x.work == joining && x.name == l.detail.In && l.kind == "in-seam-pocket":
			out = append(out, relation{first: d, then: i,
				because: "the bags of the " + l.title + " are sewn on while the pieces lie flat, and the " + x.title + " runs down to one mark and on from the other"})
		case x.work == joining && x.name == l.detail.In && l.flat:
			out = append(out,
				relation{first: d, then: i, flatOnly: true,
					because: "the " + l.title + " is set in while its seam is open, and the " + x.title + " goes on from its end"},
				relation{first: i, then: d, closingOnly: true,
					because: "the end of the " + l.title + " is finished once the " + x.title + " below it is sewn"})
		case x.work == joining && x.name == l.detail.In:
			out = append(out, relation{first: i, then: d,
				because: "the " + x.title + " is sewn below the opening before the " + l.title + " is set in"})
		case x.edging() && slices.Contains(x.opened(), l.name):
			out = append(out, relation{first: d, then: i,
				because: "the " + x.title + " closes over the end of the " + l.title})
		}
	}
	return out
}

// opened are the openings that an edge runs over.
func (l *line) opened() []string {
	if l.edge != nil {
		return l.edge.Opened
	}
	return l.detail.Opened
}

// closing: the edges of the piece are finished before buttonholes are cut in it,
// and buttonholes before their buttons.
func (s *structureOf) closing(d int, l *line) []relation {
	var out []relation
	for i, x := range s.lines {
		switch {
		case i == d:
		case l.kind == "button" && x.kind == "buttonhole":
			out = append(out, relation{first: i, then: d, because: "the buttons are placed through the buttonholes"})
		case (x.work == along && !touches(x, l.pieces) || x.kind == "hem") && (l.kind == "buttonhole" || l.kind == "button"):
			out = append(out, relation{first: i, then: d,
				because: "closings come last, when what they lie on is finished"})
		case x.edging() && x.kind != "hem" && !x.hangs() && touches(x, l.pieces):
			out = append(out, relation{first: i, then: d,
				because: "the " + x.title + " is finished before the " + l.title + " is placed"})
		}
	}
	return out
}

// flat: what is worked in a piece, or shortens its edges, comes before the lines
// that take those edges in, and before a join makes the piece harder to reach.
func (s *structureOf) flat(d int, l *line) []relation {
	var out []relation
	takes := setOf(edgesOf(l.detail.Takes))
	for i, x := range s.lines {
		switch {
		case i == d:
		case meets(x.edges, takes):
			out = append(out, relation{first: d, then: i,
				because: "the " + x.title + " takes in the ends of the " + l.title})
		case x.kind == "hem" && s.laidOver(l, x):
			out = append(out, relation{first: i, then: d,
				because: "the " + x.title + " is turned while it lies flat, before the " + l.title + " is laid over it"})
		case x.kind == "dart" && l.kind == "patch-pocket" && touches(x, l.pieces[:1]):
			out = append(out, relation{first: i, then: d,
				because: "the " + x.title + " is pressed before the " + l.title + " is laid beside or over it"})
		case x.work == joining && len(takes) == 0 && touches(x, l.pieces[:1]):
			out = append(out, relation{first: d, then: i,
				because: "the " + l.title + " is sewn on while the piece lies flat, before the " + x.title + " closes off access to it"})
		case x.edging() && l.kind == "placket" && touches(x, l.pieces[:1]):
			out = append(out, relation{first: d, then: i,
				because: "the " + x.title + " runs over the end of the " + l.title})
		}
	}
	return out
}

// laidOver reports whether the marked lines of a pleat or a tuck run out over an
// edge: it is folded with the cloth. That its hem comes first is common practice,
// no source.
func (s *structureOf) laidOver(l, x *line) bool {
	if l.kind != "pleat" && l.kind != "tuck" {
		return false
	}
	p := s.piece(l.detail.Piece)
	for _, e := range x.edges {
		edge, ok := p.Outline.Edge(e.edge)
		if !ok || e.piece != p.Name {
			continue
		}
		for _, line := range l.detail.Lines {
			for _, end := range line {
				if _, away := edge.Nearest(end); away < onLine {
					return true
				}
			}
		}
	}
	return false
}

// inRow tells at the marking of a row of buttonholes how far apart they are.
func (o *operator) inRow(l *line, act *seams.Act) string {
	if act.Name != "mark" || l.kind == "button" || l.detail == nil || !l.detail.InRow() { // buttons are placed through their holes
		return ""
	}
	at := l.detail.Places()
	return fmt.Sprintf(" %d of them, %s from one to the next.", len(at), length.Format(length.MM(at[0].Distance(at[1])), o.style))
}

// aboveHem tells at the beginning of a lining's hem how far above the garment's it
// ends.
func (o *operator) aboveHem(i int, l *line) string {
	if by := o.raised(l); by > 0 && len(o.span[i]) == 0 {
		return " Finished, it ends " + length.Format(by, o.style) + " above the hem of the garment: measure that first, and where the garment's hem was moved at the fitting, trim this one to it."
	}
	return ""
}

// raised is how far a hem lies above that of the piece over it; 0 where it hangs in
// no other, mm.
func (o *operator) raised(l *line) length.MM {
	if l.kind != "hem" || o.made == nil { // of several garments each line has its own
		return l.raised
	}
	for _, p := range o.made.Pieces {
		for _, e := range p.Edges {
			if e.Raised > 0 && slices.Contains(l.edges, edgeOf{p.Name, e.Name}) {
				return e.Raised
			}
		}
	}
	return 0
}

// raisedTolerance is how closely a lining keeps to its distance above the hem, mm:
// it may be 20 to 25 mm and a little more. An estimate.
const raisedTolerance = 5

// pinned is the operation on the hem of a lining after which its distance from the
// garment's hem can be measured and still be mended: before its last row.
func (o *operator) pinned(line int) (op int, ok bool) {
	span := o.span[line]
	if o.raised(o.lines[line]) == 0 {
		return 0, false
	}
	for k := len(span) - 1; k > 0; k-- {
		if s := o.ops[span[k]].act.Station; s == "machine" || s == "hand" {
			return span[k-1], true
		}
	}
	return 0, false
}

// leftOpen tells at the row that closes a join what of it stays open, and at a
// facing what becomes of it beside an opening.
func (o *operator) leftOpen(i int, l *line, pass seams.SizedPass, act *seams.Act) string {
	sewn := act.Station == "machine" || act.Station == "hand"
	first := !slices.ContainsFunc(o.span[i], func(k int) bool {
		return o.ops[k].act.Station == "machine" || o.ops[k].act.Station == "hand"
	})
	out := ""
	for _, x := range o.lines {
		switch {
		case l.work == joining && sewn && first && x.work == setIn && x.detail.In == l.name:
			at := "between its marks"
			if x.kind == "lining-opening" {
				at = "from its upper edge"
			}
			if k := slices.IndexFunc(o.lines, func(e *line) bool { return e.edging() && !e.hangs() && slices.Contains(e.opened(), x.name) }); k >= 0 {
				at = "from the " + o.lines[k].title + " on"
			}
			leave := " Leave "
			if x.detail.Copies < l.copies {
				leave = " On the left leave "
			}
			out += leave + length.Format(x.detail.Length, o.style) + " open for the " + x.title + ", " + at + "."
		case l.kind != "facing" || len(l.own) == 0 || !slices.Contains(l.opened(), x.name):
		case sewn && first:
			out += " Leave the facing open at the " + x.title + "."
		case pass.Number == l.sized.Passes[len(l.sized.Passes)-1].Number:
			out += " Turn its ends under beside the " + x.title + " and fell them to the tape."
		}
	}
	return out
}
