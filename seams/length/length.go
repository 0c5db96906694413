package length

import "fmt"

// MM is a length in millimetres. It may be negative where a caller allows it.
type MM float64

// Exact conversions to millimetres. The inch has been 25.4 mm since the
// international yard and pound agreement of 1959 (1 yd = 0.9144 m).
const (
	Millimetre MM = 1
	Centimetre MM = 10
	Metre      MM = 1000
	Inch       MM = 25.4
	Foot       MM = 12 * Inch
	Yard       MM = 36 * Inch
)

// Longest is the largest magnitude that Parse takes: a kilometre. Anything
// longer is a slip of the pen.
const Longest MM = 1e6

// UnmarshalText reads a length as [Parse] does.
func (m *MM) UnmarshalText(text []byte) error {
	v, err := Parse(string(text))
	if err != nil {
		return err
	}
	*m = v
	return nil
}

// Inches is the length in inches.
func (m MM) Inches() float64 { return float64(m / Inch) }

// Error says why a text is not a length, and how to mend it.
type Error struct {
	Text    string // as written
	Problem string // lower case, no full stop
	Nearest string // the unit probably meant, or ""
	Mend    string // what to write instead, or ""
}

func (e *Error) Error() string {
	s := fmt.Sprintf("%q: %s", e.Text, e.Problem)
	if e.Nearest != "" {
		s += fmt.Sprintf("; did you mean %q?", e.Nearest)
	}
	if e.Mend != "" {
		s += "; " + e.Mend
	}
	return s
}

// Trouble is the problem alone, to follow the text.
func (e *Error) Trouble() string { return e.Problem }

// Hint is the nearest right word and the way to mend, each "" where unknown.
func (e *Error) Hint() (nearest, mend string) { return e.Nearest, e.Mend }
