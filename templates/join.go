package templates

import (
	"fmt"
	"math"
	"strings"

	"bodkin/templates/outline"
)

// usualTolerance is how much the two sides of a join may differ where nothing
// is said, mm: a pencil line. Common practice, no source.
const usualTolerance = 1.0

// join walks the two sides of a seam against each other.
func (w *workshop) join(i int) {
	s, t := &w.g.Seams[i], w.g.topology.joins[i]
	a, b := bendsOf(w.edges(t.a.parts)), bendsOf(w.edges(t.b.parts))
	j := Join{
		Name: s.Join.Value, Title: s.Title, A: t.a.parts, B: t.b.parts, Copies: 1,
		LengthA: mm(a.length), LengthB: mm(b.length),
		TightestRadius: radius(min(a.tightest, b.tightest)), Turning: max(a.absolute, b.absolute),
		Strain: s.Strain, InsideSeen: s.InsideSeen, Insist: s.Sew.Value,
	}
	if s.EachSide {
		j.Copies = 2
	}
	tolerance := usualTolerance
	if !s.Tolerance.IsZero() {
		tolerance = w.number(s.Tolerance)
	}
	least, most := 0.0, 0.0
	if len(s.Ease) == 2 {
		least, most = w.number(s.Ease[0]), w.number(s.Ease[1])
		j.Eased = mm(a.length - b.length)
	}
	meant := outline.Meant{Least: least, Most: most, Tolerance: tolerance}
	if _, err := outline.Walk(w.edges(t.a.parts), w.edges(t.b.parts), nil, nil, meant); err != nil {
		w.faults = append(w.faults, s.Join.Fault(0, len([]rune(s.Join.Value)),
			fmt.Sprintf("the two sides of the %s do not fit: %s is %.1f mm, %s is %.1f mm, a difference of %.1f mm",
				s.Title, chainWords(t.a.parts), a.length, chainWords(t.b.parts), b.length, math.Abs(a.length-b.length)), "",
			fmt.Sprintf("draw them equally long to within %.1f mm, or declare the ease: [least, most]", tolerance)))
	}
	w.made.Joins = append(w.made.Joins, j)
}

func chainWords(parts []ChainPart) string {
	words := make([]string, len(parts))
	for i, p := range parts {
		words[i] = p.Piece + "." + p.Edge
	}
	return strings.Join(words, " + ")
}
