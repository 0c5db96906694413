package main

import (
	"context"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
	"bodkin/sheets"
	"bodkin/templates"
)

// garmentLine tells a garment's file from a job's.
var garmentLine = regexp.MustCompile(`(?m)^garment[ \t]*:`)

// checkGarment tells what was understood of a garment's file, made with its own
// usual measures in a plain cloth, and draws it where output names a file.
func checkGarment(ctx context.Context, s streams, set settings, from seams.File, output string) error {
	g := gathered{files: []seams.File{from}}
	err := g.pattern(set, from)
	var plan *process.Plan
	if err == nil {
		plan, err = process.Work(ctx, g.Input, order.Options{})
	}
	if err != nil {
		if err := g.sketch(s, set, from, output); err != nil {
			return err
		}
		return g.placed(err)
	}
	drawing, drawn := sheets.PieceMap(plan)
	if output != "" && !drawn {
		return cannot("draw at least one piece", "nothing can be drawn of %s", from.Name)
	}
	if output != "" {
		if err := writeFiles([]file{{output, drawing.SVG()}}); err != nil {
			return err
		}
	}
	fmt.Fprint(s.out, understood(plan))
	return nil
}

// sketch draws what could be understood of a garment that has faults, where a
// drawing is wanted and anything can be drawn.
func (g *gathered) sketch(s streams, set settings, from seams.File, output string) error {
	pieces := templates.Sketch(from.Name, from.Data)
	if output == "" || len(pieces) == 0 {
		return nil
	}
	style := length.Centimetres
	if set.units == "in" {
		style = length.Inches
	}
	if err := writeFiles([]file{{output, sheets.Sketch(pieces, style).SVG()}}); err != nil {
		return err
	}
	fmt.Fprintf(s.err, "bodkin: %s shows what could be drawn of %s\n", output, from.Name)
	return nil
}

// pattern reads a garment and sets up a job for it with its usual measures.
func (g *gathered) pattern(set settings, file seams.File) (err error) {
	if g.Garment, err = templates.Parse(file.Name, file.Data); err != nil {
		return err
	}
	if g.own, err = ownFiles(set.shelf); err != nil {
		return err
	}
	if g.Shelf, err = seams.Load(g.own...); err != nil {
		return err
	}
	if g.Workroom, err = g.workroom(set, seams.File{}); err != nil {
		return err
	}
	style := length.Centimetres
	if set.units == "in" || set.units == "" && g.Workroom.Units.Value == "in" {
		style = length.Inches
	}
	job := seams.File{Name: "the usual job", Data: process.StartJob(g.Garment, g.Shelf, style)}
	g.files = append(g.files, job)
	if g.Job, err = process.ParseJob(job.Name, job.Data); err != nil {
		return err
	}
	// What the garment has of itself is not given again, so that faults of this size lie in its own file.
	g.Job.Size = slices.DeleteFunc(g.Job.Size, func(p form.Pair[form.Text]) bool {
		m, _ := g.Garment.Measures.Get(p.Key.Value)
		return m.Default != 0 || !m.Reckoned.IsZero()
	})
	g.Job.Choices = nil
	return nil
}

// understood is the garment in a few tables.
func understood(plan *process.Plan) string {
	style := styleOf(plan)
	var b strings.Builder
	fmt.Fprintf(&b, "%s (%s), at its usual measures\n\n", plan.GarmentName, plan.Garment)
	var t table
	for _, p := range plan.Pieces {
		t.row("  "+p.Name, p.Title, howCut(p), size(p, style)+" net", fmt.Sprintf("%d edges", len(p.Edges)))
	}
	fmt.Fprintf(&b, "pieces\n%s\n", t)
	t = table{}
	for _, s := range plan.Seams {
		var along []string
		for _, p := range plan.Pieces {
			for _, e := range p.Edges {
				if e.Seam == s.Name {
					along = append(along, fmt.Sprintf("%s.%s %s", p.Name, e.Name, length.Format(length.MM(e.Length), style)))
				}
			}
		}
		t.row("  "+s.Name, s.Title, s.Kind, strings.Join(along, ", "))
	}
	fmt.Fprintf(&b, "joins, edges and details\n%s\n", t)
	b.WriteString("every edge has its use, the joins fit, and the openings go over what they must\n")
	return b.String()
}

func howCut(p process.Piece) string {
	switch p.Cut {
	case "fold":
		return fmt.Sprintf("%d on the fold", p.Count)
	case "pair":
		return fmt.Sprintf("%d in pairs", p.Count)
	}
	return fmt.Sprintf("%d", p.Count)
}

func size(p process.Piece, style length.Style) string {
	return length.Format(length.MM(p.NetWidth), style) + " × " + length.Format(length.MM(p.NetHeight), style)
}
