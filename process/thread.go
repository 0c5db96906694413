package process

import (
	"fmt"
	"math"
	"slices"

	"bodkin/seams"
)

// bight is the width of an overedge stitch in mm: a usual setting of a home
// overlocker (common practice, no source).
const bight = 5

// tails is the thread left hanging at both ends of a row, in metres: an
// estimate, 10 cm at each end of each thread.
const tails = 0.2

// thread adds up what each colour uses, over all garments, with waste.
func (o *operator) thread() ([]Thread, error) {
	out := []Thread{}
	capacity := map[int]float64{} // by index in out
	bobbin := map[int]float64{}
	kinds := map[[2]string]int{} // colour and kind
	on := spools{}
	at := func(n *op, colour string, kind *seams.Thread, special bool) int {
		key := [2]string{colour, ""}
		if !special && o.labels != nil { // several garments share a colour, not always a kind
			kind, special = on.spool(n, colour, kind), true
		}
		if special {
			key[1] = kind.Name
		}
		k, ok := kinds[key]
		if !ok {
			k = len(out)
			kinds[key] = k
			out = append(out, Thread{Colour: colour, Kind: kind.Title, Tex: kind.Tex, ForSeams: []string{}})
		}
		if n.line >= 0 && !slices.Contains(out[k].ForSeams, o.lines[n.line].name) {
			out[k].ForSeams = append(out[k].ForSeams, o.lines[n.line].name)
		}
		return k
	}
	for _, n := range o.ops {
		if n.Setting.Stitch == "" {
			continue
		}
		st, err := o.shelf.Stitch(n.Setting.Stitch)
		if err != nil {
			return nil, err
		}
		needle, below, err := o.draws(n, st)
		if err != nil {
			return nil, err
		}
		kind, special, err := o.threadKind(&n)
		if err != nil {
			return nil, err
		}
		k := at(&n, n.Setting.Thread, kind, special)
		out[k].NeedleM += needle
		if colour := n.Setting.Bobbin + n.Setting.Loopers; colour != "" && colour != n.Setting.Thread {
			plain, err := o.shelf.ThreadFor(o.factsOf(n.cloths[0]))
			if err != nil {
				return nil, err
			}
			k = at(&n, colour, plain, false)
		}
		out[k].LooperM += below
		if m := o.room.stations[n.station].machine; st.Bobbins > 0 && m.Bobbin > 0 {
			bobbin[k] += below
			if c := capacity[k]; c == 0 || m.Bobbin < c {
				capacity[k] = m.Bobbin
			}
		}
	}
	for k := range out {
		t := &out[k]
		t.NeedleM, t.LooperM = tenths(seams.WithWaste(t.NeedleM)), tenths(seams.WithWaste(t.LooperM))
		t.Metres = tenths(t.NeedleM + t.LooperM)
		t.Bobbins = seams.Bobbins(seams.WithWaste(bobbin[k]), capacity[k])
		t.Basis = fmt.Sprintf("length of the rows by the stitch's own formula or ratio, %.0f cm of tails a row, and %.0f%% waste", 100*tails, 100*seams.Waste)
		if c := capacity[k]; c > 0 {
			t.Basis += fmt.Sprintf("; a bobbin is taken to hold %.0f m (estimate)", c)
		}
	}
	return out, nil
}

// topstitching follows the colour in a setting whose needle carries the thick
// thread of rows that are meant to be seen.
const topstitching = " topstitching"

// threadKind is the thread that the row is sewn with; special tells that it is
// another than the plain seams of the cloth take.
func (o *operator) threadKind(n *op) (kind *seams.Thread, special bool, err error) {
	facts := o.factsOf(n.cloths[0])
	plain, err := o.shelf.ThreadFor(facts)
	if err != nil {
		return nil, false, err
	}
	row := plainly(n.row)
	if n.Setting.Stitch != "" {
		row.Stitch = n.Setting.Stitch
	}
	kind, err = o.shelf.ThreadForRow(facts, row)
	return kind, kind != plain, err
}

// factsOf are the facts of one cloth by itself in this room.
func (o *operator) factsOf(c seams.Cloth) seams.Facts {
	return seams.Facts{Cloth: c.Facts(), Applied: c.Facts(), Workroom: o.room.facts()}
}

// draws is the thread of an operation in metres, every garment, without waste:
// what runs through the needles and what lies below or around.
func (o *operator) draws(n op, st *seams.Stitch) (needle, below float64, err error) {
	stitch := n.Setting.StitchMM
	if stitch <= 0 {
		stitch = handStitch
	}
	thickness := 0.0
	for _, c := range n.cloths {
		thickness = max(thickness, c.Thickness)
	}
	per, err := st.Draws(1/stitch, thickness*float64(max(n.layers, 2)), bight)
	if err != nil {
		return 0, 0, err
	}
	rows := float64(max(st.Needles+st.Loopers+st.Bobbins+st.Covers, 1)) * tails * float64(n.copiesOf(o))
	needle, below = st.Split((per*n.Length/1000 + rows) * float64(max(n.many, o.quantity)))
	return needle, below, nil
}

// handStitch is the stitch length in mm that hand work is reckoned with where a
// construction does not say: about 1/4 in (common practice, no source).
const handStitch = 6

func (n op) copiesOf(o *operator) int {
	if n.line < 0 {
		return 1
	}
	return o.lines[n.line].copies
}

func tenths(x float64) float64 { return math.Round(x*10) / 10 }

// needles are the machine needles to have at hand, in the order of first use.
func (o *operator) needles(plan *Plan) []NeedleUse {
	out := []NeedleUse{}
	for _, n := range plan.Operations {
		w := n.Setting.Needle
		if w == "" || slices.ContainsFunc(out, func(u NeedleUse) bool { return u.Needle == w }) {
			continue
		}
		i := slices.IndexFunc(o.ops, func(x op) bool { return x.ID == n.ID })
		var titles []string
		for _, c := range o.ops[i].cloths {
			if w := lowerFirst(c.Title); !slices.Contains(titles, w) {
				titles = append(titles, w)
			}
		}
		use := NeedleUse{Needle: w, For: listWords(titles, "and"), Hints: []string{}}
		if o.room.stations[o.ops[i].station].Kind == "hand" {
			rule, err := o.handNeedle(&o.ops[i])
			if err != nil {
				continue // the operation itself could not have been set
			}
			use.For, use.Source = "hand stitches in "+use.For, rule.Source
			if n.Does == "baste" {
				use.For = "basting " + listWords(titles, "and")
			}
			use.Hints = append(use.Hints, rule.Hints...)
		} else {
			rule, err := o.needle(o.ops[i].cloths, o.ops[i].row)
			if err != nil {
				continue
			}
			use.Source, use.Hints = rule.Source, append(use.Hints, rule.Hints...)
		}
		out = append(out, use)
	}
	return out
}

// tools are what the chosen constructions ask for, in the order of the lines.
func (o *operator) tools() ([]Tool, error) {
	out := []Tool{}
	for i, l := range o.lines {
		if len(o.span[i]) == 0 {
			continue // done already
		}
		for _, name := range l.construction.Tools {
			k := slices.IndexFunc(out, func(t Tool) bool { return t.Name == name })
			if k < 0 {
				t, err := o.shelf.Tool(name)
				if err != nil {
					return nil, err
				}
				k = len(out)
				out = append(out, Tool{Name: t.Name, Title: t.Title, For: t.For})
			}
			out[k].Seams = append(out[k].Seams, l.name)
		}
	}
	return out, nil
}

// cautions are what the materials and the acts of this plan call for.
func (o *operator) cautions() ([]Caution, error) {
	var acts []string
	for _, n := range o.ops {
		if !slices.Contains(acts, n.Does) {
			acts = append(acts, n.Does)
		}
	}
	out := []Caution{}
	add := func(f seams.Facts, acts []string) error {
		cs, err := o.shelf.CautionsFor(f, acts)
		for _, c := range cs {
			if k := (Caution{c.Text, c.Why}); !slices.Contains(out, k) {
				out = append(out, k)
			}
		}
		return err
	}
	for _, l := range o.lines {
		if err := add(l.facts, acts); err != nil {
			return nil, err
		}
		for _, name := range l.construction.Tools {
			if err := o.cautionOf(name, &out); err != nil {
				return nil, err
			}
		}
		f := l.facts
		f.Cloth = f.Applied
		if err := add(f, nil); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// cautionOf adds the caution of a tool that can hurt, once.
func (o *operator) cautionOf(tool string, out *[]Caution) error {
	t, err := o.shelf.Tool(tool)
	if err != nil || t.Caution == "" {
		return err
	}
	c, err := o.shelf.Caution(t.Caution)
	if err != nil {
		return err
	}
	if k := (Caution{c.Text, c.Why}); !slices.Contains(*out, k) {
		*out = append(*out, k)
	}
	return nil
}
