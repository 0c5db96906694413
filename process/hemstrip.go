package process

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/seams/length"
	cutter "bodkin/templates/cutting"
)

// stripLap is how far the lengths of a strip of interfacing, and its ends round a
// closed hem, lie over each other, mm. They are lapped, not seamed, so that
// nothing thick lies in the hem. Common practice, no source.
const stripLap = 10

// round chooses and cuts the strip of interfacing that a hem is laid with where the
// shelf asks for one: as wide as the hem is deep and what reaches beyond it, as
// long as the edge, in as many lengths as its material is wide enough for.
func (l *line) round(shelf *seams.Shelf, c clothIn, r *room, quantity int) error {
	facts := l.facts
	facts.Edge.Depth = l.sized.Finished // as it is made, where the garment leaves it free
	ask, err := shelf.StripFor(l.construction, facts)
	if err != nil || ask == nil {
		return err
	}
	f, err := steady(shelf, c, seams.PartOf(l.kind), r)
	if err != nil {
		return err
	}
	wide, long := l.sized.Finished+ask.Below+ask.Above, l.length
	if l.facts.Edge.Closed {
		long += stripLap
	}
	across := c.width
	if k := slices.IndexFunc(shelf.Interfacings, func(m seams.Interfacing) bool { return m.Name == f.Material }); !shelf.Interfacings[k].Self {
		across = shelf.Interfacings[k].Width
	}
	p, err := joined(cutter.Strip{Length: long, Width: wide, Cloth: across, Join: stripLap / 2, Bias: ask.Cut == "bias"})
	if err != nil {
		return &CannotError{About: "strip in the " + l.title, Why: []string{err.Error()}}
	}
	f.Name, f.Piece, f.Title, f.Part, f.On, f.Joins = l.name+"-strip", l.name, upperFirst(l.title), "hem", ask.Cut, p.Joins
	f.Cut, f.Count = [2]float64{wide, p.Each}, p.Lengths*l.copies*quantity
	f.Below = ask.Below
	f.Because = append([]string{ask.Because}, f.Because...)
	f.Attach = "Baste it by hand along the fold line with long stitches that pick up a single thread of the cloth, and catch its upper edge to the seam allowances alone."
	if f.Fusible {
		f.Attach = "Fuse it a spot at a time, pressing down and lifting; let it cool before moving it. Try a scrap first, and follow the maker's leaflet."
	}
	f.Trim = "Trim it at the seam lines of open ends, so that it lies in no allowance."
	l.rounded, l.lays = &f, ask
	return nil
}

// layStrip puts the strip of interfacing into a hem before it is turned.
func (o *operator) layStrip(i int, l *line) error {
	f := l.rounded
	does, stitch := "baste", basting
	if f.Fusible {
		does, stitch = "fuse", ""
	}
	n := op{line: i, act: o.act(does), glue: f.HeatDots, cloths: []seams.Cloth{l.cloth}}
	n.ID, n.Does, n.Part, n.Seam = l.name+".strip", does, l.part(), l.name
	fill := filler{style: o.style, names: o.names(l), sizes: map[string]float64{"below": l.lays.Below, "above": l.lays.Above}}
	where, missing := fill.fill(l.lays.Text)
	if missing != "" {
		return fmt.Errorf("stay %s: its words ask for {%s}, which it does not size", l.lays.Name, missing)
	}
	n.Text = strings.Join([]string{o.stripInHand(l), where, f.Attach}, " ")
	n.Good = "The strip lies flat, neither stretched nor rippled, and nothing of it shows on the right side."
	n.Length = l.length * float64(l.copies)
	if err := o.settle(&n, stitch, 0, "", clothRole(o.cloths, l.role).thread); err != nil {
		return err
	}
	o.time(&n)
	o.span[i] = append(o.span[i], len(o.ops))
	o.ops = append(o.ops, n)
	return nil
}

// stripInHand says what is taken in hand to lay the strip, and how its ends meet.
func (o *operator) stripInHand(l *line) string {
	f, lap := l.rounded, length.Format(stripLap, o.style)
	words := fmt.Sprintf("Take the hem's strip of interfacing, %s wide (%s).", length.Format(length.MM(f.Cut[0]), o.style), lowerFirst(f.MaterialTitle))
	switch {
	case f.Joins > 0:
		words += fmt.Sprintf(" Lap its %d lengths by %s, without a seam.", f.Joins+1, lap)
	case l.facts.Edge.Closed:
		words += " Lap its ends by " + lap + ", without a seam."
	}
	return words
}

// caught is what the hand stitches of a hem pick up: its strip where that reaches
// beyond its edge.
func (l *line) caught() string {
	if l.rounded != nil && l.lays.Above > 0 {
		return "the strip of interfacing alone"
	}
	return "one thread of the garment"
}
