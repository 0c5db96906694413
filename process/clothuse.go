package process

import (
	"fmt"
	"math"
	"slices"

	"bodkin/seams/length"
)

// useful is the part of the cloth that a simple lay uses; the rest falls
// between the pieces. An estimate: 70 %, common practice, no source.
const useful = 0.7

// clothUse adds up what is cut from each cloth and estimates what to buy.
func (o *operator) clothUse(plan *Plan) []ClothUse {
	out := []ClothUse{}
	for _, c := range o.cloths {
		u := ClothUse{Role: c.role, Name: c.cloth.Name, Title: c.cloth.Title, Colour: c.colour, WidthMM: c.width,
			HeatDots: c.cloth.HeatDots, Handling: handling(c)}
		longest := 0.0
		for _, p := range plan.Pieces {
			if p.Cloth == c.role {
				u.AreaMM2 += p.AreaMM2 * float64(p.Count)
				longest = max(longest, p.Height)
			}
		}
		c.tell(&u, o.shelf)
		if u.Under != nil {
			u.Under.WidthMM, u.Under.AreaMM2 = float64(c.underWidth()), u.AreaMM2
			u.Under.LengthMM = toBuy(u.AreaMM2, u.Under.WidthMM, longest, c.under.Shrinkage)
		}
		for _, s := range plan.Strips {
			if s.Cloth != c.role {
				continue
			}
			u.AreaMM2 += s.CutWidth * s.EachLength * float64(s.Lengths*s.Count)
			if s.On == "bias" {
				longest = max(longest, s.EachLength/math.Sqrt2+s.CutWidth*math.Sqrt2)
			} else {
				longest = max(longest, s.CutWidth)
			}
		}
		if u.AreaMM2 == 0 {
			continue
		}
		if c.width > 0 {
			u.LeastMM = bought(max(u.AreaMM2/c.width, longest), c.outer.Shrinkage)
			if e, err := o.simpleLay(c, plan); err == nil {
				u.LengthMM = bought(e.Lay, c.outer.Shrinkage)
				u.Basis = "estimate: the pieces laid in rows on the folded cloth, strips after them; a closer lay may take less"
			} else {
				u.LengthMM = toBuy(u.AreaMM2, c.width, longest, c.outer.Shrinkage)
				u.Basis = fmt.Sprintf("estimate: %s; the area of the pieces over %.0f%% of the cloth's width, at least the longest piece", err, 100*useful)
			}
			if c.outer.Shrinkage > 0 {
				u.Basis += fmt.Sprintf(", and %.0f%% for shrinkage", c.outer.Shrinkage)
			}
			u.Basis += "; lay the pieces out before you buy"
		}
		out = append(out, u)
	}
	return out
}

// toBuy is the length of cloth for an area of pieces, at least the longest of
// them, with shrinkage in per cent, to the next 5 cm; 0 where the width is not
// known. All in mm.
func toBuy(area, width, longest, shrinkage float64) float64 {
	if width <= 0 {
		return 0
	}
	return bought(max(area/(useful*width), longest), shrinkage)
}

// bought is a length of cloth with shrinkage in per cent, to the next 5 cm.
func bought(need, shrinkage float64) float64 {
	return math.Ceil(need/(1-shrinkage/100)/50-1e-9) * 50
}

// handling are the words on how a cloth wants to be treated, from its
// properties. Sources: Sheers, EC 69-458, Univ. of Nebraska Extension, 1969;
// Working with Napped Fabrics, Guideline 4.218; Sew Any Fabric, Krause, 2003.
func handling(c clothIn) []string {
	out := []string{}
	f := c.cloth
	if f.Sheerness >= 2 || f.Slip >= 2 {
		out = append(out, "Cut in a single layer on tissue paper, held with weights; let nothing hang off the table.")
	}
	if f.HolesStay {
		out = append(out, "Needle holes stay: pin only inside the allowances, and unpick nothing.")
	}
	if f.Pile || f.OneWay {
		out = append(out, "It has a direction: cut every piece with the nap the same way.")
	}
	if f.Shine {
		out = append(out, "Press from the wrong side: an iron on the right side leaves a shine.")
	}
	if !f.Steam && f.HeatDots > 0 {
		out = append(out, "Press dry: steam may mark it.")
	}
	if f.Fraying >= 3 {
		out = append(out, "It frays at a touch: sew soon after cutting and handle the edges little.")
	}
	if f.Shrinkage >= 2 {
		out = append(out, fmt.Sprintf("Wash or steam it before cutting: it may shrink by %.0f%%.", f.Shrinkage))
	}
	return out
}

// notices tell what in the plan is estimated and where its knowledge ends.
func (o *operator) notices(plan *Plan) []Notice {
	return append(o.garmentNotices(plan), o.orderNotices(plan)...)
}

// garmentNotices are those that hold in whatever order the work is done.
func (o *operator) garmentNotices(plan *Plan) []Notice {
	out := []Notice{{About: "minutes",
		Text: "Minutes are estimates to weigh one step against another: no published figures for home or class sewing are known. They include no rests, no unpicking and no hunting for tools."}}
	out = append(out, o.ownCloths(plan)...)
	out = append(out, o.weakSeams(plan)...)
	out = append(out, o.highCrossings()...)
	for _, n := range o.narrow {
		out = append(out, Notice{About: upperFirst(o.pieces[n.piece].Title), Text: o.told(n)})
	}
	for _, n := range o.lacking {
		if !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	told := map[string]bool{}
	for _, c := range o.cloths {
		if len(c.cloth.Estimates) > 0 && !told[c.cloth.Name] {
			told[c.cloth.Name] = true
			out = append(out, Notice{About: c.cloth.Title,
				Text: fmt.Sprintf("These properties of %s are estimates: %s. Judge your own piece and say so on the shelf if it differs.",
					lowerFirst(c.cloth.Title), listWords(c.cloth.Estimates, "and"))})
		}
	}
	for _, m := range plan.Measures {
		if m.Default {
			out = append(out, Notice{About: m.Title,
				Text: fmt.Sprintf("%s was not given; the garment's own %s is used.", m.Title, length.Format(length.MM(m.MM), o.style))})
		}
	}
	for _, l := range o.lines {
		if l.kind == "hem" && l.facts.Edge.Fullness > 3 {
			out = append(out, Notice{About: upperFirst(l.title),
				Text: fmt.Sprintf("The turned-up edge is %s longer than the place where it lies: ease it in evenly.",
					length.Format(length.MM(math.Round(l.facts.Edge.Fullness)), o.style))})
		}
	}
	out = append(out, o.quickerByMachine()...)
	return append(out, o.onTheBias()...)
}
