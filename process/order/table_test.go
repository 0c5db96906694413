package order_test

import (
	"context"
	"encoding/csv"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"bodkin/process/order"
)

// published is the time that each of the larger published instances is given;
// the table is worked out only when it is asked for.
var published = flag.Duration("published", 0, "time for each published instance of TestTable; 0 leaves the table out")

// benchmarks is where the published instances lie beside the repository, see
// the README there.
var benchmarks = filepath.Join("..", "..", "..", "shared", "benchmarks")

// listed reads a folder's optima.csv, a row for each file by column.
func listed(t *testing.T, folder string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join(benchmarks, folder, "optima.csv"))
	if os.IsNotExist(err) {
		t.Skipf("no benchmarks at %s", filepath.Join(benchmarks, folder))
	}
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for k, head := range lines[0] {
			row[head] = line[k]
		}
		rows = append(rows, row)
	}
	return rows
}

// askedFor skips a table that was not asked for.
func askedFor(t *testing.T) {
	t.Helper()
	if *published == 0 {
		t.Skip("the table of published benchmarks is worked out with -published=60s -timeout=0")
	}
}

// timed solves within the time for published instances, or a minute.
func timed(t *testing.T, p order.Problem) (order.Result, time.Duration) {
	t.Helper()
	limit := *published
	if limit == 0 {
		limit = time.Minute
	}
	ctx, cancel := context.WithTimeout(t.Context(), limit)
	defer cancel()
	start := time.Now()
	r, err := order.Solve(ctx, p, order.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r, time.Since(start)
}

// TestTableOfSequentialOrdering works out what the search makes of TSPLIB's
// sequential ordering problems; see sop/README.md of the benchmarks.
func TestTableOfSequentialOrdering(t *testing.T) {
	askedFor(t)
	table := "instance nodes best found bound gap% seconds stopped\n"
	for _, row := range listed(t, "sop") {
		f, err := os.Open(filepath.Join(benchmarks, "sop", row["file"]))
		if err != nil {
			t.Fatal(err)
		}
		p, err := readSOP(f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		r, took := timed(t, p)
		if cost := pathCost(t, p, r.Sequence); cost != r.Cost {
			t.Errorf("%s: the sequence costs %d, the result says %d", row["file"], cost, r.Cost)
		}
		best, err := strconv.ParseInt(row["best"], 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasPrefix(row["status"], "optimal") && r.Cost < best {
			t.Errorf("%s: cost %d is under the proved optimum %d", row["file"], r.Cost, best)
		}
		if r.Bound > best {
			t.Errorf("%s: bound %d is over the best known %d", row["file"], r.Bound, best)
		}
		table += fmt.Sprintf("%s %s %d %d %d %.2f %.2f %s\n", row["file"], row["nodes"], best, r.Cost, r.Bound,
			100*float64(r.Cost-best)/float64(best), took.Seconds(), r.Stopped)
	}
	t.Log("\n" + table)
}
