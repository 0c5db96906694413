package process_test

import (
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/templates"
)

// From the files to the plan, order proved: the shelf is read anew each time.
func BenchmarkJobToPlan(b *testing.B) {
	for _, name := range templates.Names() {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				shelf, err := seams.Load()
				if err != nil {
					b.Fatal(err)
				}
				g, err := templates.Load(name)
				if err != nil {
					b.Fatal(err)
				}
				in := process.Input{Job: jobFor(g, "silk-georgette", "silk-satin"), Garment: g, Workroom: rooms()[0], Shelf: shelf}
				p, err := process.Work(b.Context(), in, order.Options{})
				if err != nil {
					b.Fatal(err)
				}
				if !p.Order.Proved {
					b.Fatal("the order was not proved")
				}
			}
		})
	}
}
