package templates

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// FitDraft finds a figure of a piece by trying it out: the one between least and
// most at which edges have a certain length together, as the height of a sleeve's cap is
// found that makes its line as long as the armhole with its ease. The piece's
// points and curves may use the figure by its name.
type FitDraft struct {
	Find  form.Text   `yaml:"find,required"`
	Edges []form.Text `yaml:"edges,required"`
	Long  form.Text   `yaml:"long,required"` // mm
	Least form.Text   `yaml:"least,required"`
	Most  form.Text   `yaml:"most,required"`
}

// tried checks the figure that is found, and what it is found by.
func (p *parser) tried(d *PieceDraft, names formula.Names) {
	if d.Fit == nil || !d.Like.IsZero() {
		return // the piece that it is like is checked
	}
	f := d.Fit
	for _, t := range []form.Text{f.Long, f.Least, f.Most} {
		p.compile(t, formula.Number, names)
	}
	for _, e := range f.Edges {
		p.known(e, "edge", d.edges())
	}
	if why := names.Refuses(f.Find.Value); why != "" {
		p.fault(f.Find, why, "", "choose another name")
	}
}

// found are the names that the points may use: those before, and the figure that
// is found.
func (d *PieceDraft) found(before formula.Names) formula.Names {
	if d.Fit == nil {
		return before
	}
	return before.With(formula.Number, d.Fit.Find.Value)
}

// try draws the edges again and again until they are as long as they should be,
// and returns the values with the figure that makes it so.
func (g *Garment) try(d *PieceDraft, values formula.Values) (formula.Values, error) {
	f := d.Fit
	if f == nil {
		return values, nil
	}
	var figures [3]float64
	for i, t := range []form.Text{f.Long, f.Least, f.Most} {
		var err error
		if figures[i], err = g.number(t, values); err != nil {
			return nil, err
		}
	}
	long, least, most := figures[0], figures[1], figures[2]
	with := maps.Clone(values)
	beyond := func(x float64) (float64, error) {
		with[f.Find.Value] = x
		sum, err := g.drawnLength(d, with)
		return sum - long, err
	}
	x, at, err := crossing(beyond, least, most)
	if err != nil {
		return nil, err
	}
	if math.IsNaN(x) {
		return nil, form.Faults{f.Find.Fault(0, len([]rune(f.Find.Value)),
			fmt.Sprintf("with %s from %s to %s the %s of the %s is %s to %s long, and should be %s", f.Find.Value, said(least), said(most),
				wordsOf(f.Edges), d.Piece.Value, said(long+at[0]), said(long+at[1]), said(long)), "",
			"look again at the measures and choices; if they are right, the draft must be changed for them")}
	}
	with[f.Find.Value] = x
	return with, nil
}

// drawnLength is how long the edges are together that a figure is found by, mm.
// Nothing else of the piece is drawn.
func (g *Garment) drawnLength(d *PieceDraft, values formula.Values) (float64, error) {
	s, err := g.plot(d, values)
	if err != nil {
		return 0, err
	}
	sum := 0.0
	for _, line := range d.Outline {
		if !slices.ContainsFunc(d.Fit.Edges, func(t form.Text) bool { return t.Value == line.Edge.Value }) {
			continue
		}
		segments, err := g.segment(s, line)
		if err != nil {
			return 0, err
		}
		for _, x := range segments {
			sum += x.Length()
		}
	}
	return sum, nil
}

func wordsOf(texts []form.Text) string {
	var words []string
	for _, t := range texts {
		words = append(words, t.Value)
	}
	return strings.Join(words, " and ")
}

// crossing returns where f is 0 between two places, by false position with the
// weight of a lasting end halved (the Illinois rule: M. Dowell and P. Jarratt,
// BIT 11, 1971); NaN, with f at both, where f does not change its sign.
func crossing(f func(float64) (float64, error), a, b float64) (x float64, at [2]float64, err error) {
	const close, most = 1e-7, 60 // mm, rounds
	fa, err := f(a)
	if err != nil {
		return 0, at, err
	}
	fb, err := f(b)
	if err != nil {
		return 0, at, err
	}
	if at = [2]float64{fa, fb}; fa*fb > 0 {
		return math.NaN(), at, nil
	}
	for range most {
		if fa == fb {
			break
		}
		x = (a*fb - b*fa) / (fb - fa)
		fx, err := f(x)
		if err != nil || math.Abs(fx) < close {
			return x, at, err
		}
		if fx*fb < 0 {
			a, fa = b, fb
		} else {
			fa /= 2
		}
		b, fb = x, fx
	}
	return b, at, nil
}
