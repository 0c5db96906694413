package sheets

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
)

// smallSitting is a top in two colours and three skirts in the second, at two
// machines.
func smallSitting(t testing.TB, begun *process.Begun) *process.Sitting {
	t.Helper()
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	w, err := process.ParseWorkroom("room.yaml", []byte("name: Hall\nmachines: [{is: straight-stitcher}, {is: overlocker-3}]\niron: steam\n"))
	if err != nil {
		t.Fatal(err)
	}
	var ins []process.Input
	for _, text := range []string{`
make: shell-top
title: Second row
size: {bust: 92 cm, hip: 98 cm}
cloth:
  main:    {is: silk-georgette, colour: reed green, width: 114 cm}
  binding: {is: silk-satin, colour: dusk blue, width: 140 cm}
notes: "Mind the *hem*."
`, `
make: pull-on-skirt
title: Choir skirt
quantity: 3
also: [{size: {waist: 90 cm, hip: 114 cm}}]
cloth:
  main: {is: cotton-lawn, colour: dusk blue, width: 114 cm}
wishes: {region: 0.5}
`} {
		j, err := process.ParseJob("job.yaml", []byte(text[1:]))
		if err != nil {
			t.Fatal(err)
		}
		g, err := templates.Load(j.Make.Value)
		if err != nil {
			t.Fatal(err)
		}
		ins = append(ins, process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf})
	}
	s, err := process.Sit(t.Context(), ins, begun, order.Options{Nodes: 20_000})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// steps parts the steps of a sheet from one another, each with its heading.
func stepsIn(sheet Sheet) []string {
	_, after, _ := strings.Cut(string(sheet.Markdown), "## The steps\n")
	for _, end := range []string{"\n## Why this order", "\n## Words used here", "\n## Notes on"} {
		after, _, _ = strings.Cut(after, end)
	}
	return strings.Split(after, "\n### ")[1:]
}

// flattened is Markdown without its line breaks and marks.
func flattened(s string) string {
	s = strings.NewReplacer("\n> ", " ", "*", "", `\`, "").Replace(s)
	return strings.Join(strings.Fields(s), " ")
}

// Whoever reads it, each step of a sitting's sheet has its place, its garments, its
// setting and all its operations with their words, and the checks with their
// figures, in the one order; every caution of every garment stands on it, and
// what is cut for each.
func TestSittingIsToldWhole(t *testing.T) {
	s := smallSitting(t, nil)
	for _, reader := range Readers() {
		sheet := ComposeSitting(s, Options{For: Reader(reader), FiguresAt: "f/"})
		steps, whole := stepsIn(sheet), flattened(string(sheet.Markdown))
		if len(steps) != len(s.Steps) {
			t.Fatalf("for %s: %d steps, want %d", reader, len(steps), len(s.Steps))
		}
		ops := map[string]process.Operation{}
		for _, o := range s.Operations {
			ops[o.ID] = o
		}
		for k, step := range s.Steps {
			text := flattened(steps[k])
			want := []string{flattened(step.Title), step.Setting.Thread, step.Setting.Needle, step.Setting.Foot, step.Setting.Stitch}
			for _, n := range step.Garments {
				if label := s.Garments[n-1].Label; !strings.Contains(step.Title, label) {
					t.Errorf("the title of step %d, %q, does not name %s", step.Number, step.Title, label)
				}
			}
			if step.Setting.HeatDots > 0 {
				want = append(want, strings.Repeat("•", step.Setting.HeatDots)+" (")
			}
			for _, id := range step.Operations {
				want = append(want, flattened(upper(ops[id].Part)))
				if reader != string(Maker) { // who is told "The same." where it is
					want = append(want, flattened(ops[id].Text))
				}
			}
			for _, c := range s.Checks {
				if c.AfterStep == step.Number {
					want = append(want, flattened(c.What)+": "+length.Format(length.MM(c.Expect), length.Centimetres)+", give or take "+length.Format(length.MM(c.Tolerance), length.Centimetres))
				}
			}
			for _, w := range want {
				if !strings.Contains(text, w) {
					t.Errorf("for %s, step %d lacks %q", reader, step.Number, w)
				}
			}
		}
		var want []string
		for _, g := range s.Garments {
			for _, c := range g.Plan.Cautions {
				want = append(want, flattened(c.Text), flattened(sentence(c.Why)))
			}
			want = append(want, "## What to cut", "### "+g.Label, "Cut 2 pieces for", "Cut 6 pieces for 3 garments")
		}
		want = append(want, "Where there are several of a garment, do each step on all of them", "## Notes on Second row", "Mind the hem.")
		if reader == string(Maker) {
			want = append(want, "Size 2: 86.4 cm instead of 72.4 cm.", "Size 2: 86.4 cm.", "This is size 1 of the job", "One garment after the other, each finished before the next is begun, the changes would take",
				"Your wish, one part at a time", "Working seam by seam")
		}
		for _, w := range want {
			if !strings.Contains(whole, w) {
				t.Errorf("for %s: the sheet lacks %q", reader, w)
			}
		}
		for i, line := range strings.Split(string(sheet.Markdown), "\n") {
			if prose := !strings.HasPrefix(line, "|") && !strings.HasPrefix(line, "#") && !strings.HasPrefix(line, "!["); prose && columns(line) > lineWidth {
				t.Errorf("for %s, line %d is %d columns wide", reader, i+1, columns(line))
			}
		}
		if bytes.ContainsAny(sheet.Markdown, "{}") {
			t.Errorf("for %s: a value is not filled in", reader)
		}
		for _, d := range sheet.Figures {
			wellFormed(t, d)
		}
		if again := ComposeSitting(s, Options{For: Reader(reader), FiguresAt: "f/"}); !bytes.Equal(again.Markdown, sheet.Markdown) {
			t.Errorf("for %s: two sheets of one sitting differ", reader)
		}
	}
}

// The rest of a sitting begun is numbered anew and says what the steps were; units
// and a selection of steps are those asked for.
func TestSittingBegunAndInPart(t *testing.T) {
	whole := smallSitting(t, nil)
	begun := whole.Joint().Begin([]string{"2/side.1"})
	rest := smallSitting(t, begun)
	if len(rest.Operations) >= len(whole.Operations) || len(rest.Operations)+len(begun.Done) != len(whole.Operations) {
		t.Errorf("%d operations, %d of them done, %d left", len(whole.Operations), len(begun.Done), len(rest.Operations))
	}
	text := flattened(string(ComposeSitting(rest, Options{}).Markdown))
	for _, want := range []string{"(was step", "Of the work 2 operations are done already", "taken to be done because what was named waits for it: 2/cut.main."} {
		if !strings.Contains(text, want) {
			t.Errorf("the rest of the sitting lacks %q", want)
		}
	}
	part := ComposeSitting(whole, Options{For: Bench, Units: "in", Steps: []int{4}})
	if steps := stepsIn(part); len(steps) != 1 || !strings.HasPrefix(steps[0], "Step 4 ") {
		t.Errorf("asked for step 4 there are %d steps", len(steps))
	}
	if bytes.Contains(part.Markdown, []byte("## What to cut")) {
		t.Error("a bench that does not cut is told what to cut")
	}
}

// The tables of a sitting have a row for every operation and everything cut, each
// with its garment.
func TestSittingCSV(t *testing.T) {
	s := smallSitting(t, nil)
	read := func(data []byte) [][]string {
		rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		return rows
	}
	rows := read(SittingOperationsCSV(s))
	if len(rows) != len(s.Operations)+1 || rows[0][0] != "garment" || rows[0][2] != "operation" {
		t.Fatalf("%d rows under %v", len(rows), rows[0])
	}
	for k, o := range s.Operations {
		want := ""
		if o.Garment > 0 {
			want = s.Garments[o.Garment-1].Label
		}
		if rows[k+1][0] != want || rows[k+1][2] != o.ID {
			t.Errorf("row %d is %v, want %s of %q", k+1, rows[k+1][:3], o.ID, want)
		}
	}
	pieces := map[string]int{}
	for _, r := range read(SittingCutListCSV(s))[1:] {
		pieces[r[0]]++
	}
	for _, g := range s.Garments {
		if want := len(cutRows(g.Plan)) - 1; pieces[g.Label] != want {
			t.Errorf("%d rows of what is cut for %s, want %d", pieces[g.Label], g.Label, want)
		}
	}
}

// Nothing but scraps goes from a step of one garment to a step of another.
func TestSittingHandsOnWithinGarments(t *testing.T) {
	s := smallSitting(t, nil)
	c := newComposer(s.Joint(), Options{For: Bench})
	at := map[int]process.Step{}
	for _, st := range s.Steps {
		at[st.Number] = st
	}
	handed := 0
	for _, st := range s.Steps {
		for _, g := range append(c.comesFrom(st), c.goesTo(st)...) {
			shared := slices.ContainsFunc(at[g.step].Garments, func(n int) bool { return slices.Contains(st.Garments, n) })
			if !shared && !slices.Equal(g.parts, []string{"scraps"}) {
				t.Errorf("step %d and step %d have no garment in common and hand over %q", st.Number, g.step, g.parts)
			}
			handed++
		}
	}
	if handed < len(s.Steps) {
		t.Errorf("only %d hand-overs in %d steps", handed, len(s.Steps))
	}
}

// In brief, too, every step says whose it is, and has its check figures.
func TestSittingInBrief(t *testing.T) {
	s := smallSitting(t, nil)
	sheet := ComposeSitting(s, Options{Brief: true})
	_, after, _ := strings.Cut(string(sheet.Markdown), "## The steps\n")
	after, _, _ = strings.Cut(after, "\n## ")
	lines := strings.Split(after, "\n- [ ] ")[1:]
	if len(lines) != len(s.Steps) {
		t.Fatalf("%d lines, want %d", len(lines), len(s.Steps))
	}
	for k, step := range s.Steps {
		line := flattened(lines[k])
		for _, n := range step.Garments {
			if !strings.Contains(line, s.Garments[n-1].Label) {
				t.Errorf("step %d does not say that it is of %s: %s", step.Number, s.Garments[n-1].Label, line)
			}
		}
		for _, c := range s.Checks {
			if c.AfterStep == step.Number && !strings.Contains(line, flattened(c.What)+": "+length.Format(length.MM(c.Expect), length.Centimetres)) {
				t.Errorf("step %d does not have its check %q: %s", step.Number, c.What, line)
			}
		}
	}
}

// Where a seam lies is drawn on its own garment, as in the plan of that by itself.
func TestSittingDrawsSeamsOnTheirGarment(t *testing.T) {
	s := smallSitting(t, nil)
	for _, reader := range Readers() {
		c := newComposer(s.Joint(), Options{For: Reader(reader), FiguresAt: "f/"})
		c.garments = s.Garments
		drawn := 0
		for _, g := range s.Garments {
			alone := newComposer(g.Plan, Options{For: Reader(reader), FiguresAt: "f/"})
			for _, own := range g.Plan.Seams {
				want, got := alone.whereFigure(own), c.whereFigure(c.seams[g.Name(own.Name)])
				want, got = append(want, alone.whereAll([]process.Seam{own}, whereLess)...), append(got, c.whereAll([]process.Seam{c.seams[g.Name(own.Name)]}, whereLess)...)
				if len(got) != len(want) {
					t.Fatalf("%s of %s: %d drawings, want %d", own.Name, g.Label, len(got), len(want))
				}
				for k := range got {
					drawn++
					if d := cmp.Diff(want[k].Items, got[k].Items); d != "" {
						t.Errorf("%s of %s is drawn otherwise: %s", own.Name, g.Label, d)
					}
					if !strings.Contains(got[k].Title, g.Label) {
						t.Errorf("the drawing of %s is called %q", own.Name, got[k].Title)
					}
				}
			}
		}
		if drawn < 10 {
			t.Errorf("only %d drawings", drawn)
		}
		both := c.whereAll([]process.Seam{c.seams["1/side"], c.seams["2/side"]}, whereLess)
		if len(both) != 2 {
			t.Fatalf("the side seams of two garments are in %d drawings", len(both))
		}
		for k, g := range s.Garments {
			if svg := string(both[k].SVG()); !strings.Contains(svg, "("+g.Label+")") {
				t.Errorf("the drawing does not say that it is of %s", g.Label)
			}
		}
	}
}
