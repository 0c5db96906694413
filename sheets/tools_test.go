package sheets

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
)

// A board is laid out where a step is pressed over it, and not elsewhere. Needle
// board, else towel or scrap: Working with Napped Fabrics, Guideline 4.218;
// sleeve board and clapper: common practice, no source.
func TestBoardsAmongTheTools(t *testing.T) {
	for _, board := range []string{"needle board", "sleeve board", "clapper"} {
		p := &process.Plan{Operations: []process.Operation{{Does: "press", Pressed: &process.Pressed{Over: []string{board}}}}}
		bare := &process.Plan{Operations: []process.Operation{{Does: "press", Pressed: &process.Pressed{}}, {Does: "press"}}}
		k := slices.IndexFunc(smallTools(english().tools), func(x tool) bool { return strings.HasPrefix(strings.ToLower(x.words), board) })
		if k < 0 || !smallTools(english().tools)[k].wanted(p) || smallTools(english().tools)[k].wanted(bare) {
			t.Errorf("%s: at %d", board, k)
		}
	}
}
