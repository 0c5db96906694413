package process

import (
	"fmt"
	"slices"

	"bodkin/seams"
)

// highCrossings warn of lines that do not go under the foot of their machine
// where they are thickest: plies × thickness of one, against the height that the
// machine takes. Cloth is reckoned unpressed, and nothing as graded away.
func (o *operator) highCrossings() []Notice {
	var out []Notice
	for i, l := range o.lines {
		here := o.crossed[i]
		for _, k := range o.span[i] {
			n := o.ops[k]
			m := o.room.stations[n.station].machine
			if n.strip || n.act.Station != "machine" || m.MaxThickness <= 0 {
				continue
			}
			thick, own := height(n.cloths, here.plies), height(n.cloths, max(l.construction.Layers, 1))
			if thick <= m.MaxThickness {
				continue
			}
			where, mend := "in the line itself", "Sew it by hand, on a machine that takes more, or in a thinner construction."
			if here.over != nil && own <= m.MaxThickness {
				where = "where it crosses the " + here.over.title
				mend = "Trim and grade the allowances there, hammer the place flat, fold a scrap under the heel of the foot, and turn the wheel by hand over it; what still does not go under the foot is sewn by hand."
			}
			if slices.ContainsFunc(n.cloths, func(c seams.Cloth) bool { return c.Pile }) {
				mend = "The pile is counted standing, and the foot presses it down: try a scrap, and clip the pile out of the allowances. " + mend
			}
			out = append(out, Notice{About: upperFirst(l.title), Text: fmt.Sprintf(
				"%s it is up to %d plies thick, about %s if nothing is trimmed (an estimate), and the %s takes %s. %s",
				upperFirst(where), here.plies, mmWords(thick), lowerFirst(m.Title), mmWords(m.MaxThickness), mend)})
			break
		}
	}
	return out
}

// height is what plies of the thickest of the cloths measure in mm.
func height(cloths []seams.Cloth, plies int) float64 {
	thick := 0.0
	for _, c := range cloths {
		thick = max(thick, c.Thickness)
	}
	return thick * float64(plies)
}
