package sheets

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"bodkin/seams/form"
)

// Wording is what a sheet says of its own, beside the words of the plan.
type Wording struct{ say wording }

// English is the wording that sheets have where no other is asked for.
func English() *Wording { return &Wording{english()} }

// With is the wording with the sentences of a file in place of its own. The file
// is YAML: the parts of a sentence's name are keys within keys, as YAML writes
// them, and whatever it does not name stays. A sentence may use the {values} of
// the one that it replaces and no others; lengths among them come in the reader's
// units. The faults of the file are form.Faults; w is not altered.
func (w *Wording) With(file string, data []byte) (*Wording, error) {
	root, err := form.Parse(file, data)
	if err != nil {
		return nil, err
	}
	out := *w
	r := wordReader{places: out.say.sentences()}
	r.read(root, "")
	if err := r.faults.WithSource(file, data).Err(); err != nil {
		return nil, err
	}
	for i, text := range r.texts {
		*r.places[i].text = text
	}
	return &out, nil
}

// wordReader collects the sentences of a file, and its faults.
type wordReader struct {
	places []worded
	texts  map[int]string // by position in places
	faults form.Faults
}

func (r *wordReader) read(n *form.Node, under string) {
	keys := n.Keys()
	if len(keys) == 0 {
		r.faults = append(r.faults, n.Fault("this is no group of sentences", "", "write the names of sentences, each with its words"))
		return
	}
	for _, key := range keys {
		name := under + key.Value
		value := n.At(key.Value)
		group := slices.ContainsFunc(r.places, func(p worded) bool { return strings.HasPrefix(p.name, name+".") })
		i := slices.IndexFunc(r.places, func(p worded) bool { return p.name == name })
		switch text, isText := value.Text(); {
		case group:
			r.read(value, name+".")
		case i < 0:
			r.faults = append(r.faults, form.FaultAt(key.Place(0), fmt.Sprintf("no sentence of the sheets is called %q", name),
				form.Nearest(key.Value, r.within(under)), "bodkin start --wording writes them all"))
		case !isText:
			r.faults = append(r.faults, value.Fault(fmt.Sprintf("%s is one sentence", name), "", "write its words after the colon"))
		default:
			r.sentence(i, text)
		}
	}
}

// within are the keys that may stand under a name.
func (r *wordReader) within(under string) []string {
	var out []string
	for _, p := range r.places {
		if rest, ok := strings.CutPrefix(p.name, under); ok {
			key, _, _ := strings.Cut(rest, ".")
			out = append(out, key)
		}
	}
	return slices.Compact(out)
}

// sentence takes the words of a sentence where all their values are known.
func (r *wordReader) sentence(i int, text form.Text) {
	known := valuesIn(*r.places[i].text)
	mend := "this sentence has no values"
	if len(known) > 0 {
		mend = "this sentence has {" + strings.Join(known, "}, {") + "}"
	}
	rest, at := text.Value, 0
	for {
		before, after, found := strings.Cut(rest, "{")
		if !found {
			break
		}
		at += len([]rune(before))
		value, beyond, closed := strings.Cut(after, "}")
		switch {
		case !closed:
			r.faults = append(r.faults, text.Fault(at, 1, "a { without its }", "", mend))
			return
		case !slices.Contains(known, value):
			r.faults = append(r.faults, text.Fault(at, len([]rune(value))+2, fmt.Sprintf("%s has no value {%s}", r.places[i].name, value),
				form.Nearest(value, known), mend))
		}
		at += len([]rune(value)) + 2
		rest = beyond
	}
	if r.texts == nil {
		r.texts = map[int]string{}
	}
	r.texts[i] = text.Value
}

// valuesIn are the values that a sentence stands for, each once, in its order.
func valuesIn(pattern string) []string {
	var out []string
	for {
		_, after, found := strings.Cut(pattern, "{")
		value, rest, closed := strings.Cut(after, "}")
		if !found || !closed {
			return out
		}
		if !slices.Contains(out, value) {
			out = append(out, value)
		}
		pattern = rest
	}
}

// YAML is the wording as a file that With reads.
func (w *Wording) YAML() []byte {
	say := w.say
	var out bytes.Buffer
	var above []string
	for _, s := range say.sentences() {
		keys := strings.Split(s.name, ".")
		last := len(keys) - 1
		for i, key := range keys[:last] {
			if i >= len(above) || !slices.Equal(above[:i+1], keys[:i+1]) {
				fmt.Fprintf(&out, "%s%s:\n", strings.Repeat("  ", i), key)
			}
		}
		above = keys[:last]
		fmt.Fprintf(&out, "%s%s: %s\n", strings.Repeat("  ", last), keys[last], quoted(*s.text))
	}
	return out.Bytes()
}

// quoted is a text as YAML reads it whatever is in it: its double quotes are those
// of JSON.
func quoted(text string) string {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(text) // a string always can be
	return strings.TrimSpace(out.String())
}
