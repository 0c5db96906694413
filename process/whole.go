package process

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/templates"
)

// Operations that belong to the whole garment, not to a seam, carry these
// names before the dot.
const (
	cutting   = "cut"
	scrapTest = "test"
	trying    = "try-on"
	holding   = "interface"
)

// keepScraps ends what is said of cutting out any cloth.
const keepScraps = " Keep the scraps for testing."

// beforeSewing adds the operations that come before any seam: cutting out, and
// steadying whole pieces.
func (o *operator) beforeSewing() {
	for _, c := range o.cloths {
		o.cutOut(c)
	}
	for _, c := range o.cloths {
		o.layTogether(c)
	}
	o.joinPanels()
	for _, f := range o.facings {
		if i := slices.IndexFunc(o.pieces, func(p Piece) bool { return p.Name == f.Piece }); i >= 0 {
			o.steady(f, o.pieces[i])
		}
	}
}

func (o *operator) cutOut(c clothIn) {
	var what []string
	around := 0.0
	for _, p := range o.pieces {
		if p.Cloth == c.role {
			what = append(what, lowerFirst(p.Title))
			around += perimeter(p.CutLine) * float64(p.Count)
		}
	}
	if c.under != nil {
		around *= 2 // the same pieces once more
	}
	for _, l := range o.lines {
		if s := l.strip; s != nil && s.Cloth == c.role {
			what = append(what, lowerFirst(s.Title))
			around += 2 * (s.CutLength + s.CutWidth) * float64(s.Count)
		}
	}
	if len(what) == 0 {
		return
	}
	act := o.act("cut")
	n := op{line: -1, strip: true, act: act, cloths: []seams.Cloth{c.cloth}}
	n.ID, n.Does, n.Part = cutting+"."+c.role, "cut", lowerFirst(c.title)
	n.Text = fmt.Sprintf("Cut out in %s, %s: %s, to the sizes under What to cut.%s",
		lowerFirst(c.outer.Title), c.colour, listWords(what, "and"), keepScraps)
	n.Text += o.cutUnder(c)
	for _, w := range o.narrow {
		if o.pieces[w.piece].Cloth == c.role {
			n.Text += " " + o.told(w)
		}
	}
	n.Good = "Edges are smooth, grain runs as each piece says, and notches and points are marked before the piece is moved."
	if c.cloth.Slip >= 2 {
		n.Text += " Lay the cloth on tissue paper, in a single layer or with whole pieces, and hold it with weights."
	}
	n.Text += o.oneWay(c)
	n.Length = around / float64(o.quantity)
	_ = o.settle(&n, "", 0, "", c.colour)
	o.time(&n)
	o.ops = append(o.ops, n)
}

func (o *operator) steady(f Interfacing, p Piece) {
	does := "baste"
	if f.Fusible {
		does = "fuse"
	}
	act := o.act(does)
	n := op{line: -1, act: act, glue: f.HeatDots, cloths: []seams.Cloth{clothRole(o.cloths, p.Cloth).cloth}}
	n.ID, n.Does, n.Part = holding+"."+p.Name, does, lowerFirst(p.Title)
	n.Text = f.Attach
	n.Good = "The cloth lies flat on the " + lowerFirst(f.MaterialTitle) + ", without a bubble or a ripple."
	n.Length = 2 * (f.Cut[0] + f.Cut[1]) * float64(p.Count) / float64(o.quantity)
	stitch := ""
	if !f.Fusible {
		stitch = basting
	}
	if o.settle(&n, stitch, 0, "", clothRole(o.cloths, p.Cloth).thread) != nil {
		return
	}
	o.time(&n)
	o.ops = append(o.ops, n)
}

// basting is the running stitch by hand: ISO 4915 type 205.
const basting = "205"

// tests adds a trial row on a scrap for every machine used, and a trial press.
func (o *operator) tests() {
	for k, st := range o.room.stations {
		first := slices.IndexFunc(o.ops, func(n op) bool { return n.station == k && !n.trial() })
		if first < 0 || (st.Kind != "machine" && st.Kind != "iron") {
			continue
		}
		o.ops = append(o.ops, o.trialAt(k, o.ops[first]))
	}
}

// trial reports the trial row of a machine or the iron, which is set up like what
// follows; a construction's own test, of a buttonhole, is not one.
func (n *op) trial() bool { return n.Does == scrapTest && n.line < 0 }

// trialAt is the trial at a station before an operation like this.
func (o *operator) trialAt(k int, like op) op {
	st := o.room.stations[k]
	n := op{line: -1, station: k, act: o.act("test"), cloths: like.cloths}
	n.ID, n.Does, n.Part, n.Station = scrapTest+"."+st.Name, scrapTest, "scraps", st.Name
	n.Setting = like.Setting
	n.Length = 200
	o.time(&n)
	n.tryout(like, o)
	return n
}

// tryout sets a test up like the operation that it goes before.
func (n *op) tryout(like op, o *operator) {
	n.Setting, n.cloths, n.row = like.Setting, like.cloths, like.row
	if o.room.stations[n.station].Kind == "iron" {
		n.Text = o.pressTest()
		n.Good = "No shine, no water mark, no scorch, and the scrap has not shrunk."
		return
	}
	n.Text = fmt.Sprintf("On a double scrap of %s, sew a row with %s thread, needle %s, stitch length %s. Adjust tension and length until it lies flat.",
		lowerFirst(like.cloths[0].Title), n.Setting.Thread, n.Setting.Needle, mmWords(n.Setting.StitchMM))
	n.Good = "Both faces look alike, nothing puckers, and no stitch is skipped."
}

func (o *operator) pressTest() string {
	var names []string
	for _, c := range o.cloths {
		if w := lowerFirst(c.cloth.Title); !slices.Contains(names, w) {
			names = append(names, w)
		}
	}
	text := "Press a scrap of " + listWords(names, "and of") + " on the wrong side"
	for _, f := range o.facings {
		if f.Fusible {
			text += ", and fuse a scrap of " + lowerFirst(f.MaterialTitle) + " to one; let it cool before judging"
			break
		}
	}
	text += "."
	told := map[string]bool{}
	for _, c := range o.cloths {
		p, err := o.shelf.PressingFor(o.factsOf(c.cloth))
		if err == nil && p.Side != "either" && !told[c.cloth.Name] {
			told[c.cloth.Name] = true
			text += fmt.Sprintf(" %s: %s", upperFirst(c.cloth.Title), lowerFirst(p.Text))
		}
	}
	return text
}

// tryOn adds a fitting before the hems, where the length can still be changed.
func (o *operator) tryOn() {
	if !slices.ContainsFunc(o.lines, o.lengthens) {
		return
	}
	act := o.act("fit")
	n := op{line: -1, act: act, cloths: []seams.Cloth{o.cloths[0].cloth}, station: o.room.at(tableStation)}
	n.ID, n.Does, n.Part, n.Station = trying, "fit", "the garment", tableStation
	var hems []string
	for _, l := range o.lines {
		if o.lengthens(l) {
			hems = append(hems, l.title)
		}
	}
	n.Text = "Try it on, pinned where it is still open. Mark the " + listWords(hems, "and the") + " level."
	if o.hangs() {
		n.Text += " Let it hang for 24 hours first: the hem runs off the grain and drops."
	}
	n.Text += o.levelled()
	n.Good = "It hangs level and nothing pulls; change the length now, not later."
	o.time(&n)
	n.Minutes *= float64(o.quantity)
	o.ops = append(o.ops, n)
}

// lengthens reports a hem by which the length is settled at the fitting: the lower
// edge of a piece, across the grain, of a garment that is joined by then. The
// hemmed edge of a slit or a front is none, nor is the top of a bib, nor what
// pleats are laid over, nor a lining's, which is measured up from the garment's.
func (o *operator) lengthens(l *line) bool {
	s := structureOf{made: o.made, lines: o.lines}
	if l.kind != "hem" || l.flat || len(o.made.Joins) == 0 || o.raised(l) > 0 ||
		slices.ContainsFunc(o.lines, func(x *line) bool { return s.laidOver(x, l) }) {
		return false
	}
	return slices.ContainsFunc(l.edges, func(e edgeOf) bool {
		i := slices.IndexFunc(o.made.Pieces, func(p templates.Piece) bool { return p.Name == e.piece })
		p := o.made.Pieces[i]
		edge, _ := p.Outline.Edge(e.edge)
		middle, along := edge.At(edge.Length() / 2)
		all := p.Outline.Bounds()
		return math.Abs(along.X) > math.Abs(along.Y) && middle.Y < (all.Min.Y+all.Max.Y)/2
	})
}

// hangs: a flared or bias hem is left to drop before it is marked (Making
// Perfect Garment Hems, Guide C-314, New Mexico State Univ.: 24 h).
//
// hangingFlare is the flare above which it is: an estimate, a quarter radian of
// bend on each half, as an A-line skirt has.
func (o *operator) hangs() bool {
	const hangingFlare = 0.5
	return slices.ContainsFunc(o.lines, func(l *line) bool {
		return l.kind == "hem" && (l.edge.Bias || l.edge.Flare > hangingFlare)
	})
}

func perimeter(pts []Point) float64 {
	sum := 0.0
	for i := range pts {
		sum += distance(pts[i], pts[(i+1)%len(pts)])
	}
	return sum
}

func mmWords(mm float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.1f", mm), "0"), ".") + " mm"
}

func plural(s string) string {
	if strings.HasSuffix(s, "s") {
		return s
	}
	return s + "s"
}

// act is an act that the planner itself asks for; the shelf's own tests see to
// it that it is there.
func (o *operator) act(name string) seams.Act {
	a, err := o.shelf.Act(name)
	if err != nil {
		panic(err)
	}
	return *a
}
