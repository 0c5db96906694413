package templates

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Parse reads a garment. The error is [form.Faults], everything wrong in the
// file: what cannot be read, names that do not exist or stand twice, formulas
// that do not compile or go round in a circle, edges that do not meet, are not
// used, or are used twice. What depends on a size is checked by [Garment.Make].
func Parse(file string, data []byte) (*Garment, error) {
	var g Garment
	if err := form.Decode(file, data, &g); err != nil {
		return nil, err
	}
	p := &parser{g: &g}
	p.read()
	// Edges can be followed from piece to piece only where all names are right.
	if len(p.faults) == 0 {
		p.variants()
	}
	if err := p.faults.Err(); err != nil {
		return nil, err
	}
	return &g, nil
}

// read compiles what a decoded file says, by itself.
func (p *parser) read() {
	p.whole = p.g
	p.g.formulas = map[form.Place]*formula.Formula{}
	p.named()
	p.include()
	p.alike()
	p.measures()
	p.choices()
	p.define()
	p.conditions()
	p.pieces()
	p.details()
	p.joinsAndEdges()
	p.checks()
}

// parser gathers the faults of one file.
type parser struct {
	g      *Garment
	whole  *Garment      // with what some choices leave out
	names  formula.Names // measures and choices
	first  int           // how many pieces are drawn before the garment's own
	faults form.Faults
}

// fault reports a fault of a whole text.
func (p *parser) fault(t form.Text, message, nearest, mend string) {
	p.faults = append(p.faults, t.Fault(0, utf8.RuneCountInString(t.Value), message, nearest, mend))
}

// known reports an unknown word, with the nearest right one.
func (p *parser) known(t form.Text, what string, among []string) bool {
	for _, w := range among {
		if w == t.Value {
			return true
		}
	}
	nearest, mend := form.Nearest(t.Value, among), ""
	if nearest == "" {
		mend = fmt.Sprintf("write one of %s", strings.Join(among, ", "))
		if len(among) == 0 {
			mend = "there are none in this file"
		}
	}
	p.fault(t, fmt.Sprintf("there is no %s %q", what, t.Value), nearest, mend)
	return false
}

// once reports a name that stands twice.
func (p *parser) once(t form.Text, what string, seen map[string]bool) {
	if seen[t.Value] {
		p.fault(t, fmt.Sprintf("the %s %q stands twice", what, t.Value), "", "give one of them another name")
	}
	seen[t.Value] = true
}

// spelt reports a name that cannot be one.
func (p *parser) spelt(t form.Text, what string) {
	if t.Value == "" || strings.Trim(t.Value, "abcdefghijklmnopqrstuvwxyz0123456789_-") != "" {
		p.fault(t, fmt.Sprintf("%q cannot be the name of a %s", t.Value, what), "", "use small letters, figures, underscores and hyphens")
	}
}

// strain checks that a strain is a known one.
func (p *parser) strain(at form.Text, strain int) {
	if strain < 0 || strain > 3 {
		p.fault(at, fmt.Sprintf("its strain cannot be %d", strain), "",
			"0 is none, 1 light, 2 worn tight or pulled, 3 seat and crotch")
	}
}
