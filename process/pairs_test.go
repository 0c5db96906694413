package process_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"bodkin/seams/form"
	"bodkin/templates"
)

// Every two values of different choices are planned in one job or another, of
// lengths and numbers the least and the most, and the laws of a plan hold: what one
// choice leaves out, another may need. A garment may refuse lengths that do not go
// together, with the mend; then the words of that job are planned by themselves.
func TestEveryTwoChoicesArePlanned(t *testing.T) {
	shelf := loadShelf(t)
	able := roomsForAll()
	for at, name := range templates.Names() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			g := garmentOf(t, name)
			w := able[(at+1)%len(able)]
			work := func(choices form.Pairs[form.Text]) error {
				return planChosen(t, chosenInput(g, w, shelf, choices), 1)
			}
			values := make([][]string, len(g.Choices))
			for k, c := range g.Choices {
				if values[k] = c.Value.Words(); len(values[k]) == 0 {
					values[k] = []string{c.Value.Least.Value, c.Value.Most.Value}
				}
			}
			rows, refused := covering(values), 0
			for _, row := range rows {
				var all, words form.Pairs[form.Text]
				for k, c := range g.Choices {
					p := pair(c.Key.Value, values[k][row[k]])
					p.Value.At = form.Place{File: "job.yaml", Line: 1 + k, Column: 1}
					all = append(all, p)
					if len(c.Value.Words()) > 0 {
						words = append(words, p)
					}
				}
				err := work(all)
				if faults, ok := errors.AsType[form.Faults](err); ok {
					refused++
					for _, f := range faults {
						if f.Place.File != "job.yaml" || f.Mend == "" || strings.Contains(f.Message, "drawn") || strings.Contains(f.Message, "do not fit") {
							t.Errorf("%v: %v", told(all), f)
						}
					}
					err = work(words)
				}
				if err != nil {
					t.Errorf("%v in %s: %v", told(all), w.Name, err)
				}
			}
			if 2*refused > len(rows) {
				t.Errorf("of %d jobs %d are refused", len(rows), refused)
			}
			t.Logf("%d jobs, %d refused with a mend", len(rows), refused)
		})
	}
}

func TestCovering(t *testing.T) {
	words := [][]string{{"a", "b"}, {"c", "d", "e"}, {"f"}, {"g", "h", "i", "j"}, {"k", "l"}}
	rows := covering(words)
	for a := range words {
		for b := range a {
			for va := range words[a] {
				for vb := range words[b] {
					if !slices.ContainsFunc(rows, func(r []int) bool { return r[a] == va && r[b] == vb }) {
						t.Errorf("%s and %s stand together in no row", words[a][va], words[b][vb])
					}
				}
			}
		}
	}
	if len(rows) > 16 { // of 48, and 12 are the least
		t.Errorf("%d rows", len(rows))
	}
}

func told(choices form.Pairs[form.Text]) (out []string) {
	for _, c := range choices {
		out = append(out, c.Key.Value+": "+c.Value.Value)
	}
	return out
}

// covering are rows of one value for each choice, by number, in which every two
// values of different choices stand together at least once. Each row is filled
// choice by choice with the value that brings in most pairs which no row has yet,
// the first of equals, so that the rows are the same every time. D. M. Cohen and
// others, The AETG System, IEEE Transactions on Software Engineering 23, 1997, has
// the greedy idea; from memory.
func covering(words [][]string) [][]int {
	type two struct{ a, va, b, vb int }
	left := map[two]bool{}
	var order []two
	for a := range words {
		for b := a + 1; b < len(words); b++ {
			for va := range words[a] {
				for vb := range words[b] {
					left[two{a, va, b, vb}] = true
					order = append(order, two{a, va, b, vb})
				}
			}
		}
	}
	at := func(a, va, b, vb int) two {
		if a > b {
			a, va, b, vb = b, vb, a, va
		}
		return two{a, va, b, vb}
	}
	var rows [][]int
	for _, first := range order {
		if !left[first] {
			continue
		}
		row := make([]int, len(words))
		for k := range row {
			row[k] = -1
		}
		row[first.a], row[first.b] = first.va, first.vb
		for k := range words {
			if row[k] >= 0 {
				continue
			}
			best, most := 0, -1
			for v := range words[k] {
				n := 0
				for o, vo := range row {
					if vo >= 0 && left[at(o, vo, k, v)] {
						n++
					}
				}
				if n > most {
					best, most = v, n
				}
			}
			row[k] = best
		}
		for a := range row {
			for b := a + 1; b < len(row); b++ {
				delete(left, two{a, row[a], b, row[b]})
			}
		}
		rows = append(rows, row)
	}
	return rows
}
