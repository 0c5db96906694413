package seams

import (
	"fmt"
	"slices"

	"bodkin/seams/form"
)

// Difference is where sources differ on something that an entry settles: what each
// says, and, where it is a figure of the entry, the range that they span, in the
// unit of that figure.
type Difference struct {
	On    string   `yaml:"on,required"`
	Of    string   `yaml:"of"` // the key or the size that it is about; empty where it is no figure
	Least float64  `yaml:"least"`
	Most  float64  `yaml:"most"`
	Says  []string `yaml:"says,required"` // each with its source
}

// Differences are those of an entry. The error is [form.Faults].
func (e Entry) Differences() ([]Difference, error) {
	root, err := form.Parse(e.Place.File, []byte(e.Text))
	if err != nil || !slices.ContainsFunc(root.Keys(), func(k form.Text) bool { return k.Value == "differ" }) {
		return nil, err
	}
	var out []Difference
	for _, n := range root.At("differ").Items() {
		var d Difference
		if err := n.Decode(&d); err != nil {
			return nil, err
		}
		out = append(out, d)
	}
	return out, nil
}

// differ refuses a range without a figure, or the wrong way round.
func (l *loader) differ(list []Difference, n *form.Node) {
	for i, d := range list {
		at := n.At("differ", i)
		switch {
		case d.Of == "" && (d.Least != 0 || d.Most != 0):
			l.fault(at.At("on"), "", "say with of: which figure it is, or leave least and most out", "a range of what?")
		case d.Of != "" && d.Least >= d.Most:
			l.fault(at.At("least"), "", "write the lower figure as least and the higher as most", "sources that differ from %g to %g do not differ", d.Least, d.Most)
		}
		if len(d.Says) == 0 {
			l.fault(at.At("says"), "", fmt.Sprintf("write what each source says on %s", d.On), "nothing is said")
		}
	}
}
