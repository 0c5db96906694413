package process_test

import (
	"strings"
	"testing"

	"bodkin/process"
)

// thickAt is what the plan says of crossings that stand too high.
func thickAt(p *process.Plan) string {
	var said []string
	for _, n := range p.Notices {
		if strings.Contains(n.Text, "plies thick") {
			said = append(said, n.Text)
		}
	}
	return strings.Join(said, "\n")
}

// Plies × thickness against what goes under the foot, which is arithmetic.
// Hammering crossings and turning the wheel by hand over them: common practice,
// no source.
func TestClearanceAtCrossings(t *testing.T) {
	tests := []struct {
		cloth string
		words []string // none: no notice
	}{
		// Seam of three plies under a hem of three: nine plies of 0.9 mm.
		{"denim", []string{"Where it crosses the side seam", "9 plies thick, about 8.1 mm", "hammer", "turn the wheel by hand", "takes 5 mm"}},
		{"faux-fur", []string{"pile is counted standing"}},
		{"cotton-lawn", nil},
	}
	for _, tt := range tests {
		said := thickAt(sewn(t, tt.cloth, "side", "mock-felled", "zigzag-machine"))
		for _, w := range tt.words {
			if !strings.Contains(said, w) {
				t.Errorf("%s does not say %q: %s", tt.cloth, w, said)
			}
		}
		if tt.words == nil && said != "" {
			t.Errorf("%s: %s", tt.cloth, said)
		}
	}
}
