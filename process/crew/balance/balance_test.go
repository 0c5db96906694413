package balance_test

import (
	"bufio"
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"bodkin/process/crew/balance"

	"pgregory.net/rapid"
)

const benchmarks = "../../../../shared/benchmarks/salbp"

// readIN2 reads a graph of A. Scholl, Data of assembly line balancing
// problems, TH Darmstadt 16/93, 1993.
func readIN2(t testing.TB, file string) balance.Line {
	t.Helper()
	f, err := os.Open(filepath.Join(benchmarks, file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var l balance.Line
	n := -1
	for lines := bufio.NewScanner(f); lines.Scan(); {
		line := strings.TrimSpace(lines.Text())
		a, b, arc := strings.Cut(line, ",")
		x, err := strconv.ParseInt(strings.TrimSpace(a), 10, 64)
		if err != nil {
			t.Fatal(file, err)
		}
		switch {
		case n < 0:
			n = int(x)
			l.After = make([][]int, n)
		case !arc:
			l.Times = append(l.Times, x)
		case x > 0:
			y, err := strconv.Atoi(strings.TrimSpace(b))
			if err != nil {
				t.Fatal(file, err)
			}
			l.After[y-1] = append(l.After[y-1], int(x-1))
		}
	}
	return l
}

func published(t testing.TB, file string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join(benchmarks, file))
	if err != nil {
		t.Skipf("the benchmarks are not here: %v", err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// sound checks a row by the rules alone and returns its cycle time.
func sound(l balance.Line, r balance.Row) (int64, error) {
	at := make(map[int]int)
	var most int64
	for k, tasks := range r.Stations {
		var sum int64
		for _, i := range tasks {
			if _, twice := at[i]; twice {
				return 0, fmt.Errorf("task %d stands twice", i)
			}
			at[i] = k
			sum += l.Times[i]
		}
		most = max(most, sum)
	}
	for i := range l.Times {
		k, ok := at[i]
		if !ok {
			return 0, fmt.Errorf("task %d is missing", i)
		}
		for _, b := range l.After[i] {
			if at[b] > k {
				return 0, fmt.Errorf("task %d stands before task %d", i, b)
			}
		}
	}
	return most, nil
}

func number(t testing.TB, s string) int64 {
	v, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestFewestStations: the optima of the Scholl collection, type 1.
func TestFewestStations(t *testing.T) {
	proved, met := 0, 0
	rows := published(t, "salbp1.csv")
	for _, row := range rows {
		l, cycle, best := readIN2(t, row[0]), number(t, row[1]), number(t, row[2])
		r, err := balance.Fewest(t.Context(), l, cycle, balance.Options{Width: 20})
		if err != nil {
			t.Fatal(row, err)
		}
		most, err := sound(l, r)
		have := int64(len(r.Stations))
		if err != nil || most > cycle || have < best || r.Bound > best || r.Proved != (have == r.Bound) {
			t.Errorf("%v: %d stations, cycle %d, bound %d, proved %v, %v", row, have, most, r.Bound, r.Proved, err)
		}
		if have > best+1 {
			t.Errorf("%v: %d stations", row, have)
		}
		if r.Proved {
			proved++
		}
		if have == best {
			met++
		}
	}
	t.Logf("of %d: %d optimal, %d proved", len(rows), met, proved)
	if met*10 < len(rows)*9 {
		t.Errorf("only %d of %d are optimal", met, len(rows))
	}
}

// TestQuickestCycle: the optima of the Scholl collection, type 2.
func TestQuickestCycle(t *testing.T) {
	proved, met := 0, 0
	rows := published(t, "salbp2.csv")
	for _, row := range rows {
		l, stations, best := readIN2(t, row[0]), number(t, row[1]), number(t, row[2])
		if len(l.Times) > 60 {
			continue
		}
		r, err := balance.Quickest(t.Context(), l, int(stations), balance.Options{Width: 100})
		if err != nil {
			t.Fatal(row, err)
		}
		most, err := sound(l, r)
		if err != nil || most != r.Cycle || int64(len(r.Stations)) > stations || most < best || r.Bound > best || r.Proved != (most == r.Bound) {
			t.Errorf("%v: cycle %d (%d), bound %d, proved %v, %v", row, most, r.Cycle, r.Bound, r.Proved, err)
		}
		if most*100 > best*105 {
			t.Errorf("%v: cycle %d", row, most)
		}
		if r.Proved {
			proved++
		}
		if most == best {
			met++
		}
	}
	t.Logf("of %d: %d optimal, %d proved", len(rows), met, proved)
}

// TestWorkedExample: J. Mertens, 7 tasks (1967), as printed in the tables of A. Scholl.
func TestWorkedExample(t *testing.T) {
	l := balance.Line{
		Times: []int64{1, 5, 4, 3, 5, 6, 5},
		After: [][]int{nil, {0}, {1}, {0}, {1}, {4}, {3}},
	}
	for cycle, want := range map[int64]int{6: 6, 7: 5, 8: 5, 10: 3, 15: 2, 18: 2} {
		r, err := balance.Fewest(t.Context(), l, cycle, balance.Options{})
		if err != nil || len(r.Stations) != want || !r.Proved {
			t.Errorf("cycle %d: %d stations, want %d (%+v, %v)", cycle, len(r.Stations), want, r, err)
		}
	}
}

func drawn(t *rapid.T) balance.Line {
	n := rapid.IntRange(1, 7).Draw(t, "tasks")
	l := balance.Line{After: make([][]int, n)}
	for i := range n {
		l.Times = append(l.Times, rapid.Int64Range(1, 9).Draw(t, "time"))
		for b := range i {
			if rapid.IntRange(0, 3).Draw(t, "arc") == 0 {
				l.After[i] = append(l.After[i], b)
			}
		}
	}
	return l
}

// brute is the fewest stations by giving every task to every station.
func brute(l balance.Line, cycle int64) int {
	n := len(l.Times)
	best := n + 1
	at, sum := make([]int, n), make([]int64, n)
	var try func(i, used int)
	try = func(i, used int) {
		if used >= best {
			return
		}
		if i == n {
			best = used
			return
		}
		first := 0
		for _, b := range l.After[i] {
			first = max(first, at[b])
		}
		for k := first; k < n; k++ {
			if sum[k]+l.Times[i] <= cycle {
				sum[k] += l.Times[i]
				at[i] = k
				try(i+1, max(used, k+1))
				sum[k] -= l.Times[i]
			}
		}
	}
	try(0, 0)
	return best
}

func TestFewestEqualsBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawn(t)
		cycle := rapid.Int64Range(9, 20).Draw(t, "cycle")
		r, err := balance.Fewest(context.Background(), l, cycle, balance.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := sound(l, r); err != nil {
			t.Fatal(err)
		}
		if want := brute(l, cycle); len(r.Stations) != want || !r.Proved {
			t.Fatalf("%+v, want %d", r, want)
		}
		q, err := balance.Quickest(context.Background(), l, len(r.Stations), balance.Options{})
		if err != nil || !q.Proved || q.Cycle > cycle {
			t.Fatalf("%+v, %v", q, err)
		}
		if brute(l, q.Cycle-1) <= len(r.Stations) {
			t.Fatalf("%d stations do with a cycle below %d", len(r.Stations), q.Cycle)
		}
	})
}

// TestNoTimeIsHonoured: without time the rows are still rows.
func TestNoTimeIsHonoured(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	l := balance.Line{Times: make([]int64, 200), After: make([][]int, 200)}
	for i := range l.Times {
		l.Times[i] = int64(1 + i*37%23)
	}
	r, err := balance.Quickest(ctx, l, 7, balance.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if cycle, err := sound(l, r); err != nil || cycle != r.Cycle || len(r.Stations) > 7 || r.Bound > r.Cycle {
		t.Errorf("cycle %d, said to be %d, bound %d, %v", cycle, r.Cycle, r.Bound, err)
	}
	r, err = balance.Fewest(ctx, l, 50, balance.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if cycle, err := sound(l, r); err != nil || cycle > 50 {
		t.Errorf("cycle %d, %v", cycle, err)
	}
}

func TestFaultsAreNamed(t *testing.T) {
	for want, l := range map[string]balance.Line{
		"task 0: takes 9, longer than the cycle of 8": {Times: []int64{9}},
		"task 0: comes after task 3, want 0 to 0":     {Times: []int64{1}, After: [][]int{{3}}},
		"task 0: waits for itself in a circle":        {Times: []int64{1}, After: [][]int{{0}}},
		"predecessors of 1 tasks for 2":               {Times: []int64{1, 1}, After: [][]int{{}}},
		"task 0: time is -1, want 0 to 1099511627776": {Times: []int64{-1}},
	} {
		if _, err := balance.Fewest(context.Background(), l, 8, balance.Options{}); err == nil || err.Error() != want {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

// A garment's seven tasks at three tables.
func ExampleQuickest() {
	l := balance.Line{
		Times: []int64{1, 5, 4, 3, 5, 6, 5},
		After: [][]int{nil, {0}, {1}, {0}, {1}, {4}, {3}},
	}
	r, err := balance.Quickest(context.Background(), l, 3, balance.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("a piece every", r.Cycle, "proved", r.Proved)
	// Output:
	// a piece every 10 proved true
}

func BenchmarkFewest(b *testing.B) {
	for _, row := range published(b, "salbp1.csv") {
		b.Run(row[0]+"/"+row[1], func(b *testing.B) {
			l, cycle := readIN2(b, row[0]), number(b, row[1])
			b.ReportAllocs()
			var r balance.Row
			for b.Loop() {
				r, _ = balance.Fewest(b.Context(), l, cycle, balance.Options{})
			}
			b.ReportMetric(float64(int64(len(r.Stations))-number(b, row[2])), "above")
			b.ReportMetric(float64(number(b, row[2])-r.Bound), "unproved")
		})
	}
}
