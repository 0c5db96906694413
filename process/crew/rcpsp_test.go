package crew_test

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"bodkin/process/crew"
)

const benchmarks = "../../../shared/benchmarks"

// readSM reads a project in the form of PSPLIB (R. Kolisch, A. Sprecher,
// European Journal of Operational Research 96, 1996). Activities become tasks
// that need nobody.
func readSM(r io.Reader) (crew.Problem, error) {
	var p crew.Problem
	lines := bufio.NewScanner(r)
	section := ""
	for lines.Scan() {
		line := strings.TrimSpace(lines.Text())
		if strings.HasSuffix(line, ":") {
			section = line
			continue
		}
		var v []int
		for _, w := range strings.Fields(line) {
			n, err := strconv.Atoi(w)
			if err != nil {
				v = nil
				break
			}
			v = append(v, n)
		}
		if len(v) == 0 {
			continue
		}
		switch section {
		case "PRECEDENCE RELATIONS:":
			p = grow(p, v[0])
			for _, s := range v[3:] {
				p = grow(p, s)
				p.Tasks[s-1].After = append(p.Tasks[s-1].After, v[0]-1)
			}
		case "REQUESTS/DURATIONS:":
			p.Tasks[v[0]-1].Time = int64(v[2])
			for _, u := range v[3:] {
				p.Tasks[v[0]-1].Uses = append(p.Tasks[v[0]-1].Uses, int64(u))
			}
		case "RESOURCEAVAILABILITIES:":
			for _, c := range v {
				p.Resources = append(p.Resources, int64(c))
			}
		}
	}
	return p, lines.Err()
}

func grow(p crew.Problem, n int) crew.Problem {
	for len(p.Tasks) < n {
		p.Tasks = append(p.Tasks, crew.Task{Kind: crew.None})
	}
	return p
}

// readRCP reads a project in the form of the Patterson set (J. Patterson,
// Management Science 30, 1984).
func readRCP(r io.Reader) (crew.Problem, error) {
	words := bufio.NewScanner(r)
	words.Split(bufio.ScanWords)
	bad := error(nil)
	next := func() int {
		if !words.Scan() {
			bad = io.ErrUnexpectedEOF
			return 0
		}
		n, err := strconv.Atoi(words.Text())
		if err != nil {
			bad = err
		}
		return n
	}
	n, resources := next(), next()
	p := grow(crew.Problem{}, n)
	for range resources {
		p.Resources = append(p.Resources, int64(next()))
	}
	for i := range n {
		p.Tasks[i].Time = int64(next())
		for range resources {
			p.Tasks[i].Uses = append(p.Tasks[i].Uses, int64(next()))
		}
		for range next() {
			s := next()
			if bad != nil {
				return p, bad
			}
			p.Tasks[s-1].After = append(p.Tasks[s-1].After, i)
		}
	}
	return p, bad
}

// published opens a table of published values, by column name; the test is
// skipped where the benchmarks are not there.
func published(t testing.TB, folder, file string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join(benchmarks, folder, file))
	if err != nil {
		t.Skipf("the benchmarks are not here: %v", err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for k, name := range records[0] {
			row[name] = r[k]
		}
		rows = append(rows, row)
	}
	return rows
}

// open reads one instance of a folder.
func open(t testing.TB, folder, file string) crew.Problem {
	t.Helper()
	f, err := os.Open(filepath.Join(benchmarks, folder, file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	read := map[string]func(io.Reader) (crew.Problem, error){".sm": readSM, ".rcp": readRCP, ".dzn": readDZN}
	p, err := read[filepath.Ext(file)](f)
	if err != nil {
		t.Fatal(fmt.Errorf("%s: %w", file, err))
	}
	return p
}

func number(t testing.TB, s string) int64 {
	t.Helper()
	v, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
