package process

import (
	"math"
	"strings"

	"bodkin/seams/length"
)

// StripPlan says how one strip of cut length is made up when the cloth is not
// long enough for it in one.
type StripPlan struct {
	Lengths int     // pieces that make one strip
	Each    float64 // mm, cut length of each piece, measured along its middle
	Joins   int
	Loss    float64 // mm of length that one join takes up
	Longest float64 // mm, the longest piece that the cloth gives
}

// JoinStrips plans a strip of the given cut length and width (mm) from cloth of
// the given width, joined with the given allowance on both sides of each join.
//
// Straight strips lie across the cloth, selvedge to selvedge, so the longest is
// the cloth's width, and a straight join takes two allowances. Bias strips lie
// at 45 degrees: their ends follow the selvedges, so the longest is √2 times the
// cloth's width measured along the strip; joined on the straight thread, which
// runs at 45 degrees to the strip, a join takes two allowances times √2.
//
// Source: the geometry of a strip at 45 degrees; joins on the straight thread
// as School Sewing (public domain) has them.
func JoinStrips(cutLength, clothWidth, allowance float64, bias bool) StripPlan {
	p := StripPlan{Longest: clothWidth, Loss: 2 * allowance}
	if bias {
		p.Longest, p.Loss = clothWidth*math.Sqrt2, 2*allowance*math.Sqrt2
	}
	p.Lengths = 1
	if cutLength > p.Longest+1e-9 && p.Longest > p.Loss {
		p.Lengths = int(math.Ceil((cutLength-p.Loss)/(p.Longest-p.Loss) - 1e-9))
	}
	p.Joins = p.Lengths - 1
	p.Each = (cutLength + float64(p.Joins)*p.Loss) / float64(p.Lengths)
	return p
}

// stripJoin is the allowance of a join in a strip: 6 mm, common practice, no
// source; a house may set strip_join.
const stripJoin = 6

// cutStrips works out the strip of every line whose construction adds one.
func cutStrips(lines []*line, cloths []clothIn, r *room, quantity int) []Strip {
	out := []Strip{}
	for _, l := range lines {
		s := l.construction.Strip
		if s == nil {
			continue
		}
		in := clothRole(cloths, l.appliedRole)
		ends := l.sized.Strip.Ends
		cut := l.length + 2*ends
		bias := s.On == "bias"
		allowance := r.facts().House("strip_join", stripJoin)
		p := JoinStrips(cut, in.width, allowance, bias)
		strip := Strip{
			Name: l.name + "-strip", Title: stripTitle(l), Cloth: l.appliedRole, Seam: l.name, On: s.On,
			Finished: l.length, CutWidth: l.sized.Strip.Width, CutLength: cut,
			Count: l.copies * quantity, Lengths: p.Lengths, EachLength: p.Each, Joins: p.Joins,
			JoinKind: s.Joins, JoinAllowance: allowance,
		}
		l.strip = &strip
		out = append(out, strip)
	}
	return out
}

// stripTitle names the strip after its edge: the neck edge has a neck binding.
func stripTitle(l *line) string {
	kind := l.kind
	switch kind {
	case "seam":
		kind = "strip"
	case "hem":
		kind = "facing"
	}
	return upperFirst(strings.TrimSuffix(l.title, " edge")) + " " + kind
}

func clothRole(cloths []clothIn, role string) clothIn {
	for _, c := range cloths {
		if c.role == role {
			return c
		}
	}
	return clothIn{}
}

// notions are what is needed besides cloth and thread.
func notions(lines []*line, style length.Style, quantity int) []Notion {
	out := []Notion{}
	for _, l := range lines {
		if l.construction.Elastic == nil {
			continue
		}
		out = append(out, Notion{
			Name: l.name + "-elastic", Title: "Elastic, " + length.Format(length.MM(l.sized.Elastic.Width), style) + " wide",
			Length: l.sized.Elastic.Length, Width: l.sized.Elastic.Width, Count: l.copies * quantity,
			Basis: "cut to the body measure less 2 in (51 mm); try it on before it is joined and adjust (common practice, no source)",
		})
	}
	return out
}
