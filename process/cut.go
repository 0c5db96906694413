package process

import (
	"slices"
	"strings"

	"bodkin/seams/length"
	cutter "bodkin/templates/cutting"
)

// stripJoin is the allowance of a join in a strip: 6 mm, common practice, no
// source; a house may set strip_join.
const stripJoin = 6

// cutStrips works out the strip of every line whose construction adds one.
func cutStrips(lines []*line, cloths []clothIn, r *room, quantity int) error {
	for _, l := range lines {
		s := l.construction.Strip
		if s == nil || len(l.own) > 0 { // its own pieces are cut instead
			continue
		}
		in := clothRole(cloths, l.appliedRole)
		ends := l.sized.Strip.Ends
		cut := l.length + 2*ends
		bias := s.On == "bias"
		allowance := r.facts().House("strip_join", stripJoin)
		p, err := joined(cutter.Strip{Length: cut, Width: l.sized.Strip.Width, Cloth: in.width,
			Join: allowance, Bias: bias, Diagonal: s.Joins == "diagonal"})
		if err != nil {
			return &CannotError{About: stripTitle(l), Why: []string{err.Error(), "choose a wider cloth for it"}}
		}
		on := s.On
		if on == "straight" && in.cloth.Knit() {
			on = "across" // where a knit gives most; strips are cut from edge to edge of the cloth
		}
		strip := Strip{
			Name: l.name + "-strip", Title: stripTitle(l), Cloth: l.appliedRole, Seam: l.name, On: on,
			Finished: l.length, CutWidth: l.sized.Strip.Width, CutLength: cut,
			Count: l.copies * quantity, Lengths: p.Lengths, EachLength: p.Each, Joins: p.Joins,
			JoinKind: s.Joins, JoinAllowance: allowance,
		}
		l.strip = &strip
	}
	return nil
}

// joined plans a strip; where the cloth's width is not known it is cut in one.
func joined(s cutter.Strip) (cutter.StripPlan, error) {
	if s.Cloth == 0 {
		return cutter.StripPlan{Lengths: 1, Each: s.Length}, nil
	}
	return s.Plan()
}

// stripTitle names the strip after its edge: the neck edge has a neck binding.
func stripTitle(l *line) string {
	kind := l.kind
	switch kind {
	case "seam", "placket":
		kind = "strip"
	case "hem":
		kind = "facing"
	}
	title := upperFirst(strings.TrimSuffix(l.title, " edge"))
	if strings.HasSuffix(title, " "+kind) {
		return title
	}
	return title + " " + kind
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
	return append(out, buttons(lines, style, quantity)...)
}

// buttons are those to have, of one width together.
func buttons(lines []*line, style length.Style, quantity int) []Notion {
	var out []Notion
	for _, l := range lines {
		if l.kind != "button" {
			continue
		}
		wide := l.sized.Finished
		k := slices.IndexFunc(out, func(n Notion) bool { return n.Width == wide })
		if k < 0 {
			k = len(out)
			out = append(out, Notion{
				Name: l.name, Title: "Buttons, " + length.Format(length.MM(wide), style) + " across", Width: wide,
				Basis: "the width is the house's own; the buttonholes are made to it, so try one on a scrap (common practice, no source)",
			})
		}
		out[k].Count += l.copies * quantity
	}
	return out
}
