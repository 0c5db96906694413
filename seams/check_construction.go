package seams

import (
	"slices"
	"strings"

	"bodkin/seams/form"
)

func (l *loader) construction(c Construction, n *form.Node, s *Shelf) {
	if c.later != nil {
		return // it comes with bodkin and is checked by tests
	}
	if kinds := kindsOf(c.For); !slices.Contains(kinds, c.Kind) {
		l.fault(n.At("kind"), form.Nearest(c.Kind, kinds), "the kinds for "+c.For+" are "+strings.Join(kinds, ", "),
			"%q is no kind for %s", c.Kind, c.For)
	}
	if _, given := c.designation(n); given {
		l.within(n.At("iso4916"), "class", float64(c.ISO4916.Class), 1, 8, "")
	}
	for i, stitch := range c.Stitches {
		l.listed(n.At("stitches", i), "stitch", stitch, names(s.Stitches))
	}
	for i, tool := range c.Tools {
		l.listed(n.At("tools", i), "tool", tool, names(s.Tools))
	}
	l.sizes(c, n)
	for i := range c.RuledOut {
		if c.RuledOut[i].Worth != 0 {
			l.fault(n.At("ruled_out", i, "worth"), "", "leave worth out, or move the rule to speaks_against", "a rule that rules out has no worth")
		}
	}
	l.rules(n, "speaks_for", c.SpeaksFor)
	l.rules(n, "speaks_against", c.SpeaksAgainst)
	for i := range c.Passes {
		l.pass(c, &c.Passes[i], n.At("passes", i), s)
	}
	if len(c.Passes) == 0 {
		l.fault(n, "", "add passes:", "a construction without passes cannot be sewn")
	}
	for i, k := range c.Checks {
		if k.AfterPass < 1 || k.AfterPass > len(c.Passes) {
			l.fault(n.At("checks", i, "after_pass"), "", "count the passes from 1", "after_pass must be from 1 to %d", len(c.Passes))
		}
	}
	for i := range c.Figure {
		l.figureItem(c, &c.Figure[i], n.At("figure", i))
	}
	before := 0
	for i, s := range c.Stages {
		if s.After <= before || s.After >= len(c.Passes) {
			l.fault(n.At("stages", i, "after"), "", "count the passes from 1; the finished section shows how it lies after the last",
				"a stage comes after a pass from %d to %d", before+1, len(c.Passes)-1)
		}
		before = s.After
		for k := range s.Shows {
			l.figureItem(c, &c.Stages[i].Shows[k], n.At("stages", i, "shows", k))
		}
	}
}

func (c Construction) designation(n *form.Node) (*form.Node, bool) {
	at := n.At("iso4916")
	return at, at != n
}

// sizes refuses names that formulas could not use.
func (l *loader) sizes(c Construction, n *form.Node) {
	for _, size := range c.Sizes {
		if why := l.facts.Refuses(size.Key.Value); why != "" {
			l.faults = append(l.faults, size.Key.Fault(0, len(size.Key.Value), why, "", "take another name for this size"))
		}
	}
}

func (l *loader) pass(c Construction, p *Pass, n *form.Node, s *Shelf) {
	act, err := s.Act(p.Does)
	if err != nil {
		l.listed(n.At("does"), "act", p.Does, names(s.Acts))
		return
	}
	if p.Stitch != "" {
		l.listed(n.At("stitch"), "stitch", p.Stitch, names(s.Stitches))
	}
	switch {
	case act.Station == "machine" && p.Stitch == "":
		l.fault(n, "", "add stitch: and its number", "%s is done on a machine and needs a stitch", p.Does)
	case act.Station != "machine" && act.Station != "hand" && p.Stitch != "":
		l.fault(n.At("stitch"), "", "leave stitch out", "%s makes no stitches", p.Does)
	}
	if st, err := s.Stitch(p.Stitch); err == nil && st.Hand != (act.Station == "hand") && act.Station != "table" {
		where := "by machine"
		if st.Hand {
			where = "by hand"
		}
		l.fault(n.At("stitch"), "", "take a stitch that is formed there, or another act", "%s is sewn %s, and %s is done at the %s", st.Name, where, p.Does, act.Station)
	}
	if p.Foot != "" {
		l.listed(n.At("foot"), "foot", p.Foot, s.feet())
	}
	if p.Rows < 0 || p.Rows > 20 {
		l.fault(n.At("rows"), "", "leave rows out for a single row", "rows must be from 0 to 20")
	}
	if p.Run != "" {
		l.listed(n.At("run"), "size", p.Run, c.Sizes.Keys())
	}
	if p.On == "strip" && c.Strip == nil && c.Kind != "strip" && !hasOwnPieces(c.Kind) {
		l.fault(n.At("on"), "", "add strip: to the construction", "there is no strip to work on")
	}
	l.words(c, n.At("text"), p.Text)
	if p.Good != "" {
		l.words(c, n.At("good"), p.Good)
	}
}

// feet are all feet that a machine on the shelf may wear.
func (s *Shelf) feet() []string {
	var all []string
	for _, m := range s.Machines {
		all = append(all, m.Feet...)
	}
	return all
}

// wordNames are the names that words may use besides the sizes.
func (c Construction) wordNames() []string {
	out := append(c.Sizes.Keys(), "a", "b", "edge", "strip", allowanceName, "finished")
	if c.Strip != nil {
		out = append(out, "strip_width")
	}
	if c.Elastic != nil {
		out = append(out, "elastic_width", "elastic_length")
	}
	if slices.Contains(out, "tape") {
		out = append(out, "tape_name") // what is chosen for a tape
	}
	if c.Kind == "gathers" {
		out = append(out, "ratio") // how many times as long as it will be
	}
	if c.Kind == "hem" {
		out = append(out, "caught") // what hand stitches pick up: the garment, or a strip in the hem
	}
	return out
}

// words refuses a name in braces that nothing will be put in for.
func (l *loader) words(c Construction, n *form.Node, text string) {
	for rest := text; ; {
		_, after, found := strings.Cut(rest, "{")
		if !found {
			return
		}
		name, tail, closed := strings.Cut(after, "}")
		if known := c.wordNames(); !closed || !slices.Contains(known, name) {
			l.fault(n, form.Nearest(name, known), "the names in braces are "+strings.Join(known, ", "), "{%s} is no size of this construction", name)
			return
		}
		rest = tail
	}
}

func (l *loader) figureItem(c Construction, f *FigureItem, n *form.Node) {
	given := 0
	for _, word := range []string{f.Ply, f.Stitch, f.Size} {
		if word != "" {
			given++
		}
	}
	if given != 1 {
		l.fault(n, "", "give one of ply, stitch, size", "a line of the figure is a ply, a stitch or a size")
		return
	}
	points := 2
	switch {
	case f.Ply != "":
		plies := []string{"a", "b", "strip", "interfacing", "elastic"}
		if !slices.Contains(plies, f.Ply) {
			l.fault(n.At("ply"), form.Nearest(f.Ply, plies), "take one of these", "%q is not one of %s", f.Ply, strings.Join(plies, ", "))
		}
		if len(f.Through) < points {
			l.fault(n.At("through"), "", "write [[x, y], [x, y]]", "a ply runs through at least two points")
		}
	case len(f.Through) != points:
		l.fault(n.At("through"), "", "write [[x, y], [x, y]]", "a stitch or a size runs through two points")
	}
	if f.Size != "" && !slices.Contains(c.wordNames(), f.Size) {
		l.fault(n.At("size"), form.Nearest(f.Size, c.Sizes.Keys()), "the sizes are "+strings.Join(c.wordNames(), ", "), "%q is no size of this construction", f.Size)
	}
	for i, point := range f.Through {
		if len(point) != 2 {
			l.fault(n.At("through", i), "", "write [x, y]", "a point has two numbers")
		}
	}
}
