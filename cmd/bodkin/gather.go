package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

// gathered is everything that a plan rests on, with the files it was read from,
// so that faults found later can show their line.
type gathered struct {
	process.Input
	files []seams.File // job, garment, workroom
	own   []seams.File // of the shelf
}

// gather reads the job, its garment, the workroom and the shelf. The demo
// stands in where no job is named; - is standard input.
func gather(ctx context.Context, s streams, set settings, jobFile string) (*gathered, error) {
	var g gathered
	err := g.read(ctx, s, set, jobFile)
	return &g, g.placed(err)
}

func (g *gathered) read(ctx context.Context, s streams, set settings, jobFile string) (err error) {
	job, room := seams.File{Name: jobFile}, seams.File{}
	switch jobFile {
	case "":
		job, room = seams.File{Name: demoJobName, Data: demoJob}, seams.File{Name: demoWorkroomName, Data: demoWorkroom}
	case "-":
		job.Name = standardInput
		job.Data, err = readInput(ctx, s.in)
	default:
		job.Data, err = readFile(jobFile)
	}
	if err != nil {
		return err
	}
	g.files = append(g.files, job)
	if g.Job, err = process.ParseJob(job.Name, job.Data); err != nil {
		return err
	}
	if set.units != "" {
		g.Job.Units = form.Text{Value: set.units}
	}
	if err := g.garment(job.Name); err != nil {
		return err
	}
	if g.own, err = ownFiles(set.shelf); err != nil {
		return err
	}
	if g.Shelf, err = seams.Load(g.own...); err != nil {
		return err
	}
	g.Workroom, err = g.workroom(set, room)
	return err
}

// workroom reads the workroom that is named or found; else the given file
// serves, and where that has no text either, a plain room.
func (g *gathered) workroom(set settings, otherwise seams.File) (*process.Workroom, error) {
	file := otherwise
	name := set.workroom
	if name == "" {
		name = findWorkroom()
	}
	if name != "" {
		data, err := readFile(name)
		if err != nil {
			return nil, err
		}
		file = seams.File{Name: name, Data: data}
	}
	if file.Name == "" {
		return process.DefaultWorkroom(), nil
	}
	g.files = append(g.files, file)
	return process.ParseWorkroom(file.Name, file.Data)
}

// garment finds the job's garment: one of the shelf, or the maker's own file,
// whose path counts from the folder of the job.
func (g *gathered) garment(jobFile string) error {
	name := g.Job.Make.Value
	var file seams.File
	if strings.ContainsAny(name, `/\`) || isYAML(name) {
		file.Name = name
		if !filepath.IsAbs(name) {
			file.Name = filepath.Join(filepath.Dir(jobFile), name)
		}
		data, err := readFile(file.Name)
		if m, ok := errors.AsType[mistake](err); ok {
			return form.Faults{form.FaultAt(g.Job.Make.At, "the garment cannot be read: "+m.what, "",
				"name a garment of the shelf, or a file by its path from the folder of the job")}
		}
		if err != nil {
			return err
		}
		file.Data = data
	} else {
		names := templates.Names()
		if !slices.Contains(names, name) {
			return form.Faults{form.FaultAt(g.Job.Make.At, fmt.Sprintf("no garment %q on the shelf", name),
				form.Nearest(name, names), "bodkin list garments shows what there is; a garment of your own is named by its path, such as ./my-garment.yaml")}
		}
		file.Data, file.Name = templates.Text(name)
	}
	g.files = append(g.files, file)
	var err error
	g.Garment, err = templates.Parse(file.Name, file.Data)
	return err
}

// placed gives faults the lines they stand in; those without a place, which
// speak of something the job left out, get the place of its garment.
func (g *gathered) placed(err error) error {
	faults, ok := errors.AsType[form.Faults](err)
	if f, one := errors.AsType[form.Fault](err); !ok && one {
		faults, ok = form.Faults{f}, true
	}
	if c, circle := errors.AsType[*process.CycleError](err); circle {
		faults, ok = form.Faults{g.circle(c)}, true
	}
	if !ok {
		return err
	}
	faults = slices.Clone(faults)
	for i, f := range faults {
		if f.Place == (form.Place{}) && g.Job != nil {
			faults[i].Place = g.Job.Make.At
		}
	}
	for _, f := range g.files {
		faults = faults.WithSource(f.Name, f.Data)
	}
	return faults
}

// circle is the fault of a garment whose work can have no order, at the first
// seam, edge or detail of the round.
func (g *gathered) circle(c *process.CycleError) form.Fault {
	f := form.FaultAt(g.Job.Make.At, c.Error(), "",
		"let one of them go: end one of these edges where it does not meet the other, or work one in the round")
	if len(c.Round) == 0 {
		return f
	}
	seam, _, _ := strings.Cut(c.Round[0], ".")
	for _, j := range g.Garment.Seams {
		if j.Join.Value == seam {
			f.Place = j.Join.At
		}
	}
	for _, e := range g.Garment.Edges {
		if e.Edge.Value == seam {
			f.Place = e.Edge.At
		}
	}
	for _, d := range g.Garment.Details {
		if d.Detail.Value == seam {
			f.Place = d.Detail.At
		}
	}
	return f
}
