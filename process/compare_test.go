package process_test

import (
	"math"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// Two plans beside each other: what is told of them adds up, and a plan beside
// itself shows no difference.
func TestCompare(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	j := jobFor(g, "quilting-cotton", "cotton-lawn")
	one, two := plan(t, j, roomOf("steam", "straight-stitcher"), shelf), plan(t, j, roomOf("steam", "straight-stitcher", "overlocker-4"), shelf)
	if c := process.Compare(one, one); c.Minutes != 0 || len(c.Seams) != 0 {
		t.Errorf("a plan beside itself: %+v", c)
	}
	c := process.Compare(one, two)
	want := one.Totals.SewMinutes + one.Totals.ChangeMinutes - two.Totals.SewMinutes - two.Totals.ChangeMinutes
	if math.Abs(c.Minutes-want) > 1e-9 {
		t.Errorf("%.2f minutes less, want %.2f", c.Minutes, want)
	}
	if len(c.Seams) == 0 {
		t.Error("an overlocker changes no seam of a firm cotton")
	}
	if back := process.Compare(two, one); math.Abs(back.Minutes+c.Minutes) > 1e-9 || len(back.Seams) != len(c.Seams) {
		t.Errorf("the other way round: %.2f minutes and %d seams, want %.2f and %d", back.Minutes, len(back.Seams), -c.Minutes, len(c.Seams))
	}
}
