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
func smallTools() []tool {
	return []tool{
		{words: "Tape measure.", when: func(p *process.Plan) bool { return len(p.Pieces) > 0 || len(p.Strips) > 0 }},
		{words: "Cutting shears, or rotary cutter with ruler and mat.", acts: []string{"cut"}},
		{words: "Chalk or marking pen that has been tried on a scrap.", acts: []string{"mark"},
			when: func(p *process.Plan) bool {
				return slices.ContainsFunc(p.Pieces, func(q process.Piece) bool { return len(q.Marks) > 0 })
			}},
		{words: "Fine pins and a pincushion.", acts: []string{"place", "pin", "fold", "try"}},
		{words: "Seam gauge for the checks.", when: func(p *process.Plan) bool { return len(p.Checks) > 0 }},
		{words: "Small sharp scissors.", acts: []string{"trim", "grade", "clip", "notch", "stitch"}},
		{words: "Pinking shears.", acts: []string{"pink"}},
		{words: "Press cloth and a scrap of each cloth for testing heat.", acts: []string{"press", "fuse"}},
		{words: "Needle board, or a towel or a scrap of the pile cloth.", when: pressedOver("needle board")},
		{words: "Sleeve board, or a rolled towel in the ring.", when: pressedOver("sleeve board")},
		{words: "Clapper, or a smooth block of bare wood.", when: pressedOver("clapper")},
		{words: "Point turner or blunt bone.", acts: []string{"turn"}},
		{words: "Fine hand needle and thimble.", acts: []string{"hand-stitch", "baste", "fell", "slip"},
			when: func(p *process.Plan) bool { return handWork(p) }},
		{words: "Bodkin, or a safety pin that closes well.", acts: []string{"thread-through"}},
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
