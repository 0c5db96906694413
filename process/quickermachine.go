package process

import (
	"fmt"
	"slices"

	"bodkin/seams"
)

// quickerByMachine tells of what is sewn by hand only because nothing in the room
// forms the stitches of what would be taken, with which machine it would be
// quicker, and by how much.
func (o *operator) quickerByMachine() []Notice {
	var machines []string // titles, as they are met
	would := map[string][]string{}
	for _, l := range o.lines {
		m, words := o.wouldTake(l)
		if m == nil {
			continue
		}
		if !slices.Contains(machines, m.Title) {
			machines = append(machines, m.Title)
		}
		would[m.Title] = append(would[m.Title], words)
	}
	var out []Notice
	for _, title := range machines {
		out = append(out, Notice{About: "by hand", Text: fmt.Sprintf("With %s these would be quicker: %s.",
			article(lowerFirst(title)), listWords(would[title], "and"))})
	}
	return out
}

// wouldTake is the machine with which a line that is sewn by hand would be sewn
// otherwise and quicker, and how, in words; nil where there is none. The first of
// the house's that is enough by itself is told, in the shelf's order.
func (o *operator) wouldTake(l *line) (*seams.Machine, string) {
	if l.insisted || !l.allByHand(o.shelf) {
		return nil, ""
	}
	for i := range o.shelf.Machines {
		m := &o.shelf.Machines[i]
		k := slices.IndexFunc(l.others, func(v seams.Verdict) bool {
			return v.OnlyLacks() && v.Score > l.chosen.Score && !slices.ContainsFunc(v.Lacks, func(st string) bool { return !slices.Contains(m.Forms, st) })
		})
		if m.Industrial || k < 0 {
			continue
		}
		c := l.others[k].Construction
		if saved := o.saves(l, c, m); saved >= 1 {
			return m, fmt.Sprintf("the %s (%s, about %.0f min less)", l.title, lowerFirst(c.Title), saved)
		}
	}
	return nil, ""
}

// saves is how many minutes less a line takes in another construction, with a
// machine that is not in the room; all copies, one garment. It is below 0 where it
// takes more, and 0 where it cannot be reckoned.
func (o *operator) saves(l *line, c *seams.Construction, m *seams.Machine) float64 {
	room, then := *o.room, *l
	room.stations = append(slices.Clone(room.stations), station{Station: Station{Kind: "machine"}, machine: *m})
	forms := l.facts.Workroom.Forms
	then.facts.Workroom.Forms = func(st string) bool { return forms(st) || slices.Contains(m.Forms, st) }
	now, err := o.room.minutes(l, l.construction, o.shelf)
	if err != nil {
		return 0
	}
	quicker, err := room.minutes(&then, c, o.shelf)
	if err != nil {
		return 0
	}
	return (now - quicker) * float64(l.copies)
}

// allByHand reports whether no pass of the line is sewn by machine, and one by hand.
func (l *line) allByHand(shelf *seams.Shelf) bool {
	sewn := false
	for _, p := range l.sized.Passes {
		if p.Pass.Stitch == "" {
			continue
		}
		if st, err := shelf.Stitch(p.Pass.Stitch); err != nil || !st.Hand {
			return false
		}
		sewn = true
	}
	return sewn
}
