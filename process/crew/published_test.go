package crew_test

import (
	"context"
	"testing"
	"time"

	"bodkin/process/crew"
)

// TestPublishedOptima: projects with limited resources (optima of E.
// Demeulemeester and W. Herroelen, Management Science 43, 1997, and others) and
// with skilled workers (K. Young, T. Feydy, A. Schutt, CP 2017), as the README
// files of the benchmarks name them. Under the limit here most are proved; the rest
// must be as near as stated.
func TestPublishedOptima(t *testing.T) {
	for _, folder := range []struct {
		name    string
		percent int64 // the most above the optimum where there is no proof
	}{{"rcpsp", 1}, {"mspsp", 10}} {
		for _, row := range published(t, folder.name, "optima.csv") {
			t.Run(row["file"], func(t *testing.T) {
				p := open(t, folder.name, row["file"])
				best := number(t, row["optimal_makespan"])
				r, err := crew.Solve(t.Context(), p, crew.Options{Nodes: 8000})
				if err != nil {
					t.Fatal(err)
				}
				finish, _, err := sound(p, r.Places)
				if err != nil || finish != r.Finish {
					t.Fatalf("finish %d, said %d: %v", finish, r.Finish, err)
				}
				if account, err := crew.Check(p, r.Places); err != nil || account.Finish != finish {
					t.Errorf("checked: %d, %v", account.Finish, err)
				}
				if finish < best || r.Bound > best || r.Proved != (r.Bound == finish) {
					t.Errorf("finish %d, bound %d, proved %v; the optimum is %d", finish, r.Bound, r.Proved, best)
				}
				if (finish-best)*100 > best*folder.percent {
					t.Errorf("finish %d is more than %d %% above %d", finish, folder.percent, best)
				}
			})
		}
	}
}

// TestPathsBound: the longest path of each published project is a lower bound
// and stands in the table.
func TestPathsBound(t *testing.T) {
	for _, row := range published(t, "rcpsp", "optima.csv") {
		p := open(t, "rcpsp", row["file"])
		low, err := crew.LowerBound(p)
		if err != nil {
			t.Fatal(err)
		}
		if low < number(t, row["critical_path"]) || low > number(t, row["optimal_makespan"]) {
			t.Errorf("%s: bound %d, path %s, optimum %s", row["file"], low, row["critical_path"], row["optimal_makespan"])
		}
		for i := range p.Tasks {
			p.Tasks[i].Uses = nil
		}
		if low, err = crew.LowerBound(p); err != nil || low != number(t, row["critical_path"]) {
			t.Errorf("%s: longest path %d, want %s (%v)", row["file"], low, row["critical_path"], err)
		}
	}
}

func TestACancelledSearchStillHasAPlan(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	var p crew.Problem
	p.Handover = 1
	p.People = []crew.Person{{Skills: []int{1}}, {Skills: []int{1}}, {Skills: []int{1}}}
	for i := range 60 {
		p.Tasks = append(p.Tasks, crew.Task{Time: int64(i%7 + 1), Kind: crew.None, Needs: []crew.Need{{}}})
		if i > 3 {
			p.Tasks[i].From = []int{i / 2}
		}
	}
	r, err := crew.Solve(ctx, p, crew.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := sound(p, r.Places); err != nil {
		t.Error(err)
	}
	if r.Stopped != crew.Cancelled {
		t.Errorf("stopped: %v", r.Stopped)
	}
}

// BenchmarkPublished solves the instances with a time limit of ten seconds
// each and reports how far from the optimum and whether it was proved.
func BenchmarkPublished(b *testing.B) {
	for _, folder := range []string{"rcpsp", "mspsp"} {
		for _, row := range published(b, folder, "optima.csv") {
			b.Run(row["file"], func(b *testing.B) {
				p := open(b, folder, row["file"])
				best := number(b, row["optimal_makespan"])
				b.ReportAllocs()
				var r crew.Result
				for b.Loop() {
					ctx, cancel := context.WithTimeout(b.Context(), 10*time.Second)
					r, _ = crew.Solve(ctx, p, crew.Options{Nodes: 10_000_000})
					cancel()
				}
				b.ReportMetric(100*float64(r.Finish-best)/float64(best), "%above")
				b.ReportMetric(100*float64(best-r.Bound)/float64(best), "%unproved")
			})
		}
	}
}
