package process_test

import (
	"testing"

	"bodkin/templates"
)

// TestThreadOfTrousers: a pair of denim trousers takes about as much thread as is
// published for adult jeans, about 180 m with waste (a trade page on thread
// consumption, secondary source). Jeans have more topstitched pockets and no
// darts, so a quarter to either side is allowed.
func TestThreadOfTrousers(t *testing.T) {
	g, err := templates.Load("darted-trousers")
	if err != nil {
		t.Fatal(err)
	}
	p := plan(t, jobFor(g, "denim", "cotton-poplin"), roomOf("steam", "straight-stitcher", "overlocker-3"), loadShelf(t))
	total := 0.0
	for _, th := range p.Thread {
		total += th.Metres
	}
	if total < 0.75*180 || total > 1.25*180 {
		t.Errorf("%.0f m of thread, published about 180 m", total)
	}
}
