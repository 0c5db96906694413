package process

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/seams/form"
)

// Otherwise is how a seam would be sewn if one thing were otherwise.
type Otherwise struct {
	If           string // with an overlocker; if quick work were favoured
	Construction string // name on the shelf
	Title        string
	Minutes      float64 // of sewing, over what the seam takes now; below 0 where it takes less; all copies, one garment
	Because      string  // what then speaks for it most; empty where nothing does
}

// WhatIf tells what would change how the seam, edge or detail of a name is
// sewn: a machine or an iron that is not in the room, the wish for quick, neat
// or strong work, a lining, a property of the cloth. Only one thing is changed
// at a time, the whole job is worked out anew up to the order of the work, and
// of several machines that lead to one construction the first of the shelf is
// told, those of the house before those of the factory. It is empty where
// nothing of all this changes the choice, or where the job insists on it.
//
// The errors are those of [Work].
func WhatIf(in Input, name string) ([]Otherwise, error) {
	o, _, _, err := prepare(in)
	if err != nil {
		return nil, err
	}
	now := o.lineOf(name)
	if now < 0 || o.lines[now].insisted {
		return nil, nil
	}
	t := trial{in: in, shelf: in.Shelf, name: name, now: o, line: o.lines[now]}
	for _, industrial := range []bool{false, true} {
		for i := range in.Shelf.Machines {
			if m := &in.Shelf.Machines[i]; m.Kind == "machine" && m.Industrial == industrial {
				t.machine(m)
			}
		}
	}
	t.iron()
	t.favours()
	t.lining()
	for _, v := range clothVariants() {
		t.cloth(v)
	}
	return t.found, nil
}

func (o *operator) lineOf(name string) int {
	return slices.IndexFunc(o.lines, func(l *line) bool { return l.name == name })
}

// sewing is the minutes of a line in one garment.
func (o *operator) sewing(line int) float64 {
	sum := 0.0
	for _, k := range o.span[line] {
		sum += o.ops[k].Minutes
	}
	return sum / float64(o.quantity)
}

// trial tries one change after another.
type trial struct {
	in    Input
	shelf *seams.Shelf
	name  string
	now   *operator
	line  *line
	found []Otherwise
}

// wouldChange reports whether other facts would change the choice for this line
// alone, which is quick to see; only then is the job worked out anew.
func (t *trial) wouldChange(facts seams.Facts) bool {
	verdicts, err := t.shelf.Weigh(t.line.work.forWhat(), t.line.kind, facts)
	return err == nil && len(verdicts) > 0 && verdicts[0].Allowed() && verdicts[0].Construction != t.line.construction
}

// try works the job out under a change. What cannot be made then is no advice
// and is left out, and so is a construction that an earlier change of the same
// sort led to.
func (t *trial) try(in Input, words string, since int) {
	o, _, _, err := prepare(in)
	if err != nil {
		return
	}
	i := o.lineOf(t.name)
	if i < 0 || o.lines[i].construction == t.line.construction {
		return
	}
	l := o.lines[i]
	if slices.ContainsFunc(t.found[since:], func(f Otherwise) bool { return f.Construction == l.construction.Name }) {
		return
	}
	found := Otherwise{If: words, Construction: l.construction.Name, Title: l.construction.Title,
		Minutes: o.sewing(i) - t.now.sewing(t.now.lineOf(t.name))}
	if len(l.chosen.For) > 0 {
		found.Because = slices.MaxFunc(l.chosen.For, func(a, b seams.Reason) int { return int(10 * (a.Worth - b.Worth)) }).Because
	}
	t.found = append(t.found, found)
}

func (t *trial) machine(m *seams.Machine) {
	forms := t.line.facts.Workroom.Forms
	if !slices.ContainsFunc(m.Forms, func(st string) bool { return !forms(st) }) {
		return
	}
	facts := t.line.facts
	facts.Workroom.Forms = func(st string) bool { return forms(st) || slices.Contains(m.Forms, st) }
	if !t.wouldChange(facts) {
		return
	}
	in, room := t.in, *t.in.Workroom
	room.Machines = append(slices.Clone(room.Machines), RoomMachine{Is: form.Text{Value: m.Name}})
	in.Workroom = &room
	t.try(in, "with "+article(lowerFirst(m.Title)), 0)
}

func (t *trial) iron() {
	if t.line.facts.Workroom.Iron {
		return
	}
	in, room := t.in, *t.in.Workroom
	room.Iron = form.Text{Value: "steam"}
	in.Workroom = &room
	t.try(in, "with a steam iron", len(t.found))
}

func (t *trial) favours() {
	since := len(t.found)
	for _, favour := range favours() {
		if favour == t.line.facts.Workroom.Favour {
			continue
		}
		in, job := t.in, *t.in.Job
		job.Favour = form.Text{Value: favour}
		in.Job = &job
		t.try(in, "if "+favour+" work were favoured", since)
	}
}

func (t *trial) lining() {
	if t.line.facts.Garment.Lined {
		return
	}
	in, garment := t.in, *t.in.Garment
	garment.Lined = true
	in.Garment = &garment
	t.try(in, "with a lining over it", len(t.found))
}

// variant is a cloth that differs from another in one property.
type variant struct {
	words string // if the cloth …
	alter func(c *seams.Cloth)
}

// clothVariants are the properties that a maker can choose by when she buys
// another cloth of the same kind.
func clothVariants() []variant {
	return []variant{
		{"did not fray", func(c *seams.Cloth) { c.Fraying = 0 }},
		{"frayed at a touch", func(c *seams.Cloth) { c.Fraying = 3 }},
		{"were opaque", func(c *seams.Cloth) { c.Sheerness = 0 }},
		{"were see-through", func(c *seams.Cloth) { c.Sheerness = max(c.Sheerness, 2) }},
		{"did not slip", func(c *seams.Cloth) { c.Slip = 0 }},
		{"were half as thick and heavy", func(c *seams.Cloth) { c.Thickness, c.Weight = c.Thickness/2, c.Weight/2 }},
		{"were twice as thick and heavy", func(c *seams.Cloth) { c.Thickness, c.Weight = 2*c.Thickness, 2*c.Weight }},
	}
}

func (t *trial) cloth(v variant) {
	since := slices.IndexFunc(t.found, func(f Otherwise) bool { return strings.HasPrefix(f.If, "if the cloth ") })
	if since < 0 {
		since = len(t.found)
	}
	facts, altered := t.line.facts, t.line.cloth
	v.alter(&altered)
	facts.Cloth = altered.Facts()
	if t.line.appliedRole == t.line.role {
		facts.Applied = altered.Facts()
	}
	if !t.wouldChange(facts) {
		return
	}
	in := t.in
	in.alter = func(cloths []clothIn) {
		for i := range cloths {
			if cloths[i].role == t.line.role {
				v.alter(&cloths[i].cloth)
				v.alter(&cloths[i].outer)
			}
		}
	}
	t.try(in, "if the cloth "+v.words, since)
}

func article(words string) string {
	if strings.ContainsRune("aeiou", rune(words[0])) {
		return "an " + words
	}
	return "a " + words
}

// MinutesWords says how much longer or shorter it takes, to the minute, below
// two minutes to the half.
func (x Otherwise) MinutesWords() string {
	minutes, than := x.Minutes, "more"
	if minutes < 0 {
		minutes, than = -minutes, "less"
	}
	switch {
	case minutes < 0.25:
		return "as long"
	case minutes < 0.75:
		return "half a minute " + than
	case minutes < 1.25:
		return "1 minute " + than
	case minutes < 1.75:
		return "1½ minutes " + than
	}
	return fmt.Sprintf("%.0f minutes %s", minutes, than)
}
