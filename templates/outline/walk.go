package outline

import (
	"fmt"
	"math"
	"slices"
)

// Chain is edges walked one after another, as they lie along a seam. They may
// belong to several pieces and need not touch: a dart between two of them is sewn
// shut.
type Chain []Edge

// Length returns the length of the whole chain, mm.
func (c Chain) Length() float64 {
	var sum float64
	for _, e := range c {
		sum += e.Length()
	}
	return sum
}

// At returns the edge at the distance d along the chain, with the place and the
// direction there. Beyond either end it is the end.
func (c Chain) At(d float64) (edge string, place, tangent Point) {
	for i, e := range c {
		l := e.Length()
		if d <= l || i == len(c)-1 {
			place, tangent = e.At(d)
			return e.Name, place, tangent
		}
		d -= l
	}
	return "", Point{}, Point{}
}

// Meant says what difference is meant between the two sides of a seam. The zero
// value means none.
type Meant struct {
	Least, Most float64 // mm by which the first side is the longer: ease
	Ratio       float64 // the first side over the second where it is gathered; 0 where it is not
	Tolerance   float64 // mm, of the whole seam
}

// Section is the stretch of a seam between two matched notches.
type Section struct {
	A, B float64 // mm on either side
}

// Fullness returns how many mm the first side has over the second.
func (s Section) Fullness() float64 { return s.A - s.B }

// Fit is a seam walked on both sides.
type Fit struct {
	Sections []Section // from notch to notch, the ends of the seam included
	A, B     float64   // mm, the whole
	Ratio    float64   // A over B
}

// MisfitError says by how much the two sides of a seam do not fit, and between
// which notches: 0 is the start, the last the end; -1 and -1 for the whole.
type MisfitError struct {
	From, To   int
	A, B       float64
	OffBy      float64 // mm by which the first side is longer than meant, negative where shorter
	Edges      []string
	Everywhere bool // the whole is wrong, not only a stretch
}

func (e *MisfitError) Error() string {
	where := "over the whole seam"
	if !e.Everywhere {
		where = fmt.Sprintf("between notches %d and %d", e.From, e.To)
	}
	return fmt.Sprintf("edges %q do not fit %s: %.1f mm against %.1f mm, %+.1f mm from what is meant", e.Edges, where, e.A, e.B, e.OffBy)
}

// Walk matches two chains. Notches are distances along either, in rising order,
// the i-th of the one sewn to the i-th of the other. Ease is free to lie in any
// stretch, as in a sleeve's cap, but no stretch may be shorter than its other
// side by more than the tolerance nor eased by more than the whole; gathers keep
// their ratio in the whole seam. It returns a [*MisfitError] where the sides do
// not fit, and a plain error where notches are not in order or not alike in
// number, or where what is meant makes no sense.
func Walk(a, b Chain, notchesA, notchesB []float64, m Meant) (Fit, error) {
	if !(m.Tolerance >= 0 && m.Least <= m.Most && m.Ratio >= 0) || m.Ratio > 0 && (m.Least != 0 || m.Most != 0) {
		return Fit{}, fmt.Errorf("a seam is meant to be eased by %g to %g mm or gathered by %g, with a tolerance of %g mm", m.Least, m.Most, m.Ratio, m.Tolerance)
	}
	if len(notchesA) != len(notchesB) {
		return Fit{}, fmt.Errorf("%d notches are to match %d", len(notchesA), len(notchesB))
	}
	f := Fit{A: a.Length(), B: b.Length()}
	if f.A == 0 || f.B == 0 {
		return Fit{}, fmt.Errorf("a seam of no length cannot be walked")
	}
	f.Ratio = f.A / f.B
	onA, err := stretches(notchesA, f.A)
	if err != nil {
		return Fit{}, err
	}
	onB, err := stretches(notchesB, f.B)
	if err != nil {
		return Fit{}, err
	}
	for i := range onA {
		f.Sections = append(f.Sections, Section{onA[i], onB[i]})
	}
	names := a.names()
	names = append(names, b.names()...)
	if off := m.off(f.A, f.B); off != 0 {
		return f, &MisfitError{A: f.A, B: f.B, OffBy: off, Edges: names, Everywhere: true}
	}
	if m.Ratio > 0 {
		return f, nil
	}
	least, most := min(m.Least, 0), max(m.Most, 0)
	for i, s := range f.Sections {
		if off := beyond(s.Fullness(), least-m.Tolerance, most+m.Tolerance); off != 0 {
			return f, &MisfitError{From: i, To: i + 1, A: s.A, B: s.B, OffBy: off, Edges: names}
		}
	}
	return f, nil
}

// off is by how much two lengths miss what is meant, 0 within the tolerance.
func (m Meant) off(a, b float64) float64 {
	if m.Ratio > 0 {
		return beyond(a-m.Ratio*b, -m.Tolerance, m.Tolerance)
	}
	return beyond(a-b, m.Least-m.Tolerance, m.Most+m.Tolerance)
}

func beyond(x, least, most float64) float64 {
	switch {
	case x < least:
		return x - least
	case x > most:
		return x - most
	}
	return 0
}

func (c Chain) names() []string {
	var names []string
	for _, e := range c {
		names = append(names, e.Name)
	}
	return names
}

// stretches are the lengths between notches.
func stretches(notches []float64, whole float64) ([]float64, error) {
	marks := append(append([]float64{0}, notches...), whole)
	if !slices.IsSorted(marks) || slices.ContainsFunc(marks, math.IsNaN) {
		return nil, fmt.Errorf("notches at %v mm do not follow each other along %.1f mm", notches, whole)
	}
	out := make([]float64, len(marks)-1)
	for i := range out {
		out[i] = marks[i+1] - marks[i]
	}
	return out, nil
}

// Matching returns where a place at the distance d along the first side comes on
// the second, with the fullness of each stretch spread evenly over it.
func (f Fit) Matching(d float64) float64 {
	var onB float64
	for i, s := range f.Sections {
		if d <= s.A || i == len(f.Sections)-1 {
			if s.A == 0 {
				return onB
			}
			return onB + s.B*min(d/s.A, 1)
		}
		d -= s.A
		onB += s.B
	}
	return onB
}
