package templates

import (
	"fmt"
	"maps"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// lengthName is the name under which laws find the length of a join or edge.
func lengthName(line string) string { return strings.ReplaceAll(line, "-", "_") + "_length" }

// check looks whether this size keeps the garment's laws.
func (w *workshop) check() {
	if len(w.faults) > 0 {
		return // lengths may be wrong
	}
	scopes := make([]formula.Values, len(w.in.scopes))
	for i, s := range w.in.scopes {
		scopes[i] = maps.Clone(s)
	}
	w.lengths(w.whole, scopes) // what is left out is of no length
	for _, c := range w.g.Checks {
		values := scopes[c.from.under]
		holds, err := w.g.formulas[c.Holds.At].Holds(values)
		if err != nil {
			w.faults = append(w.faults, faults(err)...)
			continue
		}
		if holds {
			continue
		}
		at, ok := w.restsOn(c.Holds.Value)
		if !ok {
			at = c.Holds.At
		}
		w.faults = append(w.faults, form.FaultAt(at, withFigures(c.Because, values), "", withFigures(c.Mend, values)))
	}
}

// restsOn is where the first of those measures and choices was given that a law
// asks for; where it names none, those that its values are worked out from.
func (w *workshop) restsOn(law string) (form.Place, bool) {
	seen := map[string]bool{}
	for asked := []string{law}; len(asked) > 0; asked = asked[1:] {
		for name := range identifiers(asked[0]) {
			if place, ok := w.in.places[name]; ok {
				return place, true
			}
			if value, ok := w.g.Values.Get(name); ok && !seen[name] {
				seen[name] = true
				asked = append(asked, value.Value)
			}
		}
	}
	return form.Place{}, false
}

// lengths puts the length of every join, edge and detail under its name, and
// those of a part under their names there too.
func (w *workshop) lengths(g *Garment, scopes []formula.Values) {
	put := func(name form.Text, from origin, x float64) {
		scopes[0][lengthName(name.Value)] = x
		if from.under > 0 {
			scopes[from.under][lengthName(from.local)] = x
		}
	}
	for _, s := range g.Seams {
		x := 0.0
		for _, j := range w.made.Joins {
			if j.Name == s.Join.Value {
				x = float64(j.LengthA)
			}
		}
		put(s.Join, s.from, x)
	}
	for _, e := range g.Edges {
		x := 0.0
		for _, t := range w.made.Treatments {
			if t.Name == e.Edge.Value {
				x = float64(t.Length)
			}
		}
		put(e.Edge, e.from, x)
	}
	for _, t := range g.Details {
		x := 0.0
		for _, d := range w.made.Details {
			if d.Name == t.Detail.Value {
				x = float64(d.Length)
			}
		}
		put(t.Detail, t.from, x)
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
