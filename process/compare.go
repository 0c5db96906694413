package process

import "slices"

// Comparison sets two plans of one job side by side.
type Comparison struct {
	Before  Side         `json:"before"`
	After   Side         `json:"after"`
	Seams   []SeamChange `json:"seams"`   // those sewn in another way, or in one of the plans only
	Minutes float64      `json:"minutes"` // that the second takes less, sewing and changes; below 0 where it takes more
}

// Side is one of the two plans in figures.
type Side struct {
	Title         string  `json:"title"` // of the cloths
	Workroom      string  `json:"workroom"`
	SewMinutes    float64 `json:"sew_minutes"`
	ChangeMinutes float64 `json:"change_minutes"`
	BoundMinutes  float64 `json:"bound_minutes"` // no order has fewer minutes of change
	Proved        bool    `json:"proved"`
	Steps         int     `json:"steps"`
	Operations    int     `json:"operations"`
	ThreadMetres  float64 `json:"thread_metres"`
	ThreadChanges int     `json:"thread_changes"`
	StationMoves  int     `json:"station_moves"`
}

// SeamChange is a seam, edge or detail that is sewn in another way.
type SeamChange struct {
	Name    string   `json:"name"`
	Title   string   `json:"title"`
	Before  string   `json:"before"` // title of the construction; empty where the plan has no such seam
	After   string   `json:"after"`
	Minutes float64  `json:"minutes"` // that the second takes less for it, all garments
	Because []string `json:"because"` // what speaks for the second
}

// Compare sets the plan after something was changed beside the plan before.
func Compare(before, after *Plan) Comparison {
	c := Comparison{Before: sideOf(before), After: sideOf(after), Seams: []SeamChange{}}
	c.Minutes = c.Before.SewMinutes + c.Before.ChangeMinutes - c.After.SewMinutes - c.After.ChangeMinutes
	for _, a := range before.Seams {
		b, ok := seamNamed(after, a.Name)
		if ok && a.Construction == b.Construction {
			continue
		}
		s := SeamChange{Name: a.Name, Title: a.Title, Before: a.ConstructionTitle, After: b.ConstructionTitle,
			Minutes: sewingOf(before, a.Name) - sewingOf(after, a.Name), Because: []string{}}
		s.Because = append(s.Because, b.Because...)
		c.Seams = append(c.Seams, s)
	}
	for _, b := range after.Seams {
		if _, ok := seamNamed(before, b.Name); !ok {
			c.Seams = append(c.Seams, SeamChange{Name: b.Name, Title: b.Title, After: b.ConstructionTitle,
				Minutes: -sewingOf(after, b.Name), Because: append([]string{}, b.Because...)})
		}
	}
	return c
}

func sideOf(p *Plan) Side {
	s := Side{
		Workroom: p.Workroom, SewMinutes: p.Totals.SewMinutes, ChangeMinutes: p.Order.ChangeMinutes,
		BoundMinutes: p.Order.BoundMinutes, Proved: p.Order.Proved, Steps: p.Totals.Steps, Operations: p.Totals.Operations,
		ThreadChanges: p.Totals.ThreadChanges, StationMoves: p.Totals.StationMoves,
	}
	var cloths []string
	for _, c := range p.Cloths {
		if w := lowerFirst(c.Title); !slices.Contains(cloths, w) {
			cloths = append(cloths, w)
		}
	}
	s.Title = listWords(cloths, "and")
	for _, t := range p.Thread {
		s.ThreadMetres += t.Metres
	}
	s.ThreadMetres = tenths(s.ThreadMetres)
	return s
}

func seamNamed(p *Plan, name string) (Seam, bool) {
	i := slices.IndexFunc(p.Seams, func(s Seam) bool { return s.Name == name })
	if i < 0 {
		return Seam{}, false
	}
	return p.Seams[i], true
}

// sewingOf is the minutes of the operations on a seam, all garments.
func sewingOf(p *Plan, seam string) float64 {
	sum := 0.0
	for _, o := range p.Operations {
		if o.Seam == seam {
			sum += o.Minutes
		}
	}
	return sum
}
