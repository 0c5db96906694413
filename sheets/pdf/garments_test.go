package pdf

import (
	"fmt"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/sheets"
	"bodkin/sheets/sheettest"
	"bodkin/templates"
)

// everyGarment plans each garment as start offers it, every other one in inches,
// and tries it beside the others; i counts them.
func everyGarment(t *testing.T, try func(t *testing.T, i int, p *process.Plan)) {
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	room, err := process.ParseWorkroom("room.yaml", []byte("name: One room\nmachines: [{is: straight-stitcher}, {is: zigzag-machine}]\niron: steam\n"))
	if err != nil {
		t.Fatal(err)
	}
	names := templates.Names()
	if len(names) < 20 {
		t.Fatalf("%d garments", len(names))
	}
	for i, name := range names {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			g, err := templates.Load(name)
			if err != nil {
				t.Fatal(err)
			}
			job, err := process.ParseJob("job.yaml", process.StartJob(g, shelf, []length.Style{length.Centimetres, length.Inches}[i%2]))
			if err != nil {
				t.Fatal(err)
			}
			p, err := process.Work(t.Context(), process.Input{Job: job, Garment: g, Workroom: room, Shelf: shelf}, order.Options{Nodes: 200})
			if err != nil {
				t.Fatal(err)
			}
			try(t, i, p)
		})
	}
}

// papers are those that there are and A4 in large type, as it may hang on a wall.
func papers(as sheets.Options, s sheets.Sheet) map[string]Options {
	out := map[string]Options{
		"A4":     {Paper: A4, TypeSize: as.TypeSize()},
		"Letter": {Paper: Letter, TypeSize: as.TypeSize()},
		"A5":     {Paper: A5, TypeSize: 0.8 * as.TypeSize()},
		"wall":   {Paper: A4, TypeSize: 18},
	}
	for name, o := range out {
		o.StepHead, o.Title, o.Figures = as.StepHead(), s.Title, s.ByAddress()
		out[name] = o
	}
	return out
}

// The sheet of every garment for a reader on a paper: see [layoutLawsOf].
func layoutLaws(t *testing.T, p *process.Plan, reader string, on ...string) {
	t.Helper()
	layoutLawsOf(t, func(as sheets.Options) sheets.Sheet { return sheets.Compose(p, as) }, reader, on...)
}

// layoutLawsOf holds of a sheet for a reader on papers: the words of the Markdown in
// their order and nothing else, none beyond the margins and none over another, as
// the drawing list has them.
func layoutLawsOf(t *testing.T, compose func(sheets.Options) sheets.Sheet, reader string, on ...string) {
	t.Helper()
	as := sheets.Options{For: sheets.Reader(reader), FiguresAt: "figures/"}
	s := compose(as)
	want := said(s.Markdown)
	for _, paper := range on {
		o := papers(as, s)[paper]
		d, err := lay(s.Markdown, &o)
		if err != nil {
			t.Fatalf("%s on %s: %v", reader, paper, err)
		}
		if got := d.told(roleBody); got != want {
			t.Errorf("%s on %s: words lost, doubled or out of order: %s", reader, paper, difference(got, want))
		}
		for n, p := range d.pages {
			standsInPlace(t, d, n, p)
		}
	}
}

func TestEveryGarmentForEveryReader(t *testing.T) {
	everyGarment(t, func(t *testing.T, _ int, p *process.Plan) {
		for _, r := range sheets.Readers() {
			layoutLaws(t, p, r, "A5")
		}
	})
}

// On the other papers the readers take turns: every garment is on each, and each
// reader.
func TestEveryGarmentOnEveryPaper(t *testing.T) {
	everyGarment(t, func(t *testing.T, i int, p *process.Plan) {
		for k, paper := range []string{"A4", "Letter", "wall"} {
			layoutLaws(t, p, sheets.Readers()[(i+k)%3], paper)
		}
	})
}

// Poppler reads from the PDF of every garment the words that were drawn, in their
// order, those of the figures among them; readers and papers take turns.
func TestEveryGarmentReadsBack(t *testing.T) {
	sheettest.Program(t, "pdftotext")
	everyGarment(t, func(t *testing.T, i int, p *process.Plan) {
		as := sheets.Options{For: sheets.Reader(sheets.Readers()[i%3]), FiguresAt: "figures/", Brief: i%5 == 0}
		s := sheets.Compose(p, as)
		paper := []string{"A4", "Letter", "A5", "wall"}[i%4]
		o := papers(as, s)[paper]
		path := saved(t, written(t, s.Markdown, o))
		d, err := lay(s.Markdown, &o)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := squeeze(bodyText(t, path, d, "-raw")), strings.Join(d.wordsDrawn(), ""); got != want {
			t.Error(fmt.Sprintf("%s on %s: ", as.For, paper) + difference(got, want))
		}
	})
}
