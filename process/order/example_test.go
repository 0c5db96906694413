package order_test

import (
	"context"
	"fmt"

	"bodkin/process/order"
)

// Four jobs want one of two colours and can be done on either of two machines.
// With one machine the colour would have to be changed twice; with both it need
// not be changed at all, though walking between them costs a little.
func Example() {
	colour := order.Attribute{Change: order.Uniform(2, 180), Start: order.Unset}
	p := order.Problem{
		Stations: []order.Station{{Attributes: []order.Attribute{colour}}, {Attributes: []order.Attribute{colour}}},
		Moves:    order.Uniform(2, 20),
		Start:    order.Nowhere,
	}
	for i, c := range []int{0, 1, 0, 1} {
		op := order.Operation{Station: 0, Setting: []int{c}, Or: []order.Way{{Station: 1, Setting: []int{c}}}, Rank: i}
		if i > 0 {
			op.After = []int{i - 1}
		}
		p.Operations = append(p.Operations, op)
	}
	r, err := order.Solve(context.Background(), p, order.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("sequence", r.Sequence, "ways", r.Ways)
	fmt.Println("cost", r.Cost, "proved", r.Proved)
	// Output:
	// sequence [0 1 2 3] ways [0 1 0 1]
	// cost 60 proved true
}
