package process

import (
	_ "embed"
	"fmt"
	"slices"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
	"bodkin/templates"
)

//go:embed spare.yaml
var sparesText []byte

// spareRule is an entry of spare.yaml: room that is left beyond an allowance.
type spareRule struct {
	Spare   string   `yaml:"spare,required"`
	Of      []string `yaml:"of,required"`
	Laid    string   `yaml:"laid" oneof:"bias"`
	Long    float64  `yaml:"long"` // mm
	Woven   bool     `yaml:"woven"`
	Least   float64  `yaml:"least"` // mm
	More    float64  `yaml:"more"`  // mm
	Because string   `yaml:"because,required"`
	Source  string   `yaml:"source,required"`
}

func spareRules() ([]spareRule, error) {
	var out []spareRule
	return out, form.Decode("process/spare.yaml", sparesText, &out)
}

// spareAt is the room that an edge is cut with beyond what it is sewn with, mm, and
// why; nothing along most edges.
func spareAt(rules []spareRule, p templates.Piece, e templates.PieceEdge, l *line, allowance float64) (spare float64, because string) {
	for _, r := range rules {
		if !slices.Contains(r.Of, l.kind) || r.Laid == "bias" && !p.Bias || float64(e.Length) < r.Long || r.Woven && l.cloth.Knit() {
			continue
		}
		if more := max(r.More, r.Least-allowance); more > spare {
			spare, because = more, r.Because
		}
	}
	return spare, because
}

// hanging and squaring open the names of the operations in which pieces on the bias
// drop, and are cut to what their seams are sewn with.
const (
	hanging  = "hang"
	squaring = "trim"
)

// letDrop adds, for each cloth, the hanging of its pieces before they are sewn to
// each other, and the cutting off of the room that was left for it. That of a hem
// is cut off at the fitting.
func (o *operator) letDrop() {
	for _, c := range o.cloths {
		var titles, left []string
		long := 0.0
		for _, p := range o.pieces {
			if p.Cloth != c.role {
				continue
			}
			for _, e := range p.Edges {
				if !o.cutOff(e) {
					continue
				}
				if t := lowerFirst(p.Title); !slices.Contains(titles, t) {
					titles = append(titles, t)
				}
				if say := fmt.Sprintf("the %s to %s", o.titleOf(e.Seam), length.Format(length.MM(e.Allowance-e.Spare), o.style)); !slices.Contains(left, say) {
					left = append(left, say)
				}
				sides := 1
				if p.Cut == "fold" {
					sides = 2
				}
				long += e.Length * float64(p.Count*sides)
			}
		}
		if len(titles) == 0 {
			continue
		}
		add := func(id, does, text, good string, long float64) {
			n := op{line: -1, act: o.act(does), cloths: []seams.Cloth{c.cloth}, station: o.room.at(tableStation)}
			n.ID, n.Does, n.Part, n.Station = id+"."+c.role, does, listWords(titles, "and"), tableStation
			n.Text, n.Good, n.Length = text, good, long/float64(o.quantity)
			o.time(&n)
			o.ops = append(o.ops, n)
		}
		add(hanging, "hang", "Hang each piece up by its upper edge, on a strip of firm cloth, for a day, before it is sewn to another.",
			"It has dropped as far as it will, and hangs without a twist.", 0)
		add(squaring, "trim", "Lay each piece flat again, without pulling it, and chalk its seam lines anew, left and right alike. Cut off the room that was left for the drop: "+listWords(left, "and")+" from the seam line.",
			"The edges that are sewn to each other are equally long.", long)
	}
}

// cutOff reports an edge whose room is cut off before it is sewn.
func (o *operator) cutOff(e Edge) bool {
	k := slices.IndexFunc(o.lines, func(l *line) bool { return l.name == e.Seam })
	return e.Spare > 0 && k >= 0 && !o.lengthens(o.lines[k])
}

func (o *operator) titleOf(seam string) string {
	return o.lines[slices.IndexFunc(o.lines, func(l *line) bool { return l.name == seam })].title
}

// dropFirst: pieces on the bias hang when their edges are staystitched, and are
// sewn when what was left for the drop is cut off.
func (o *operator) dropFirst() {
	for _, p := range o.pieces {
		hang := slices.IndexFunc(o.ops, func(n op) bool { return n.ID == hanging+"."+p.Cloth })
		if hang < 0 || !slices.ContainsFunc(p.Edges, o.cutOff) {
			continue
		}
		square := hang + 1
		o.need(square, hang, "the room for the drop is cut off when the piece has hung")
		for i, l := range o.lines {
			if !slices.Contains(l.pieces, p.Name) {
				continue
			}
			if l.kind == "staystitch" {
				o.need(hang, o.span[i][len(o.span[i])-1], "staystitching holds the upper edges while the piece hangs")
				continue
			}
			k := slices.IndexFunc(o.span[i], func(k int) bool { return !o.ops[k].strip })
			if k >= 0 && !o.reaches(o.span[i][k], square) {
				o.need(o.span[i][k], square, "a piece on the bias hangs before it is sewn to another")
			}
		}
	}
}

// levelled tells at the fitting what of a hem's room is cut off.
func (o *operator) levelled() string {
	out := ""
	for _, l := range o.lines {
		if !o.lengthens(l) || slices.ContainsFunc(l.sized.Passes, func(p seams.SizedPass) bool { return p.Pass.Does == "hang" }) {
			continue // its own passes trim it
		}
		for _, p := range o.pieces {
			k := slices.IndexFunc(p.Edges, func(e Edge) bool { return e.Seam == l.name && e.Spare > 0 })
			if k >= 0 {
				out += fmt.Sprintf(" Below the mark leave %s for the %s, and cut off the rest.", length.Format(length.MM(p.Edges[k].Allowance-p.Edges[k].Spare), o.style), l.title)
				break
			}
		}
	}
	return out
}
