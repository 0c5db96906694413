package process

import (
	"slices"
	"strings"
)

// whose tells in a step of a sitting which garments it works on. Where it is one,
// the title says so once; where they are several, every part does.
func (o *operator) whose(plan *Plan, s *Step) {
	if o.labels == nil {
		return
	}
	s.Garments = []int{}
	ids := map[int][]string{} // by garment
	for _, id := range s.Operations {
		g := o.byID(id).Garment
		if ids[g] = append(ids[g], id); g > 0 && !slices.Contains(s.Garments, g) {
			s.Garments = append(s.Garments, g)
		}
	}
	switch len(s.Garments) {
	case 0:
		return
	case 1:
		s.Title = o.labels[s.Garments[0]-1] + ": " + lowerFirst(s.Title)
		return
	}
	var say []string
	if len(ids[0]) > 0 {
		say = append(say, o.stepTitle(ids[0], 2, ", "))
	}
	for _, g := range s.Garments {
		say = append(say, o.labels[g-1]+": "+lowerFirst(o.stepTitle(ids[g], 2, ", ")))
	}
	s.Title = strings.Join(say, "; ")
	for k := range plan.Operations {
		if n := &plan.Operations[k]; slices.Contains(s.Operations, n.ID) {
			n.Part = o.labelled(n.Part, n.Garment)
		}
	}
}

// inStep is what a step of a sitting calls a part of a garment.
func (o *operator) inStep(s Step, part string, garment int) string {
	if len(s.Garments) < 2 {
		return part
	}
	return o.labelled(part, garment)
}

// labelled is a part of a garment with the garment that it is of, in a sitting.
func (o *operator) labelled(part string, garment int) string {
	if o.labels == nil || garment == 0 {
		return part
	}
	return part + " (" + o.labels[garment-1] + ")"
}
