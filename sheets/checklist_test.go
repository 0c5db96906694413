package sheets

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
)

// What a good sheet shows, whatever the garment and whoever reads it: a figure for
// each way of sewing, a key to the two sides of the cloth, boxes, sizes and
// allowances, needle and thread, the iron, figures to check, warnings, and room
// for name and date. The list is put together from what teachers' sample cards and
// lesson plans have and beginners miss: common practice, no one source.
func TestChecklistOfAGoodSheet(t *testing.T) {
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	for i, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		units := []length.Style{length.Centimetres, length.Inches}[i%2]
		p := worked(t, shelf, string(process.StartJob(g, shelf, units)), "name: One room\nmachines: [{is: straight-stitcher}, {is: zigzag-machine}]\niron: steam\n")
		for _, reader := range Readers() {
			t.Run(name+" "+reader, func(t *testing.T) { goodSheet(t, p, Reader(reader)) })
		}
	}
}

func goodSheet(t *testing.T, p *process.Plan, reader Reader) {
	c := newComposer(p, Options{For: reader, FiguresAt: "f/"})
	s := Compose(p, Options{For: reader, FiguresAt: "f/"})
	text := strings.Join(strings.Fields(strings.NewReplacer("\n> ", "\n", "**", "").Replace(string(s.Markdown))), " ")
	shows := func(what string, words inline) {
		if !strings.Contains(text, strings.Join(strings.Fields(strings.ReplaceAll(string(words), "**", "")), " ")) {
			t.Errorf("%s: the sheet does not show %q", what, words)
		}
	}
	figures := func(start string) int {
		n := 0
		for _, d := range s.Figures {
			if strings.HasPrefix(d.Figure.Name, start) {
				n++
			}
		}
		return n
	}
	var ways []string
	for _, o := range p.Operations {
		if seam := c.seams[o.Seam]; len(seam.Section.Items) > 0 && !slices.Contains(ways, seam.Construction) {
			ways = append(ways, seam.Construction)
		}
	}
	if n := figures("section-"); n < len(ways) {
		t.Errorf("figures: %d sections for %d ways of sewing", n, len(ways))
	}
	if n := strings.Count(text, "- [ ] "); n < len(p.Operations) {
		t.Errorf("boxes: %d for %d operations", n, len(p.Operations))
	}
	for _, seam := range p.Seams {
		if seam.Allowance > 0 {
			shows("allowance of "+seam.Name, c.mm(seam.Allowance))
		}
	}
	for _, piece := range p.Pieces {
		shows("size of "+piece.Name, c.mm(piece.Width))
	}
	for _, step := range p.Steps {
		shows("setting", c.setting(step))
		if step.Setting.HeatDots > 0 && !strings.Contains(string(c.setting(step)), "dot") {
			t.Errorf("iron: step %d does not say how hot", step.Number)
		}
	}
	for _, k := range p.Checks {
		shows("check", c.mm(k.Expect))
	}
	for _, w := range p.Cautions {
		shows("warning", plain(sentence(w.Text)))
	}
	if reader == Class {
		if figures("sides") != 1 {
			t.Error("key: the two sides of the cloth are not told apart")
		}
		shows("name and date", "My name, and the date:")
	}
}
