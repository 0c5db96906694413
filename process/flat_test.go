package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
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
		return o.Seam == "sleeve" && o.Does == "pin"
	})
	if said := p.Operations[k].Text; strings.Contains(said, "ring") || !strings.Contains(said, "a later seam takes them in") {
		t.Errorf("pinning says %q", said)
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
