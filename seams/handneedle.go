package seams

import (
	"fmt"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// HandNeedle gives the needle for hand stitches in a cloth; its condition may ask
// about what that of a [NeedleRule] may. The first of the table that holds is
// taken. Hand needles are numbered the other way round: the higher, the finer.
type HandNeedle struct {
	Name   string       `yaml:"hand-needle,required"`
	Title  string       `yaml:"title,required"`
	Kind   string       `yaml:"kind,required" oneof:"sharps betweens milliner's ballpoint glover's"`
	Size   int          `yaml:"size,required"` // 1 the coarsest to 12 the finest
	When   form.Text    `yaml:"when"`
	Hints  []string     `yaml:"hints"`
	Differ []Difference `yaml:"differ"`
	Source string       `yaml:"source,required"`

	rule *formula.Formula
}

// Words are the kind and the size, as on the packet.
func (h *HandNeedle) Words() string { return fmt.Sprintf("%s %d", h.Kind, h.Size) }

func (h *HandNeedle) prepare(facts formula.Names) {
	h.rule = formula.New(h.When, formula.Condition, rowNames(facts))
}

func (h *HandNeedle) formulas() []*formula.Formula { return given(h.rule) }
