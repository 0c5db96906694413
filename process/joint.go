package process

import (
	"slices"
	"strings"
)

// Joint is the sitting as one plan of all its garments, for what reads plans: names
// of seams, pieces, cloths and what else is cut have the garment's number before
// them, and titles its label behind. What differs from garment to garment, such as
// measures and what is cut for further sizes, is left to the plans by themselves.
func (s *Sitting) Joint() *Plan {
	var labels []string
	for _, g := range s.Garments {
		labels = append(labels, g.Label)
	}
	title := listWords(labels, "and")
	p := &Plan{Schema: Schema, GarmentName: title, Title: title, Units: s.Units, Workroom: s.Workroom, Quantity: 1,
		Measures: []Measure{}, Choices: []Measure{}, Cloths: []ClothUse{}, Pieces: []Piece{}, Strips: []Strip{}, Bias: []BiasYield{},
		Notions: []Notion{}, Seams: []Seam{}, Interfacing: []Interfacing{}, Stations: s.Stations, Operations: s.Operations, Steps: s.Steps,
		Changes: s.Changes, Thread: s.Thread, Bobbins: s.Bobbins, Needles: s.Needles, Tools: s.Tools, Checks: s.Checks,
		Cautions: s.Cautions, Notices: s.Notices, Begun: s.Begun, Order: s.Order, Totals: s.Totals}
	for _, g := range s.Garments {
		g.joinInto(p)
	}
	return p
}

// Name is a name of the garment's own plan as the sitting has it.
func (g SittingGarment) Name(own string) string { return numbered(g.Number, own) }

// joinInto adds what is cut and sewn for one garment to the plan of all.
func (g SittingGarment) joinInto(p *Plan) {
	name := g.Name
	title := func(t string) string { return t + " (" + g.Label + ")" }
	for _, c := range g.Plan.Cloths {
		c.Role = name(c.Role)
		p.Cloths = append(p.Cloths, c)
	}
	for _, x := range g.Plan.Pieces {
		x.Name, x.Title, x.Cloth = name(x.Name), title(x.Title), name(x.Cloth)
		x.Edges, x.Drawn = slices.Clone(x.Edges), slices.Clone(x.Drawn)
		for k, e := range x.Edges {
			if e.Seam != "fold" {
				x.Edges[k].Seam = name(e.Seam)
			}
		}
		for k, d := range x.Drawn {
			x.Drawn[k].Name = name(d.Name)
		}
		p.Pieces = append(p.Pieces, x)
	}
	for _, x := range g.Plan.Strips {
		x.Name, x.Title, x.Cloth, x.Seam = name(x.Name), title(x.Title), name(x.Cloth), name(x.Seam)
		p.Strips = append(p.Strips, x)
	}
	for _, x := range g.Plan.Bias {
		x.Cloth = name(x.Cloth)
		p.Bias = append(p.Bias, x)
	}
	for _, x := range g.Plan.Notions {
		x.Name, x.Title = name(x.Name), title(x.Title)
		p.Notions = append(p.Notions, x)
	}
	for _, x := range g.Plan.Seams {
		x.Name, x.Title, x.Course = name(x.Name), title(x.Title), g.course(x.Course)
		p.Seams = append(p.Seams, x)
	}
	for _, x := range g.Plan.Interfacing {
		x.Name, x.Piece, x.Title = name(x.Name), name(x.Piece), title(x.Title)
		p.Interfacing = append(p.Interfacing, x)
	}
	for _, x := range g.Plan.Also {
		p.Also = append(p.Also, g.joined(x, p.Checks))
	}
}

// course is where a line lies, by the names of the sitting.
func (g SittingGarment) course(c Course) Course {
	c.A, c.B, c.Own = slices.Clone(c.A), slices.Clone(c.B), slices.Clone(c.Own)
	for _, runs := range [][]Run{c.A, c.B} {
		for k := range runs {
			runs[k].Piece = g.Name(runs[k].Piece)
		}
	}
	for k := range c.Own {
		c.Own[k] = g.Name(c.Own[k])
	}
	if c.In != "" {
		c.In = g.Name(c.In)
	}
	return c
}

// joined is what a further size has otherwise at the operations and checks of the
// sitting; what is cut for it stays with its garment.
func (g SittingGarment) joined(s OtherSize, checks []Check) OtherSize {
	out := OtherSize{Number: s.Number, Quantity: s.Quantity, Otherwise: slices.Clone(s.Otherwise), Differs: slices.Clone(s.Differs), Checks: slices.Clone(s.Checks)}
	for k := range out.Otherwise {
		out.Otherwise[k].Seam = g.Name(out.Otherwise[k].Seam)
	}
	for k := range out.Differs {
		out.Differs[k].Operation = g.Name(out.Differs[k].Operation)
	}
	for k := range out.Checks {
		c := &out.Checks[k]
		c.AfterOperation = g.Name(c.AfterOperation)
		for _, own := range checks { // a step of several garments names each
			if own.AfterOperation == c.AfterOperation && strings.Replace(own.What, " ("+g.Label+")", "", 1) == c.What {
				c.What = own.What
			}
		}
	}
	return out
}
