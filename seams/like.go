package seams

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"bodkin/seams/form"
)

// whole are the keys that a cloth must have unless it is like another.
func whole() []string {
	return []string{"title", "fibre", "structure", "weight", "thickness", "heat_dots", "widths"}
}

// inherited are the keys that a cloth takes over from the one it is like, in
// the order of [Cloth].
func inherited() []string {
	return []string{"fibre", "structure", "weight", "thickness", "sheerness", "fraying", "slip", "stretch", "recovery", "crease",
		"pile", "lace", "coated", "one_way", "shine", "holes_stay", "heat_dots", "steam", "widths", "shrinkage", "flammable"}
}

// likes fills in the cloths that are like others, and refuses those that are
// not whole. A cloth may be like one that is itself like a third; it is filled
// in from the last of the chain, and a chain that bites its tail is a fault.
func (l *loader) likes() {
	f := filling{loader: l, done: make([]bool, len(l.cloths))}
	for i := range l.cloths {
		f.cloth(i, nil)
	}
}

// filling is the work of filling in cloths; done are those that are looked at.
type filling struct {
	*loader
	done []bool
}

// cloth fills in the cloth i; chain are the names that wait for it.
func (f *filling) cloth(i int, chain []string) {
	p := &f.cloths[i]
	at := p.node.At("like")
	if k := slices.Index(chain, p.entry.Name); k >= 0 {
		f.done[i] = true
		ring := append(slices.Clone(chain[k:]), p.entry.Name)
		f.fault(at, "", "give one of them in full", "cloths are like one another in a ring: %s", strings.Join(ring, " is like "))
		return
	}
	if f.done[i] {
		return
	}
	if p.entry.Like == "" {
		f.done[i] = true
		f.missing(p.node)
		return
	}
	base := position(f.cloths, p.entry.Like)
	if base >= 0 {
		f.cloth(base, append(chain, p.entry.Name))
	}
	if f.done[i] {
		return // in a ring, told where it closed
	}
	f.done[i] = true
	if base < 0 {
		f.listed(at, "cloth", p.entry.Like, names(entries(f.cloths)))
		return
	}
	from := f.cloths[base].entry
	if from.Like != "" && from.Inferred == nil {
		return // could not be filled in itself
	}
	c, err := from.differing(p.node)
	if err != nil {
		f.faults = append(f.faults, faultsOf(err)...)
		return
	}
	p.entry = c
}

// missing refuses a cloth that is like no other and not whole.
func (l *loader) missing(n *form.Node) {
	for _, key := range whole() {
		switch t, scalar := n.At(key).Text(); {
		case !has(n, key):
			l.fault(n, "", "add "+key+": and its value, or like: and a cloth of the shelf", "the key %q is missing", key)
		case scalar && strings.TrimSpace(t.Value) == "":
			l.fault(n.At(key), "", "write it", "the value of %q is empty", key)
		}
	}
}

func has(n *form.Node, key string) bool {
	return slices.ContainsFunc(n.Keys(), func(k form.Text) bool { return k.Value == key })
}

// differing is a cloth like c but for the keys of n. Where n tells the weight
// and not the thickness, thickness goes with weight: the same yarns, set as
// closely in each layer, take the same room for each gram, so that
// thickness / weight stays as it was.
func (c Cloth) differing(n *form.Node) (Cloth, error) {
	out := c
	out.Title, out.Estimates, out.Inferred, out.Own = "", nil, []string{}, false
	out.Widths = slices.Clone(c.Widths)
	if err := n.Decode(&out); err != nil {
		return Cloth{}, err
	}
	if out.Title == "" {
		out.Title = inWords(out.Name)
	}
	out.takenOver(c, n)
	return out, nil
}

// takenOver notes what a cloth that says the keys of n has from the one that it
// is like, and lets its thickness go with its weight.
func (c *Cloth) takenOver(from Cloth, n *form.Node) {
	for _, key := range inherited() {
		if !has(n, key) {
			c.Inferred = append(c.Inferred, key)
		}
	}
	if has(n, "weight") && !has(n, "thickness") && from.Weight > 0 {
		c.Thickness = from.Thickness * c.Weight / from.Weight
	}
}

// inWords is a name of the shelf as a title: my-lawn is My lawn.
func inWords(name string) string {
	words := strings.ReplaceAll(name, "-", " ")
	first, size := utf8.DecodeRuneInString(words)
	return string(unicode.ToUpper(first)) + words[size:]
}

// InferredWords says in a sentence what a cloth has from the one it is like;
// "" where it has everything of its own.
func (c Cloth) InferredWords() string {
	if len(c.Inferred) == 0 {
		return ""
	}
	return fmt.Sprintf("taken over from %s: %s", c.Like, strings.Join(c.Inferred, ", "))
}
