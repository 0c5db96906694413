package form

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Place is a position in a file; lines and columns count from 1, columns in
// characters. The zero Place is nowhere.
type Place struct {
	File         string
	Line, Column int
}

// String is file:line:column, as editors read it.
func (p Place) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Fault is one thing wrong in a file, and how to mend it.
type Fault struct {
	Place
	Length     int    // characters at fault from Column on; 0 where unknown
	SourceLine string // the line as written; "" where it is not at hand
	Message    string // lower case, no full stop
	Nearest    string // the right word nearest to the wrong one, or ""
	Mend       string // what to do, or ""
}

// FaultAt is a fault at a place, for checks made after reading.
func FaultAt(at Place, message, nearest, mend string) Fault {
	return Fault{Place: at, Message: message, Nearest: nearest, Mend: mend}
}

// Error is the fault on one line, without the source.
func (f Fault) Error() string {
	s := f.Message
	if at := f.Place.String(); at != "" {
		s = at + ": " + s
	}
	if f.Nearest != "" {
		s += fmt.Sprintf("; did you mean %q?", f.Nearest)
	}
	if f.Mend != "" {
		s += "; " + f.Mend
	}
	return s
}

// clip is how many characters of a long source line are shown.
const clip = 160

// Show is the fault for a person: place and message, the line with a caret
// under the fault, the nearest word and the mend on lines of their own.
func (f Fault) Show() string {
	var b strings.Builder
	if at := f.Place.String(); at != "" {
		b.WriteString(at + ": ")
	}
	b.WriteString(f.Message + "\n")
	if line := []rune(f.SourceLine); len(line) > 0 && f.Column >= 1 && f.Column <= len(line)+1 {
		from := 0
		if f.Column > clip/2 && len(line) > clip {
			from = f.Column - clip/2
		}
		to := min(len(line), from+clip)
		b.WriteString("    ")
		for _, r := range line[from:to] {
			if unicode.IsControl(r) && r != '\t' {
				r = '\uFFFD'
			}
			b.WriteRune(r)
		}
		b.WriteString("\n    ")
		for _, r := range line[from : f.Column-1] {
			if r != '\t' {
				r = ' '
			}
			b.WriteRune(r)
		}
		b.WriteString("^" + strings.Repeat("~", max(0, min(f.Length, to-f.Column+1)-1)) + "\n")
	}
	if f.Nearest != "" {
		fmt.Fprintf(&b, "  did you mean %q?\n", f.Nearest)
	}
	if f.Mend != "" {
		b.WriteString("  " + f.Mend + "\n")
	}
	return b.String()
}

// Faults are all that is wrong, sorted by place.
type Faults []Fault

// shown is how many faults are told at once; the rest are counted.
const shown = 20

// Error shows the faults one after another, the first twenty in full.
func (fs Faults) Error() string {
	var b strings.Builder
	for i, f := range fs {
		if i == shown {
			fmt.Fprintf(&b, "and %d more\n", len(fs)-shown)
			break
		}
		b.WriteString(f.Show())
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// Unwrap gives the single faults to errors.Is and errors.As.
func (fs Faults) Unwrap() []error {
	errs := make([]error, len(fs))
	for i, f := range fs {
		errs[i] = f
	}
	return errs
}

// WithSource puts the lines of a file beside the faults in it that have none,
// for faults found after reading, where only the place was at hand.
func (fs Faults) WithSource(file string, data []byte) Faults {
	text, _ := strings.CutPrefix(string(data), "\ufeff")
	src := newSource(file, strings.ReplaceAll(text, "\r\n", "\n"))
	out := slices.Clone(fs)
	for i := range out {
		if out[i].File == file && out[i].SourceLine == "" {
			out[i].SourceLine = src.at(out[i].Line)
		}
	}
	return out
}

// Err is the faults sorted by place as an error, or nil where there are none.
func (fs Faults) Err() error {
	if len(fs) == 0 {
		return nil
	}
	sorted := slices.Clone(fs)
	slices.SortStableFunc(sorted, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return sorted
}
