package unison

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"bodkin/process/order"
)

// Maker is one maker's work.
type Maker struct {
	Acts    []Act         // what each operation of the problem is
	Problem order.Problem // of her own work; the operations of a part are done in their order
}

// Act is what is done to which part. Neither word may hold a dot.
type Act struct{ Part, Does string }

// Number is one place in the sequence.
type Number struct {
	// Key names it for good: part, act, and which of the part's acts of that
	// kind. Where makers work a part in ways that cannot share a sequence, the
	// part has a number after it, as in side@2.
	Key string
	Of  []int // by maker, her operation, or -1 where she has none
}

// Result is the common sequence.
type Result struct {
	Numbers []Number

	// By maker: what her part of the sequence costs her, what the cheapest order
	// costs that could be found for her alone, and what none costs less than.
	Cost, Alone, Bound []int64

	Cheapest bool // no sequence that all can keep costs all together less: proved
}

// HeldError says that numbers held already cannot stay in their order.
type HeldError struct {
	First, Then string // keys: Then is held before First, but must come after it
	Maker       int    // for whom
	Before      int    // her operation that must come first
	After       int    // her operation that is held before it
}

func (e *HeldError) Error() string {
	return fmt.Sprintf("%s must come before %s", e.First, e.Then)
}

// Join finds a sequence. Keys held already, in their order, keep it; those of
// nobody any more are left out. Options limit each search. Errors: [*HeldError],
// those of [order.Solve], and one where acts and operations do not agree. It
// takes about as long as one search for each two makers of different work.
func Join(ctx context.Context, makers []Maker, held []string, o order.Options) (Result, error) {
	for m, maker := range makers {
		if len(maker.Acts) != len(maker.Problem.Operations) {
			return Result{}, fmt.Errorf("maker %d has %d acts and %d operations", m, len(maker.Acts), len(maker.Problem.Operations))
		}
		for _, a := range maker.Acts {
			if strings.Contains(a.Part+a.Does, ".") {
				return Result{}, fmt.Errorf("maker %d: a dot in %s, %s", m, a.Part, a.Does)
			}
		}
		if err := order.Validate(maker.Problem); err != nil {
			return Result{}, err
		}
	}
	j := &joint{makers: makers, apart: map[string]bool{}}
	j.classes()
	for {
		j.align(held)
		knot := j.knot()
		if knot == nil {
			break
		}
		if !j.split(knot) {
			return Result{}, fmt.Errorf("the acts of %s are not in an order in which they can be done", partOf(j.nodes[knot[0]].Key))
		}
	}
	if err := j.lost(held); err != nil {
		return Result{}, err
	}
	if err := j.hold(held); err != nil {
		return Result{}, err
	}
	return j.arrange(ctx, o)
}

// joint is the work of all under way.
type joint struct {
	makers []Maker
	alike  []int // by maker, the first maker whose work is the same
	kind   []int // by maker, the number from 1 of the first whose acts and waiting are the same
	apart  map[string]bool
	nodes  []Number
	at     [][]int // by maker and operation, its node
	after  [][]int // by node, the nodes that must come first
}

// classes finds makers of the same work.
func (j *joint) classes() {
	whole, shape := map[string]int{}, map[string]int{}
	for m, maker := range j.makers {
		var b strings.Builder
		for i, a := range maker.Acts {
			fmt.Fprintln(&b, a, maker.Problem.Operations[i].After)
		}
		if _, ok := shape[b.String()]; !ok {
			shape[b.String()] = len(shape) + 1
		}
		j.kind = append(j.kind, shape[b.String()])
		fmt.Fprint(&b, maker.Problem)
		if _, ok := whole[b.String()]; !ok {
			whole[b.String()] = m
		}
		j.alike = append(j.alike, whole[b.String()])
	}
}

// align makes the nodes and what waits for what.
func (j *joint) align(held []string) {
	j.nodes, j.at, j.after = nil, make([][]int, len(j.makers)), nil
	number := map[string]int{}
	rows := map[string]*row{}
	row := func(m int, part string) *row {
		if j.apart[part] {
			part = fmt.Sprintf("%s@%d", part, j.kind[m])
		}
		if rows[part] == nil {
			rows[part] = newRow(part, held)
		}
		return rows[part]
	}
	for m, maker := range j.makers {
		for _, part := range partsOf(maker) {
			row(m, part).merge(doings(maker, part))
		}
	}
	for m, maker := range j.makers {
		j.at[m] = make([]int, len(maker.Acts))
		for _, part := range partsOf(maker) {
			keys := row(m, part).keys(doings(maker, part))
			for i, a := range maker.Acts {
				if a.Part != part {
					continue
				}
				n, ok := number[keys[0]]
				if !ok {
					n = len(j.nodes)
					number[keys[0]] = n
					j.nodes = append(j.nodes, Number{Key: keys[0], Of: slices.Repeat([]int{-1}, len(j.makers))})
				}
				j.nodes[n].Of[m], j.at[m][i] = i, n
				keys = keys[1:]
			}
		}
	}
	j.after = make([][]int, len(j.nodes))
	for _, part := range slices.Sorted(maps.Keys(rows)) {
		last := -1
		for k := range rows[part].cells {
			n, ok := number[rows[part].key(k)]
			if ok && last >= 0 {
				j.wait(n, last)
			}
			if ok {
				last = n
			}
		}
	}
	for m, maker := range j.makers {
		for i, op := range maker.Problem.Operations {
			for _, b := range op.After {
				j.wait(j.at[m][i], j.at[m][b])
			}
		}
	}
}

func (j *joint) wait(then, first int) {
	if !slices.Contains(j.after[then], first) {
		j.after[then] = append(j.after[then], first)
	}
}

func partsOf(m Maker) []string {
	var parts []string
	for _, a := range m.Acts {
		if !slices.Contains(parts, a.Part) {
			parts = append(parts, a.Part)
		}
	}
	return parts
}

func doings(m Maker, part string) []string {
	var does []string
	for _, a := range m.Acts {
		if a.Part == part {
			does = append(does, a.Does)
		}
	}
	return does
}

// knot returns nodes that wait for each other in a circle, or nil.
func (j *joint) knot() []int {
	p := order.Problem{Stations: make([]order.Station, 1), Start: order.Nowhere}
	for _, after := range j.after {
		p.Operations = append(p.Operations, order.Operation{After: after})
	}
	if c, ok := order.Validate(p).(*order.CycleError); ok {
		return c.Cycles[0]
	}
	return nil
}

// split takes the parts of a knot apart, so that makers of unlike work have
// numbers of their own there. It reports whether there was any to split.
func (j *joint) split(knot []int) bool {
	done := false
	for _, n := range knot {
		part := partOf(j.nodes[n].Key)
		if !strings.Contains(part, "@") {
			j.apart[part], done = true, true
		}
	}
	return done
}

// lost looks for keys that are held and fit nobody any more, while somebody has
// such an act under a new key: the order in which they are held is not that of
// the work.
func (j *joint) lost(held []string) error {
	index := func(key string) int {
		return slices.IndexFunc(j.nodes, func(n Number) bool { return n.Key == key })
	}
	for at, key := range held {
		if index(key) >= 0 {
			continue
		}
		kind := key[:strings.LastIndexByte(key, '.')+1]
		for _, n := range j.nodes {
			if !strings.HasPrefix(n.Key, kind) || slices.Contains(held, n.Key) {
				continue
			}
			for m, i := range n.Of {
				if i < 0 {
					continue
				}
				e := &HeldError{First: key, Then: key, Maker: m, Before: i, After: i}
				for _, other := range held[:at] {
					if k := index(other); k >= 0 && partOf(other) == partOf(key) && j.nodes[k].Of[m] > i {
						e.Then, e.After = other, j.nodes[k].Of[m]
					}
				}
				for _, other := range held[at+1:] {
					if k := index(other); k >= 0 && partOf(other) == partOf(key) && j.nodes[k].Of[m] >= 0 && j.nodes[k].Of[m] < i {
						e.First, e.Before = other, j.nodes[k].Of[m]
					}
				}
				return e
			}
		}
	}
	return nil
}

// hold makes the nodes whose keys are held wait for each other in their order.
func (j *joint) hold(held []string) error {
	last := -1
	for _, key := range held {
		n := slices.IndexFunc(j.nodes, func(n Number) bool { return n.Key == key })
		if n < 0 || n == last {
			continue
		}
		if last >= 0 {
			j.wait(n, last)
		}
		last = n
	}
	if j.knot() == nil {
		return nil
	}
	place := map[int]int{}
	for k, key := range held {
		if n := slices.IndexFunc(j.nodes, func(n Number) bool { return n.Key == key }); n >= 0 {
			place[n] = k
		}
	}
	// What must come before what is followed through nodes that are not held.
	for m, maker := range j.makers {
		for i := range maker.Acts {
			for _, b := range ancestors(maker.Problem, i) {
				then, ok1 := place[j.at[m][i]]
				first, ok2 := place[j.at[m][b]]
				if ok1 && ok2 && first > then {
					return &HeldError{First: held[first], Then: held[then], Maker: m, Before: b, After: i}
				}
			}
		}
	}
	return &HeldError{First: held[len(held)-1], Then: held[0], Maker: -1, Before: -1, After: -1}
}

// ancestors are all operations that must come before one, nearest first.
func ancestors(p order.Problem, i int) []int {
	var out []int
	seen := make([]bool, len(p.Operations))
	queue := []int{i}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		for _, b := range p.Operations[at].After {
			if !seen[b] {
				seen[b] = true
				out = append(out, b)
				queue = append(queue, b)
			}
		}
	}
	return out
}
