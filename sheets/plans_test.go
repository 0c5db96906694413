package sheets

import (
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/templates"
)

// jobs are what the planner is asked for when the laws of the sheets are tried
// on its own plans: every garment, cloths and rooms that differ, both units.
var jobs = []struct{ name, job, room string }{
	{"top in two silks", `
make: shell-top
title: Second row
size: {bust: 92 cm, hip: 98 cm}
cloth:
  main:    {is: silk-georgette, colour: reed green, width: 114 cm}
  binding: {is: silk-satin, colour: dusk blue, width: 140 cm}
`, `
name: One machine
units: cm
machines: [{is: straight-stitcher}]
iron: steam
`},
	{"tops in lawn", `
make: shell-top
size: {bust: 40 in, hip: 42 in}
choices: {neckline: boat}
cloth:
  main:    {is: cotton-lawn, colour: white, width: 44 in}
  binding: {is: cotton-lawn, colour: navy, width: 44 in}
quantity: 12
units: in
`, `
name: Four machines
machines:
  - {is: straight-stitcher, name: By the window}
  - {is: straight-stitcher, threaded: white}
  - {is: zigzag-machine}
  - {is: overlocker-4}
iron: dry
`},
	{"jacket", `
make: open-jacket
title: Harvest coat
size: {bust: 36 in, hip: 40 in}
cloth:
  main:     {is: quilting-cotton, colour: rust, width: 112 cm}
  contrast: {is: cotton-poplin, colour: slate, width: 150 cm}
quantity: 3
also:
  - {size: {bust: 40 in, hip: 44 in}, quantity: 2}
units: in
`, `
name: One machine
machines: [{is: straight-stitcher}]
iron: steam
`},
	{"skirt by hand", `
make: pull-on-skirt
size: {waist: 78 cm, hip: 104 cm}
cloth:
  main: {is: linen-medium, colour: flax, width: 140 cm}
notes: "# Mind\n\nthe *hem*."
`, `
name: No machine
units: cm
iron: none
`},
}

// worked is the plan that the planner makes of a job.
func worked(t testing.TB, shelf *seams.Shelf, job, room string) *process.Plan {
	t.Helper()
	j, err := process.ParseJob("job.yaml", []byte(strings.TrimSpace(job)+"\n"))
	if err != nil {
		t.Fatal(err)
	}
	w, err := process.ParseWorkroom("room.yaml", []byte(strings.TrimSpace(room)+"\n"))
	if err != nil {
		t.Fatal(err)
	}
	g, err := templates.Load(j.Make.Value)
	if err != nil {
		t.Fatal(err)
	}
	p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf}, order.Options{Nodes: 20_000})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// named is a plan with a name for the tests.
type named struct {
	name string
	plan *process.Plan
}

// plans are the fixtures and what the planner makes of the jobs.
func plans(t testing.TB) []named {
	t.Helper()
	var out []named
	for _, name := range fixtures(t) {
		out = append(out, named{name, fixture(t, name)})
	}
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, j := range jobs {
		out = append(out, named{j.name, worked(t, shelf, j.job, j.room)})
	}
	return out
}
