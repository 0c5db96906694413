package process

import (
	_ "embed"
	"slices"
	"strings"

	"bodkin/process/order"
	"bodkin/seams/form"
)

//go:embed textbook.yaml
var publishedOrders []byte

// published is an order of construction out of a book, as data.
type published struct {
	Order  string          `yaml:"order,required"`
	Title  string          `yaml:"title,required"`
	Needs  []string        `yaml:"needs"`
	Lacks  []string        `yaml:"lacks"`
	Parts  []publishedPart `yaml:"parts,required"`
	Source string          `yaml:"source,required"`
}

// publishedPart is what is done in one go.
type publishedPart struct {
	Kind  []string `yaml:"kind"`
	Named []string `yaml:"named"`
}

// Textbook is what the work costs in a published order, computed like our own:
// each seam finished before the next is begun.
type Textbook struct {
	Title         string   `json:"title"`
	Source        string   `json:"source"`
	Seams         []string `json:"seams"` // in the published order
	ChangeMinutes float64  `json:"change_minutes"`
	ThreadChanges int      `json:"thread_changes"`
	StationMoves  int      `json:"station_moves"`

	Waits []BookWait `json:"waits"` // where the published order cannot be kept
}

// BookWait is a seam that the published order has before another for which it
// has to wait here.
type BookWait struct {
	Seam    string `json:"seam"` // titles
	For     string `json:"for"`
	Because string `json:"because"`
}

// textbook is the first published order that fits the garment, and the sequence
// in which it puts the operations. What waits for something that the published
// order has later stands where it first can.
//
// There is none for several garments in one sitting.
func (o *operator) textbook() (*Textbook, []int, error) {
	if o.made == nil {
		return nil, nil, nil
	}
	var all []published
	if err := form.Decode("process/textbook.yaml", publishedOrders, &all); err != nil {
		return nil, nil, err
	}
	i := slices.IndexFunc(all, o.suits)
	if i < 0 {
		return nil, nil, nil
	}
	b := all[i]
	place := make([]int, len(o.lines)) // of each line, in the published order
	hems := len(b.Parts)
	for l, line := range o.lines {
		place[l] = b.placeOf(line)
		if line.kind == "hem" {
			hems = min(hems, place[l])
		}
	}
	o.placeLinings(place)
	t := &Textbook{Title: b.Title, Source: b.Source, Seams: []string{}, Waits: o.bookWaits(place)}
	for k := range b.Parts {
		for l, line := range o.lines {
			if place[l] == k && line.kind != "staystitch" {
				t.Seams = append(t.Seams, line.name)
			}
		}
	}
	const passes = 1000 // more than a line has
	return t, o.byKey(func(i int) int {
		switch n := o.ops[i]; {
		case n.ID == trying:
			return hems * len(o.lines) * passes
		case n.line < 0:
			return i - len(o.ops) // before any seam
		case o.lines[n.line].kind == "staystitch":
			return n.line
		default:
			return (place[n.line]*len(o.lines)+n.line+1)*passes + n.Pass
		}
	}), nil
}

// placeLinings puts a hung lining, of which the published orders do not speak, with
// what takes it in.
func (o *operator) placeLinings(place []int) {
	for _, h := range o.lines {
		if !h.hangs() {
			continue
		}
		taken := slices.IndexFunc(o.lines, func(x *line) bool {
			return (x.work == joining || x.edging()) && !x.hangs() && meets(x.edges, setOf(h.edges))
		})
		for l, line := range o.lines {
			within := !slices.ContainsFunc(line.pieces, func(p string) bool { return !slices.Contains(h.own, p) })
			switch {
			case taken < 0:
			case line == h, within && line.kind == "lining-opening":
				place[l] = place[taken]
			case within && line.kind != "hem":
				place[l] = min(place[l], place[taken])
			}
		}
	}
}

// bookWaits tells where lines in their published places wait for lines that the
// book has later, each pair once, with the reason of the first operation that
// waits. Staystitching is no part of a published order.
func (o *operator) bookWaits(place []int) []BookWait {
	out := []BookWait{}
	for l, line := range o.lines {
		told := map[int]bool{}
		for _, i := range o.span[l] {
			for _, n := range o.ops[i].after {
				k := o.ops[n.op].line
				if k < 0 || n.asked || told[k] || place[k] <= place[l] || o.lines[k].kind == "staystitch" {
					continue
				}
				told[k] = true
				out = append(out, BookWait{Seam: line.title, For: o.lines[k].title, Because: n.because})
			}
		}
	}
	return out
}

// suits reports whether the garment has what the order speaks of.
func (o *operator) suits(b published) bool {
	has := func(word string) bool {
		return slices.ContainsFunc(o.lines, func(l *line) bool { return strings.Contains(l.name, word) })
	}
	return !slices.ContainsFunc(b.Needs, func(w string) bool { return !has(w) }) && !slices.ContainsFunc(b.Lacks, has)
}

// placeOf is the part that takes a line: one that asks for it, else the one that
// takes what is left over, else the last.
func (b published) placeOf(l *line) int {
	rest := len(b.Parts) - 1
	for k, p := range b.Parts {
		switch {
		case slices.Contains(p.Kind, l.kind),
			slices.ContainsFunc(p.Named, func(w string) bool { return strings.Contains(l.name, w) }):
			return k
		case len(p.Kind)+len(p.Named) == 0:
			rest = k
		}
	}
	return rest
}

// byKey puts the operations in the order of their keys, each as soon as what it
// waits for is done. Equal keys keep their order.
func (o *operator) byKey(key func(int) int) []int {
	done := make([]bool, len(o.ops))
	var seq []int
	for len(seq) < len(o.ops) {
		best := -1
		for i := range o.ops {
			ready := !done[i] && !slices.ContainsFunc(o.ops[i].after, func(n need) bool { return !done[n.op] })
			if ready && (best < 0 || key(i) < key(best)) {
				best = i
			}
		}
		done[best] = true
		seq = append(seq, best)
	}
	return seq
}

// tally counts the moves and the changes of thread in a priced order.
func tally(cost order.Breakdown, attributes [][]attribute) (moves, threads int) {
	for _, s := range cost.Steps {
		if s.Move > 0 {
			moves++
		}
		of := attributes[s.Station]
		if slices.ContainsFunc(s.Changes, func(c order.Change) bool {
			return c.Attribute < len(of) && threaded(of[c.Attribute].what) && c.From >= 0
		}) {
			threads++
		}
	}
	return moves, threads
}
