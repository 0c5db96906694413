package sheets

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/sheets/figure"
	"bodkin/templates"
)

// ofEveryGarment are the plans of all garments in their usual cloths, in the first
// order that is found.
func ofEveryGarment(t *testing.T) []named {
	t.Helper()
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	var out []named
	for _, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		job := &process.Job{Make: form.Text{Value: name}}
		for _, r := range g.Roles() {
			is := form.Text{Value: cmp.Or(r.Usual, "cotton-lawn")}
			job.Cloth = append(job.Cloth, form.Pair[process.JobCloth]{Key: form.Text{Value: r.Name}, Value: process.JobCloth{Is: is, Colour: "grey"}})
		}
		p, err := process.Work(t.Context(), process.Input{Job: job, Garment: g, Workroom: process.DefaultWorkroom(), Shelf: shelf}, order.Options{Nodes: order.NoSearch})
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, named{name, p})
	}
	return out
}

// What is drawn is what the plan says, at the scale that the caption gives: of
// every garment each piece with its allowances, each area of interfacing, each
// strip with its joins, and each dimension of each cross-section, whose figure
// stands beside it. The plan draws curves by straight lines, which may lose 0.2 mm.
func TestFiguresHaveThePlansDimensions(t *testing.T) {
	pieces, areas, strips, sizes := 0, 0, 0, 0
	for _, n := range ofEveryGarment(t) {
		c := newComposer(n.plan, Options{})
		near := func(what string, got, want float64) {
			if t.Helper(); math.Abs(got-want) > 0.2 {
				t.Errorf("%s: %s is drawn %.2f mm, the plan has %.2f", n.name, what, got, want)
			}
		}
		scale, places := layPieces(n.plan.Pieces, mapHigh)
		for i, p := range n.plan.Pieces {
			pieces++
			f := newPieceFigure(c, p, scale, places[i])
			net, cut := f.net.box(), f.cut.box()
			wide := 1.0
			if p.Cut == "fold" {
				wide = 2
			}
			near(p.Name+", height at the seam line", net.Height()/scale, p.NetHeight)
			near(p.Name+", cut height", cut.Height()/scale, p.Height)
			near(p.Name+", cut width", wide*cut.Width()/scale, p.Width)
			if by, ok := c.steadiedBy(p); ok {
				areas++
				area := figure.Bounds(f.steadied(), c.measure)
				near(by.Name+", width", wide*area.Width()/scale, by.Cut[0])
				near(by.Name+", height", area.Height()/scale, by.Cut[1])
				if k := slices.IndexFunc(p.Edges, func(e process.Edge) bool { return e.Name == "outer" }); by.Part == "half" && k >= 0 {
					if x := f.point(p.Edges[k].Middle).X; x < area.Left-0.1 || x > area.Right+0.1 {
						t.Errorf("%s: the interfacing of %s does not lie in its outer half", n.name, p.Name)
					}
				}
			}
		}
		for _, s := range n.plan.Strips {
			strips++
			c.stripIsTrue(t, n.name, s)
		}
		for _, s := range n.plan.Seams {
			for _, d := range append(newStages(c, s), newSection(c, s, sectionWide)) {
				words := textsOf(d.items())
				for _, it := range d.parts {
					if it.Size == "" || len(it.Through) < 2 || it.Through[0].X == it.Through[1].X {
						continue
					}
					sizes++
					near(s.Name+", "+it.Size, math.Abs(d.at(it.Through[1]).X-d.at(it.Through[0]).X)/d.scale, it.MM)
					if !slices.Contains(words, c.mmText(it.MM)) {
						t.Errorf("%s: no %s beside %s of %s, only %q", n.name, c.mmText(it.MM), it.Size, s.Name, words)
					}
				}
			}
		}
	}
	if pieces == 0 || areas == 0 || strips == 0 || sizes == 0 {
		t.Errorf("%d pieces, %d areas of interfacing, %d strips, %d dimensions were looked at", pieces, areas, strips, sizes)
	}
}

// stripIsTrue: a strip is as long as it is cut, a slanting or straight line stands
// at each of its joins, and the lengths part it evenly.
func (c *composer) stripIsTrue(t *testing.T, name string, s process.Strip) {
	t.Helper()
	scale := reduction(s.CutLength, stripWide)
	items := c.stripItems(s, scale)
	whole := figure.Bounds(items[:1], c.measure)
	if got := (whole.Width() - figure.Medium) / scale; math.Abs(got-s.CutLength) > 0.05 {
		t.Errorf("%s: %s is drawn %.2f mm long, it is cut %.2f", name, s.Name, got, s.CutLength)
	}
	joins := 0
	for _, w := range textsOf(items) {
		if w == c.say.figures.joins {
			joins++
		}
	}
	if joins != s.Joins {
		t.Errorf("%s: %s has %d joins and is drawn with %d", name, s.Name, s.Joins, joins)
	}
	if !slices.Contains(textsOf(items), c.mmText(s.CutLength)) {
		t.Errorf("%s: the length of %s does not stand below it", name, s.Name)
	}
}

func textsOf(items []figure.Item) []string {
	var out []string
	for _, it := range items {
		if w, ok := it.(figure.Text); ok {
			out = append(out, w.Words)
		}
	}
	return out
}
