package seams

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// File is a shelf file of the user's: its name, for faults, and its text.
type File struct {
	Name string
	Data []byte

	later []*later // what is cut out of Data, of a file of ours
}

// Load reads the shelf that comes with bodkin and the user's own files in the
// same form, whose entries win over ours of the same name. The error is
// [form.Faults], everything wrong in the files: a name that stands twice, a
// source left out, limits that contradict each other, a stitch or an act that
// is not on the shelf, a formula of the user's that cannot be read. Formulas
// of ours are compiled when first used, and our constructions are read when
// first weighed and measured; see [LoadWhole].
func Load(own ...File) (*Shelf, error) { return load(false, own) }

// LoadWhole is [Load] with nothing put off, for whoever wants to go through all
// that there is in every construction.
func LoadWhole(own ...File) (*Shelf, error) { return load(true, own) }

func load(whole bool, own []File) (*Shelf, error) {
	files, err := embedded()
	if err != nil {
		return nil, err
	}
	theirs := readAll(own)
	for i := range theirs {
		// A stitch, an act or a machine of the user's may not suit a making of ours.
		r := &theirs[i]
		whole = whole || len(r.stitches)+len(r.acts)+len(r.machines) > 0
	}
	if !whole {
		for i := range files {
			files[i] = putOff(files[i])
		}
	}
	l := &loader{facts: formula.NamesOf(Facts{})}
	ours := readAll(files)
	for i := range ours {
		l.add(&ours[i], false)
	}
	for i := range theirs {
		l.add(&theirs[i], true)
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

// readAll reads each file by itself, side by side; what follows is in their order.
func readAll(files []File) []reader {
	readers := make([]reader, len(files))
	var wg sync.WaitGroup
	for i, f := range files {
		wg.Go(func() { readers[i].read(f) })
	}
	wg.Wait()
	return readers
}

// embedded are the files that come with bodkin, the constructions last.
func embedded() ([]File, error) {
	var files []File
	for _, pattern := range []string{"shelf/*.yaml", "shelf/constructions/*.yaml"} {
		names, err := fs.Glob(shelf, pattern)
		if err != nil {
			return nil, err
		}
		// A kind's main file first: cloths.yaml, then cloths-knit.yaml.
		slices.SortFunc(names, func(a, b string) int {
			return strings.Compare(strings.TrimSuffix(a, ".yaml"), strings.TrimSuffix(b, ".yaml"))
		})
		for _, name := range names {
			data, err := shelf.ReadFile(name)
			if err != nil {
				return nil, err
			}
			files = append(files, File{Name: strings.TrimPrefix(name, "shelf/"), Data: data})
		}
	}
	return files, nil
}

// placed is an entry with the node it was read from.
type placed[T entry] struct {
	entry T
	node  *form.Node
}

// lists are the entries of each kind, in order.
type lists struct {
	cloths        []placed[Cloth]
	stitches      []placed[Stitch]
	machines      []placed[Machine]
	constructions []placed[Construction]
	needles       []placed[NeedleRule]
	handNeedles   []placed[HandNeedle]
	threads       []placed[Thread]
	interfacings  []placed[Interfacing]
	tools         []placed[Tool]
	pressing      []placed[Pressing]
	acts          []placed[Act]
	cautions      []placed[Caution]
	stays         []placed[Stay]
}

// reader reads one file.
type reader struct {
	lists
	faults form.Faults
	put    []*later // what was put off, in the order of the entries
}

// kinds are the words that may open an entry.
func kinds() []string {
	return []string{"cloth", "stitch", "machine", "construction", "needle", "hand-needle", "thread", "interfacing",
		"tool", "pressing", "act", "caution", "stay"}
}

func (r *reader) read(f File) {
	r.put = f.later
	root, err := form.Parse(f.Name, f.Data)
	if err != nil {
		r.faults = faultsOf(err)
		return
	}
	if !root.IsList() {
		r.faults = append(r.faults, root.Fault("a shelf file is a list of entries", "",
			"start each entry with - and its kind, such as - cloth: my-cloth"))
		return
	}
	for _, n := range root.Items() {
		r.entry(n)
	}
}

// faultsOf are the faults of an error that is made of nothing else.
func faultsOf(err error) form.Faults {
	if fs, ok := errors.AsType[form.Faults](err); ok {
		return fs
	}
	if f, ok := errors.AsType[form.Fault](err); ok {
		return form.Faults{f}
	}
	return nil
}

func (r *reader) entry(n *form.Node) {
	switch kind := n.FirstKey(); kind {
	case "cloth":
		r.cloths = read(r, r.cloths, n)
	case "stitch":
		r.stitches = read(r, r.stitches, n)
	case "machine":
		r.machines = read(r, r.machines, n)
	case "construction":
		r.head(n)
	case "needle":
		r.needles = read(r, r.needles, n)
	case "hand-needle":
		r.handNeedles = read(r, r.handNeedles, n)
	case "thread":
		r.threads = read(r, r.threads, n)
	case "interfacing":
		r.interfacings = read(r, r.interfacings, n)
	case "tool":
		r.tools = read(r, r.tools, n)
	case "pressing":
		r.pressing = read(r, r.pressing, n)
	case "act":
		r.acts = read(r, r.acts, n)
	case "caution":
		r.cautions = read(r, r.cautions, n)
	case "stay":
		r.stays = read(r, r.stays, n)
	default:
		r.faults = append(r.faults, n.Fault(fmt.Sprintf("an entry starts with its kind, not with %q", kind),
			form.Nearest(kind, kinds()), "the kinds are "+strings.Join(kinds(), ", ")))
	}
}

func read[T entry](r *reader, list []placed[T], n *form.Node) []placed[T] {
	var e T
	if err := n.Decode(&e); err != nil {
		r.faults = append(r.faults, faultsOf(err)...)
		return list
	}
	return append(list, placed[T]{e, n})
}

// loader puts the files together.
type loader struct {
	lists        // ours, where the user's have not taken their place, and the user's
	own    lists // the user's alone
	faults form.Faults
	facts  formula.Names
}

// add takes in a file. Needle, hand needle, thread, pressing and stay rules of the user's come
// before ours, since the first that holds is taken.
func (l *loader) add(r *reader, own bool) {
	l.faults = append(l.faults, r.faults...)
	add(l, &l.cloths, &l.own.cloths, r.cloths, own, false)
	add(l, &l.stitches, &l.own.stitches, r.stitches, own, false)
	add(l, &l.machines, &l.own.machines, r.machines, own, false)
	add(l, &l.constructions, &l.own.constructions, r.constructions, own, false)
	add(l, &l.needles, &l.own.needles, r.needles, own, true)
	add(l, &l.handNeedles, &l.own.handNeedles, r.handNeedles, own, true)
	add(l, &l.threads, &l.own.threads, r.threads, own, true)
	add(l, &l.interfacings, &l.own.interfacings, r.interfacings, own, false)
	add(l, &l.tools, &l.own.tools, r.tools, own, false)
	add(l, &l.pressing, &l.own.pressing, r.pressing, own, true)
	add(l, &l.acts, &l.own.acts, r.acts, own, false)
	add(l, &l.cautions, &l.own.cautions, r.cautions, own, false)
	add(l, &l.stays, &l.own.stays, r.stays, own, true)
}

func add[T entry](l *loader, all, owned *[]placed[T], more []placed[T], own, first bool) {
	added := 0
	for _, e := range more {
		among := *all
		if own {
			among = *owned
		}
		if i := position(among, e.entry.name()); i >= 0 {
			l.faults = append(l.faults, e.node.Fault(fmt.Sprintf("%q stands here twice", e.entry.name()), "",
				fmt.Sprintf("keep one of the two; the first is at %s", among[i].node.Place())))
			continue
		}
		if own {
			*owned = append(*owned, e)
		}
		switch i := position(*all, e.entry.name()); {
		case i >= 0:
			(*all)[i] = e
		case first && own:
			*all = slices.Insert(*all, added, e)
			added++
		default:
			*all = append(*all, e)
		}
	}
}

func position[T entry](list []placed[T], name string) int {
	return slices.IndexFunc(list, func(p placed[T]) bool { return p.entry.name() == name })
}

func entries[T entry](list []placed[T]) []T {
	out := make([]T, len(list))
	for i := range list {
		out[i] = list[i].entry
	}
	return out
}

func (l *loader) shelf() *Shelf {
	l.likes()
	for i, p := range l.cloths {
		l.cloths[i].entry.Own = position(l.own.cloths, p.entry.Name) >= 0
	}
	s := &Shelf{
		Cloths:        entries(l.cloths),
		Stitches:      entries(l.stitches),
		Machines:      entries(l.machines),
		Constructions: entries(l.constructions),
		Needles:       entries(l.needles),
		HandNeedles:   entries(l.handNeedles),
		Threads:       entries(l.threads),
		Interfacings:  entries(l.interfacings),
		Tools:         entries(l.tools),
		Pressing:      entries(l.pressing),
		Acts:          entries(l.acts),
		Cautions:      entries(l.cautions),
		Stays:         entries(l.stays),
	}
	prepare(l, l.own.stitches, s.Stitches)
	prepare(l, l.own.constructions, s.Constructions)
	prepare(l, l.own.needles, s.Needles)
	prepare(l, l.own.handNeedles, s.HandNeedles)
	prepare(l, l.own.threads, s.Threads)
	prepare(l, l.own.interfacings, s.Interfacings)
	prepare(l, l.own.pressing, s.Pressing)
	prepare(l, l.own.cautions, s.Cautions)
	prepare(l, l.own.stays, s.Stays)
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
func prepare[T entry, P ruled[T]](l *loader, own []placed[T], list []T) {
	for i := range list {
		P(&list[i]).prepare(l.facts)
		if position(own, list[i].name()) >= 0 {
			l.faults = append(l.faults, faultsOf(compile(P(&list[i]).formulas()))...)
		}
	}
}
