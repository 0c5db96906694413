package process_test

import (
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

// Without any search there is still an order that holds to everything, with a
// bound that is no more than what it costs.
func TestOrderWithoutSearch(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		w := rooms()[3]
		in := process.Input{Job: jobFor(g, "cotton-lawn", "cotton-poplin"), Garment: g, Workroom: w, Shelf: shelf}
		p, err := process.Work(t.Context(), in, order.Options{Nodes: order.NoSearch})
		if err != nil {
			t.Fatal(err)
		}
		checkOrder(t, p)
		checkCost(t, p, w, shelf)
		if p.Order.BoundMinutes <= 0 {
			t.Errorf("%s: no bound is told", name)
		}
	}
}
