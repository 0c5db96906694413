package seams

import (
	"bytes"
	"slices"
	"sync"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// later is the making of a construction, cut out of its file until it is
// wanted: reading YAML is most of the time that a plan takes, and of a hundred
// constructions a garment uses ten.
type later struct {
	file string
	line int    // of the entry in its file, from 1
	text []byte // the making alone, on the lines where it stands

	once sync.Once
	made *making
	err  error
}

// read reads the making, once. The error is [form.Faults].
func (d *later) read(names formula.Names) (*making, error) {
	d.once.Do(func() {
		root, err := form.Parse(d.file, d.text)
		if err != nil {
			d.err = err
			return
		}
		var c struct {
			Passes []Pass       `yaml:"passes"`
			Checks []Check      `yaml:"checks"`
			Figure []FigureItem `yaml:"figure"`
		}
		if d.err = root.Decode(&c); d.err == nil {
			d.made = newMaking(c.Passes, c.Checks, c.Figure, names)
		}
	})
	return d.made, d.err
}

// putOff cuts the making out of every construction of a file of ours: from
// passes: to source:, which stand in this order in all of them. Its lines stay
// behind empty, and lines before it are empty in what is cut out, so that all
// places hold.
func putOff(f File) File {
	var rest []byte
	var entry *later // the construction that is being looked through
	within, line := false, 0
	for text := range bytes.Lines(f.Data) {
		line++
		switch {
		case bytes.HasPrefix(text, []byte("- construction:")):
			entry, within = &later{file: f.Name, line: line}, false
		case bytes.HasPrefix(text, []byte("- ")):
			entry, within = nil, false
		case bytes.HasPrefix(text, []byte("  passes:")) && entry != nil:
			within = true
			entry.text = bytes.Repeat([]byte("\n"), line-1)
			f.later = append(f.later, entry)
		case bytes.HasPrefix(text, []byte("  source:")):
			within = false
		}
		if within {
			entry.text = append(entry.text, text...)
			text = []byte("\n")
		}
		rest = append(rest, text...)
	}
	f.Data = rest
	return f
}

// putOff tells the construction that was just read from n where its making is.
func (r *reader) putOff(n *form.Node) {
	i := slices.IndexFunc(r.put, func(d *later) bool { return d.line == n.Place().Line })
	if k := len(r.constructions) - 1; i >= 0 && k >= 0 && r.constructions[k].node == n {
		r.constructions[k].entry.later = r.put[i]
	}
}
