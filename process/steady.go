package process

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/templates"
)

// steadying chooses an interfacing for every piece and strip that wants one:
// ruled out and scored like a construction, lighter than its cloth, compatible
// with its heat, and not showing through.
func steadying(shelf *seams.Shelf, made *templates.Made, lines []*line, pieces []Piece, cloths []clothIn, r *room, quantity int) ([]Interfacing, error) {
	out := []Interfacing{}
	for i, p := range made.Pieces {
		if p.Interface != "half" && p.Interface != "whole" {
			continue
		}
		f, err := steady(shelf, clothRole(cloths, p.Cloth), partOf(p.Name, lines), r)
		if err != nil {
			return nil, err
		}
		w, h := pieces[i].NetWidth, pieces[i].NetHeight
		if p.Interface == "half" {
			w /= 2
		}
		f.Name, f.Piece, f.Title, f.Part = p.Name+"-interfacing", p.Name, p.Title, p.Interface
		f.Cut, f.Count = [2]float64{w, h}, p.Count*quantity
		out = append(out, f)
	}
	for _, l := range lines {
		if err := l.tape(shelf, r, quantity); err != nil {
			return nil, err
		}
		if l.taped != nil {
			out = append(out, *l.taped)
		}
		if err := l.round(shelf, clothRole(cloths, l.role), r, quantity); err != nil {
			return nil, err
		}
		if l.rounded != nil {
			out = append(out, *l.rounded)
		}
		if l.turnedIn() {
			f, err := steady(shelf, clothRole(cloths, l.role), seams.PartOf(l.kind), r)
			if err != nil {
				return nil, err
			}
			w := l.sized.Finished
			if l.detail.Interface == "half" {
				w /= 2
			}
			f.Name, f.Piece, f.Title, f.Part = l.name+"-interfacing", l.name, upperFirst(l.title), l.detail.Interface
			f.Cut, f.Count = [2]float64{w, l.length}, l.copies*quantity
			l.steadied = &f
			out = append(out, f)
		}
		part := l.stripPart()
		if l.strip == nil || part == "none" {
			continue
		}
		f, err := steady(shelf, clothRole(cloths, l.appliedRole), seams.PartOf(l.kind), r)
		if err != nil {
			return nil, err
		}
		w := l.strip.CutWidth
		if part == "half" {
			w /= 2
		}
		f.Name, f.Piece, f.Title, f.Part = l.strip.Name+"-interfacing", l.strip.Name, l.strip.Title, part
		f.Cut, f.Count = [2]float64{w, l.strip.CutLength}, l.strip.Count
		l.steadied = &f
		out = append(out, f)
	}
	return out, nil
}

// turnedIn reports a detail along an edge that steadies what is turned in there.
func (l *line) turnedIn() bool {
	return l.work == along && len(l.own) == 0 && (l.detail.Interface == "half" || l.detail.Interface == "whole")
}

// stripPart is how much of the strip is steadied: what the garment asks for,
// else what the construction is used to.
func (l *line) stripPart() string {
	if l.edge != nil && (l.edge.Interface == "half" || l.edge.Interface == "whole") {
		return l.edge.Interface
	}
	if l.construction.Strip != nil && l.construction.Strip.Interface != "" {
		return l.construction.Strip.Interface
	}
	return "none"
}

// partOf is the part that a piece is: what is worked inside it says so, as a
// cuff or a placket does; empty where nothing is or several parts meet. A hem, a
// facing or a band at the rim of a piece does not make the piece one.
func partOf(piece string, lines []*line) string {
	part := ""
	for _, l := range lines {
		if l.detail == nil || !slices.Contains(l.pieces, piece) {
			continue
		}
		switch p := seams.PartOf(l.kind); {
		case p == "" || p == part:
		case part == "":
			part = p
		default:
			return ""
		}
	}
	return part
}

// steady chooses for one part, by its name in the rules; empty for a piece that
// is none of them.
func steady(shelf *seams.Shelf, c clothIn, part string, r *room) (Interfacing, error) {
	facts := c.cloth.Facts()
	vs, err := shelf.WeighInterfacings(seams.Facts{Cloth: facts, Applied: facts, Part: seams.PartFacts{Name: part}, Workroom: r.facts()})
	if err != nil {
		return Interfacing{}, err
	}
	if len(vs) == 0 || !vs[0].Allowed() {
		return Interfacing{}, &CannotError{About: "interfacing of " + c.cloth.Title, Why: []string{"every material on the shelf is ruled out for this cloth"}}
	}
	return chosen(vs, c), nil
}

// chosen is the first of the verdicts, with why it was taken and the others not.
func chosen(vs []seams.InterfacingVerdict, c clothIn) Interfacing {
	m := vs[0].Interfacing
	f := Interfacing{Material: m.Name, MaterialTitle: m.Title, Fusible: m.Fusible, HeatDots: m.HeatDots,
		Attach: m.Attach, Trim: m.Trim, Because: []string{}, Rejected: []Rejected{}}
	if m.Self {
		f.MaterialTitle = fmt.Sprintf("%s (%s)", m.Title, lowerFirst(c.cloth.Title))
	}
	for _, x := range vs[0].For {
		f.Because = append(f.Because, x.Because)
	}
	for _, v := range vs[1:] {
		rej := Rejected{Construction: v.Interfacing.Name, Title: v.Interfacing.Title, RuledOut: !v.Allowed(), Score: v.Score, Because: []string{}}
		rej.Because = append(rej.Because, v.RuledOut...)
		if len(rej.Because) == 0 {
			rej.Because = append(rej.Because, decisive(seams.Verdict{For: vs[0].For}, seams.Verdict{For: v.For})...)
		}
		if len(rej.Because) == 0 {
			rej.Because = append(rej.Because, "it would do as well: as much speaks for it, and the first by name is taken")
		}
		f.Rejected = append(f.Rejected, rej)
	}
	return f
}

// attaching gives the words for a construction's pass that puts interfacing on
// its strip, by the material that was chosen: a fusible is fused, anything else
// is basted on. It is not ok where the strip is not steadied.
func (l *line) attaching() (does, text string, ok bool) {
	if l.steadied == nil {
		return "", "", false
	}
	does = "baste"
	if l.steadied.Fusible {
		does = "fuse"
	}
	where := "the whole width of the {strip}, on the wrong side"
	switch {
	case l.strip == nil:
		where = "the wrong side of the {a}, between the fold lines of the {edge}"
	case l.steadied.Part == "half":
		where = "one half of the {strip}'s width, on the wrong side, up to the middle"
	}
	text = fmt.Sprintf("Lay the %s on %s. %s", lowerFirst(l.steadied.MaterialTitle), where, l.steadied.Attach)
	if t := strings.TrimSpace(l.steadied.Trim); t != "" {
		text += " " + t
	}
	return does, text, true
}
