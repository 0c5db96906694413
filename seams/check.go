package seams

import (
	"fmt"
	"slices"

	"bodkin/seams/form"
)

// check looks over every entry against the others and against itself. It is
// done once the user's entries have taken the place of ours.
func (l *loader) check(s *Shelf) {
	l.differences()
	for _, p := range l.cloths {
		l.cloth(p.entry, p.node)
	}
	for _, p := range l.stitches {
		l.stitch(p.entry, p.node)
	}
	for _, p := range l.machines {
		l.machine(p.entry, p.node, s)
	}
	for _, p := range l.tools {
		if p.entry.Caution != "" {
			l.listed(p.node.At("caution"), "caution", p.entry.Caution, names(s.Cautions))
		}
	}
	for _, p := range l.pressing {
		l.press(p.entry, p.node, s)
	}
	for _, p := range l.acts {
		l.act(p.entry, p.node, s)
	}
	for _, p := range l.needles {
		l.needle(p.entry, p.node)
	}
	for _, p := range l.handNeedles {
		l.within(p.node, "size", float64(p.entry.Size), 1, 12, "")
	}
	for _, p := range l.threads {
		l.thread(p.entry, p.node)
	}
	for _, p := range l.interfacings {
		l.interfacing(p.entry, p.node)
	}
	for _, p := range l.constructions {
		l.construction(p.entry, p.node, s)
	}
	for _, p := range l.stays {
		l.stay(p.entry, p.node, s)
	}
}

// differences looks over what sources differ on, in every kind of entry that tells it.
func (l *loader) differences() {
	for _, p := range l.cloths {
		l.differ(p.entry.Differ, p.node)
	}
	for _, p := range l.stitches {
		l.differ(p.entry.Differ, p.node)
	}
	for _, p := range l.machines {
		l.differ(p.entry.Differ, p.node)
	}
	for _, p := range l.needles {
		l.differ(p.entry.Differ, p.node)
	}
	for _, p := range l.handNeedles {
		l.differ(p.entry.Differ, p.node)
	}
	for _, p := range l.interfacings {
		l.differ(p.entry.Differ, p.node)
	}
	for _, p := range l.constructions {
		l.differ(p.entry.Differ, p.node)
		for i, d := range p.entry.Differ {
			if d.Of != "" {
				l.listed(p.node.At("differ", i, "of"), "size of this construction", d.Of, append(p.entry.Sizes.Keys(), allowanceName, "finished"))
			}
		}
	}
}

func (l *loader) fault(n *form.Node, nearest, mend, format string, args ...any) {
	l.faults = append(l.faults, n.Fault(fmt.Sprintf(format, args...), nearest, mend))
}

// within refuses a number outside of sensible limits.
func (l *loader) within(n *form.Node, key string, value, low, high float64, unit string) {
	if value < low || value > high {
		l.fault(n.At(key), "", fmt.Sprintf("write a figure within these limits, or leave %s out", key), "%s must be from %v to %v%s", key, low, high, unit)
	}
}

// listed refuses a name that is not among others.
func (l *loader) listed(n *form.Node, what, name string, among []string) {
	if !slices.Contains(among, name) {
		nearest, mend := form.Nearest(name, among), ""
		if nearest == "" {
			mend = "take one that is there, or add an entry of this name"
		}
		l.fault(n, nearest, mend, "%q is no %s on the shelf", name, what)
	}
}

func (l *loader) cloth(c Cloth, n *form.Node) {
	if c.Like != "" && c.Inferred == nil {
		return // it could not be filled in, and that is told
	}
	l.within(n, "weight", c.Weight, 5, 2000, " g/m²")
	l.within(n, "thickness", c.Thickness, 0.02, 20, " mm")
	l.within(n, "sheerness", float64(c.Sheerness), 0, 3, "")
	l.within(n, "fraying", float64(c.Fraying), 0, 3, "")
	l.within(n, "slip", float64(c.Slip), 0, 3, "")
	l.within(n, "heat_dots", float64(c.HeatDots), 0, 3, "")
	l.within(n, "recovery", c.Recovery, 0, 100, " %")
	l.within(n, "crease", float64(c.Crease), 0, 3, "")
	l.within(n, "shrinkage", c.Shrinkage, 0, 30, " %")
	l.within(n.At("stretch"), "across", c.Stretch.Across, 0, 400, " %")
	l.within(n.At("stretch"), "along", c.Stretch.Along, 0, 400, " %")
	for i, w := range c.Widths {
		if w < 100 || w > 5000 {
			l.fault(n.At("widths", i), "", "give the width from selvedge to selvedge", "a cloth is from 10 cm to 5 m wide")
		}
	}
	if len(c.Widths) == 0 {
		l.fault(n.At("widths"), "", "give at least one width", "no width is given")
	}
	if c.HeatDots == 0 && c.Steam {
		l.fault(n.At("steam"), "", "leave steam out, or give the dots that the cloth bears", "a cloth that must not be ironed cannot be steamed with the iron")
	}
	for i, key := range c.Estimates {
		if !slices.ContainsFunc(n.Keys(), func(k form.Text) bool { return k.Value == key }) {
			var keys []string
			for _, k := range n.Keys() {
				keys = append(keys, k.Value)
			}
			l.fault(n.At("estimates", i), form.Nearest(key, keys), "", "%q is no key of this entry", key)
		}
	}
}

func (l *loader) stitch(s Stitch, n *form.Node) {
	l.within(n, "needle_share", s.NeedleShare, 0, 1, "")
	l.within(n, "stretch", s.Stretch, 0, 400, " %")
	l.within(n, "ratio", s.Ratio, 0.5, 60, "")
	if s.Strength < 0 {
		l.fault(n.At("strength"), "", "leave strength out where none is published", "strength cannot be negative")
	}
	if threads := s.Needles + s.Loopers + s.Bobbins + s.Covers; threads < 1 {
		l.fault(n, "", "give needles, loopers, bobbins and covers", "a stitch needs at least one thread")
	}
}

func (l *loader) machine(m Machine, n *form.Node, s *Shelf) {
	for i, stitch := range m.Forms {
		l.listed(n.At("forms", i), "stitch", stitch, names(s.Stitches))
	}
	l.within(n, "max_dots", float64(m.MaxDots), 0, 3, "")
	switch m.Kind {
	case "machine":
		l.within(n, "speed", m.Speed, 10, 10000, " stitches a minute")
		if m.MaxSpeed != 0 && m.MaxSpeed < m.Speed {
			l.fault(n.At("max_speed"), "", "give a speed that is no more than max_speed", "it is run faster than it is built for")
		}
		l.within(n, "threads", float64(m.Threads), 1, 10, "")
		if len(m.Forms) == 0 {
			l.fault(n, "", "add forms: and the stitches", "a machine forms at least one stitch")
		}
		if len(m.Feet) == 0 {
			l.fault(n, "", "add feet:, the usual one first", "a machine wears a foot")
		}
	case "iron":
		if len(m.Forms) > 0 {
			l.fault(n.At("forms"), "", "leave forms out, or write kind: machine", "an iron forms no stitches")
		}
		if m.MaxDots == 0 {
			l.fault(n, "", "add max_dots: from 1 to 3", "an iron that gives no heat")
		}
	}
	if m.Kind != "iron" && (m.MaxDots > 0 || m.Steam) {
		l.fault(n, "", "leave them out, or write kind: iron", "max_dots and steam are for irons")
	}
}

func (l *loader) act(a Act, n *form.Node, s *Shelf) {
	l.within(n, "start", a.Start, 0, 60, " minutes")
	l.within(n, "per_metre", a.PerMetre, 0, 60, " minutes")
	if a.Caution != "" {
		l.listed(n.At("caution"), "caution", a.Caution, names(s.Cautions))
	}
}

// usOf is how to mend the American number of a needle.
func usOf(nm int) string {
	if us, ok := NeedleUS(nm); ok {
		return fmt.Sprintf("NM %d is US %d", nm, us)
	}
	return "give a size that is made, such as nm: 80 and us: 12"
}

func (l *loader) needle(r NeedleRule, n *form.Node) {
	if us, ok := NeedleUS(r.NM); !ok || us != r.US {
		l.fault(n.At("us"), "", usOf(r.NM), "needle NM %d is not US %d", r.NM, r.US)
	}
	l.within(n, "stitch_mm", r.Stitch, 0.5, 6, " mm")
	if (r.Point == "twin") != (r.Apart > 0) {
		l.fault(n.At("apart"), "", "write apart: and the mm between its points, or another point:", "a twin needle, and no other, has two points apart")
	}
}

func (l *loader) thread(t Thread, n *form.Node) {
	l.within(n, "tex", t.Tex, 5, 500, "")
	if t.Tex > 0 && (t.Ticket < TicketFromTex(t.Tex)*0.9 || t.Ticket > TicketFromTex(t.Tex)*1.1) {
		l.fault(n.At("ticket"), "", "ticket is 3000 / tex", "ticket %v does not go with tex %v", t.Ticket, t.Tex)
	}
}

func (l *loader) interfacing(i Interfacing, n *form.Node) {
	l.within(n, "heat_dots", float64(i.HeatDots), 0, 3, "")
	if i.Fusible && i.HeatDots == 0 {
		l.fault(n, "", "add heat_dots", "a fusible needs heat")
	}
	if !i.Fusible && i.HeatDots > 0 {
		l.fault(n.At("heat_dots"), "", "leave heat_dots out, or write fusible: true", "an interfacing that is sewn in needs no heat")
	}
	if i.Self && i.Tape() {
		l.fault(n.At("for"), "", "leave for out, or self", "the garment's own cloth is for pieces")
	}
	if i.Self && (i.Fusible || i.Weight > 0) {
		l.fault(n.At("self"), "", "leave weight and fusible out, or self", "the garment's own cloth has its own weight and is not fusible")
	}
	if !i.Self {
		l.within(n, "weight", i.Weight, 5, 500, " g/m²")
		low, high := 100.0, 5000.0
		if i.Tape() {
			low, high = 2, 60
		}
		l.within(n, "width", i.Width, low, high, " mm")
	}
	l.rules(n, "speaks_for", i.SpeaksFor)
}

// rules refuses a rule that speaks without weight.
func (l *loader) rules(n *form.Node, key string, rules []Rule) {
	for i, r := range rules {
		if r.Worth <= 0 || r.Worth > 20 {
			l.fault(n.At(key, i), "", "add worth: from 1 to 5", "a rule under %s needs a worth above 0 and up to 20", key)
		}
	}
}
