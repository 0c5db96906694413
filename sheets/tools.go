package sheets

import (
	"slices"
	"strings"

	"bodkin/process"
)

// tool is a small thing to have at hand, wanted where one of its acts is done
// or where the plan asks for measuring or marking.
type tool struct {
	words string
	acts  []string
	when  func(*process.Plan) bool
}

func (t tool) wanted(p *process.Plan) bool {
	if t.when != nil && t.when(p) {
		return true
	}
	return slices.ContainsFunc(p.Operations, func(o process.Operation) bool { return slices.Contains(t.acts, o.Does) })
}

// smallTools are the tools in the order in which they are first wanted. Which
// act asks for which is common practice, no source.
func smallTools(w toolWords) []tool {
	return []tool{
		{words: w.tape, when: func(p *process.Plan) bool { return len(p.Pieces) > 0 || len(p.Strips) > 0 }},
		{words: w.shears, acts: []string{"cut"}},
		{words: w.chalk, acts: []string{"mark"},
			when: func(p *process.Plan) bool {
				return slices.ContainsFunc(p.Pieces, func(q process.Piece) bool { return len(q.Marks) > 0 })
			}},
		{words: w.pins, acts: []string{"place", "pin", "fold", "try"}},
		{words: w.gauge, when: func(p *process.Plan) bool { return len(p.Checks) > 0 }},
		{words: w.scissors, acts: []string{"trim", "grade", "clip", "notch", "stitch"}},
		{words: w.pinking, acts: []string{"pink"}},
		{words: w.pressCloth, acts: []string{"press", "fuse"}},
		{words: w.needleBoard, when: pressedOver("needle board")},
		{words: w.sleeveBoard, when: pressedOver("sleeve board")},
		{words: w.clapper, when: pressedOver("clapper")},
		{words: w.turner, acts: []string{"turn"}},
		{words: w.needle, acts: []string{"hand-stitch", "baste", "fell", "slip"},
			when: func(p *process.Plan) bool { return handWork(p) }},
		{words: w.bodkin, acts: []string{"thread-through"}},
	}
}

// pressedOver reports, of a plan, whether any of its steps is pressed with the tool.
func pressedOver(tool string) func(*process.Plan) bool {
	return func(p *process.Plan) bool {
		return slices.ContainsFunc(p.Operations, func(o process.Operation) bool {
			return o.Pressed != nil && slices.Contains(o.Pressed.Over, tool)
		})
	}
}

// constructionTools are those that a construction asks for and that are not among
// the small things already, with what they are for.
func (c *composer) constructionTools() []inline {
	var items []inline
	for _, t := range c.plan.Tools {
		var seams []string
		for _, o := range c.told() {
			if slices.Contains(t.Seams, o.Seam) {
				seams = addOnce(seams, lower(c.seamTitle(o.Seam)))
			}
		}
		if len(seams) == 0 || slices.ContainsFunc(smallTools(c.say.tools), func(s tool) bool { return s.wanted(c.plan) && s.is(t) }) {
			continue
		}
		items = append(items, say(c.say.layout.toolItem, values{"tool": plain(upper(t.Title)), "seams": c.listed(plains(seams)), "for": plain(t.For)}))
	}
	return items
}

// is reports whether the words name a tool of the shelf.
func (t tool) is(other process.Tool) bool {
	return strings.HasPrefix(strings.ToLower(t.words), strings.ToLower(other.Title))
}

func handWork(p *process.Plan) bool {
	for _, s := range p.Stations {
		if s.Kind == "hand" && slices.ContainsFunc(p.Operations, func(o process.Operation) bool { return o.Station == s.Name }) {
			return true
		}
	}
	return false
}

// footName is a presser foot as it is spoken of.
func footName(foot string) string {
	if foot == "" || strings.HasSuffix(strings.ToLower(foot), "foot") {
		return foot
	}
	return foot + " foot"
}
