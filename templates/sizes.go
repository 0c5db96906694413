package templates

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/length"
)

// NamedSize is a body by a published table.
type NamedSize struct {
	Name     string                `yaml:"size,required"`
	Title    string                `yaml:"title,required"`
	About    string                `yaml:"about"`
	Measures form.Pairs[length.MM] `yaml:"measures,required"`
	Source   string                `yaml:"source,required"`
}

//go:embed sizes.yaml
var sizesText []byte

const sizesFile = "sizes.yaml"

// Sizes are the named sizes, as they stand in their file.
func Sizes() ([]NamedSize, error) {
	var list []NamedSize
	if err := form.Decode(sizesFile, sizesText, &list); err != nil {
		return nil, err
	}
	return list, nil
}

// SizesText is the file of the named sizes, and its name.
func SizesText() (data []byte, file string) { return slices.Clone(sizesText), sizesFile }

// Asks are the measures of the garment that a named size does not tell and that
// are not reckoned from others, so that they must be taken.
func (g *Garment) Asks(s NamedSize) []string {
	var out []string
	for _, m := range g.Measures {
		if !slices.Contains(s.Measures.Keys(), m.Key.Value) && m.Value.Reckoned.IsZero() {
			out = append(out, m.Key.Value)
		}
	}
	return out
}

// named is the key under which a job names a size.
const named = "named"

// fromTable puts the measures of a named size in for those that the garment
// wants and that are not given. It returns the sizes without the name, and what
// came from the table.
func (g *Garment) fromTable(size form.Pairs[form.Text]) (form.Pairs[form.Text], *NamedSize, error) {
	name, ok := size.Get(named)
	if !ok || slices.Contains(g.Measures.Keys(), named) {
		return size, nil, nil
	}
	list, err := Sizes()
	if err != nil {
		return nil, nil, err
	}
	var names []string
	at := -1
	for k, s := range list {
		names = append(names, s.Name)
		if s.Name == name.Value {
			at = k
		}
	}
	if at < 0 {
		return nil, nil, form.Faults{name.Fault(0, len([]rune(name.Value)), fmt.Sprintf("no size %q", name.Value), form.Nearest(name.Value, names),
			"bodkin list sizes shows what there is; or give the measures themselves")}
	}
	var out form.Pairs[form.Text]
	for _, p := range size {
		if p.Key.Value != named {
			out = append(out, p)
		}
	}
	found := false
	for _, m := range list[at].Measures {
		if !slices.Contains(g.Measures.Keys(), m.Key.Value) {
			continue
		}
		found = true
		if _, given := out.Get(m.Key.Value); !given {
			out = append(out, form.Pair[form.Text]{Key: form.Text{Value: m.Key.Value, At: name.At},
				Value: form.Text{Value: fmt.Sprintf("%g mm", float64(m.Value)), At: name.At}})
		}
	}
	if !found {
		return nil, nil, form.Faults{name.Fault(0, len([]rune(name.Value)), "size "+name.Value+" has none of the measures of this garment", "",
			"give "+strings.Join(g.Measures.Keys(), ", "))}
	}
	return out, &list[at], nil
}
