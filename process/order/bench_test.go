package order_test

import (
	"context"
	"runtime/metrics"
	"slices"
	"testing"
	"time"

	"bodkin/process/order"
)

// A family is a set of generated problems to be solved within a time.
type family struct {
	name     string
	problem  func(seed uint64) order.Problem
	problems uint64
	limit    time.Duration
}

var families = []family{
	{"garment-60", func(seed uint64) order.Problem { return garment(seed, 60) }, 20, time.Second},
	{"garment-150", func(seed uint64) order.Problem { return garment(seed, 150) }, 20, time.Second},
	{"garment-300", func(seed uint64) order.Problem { return garment(seed, 300) }, 5, 10 * time.Second},
	{"garment-1000", func(seed uint64) order.Problem { return garment(seed, 1000) }, 1, 30 * time.Second},
	{"fitted-150", func(seed uint64) order.Problem { return fitted(seed, 150) }, 100, time.Second},
	{"fitted-300", func(seed uint64) order.Problem { return fitted(seed, 300) }, 5, 10 * time.Second},
	{"fitted-1000", func(seed uint64) order.Problem { return fitted(seed, 1000) }, 1, 30 * time.Second},
	{"rough-60", func(seed uint64) order.Problem { return rough(seed, 60) }, 20, time.Second},
	{"choosy-60", func(seed uint64) order.Problem { return choosy(seed, 60) }, 20, time.Second},
	{"choosy-150", func(seed uint64) order.Problem { return choosy(seed, 150) }, 5, 10 * time.Second},
	{"regional-60", func(seed uint64) order.Problem { return regional(seed, 60) }, 20, time.Second},
	{"regional-150", func(seed uint64) order.Problem { return regional(seed, 150) }, 5, 10 * time.Second},
}

// BenchmarkSolve solves every problem of a family once and says of how many
// the order was proved, how far the others are from their bound at the mean and
// at the worst, how many nodes were expanded, the slowest time, and the most
// memory that was in use.
func BenchmarkSolve(b *testing.B) {
	for _, f := range families {
		b.Run(f.name, func(b *testing.B) {
			var proved, expanded int
			var gaps, seconds []float64
			var memory uint64
			for b.Loop() {
				for seed := range f.problems {
					ctx, cancel := context.WithTimeout(b.Context(), f.limit)
					start := time.Now()
					r, err := order.Solve(ctx, f.problem(seed+1), order.Options{Memory: 250 << 20, Progress: func(order.Progress) {
						memory = max(memory, inUse())
					}})
					cancel()
					if err != nil {
						b.Fatal(err)
					}
					seconds = append(seconds, time.Since(start).Seconds())
					gaps = append(gaps, 100*float64(r.Cost-r.Bound)/float64(r.Cost))
					expanded += r.Expanded
					if r.Proved {
						proved++
					}
				}
			}
			var sum float64
			for _, g := range gaps {
				sum += g
			}
			n := float64(len(gaps))
			slices.Sort(seconds)
			b.ReportMetric(100*float64(proved)/n, "proved%")
			b.ReportMetric(sum/n, "gap%")
			b.ReportMetric(slices.Max(gaps), "maxgap%")
			b.ReportMetric(float64(expanded)/n, "nodes/problem")
			b.ReportMetric(1000*seconds[len(seconds)/2], "median-ms")
			b.ReportMetric(1000*seconds[len(seconds)-1], "max-ms")
			b.ReportMetric(float64(memory>>20), "MiB")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// inUse is the memory that the program holds.
func inUse() uint64 {
	s := []metrics.Sample{{Name: "/memory/classes/total:bytes"}, {Name: "/memory/classes/heap/released:bytes"}}
	metrics.Read(s)
	return s[0].Value.Uint64() - s[1].Value.Uint64()
}
