package seams_test

import (
	"slices"
	"testing"

	"bodkin/seams"
)

// unstaged are the constructions that are drawn finished only, each with the
// reason.
var unstaged = map[string]string{
	"staystitch":            "a row on a flat ply",
	"staystitch-by-hand":    "a row on a flat ply",
	"buttonhole-machine":    "the plies lie flat throughout",
	"buttonhole-by-hand":    "the plies lie flat throughout",
	"button":                "the plies lie flat throughout",
	"hook-and-eye":          "the plies lie flat throughout",
	"snap":                  "the plies lie flat throughout",
	"lettuce":               "trimmed, turned and sewn in one run",
	"lining-hung-stitched":  "one row through plies that lie flat",
	"lining-hung-basted":    "one row through plies that lie flat",
	"lining-opening-felled": "turned under and felled where it lies",
}

// Every construction is drawn from stage to stage, unless nothing changes on the
// way that a section could show. A row of the finished section that a stage
// shows keeps its stitch, and no stage shows a row that the finished section
// lacks.
func TestConstructionsAreDrawnInStages(t *testing.T) {
	s := everyCloth(t)
	lawn := plainFacts(t, s, "cotton-lawn")
	for i := range s.Constructions {
		c := &s.Constructions[i]
		if c.Kind == "strip" {
			continue // made ready by itself; nothing to be cut across
		}
		if why := unstaged[c.Name]; (why != "") == (len(c.Stages) > 0) {
			t.Errorf("%s has %d stages and stands among those without: %q", c.Name, len(c.Stages), why)
		}
		sized, err := c.Measure(lawn)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, stage := range sized.Stages {
			if stage.From > stage.After {
				t.Errorf("%s: a stage from pass %d to %d", c.Name, stage.From, stage.After)
			}
			for _, d := range stage.Figure {
				if d.Item.Stitch != "" && !slices.ContainsFunc(sized.Figure, func(f seams.Drawn) bool {
					return f.Item.Stitch == d.Item.Stitch && max(f.Item.Row, 1) == max(d.Item.Row, 1)
				}) {
					t.Errorf("%s: after pass %d stands row %d of stitch %s, which the finished section has not", c.Name, stage.After, d.Item.Row, d.Item.Stitch)
				}
			}
		}
	}
	for name := range unstaged {
		if _, err := s.Construction(name); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}
