package sheets

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/yuin/goldmark/ast"

	"bodkin/process"
	"bodkin/seams/length"
)

// styles tries a law on every plan, in both ways of writing lengths.
func styles(t *testing.T, test func(t *testing.T, p *process.Plan, style length.Style, md []byte, all []part)) {
	for _, n := range plans(t) {
		for _, style := range []length.Style{length.Centimetres, length.Inches} {
			t.Run(n.name+"/"+style.String(), func(t *testing.T) {
				md := Compose(n.plan, Options{Units: style.String(), FiguresAt: "figures/"}).Markdown
				test(t, n.plan, style, md, parts(t, md))
			})
		}
	}
}

func TestSectionsStandInOrder(t *testing.T) {
	styles(t, func(t *testing.T, p *process.Plan, _ length.Style, _ []byte, all []part) {
		if all[0].level != 1 || all[0].title != cmp.Or(p.Title, p.GarmentName) {
			t.Errorf("the sheet opens with %q at level %d", all[0].title, all[0].level)
		}
		var got []string
		for _, q := range all[1:] {
			if q.level == 1 {
				t.Errorf("a second title: %q", q.title)
			}
			if q.level == 2 {
				got = append(got, q.title)
			}
		}
		want := []string{"What to lay out", "Cautions", "What to cut", "Seams at a glance", "The steps", "Why this order", "Notices", "Notes"}
		want = slices.DeleteFunc(want, func(s string) bool {
			return s == "Notes" && p.Notes == "" || s == "Cautions" && len(p.Cautions) == 0 || s == "Notices" && !slices.Contains(got, s)
		})
		if !slices.Equal(got, want) {
			t.Errorf("sections are %q, not %q", got, want)
		}
	})
}

// Every operation of the plan is ticked exactly once, in the step that holds
// it and in its order there, and its words are on the sheet.
func TestEveryOperationOnce(t *testing.T) {
	styles(t, func(t *testing.T, p *process.Plan, _ length.Style, md []byte, all []part) {
		steps := under(t, all, "The steps")[1:]
		if len(steps) != len(p.Steps) {
			t.Fatalf("%d steps on the sheet, %d in the plan", len(steps), len(p.Steps))
		}
		ops := map[string]process.Operation{}
		for _, o := range p.Operations {
			ops[o.ID] = o
		}
		seen := map[string]bool{}
		for i, s := range p.Steps {
			if !strings.HasPrefix(steps[i].title, fmt.Sprintf("Step %d · ", s.Number)) || !strings.HasSuffix(steps[i].title, spaced(s.Title)) {
				t.Errorf("step %d is headed %q", s.Number, steps[i].title)
			}
			items := slices.DeleteFunc(ticks(steps[i].blocks, md), func(w string) bool { return strings.HasPrefix(w, "Check. ") })
			if len(items) != len(s.Operations) {
				t.Errorf("step %d has %d operations on the sheet, %d in the plan", s.Number, len(items), len(s.Operations))
				continue
			}
			before := process.Operation{}
			for k, id := range s.Operations {
				o := ops[id]
				if seen[id] {
					t.Errorf("%s is in two steps", id)
				}
				seen[id] = true
				if !strings.HasPrefix(strings.ToLower(items[k]), strings.ToLower(spaced(o.Part))) {
					t.Errorf("%s is about %q: %s", id, o.Part, items[k])
				}
				said := strings.Contains(items[k], spaced(o.Text)) && strings.Contains(strings.ToLower(items[k]), strings.ToLower(spaced(o.Good)))
				same := o.Text == before.Text && o.Good == before.Good && strings.Contains(items[k], "The same.")
				if !said && !same {
					t.Errorf("%s does not say %q and %q: %s", id, o.Text, o.Good, items[k])
				}
				before = o
			}
		}
		if len(seen) != len(p.Operations) {
			t.Errorf("%d operations on the sheet, %d in the plan", len(seen), len(p.Operations))
		}
	})
}

// Every change but going to the station stands in its step before the first
// box, and no step claims a change that the plan does not have.
func TestChangesBeforeTheirStep(t *testing.T) {
	styles(t, func(t *testing.T, p *process.Plan, _ length.Style, md []byte, all []part) {
		steps := under(t, all, "The steps")[1:]
		for i, s := range p.Steps {
			quote := ""
			for _, b := range steps[i].blocks {
				if b.Kind() == ast.KindList {
					break
				}
				if b.Kind() == ast.KindBlockquote {
					quote = words(b, md)
				}
			}
			n := 0
			for _, c := range p.Changes {
				if c.BeforeStep != s.Number || c.What == "move" {
					continue
				}
				n++
				if c.What == "heat" {
					if !strings.Contains(quote, "heat") {
						t.Errorf("step %d does not call out its heat: %q", s.Number, quote)
					}
					continue
				}
				whats := []string{c.What}
				if c.What == "thread" {
					whats = append(whats, "thread and bobbin", "thread and loopers") // in one where both are alike
				}
				want := " " + c.To
				if c.From != "" {
					want = " from " + c.From + " to " + c.To
				}
				if c.What == "foot" && c.From == "" {
					whats, want = []string{""}, c.To
				}
				if !slices.ContainsFunc(whats, func(w string) bool { return strings.Contains(quote, spaced(w+want)) }) {
					t.Errorf("step %d does not call out %q: %q", s.Number, want, quote)
				}
			}
			if (quote != "") != (n > 0) {
				t.Errorf("step %d has %d changes and says %q", s.Number, n, quote)
			}
		}
	})
}

// The figures of every check are the plan's own, in the sheet's units.
func TestChecksSayTheirFigures(t *testing.T) {
	styles(t, func(t *testing.T, p *process.Plan, style length.Style, md []byte, all []part) {
		steps := under(t, all, "The steps")[1:]
		said := 0
		for i, s := range p.Steps {
			var got, want []string
			for _, w := range ticks(steps[i].blocks, md) {
				if c, ok := strings.CutPrefix(w, "Check. "); ok {
					got = append(got, c)
					said++
				}
			}
			for _, k := range p.Checks {
				if k.AfterStep == s.Number {
					w := spaced(k.What) + ": " + length.Format(length.MM(k.Expect), style)
					if k.Tolerance > 0 {
						w += ", give or take " + length.Format(length.MM(k.Tolerance), style)
					}
					want = append(want, w+".")
				}
			}
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("step %d checks %q, not %q", s.Number, got, want)
			}
		}
		if said != len(p.Checks) {
			t.Errorf("%d checks on the sheet, %d in the plan", said, len(p.Checks))
		}
	})
}

// A check stands straight after its operation: there it can still be mended.
func TestCheckFollowsItsOperation(t *testing.T) {
	p := fixture(t, "shell-top")
	md := Compose(p, Options{}).Markdown
	at := func(s string) int {
		i := strings.Index(strings.Join(strings.Fields(string(md)), " "), s)
		if i < 0 {
			t.Fatalf("no %q on the sheet", s)
		}
		return i
	}
	trim, check, turn := at("Trim both allowances"), at("Shoulder seam: trimmed allowance"), at("Turn the front")
	if !(trim < check && check < turn) {
		t.Errorf("trimming at %d, its check at %d, turning at %d", trim, check, turn)
	}
}

func TestEverySeamAtAGlance(t *testing.T) {
	styles(t, func(t *testing.T, p *process.Plan, style length.Style, md []byte, all []part) {
		glance := under(t, all, "Seams at a glance")
		found := tables(glance[0].blocks, md)
		if len(found) != 1 || len(found[0]) != len(p.Seams)+1 {
			t.Fatalf("the glance has %d tables", len(found))
		}
		titles := map[string]bool{}
		for _, g := range glance[1:] {
			titles[g.title] = true
		}
		for i, s := range p.Seams {
			row := found[0][i+1]
			if !strings.EqualFold(row[0], s.Title) || row[1] != s.ConstructionTitle {
				t.Errorf("row %d is %q, not the %s sewn as %s", i, row, s.Title, s.ConstructionTitle)
			}
			for cell, mm := range map[int]float64{3: s.Allowance, 4: s.Finished} {
				want := length.Format(length.MM(mm), style)
				if mm == 0 {
					want = "–"
				}
				if row[cell] != want && !(cell == 3 && strings.Contains(row[cell], want)) {
					t.Errorf("%s: cell %d is %q, not %q", s.Name, cell, row[cell], want)
				}
			}
			if !strings.HasSuffix(row[5], length.Format(length.MM(s.Length), style)) {
				t.Errorf("%s is %q long", s.Name, row[5])
			}
			if !titles[s.ConstructionTitle] {
				t.Errorf("%s has no part of its own", s.ConstructionTitle)
			}
		}
	})
}

// What is cut is on the sheet with the plan's counts and sizes.
func TestEverythingToCut(t *testing.T) {
	styles(t, func(t *testing.T, p *process.Plan, style length.Style, md []byte, all []part) {
		mm := func(v float64) string { return length.Format(length.MM(v), style) }
		var rows [][]string
		for _, q := range under(t, all, "What to cut") {
			for _, table := range tables(q.blocks, md) {
				rows = append(rows, table[1:]...)
			}
		}
		holds := func(what string, cells ...string) {
			t.Helper()
			if !slices.ContainsFunc(rows, func(row []string) bool {
				return !slices.ContainsFunc(cells, func(c string) bool {
					return !slices.ContainsFunc(row, func(r string) bool { return strings.EqualFold(r, c) })
				})
			}) {
				t.Errorf("%s: no row with %q", what, cells)
			}
		}
		for _, q := range p.Pieces {
			holds(q.Name, q.Title, fmt.Sprint(q.Count), mm(q.Width)+" × "+mm(q.Height))
			for _, e := range q.Edges {
				if e.Seam != "fold" && e.Allowance > 0 {
					holds(q.Name+" "+e.Name, q.Title, mm(e.Length), mm(e.Allowance))
				}
			}
		}
		for _, s := range p.Strips {
			holds(s.Name, s.Title, mm(s.CutWidth), fmt.Sprint(s.Lengths*s.Count), mm(s.EachLength))
		}
		for _, f := range p.Interfacing {
			holds(f.Name, f.Title, f.MaterialTitle, fmt.Sprint(f.Count), mm(f.Cut[0])+" × "+mm(f.Cut[1]))
		}
	})
}

// The order's figures on the sheet agree with each other as printed.
func TestOrderAddsUp(t *testing.T) {
	for _, c := range []struct {
		here, bound, by float64
		proved          bool
		want            []string
	}{
		{13.9, 13.9, 22.65, true, []string{"take 13.9 min", "That is proved", "takes 8.8 min more"}},
		{13.9, 12, 13.9, false, []string{"less than 12 min", "is not proved", "takes as long for changes"}},
		{14, 14, 13, true, []string{"takes 1 min less"}},
	} {
		p := fixture(t, "shell-top")
		p.Order.ChangeMinutes, p.Order.BoundMinutes, p.Order.SeamBySeamMinutes, p.Order.Proved = c.here, c.bound, c.by, c.proved
		md := Compose(p, Options{}).Markdown
		why := ""
		for _, b := range under(t, parts(t, md), "Why this order")[0].blocks {
			why += words(b, md) + " "
		}
		for _, w := range c.want {
			if !strings.Contains(why, w) {
				t.Errorf("%v: no %q in %s", c, w, why)
			}
		}
	}
}

func TestOneAndMany(t *testing.T) {
	p := fixture(t, "shell-top")
	p.Thread[0].Bobbins, p.Thread[1].Bobbins = 1, 3
	p.Totals.Operations, p.Totals.Steps = 1, 1
	one := string(Compose(p, Options{}).Markdown)
	p.Quantity = 24
	many := string(Compose(p, Options{}).Markdown)
	for _, c := range []struct{ sheet, want string }{
		{one, "| 1 bobbin "}, {one, "| 3 bobbins "}, {one, "1 operation in 1 step "}, {one, ", 1 garment."}, {many, ", 24 garments."},
	} {
		if !strings.Contains(c.sheet, c.want) {
			t.Errorf("no %q on the sheet", c.want)
		}
	}
}
