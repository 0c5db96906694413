package seams

import (
	"fmt"
	"math"
	"strconv"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Sized is a construction worked out for one place of a garment, in mm.
type Sized struct {
	Sizes      []Size  // named sizes in file order
	Allowance  float64 // on the garment edge, on both edges of a join
	AllowanceB float64 // on the second edge of a join; the same unless given
	Finished   float64 // width seen or felt when done; 0 where not given
	Strip      *SizedStrip
	Elastic    *SizedElastic
	Passes     []SizedPass
	Checks     []SizedCheck
	Figure     []Drawn
	Stages     []SizedStage
	Differ     []Difference // what sources differ on
	Source     string       // of the construction
}

// Size is a named size.
type Size struct {
	Name string
	MM   float64
}

// SizedStrip is the cut width of a strip and what is added at each of its ends.
type SizedStrip struct{ Width, Ends float64 }

// SizedElastic is the width of an elastic and the length to cut it.
type SizedElastic struct{ Width, Length float64 }

// SizedPass is a pass that is done here.
type SizedPass struct {
	Number   int // in the construction, from 1
	Pass     *Pass
	StitchMM float64 // 0 where the cloth's own stitch length is meant
}

// SizedCheck is a measure to be taken after a pass that is done here: the one
// it is written for or, where that is left out, the last one before it.
type SizedCheck struct {
	AfterPass         int // in the construction, from 1
	What              string
	Expect, Tolerance float64
}

// Drawn is a line of the cross-section, worked out: x in mm, y in plies.
type Drawn struct {
	Item    *FigureItem
	Through [][2]float64
	MM      float64 // for a dimension line, the size it shows
}

// SizedStage is how the work lies after the passes From to After, which are done
// here: the passes since the stage before.
type SizedStage struct {
	From, After int // in the construction, from 1
	Figure      []Drawn
}

// Size is the size of a name, and whether there is one: the construction's own
// sizes, and allowance, finished, strip_width, elastic_width, elastic_length.
// These are the names that words and dimension lines may use.
func (s Sized) Size(name string) (mm float64, ok bool) {
	for _, size := range s.Sizes {
		if size.Name == name {
			return size.MM, true
		}
	}
	switch {
	case name == allowanceName:
		return s.Allowance, true
	case name == "finished":
		return s.Finished, true
	case name == "strip_width" && s.Strip != nil:
		return s.Strip.Width, true
	case name == "elastic_width" && s.Elastic != nil:
		return s.Elastic.Width, true
	case name == "elastic_length" && s.Elastic != nil:
		return s.Elastic.Length, true
	}
	return 0, false
}

// Measure works out every size of the construction for the facts. The error is
// a [form.Fault]: a formula that fails, a width that cannot be, or an enclosed
// seam whose parts do not add up.
func (c *Construction) Measure(facts Facts) (Sized, error) {
	c, err := c.whole()
	if err != nil {
		return Sized{}, err
	}
	made, err := c.making()
	if err != nil {
		return Sized{}, err
	}
	m := measurer{c: c, works: c.ready(), made: made, values: formula.ValuesOf(facts.usable())}
	return m.measure()
}

type measurer struct {
	c      *Construction
	works  *works
	made   *making
	values formula.Values
	out    Sized
	err    error // the first fault; later calls do nothing
}

func (m *measurer) fail(at form.Place, format string, args ...any) {
	if m.err == nil {
		m.err = form.FaultAt(at, m.c.Name+": "+fmt.Sprintf(format, args...), "", "")
	}
}

// number is a formula's number, 0 where it was left out.
func (m *measurer) number(f *formula.Formula) float64 {
	if m.err != nil || f == nil {
		return 0
	}
	x, err := f.Number(m.values)
	if err != nil {
		m.err = err
	}
	return x
}

// atLeast is a formula's number that must not be below least.
func (m *measurer) atLeast(least float64, what string, f *formula.Formula) float64 {
	x := m.number(f)
	if f != nil && m.err == nil && x < least {
		m.fail(f.Text().At, "%s comes out as %s mm", what, hundredths(x))
	}
	return x
}

// hundredths writes a number for a message, to a hundredth.
func hundredths(x float64) string {
	return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64)
}

// least is the narrowest strip, elastic or stitch that can be, in mm.
const least = 0.1

func (m *measurer) measure() (Sized, error) {
	c, w, out := m.c, m.works, &m.out
	out.Source, out.Differ = m.made.Source, m.made.Differ
	for i, s := range c.Sizes {
		mm := m.number(w.sizes[i])
		m.values[s.Key.Value] = mm
		out.Sizes = append(out.Sizes, Size{s.Key.Value, mm})
	}
	out.Allowance = m.atLeast(0, "the allowance", w.allowance)
	if _, taken := c.Sizes.Get(allowanceName); !taken {
		m.values[allowanceName] = out.Allowance
	}
	out.AllowanceB = out.Allowance
	if w.allowanceB != nil {
		out.AllowanceB = m.atLeast(0, "the second allowance", w.allowanceB)
	}
	out.Finished = m.atLeast(0, "the finished width", w.finished)
	if c.Strip != nil {
		out.Strip = &SizedStrip{m.atLeast(least, "the width of the strip", w.stripWidth), m.atLeast(0, "the strip's end", w.stripEnds)}
	}
	if c.Elastic != nil {
		out.Elastic = &SizedElastic{m.atLeast(least, "the width of the elastic", w.elasticWidth), m.atLeast(least, "the length of the elastic", w.elasticLength)}
	}
	m.passes()
	m.checks()
	m.figure()
	m.stages()
	m.enclosed()
	if m.err != nil {
		return Sized{}, m.err
	}
	return m.out, nil
}

func (m *measurer) passes() {
	for i := range m.made.Passes {
		if m.err != nil {
			return
		}
		done, err := m.made.passWhen[i].Holds(m.values)
		if err != nil {
			m.err = err
			return
		}
		if done {
			stitch := m.atLeast(least, "the stitch length", m.made.passStitch[i])
			m.out.Passes = append(m.out.Passes, SizedPass{i + 1, &m.made.Passes[i], stitch})
		}
	}
}

func (m *measurer) checks() {
	for i, k := range m.made.Checks {
		after := 0
		for _, p := range m.out.Passes {
			if p.Number <= k.AfterPass {
				after = p.Number
			}
		}
		expect, tolerance := m.number(m.made.checkExpect[i]), m.atLeast(least, "the tolerance", m.made.checkTolerance[i])
		if after > 0 {
			m.out.Checks = append(m.out.Checks, SizedCheck{after, k.What, expect, tolerance})
		}
	}
}

func (m *measurer) figure() {
	m.out.Figure = m.drawn(m.made.Figure, m.made.figure)
}

// stages are those with a pass that is done here since the stage before.
func (m *measurer) stages() {
	before := 0
	for i, s := range m.made.Stages {
		var sized SizedStage
		for _, p := range m.out.Passes {
			if p.Number <= before || p.Number > s.After {
				continue
			}
			if sized.From == 0 {
				sized.From = p.Number
			}
			sized.After = p.Number
		}
		before = s.After
		if sized.From > 0 {
			sized.Figure = m.drawn(s.Shows, m.made.stages[i])
			m.out.Stages = append(m.out.Stages, sized)
		}
	}
}

// drawn works out the lines of a section that are there.
func (m *measurer) drawn(items []FigureItem, by []drawnBy) []Drawn {
	var out []Drawn
	for i := range items {
		if m.err != nil {
			return nil
		}
		item := &items[i]
		there, err := by[i].when.Holds(m.values)
		if err != nil {
			m.err = err
			return nil
		}
		if !there {
			continue
		}
		d := Drawn{Item: item}
		for _, xy := range by[i].through {
			if len(xy) != 2 {
				m.fail(m.c.At, "a point of the figure needs x and y")
				return nil
			}
			d.Through = append(d.Through, [2]float64{m.number(xy[0]), m.number(xy[1])})
		}
		if item.Size != "" {
			mm, ok := m.out.Size(item.Size)
			if !ok {
				m.fail(m.c.At, "the figure shows a size %q that there is not", item.Size)
			}
			d.MM = mm
		}
		out = append(out, d)
	}
	return out
}

// closes is how exactly an enclosed seam must add up, in mm.
const closes = 0.01

// enclosed checks the law of a seam that hides its raw edges: what is stitched
// first, what is stitched second and what the fold takes are the allowance, and
// the trimmed edges are narrower than the second stitching, or they fray out.
func (m *measurer) enclosed() {
	if m.err != nil || m.c.Inside != "enclosed" {
		return
	}
	first, ok1 := m.out.Size("first")
	second, ok2 := m.out.Size("second")
	turn, ok3 := m.out.Size("turn")
	trim, ok4 := m.out.Size("trim")
	if !ok1 || !ok2 || !ok3 || !ok4 {
		return
	}
	if sum := first + second + turn; math.Abs(sum-m.out.Allowance) > closes {
		m.fail(m.c.At, "the seam does not close: first %s + second %s + turn %s = %s mm, and the allowance is %s mm",
			hundredths(first), hundredths(second), hundredths(turn), hundredths(sum), hundredths(m.out.Allowance))
	}
	if trim >= second {
		m.fail(m.c.At, "the edges trimmed to %s mm reach the second row at %s mm, so threads will stick out", hundredths(trim), hundredths(second))
	}
}
