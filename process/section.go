package process

import "bodkin/seams"

// SectionOf is a construction cut across, for the place that it is sized for:
// the finished section and the stages on the way, with the titles of the acts
// that lead to each. An act that follows itself is named once.
func SectionOf(shelf *seams.Shelf, s seams.Sized) Section {
	sec := Section{Items: drawnItems(s.Figure), Stages: []Stage{}}
	from := 1
	for _, stage := range s.Stages {
		sec.Stages = append(sec.Stages, Stage{Does: actTitles(shelf, s.Passes, from, stage.After), Items: drawnItems(stage.Figure)})
		from = stage.After + 1
	}
	last := from
	for _, p := range s.Passes {
		last = max(last, p.Number)
	}
	sec.Does = actTitles(shelf, s.Passes, from, last)
	return sec
}

func actTitles(shelf *seams.Shelf, passes []seams.SizedPass, from, to int) []string {
	out := []string{}
	for _, p := range passes {
		if p.Number < from || p.Number > to {
			continue
		}
		title := p.Pass.Does
		if act, err := shelf.Act(p.Pass.Does); err == nil {
			title = act.Title
		}
		if len(out) == 0 || out[len(out)-1] != title {
			out = append(out, title)
		}
	}
	return out
}

func drawnItems(figure []seams.Drawn) []SectionItem {
	out := []SectionItem{}
	for _, f := range figure {
		item := SectionItem{Ply: f.Item.Ply, Stitch: f.Item.Stitch, Size: f.Item.Size, MM: f.MM,
			Raw: f.Item.Raw, Right: f.Item.Right, Row: f.Item.Row, Through: []Point{}}
		for _, p := range f.Through {
			item.Through = append(item.Through, Point{p[0], p[1]})
		}
		out = append(out, item)
	}
	return out
}
