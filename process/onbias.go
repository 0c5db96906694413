package process

import (
	"fmt"
	"math"
	"slices"

	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
	cutter "bodkin/templates/cutting"
)

// shear is how far the threads of a cloth turn towards each other, in degrees, when
// a piece on the bias hangs for a day: from half a degree in cloth that stays put, a
// degree more for each step of slipperiness, half of one more where it frays at a
// touch, because it is loosely woven. An estimate: common practice, no source.
func shear(c seams.Cloth) float64 {
	turn := 0.5 + float64(c.Slip)
	if c.Fraying >= 3 {
		turn += 0.5
	}
	return turn
}

// onTheBias tells how pieces are laid and sewn whose grain crosses them at 45
// degrees, and what they become when they hang.
func (o *operator) onTheBias() []Notice {
	var laid, hung, sewn []string
	for _, p := range o.made.Pieces {
		if !p.Bias {
			continue
		}
		laid = append(laid, lowerFirst(p.Title))
		long, wide := cutter.Hung(shear(clothRole(o.cloths, p.Cloth).cloth))
		k := slices.IndexFunc(o.pieces, func(x Piece) bool { return x.Name == p.Name })
		high, across := o.pieces[k].NetHeight, o.pieces[k].NetWidth
		hung = append(hung, fmt.Sprintf("the %s grows by %s and narrows by %s at its widest", lowerFirst(p.Title),
			o.tellMM(high*(long-1)), o.tellMM(across*(1-wide))))
	}
	if len(laid) == 0 {
		return nil
	}
	text := "Chalk the whole piece, both halves, and cut in a single layer, its middle at 45 degrees to the selvedge. " +
		"By estimate, hung up for a day, " + listWords(hung, "and") + "; this rests on how slippery and how loose the cloth is (common practice, no source) and on threads that turn and do not stretch (geometry). " +
		"Hang a strip of 1 m, cut on the bias, for 24 hours beside it, and where it tells otherwise go by that: where the garment asks for the drop, write it there, and the pieces are cut as much shorter and wider; else let the side seams out: they are cut wider for it."
	for _, l := range o.lines {
		if l.work != joining {
			continue
		}
		a, b := o.biasOf(l.join.A), o.biasOf(l.join.B)
		if a || b {
			sewn = append(sewn, l.title)
		}
		if a != b {
			long, _ := cutter.Hung(shear(l.cloth))
			text += fmt.Sprintf(" In the %s one edge lies on the bias and the other does not: pin the bias edge as it lies flat, by halves and quarters, and let it out evenly; hanging alone it would grow by %s.",
				l.title, o.tellMM(l.length*(long-1)))
		}
	}
	if len(sewn) > 0 {
		text += " Stretch the " + listWords(sewn, "and the") + " a little under the needle, so that the thread gives as far as the cloth does; the lengths of seams are those of the piece as it lies flat."
	}
	return []Notice{{About: upperFirst(listWords(laid, "and")) + " on the bias", Text: text}}
}

func (o *operator) tellMM(mm float64) string {
	return length.Format(length.MM(math.Round(mm)), o.style)
}

// biasOf reports whether a chain of edges lies on a piece that is laid on the bias.
func (o *operator) biasOf(chain []templates.ChainPart) bool {
	return slices.ContainsFunc(o.made.Pieces, func(p templates.Piece) bool {
		return p.Bias && slices.ContainsFunc(chain, func(c templates.ChainPart) bool { return c.Piece == p.Name })
	})
}
