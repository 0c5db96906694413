package process

import (
	"context"
	"slices"

	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
)

// Input is everything a plan is worked out from.
type Input struct {
	Job      *Job
	Garment  *templates.Garment
	Workroom *Workroom
	Shelf    *seams.Shelf

	Begun *Begun   // what is done already; nil where nothing is
	First []string // operations to be done as soon as may be, by id

	alter func([]clothIn) // changes the cloths before anything is chosen; nil for none
}

// Work works out the plan. The context limits only the search for the order:
// when it ends, the best order so far is told with its bound.
//
// Errors: [form.Faults] where the input is wrong, [*CannotError] where nothing
// in this room can make what is asked, [*CycleError] where a garment's
// structure lets no order through.
func Work(ctx context.Context, in Input, opts order.Options) (*Plan, error) {
	o, made, relations, err := prepare(in)
	if err != nil {
		return nil, err
	}
	o.precede(relations)
	own, err := o.pin(in.Job)
	if err != nil {
		return nil, err
	}
	if o.resume(in.Begun); len(o.ops) == 0 {
		return nil, &DoneError{Garment: in.Garment.Title}
	}
	o.hurry(in.First)
	if err := o.wishing(in.Job); err != nil {
		return nil, err
	}
	a, err := o.arrange(ctx, in.Garment.Title, own, opts)
	if err != nil {
		return nil, err
	}
	return o.write(in, made, a, own)
}

// write tells the work in its order as a plan.
func (o *operator) write(in Input, made *templates.Made, a *arrangement, own *OwnOrder) (*Plan, error) {
	plan := &Plan{
		Schema: Schema, Garment: in.Garment.Name, GarmentName: in.Garment.Title, Title: in.Job.Title,
		Units: o.style.String(), Workroom: in.Workroom.Name, Quantity: o.quantity, Notes: in.Job.Notes,
		Measures: valuesOf(made.Measures), Choices: valuesOf(made.Choices),
		Pieces: o.pieces, Interfacing: o.facings,
	}
	if plan.Title == "" {
		plan.Title = in.Garment.Title
	}
	plan.Begun = in.Begun
	o.tell(plan, a)
	plan.Order.Own = own
	plan.Strips = stripsOf(o.lines)
	plan.Bias = biasYields(plan.Strips, o.cloths)
	plan.Notions = notions(o.lines, o.style, o.quantity)
	var err error
	if plan.Seams, err = o.seams(); err != nil {
		return nil, err
	}
	plan.Cloths = o.clothUse(plan)
	if plan.Thread, err = o.thread(); err != nil {
		return nil, err
	}
	if plan.Bobbins, err = o.bobbins(plan, a); err != nil {
		return nil, err
	}
	plan.Needles = o.needles(plan)
	if plan.Tools, err = o.tools(); err != nil {
		return nil, err
	}
	if plan.Cautions, err = o.cautions(); err != nil {
		return nil, err
	}
	plan.Notices = o.notices(plan)
	if err := o.also(in, plan); err != nil {
		return nil, err
	}
	return plan, nil
}

// prepare goes from the input to operations that are not yet in order.
func prepare(in Input) (*operator, *templates.Made, []relation, error) {
	made, err := in.Garment.Make(in.Job.Size, in.Job.Choices)
	if err != nil {
		return nil, nil, nil, err
	}
	cloths, err := dress(in.Job, made.Garment, in.Garment, in.Shelf)
	if err != nil {
		return nil, nil, nil, err
	}
	if in.alter != nil {
		in.alter(cloths)
	}
	style := styleOf(in.Job, in.Workroom)
	r, err := enter(in.Workroom, in.Shelf, in.Job.Favour.Value, style)
	if err != nil {
		return nil, nil, nil, err
	}
	if err := r.stand(in.Job.Machines); err != nil {
		return nil, nil, nil, err
	}
	lines := lay(made, cloths, r)
	if err := choose(lines, in.Job, in.Shelf, r); err != nil {
		return nil, nil, nil, err
	}
	if err := measure(lines); err != nil {
		return nil, nil, nil, err
	}
	lines = drawnUp(lines)
	if err := r.clear(lines); err != nil {
		return nil, nil, nil, err
	}
	relations := structure(made, lines)
	if err := r.level(lines, relations); err != nil {
		return nil, nil, nil, err
	}
	quantity := in.Job.quantity()
	pieces, err := allow(made, lines, quantity)
	if err != nil {
		return nil, nil, nil, err
	}
	layTurned(pieces, made, cloths)
	if err := cutStrips(lines, cloths, r, quantity); err != nil {
		return nil, nil, nil, err
	}
	facings, err := steadying(in.Shelf, made, lines, pieces, cloths, r, quantity)
	if err != nil {
		return nil, nil, nil, err
	}
	o := &operator{shelf: in.Shelf, room: r, lines: lines, cloths: cloths, pieces: pieces,
		facings: facings, cones: conesOf(in.Workroom, in.Job), near: shadesOf(in.Workroom, in.Job), style: style, quantity: quantity, made: made}
	o.crossed = thickest(lines, relations)
	o.narrow = o.narrowed()
	if err := o.operate(); err != nil {
		return nil, nil, nil, err
	}
	return o, made, relations, nil
}

func styleOf(j *Job, w *Workroom) length.Style {
	units := j.Units.Value
	if units == "" {
		units = w.Units.Value
	}
	if units == "in" {
		return length.Inches
	}
	return length.Centimetres
}

func valuesOf(vs []templates.Value) []Measure {
	out := []Measure{}
	for _, v := range vs {
		out = append(out, Measure{Name: v.Name, Title: v.Title, MM: float64(v.MM), Word: v.Word, Number: v.Number, Default: v.Default, From: sizeOf(v)})
	}
	return out
}

// sizeOf is the title of the named size that a measure is from.
func sizeOf(v templates.Value) string {
	if v.From == nil {
		return ""
	}
	return v.From.Title
}

func stripsOf(lines []*line) []Strip {
	out := []Strip{}
	for _, l := range lines {
		if l.strip != nil {
			out = append(out, *l.strip)
		}
	}
	return out
}

// seams are the lines as the plan tells them.
func (o *operator) seams() ([]Seam, error) {
	out := []Seam{}
	for i, l := range o.lines {
		c := l.construction
		s := Seam{
			Name: l.name, Title: l.title, Kind: l.kind, Construction: c.Name, ConstructionTitle: c.Title,
			ISO4916Class: c.ISO4916.Class, Stitches: l.stitches(), Length: l.length, Copies: l.copies,
			Allowance: l.sized.Allowance, AllowanceB: l.sized.AllowanceB, Finished: l.sized.Finished,
			Sizes: []Size{}, WorkBecause: l.flatBecause, Insisted: l.insisted, Anyway: l.anyway,
			Score: l.chosen.Score, Minutes: l.minutes, Because: []string{}, Against: []string{},
			Rejected: []Rejected{}, Section: SectionOf(o.shelf, l.sized), Source: l.sized.Source, Course: o.courseOf(l),
		}
		if l.work == treating && l.flatBecause != "" {
			s.Work = "round"
			if l.flat {
				s.Work = "flat"
			}
		}
		for _, z := range l.sized.Sizes {
			s.Sizes = append(s.Sizes, Size{Name: z.Name, MM: z.MM})
		}
		for _, r := range l.chosen.For {
			s.Because = append(s.Because, r.Because)
		}
		if l.otherwise != "" {
			s.Because = append(s.Because, l.otherwise)
		}
		for _, r := range l.chosen.Against {
			s.Against = append(s.Against, r.Because)
		}
		if l.insisted {
			asks := "the job asks for it"
			if l.byDesign {
				asks = "the garment's design asks for it"
			}
			s.Because = append([]string{asks}, s.Because...)
			if l.anyway {
				s.Against = append(s.Against, l.chosen.RuledOut...)
			}
		}
		for _, v := range l.others {
			s.Rejected = append(s.Rejected, rejected(l, v))
		}
		var err error
		if s.Strength, err = o.strength(i); err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

func (l *line) stitches() []string {
	out := []string{}
	for _, p := range l.sized.Passes {
		if st := p.Pass.Stitch; st != "" && !slices.Contains(out, st) {
			out = append(out, st)
		}
	}
	return out
}
