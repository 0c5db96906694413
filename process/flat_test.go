package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/templates"
)

// A band that a later seam closes is trimmed level with the edge; it is not
// told how a ring would be banded. Common practice, no source.
func TestBandWorkedFlatHasNoRing(t *testing.T) {
	shelf := loadShelf(t)
	j := &process.Job{Make: text("open-jacket")}
	p := plan(t, jobIn(t, j, "linen-medium"), rooms()[0], shelf)
	s := seamOf(t, p, "sleeve")
	if s.Work != "flat" {
		t.Fatalf("the sleeve band is worked %q", s.Work)
	}
	k := slices.IndexFunc(p.Operations, func(o process.Operation) bool {
		return o.Seam == "sleeve" && o.Does == "trim"
	})
	if said := p.Operations[k].Text; strings.Contains(said, "ring") || !strings.Contains(said, "a later seam takes them in") {
		t.Errorf("trimming its ends says %q", said)
	}
}

// jobIn fills in every cloth of a job's garment with one cloth.
func jobIn(t testing.TB, j *process.Job, cloth string) *process.Job {
	t.Helper()
	full := jobFor(garmentOf(t, j.Make.Value), cloth, cloth)
	full.Choices, full.Favour, full.Seams = j.Choices, j.Favour, j.Seams
	return full
}

func garmentOf(t testing.TB, name string) *templates.Garment {
	t.Helper()
	g, err := templates.Load(name)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func seamOf(t testing.TB, p *process.Plan, name string) process.Seam {
	t.Helper()
	for _, s := range p.Seams {
		if s.Name == name {
			return s
		}
	}
	t.Fatalf("no seam %s", name)
	return process.Seam{}
}

// A closed edge that a later seam could close is worked flat or in the round, as the
// planner decides, and the plan says why: a narrow sleeve and a child's flat, a wide
// one in the round where neat work is favoured; its order follows. Of edges that run
// all the way round nothing is to be decided. Common practice, no source.
func TestFlatOrRound(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct {
		garment, seam, favour string
		child                 bool
		work, because         string
	}{
		{"shirt-blouse", "sleeve-hem", "neat", false, "flat", "is too small to turn under the needle"},
		{"boxy-top", "sleeve", "", false, "flat", "flat work is easier to see and press"},
		{"boxy-top", "sleeve", "neat", false, "round", "it covers the end of the side and underarm seam"},
		{"boxy-top", "sleeve", "quick", false, "flat", "flat work is easier to see and press"},
		{"boxy-top", "sleeve", "neat", true, "flat", "a child's size makes too small a ring"},
		{"open-jacket", "sleeve", "neat", false, "flat", "takes in the ends of the band"},
		{"pull-on-skirt", "hem", "", false, "round", "runs all the way round"},
	} {
		g := garmentOf(t, tt.garment)
		g.Child = tt.child
		j := jobFor(g, "cotton-lawn", "cotton-lawn")
		j.Favour = text(tt.favour)
		if tt.garment == "shirt-blouse" {
			j.Choices = form.Pairs[form.Text]{pair("sleeve", "short")}
		}
		p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: rooms()[0], Shelf: shelf}, order.Options{Nodes: 2_000})
		if err != nil {
			t.Errorf("%s: %v", tt.garment, err)
			continue
		}
		checkOrder(t, p)
		s := seamOf(t, p, tt.seam)
		if s.Work != tt.work || !strings.Contains(s.WorkBecause, tt.because) {
			t.Errorf("%s favouring %q, a child's: %v: %s is worked %q because %s", tt.garment, tt.favour, tt.child, tt.seam, s.Work, s.WorkBecause)
		}
		if tt.garment != "boxy-top" {
			continue
		}
		first := func(seam string) int {
			return slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.Seam == seam })
		}
		if flat := first(tt.seam) < first("side"); flat != (tt.work == "flat") {
			t.Errorf("%s favouring %q: worked %s, %s is begun before the side seam: %v", tt.garment, tt.favour, tt.work, tt.seam, flat)
		}
	}
}

// Both ways occur on the shelf, each with its reason, and an edge without a choice
// has neither.
func TestWaysOfWorkOnTheShelf(t *testing.T) {
	shelf := loadShelf(t)
	ways := map[string]int{}
	for _, name := range templates.Names() {
		g := garmentOf(t, name)
		p, err := process.Work(t.Context(), process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g, Workroom: rooms()[0], Shelf: shelf}, order.Options{Nodes: 1})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, s := range p.Seams {
			ways[s.Work]++
			if (s.Work == "") != (s.WorkBecause == "") {
				t.Errorf("%s: %s is worked %q because %q", name, s.Name, s.Work, s.WorkBecause)
			}
		}
	}
	if ways["flat"] < 5 || ways["round"] < 15 {
		t.Errorf("edges of the shelf by how they are worked: %v", ways)
	}
}
