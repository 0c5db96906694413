package sheets

import (
	"math"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/sheets/figure"
)

// The rhythm strip is the plan's own minutes to scale: of every place the blocks
// together are as long as its steps with what is changed before them, and there
// are as many lines between blocks as the plan has moves.
func TestRhythmIsToScale(t *testing.T) {
	for _, n := range plans(t) {
		c := newComposer(n.plan, Options{FiguresAt: "f/"})
		r := c.newRhythm()
		minutes := map[string]float64{}
		for _, s := range n.plan.Steps {
			minutes[s.Station] += s.Minutes
			for _, ch := range n.plan.Changes {
				if ch.BeforeStep == s.Number {
					minutes[s.Station] += ch.Minutes
				}
			}
		}
		whole := 0.0
		for k, s := range r.rows {
			whole += minutes[s.Name]
			if math.Abs(r.sums[k]-minutes[s.Name]) > 1e-6 {
				t.Errorf("%s: %s has %g minutes, want %g", n.name, s.Name, r.sums[k], minutes[s.Name])
			}
		}
		if len(r.stays) > 0 && math.Abs(r.total-whole) > 1e-6 {
			t.Errorf("%s: %g minutes in all, want %g", n.name, r.total, whole)
		}
		items := r.items()
		if len(r.stays) < 2 {
			continue
		}
		moves, drawn := 0, 0.0
		for _, it := range items {
			p, ok := it.(figure.Path)
			switch {
			case !ok:
			case p.Closed && math.Abs(height(p)-rhythmBlock) < 1e-9:
				drawn += width(p)
			case !p.Closed && width(p) == 0 && p.Stroke.Light == 0:
				moves++
			}
		}
		if want := len(r.stays) - 1; moves != want {
			t.Errorf("%s: %d moves drawn, want %d", n.name, moves, want)
		}
		bands := min(max(math.Ceil(r.total*rhythmLeast/(lineWide-r.names-rhythmEnd)), 1), rhythmBands)
		if want := bands * (lineWide - r.names - rhythmEnd); math.Abs(drawn-want) > 1e-6 {
			t.Errorf("%s: blocks of %g mm in all, want %g", n.name, drawn, want)
		}
		md := string(Compose(n.plan, Options{FiguresAt: "f/"}).Markdown)
		if !strings.Contains(md, "The rhythm of the work") {
			t.Errorf("%s: no rhythm strip", n.name)
		}
	}
}

func width(p figure.Path) float64 {
	left, right := p.Start.X, p.Start.X
	for _, s := range p.Segments {
		left, right = min(left, s.To.X), max(right, s.To.X)
	}
	return right - left
}

func height(p figure.Path) float64 {
	top, bottom := p.Start.Y, p.Start.Y
	for _, s := range p.Segments {
		top, bottom = min(top, s.To.Y), max(bottom, s.To.Y)
	}
	return bottom - top
}

// The picture of the day is the table's own minutes to scale: every turn has a box
// in its person's row and one in its machine's, from its begin to its end.
func TestDayAgreesWithTheTurns(t *testing.T) {
	s := &process.Share{Finish: 75, Plan: &process.Plan{},
		People: []process.Bench{
			{Name: "Ada", Turns: []process.Turn{
				{Number: 1, Begin: 0, Work: 3, End: 30, Machine: "Machine"},
				{Number: 3, Begin: 55.5, Work: 55.5, End: 75, Machine: "Machine"}}},
			{Name: "Bea", Turns: []process.Turn{{Number: 2, Begin: 31, Work: 31, End: 54.5, Machine: "Iron"}}}},
		Machines: []process.MachineRow{{Title: "Machine", Turns: []int{1, 3}}, {Title: "Iron", Turns: []int{2}}},
	}
	c := &sharer{share: s, composer: *newComposer(s.Plan, Options{FiguresAt: "f/"})}
	boxes := map[[2]float64]int{} // from and to, in minutes to the hundredth
	setUp := 0.0
	for _, it := range c.dayItems() {
		p, ok := it.(figure.Path)
		if !ok || !p.Closed {
			continue
		}
		scale := s.Finish / (dayWide - dayNames)
		from, wide := (p.Start.X-dayNames)*scale, width(p)*scale
		if p.Fill.Tint > 0 {
			setUp += wide
			continue
		}
		boxes[[2]float64{math.Round(100*from) / 100, math.Round(100*(from+wide)) / 100}]++
	}
	for _, b := range s.People {
		for _, turn := range b.Turns {
			if n := boxes[[2]float64{turn.Begin, turn.End}]; n != 2 {
				t.Errorf("number %d has %d boxes from %g to %g", turn.Number, n, turn.Begin, turn.End)
			}
		}
	}
	if len(boxes) != 3 || math.Abs(setUp-2*3) > 1e-6 {
		t.Errorf("boxes %v, %g minutes of setting up drawn", boxes, setUp)
	}
}
