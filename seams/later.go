package seams

import (
	"bytes"
	"slices"
	"sync"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// later is a construction of ours that is cut out of its file until it is
// wanted: reading YAML is most of the time that a plan takes, and of more than
// a hundred constructions a garment weighs some and sews ten. It is read in two
// parts, what it is chosen and sized by, and how it is made.
type later struct {
	file         string
	line         int    // of the entry in its file, from 1
	text, making []byte // on the lines where they stand
	facts        formula.Names

	read  sync.Once
	whole *Construction
	err   error

	readMaking sync.Once
	made       *making
	makingErr  error
}

// construction reads the construction but for its making, once. The error is
// [form.Faults].
func (d *later) construction() (*Construction, error) {
	d.read.Do(func() {
		root, err := form.Parse(d.file, d.text)
		if err != nil {
			d.err = err
			return
		}
		c := &Construction{}
		if d.err = root.Items()[0].Decode(c); d.err != nil {
			return
		}
		c.later, c.Source = d, ""
		c.works = newWorks(c, d.facts)
		d.whole = c
	})
	return d.whole, d.err
}

// how reads the making, once. The error is [form.Faults].
func (d *later) how(names formula.Names) (*making, error) {
	d.readMaking.Do(func() {
		root, err := form.Parse(d.file, d.making)
		if err != nil {
			d.makingErr = err
			return
		}
		var c struct {
			Passes []Pass       `yaml:"passes"`
			Checks []Check      `yaml:"checks"`
			Figure []FigureItem `yaml:"figure"`
			Stages []Stage      `yaml:"stages"`
			Differ []Difference `yaml:"differ"`
			Source string       `yaml:"source,required"`
		}
		if d.makingErr = root.Decode(&c); d.makingErr == nil {
			d.made = newMaking(making{Passes: c.Passes, Checks: c.Checks, Figure: c.Figure, Stages: c.Stages, Differ: c.Differ, Source: c.Source}, names)
		}
	})
	return d.made, d.makingErr
}

// putOff leaves of every construction of a file of ours the head: its name,
// title, for and kind, which come first in all of them. The making is from
// passes: to the end, its long source included. What sources differ on is left
// out of every entry: nothing that plans asks for it, see [Entry.Differences].
// Lines that are cut out stay behind empty, so that all places hold.
func putOff(f File) File {
	var rest []byte
	var entry *later // the construction that is being looked through
	head, within, line := false, false, 0
	differ := false // in what sources differ on
	for text := range bytes.Lines(f.Data) {
		line++
		if bytes.HasPrefix(text, []byte("  differ:")) {
			differ = true
		} else if len(text) > 2 && text[2] != ' ' {
			differ = false
		}
		if differ && entry == nil {
			text = []byte("\n")
		}
		switch {
		case bytes.HasPrefix(text, []byte("- construction:")):
			entry, head, within = &later{file: f.Name, line: line}, true, false
			entry.text = bytes.Repeat([]byte("\n"), line-1)
			entry.making = bytes.Clone(entry.text)
			f.later = append(f.later, entry)
		case bytes.HasPrefix(text, []byte("- ")):
			entry = nil
		case bytes.HasPrefix(text, []byte("  passes:")):
			within = true
		case bytes.HasPrefix(text, []byte("  source:")) && entry != nil:
			entry.text = append(entry.text, "  source: told with the making\n"...)
			entry.making = append(entry.making, text...)
			entry, text = nil, []byte("\n")
		}
		if entry != nil {
			chosen, made := text, []byte("\n")
			if within {
				chosen, made = made, chosen
			}
			entry.text, entry.making = append(entry.text, chosen...), append(entry.making, made...)
			if !head {
				text = []byte("\n")
			}
			head = head && !bytes.HasPrefix(text, []byte("  kind:"))
		}
		rest = append(rest, text...)
	}
	f.Data = rest
	return f
}

// head reads the head of a construction that was put off.
func (r *reader) head(n *form.Node) {
	i := slices.IndexFunc(r.put, func(d *later) bool { return d.line == n.Place().Line })
	if i < 0 {
		r.constructions = read(r, r.constructions, n)
		return
	}
	var h struct {
		Name  string `yaml:"construction,required"`
		Title string `yaml:"title,required"`
		For   string `yaml:"for,required"`
		Kind  string `yaml:"kind,required"`
	}
	if err := n.Decode(&h); err != nil {
		r.faults = append(r.faults, faultsOf(err)...)
		return
	}
	c := Construction{Name: h.Name, Title: h.Title, For: h.For, Kind: h.Kind, At: n.Place(), later: r.put[i]}
	r.constructions = append(r.constructions, placed[Construction]{c, n})
}

// whole is the construction with all that it is chosen and sized by, read now
// where that was put off. The error is [form.Faults].
func (c *Construction) whole() (*Construction, error) {
	if c.later == nil || c.works != nil {
		return c, nil
	}
	return c.later.construction()
}
