package process

import (
	"fmt"
	"slices"

	"bodkin/seams"
	"bodkin/seams/length"
)

// clear puts another construction in the place of one whose own plies do not go
// under the foot of the machine that would sew it: the next that is allowed and
// does. Where there is none, and where the job or the design insists, it stays,
// and highCrossings warns. Pile is left to that too: it is counted standing, and
// the foot presses it down.
func (r *room) clear(lines []*line) error {
	changed := false
	for _, l := range lines {
		why := r.tooHigh(l)
		if why == "" || l.insisted {
			continue
		}
		was, sized := append([]seams.Verdict{l.chosen}, l.others...), l.sized
		was[0].RuledOut = append(slices.Clone(was[0].RuledOut), why)
		for k := range was {
			if !was[k].Allowed() {
				continue
			}
			l.take(was, k)
			var err error
			if l.sized, err = l.construction.Measure(l.facts); err != nil {
				return err
			}
			if why := r.tooHigh(l); why == "" {
				changed = true
				break
			} else {
				was[k].RuledOut = append(slices.Clone(was[k].RuledOut), why)
			}
		}
		if r.tooHigh(l) != "" {
			was[0].RuledOut = nil
			l.take(was, 0)
			l.sized = sized
		}
	}
	if !changed {
		return nil
	}
	return measure(lines)
}

// tooHigh says why a line's own plies do not go under a foot; empty where they do.
func (r *room) tooHigh(l *line) string {
	why, _ := r.tooHighAt(l, crossed{plies: max(l.construction.Layers, 1)})
	return why
}

// tooHighAt says why so many plies of a line do not go under a foot, and how much
// that speaks against it at a crossing; empty where they do.
func (r *room) tooHighAt(l *line, here crossed) (why string, worth float64) {
	cloths := []seams.Cloth{l.cloth, l.applied}
	if slices.ContainsFunc(cloths, func(c seams.Cloth) bool { return c.Pile }) {
		return "", 0
	}
	thick := height(cloths, here.plies)
	for _, p := range l.sized.Passes {
		if p.Pass.Stitch == "" || p.Pass.On == "strip" {
			continue
		}
		k := r.takes(p.Pass.Stitch, p.Pass.Foot, thick)
		if k < 0 || r.stations[k].Kind != "machine" {
			continue
		}
		if m := r.stations[k].machine; !r.stations[k].clears(thick) {
			where := ""
			if here.over != nil {
				where = "where it crosses the " + here.over.title + " "
			}
			return fmt.Sprintf("%sits %d plies are about %s thick, and no more than %s goes under the foot of the %s",
				where, here.plies, thickness(thick, r.style), thickness(m.MaxThickness, r.style), lowerFirst(m.Title)), highCrossing(thick, m.MaxThickness)
		}
	}
	return "", 0
}

// highCrossing is what speaks against a construction that stands too high where
// it crosses another line, in points: not much, since there a maker grades the
// plies, hammers the place and turns the wheel by hand; more where so many plies
// are half as high again as goes under the foot. An estimate.
func highCrossing(thick, limit float64) float64 {
	if thick > 1.5*limit {
		return 2
	}
	return 1
}

// level weighs once more what stands too high for the foot of its machine where
// it crosses another line: a construction that goes under it there is taken if
// little else speaks against it. What is insisted on stays, and highCrossings
// warns of what is left.
func (r *room) level(lines []*line, relations []relation) error {
	changed := false
	for i, l := range lines {
		if why, _ := r.tooHighAt(l, thickestOf(i, lines, relations)); why == "" || l.insisted {
			continue
		}
		all := append([]seams.Verdict{l.chosen}, l.others...)
		best := 0
		for k := range all {
			if !all[k].Allowed() {
				continue
			}
			l.take(all, k)
			var err error
			if l.sized, err = l.construction.Measure(l.facts); err != nil {
				return err
			}
			if why, worth := r.tooHighAt(l, thickestOf(i, lines, relations)); why != "" {
				all[k].Against = append(slices.Clone(all[k].Against), seams.Reason{Worth: worth, Because: why})
				all[k].Score -= worth
			}
			if all[k].Score > all[best].Score {
				best = k
			}
		}
		changed = true
		l.take(all, best)
	}
	if !changed {
		return nil
	}
	return measure(lines)
}

// thickness is in the reader's units.
func thickness(mm float64, style length.Style) string { return length.Format(length.MM(mm), style) }

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
				upperFirst(where), here.plies, thickness(thick, o.style), lowerFirst(m.Title), thickness(m.MaxThickness, o.style), mend)})
			break
		}
	}
	return out
}

// overCrossing says at a machine row how to get over the place where it crosses
// another line, where that does not go under the foot; empty where it does.
// Grading, hammering, a scrap under the heel, the wheel by hand: common practice,
// no source.
func (o *operator) overCrossing(i int, n *op) string {
	here := o.crossed[i]
	if n.strip || n.act.Station != "machine" || here.over == nil || o.room.stations[n.station].clears(height(n.cloths, here.plies)) {
		return ""
	}
	return fmt.Sprintf(" Where it crosses the %s it is thick: trim each allowance there a little shorter than the one beneath, hammer the place flat over a cloth, and turn the wheel by hand over it, with a folded scrap under the heel of the foot.", here.over.title)
}

// height is what plies of the thickest of the cloths measure in mm.
func height(cloths []seams.Cloth, plies int) float64 {
	thick := 0.0
	for _, c := range cloths {
		thick = max(thick, c.Thickness)
	}
	return thick * float64(plies)
}
