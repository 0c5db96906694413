package order_test

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"bodkin/process/order"
)

// TestAgainstMiniZinc has the same problems solved by a general-purpose solver
// and compares the optima; the times are told with -v.
func TestAgainstMiniZinc(t *testing.T) {
	if _, err := exec.LookPath("minizinc"); err != nil {
		t.Skip("no minizinc here (package minizinc of Debian) to compare with")
	}
	problems := []struct {
		name string
		p    order.Problem
	}{
		{"garment", garment(1, 7)}, {"rough", rough(2, 7)}, {"choosy", choosy(3, 6)}, {"regional", regional(4, 7)},
	}
	if *published > 0 {
		for seed := range uint64(3) {
			problems = append(problems, []struct {
				name string
				p    order.Problem
			}{
				{"garment", garment(seed, 10)}, {"rough", rough(seed, 10)}, {"choosy", choosy(seed, 9)}, {"regional", regional(seed, 10)},
			}...)
		}
	}
	table := "problem operations optimum seconds minizinc ratio\n"
	for _, tt := range problems {
		data := filepath.Join(t.TempDir(), "data.dzn")
		if err := os.WriteFile(data, []byte(dataFor(tt.p)), 0o600); err != nil {
			t.Fatal(err)
		}
		ctx, cancel := context.WithTimeout(t.Context(), max(*published, time.Minute))
		start := time.Now()
		out, err := exec.CommandContext(ctx, "minizinc", "--solver", "gecode", filepath.Join("testdata", "minizinc", "order.mzn"), data).Output()
		theirs := time.Since(start)
		over := ctx.Err() != nil
		cancel()
		if over {
			t.Logf("%s of %d operations: minizinc had no time to finish", tt.name, len(tt.p.Operations))
			continue
		}
		if err != nil {
			t.Fatalf("%s: %v\n%s", tt.name, err, out)
		}
		text, proved := strings.CutSuffix(strings.TrimSpace(string(out)), "==========")
		lines := strings.Fields(strings.ReplaceAll(text, "----------", ""))
		if !proved || len(lines) == 0 {
			t.Fatalf("%s: no proof in %q", tt.name, out)
		}
		want, err := strconv.ParseInt(lines[len(lines)-1], 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		start = time.Now()
		r := solve(t, tt.p, order.Options{})
		ours := time.Since(start)
		if !r.Proved || r.Cost != want {
			t.Errorf("%s: cost %d, proved %v; minizinc proves %d", tt.name, r.Cost, r.Proved, want)
		}
		table += fmt.Sprintf("%s %d %d %.4f %.2f %.5f\n", tt.name, len(tt.p.Operations), want, ours.Seconds(), theirs.Seconds(), ours.Seconds()/theirs.Seconds())
	}
	t.Log("\n" + table)
}

// dataFor writes a problem of which nothing is done as data for
// testdata/minizinc/order.mzn. Values count from 1 there.
func dataFor(p order.Problem) string {
	type slot struct {
		station, attribute int // -1 for the place, -2 for what is in hand
	}
	slots := []slot{{station: -1}, {station: -2}}
	values := len(p.Stations)
	for _, op := range p.Operations {
		values = max(values, op.Group+1)
	}
	for s, st := range p.Stations {
		for a, at := range st.Attributes {
			slots = append(slots, slot{s, a})
			values = max(values, len(at.Change))
		}
	}
	var b strings.Builder
	list := func(name string, numbers []int64, ranges ...string) {
		fmt.Fprintf(&b, "%s = array%dd(%s, [", name, len(ranges), strings.Join(ranges, ", "))
		for _, v := range numbers {
			fmt.Fprintf(&b, "%d,", v)
		}
		b.WriteString("]);\n")
	}
	var does, own, sets []int64
	for i, op := range p.Operations {
		for k := range op.Ways() {
			w := op.Way(k)
			does, own = append(does, int64(i+1)), append(own, w.Cost)
			for _, s := range slots {
				v := int64(0)
				switch {
				case s.station == -1:
					v = int64(w.Station + 1)
				case s.station == -2:
					v = int64(op.Group + 1)
				case s.station == w.Station && w.Setting != nil:
					v = int64(w.Setting[s.attribute] + 1)
				}
				sets = append(sets, v)
			}
		}
	}
	var change, start, end []int64
	for _, s := range slots {
		begin, last := int64(0), int64(0)
		switch {
		case s.station == -1:
			begin = int64(p.Start + 1)
		case s.station >= 0:
			st := p.Stations[s.station]
			begin = int64(st.Attributes[s.attribute].Start + 1)
			if st.End != nil {
				last = int64(st.End[s.attribute] + 1)
			}
		}
		start, end = append(start, begin), append(end, last)
		for from := range values + 1 {
			for to := range values + 1 {
				change = append(change, turning(p, s.station, s.attribute, from-1, to-1))
			}
		}
	}
	var earlier, later, first, then, unkept []int64
	for i, op := range p.Operations {
		for _, a := range op.After {
			earlier, later = append(earlier, int64(a+1)), append(later, int64(i+1))
		}
	}
	for _, w := range p.Wishes {
		first, then, unkept = append(first, int64(w.First+1)), append(then, int64(w.Then+1)), append(unkept, w.Cost)
	}
	fmt.Fprintf(&b, "n = %d; acts = %d; slots = %d; values = %d; waits = %d; wishes = %d;\n",
		len(p.Operations), len(does), len(slots), values, len(earlier), len(first))
	list("does", does, "1..acts")
	list("own", own, "1..acts")
	list("sets", sets, "1..acts", "1..slots")
	list("change", change, "1..slots", "0..values", "0..values")
	list("start", start, "1..slots")
	list("end", end, "1..slots")
	list("earlier", earlier, "1..waits")
	list("later", later, "1..waits")
	list("first", first, "1..wishes")
	list("then_", then, "1..wishes")
	list("unkept", unkept, "1..wishes")
	return b.String()
}

// turning is what it costs to bring a slot from one value to another; -1 is not
// set.
func turning(p order.Problem, station, attribute, from, to int) int64 {
	if from == to || to < 0 {
		return 0
	}
	switch station {
	case -1:
		if from < 0 || p.Moves == nil || from >= len(p.Stations) || to >= len(p.Stations) {
			return 0
		}
		return p.Moves[from][to]
	case -2:
		if from < 0 {
			return 0
		}
		return p.Pick
	}
	at := p.Stations[station].Attributes[attribute]
	switch {
	case to >= len(at.Change) || from >= len(at.Change):
		return 0
	case from >= 0:
		return at.Change[from][to]
	case at.First != nil:
		return at.First[to]
	}
	return 0
}
