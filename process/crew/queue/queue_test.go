package queue_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"bodkin/process/crew/queue"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// repairs is the mean wait for a server when n visitors, each away for a mean
// of away and then wanting a turn of a mean of turn, share c servers, all times
// exponential: the finite source model M/M/c//N, also called the machine repair
// model (D. Gross, J. Shortle, J. Thompson, C. Harris, Fundamentals of Queueing
// Theory, 4th ed. 2008, section 2.8). With p(k) the chance that k are at the
// station,
//
//	p(k) ∝ C(n,k) (turn/away)^k                  for k ≤ c
//	p(k) ∝ C(n,k) k!/(c! c^(k-c)) (turn/away)^k  for k > c
//	wait = Σ max(k-c,0) p(k) / (Σ (n-k) p(k) / away)
func repairs(n, c int, away, turn float64) float64 {
	weight := 1.0
	var all, line, out float64
	for k := 0; k <= n; k++ {
		if k > 0 {
			weight *= float64(n-k+1) * turn / away / float64(min(k, c))
		}
		all += weight
		line += float64(max(k-c, 0)) * weight
		out += float64(n-k) * weight
	}
	return line / (out / away)
}

// TestRepairFormula holds the formula to the classical one-server result for
// which it has a product form: one visitor never waits, and two visitors of one
// server with equal means wait for half the time in a hand: p = (1, 2, 2)/5,
// line 2/5, rate (2·1+1·2)/5, wait 1/2.
func TestRepairFormula(t *testing.T) {
	if w := repairs(1, 1, 3, 1); w != 0 {
		t.Errorf("one visitor waits %g", w)
	}
	if w := repairs(2, 1, 1, 1); math.Abs(w-0.5) > 1e-12 {
		t.Errorf("two visitors wait %g, want 0.5", w)
	}
}

// TestWaitsAgainstMachineRepair: a class that comes back to the overlockers
// again and again, all times exponential.
func TestWaitsAgainstMachineRepair(t *testing.T) {
	for _, c := range []struct {
		n, servers int
		away, turn float64
	}{{6, 1, 8, 1}, {10, 2, 8, 2}, {12, 3, 6, 2}} {
		r := queue.Room{Stations: []int{c.servers}, Spread: 1}
		for range c.n {
			stays := make([]queue.Stay, 8000)
			for k := range stays {
				stays[k] = queue.Stay{Before: c.away, Turn: c.turn}
			}
			r.Visitors = append(r.Visitors, stays)
		}
		got, err := queue.Simulate(t.Context(), r, 1)
		if err != nil {
			t.Fatal(err)
		}
		want := repairs(c.n, c.servers, c.away, c.turn)
		if w := got.Stations[0].Waits; math.Abs(w-want) > 0.05*want {
			t.Errorf("%+v: mean wait %.4f, the model gives %.4f", c, w, want)
		}
	}
}

// erlang is the mean wait in an open line M/M/c, by Erlang's second formula
// (A. K. Erlang 1917; Gross and others, section 2.3): C(c,a)/(c/turn - rate).
func erlang(c int, between, turn float64) float64 {
	a := turn / between
	term, sum := 1.0, 0.0
	for k := range c {
		if k > 0 {
			term *= a / float64(k)
		}
		sum += term
	}
	term *= a / float64(c)
	last := term * float64(c) / (float64(c) - a)
	return last / (sum + last) / (float64(c)/turn - 1/between)
}

// TestWaitsAgainstErlang: visitors who come once each, at times between which
// the gaps are exponential. One server: a/(1-a)·turn.
func TestWaitsAgainstErlang(t *testing.T) {
	if w := erlang(1, 2, 1); math.Abs(w-1) > 1e-12 { // a = 1/2: wait equals the turn
		t.Fatalf("one server: %g", w)
	}
	for _, servers := range []int{1, 2, 3} {
		between, turn := 2.0, 1.4*float64(servers)
		// Comers of a stream: a visitor's time before is all the gaps so far. A
		// first station with a server for each is where the gaps are drawn: one
		// visitor after another goes through a gate of one server, which passes
		// them on after exponential gaps.
		const n = 40_000
		r := queue.Room{Stations: []int{1, servers}, Spread: 1}
		for range n {
			r.Visitors = append(r.Visitors, []queue.Stay{{Turn: between}, {Station: 1, Turn: turn}})
		}
		got, err := queue.Simulate(t.Context(), r, 7)
		if err != nil {
			t.Fatal(err)
		}
		want := erlang(servers, between, turn)
		if w := got.Stations[1].Waits; math.Abs(w-want) > 0.08*want {
			t.Errorf("%d servers: mean wait %.4f, Erlang gives %.4f", servers, w, want)
		}
	}
}

// Without chance, waits can be counted on the fingers: three come at once to
// one server with turns of 2, so they wait 0, 2 and 4.
func ExampleSimulate() {
	r := queue.Room{Stations: []int{1}}
	for range 3 {
		r.Visitors = append(r.Visitors, []queue.Stay{{Before: 5, Turn: 2}})
	}
	report, err := queue.Simulate(context.Background(), r, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	line := report.Stations[0]
	fmt.Println("mean", line.Waits, "worst", line.Worst, "longest line", line.Longest, "end", report.End)
	// Output:
	// mean 2 worst 4 longest line 2 end 11
}

func drawn(t *rapid.T) queue.Room {
	r := queue.Room{Spread: rapid.SampledFrom([]float64{0, 0.3, 1}).Draw(t, "spread")}
	r.Stations = rapid.SliceOfN(rapid.IntRange(1, 3), 1, 3).Draw(t, "stations")
	for range rapid.IntRange(1, 8).Draw(t, "visitors") {
		var stays []queue.Stay
		for range rapid.IntRange(0, 4).Draw(t, "stays") {
			stays = append(stays, queue.Stay{
				Before:  float64(rapid.IntRange(0, 9).Draw(t, "before")),
				Station: rapid.IntRange(0, len(r.Stations)-1).Draw(t, "station"),
				Turn:    float64(rapid.IntRange(0, 9).Draw(t, "turn")),
			})
		}
		r.Visitors = append(r.Visitors, stays)
	}
	return r
}

func TestSameSeedSameWaits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawn(t)
		a, err := queue.Repeat(context.Background(), r, 3, 2)
		if err != nil {
			t.Fatal(err)
		}
		b, _ := queue.Repeat(context.Background(), r, 3, 2)
		if diff := cmp.Diff(a, b); diff != "" {
			t.Fatal(diff)
		}
	})
}

// TestTimeIsKept: a visitor's way through the room is her own times and her
// waits; nobody waits where there is a server for each.
func TestTimeIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawn(t)
		r.Spread = 0
		got, err := queue.Simulate(context.Background(), r, 1)
		if err != nil {
			t.Fatal(err)
		}
		var end, waits, all float64
		for v, stays := range r.Visitors {
			own := got.Waited[v]
			for _, s := range stays {
				own += s.Before + s.Turn
			}
			if len(stays) > 0 {
				end = max(end, own)
			}
			waits += got.Waited[v]
		}
		for _, l := range got.Stations {
			all += l.Waits * float64(l.Turns)
		}
		if math.Abs(end-got.End) > 1e-9 || math.Abs(all-waits) > 1e-9 {
			t.Fatalf("end %g, by visitor %g; waits %g, by visitor %g", got.End, end, all, waits)
		}
		for q := range r.Stations {
			r.Stations[q] = len(r.Visitors)
		}
		if free, _ := queue.Simulate(context.Background(), r, 1); free.End > got.End {
			t.Fatalf("later with a server for each: %g, %g", free.End, got.End)
		} else if w := cmp.Diff(free.Waited, make([]float64, len(r.Visitors))); w != "" {
			t.Fatal(w)
		}
	})
}

func TestFaultsAreNamed(t *testing.T) {
	for want, r := range map[string]queue.Room{
		"station 0 has 0 servers, want 1 or more":       {Stations: []int{0}},
		"spread is 2, want 0 to 1":                      {Spread: 2},
		"visitor 0, stay 0: station is 1, want 0 to 0":  {Stations: []int{1}, Visitors: [][]queue.Stay{{{Station: 1}}}},
		"visitor 0, stay 0: time is -1, want 0 or more": {Stations: []int{1}, Visitors: [][]queue.Stay{{{Turn: -1}}}},
	} {
		if _, err := queue.Simulate(context.Background(), r, 1); err == nil || err.Error() != want {
			t.Errorf("%v, want %q", err, want)
		}
	}
}
