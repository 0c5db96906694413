package templates

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bodkin/seams/form"
)

// usualTolerance is how much the two sides of a join may differ where nothing
// is said, mm: a pencil line. Common practice, no source.
const usualTolerance = 1.0

// join walks the two sides of a seam against each other.
func (w *workshop) join(i int) {
	s, t := &w.g.Seams[i], w.g.topology.joins[i]
	a, b := bendsOf(w.edges(t.a.parts)), bendsOf(w.edges(t.b.parts))
	j := Join{
		Name: s.Join.Value, Title: s.Title, A: t.a.parts, B: t.b.parts, EndsA: w.g.beyond(t.a), EndsB: w.g.beyond(t.b), Copies: 1,
		WaysA: w.ways(t.a), WaysB: w.ways(t.b),
		LengthA: mm(w.sideLength(t.a.parts, s.Across)), LengthB: mm(w.sideLength(t.b.parts, s.Across)),
		TightestRadius: radius(min(a.tightest, b.tightest)), Turning: max(a.absolute, b.absolute),
		Strain: s.Strain, InsideSeen: s.InsideSeen, Insist: s.Sew.Value,
		Across: s.Across, Closed: s.Closed && len(w.opened(t.a)) == 0,
	}
	if s.EachSide {
		j.Copies = 2
	}
	if len(s.Ease)+len(s.Gather) > 0 {
		j.Eased = j.LengthA - j.LengthB
	}
	w.fit(fitted{at: s.Join, title: s.Title, scope: s.from.scope, a: t.a.parts, b: t.b.parts,
		lengthA: float64(j.LengthA), lengthB: float64(j.LengthB), ease: s.Ease, gather: s.Gather, tolerance: s.Tolerance})
	w.joinPasses(i)
	w.made.Joins = append(w.made.Joins, j)
}

// beyond are the edges that go on from the two ends of a chain, in the pieces
// where it starts and stops: none at a fold, and past the mouths of darts, which
// are sewn shut. Where the chain goes over from one piece to the next there is no
// end of it.
func (g *Garment) beyond(t walked) []ChainPart {
	var out []ChainPart
	last := len(t.parts) - 1
	for _, end := range []struct {
		at     ChainPart
		finish bool
	}{{t.parts[0], t.backward[0]}, {t.parts[last], !t.backward[last]}} {
		d := g.draft(end.at.Piece)
		edges := d.edges()
		step := len(edges) - 1
		if end.finish {
			step = 1
		}
		for k := slices.Index(edges, end.at.Edge) + step; ; k += step {
			e := ChainPart{end.at.Piece, edges[k%len(edges)]}
			if _, mouth := d.isMouth(e.Edge); mouth {
				continue
			}
			if e.Edge != d.Fold.Value && !slices.Contains(t.parts, e) {
				out = append(out, e)
			}
			break
		}
	}
	return out
}

// sideLength is the length of one side of a seam, less what pleats and tucks
// take from it. Across the centre, pieces drawn as halves count twice.
func (w *workshop) sideLength(parts []ChainPart, across bool) float64 {
	sum := 0.0
	for _, c := range parts {
		p := w.piece(c.Piece)
		e, _ := p.Outline.Edge(c.Edge)
		l := e.Length() - w.shortened[c]
		if across && p.Cut != "one" {
			l *= 2
		}
		sum += l
	}
	return sum
}

// fitted is two chains that are sewn together, with what is said of them.
type fitted struct {
	at               form.Text
	title            string
	scope            int
	a, b             []ChainPart
	lengthA, lengthB float64
	ease, gather     []form.Text
	tolerance        form.Text
}

// fit reports two sides that do not fit.
func (w *workshop) fit(f fitted) {
	tolerance := usualTolerance
	if !f.tolerance.IsZero() {
		tolerance = w.number(f.tolerance, f.scope)
	}
	d := f.lengthA - f.lengthB
	sides := fmt.Sprintf("%s is %.1f mm, %s is %.1f mm", chainWords(f.a), f.lengthA, chainWords(f.b), f.lengthB)
	if len(f.gather) == 2 {
		least, most := w.number(f.gather[0], f.scope), w.number(f.gather[1], f.scope)
		if r := f.lengthA / f.lengthB; r < least-1e-3 || r > most+1e-3 {
			w.fault(f.at, fmt.Sprintf("the gathers of the %s do not fit: %s, %.2f times as long, and %g to %g are said", f.title, sides, r, least, most),
				"draw one of them longer or shorter, or change gather: [least, most]")
		}
		return
	}
	least, most := 0.0, 0.0
	if len(f.ease) == 2 {
		least, most = w.number(f.ease[0], f.scope), w.number(f.ease[1], f.scope)
	}
	if d < least-tolerance || d > most+tolerance {
		w.fault(f.at, fmt.Sprintf("the two sides of the %s do not fit: %s, a difference of %.1f mm", f.title, sides, math.Abs(d)),
			fmt.Sprintf("draw them equally long to within %.1f mm, or declare the ease: [least, most]", tolerance))
	}
}

func chainWords(parts []ChainPart) string {
	words := make([]string, len(parts))
	for i, p := range parts {
		words[i] = p.Piece + "." + p.Edge
	}
	return strings.Join(words, " + ")
}
