package order_test

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"bodkin/process/order"
)

// readToolswitch reads jobs and the tools they need as operations at one station
// whose attributes are the places of the magazine, alike but told apart; the
// ways of an operation are the ways of putting its tools into places. Loading
// a tool costs 1.
func readToolswitch(r io.Reader) (order.Problem, error) {
	words := bufio.NewScanner(r)
	words.Split(bufio.ScanWords)
	var numbers []int
	for words.Scan() {
		v, err := strconv.Atoi(words.Text())
		if err != nil {
			return order.Problem{}, err
		}
		numbers = append(numbers, v)
	}
	if len(numbers) < 3 || len(numbers) < 3+numbers[0]*numbers[1] {
		return order.Problem{}, fmt.Errorf("%d numbers are too few", len(numbers))
	}
	jobs, tools, places := numbers[0], numbers[1], numbers[2]
	p := order.Problem{Stations: make([]order.Station, 1)}
	for range places {
		p.Stations[0].Attributes = append(p.Stations[0].Attributes,
			order.Attribute{Change: order.Uniform(tools, 1), First: first(tools, 1), Start: order.Unset})
	}
	for j := range jobs {
		var needs []int
		for i := range tools {
			if numbers[3+i*jobs+j] == 1 {
				needs = append(needs, i)
			}
		}
		var ways []order.Way
		setting := slices.Repeat([]int{order.Any}, places)
		var place func(k int)
		place = func(k int) {
			if k == len(needs) {
				ways = append(ways, order.Way{Setting: slices.Clone(setting)})
				return
			}
			for at := range setting {
				if setting[at] == order.Any {
					setting[at] = needs[k]
					place(k + 1)
					setting[at] = order.Any
				}
			}
		}
		place(0)
		p.Operations = append(p.Operations, order.Operation{Setting: ways[0].Setting, Or: ways[1:], Rank: j})
	}
	return p, nil
}

// TestTableOfToolSwitching works out the published problems of job sequencing
// and tool switching; see toolswitch/README.md of the benchmarks. The model
// tells the places of the magazine apart, which the problem does not.
func TestTableOfToolSwitching(t *testing.T) {
	askedFor(t)
	table := "instance jobs loads found bound seconds stopped\n"
	for _, row := range listed(t, "toolswitch") {
		f, err := os.Open(filepath.Join(benchmarks, "toolswitch", row["file"]))
		if err != nil {
			t.Fatal(err)
		}
		p, err := readToolswitch(f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		want, err := strconv.ParseInt(row["min_loads_from_empty"], 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		r, took := timed(t, p)
		if cost := price(t, p, r.Sequence, r.Ways); cost != r.Cost {
			t.Errorf("%s: the sequence costs %d, the result says %d", row["file"], cost, r.Cost)
		}
		if r.Cost < want || r.Bound > want {
			t.Errorf("%s: cost %d, bound %d; the optimum is %d", row["file"], r.Cost, r.Bound, want)
		}
		table += fmt.Sprintf("%s %s %d %d %d %.2f %s\n", row["file"], row["jobs"], want, r.Cost, r.Bound, took.Seconds(), r.Stopped)
	}
	t.Log("\n" + table)
}
