package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
)

// sewn is the skirt in one cloth, one line of it sewn as the job insists.
func sewn(t *testing.T, cloth, line, construction, machine string) *process.Plan {
	t.Helper()
	g := garmentOf(t, "pull-on-skirt")
	j := jobFor(g, cloth, cloth)
	j.Seams = form.Pairs[form.Text]{pair(line, construction+" anyway")}
	p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: roomOf("steam", machine), Shelf: loadShelf(t)},
		order.Options{Nodes: 20_000})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Needle, thread and stitch go by the row. Stretch twin 4.0/75 on a knit, jeans
// 90 to 110 and hammered crossings in denim, 3.5 to 4 mm of topstitching on it:
// common practice, no source. Topstitching 90/14 to
// 100/16 with thread 30: a domestic machine manual's needle table. 110/18 for
// very heavy work: Choose regular needle size by fabric weight.
func TestNeedleAndThreadOfTheRow(t *testing.T) {
	tests := []struct {
		cloth, line, construction string
		words                     string // of the row's text
		needle, thread, kind      string
		mm                        float64
	}{
		{"cotton-jersey", "hem", "twin-needle", "stitch with the twin needle", "twin 4.0/75", "reed green", "All-purpose", 3},
		{"denim", "side", "mock-felled", "second row", "100/16 topstitch", "reed green topstitching", "Topstitching thread, ticket 30", 3.5},
		{"denim", "side", "plain-open-zigzagged", "Stitch", "100/16 jeans", "reed green", "", 3},
		{"denim", "hem", "narrow-double-fold", "", "110/18 jeans", "reed green", "", 3},
		{"cotton-lawn", "side", "mock-felled", "second row", "70/10 sharp", "reed green", "", 2},
	}
	for _, tt := range tests {
		t.Run(tt.cloth+"/"+tt.construction, func(t *testing.T) {
			p := sewn(t, tt.cloth, tt.line, tt.construction, "zigzag-machine")
			k := slices.IndexFunc(p.Operations, func(o process.Operation) bool {
				return o.Seam == tt.line && o.Does == "stitch" && (tt.kind == "" || strings.Contains(o.Text, tt.words))
			})
			if k < 0 {
				t.Fatalf("no such row: %s", tt.words)
			}
			set := p.Operations[k].Setting
			if set.Needle != tt.needle || set.Thread != tt.thread || set.StitchMM != tt.mm {
				t.Errorf("needle %s, thread %s, stitch %.1f mm", set.Needle, set.Thread, set.StitchMM)
			}
			if !slices.ContainsFunc(p.Needles, func(n process.NeedleUse) bool { return n.Needle == tt.needle && len(n.Hints) > 0 }) {
				t.Errorf("%s is not listed with its hints: %+v", tt.needle, p.Needles)
			}
			if !slices.ContainsFunc(p.Thread, func(x process.Thread) bool {
				return x.Colour == tt.thread && strings.HasPrefix(x.Kind, tt.kind)
			}) {
				t.Errorf("%s, %s is not listed: %+v", tt.thread, tt.kind, p.Thread)
			}
		})
	}
}

// Topstitching thread runs through the needle alone; sewing thread lies in the
// bobbin below it. A domestic machine manual's needle table; that the bobbin
// keeps sewing thread: common practice, no source.
func TestBobbinUnderTopstitching(t *testing.T) {
	for _, x := range sewn(t, "denim", "side", "mock-felled", "zigzag-machine").Thread {
		if top := strings.HasSuffix(x.Colour, "topstitching"); top && (x.LooperM != 0 || x.Bobbins != 0 || x.NeedleM <= 0) {
			t.Errorf("%+v", x)
		}
	}
}

// The bobbin is a place of its own: topstitching thread above sewing thread of one
// colour rethreads the needle and leaves the bobbin where it is.
func TestThreadsChangeEachByItself(t *testing.T) {
	p := sewn(t, "denim", "side", "mock-felled", "zigzag-machine")
	m, err := loadShelf(t).Machine("zigzag-machine")
	if err != nil {
		t.Fatal(err)
	}
	above := 0
	for _, c := range p.Changes {
		switch {
		case c.From == "":
		case c.What == "bobbin":
			t.Errorf("before step %d the bobbin is changed from %s to %s", c.BeforeStep, c.From, c.To)
		case c.What == "thread":
			above++
			if c.Minutes != m.Minutes.Thread {
				t.Errorf("before step %d the needle takes %g minutes to thread, want %g", c.BeforeStep, c.Minutes, m.Minutes.Thread)
			}
		}
	}
	if above == 0 || p.Totals.ThreadChanges != above {
		t.Errorf("the needle is rethreaded %d times, %d changes of thread are told", above, p.Totals.ThreadChanges)
	}
}
