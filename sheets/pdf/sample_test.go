package pdf

import (
	"bytes"
	_ "embed"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"bodkin/sheets/figure"
	"bodkin/sheets/pdf/typeface"
)

//go:embed testdata/sample.md
var sampleMarkdown []byte

// sampleFigures are drawn in the shapes a sheet has: sections, a piece map and
// a thread line.
func sampleFigures() map[string]figure.Figure {
	m := &typeface.Faces{}
	return map[string]figure.Figure{
		"french":      frenchSection(m),
		"hem":         hemSection(m),
		"piece-map":   pieceMap(m),
		"thread-line": threadLine(m),
	}
}

func frenchSection(m figure.Measurer) figure.Figure {
	pt := func(x, y float64) figure.Point { return figure.Point{X: x, Y: y} }
	line := figure.Stroke{Width: figure.Thin}
	upper := figure.Ply([]figure.Point{pt(-16, 0), pt(8, 0), pt(8, 2.6), pt(1, 2.6)}, 0.9, 1.3, line, figure.Fill{Tint: 0.12})
	lower := figure.Ply([]figure.Point{pt(-16, 7.4), pt(8, 7.4), pt(8, 4.8), pt(1, 4.8)}, 0.9, 1.3, line, figure.Fill{Tint: 0.3})
	items := []figure.Item{upper, lower}
	items = append(items, figure.NeedleMark(pt(-1.5, -1.3), pt(-1.5, 8.7))...)
	items = append(items, figure.NeedleMark(pt(4.5, 1.6), pt(4.5, 5.8))...)
	return figure.Fit("french", "Section through a French seam", items, 0.8, m)
}

func hemSection(m figure.Measurer) figure.Figure {
	pt := func(x, y float64) figure.Point { return figure.Point{X: x, Y: y} }
	ply := figure.Ply([]figure.Point{pt(-18, 0), pt(6, 0), pt(6, 2.4), pt(-3, 2.4), pt(-3, 4.8), pt(4, 4.8)}, 0.9, 1.2, figure.Stroke{Width: figure.Thin}, figure.Fill{Tint: 0.12})
	items := append([]figure.Item{ply}, figure.NeedleMark(pt(-1, -1.3), pt(-1, 6.2))...)
	return figure.Fit("hem", "Section through a narrow hem", items, 0.8, m)
}

func pieceMap(m figure.Measurer) figure.Figure {
	pt := func(x, y float64) figure.Point { return figure.Point{X: x, Y: y} }
	var items []figure.Item
	items = append(items, figure.Rect(pt(0, 0), 150, 57, figure.Stroke{Width: figure.Thin, Light: 0.4}, figure.Fill{}))
	for i, name := range []string{"Front", "Back"} {
		x := 8 + float64(i)*68
		p := figure.Path{Start: pt(x, 3), Closed: true, Stroke: figure.Stroke{Width: figure.Medium}, Fill: figure.Fill{Hatch: figure.Hatch(i * int(figure.Falling)), Pitch: 2.5}}
		p = p.Line(pt(x+42, 3)).Curve(pt(x+44, 9), pt(x+47, 12), pt(x+52, 12)).Line(pt(x+58, 21)).
			Curve(pt(x+50, 22), pt(x+44, 26), pt(x+44, 34)).Line(pt(x, 37))
		items = append(items, p)
		items = append(items, figure.StitchRow(figure.Polyline(figure.Stroke{}, pt(x+2, 5), pt(x+40, 5)), 2))
		items = append(items, figure.Arrow(pt(x+6, 20), pt(x+36, 20), true)...)
		items = append(items, figure.Backed(figure.Text{At: pt(x+20, 15), Size: 3.4, Anchor: figure.Middle, Bold: true, Words: name}, m)...)
		items = append(items, figure.Backed(figure.Text{At: pt(x+20, 29), Size: 2.8, Anchor: figure.Middle, Words: "cut 1 on fold"}, m)...)
		items = append(items, figure.Dimension(pt(x, 37), pt(x+44, 37), -7, fmt.Sprintf("%d.%d", 65+i, 2+6*i), 2.8, m)...)
	}
	items = append(items, figure.Dimension(pt(150, 0), pt(150, 57), 7, "57", 2.8, m)...)
	items = append(items, figure.Text{At: pt(2, 53), Size: 2.6, Words: "selvedges"}, figure.Text{At: pt(-1.5, 28), Size: 2.6, Anchor: figure.Middle, Turn: 90, Words: "fold"})
	return figure.Fit("piece-map", "Piece map: front and back on the fold", items, 1, m)
}

func threadLine(m figure.Measurer) figure.Figure {
	var items []figure.Item
	teal, ink := figure.RGB{R: 46, G: 139, B: 120}, figure.RGB{R: 28, G: 34, B: 66}
	for step := range 5 {
		x := 34 + float64(step)*24
		items = append(items, figure.Text{At: figure.Point{X: x + 12, Y: 3}, Size: 2.8, Anchor: figure.Middle, Words: fmt.Sprint("step ", step+1)})
	}
	items = append(items, figure.Text{At: figure.Point{X: 0, Y: 10}, Size: 2.8, Words: "Straight stitcher"})
	runs := []struct {
		from, to int
		name     string
		hatch    figure.Hatch
		colour   *figure.RGB
	}{{0, 2, "sea green", figure.Rising, &teal}, {2, 3, "ink", figure.Dotted, &ink}, {3, 5, "sea green", figure.Rising, &teal}}
	for _, r := range runs {
		x, w := 34+24*float64(r.from), 24*float64(r.to-r.from)
		items = append(items,
			figure.Rect(figure.Point{X: x, Y: 5.5}, w, 7, figure.Stroke{Width: figure.Thin}, figure.Fill{Hatch: r.hatch}),
			figure.Rect(figure.Point{X: x, Y: 12.5}, w, 1.4, figure.Stroke{}, figure.Fill{Thread: r.colour}))
		items = append(items, figure.Backed(figure.Text{At: figure.Point{X: x + w/2, Y: 10}, Size: 2.8, Anchor: figure.Middle, Words: r.name}, m)...)
	}
	return figure.Fit("thread-line", "Thread line: sea green, ink, sea green", items, 1, m)
}

func sampleOptions() Options {
	return Options{RunningHead: "bodkin · maker's sheet", Author: "The parish hall", Lang: "en", Figures: sampleFigures()}
}

// TestSample writes the sample on every paper, and leaves the files where
// -artifacts says, to be looked at.
func TestSample(t *testing.T) {
	for name, paper := range map[string]Paper{"a4": A4, "a5": A5, "letter": Letter} {
		o := sampleOptions()
		o.Paper = paper
		var once, again bytes.Buffer
		if err := Write(&once, sampleMarkdown, o); err != nil {
			t.Fatal(err)
		}
		if err := Write(&again, sampleMarkdown, o); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(once.Bytes(), again.Bytes()) {
			t.Errorf("%s: two runs gave different bytes", name)
		}
		if err := os.WriteFile(filepath.Join(t.ArtifactDir(), name+".pdf"), once.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}
