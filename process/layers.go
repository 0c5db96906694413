package process

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/seams/length"
)

// layering opens the name of the operation that lays two cloths together.
const layering = "layers"

// layTogether adds the basting of a cloth to the one under it, after which the
// two are one. Strips are cut from the outer cloth alone. Common practice, no
// source.
func (o *operator) layTogether(c clothIn) {
	if c.under == nil {
		return
	}
	around := 0.0
	for _, p := range o.pieces {
		if p.Cloth == c.role {
			around += perimeter(p.CutLine) * float64(p.Count)
		}
	}
	if around == 0 {
		return
	}
	n := op{line: -1, act: o.act("baste"), cloths: []seams.Cloth{c.cloth}}
	n.ID, n.Does, n.Part = layering+"."+c.role, "baste", lowerFirst(c.title)
	n.Text = fmt.Sprintf("Lay each piece of %s, right side up, on its piece of %s, and smooth the two from the middle outwards. Baste them together within the allowances, all round, each stitch %s long. Handle them as one from now on.",
		lowerFirst(c.outer.Title), lowerFirst(c.under.Title), length.Format(bastingLong, o.style))
	n.Good = "The two plies lie flat together, and neither is longer than the other."
	n.Length = around / float64(o.quantity)
	if o.settle(&n, basting, 0, "", c.colour) != nil {
		return
	}
	o.time(&n)
	o.ops = append(o.ops, n)
}

// bastingLong is a basting stitch by hand: common practice, no source.
const bastingLong length.MM = 10

// cutUnder are the words on cutting the cloth underneath; "" where there is none.
func (o *operator) cutUnder(c clothIn) string {
	if c.under == nil {
		return ""
	}
	strips := ""
	if slices.ContainsFunc(o.lines, func(l *line) bool { return l.strip != nil && l.strip.Cloth == c.role }) {
		strips = ", but no strips"
	}
	return fmt.Sprintf(" Cut the same pieces in %s%s.", lowerFirst(c.under.Title), strips)
}

// layersFirst: two cloths are laid together before anything is done to either.
func (o *operator) layersFirst() {
	for i, n := range o.ops {
		role, ok := strings.CutPrefix(n.ID, layering+".")
		if !ok {
			continue
		}
		because := "the two layers are basted together first and then handled as one"
		for j, l := range o.lines {
			if l.role != role && (l.work != joining || l.appliedRole != role) {
				continue
			}
			k := slices.IndexFunc(o.span[j], func(k int) bool { return !o.ops[k].strip })
			if k >= 0 && !o.reaches(o.span[j][k], i) {
				o.need(o.span[j][k], i, because)
			}
		}
		for k, held := range o.ops {
			if piece, ok := strings.CutPrefix(held.ID, holding+"."); ok && o.pieceRole(piece) == role {
				o.need(k, i, because)
			}
		}
	}
}

// pieceRole is the role of the cloth that a piece is cut from.
func (o *operator) pieceRole(name string) string {
	i := slices.IndexFunc(o.pieces, func(p Piece) bool { return p.Name == name })
	return o.pieces[i].Cloth
}
