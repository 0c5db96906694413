package sheets

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams/length"
	"bodkin/sheets/figure"
)

// wellFormed reads a figure's SVG with the standard library's XML reader.
func wellFormed(t interface {
	Helper()
	Fatalf(string, ...any)
}, d Drawing) {
	t.Helper()
	if err := d.Figure.Check(); err != nil {
		t.Fatalf("%s: %v", d.Address, err)
	}
	r := xml.NewDecoder(bytes.NewReader(d.Figure.SVG()))
	for {
		_, err := r.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("%s: %v", d.Address, err)
		}
	}
}

func TestFiguresAreSound(t *testing.T) {
	measure := &measurer{}
	for _, n := range plans(t) {
		for _, units := range []string{"cm", "in"} {
			s := Compose(n.plan, Options{Units: units, FiguresAt: "figures/"})
			if len(s.Figures) < 3 {
				t.Errorf("%s: only %d figures", n.name, len(s.Figures))
			}
			for _, d := range s.Figures {
				wellFormed(t, d)
				f := d.Figure
				if f.Title == "" || f.Width > 180 || f.Height > 230 {
					t.Errorf("%s %q is %.0f by %.0f mm", d.Address, f.Title, f.Width, f.Height)
				}
				if !bytes.Contains(s.Markdown, []byte("]("+d.Address+")")) {
					t.Errorf("%s is nowhere in the Markdown", d.Address)
				}
				apart(t, d, measure)
			}
			if images := bytes.Count(s.Markdown, []byte("![")); images != len(s.Figures) {
				t.Errorf("%s: %d images, %d figures", n.name, images, len(s.Figures))
			}
		}
	}
}

// apart: no words of a figure stand over others, and none beyond its edge.
func apart(t *testing.T, d Drawing, m figure.Measurer) {
	t.Helper()
	var texts []figure.Text
	for _, it := range d.Figure.Items {
		if w, ok := it.(figure.Text); ok {
			texts = append(texts, w)
		}
	}
	for i, a := range texts {
		box := ink(a, m)
		if box.Left < 0 || box.Top < 0 || box.Right > d.Figure.Width || box.Bottom > d.Figure.Height {
			t.Errorf("%s: %q stands beyond the edge", d.Address, a.Words)
		}
		for _, b := range texts[i+1:] {
			if box.Overlaps(ink(b, m)) && !(a.Turn != 0 && b.Turn != 0) {
				t.Errorf("%s: %q stands over %q", d.Address, a.Words, b.Words)
			}
		}
	}
}

// ink is the room of a text without the air above its letters.
func ink(t figure.Text, m figure.Measurer) figure.Box {
	b := figure.TextBox(t, m)
	if t.Turn == 0 {
		b.Top += 0.2 * t.Size
	}
	return b
}

func TestWithoutFiguresCaptionsStay(t *testing.T) {
	for _, name := range fixtures(t) {
		with, without := Compose(fixture(t, name), Options{FiguresAt: "f/"}), Compose(fixture(t, name), Options{})
		if len(without.Figures) != 0 || bytes.Contains(without.Markdown, []byte("![")) {
			t.Errorf("%s: images in a sheet without figures", name)
		}
		kept := strings.Split(string(with.Markdown), "\n\n")
		var lines []string
		for _, block := range kept {
			if !strings.HasPrefix(block, "![") {
				lines = append(lines, block)
			}
		}
		if strings.Join(lines, "\n\n") != string(without.Markdown) {
			t.Errorf("%s: more than the images is missing", name)
		}
	}
}

// A section is to scale along the cloth: what the plan gives in mm is drawn at
// one factor, whatever it says on paper.
func TestSectionIsToScale(t *testing.T) {
	c := newComposer(&process.Plan{}, Options{})
	d := newSection(c, process.Seam{Section: process.Section{Items: []process.SectionItem{
		{Ply: "a", Right: "left", Through: []process.Point{{X: -20}, {X: 10}}},
		{Size: "wide", MM: 6, Through: []process.Point{{X: 0, Y: 1}, {X: 6, Y: 1}}},
	}}}, sectionWide)
	items := d.items()
	// The extension lines of the dimension are the two upright hairlines.
	var xs []float64
	for _, it := range items {
		p, ok := it.(figure.Path)
		if ok && len(p.Segments) == 1 && p.Stroke.Width == figure.Hairline && p.Start.X == p.Segments[0].To.X {
			xs = append(xs, p.Start.X)
		}
	}
	if len(xs) != 2 {
		t.Fatalf("%d extension lines", len(xs))
	}
	if got, want := xs[1]-xs[0], 6*d.scale; got < want-1e-9 || got > want+1e-9 {
		t.Errorf("6 mm are drawn %v mm wide at a scale of %v", got, d.scale)
	}
}

// The heavy line lies on the side that the plan calls right, seen along the
// ply: above a ply that runs to the right and whose right side is its left.
func TestRightSideIsHeavy(t *testing.T) {
	c := newComposer(&process.Plan{}, Options{})
	for _, k := range []struct {
		right string
		to    float64
		above bool
	}{{"left", 10, true}, {"right", 10, false}, {"left", -10, false}, {"right", -10, true}} {
		d := newSection(c, process.Seam{Section: process.Section{Items: []process.SectionItem{
			{Ply: "a", Right: k.right, Through: []process.Point{{}, {X: k.to}}}}}}, sectionWide)
		found := false
		for _, it := range d.items() {
			if p, ok := it.(figure.Path); ok && p.Stroke.Width == figure.Bold && !p.Closed && p.Start.Y < plyGap {
				found = true
				if (p.Start.Y < 0) != k.above {
					t.Errorf("right side %s of a ply towards %v lies at %v", k.right, k.to, p.Start.Y)
				}
			}
		}
		if !found {
			t.Errorf("no right side drawn for %v", k)
		}
	}
}

// A machine keeps its thread until it is threaded anew.
func TestThreadRows(t *testing.T) {
	p := &process.Plan{Stations: []process.Station{{Name: "m", Kind: "machine"}, {Name: "i", Kind: "iron"}}}
	for i, thread := range []string{"red", "", "red", "ink", "red"} {
		s := process.Step{Number: i + 1, Station: "m", Setting: process.Setting{Thread: thread}}
		if thread == "" {
			s.Station = "i"
		}
		p.Steps = append(p.Steps, s)
	}
	rows := newComposer(p, Options{}).threadRows()
	if len(rows) != 1 {
		t.Fatalf("%d rows", len(rows))
	}
	want := []run{{0, 2, "red", false}, {3, 3, "ink", true}, {4, 4, "red", true}}
	for i, r := range rows[0].runs {
		if r != want[i] {
			t.Errorf("run %d is %v, not %v", i, r, want[i])
		}
	}
}

// Cut and drawn lengths of a strip agree: the joins take up what the lengths
// have over the whole. Geometry: n lengths lose a fixed loss at each of n-1 joins.
func TestScalesFitTheSheet(t *testing.T) {
	for _, mm := range []float64{1, 80, 500, 3348, 20000} {
		s := reduction(mm, stripWide)
		if mm*s > stripWide+1e-9 {
			t.Errorf("%v mm are drawn %v mm long", mm, mm*s)
		}
		if s < 1 && mm*s < stripWide/2.1 && mm > stripWide {
			t.Errorf("%v mm are drawn only %v mm long", mm, mm*s)
		}
	}
}

// Bought lengths are rounded up to what is sold, never below the need.
func TestBuyingLengths(t *testing.T) {
	c := newComposer(&process.Plan{}, Options{})
	in := newComposer(&process.Plan{}, Options{Units: "in"})
	for _, k := range []struct {
		got  inline
		want string
	}{
		{c.toBuy(1340), "1.4 m"}, {c.toBuy(1400), "1.4 m"}, {c.toBuy(1401), "1.5 m"}, {c.metres(20.01), "21 m"}, {c.metres(21), "21 m"},
		{in.toBuy(914.4), "1 yd"}, {in.toBuy(914.5), "1⅛ yd"}, {in.metres(0.9144), "1 yd"}, {in.metres(1), "2 yd"},
		{c.about(0.4), "under 1 min"}, {c.about(0.5), "1 min"}, {c.about(59.4), "59 min"}, {c.about(59.6), "1 h"}, {c.about(157), "2 h 37 min"},
		{c.mm(15), "15 mm"}, {in.mm(15), length.Format(15, length.Inches)},
	} {
		if string(k.got) != k.want {
			t.Errorf("%q, not %q", k.got, k.want)
		}
	}
}
