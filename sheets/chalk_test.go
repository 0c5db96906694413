package sheets

import (
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams/length"
)

// The table says every point of the plan once, in its order and in the reader's
// units; a brief sheet leaves it out.
func TestChalkTable(t *testing.T) {
	tables := 0
	for _, n := range plans(t) {
		var want []process.ChalkPoint
		for _, p := range n.plan.Pieces {
			want = append(append(want, p.Chalk.Points...), p.Chalk.Marks...)
		}
		for _, units := range []string{"cm", "in"} {
			md := Compose(n.plan, Options{Units: units}).Markdown
			_, rest, ok := strings.Cut(string(md), "### Marking straight on the cloth\n")
			if ok != (len(want) > 0) {
				t.Fatalf("%s: chalk table %t for %d points", n.name, ok, len(want))
			}
			if ok {
				tables++
			}
			rest, _, _ = strings.Cut(rest, "\n##")
			var rows []string
			for line := range strings.Lines(rest) {
				if strings.HasPrefix(line, "| ") && !strings.HasPrefix(line, "| -") && !strings.Contains(line, "| Where") {
					rows = append(rows, line)
				}
			}
			style := length.Centimetres
			if units == "in" {
				style = length.Inches
			}
			if len(rows) != len(want) {
				t.Fatalf("%s, %s: %d rows for %d points", n.name, units, len(rows), len(want))
			}
			for i, p := range want {
				cells := strings.Split(rows[i], "|")
				if p.Number == 1 && p.By != "begin" {
					continue // back at the first point
				}
				for k, mm := range map[int]float64{3: p.Down, 4: p.In} {
					if got := strings.TrimSpace(cells[k]); got != length.Format(length.MM(mm), style) {
						t.Errorf("%s, %s: row %d says %q for %g mm", n.name, units, i+1, got, mm)
					}
				}
			}
		}
		if md := Compose(n.plan, Options{Brief: true}).Markdown; strings.Contains(string(md), "Marking straight") {
			t.Errorf("%s: a brief sheet has the chalk table", n.name)
		}
	}
	if tables == 0 {
		t.Error("no plan has points to chalk")
	}
}

// How the chalk comes to a point, in words.
func TestChalkWords(t *testing.T) {
	points := []process.ChalkPoint{
		{Number: 1, Before: "side", After: "top", By: "begin"},
		{Number: 2, Before: "top", After: "neck", By: "straight", In: 100},
		{Number: 3, Before: "neck", After: "shoulder", By: "bow", Depth: -20},
		{Number: 4, Before: "shoulder", After: "hem", By: "bow", Depth: 15},
		{Number: 5, Before: "hem", After: "hem", By: "smooth"},
		{Number: 6, Before: "hem", After: "hem", By: "straight"},
		{Number: 1, Before: "side", After: "top", By: "straight"},
	}
	plan := &process.Plan{Units: "cm", Pieces: []process.Piece{{Title: "yoke", Chalk: process.Chalk{Within: 2, Points: points}}}}
	c := newComposer(plan, Options{})
	for i, want := range []struct{ where, draw string }{
		{"side meets top", "begin here"}, {"top meets neck", "straight from 1"}, {"neck meets shoulder", "curve from 2, 20 mm into the piece"},
		{"shoulder meets hem", "curve from 3, 15 mm outwards"}, {"along the hem", "smoothly on from 4"}, {"corner at the hem", "straight from 5"},
		{"side meets top", "straight from 6"},
	} {
		if got := string(c.chalkCorner(points[i])); got != want.where {
			t.Errorf("point %d: %q, want %q", i+1, got, want.where)
		}
		if got := string(c.chalkLine(points, i)); got != want.draw {
			t.Errorf("point %d: %q, want %q", i+1, got, want.draw)
		}
	}
}

// What a chalk line could not show is nothing, in either unit; what it could
// keeps its figure.
func TestChalkedDistances(t *testing.T) {
	for _, tt := range []struct {
		units string
		mm    float64
		want  string
	}{{"cm", 0.01, "0 mm"}, {"cm", 0.8, "0.8 mm"}, {"in", 0.5, "0 in"}, {"in", 0.8, "¹⁄₁₆ in"}, {"in", -0.2, "0 in"}} {
		c := newComposer(&process.Plan{Units: tt.units}, Options{Units: tt.units})
		if got := string(c.chalked(tt.mm)); got != tt.want {
			t.Errorf("%g mm in %s: %q, want %q", tt.mm, tt.units, got, tt.want)
		}
	}
}
