package seams

import (
	"fmt"

	"bodkin/seams/form"
)

// Shelf is everything known, each kind in the order of its files: what comes
// with bodkin first, a user's additions after it, except that a user's needle,
// hand needle, thread, pressing and stay rules come before ours, since the first that holds is taken.
type Shelf struct {
	Cloths        []Cloth
	Stitches      []Stitch
	Machines      []Machine
	Constructions []Construction // of ours, [Load] reads the heads alone; ask [Shelf.Construction] for one
	Needles       []NeedleRule
	HandNeedles   []HandNeedle
	Threads       []Thread
	Interfacings  []Interfacing
	Tools         []Tool
	Pressing      []Pressing
	Acts          []Act
	Cautions      []Caution
	Stays         []Stay
}

// UnknownError says that the shelf has no entry of a name.
type UnknownError struct {
	What    string // cloth, stitch, machine …
	Name    string
	Nearest string // "" where nothing is close
}

func (e *UnknownError) Error() string {
	s := fmt.Sprintf("%q %s", e.Name, e.Trouble())
	if e.Nearest != "" {
		s += fmt.Sprintf("; did you mean %q?", e.Nearest)
	}
	return s
}

// Trouble is the message alone, to follow the name.
func (e *UnknownError) Trouble() string { return "is no " + e.What + " on the shelf" }

// Hint is the nearest name, and how to find the others.
func (e *UnknownError) Hint() (nearest, mend string) { return e.Nearest, "" }

// entry is what every kind on the shelf can say of itself.
type entry interface{ name() string }

func (c Cloth) name() string        { return c.Name }
func (s Stitch) name() string       { return s.Name }
func (m Machine) name() string      { return m.Name }
func (c Construction) name() string { return c.Name }
func (n NeedleRule) name() string   { return n.Name }
func (h HandNeedle) name() string   { return h.Name }
func (t Thread) name() string       { return t.Name }
func (i Interfacing) name() string  { return i.Name }
func (t Tool) name() string         { return t.Name }
func (p Pressing) name() string     { return p.Name }
func (a Act) name() string          { return a.Name }
func (c Caution) name() string      { return c.Name }
func (s Stay) name() string         { return s.Name }

func find[T entry](what string, list []T, name string) (*T, error) {
	for i := range list {
		if list[i].name() == name {
			return &list[i], nil
		}
	}
	return nil, &UnknownError{What: what, Name: name, Nearest: form.Nearest(name, names(list))}
}

func names[T entry](list []T) []string {
	out := make([]string, len(list))
	for i := range list {
		out[i] = list[i].name()
	}
	return out
}

// Cloth is the cloth of a name. The error is an [*UnknownError], here and below.
func (s *Shelf) Cloth(name string) (*Cloth, error) { return find("cloth", s.Cloths, name) }

// Stitch is the stitch type of a name, such as 301.
func (s *Shelf) Stitch(name string) (*Stitch, error) { return find("stitch", s.Stitches, name) }

// Machine is the machine, iron or hand of a name.
func (s *Shelf) Machine(name string) (*Machine, error) { return find("machine", s.Machines, name) }

// Construction is the construction of a name. The error is an [*UnknownError],
// or [form.Faults] in what was not read before.
func (s *Shelf) Construction(name string) (*Construction, error) {
	c, err := find("construction", s.Constructions, name)
	if err != nil {
		return nil, err
	}
	return c.whole()
}

// Thread is the thread of a name.
func (s *Shelf) Thread(name string) (*Thread, error) { return find("thread", s.Threads, name) }

// Interfacing is the interfacing of a name.
func (s *Shelf) Interfacing(name string) (*Interfacing, error) {
	return find("interfacing", s.Interfacings, name)
}

// Tool is the small tool of a name, such as sleeve board.
func (s *Shelf) Tool(name string) (*Tool, error) { return find("tool", s.Tools, name) }

// Act is the act of a name.
func (s *Shelf) Act(name string) (*Act, error) { return find("act", s.Acts, name) }

// Caution is the caution of a name.
func (s *Shelf) Caution(name string) (*Caution, error) { return find("caution", s.Cautions, name) }
