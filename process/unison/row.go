package unison

import (
	"slices"
	"strconv"
	"strings"
)

// A row is all that is done to one part by anybody, laid over each other.
type row struct {
	part  string
	cells []cell
	most  map[string]int // of each act, the highest number given
}

// A cell is an act and which of its kind it is.
type cell struct {
	does string
	k    int
}

// newRow begins with the keys of the part that are held.
func newRow(part string, held []string) *row {
	r := &row{part: part, most: map[string]int{}}
	for _, key := range held {
		w := strings.Split(key, ".")
		if len(w) != 3 || w[0] != part {
			continue
		}
		if k, err := strconv.Atoi(w[2]); err == nil {
			r.cells = append(r.cells, cell{w[1], k})
			r.most[w[1]] = max(r.most[w[1]], k)
		}
	}
	return r
}

func partOf(key string) string {
	part, _, _ := strings.Cut(key, ".")
	return part
}

// matches returns for each act of a sequence the cell that it is, or -1: the
// longest sequence that both have (R. A. Wagner and M. J. Fischer, The
// string-to-string correction problem, Journal of the ACM 21, 1974), of equal
// ones the one that comes earliest in the row.
func (r *row) matches(does []string) []int {
	n, m := len(does), len(r.cells)
	longest := make([][]int, n+1) // from i and k on
	longest[n] = make([]int, m+1)
	for i := n - 1; i >= 0; i-- {
		longest[i] = make([]int, m+1)
		for k := m - 1; k >= 0; k-- {
			longest[i][k] = max(longest[i+1][k], longest[i][k+1])
			if does[i] == r.cells[k].does {
				longest[i][k] = max(longest[i][k], 1+longest[i+1][k+1])
			}
		}
	}
	at := slices.Repeat([]int{-1}, n)
	for i, k := 0, 0; i < n && k < m; {
		switch {
		case does[i] == r.cells[k].does && longest[i][k] == 1+longest[i+1][k+1]:
			at[i] = k
			i, k = i+1, k+1
		case longest[i][k] == longest[i][k+1]:
			k++
		default:
			i++
		}
	}
	return at
}

// merge makes room for a sequence of acts.
func (r *row) merge(does []string) {
	at := r.matches(does)
	var out []cell
	k := 0
	for i, d := range does {
		if at[i] < 0 {
			r.most[d]++
			out = append(out, cell{d, r.most[d]})
			continue
		}
		out = append(out, r.cells[k:at[i]+1]...)
		k = at[i] + 1
	}
	r.cells = append(out, r.cells[k:]...)
}

// keys names the acts of a sequence that has been merged.
func (r *row) keys(does []string) []string {
	var keys []string
	for _, k := range r.matches(does) {
		keys = append(keys, r.key(k))
	}
	return keys
}

func (r *row) key(k int) string {
	return r.part + "." + r.cells[k].does + "." + strconv.Itoa(r.cells[k].k)
}
