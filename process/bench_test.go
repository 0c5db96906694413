package process_test

import (
	"errors"
	"runtime/debug"
	"slices"
	"testing"
	"time"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/templates"
)

// From the files to the plan, order proved: the shelf is read anew each time,
// and garbage is collected as seldom as the command does.
func BenchmarkJobToPlan(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(400))
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

// Every garment of the shelf in every kind of cloth and room of the laws: how
// many orders are proved, and how long the middle and the worst job take, from
// the made shelf to the plan.
func BenchmarkShelfByRooms(b *testing.B) {
	shelf := loadShelf(b)
	var jobs []process.Input
	for _, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			b.Fatal(err)
		}
		for _, w := range rooms() {
			for _, cloth := range []string{"silk-georgette", "quilting-cotton", "denim", "cotton-jersey"} {
				jobs = append(jobs, process.Input{Job: jobFor(g, cloth, "cotton-lawn"), Garment: g, Workroom: w, Shelf: shelf})
			}
		}
	}
	var took []time.Duration
	planned, proved := 0, 0
	for b.Loop() {
		took, planned, proved = took[:0], 0, 0
		for _, in := range jobs {
			begun := time.Now()
			p, err := process.Work(b.Context(), in, order.Options{})
			if _, cannot := errors.AsType[*process.CannotError](err); cannot {
				continue // nothing in this room makes it
			}
			if err != nil {
				b.Fatal(err)
			}
			took = append(took, time.Since(begun))
			planned++
			if p.Order.Proved {
				proved++
			}
		}
	}
	slices.Sort(took)
	b.ReportMetric(float64(planned), "plans")
	b.ReportMetric(100*float64(proved)/float64(planned), "%proved")
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "median-ms")
	b.ReportMetric(float64(took[len(took)-1].Microseconds())/1000, "worst-ms")
}
