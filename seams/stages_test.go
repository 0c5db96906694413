package seams_test

import (
	"slices"
	"strings"
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

// Two plies that a pass lays right sides together face each other in the stage
// that it leads to, and wrong sides together away from each other, as far as they
// still lie flat.
func TestPliesFaceAsTheyAreLaid(t *testing.T) {
	s := everyCloth(t)
	lawn := plainFacts(t, s, "cotton-lawn")
	together, apart := 0, 0
	for i := range s.Constructions {
		c := &s.Constructions[i]
		sized, err := c.Measure(lawn)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, stage := range sized.Stages {
			laid := "" // how the pieces were last laid on each other
			for _, p := range sized.Passes {
				if p.Number < stage.From || p.Number > stage.After {
					continue
				}
				for _, how := range []string{"right sides together", "wrong sides together"} {
					if strings.Contains(p.Pass.Text, "Lay the {a} on the {b}") && strings.Contains(p.Pass.Text, how) {
						laid = how
					}
				}
			}
			upper, lower, flat := facing(stage.Figure)
			switch {
			case laid == "" || !flat:
			case laid == "right sides together":
				together++
				if upper || !lower {
					t.Errorf("%s: after pass %d the right sides do not face each other", c.Name, stage.After)
				}
			default:
				apart++
				if !upper || lower {
					t.Errorf("%s: after pass %d the wrong sides do not face each other", c.Name, stage.After)
				}
			}
		}
	}
	if together < 20 || apart == 0 {
		t.Errorf("%d stages with right sides together, %d with wrong sides", together, apart)
	}
}

// facing tells of plies a and b that lie straight one on the other whether the right
// side of the upper one is uppermost, and that of the lower one.
func facing(figure []seams.Drawn) (upper, lower, flat bool) {
	var plies []seams.Drawn
	for _, d := range figure {
		if d.Item.Ply == "a" || d.Item.Ply == "b" {
			plies = append(plies, d)
		}
	}
	if len(plies) != 2 {
		return false, false, false
	}
	for _, d := range plies {
		if len(d.Through) != 2 || d.Through[0][1] != d.Through[1][1] {
			return false, false, false
		}
	}
	if plies[0].Through[0][1] > plies[1].Through[0][1] {
		plies[0], plies[1] = plies[1], plies[0]
	}
	up := func(d seams.Drawn) bool { return (d.Item.Right == "left") == (d.Through[1][0] > d.Through[0][0]) }
	return up(plies[0]), up(plies[1]), true
}
