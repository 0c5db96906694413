package order_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"bodkin/process/order"
)

// TestPublishedSequences proves the known optima of small published sequential
// ordering problems: TSPLIB, G. Reinelt, ORSA Journal on Computing 3 (1991)
// 376-384, values as its list gives them.
func TestPublishedSequences(t *testing.T) {
	for _, tt := range []struct {
		file    string
		optimum int64
	}{
		{"ESC07", 2125},
		{"ESC12", 1675},
		{"br17.10", 55},
	} {
		t.Run(tt.file, func(t *testing.T) {
			f, err := os.Open(filepath.Join("testdata", "sop", tt.file+".sop"))
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			p, err := readSOP(f)
			if err != nil {
				t.Fatal(err)
			}
			ctx, cancel := context.WithTimeout(t.Context(), 60*time.Second)
			defer cancel()
			r, err := order.Solve(ctx, p, order.Options{})
			if err != nil {
				t.Fatal(err)
			}
			if cost := pathCost(t, p, r.Sequence); cost != r.Cost {
				t.Errorf("the sequence costs %d, the result says %d", cost, r.Cost)
			}
			if r.Cost < tt.optimum {
				t.Errorf("cost %d is under the proved optimum %d", r.Cost, tt.optimum)
			}
			if r.Cost != tt.optimum || !r.Proved {
				t.Errorf("cost %d, proved %v; the optimum is %d", r.Cost, r.Proved, tt.optimum)
			}
			t.Logf("cost %d, bound %d, proved %v, optimum %d, %d expanded", r.Cost, r.Bound, r.Proved, tt.optimum, r.Expanded)
		})
	}
}

// pathCost adds up what lies between neighbours of the sequence and checks that
// everything comes after what it must follow, without the package's own replay.
func pathCost(t *testing.T, p order.Problem, sequence []int) int64 {
	t.Helper()
	change := p.Stations[0].Attributes[0].Change
	place := make([]int, len(p.Operations))
	for i := range place {
		place[i] = -1
	}
	var sum int64
	for k, i := range sequence {
		place[i] = k
		for _, b := range p.Operations[i].After {
			if place[b] < 0 {
				t.Errorf("%d comes before %d", i, b)
			}
		}
		if k > 0 {
			sum += change[sequence[k-1]][i]
		}
	}
	if len(sequence) != len(p.Operations) {
		t.Errorf("%d operations of %d", len(sequence), len(p.Operations))
	}
	return sum
}
