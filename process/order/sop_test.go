package order_test

import (
	"bufio"
	"fmt"
	"io"
	"strconv"

	"bodkin/process/order"
)

// readSOP reads a sequential ordering problem in the form of TSPLIB (G.
// Reinelt, ORSA Journal on Computing 3, 1991): nodes become operations of one
// station, each with a value of its own of the one attribute. -1 in row i,
// column j means that j comes before i.
func readSOP(r io.Reader) (order.Problem, error) {
	words := bufio.NewScanner(r)
	words.Buffer(nil, 1<<20)
	words.Split(bufio.ScanWords)
	for words.Scan() && words.Text() != "EDGE_WEIGHT_SECTION" {
	}
	var numbers []int64
	for words.Scan() && words.Text() != "EOF" {
		v, err := strconv.ParseInt(words.Text(), 10, 64)
		if err != nil {
			return order.Problem{}, err
		}
		numbers = append(numbers, v)
	}
	if err := words.Err(); err != nil {
		return order.Problem{}, err
	}
	if len(numbers) == 0 || int64(len(numbers)-1) != numbers[0]*numbers[0] {
		return order.Problem{}, fmt.Errorf("%d numbers do not make a matrix", len(numbers))
	}
	n := int(numbers[0])
	p := order.Problem{Stations: make([]order.Station, 1)}
	change := order.Uniform(n, 0)
	for i := range n {
		op := order.Operation{Setting: []int{i}, Rank: i}
		for j := range n {
			c := numbers[1+i*n+j]
			if c == -1 {
				op.After = append(op.After, j)
			} else {
				change[i][j] = c
			}
		}
		p.Operations = append(p.Operations, op)
	}
	p.Stations[0].Attributes = []order.Attribute{{Change: change, Start: order.Unset}}
	return p, nil
}
