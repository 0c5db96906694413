package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bodkin/process"
)

// named is what a name in a plan means: a seam, a step or an operation, and the
// operations that it stands for.
type named struct {
	seam *process.Seam
	step *process.Step
	ids  []string
}

// resolve finds what a name means: first a seam, edge or detail, then an
// operation or the operations before a dot, then a step by its number.
func resolve(plan *process.Plan, name string) (named, error) {
	var n named
	var known []string
	if plainName(name) == "fit" {
		name = "try-on"
	}
	for i, x := range plan.Seams {
		known = append(known, x.Name)
		if x.Name == name {
			n.seam = &plan.Seams[i]
		}
	}
	if i := titled(plan, name); n.seam == nil && i >= 0 {
		n.seam, name = &plan.Seams[i], plan.Seams[i].Name
	}
	for _, o := range plan.Operations {
		before, _, _ := strings.Cut(o.ID, ".")
		if o.ID == name || o.Seam == name || before == name {
			n.ids = append(n.ids, o.ID)
		}
		known = append(known, o.ID)
	}
	if n.seam != nil || len(n.ids) > 0 {
		return n, nil
	}
	if number, err := strconv.Atoi(name); err == nil && number >= 1 && number <= len(plan.Steps) {
		n.step = &plan.Steps[number-1]
		n.ids = n.step.Operations
		return n, nil
	}
	var seams []string
	for _, x := range plan.Seams {
		seams = append(seams, x.Name)
	}
	return n, unknown(name, known, fmt.Sprintf("its seams and edges are %s; its steps run from 1 to %d", strings.Join(seams, ", "), len(plan.Steps)),
		"the plan has no seam, operation or step %q", name)
}

// titled is the seam with a title, -1 for none. Staystitching has the title of
// the edge that it holds, which is not what is meant.
func titled(plan *process.Plan, title string) int {
	return slices.IndexFunc(plan.Seams, func(x process.Seam) bool {
		return x.Kind != "staystitch" && plainName(x.Title) == plainName(title)
	})
}

// plainName is a name as it is compared: without the words that go with it in a
// sentence.
func plainName(s string) string {
	s = strings.ToLower(strings.Join(strings.Fields(s), " "))
	return strings.TrimPrefix(strings.TrimPrefix(s, "the "), "both ")
}

// nameOf is an operation for a reader: its part, and in brackets its id and step.
func nameOf(plan *process.Plan, id string) string {
	title := id
	for _, o := range operations(plan, []string{id}) {
		title = "the work on " + o.Part
		for _, x := range plan.Seams {
			if x.Name == o.Seam {
				title = "the " + x.Title
			}
		}
	}
	if step := stepOf(plan, id); step > 0 {
		return fmt.Sprintf("%s (%s, step %d)", title, id, step)
	}
	return fmt.Sprintf("%s (%s)", title, id)
}

func stepOf(plan *process.Plan, id string) int {
	for _, s := range plan.Steps {
		if slices.Contains(s.Operations, id) {
			return s.Number
		}
	}
	return 0
}

// stepsOf lists the steps in which a seam is worked on.
func stepsOf(plan *process.Plan, seam string) string {
	var steps []string
	for _, s := range plan.Steps {
		if slices.ContainsFunc(operations(plan, s.Operations), func(o process.Operation) bool { return o.Seam == seam }) {
			steps = append(steps, strconv.Itoa(s.Number))
		}
	}
	return strings.Join(steps, ", ")
}
