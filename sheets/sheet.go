package sheets

import (
	"bodkin/process"
	"bodkin/seams/length"
	"bodkin/sheets/figure"
	"bodkin/sheets/flat"
	"bodkin/sheets/pdf/anchor"
)

// Options say how a sheet is written. The zero value writes it in the plan's
// own units, without figures.
type Options struct {
	// Units is "cm" or "in" for the lengths in tables, checks and figures. Empty
	// means the plan's own; the words of the operations always keep those, and
	// the sheet says so where the two differ.
	Units string
	// FiguresAt is put before a figure's name to make its address in the
	// Markdown, such as "figures/". Empty leaves the images out and keeps their
	// captions, for Markdown that travels alone.
	FiguresAt string
	// For is whom the sheet is for; empty means the maker.
	For Reader
	// Brief leaves out reasons, sources and what was not chosen.
	Brief bool
	// Steps are the numbers of the steps that the sheet tells; none means all.
	Steps []int
	// Wording is what the sheet says of its own; nil means English.
	Wording *Wording
}

// words are the wording asked for.
func (o Options) words() wording {
	if o.Wording == nil {
		return english()
	}
	return o.Wording.say
}

// Sheet is a step sheet: Markdown (CommonMark with the tables and task lists of
// GitHub's flavour) and the figures it refers to, in the order of the sheet.
type Sheet struct {
	Title    string
	Markdown []byte
	Figures  []Drawing
}

// Drawing is a figure with the address by which the Markdown refers to it. The
// address is the options' FiguresAt, the figure's name and ".svg".
type Drawing struct {
	Address string
	Figure  figure.Figure
}

// ByAddress are the figures as a drawer of the Markdown wants them.
func (s Sheet) ByAddress() map[string]figure.Figure {
	m := make(map[string]figure.Figure, len(s.Figures))
	for _, d := range s.Figures {
		m[d.Address] = d.Figure
	}
	return m
}

// Compose writes the sheet of a plan for a reader. It is a pure function; the
// same plan and options give the same bytes. It trusts the plan to be whole,
// and leaves out what refers to nothing.
func Compose(plan *process.Plan, opts Options) Sheet {
	c := newComposer(plan, opts)
	switch c.reader {
	case Bench:
		c.tellBench()
	case Class:
		c.tellClass()
	default:
		c.tellMaker()
	}
	return Sheet{Title: c.title(), Markdown: c.page.out.Bytes(), Figures: c.drawings}
}

// composer is a sheet on its way.
type composer struct {
	page
	plan     *process.Plan
	say      wording
	style    length.Style
	at       string
	drawings []Drawing
	slugs    map[string]int
	measure  *measurer
	anchors  map[string]string // of a seam: the heading that tells how it is sewn
	reader   Reader
	brief    bool
	only     map[int]bool                   // the steps that are told; empty means all
	garments []process.SittingGarment       // of a sitting, by number from 1; none while one of them is told by itself
	drawn    []process.Seam                 // whose section a bench or class sheet has shown
	size     int                            // the further size of the job whose cutting is told; 0 for the job's own
	of       string                         // label of the garment whose drawing stands beside another's
	flat     map[*process.Plan]flat.Garment // garments as they lie, once they were asked for

	stations   map[string]process.Station
	seams      map[string]process.Seam
	operations map[string]process.Operation
	stepOf     map[string]int      // of an operation
	later      map[string][]string // the operations that wait for one
}

func newComposer(plan *process.Plan, opts Options) *composer {
	c := &composer{
		page: page{ids: anchor.New()},
		say:  opts.words(), at: opts.FiguresAt, slugs: map[string]int{}, measure: &measurer{}, anchors: map[string]string{},
		flat: map[*process.Plan]flat.Garment{}, reader: opts.For, brief: opts.Brief, only: map[int]bool{},
	}
	c.take(plan)
	units := opts.Units
	if units == "" {
		units = plan.Units
	}
	if units == length.Inches.String() {
		c.style = length.Inches
	}
	if c.reader == "" {
		c.reader = Maker
	}
	for _, n := range opts.Steps {
		c.only[n] = true
	}
	return c
}

// take makes a plan the one that is written of.
func (c *composer) take(plan *process.Plan) {
	c.plan = plan
	c.stations, c.seams, c.operations = map[string]process.Station{}, map[string]process.Seam{}, map[string]process.Operation{}
	c.stepOf, c.later = map[string]int{}, map[string][]string{}
	for _, s := range plan.Stations {
		c.stations[s.Name] = s
	}
	for _, s := range plan.Seams {
		c.seams[s.Name] = s
	}
	for _, o := range plan.Operations {
		c.operations[o.ID] = o
		for _, a := range o.After {
			c.later[a.ID] = append(c.later[a.ID], o.ID)
		}
	}
	for _, s := range plan.Steps {
		for _, id := range s.Operations {
			c.stepOf[id] = s.Number
		}
	}
}

// aside writes of another plan for a while.
func (c *composer) aside(plan *process.Plan, write func()) {
	all, garments := c.plan, c.garments
	c.garments = nil
	c.take(plan)
	write()
	c.garments = garments
	c.take(all)
}

// draw puts a figure on the page, with its caption. The figure is made only
// where it is wanted.
func (c *composer) draw(made func() figure.Figure, caption inline) {
	if c.at != "" {
		c.figures(made())
	}
	c.para(soft(caption))
}

// figures stand beside one another, where the page has room.
func (c *composer) figures(fs ...figure.Figure) {
	if len(fs) == 0 {
		return
	}
	c.open()
	for _, f := range fs {
		address := c.at + f.Name + ".svg"
		c.drawings = append(c.drawings, Drawing{Address: address, Figure: f})
		c.line(image(f.Title, address))
	}
}

// slug makes a name for a figure from names of the plan: small letters, digits
// and hyphens only, each once, so that it is also a safe file name.
func (c *composer) slug(parts ...string) string {
	name := slugged(parts)
	c.slugs[name]++
	if n := c.slugs[name]; n > 1 {
		return c.slug(name, number(n))
	}
	return name
}

func slugged(parts []string) string {
	var out []byte
	for _, part := range parts {
		if len(out) > 0 && out[len(out)-1] != '-' {
			out = append(out, '-')
		}
		for _, b := range []byte(part) {
			switch {
			case b >= 'A' && b <= 'Z':
				out = append(out, b+'a'-'A')
			case b >= 'a' && b <= 'z' || b >= '0' && b <= '9':
				out = append(out, b)
			case len(out) > 0 && out[len(out)-1] != '-':
				out = append(out, '-')
			}
		}
	}
	for len(out) > 0 && out[len(out)-1] == '-' {
		out = out[:len(out)-1]
	}
	if len(out) == 0 {
		return "figure"
	}
	return string(out[:min(len(out), 80)])
}
