package seams

import (
	"bytes"
	"slices"
	"strings"

	"bodkin/seams/form"
)

// Entry is an entry of the shelf as it is written, for a reader who wants to
// see or correct it.
type Entry struct {
	Kind, Name, Title, Source string
	Place                     form.Place
	Own                       bool       // the user's
	Over                      form.Place // of the entry of ours whose place the user's takes; zero where of none
	Text                      string     // the YAML of the entry, without its dash and indentation
}

// Entries are all entries of a kind (cloth, stitch, construction …) in the
// shelf's order, ours first, the user's in the place of ours of the same name.
// The files must be such as [Load] takes; the error is [form.Faults].
func Entries(kind string, own ...File) ([]Entry, error) {
	files, err := embedded()
	if err != nil {
		return nil, err
	}
	opening := []byte("\n- " + kind + ":") // as every entry of ours is written
	files = slices.DeleteFunc(files, func(f File) bool { return !bytes.Contains(f.Data, opening) })
	var out []Entry
	for i, f := range append(files, own...) {
		found, err := entriesOf(f, kind)
		if err != nil {
			return nil, err
		}
		for _, e := range found {
			e.Own = i >= len(files)
			if k := slices.IndexFunc(out, func(o Entry) bool { return o.Name == e.Name }); k >= 0 {
				if e.Over = out[k].Place; out[k].Own {
					e.Over = out[k].Over
				}
				out[k] = e
			} else {
				out = append(out, e)
			}
		}
	}
	return out, nil
}

func entriesOf(f File, kind string) ([]Entry, error) {
	root, err := form.Parse(f.Name, f.Data)
	if err != nil {
		return nil, err
	}
	lines := strings.Split(string(f.Data), "\n")
	var out []Entry
	items := root.Items()
	for i, n := range items {
		if n.FirstKey() != kind {
			continue
		}
		end := len(lines)
		if i+1 < len(items) {
			end = items[i+1].Place().Line - 1
		}
		at := n.Place()
		word := func(key string) string {
			if !slices.ContainsFunc(n.Keys(), func(k form.Text) bool { return k.Value == key }) {
				return ""
			}
			t, _ := n.At(key).Text()
			return t.Value
		}
		title := word("title")
		if title == "" {
			title = inWords(word(kind)) // a cloth that is like another may leave it out
		}
		out = append(out, Entry{Kind: kind, Name: word(kind), Title: title, Source: word("source"),
			Place: at, Text: undash(lines[at.Line-1:end], at.Column-1)})
	}
	return out, nil
}

// undash takes the list's dash and the indentation away, and the blank and
// comment lines at the end, which belong to what comes next. A comment that
// stands further left than the entry keeps every sign of its own.
func undash(lines []string, indent int) string {
	var out []string
	for i, l := range lines {
		cut := min(indent, len(l))
		if blanks := len(l) - len(strings.TrimLeft(l, " ")); i > 0 {
			cut = min(cut, blanks)
		}
		out = append(out, strings.TrimRight(l[cut:], " \r"))
	}
	for len(out) > 0 {
		last := strings.TrimSpace(out[len(out)-1])
		if last != "" && !strings.HasPrefix(last, "#") {
			break
		}
		out = out[:len(out)-1]
	}
	return strings.Join(out, "\n") + "\n"
}
