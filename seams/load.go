package seams

import (
	"fmt"
	"io/fs"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// File is a shelf file of the user's: its name, for faults, and its text.
type File struct {
	Name string
	Data []byte
}

// Load reads the shelf that comes with bodkin and the user's own files in the
// same form, whose entries win over ours of the same name. The error is
// [form.Faults], everything wrong in the files: a name that stands twice, a
// source left out, limits that contradict each other, a stitch or an act that
// is not on the shelf, a formula of the user's that cannot be read. Formulas
// of ours are compiled when first used.
func Load(own ...File) (*Shelf, error) {
	l := newLoader()
	ours, err := fs.Glob(shelf, "shelf/*.yaml")
	if err != nil {
		return nil, err
	}
	constructions, err := fs.Glob(shelf, "shelf/constructions/*.yaml")
	if err != nil {
		return nil, err
	}
	for _, name := range append(ours, constructions...) {
		data, err := shelf.ReadFile(name)
		if err != nil {
			return nil, err
		}
		l.read(strings.TrimPrefix(name, "shelf/"), data, false)
	}
	for _, f := range own {
		l.read(f.Name, f.Data, true)
	}
	// An entry that cannot be read is missed by all that name it, so what is
	// amiss among entries is told only once each can be read.
	if err := l.faults.Err(); err != nil {
		return nil, err
	}
	s := l.shelf()
	l.check(s)
	if err := l.faults.Err(); err != nil {
		return nil, err
	}
	return s, nil
}

// loader gathers the entries of all files with the nodes they were read from.
type loader struct {
	cloths        bin[Cloth]
	stitches      bin[Stitch]
	machines      bin[Machine]
	constructions bin[Construction]
	needles       bin[NeedleRule]
	threads       bin[Thread]
	interfacings  bin[Interfacing]
	acts          bin[Act]
	cautions      bin[Caution]
	faults        form.Faults
	facts         formula.Names
}

func newLoader() *loader { return &loader{facts: formula.NamesOf(Facts{})} }

// bin holds the entries of one kind. Own entries of a new name are put first
// where the first that holds is taken.
type bin[T entry] struct {
	ours, own []placed[T]
}

type placed[T entry] struct {
	entry T
	node  *form.Node
}

// kinds are the words that may open an entry.
func kinds() []string {
	return []string{"cloth", "stitch", "machine", "construction", "needle", "thread", "interfacing", "act", "caution"}
}

func (l *loader) read(file string, data []byte, own bool) {
	root, err := form.Parse(file, data)
	if err != nil {
		l.keep(err)
		return
	}
	if !root.IsList() {
		l.faults = append(l.faults, root.Fault("a shelf file is a list of entries", "", "start each entry with - and its kind, such as - cloth: my-cloth"))
		return
	}
	for _, n := range root.Items() {
		l.entry(n, own)
	}
}

func (l *loader) keep(err error) {
	switch err := err.(type) {
	case form.Faults:
		l.faults = append(l.faults, err...)
	case form.Fault:
		l.faults = append(l.faults, err)
	}
}

func (l *loader) entry(n *form.Node, own bool) {
	kind := ""
	if keys := n.Keys(); len(keys) > 0 {
		kind = keys[0].Value
	}
	switch kind {
	case "cloth":
		put(l, &l.cloths, n, own)
	case "stitch":
		put(l, &l.stitches, n, own)
	case "machine":
		put(l, &l.machines, n, own)
	case "construction":
		put(l, &l.constructions, n, own)
	case "needle":
		put(l, &l.needles, n, own)
	case "thread":
		put(l, &l.threads, n, own)
	case "interfacing":
		put(l, &l.interfacings, n, own)
	case "act":
		put(l, &l.acts, n, own)
	case "caution":
		put(l, &l.cautions, n, own)
	default:
		l.faults = append(l.faults, n.Fault("an entry starts with its kind, not with "+fmt.Sprintf("%q", kind),
			form.Nearest(kind, kinds()), "the kinds are "+strings.Join(kinds(), ", ")))
	}
}

func put[T entry](l *loader, b *bin[T], n *form.Node, own bool) {
	var e T
	if err := n.Decode(&e); err != nil {
		l.keep(err)
		return
	}
	list := &b.ours
	if own {
		list = &b.own
	}
	for _, earlier := range *list {
		if earlier.entry.name() == e.name() {
			at := earlier.node.Place()
			l.faults = append(l.faults, n.Fault(fmt.Sprintf("%q stands here twice", e.name()), "",
				fmt.Sprintf("keep one of the two; the first is at %s", at)))
			return
		}
	}
	*list = append(*list, placed[T]{e, n})
}

// all are the entries after the user's have taken the place of ours.
func (b *bin[T]) all(ownFirst bool) []placed[T] {
	var out, added []placed[T]
	for _, o := range b.ours {
		for _, mine := range b.own {
			if mine.entry.name() == o.entry.name() {
				o = mine
			}
		}
		out = append(out, o)
	}
	for _, mine := range b.own {
		if _, err := find("", entries(b.ours), mine.entry.name()); err != nil {
			added = append(added, mine)
		}
	}
	if ownFirst {
		return append(added, out...)
	}
	return append(out, added...)
}

func entries[T entry](list []placed[T]) []T {
	out := make([]T, len(list))
	for i := range list {
		out[i] = list[i].entry
	}
	return out
}

func (l *loader) shelf() *Shelf {
	s := &Shelf{
		Cloths:        entries(l.cloths.all(false)),
		Stitches:      entries(l.stitches.all(false)),
		Machines:      entries(l.machines.all(false)),
		Constructions: entries(l.constructions.all(false)),
		Needles:       entries(l.needles.all(true)),
		Threads:       entries(l.threads.all(true)),
		Interfacings:  entries(l.interfacings.all(false)),
		Acts:          entries(l.acts.all(false)),
		Cautions:      entries(l.cautions.all(false)),
	}
	prepare(l, &l.stitches, s.Stitches)
	prepare(l, &l.constructions, s.Constructions)
	prepare(l, &l.needles, s.Needles)
	prepare(l, &l.threads, s.Threads)
	prepare(l, &l.interfacings, s.Interfacings)
	prepare(l, &l.cautions, s.Cautions)
	return s
}

// ruled is an entry with conditions or formulas.
type ruled[T any] interface {
	*T
	prepare(facts formula.Names)
	formulas() []*formula.Formula
}

// prepare makes the formulas of entries ready to be compiled, and compiles the
// user's, so that a slip in them is told when the file is read; ours are tested.
func prepare[T entry, P ruled[T]](l *loader, b *bin[T], list []T) {
	for i := range list {
		P(&list[i]).prepare(l.facts)
		if _, err := find("", entries(b.own), list[i].name()); err == nil {
			l.keep(compile(P(&list[i]).formulas()))
		}
	}
}
