package templates

import (
	"fmt"
	"maps"
	"strings"

	"bodkin/seams/form"
)

// lengthName is the name under which laws find the length of a join or edge.
func lengthName(line string) string { return strings.ReplaceAll(line, "-", "_") + "_length" }

// check looks whether this size keeps the garment's laws.
func (w *workshop) check() {
	if len(w.faults) > 0 {
		return // lengths may be wrong
	}
	values := maps.Clone(w.in.values)
	for _, j := range w.made.Joins {
		values[lengthName(j.Name)] = float64(j.LengthA)
	}
	for _, t := range w.made.Treatments {
		values[lengthName(t.Name)] = float64(t.Length)
	}
	for _, c := range w.g.Checks {
		holds, err := w.g.formulas[c.Holds.At].Holds(values)
		if err != nil {
			w.faults = append(w.faults, faults(err)...)
			continue
		}
		if holds {
			continue
		}
		at := c.Holds.At
		for name := range identifiers(c.Holds.Value) {
			if place, ok := w.in.places[name]; ok {
				at = place
				break
			}
		}
		w.faults = append(w.faults, form.FaultAt(at, withFigures(c.Because, values), "", withFigures(c.Mend, values)))
	}
}

// withFigures puts values into {names}.
func withFigures(words string, values map[string]any) string {
	var b strings.Builder
	for {
		before, rest, ok := strings.Cut(words, "{")
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		name, after, ok := strings.Cut(rest, "}")
		switch v := values[name].(type) {
		case float64:
			b.WriteString(said(v))
		case string:
			b.WriteString(v)
		default:
			fmt.Fprintf(&b, "{%s}", name)
		}
		if !ok {
			return b.String()
		}
		words = after
	}
}
