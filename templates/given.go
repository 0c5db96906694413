package templates

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
	"bodkin/seams/length"
)

// given is what a garment is made from: measures and choices as used.
type given struct {
	measures, choices []Value
	values            formula.Values        // of the garment's own names
	scopes            []formula.Values      // by scope; the first is values
	places            map[string]form.Place // of what was given
	faults            form.Faults
	table             *NamedSize // that the size is named by, or nil
	size              form.Text  // its name where it stands
}

// take reads the given measures and choices, fills in defaults, and works out
// the garment's values.
func (g *Garment) take(size, choices form.Pairs[form.Text]) (*given, error) {
	asked := size
	size, table, err := g.fromTable(size)
	if err != nil {
		return nil, err
	}
	in := &given{values: formula.Values{}, places: map[string]form.Place{}, table: table}
	in.size, _ = asked.Get(named)
	in.known(size, g.Measures.Keys(), "measure")
	in.known(choices, g.Choices.Keys(), "choice")
	for _, m := range g.Measures {
		in.measure(g, m.Key.Value, m.Value, size)
	}
	for k := range in.measures {
		m := &in.measures[k]
		if _, own := asked.Get(m.Name); table != nil && !own && !m.Default {
			m.From = table
		}
	}
	for _, c := range g.Choices {
		in.choose(c.Key.Value, c.Value, choices)
	}
	if err := in.faults.Err(); err != nil {
		return nil, err
	}
	in.scopes = []formula.Values{in.values}
	for range g.Includes {
		in.scopes = append(in.scopes, formula.Values{})
	}
	return in, g.settle(in, &workshop{g: g})
}

// known reports names that the garment does not have, and names given twice.
func (in *given) known(pairs form.Pairs[form.Text], names []string, what string) {
	for _, p := range pairs {
		name := p.Key.Value
		in.places[name] = p.Value.At
		if !slices.Contains(names, name) {
			nearest, mend := form.Nearest(name, names), ""
			if nearest == "" {
				mend = "its " + what + "s are " + strings.Join(names, ", ")
			}
			in.fault(p.Key, fmt.Sprintf("this garment has no %s %q", what, name), nearest, mend)
		}
	}
}

func (in *given) fault(t form.Text, message, nearest, mend string) {
	in.faults = append(in.faults, t.Fault(0, len([]rune(t.Value)), message, nearest, mend))
}

func (in *given) measure(g *Garment, name string, m Measure, size form.Pairs[form.Text]) {
	v := Value{Name: name, Title: m.Title, IsLength: true, MM: m.Default}
	t, ok := size.Get(name)
	switch {
	case ok:
		mm, err := length.Parse(t.Value)
		if e, bad := errors.AsType[*length.Error](err); bad {
			nearest, mend := e.Hint()
			in.fault(t, fmt.Sprintf("%s: %q %s", name, t.Value, e.Trouble()), nearest, mend)
			return
		}
		if mm < m.Least || mm > m.Most {
			mend := "measure again " + m.How + ", and look at the unit"
			if in.table != nil && t.At == in.size.At {
				t, mend = in.size, "that is the figure of size "+in.table.Name+": choose another size or garment"
			}
			in.fault(t, fmt.Sprintf("%s of %s is outside what this garment is drafted for, %s to %s", name,
				said(float64(mm)), said(float64(m.Least)), said(float64(m.Most))), "", mend)
			return
		}
		v.MM = mm
	case !m.Reckoned.IsZero():
		if len(in.faults) > 0 {
			return // it may rest on a measure that is at fault
		}
		x, err := g.number(m.Reckoned, in.values)
		if err != nil {
			in.faults = append(in.faults, faults(err)...)
			return
		}
		v.MM, v.Default = min(max(length.MM(x), m.Least), m.Most), true
	case in.table != nil:
		in.fault(in.size, fmt.Sprintf("size %s does not tell the measure %q", in.table.Name, name), "",
			fmt.Sprintf("measure %s, and add %s: and the length to the sizes", m.How, name))
		return
	case m.Default != 0:
		v.Default = true
	default:
		var at form.Place
		if len(size) > 0 {
			at = size[0].Key.At
		}
		in.faults = append(in.faults, form.FaultAt(at, fmt.Sprintf("the measure %q is missing", name), "",
			fmt.Sprintf("measure %s, and add %s: and the length to the sizes", m.How, name)))
		return
	}
	in.measures = append(in.measures, v)
	in.values[name] = float64(v.MM)
}

func (in *given) choose(name string, c Choice, choices form.Pairs[form.Text]) {
	v := Value{Name: name, Title: c.Title, IsLength: c.IsLength()}
	t, ok := choices.Get(name)
	if !ok {
		t, v.Default = c.Default, true
	}
	if words := c.Words(); len(words) > 0 {
		if !slices.Contains(words, t.Value) {
			in.fault(t, fmt.Sprintf("%s cannot be %q", name, t.Value), form.Nearest(t.Value, words), "choose one of "+strings.Join(words, ", "))
			return
		}
		v.Word = t.Value
		in.choices = append(in.choices, v)
		in.values[name] = v.Word
		return
	}
	x, fault := quantity(t, v.IsLength)
	if fault != nil {
		fault.Message = name + ": " + fault.Message
		in.faults = append(in.faults, *fault)
		return
	}
	least, _ := quantity(c.Least, v.IsLength)
	most, _ := quantity(c.Most, v.IsLength)
	if x < least || x > most {
		in.fault(t, fmt.Sprintf("%s of %s is outside its range, %s to %s", name, t.Value, c.Least.Value, c.Most.Value), "", "choose a figure between them")
		return
	}
	if v.IsLength {
		v.MM = length.MM(x)
	} else {
		v.Number = x
	}
	in.choices = append(in.choices, v)
	in.values[name] = x
}

// said writes a length for a message.
func said(mm float64) string { return length.Format(length.MM(mm), length.Centimetres) }

// faults makes an error of a formula into faults.
func faults(err error) form.Faults {
	if fs, ok := errors.AsType[form.Faults](err); ok {
		return fs
	}
	if f, ok := errors.AsType[form.Fault](err); ok {
		return form.Faults{f}
	}
	return form.Faults{form.FaultAt(form.Place{}, err.Error(), "", "")}
}
