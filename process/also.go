package process

import (
	"fmt"
	"slices"
	"strconv"

	"bodkin/seams/form"
)

// JobSize is one more size of the garment in the same job, in the same cloths.
type JobSize struct {
	Size     form.Pairs[form.Text] `yaml:"size,required"`
	Choices  form.Pairs[form.Text] `yaml:"choices"` // where they differ from the job's
	Quantity form.Text             `yaml:"quantity"`
}

// OtherSize is what is cut for a further size of the job, and what is otherwise in
// its work. Counts and minutes are for all garments of this size.
type OtherSize struct {
	Number      int           `json:"number"` // of the sizes of the job, in their order; its own is 1
	Quantity    int           `json:"quantity"`
	SewMinutes  float64       `json:"sew_minutes"` // of its operations, changes left out
	Measures    []Measure     `json:"measures"`
	Choices     []Measure     `json:"choices"`
	Pieces      []Piece       `json:"pieces"`
	Strips      []Strip       `json:"strips"`
	Interfacing []Interfacing `json:"interfacing"`
	Notions     []Notion      `json:"notions"`
	Otherwise   []OtherSeam   `json:"otherwise"` // seams that this size wants sewn in another way
	Differs     []Differs     `json:"differs"`   // what else its operations have otherwise
	Checks      []Check       `json:"checks"`    // with another figure than the job's own size; steps are not told
}

// Together is what all sizes of a job take.
type Together struct {
	Garments    int              `json:"garments"`
	SewMinutes  float64          `json:"sew_minutes"` // of the operations, changes left out
	Cloths      []ClothTogether  `json:"cloths"`
	Strips      []LengthTogether `json:"strips"`
	Interfacing []LengthTogether `json:"interfacing"`
	Thread      []ThreadTogether `json:"thread"`
	Notions     []NotionTogether `json:"notions"`
	Bias        []BiasYield      `json:"bias"` // the strips on the bias of all sizes, by cloth and width
}

// NotionTogether is elastic or buttons over all sizes.
type NotionTogether struct {
	Title    string  `json:"title"`
	Count    int     `json:"count"`
	LengthMM float64 `json:"length_mm"` // of elastic, all pieces
}

// ClothTogether is a cloth over all sizes, each laid by itself.
type ClothTogether struct {
	Role     string  `json:"role"`
	AreaMM2  float64 `json:"area_mm2"`
	LengthMM float64 `json:"length_mm"` // estimate of what to buy
}

// LengthTogether is what is cut in one width over all sizes: a strip of a cloth
// by its cut width, a tape, or an interfacing by its area.
type LengthTogether struct {
	Title    string  `json:"title"`
	WidthMM  float64 `json:"width_mm,omitempty"`
	LengthMM float64 `json:"length_mm,omitempty"`
	AreaMM2  float64 `json:"area_mm2"`
}

// ThreadTogether is a thread over all sizes.
type ThreadTogether struct {
	Colour string  `json:"colour"`
	Kind   string  `json:"kind"`
	Metres float64 `json:"metres"`
}

// alsoFaults are faults of the further sizes as written.
func (j *Job) alsoFaults() form.Faults {
	var faults form.Faults
	for _, a := range j.Also {
		faults = append(faults, quantityFaults(a.Quantity)...)
	}
	return faults
}

// also works out what is cut for the further sizes, and what all take together.
// The order of work is that of the job's own size, whose operations are prepared
// afresh, so that those of all sizes are compared before any order.
func (o *operator) also(in Input, plan *Plan) error {
	if len(in.Job.Also) == 0 {
		return nil
	}
	plan.Together = &Together{Cloths: []ClothTogether{}, Strips: []LengthTogether{}, Interfacing: []LengthTogether{}, Thread: []ThreadTogether{}, Notions: []NotionTogether{}}
	plan.Together.add(plan)
	own, _, _, err := prepare(in)
	if err != nil {
		return err
	}
	strips := slices.Clone(plan.Strips)
	for i, a := range in.Job.Also {
		job := *in.Job
		job.Size, job.Choices, job.Quantity, job.Also = a.Size, over(in.Job.Choices, a.Choices), a.Quantity, nil
		other := in
		other.Job = &job
		p, made, _, err := prepare(other)
		if err != nil {
			return err
		}
		s := &Plan{Quantity: p.quantity, Pieces: p.pieces, Strips: stripsOf(p.lines), Interfacing: p.facings,
			Notions: notions(p.lines, p.style, p.quantity)}
		strips = append(strips, s.Strips...)
		for _, n := range p.ops {
			s.Totals.SewMinutes += n.Minutes
		}
		s.Cloths = p.clothUse(s)
		if s.Thread, err = p.thread(); err != nil {
			return err
		}
		plan.Together.add(s)
		x := OtherSize{Number: i + 2, Quantity: p.quantity, SewMinutes: s.Totals.SewMinutes,
			Measures: valuesOf(made.Measures), Choices: valuesOf(made.Choices),
			Pieces: s.Pieces, Strips: s.Strips, Interfacing: s.Interfacing, Notions: s.Notions,
			Otherwise: otherwiseSewn(own, p), Checks: measured(own, p)}
		x.Differs = differing(own, p, x.Otherwise)
		plan.Also = append(plan.Also, x)
	}
	plan.Together.Bias = biasYields(strips, o.cloths)
	return nil
}

// add counts one size in.
func (t *Together) add(p *Plan) {
	t.Garments += p.Quantity
	t.SewMinutes += p.Totals.SewMinutes
	for _, c := range p.Cloths {
		k := slices.IndexFunc(t.Cloths, func(x ClothTogether) bool { return x.Role == c.Role })
		if k < 0 {
			k = len(t.Cloths)
			t.Cloths = append(t.Cloths, ClothTogether{Role: c.Role})
		}
		t.Cloths[k].AreaMM2 += c.AreaMM2
		t.Cloths[k].LengthMM += c.LengthMM
	}
	for _, s := range p.Strips {
		long := s.EachLength * float64(s.Lengths*s.Count)
		addLength(&t.Strips, LengthTogether{Title: s.Title, WidthMM: s.CutWidth, LengthMM: long, AreaMM2: long * s.CutWidth})
	}
	for _, f := range p.Interfacing {
		x := LengthTogether{Title: f.MaterialTitle, AreaMM2: f.Cut[0] * f.Cut[1] * float64(f.Count)}
		if f.Tape {
			x.WidthMM, x.LengthMM = f.Cut[0], f.Cut[1]*float64(f.Count)
		}
		addLength(&t.Interfacing, x)
	}
	for _, n := range p.Notions {
		k := slices.IndexFunc(t.Notions, func(x NotionTogether) bool { return x.Title == n.Title })
		if k < 0 {
			k = len(t.Notions)
			t.Notions = append(t.Notions, NotionTogether{Title: n.Title})
		}
		t.Notions[k].Count += n.Count
		t.Notions[k].LengthMM += n.Length * float64(n.Count)
	}
	for _, x := range p.Thread {
		k := slices.IndexFunc(t.Thread, func(y ThreadTogether) bool { return y.Colour == x.Colour && y.Kind == x.Kind })
		if k < 0 {
			k = len(t.Thread)
			t.Thread = append(t.Thread, ThreadTogether{Colour: x.Colour, Kind: x.Kind})
		}
		t.Thread[k].Metres = tenths(t.Thread[k].Metres + x.Metres)
	}
}

func addLength(all *[]LengthTogether, x LengthTogether) {
	k := slices.IndexFunc(*all, func(y LengthTogether) bool { return y.Title == x.Title && y.WidthMM == x.WidthMM })
	if k < 0 {
		*all = append(*all, x)
		return
	}
	(*all)[k].LengthMM += x.LengthMM
	(*all)[k].AreaMM2 += x.AreaMM2
}

// quantityFaults tells that a quantity is no number of garments.
func quantityFaults(t form.Text) form.Faults {
	if t.Value == "" {
		return nil
	}
	if n, err := strconv.Atoi(t.Value); err == nil && n >= 1 && n <= MaxQuantity {
		return nil
	}
	return form.Faults{form.FaultAt(t.At, "quantity "+strconv.Quote(t.Value)+" is not a number of garments",
		"", fmt.Sprintf("write a whole number from 1 to %d", MaxQuantity))}
}
