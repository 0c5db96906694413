package sheets

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/sheets/pdf/typeface"
)

// readers tries a law on every plan, for every reader and detail.
func readers(t *testing.T, test func(t *testing.T, p *process.Plan, o Options, md []byte)) {
	for _, n := range plans(t) {
		for _, r := range Readers() {
			for _, brief := range []bool{false, true} {
				o := Options{For: Reader(r), Brief: brief, FiguresAt: "figures/"}
				t.Run(fmt.Sprintf("%s/%s brief %t", n.name, r, brief), func(t *testing.T) {
					test(t, n.plan, o, Compose(n.plan, o).Markdown)
				})
			}
		}
	}
}

// Whoever a sheet is for, every operation of the plan is ticked once, in its
// step, with all its words, and every check is there.
func TestEveryReaderHasEveryOperationOnce(t *testing.T) {
	readers(t, func(t *testing.T, p *process.Plan, o Options, md []byte) {
		if o.Brief && o.For == Maker {
			return // a line for each step, which TestEveryStepInOneLine looks at
		}
		steps := under(t, parts(t, md), "The steps")[1:]
		if len(steps) != len(p.Steps) {
			t.Fatalf("%d steps, not %d", len(steps), len(p.Steps))
		}
		ops := map[string]process.Operation{}
		for _, op := range p.Operations {
			ops[op.ID] = op
		}
		checks, shown := 0, 0
		for i, s := range p.Steps {
			var items []string
			for _, w := range ticks(steps[i].blocks, md) {
				switch {
				case strings.HasPrefix(w, "Check. "):
					checks++
				case strings.HasPrefix(w, "Show your work. "):
					shown++
				default:
					items = append(items, w)
				}
			}
			if len(items) != len(s.Operations) {
				t.Fatalf("step %d has %d operations, not %d", s.Number, len(items), len(s.Operations))
			}
			for k, id := range s.Operations {
				if !strings.Contains(items[k], spaced(ops[id].Text)) && (o.For != Maker || !strings.Contains(items[k], "The same.")) {
					t.Errorf("%s does not say %q: %s", id, ops[id].Text, items[k])
				}
			}
		}
		if checks != len(p.Checks) {
			t.Errorf("%d checks, not %d", checks, len(p.Checks))
		}
		if o.For == Class && shown == 0 {
			t.Error("a learner shows her work nowhere")
		}
		if bytes.ContainsRune(md, '{') {
			t.Error("a placeholder is left")
		}
	})
}

// A maker's brief sheet ticks every step once, in order, with what each of its
// operations begins with and on what, and with every check's figure.
func TestEveryStepInOneLine(t *testing.T) {
	for _, n := range plans(t) {
		md := Compose(n.plan, Options{Brief: true}).Markdown
		lines := ticks(under(t, parts(t, md), "The steps")[0].blocks, md)
		if len(lines) != len(n.plan.Steps) {
			t.Fatalf("%s: %d lines for %d steps", n.name, len(lines), len(n.plan.Steps))
		}
		c := newComposer(n.plan, Options{})
		for i, s := range n.plan.Steps {
			if !strings.HasPrefix(lines[i], fmt.Sprintf("%d · ", s.Number)) {
				t.Errorf("%s: line %d is %s", n.name, i+1, lines[i])
			}
			for _, id := range s.Operations {
				o := c.operations[id]
				first, _ := opens(sentence(o.Text))
				if !strings.Contains(lines[i], spaced(first)) || !strings.Contains(strings.ToLower(lines[i]), strings.ToLower(o.Part)) {
					t.Errorf("%s: step %d does not say %q of %s: %s", n.name, s.Number, first, o.Part, lines[i])
				}
			}
			for _, k := range n.plan.Checks {
				if k.AfterStep == s.Number && !strings.Contains(lines[i], spaced(string(c.mm(k.Expect)))) {
					t.Errorf("%s: step %d does not check %s: %s", n.name, s.Number, k.What, lines[i])
				}
			}
		}
	}
}

// What an assistant is handed comes from earlier steps, what she hands on goes
// to later ones, and every thing that the plan says must come first from
// another step is with her, but for the trial of a machine, which hands nothing on.
func TestHandedAndHandedOn(t *testing.T) {
	for _, n := range plans(t) {
		c := newComposer(n.plan, Options{For: Bench})
		from := map[[2]int]bool{}
		for _, s := range n.plan.Steps {
			for _, g := range c.comesFrom(s) {
				if g.step >= s.Number {
					t.Errorf("%s: step %d is handed %q from step %d", n.name, s.Number, g.parts, g.step)
				}
				from[[2]int{g.step, s.Number}] = true
			}
			for _, g := range c.goesTo(s) {
				if g.step <= s.Number {
					t.Errorf("%s: step %d hands %q on to step %d", n.name, s.Number, g.parts, g.step)
				}
			}
		}
		// Through what is told, every step reaches all the steps that it rests on.
		rests := map[int]map[int]bool{}
		for _, s := range n.plan.Steps {
			rests[s.Number] = map[int]bool{}
			for k := range from {
				if k[1] == s.Number {
					rests[s.Number][k[0]] = true
					for r := range rests[k[0]] {
						rests[s.Number][r] = true
					}
				}
			}
			for _, id := range s.Operations {
				for _, a := range c.operations[id].After {
					if readies(c.operations[a.ID]) || c.operations[id].Does == "thread" {
						continue
					}
					if b := c.stepOf[a.ID]; b != s.Number && b != 0 && !rests[s.Number][b] {
						t.Errorf("%s: step %d rests on step %d, which it is not told", n.name, s.Number, b)
					}
				}
			}
		}
	}
}

// Whoever cuts the pieces out is not handed them in that step.
func TestCutterIsHandedNoPieces(t *testing.T) {
	for _, n := range plans(t) {
		c := newComposer(n.plan, Options{For: Bench})
		cut := 0
		for _, s := range n.plan.Steps {
			if c.cutsOut(s) {
				cut++
				d := newComposer(n.plan, Options{For: Bench})
				d.handed(s, map[string]bool{})
				if said := d.out.String(); strings.Contains(said, d.say.bench.handed) && len(d.comesFrom(s)) == 0 {
					t.Errorf("%s: step %d, in which the pieces are cut, is handed some: %s", n.name, s.Number, said)
				}
			}
		}
		if cut == 0 {
			t.Errorf("%s: nobody cuts", n.name)
		}
	}
}

// A part of the work is told with what it needs and nothing of other steps.
func TestSomeSteps(t *testing.T) {
	p := fixture(t, "shell-top")
	md := Compose(p, Options{For: Bench, Steps: []int{3, 4}}).Markdown
	var titles []string
	for _, q := range under(t, parts(t, md), "The steps")[1:] {
		titles = append(titles, q.title[:6])
	}
	if !slices.Equal(titles, []string{"Step 3", "Step 4"}) {
		t.Errorf("steps %q", titles)
	}
	if bytes.Contains(md, []byte("What to cut")) {
		t.Error("who cuts nothing is told what to cut")
	}
}

// A brief sheet is a good deal shorter and still has every caution.
func TestBriefIsShort(t *testing.T) {
	for _, n := range plans(t) {
		full, brief := Compose(n.plan, Options{FiguresAt: "f/"}).Markdown, Compose(n.plan, Options{FiguresAt: "f/", Brief: true}).Markdown
		if len(brief)*4 > len(full)*3 {
			t.Errorf("%s: %d bytes in brief, %d in full", n.name, len(brief), len(full))
		}
		said := spaced(string(brief))
		for _, k := range n.plan.Cautions {
			first, _ := opens(sentence(k.Text))
			if !strings.Contains(said, spaced(string(plain(first)))) {
				t.Errorf("%s: no %q", n.name, first)
			}
		}
	}
}

// The glossary has just the terms that are used, and signs that can be printed.
func TestGlossary(t *testing.T) {
	terms, err := readTerms()
	if err != nil {
		t.Fatal(err)
	}
	var faces typeface.Faces
	for i, q := range terms {
		if i > 0 && strings.ToLower(terms[i-1].Term) >= strings.ToLower(q.Term) {
			t.Errorf("%q does not follow %q in the alphabet", q.Term, terms[i-1].Term)
		}
		if q.Means == "" || q.Source == "" || strings.HasSuffix(q.Means, ".") {
			t.Errorf("%q means %q, by %q", q.Term, q.Means, q.Source)
		}
		for _, r := range q.Term + q.Means {
			if _, ok := faces.Advance(0, r); !ok {
				t.Errorf("%q has a sign that cannot be printed: %q", q.Term, r)
			}
		}
	}
	for _, n := range plans(t) {
		md := Compose(n.plan, Options{For: Class, FiguresAt: "f/"}).Markdown
		before, after, ok := strings.Cut(string(md), "## Words used here")
		if !ok {
			t.Fatalf("%s has no glossary", n.name)
		}
		after, _, _ = strings.Cut(after, "\n## ")
		for _, q := range terms {
			used := q.in(wordsOf(before))
			told := strings.Contains(after, "**"+upper(q.Term)+"**")
			if used != told {
				t.Errorf("%s: %q is used: %t, and told: %t", n.name, q.Term, used, told)
			}
		}
	}
}

// Figures that travel inside the Markdown are the figures.
func TestInlineFigures(t *testing.T) {
	s := Compose(fixture(t, "shell-top"), Options{FiguresAt: "figures/"})
	md := s.Inline()
	if bytes.Contains(md, []byte("](figures/")) || bytes.Count(md, []byte("](data:image/svg+xml;base64,")) != len(s.Figures) {
		t.Error("figures are left outside")
	}
	if got, want := skeleton(md), skeleton(s.Markdown); !slices.Equal(got, want) {
		t.Error("the sheet is made of something else")
	}
}
