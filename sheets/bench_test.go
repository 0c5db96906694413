package sheets

import (
	"slices"
	"strconv"
	"testing"

	"bodkin/process"
)

// fortySteps is the fixture with its steps told twice: 40 steps and more.
func fortySteps(b *testing.B) *process.Plan {
	p := fixture(b, "shell-top")
	n := len(p.Steps)
	for _, s := range slices.Clone(p.Steps) {
		s.Number += n
		s.Operations = slices.Clone(s.Operations)
		for i, id := range s.Operations {
			k := slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.ID == id })
			o := p.Operations[k]
			o.ID += "-again"
			s.Operations[i] = o.ID
			p.Operations = append(p.Operations, o)
		}
		p.Steps = append(p.Steps, s)
	}
	for _, c := range slices.Clone(p.Changes) {
		c.BeforeStep += n
		p.Changes = append(p.Changes, c)
	}
	if len(p.Steps) < 40 {
		b.Fatal("only " + strconv.Itoa(len(p.Steps)) + " steps")
	}
	return p
}

func BenchmarkComposeFortySteps(b *testing.B) {
	p := fortySteps(b)
	for _, c := range []struct {
		name string
		opts Options
	}{{"with figures", Options{FiguresAt: "figures/"}}, {"words only", Options{}}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Compose(p, c.opts)
			}
		})
	}
}
