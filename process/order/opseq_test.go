package order_test

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bodkin/process/order"
)

// A part is a problem of operation sequencing as the benchmarks give it: each
// operation on one of several machines, with one of several tools, from one of
// several directions, with no memory of machines left; see opseq/README.md.
type part struct {
	Objective           string
	MachineChange       float64
	MachineChangeMatrix map[string]map[string]float64
	ToolChange          float64
	DirectionChange     float64
	MachineUse, ToolUse map[string]float64
	Operations          []partOperation
}

type partOperation struct {
	ID            string
	Machines      []string
	Tools         []string
	Directions    []string
	Minutes       map[string]float64
	After         []string
	AlternativeTo any
}

// alternatives are named as one or as several.
func (o partOperation) alternatives() []string {
	switch v := o.AlternativeTo.(type) {
	case string:
		return []string{v}
	case []any:
		var names []string
		for _, n := range v {
			names = append(names, fmt.Sprint(n))
		}
		return names
	}
	return nil
}

// hundred is how many units of cost stand for one of the benchmarks', which
// have two decimals.
const hundred = 100

// readOpseq reads a part as a problem of one station with one attribute, whose
// values are the machine, tool and direction together. Operations of which one
// is to be chosen become ways of one; they must wait for the same.
func readOpseq(r io.Reader) (order.Problem, error) {
	var in part
	if err := json.NewDecoder(r).Decode(&in); err != nil {
		return order.Problem{}, err
	}
	type place struct{ machine, tool, direction string }
	var places []place
	cost := func(c float64) int64 { return int64(math.Round(hundred * c)) }
	number := map[string]int{} // of an operation, that of the first it is an alternative to
	p := order.Problem{Stations: make([]order.Station, 1), Start: order.Nowhere}
	var first []partOperation
	for _, o := range in.Operations {
		i, again := len(p.Operations), false
		for _, a := range o.alternatives() {
			if k, ok := number[a]; ok {
				i, again = k, true
			}
		}
		number[o.ID] = i
		var ways []order.Way
		for _, m := range o.Machines {
			for _, t := range o.Tools {
				for _, d := range o.Directions {
					at := slices.Index(places, place{m, t, d})
					if at < 0 {
						at = len(places)
						places = append(places, place{m, t, d})
					}
					w := order.Way{Setting: []int{at}}
					if in.Objective == "time" {
						w.Cost = cost(o.Minutes[m])
					} else {
						w.Cost = cost(in.MachineUse[m]) + cost(in.ToolUse[t])
					}
					ways = append(ways, w)
				}
			}
		}
		if again {
			if !slices.Equal(first[i].After, o.After) {
				return p, fmt.Errorf("%s and %s are alternatives and wait for different operations", first[i].ID, o.ID)
			}
			p.Operations[i].Or = append(p.Operations[i].Or, ways...)
			continue
		}
		first = append(first, o)
		p.Operations = append(p.Operations, order.Operation{Setting: ways[0].Setting, Cost: ways[0].Cost, Or: ways[1:], Rank: i})
	}
	for i, o := range first {
		for _, id := range o.After {
			b, ok := number[id]
			if !ok {
				return p, fmt.Errorf("%s waits for %s, which there is not", o.ID, id)
			}
			p.Operations[i].After = append(p.Operations[i].After, b)
		}
	}
	change := order.Uniform(len(places), 0)
	for i, from := range places {
		for j, to := range places {
			if from.machine != to.machine {
				move := in.MachineChange
				if in.MachineChangeMatrix != nil {
					move = in.MachineChangeMatrix[from.machine][to.machine]
				}
				change[i][j] += cost(move)
			}
			if from.machine != to.machine || from.tool != to.tool {
				change[i][j] += cost(in.ToolChange)
			}
			if from.machine != to.machine || from.direction != to.direction {
				change[i][j] += cost(in.DirectionChange)
			}
		}
	}
	p.Stations[0].Attributes = []order.Attribute{{Change: change, Start: order.Unset}}
	return p, nil
}

// TestOperationSequencing proves the optima of the published problems of
// operation sequencing that have one; see opseq/README.md of the benchmarks for
// where the values come from. Those without a proved value, and of more than 25
// operations, are left to the table.
func TestOperationSequencing(t *testing.T) {
	table := "instance operations value found bound seconds stopped\n"
	for _, row := range listed(t, "opseq") {
		proved := strings.HasPrefix(row["status"], "optimal")
		if n, err := strconv.Atoi(row["operations"]); *published == 0 && (err != nil || !proved || n > 25) {
			continue
		}
		t.Run(row["file"], func(t *testing.T) {
			f, err := os.Open(filepath.Join(benchmarks, "opseq", row["file"]))
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			p, err := readOpseq(f)
			if err != nil {
				t.Fatal(err)
			}
			value, err := strconv.ParseFloat(row["value"], 64)
			if err != nil {
				t.Fatal(err)
			}
			want := int64(math.Round(hundred * value))
			r, took := timed(t, p)
			if cost := price(t, p, r.Sequence, r.Ways); cost != r.Cost {
				t.Errorf("the sequence costs %d, the result says %d", cost, r.Cost)
			}
			if proved && (r.Cost != want || !r.Proved) || r.Bound > want {
				t.Errorf("cost %d, bound %d, proved %v; the optimum is %d (in hundredths)", r.Cost, r.Bound, r.Proved, want)
			}
			table += fmt.Sprintf("%s %d %g %g %g %.2f %s\n", row["file"], len(p.Operations), value,
				float64(r.Cost)/hundred, float64(r.Bound)/hundred, took.Seconds(), r.Stopped)
		})
	}
	t.Log("\n" + table)
}
