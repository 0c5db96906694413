package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// Where a room can only do by hand what it would sew by machine, the plan says
// which machine would be quicker, and by how much; where hand work is the better
// work, or a machine is there, it says nothing. The minutes are the plan's own:
// worked out in a room that has the machine, each line takes so much less.
func TestHandWorkNamesTheMachineThatIsMissing(t *testing.T) {
	shelf := loadShelf(t)
	byHand := func(p *process.Plan) []string {
		var said []string
		for _, n := range p.Notices {
			if n.About == "by hand" {
				said = append(said, n.Text)
			}
		}
		return said
	}
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	j := jobFor(g, "cotton-lawn", "cotton-lawn")
	bare := byHand(plan(t, j, roomOf("steam"), shelf))
	if len(bare) != 1 || !strings.Contains(bare[0], "straight-stitch machine") || !strings.Contains(bare[0], "the side seam (") || !strings.Contains(bare[0], "min less") {
		t.Errorf("without a machine the plan says %q", bare)
	}
	if said := byHand(plan(t, j, roomOf("steam", "straight-stitcher"), shelf)); slices.ContainsFunc(said, func(s string) bool { return strings.Contains(s, "seam (") }) {
		t.Errorf("with a machine the plan says %q", said)
	}
	if said := byHand(plan(t, jobFor(garmentOf(t, "open-jacket"), "wool-coating", "wool-coating"), roomOf("steam", "zigzag-machine"), shelf)); len(said) > 0 {
		t.Errorf("of a hem that is better sewn by hand the plan says %q", said)
	}
}
