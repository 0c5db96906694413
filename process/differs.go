package process

import (
	"iter"
	"regexp"
	"slices"
	"strings"
)

// OtherSeam is a seam that a further size has sewn in another way than the job's
// own size, with the words of its operations.
type OtherSeam struct {
	Seam              string   `json:"seam"`
	Title             string   `json:"title"`
	Construction      string   `json:"construction"`
	ConstructionTitle string   `json:"construction_title"`
	Work              []string `json:"work"`
}

// Differs is what a further size has otherwise at one operation. Of four kinds one
// holds: figures differ and words do not, the whole text differs, the operation
// falls away, or it is one that the plan has not got.
type Differs struct {
	Operation string    `json:"operation"`
	Part      string    `json:"part"`
	Kind      string    `json:"kind"` // figures, words, without, besides
	Figures   []Instead `json:"figures"`
	Text      string    `json:"text,omitempty"` // the whole, of words and besides
	Good      string    `json:"good,omitempty"`
}

// Kinds of [Differs].
const (
	FiguresDiffer = "figures"
	WordsDiffer   = "words"
	Without       = "without"
	Besides       = "besides"
)

// Instead is a length of a further size in the place of one of the job's own, as
// both stand in the words.
type Instead struct {
	Own  string `json:"own"`
	Here string `json:"here"`
}

// otherwiseSewn are the seams that are not sewn as in the job's own size.
func otherwiseSewn(own, other *operator) []OtherSeam {
	out := []OtherSeam{}
	for i, l := range other.lines {
		if k := own.lineOf(l.name); k >= 0 && own.lines[k].construction == l.construction {
			continue
		}
		s := OtherSeam{Seam: l.name, Title: l.title, Construction: l.construction.Name, ConstructionTitle: l.construction.Title, Work: []string{}}
		for _, k := range other.span[i] {
			s.Work = append(s.Work, other.ops[k].Text)
		}
		out = append(out, s)
	}
	return out
}

// differing compares the operations of two sizes, but for those of seams that are
// sewn in another way: of these all is told together. Tests on scraps are made once.
func differing(own, other *operator, sewn []OtherSeam) []Differs {
	out := []Differs{}
	told := func(n op) bool {
		return n.Does == "test" || slices.ContainsFunc(sewn, func(s OtherSeam) bool { return s.Seam == n.Seam })
	}
	at := func(ops []op, id string) int { return slices.IndexFunc(ops, func(n op) bool { return n.ID == id }) }
	for _, n := range own.ops {
		if told(n) {
			continue
		}
		d := Differs{Operation: n.ID, Part: n.Part, Figures: []Instead{}}
		k := at(other.ops, n.ID)
		if k < 0 {
			d.Kind = Without
			out = append(out, d)
			continue
		}
		m := other.ops[k]
		words, alike := figures(n.Text, m.Text)
		good, alsoAlike := figures(n.Good, m.Good)
		switch {
		case !alike || !alsoAlike:
			d.Kind, d.Text, d.Good = WordsDiffer, m.Text, m.Good
		case len(words)+len(good) > 0:
			d.Kind = FiguresDiffer
			for _, f := range append(words, good...) {
				if !slices.Contains(d.Figures, f) {
					d.Figures = append(d.Figures, f)
				}
			}
		default:
			continue
		}
		out = append(out, d)
	}
	for _, m := range other.ops {
		if !told(m) && at(own.ops, m.ID) < 0 {
			out = append(out, Differs{Operation: m.ID, Part: m.Part, Kind: Besides, Figures: []Instead{}, Text: m.Text, Good: m.Good})
		}
	}
	return out
}

// aLength is a length as the words have it: 72.4 cm, 15 mm, 1 5/8 in.
var aLength = regexp.MustCompile(`\d+(?:\.\d+)?(?: \d+/\d+|/\d+)? (?:mm|cm|m|in|yd)\b`)

// figures are the lengths in which two texts differ; false where they differ in
// more than that.
func figures(own, here string) ([]Instead, bool) {
	if strings.Join(aLength.Split(own, -1), "\x00") != strings.Join(aLength.Split(here, -1), "\x00") {
		return nil, false
	}
	var out []Instead
	a, b := aLength.FindAllString(own, -1), aLength.FindAllString(here, -1)
	for i := range a {
		if a[i] != b[i] {
			out = append(out, Instead{Own: a[i], Here: b[i]})
		}
	}
	return out, true
}

// measured are the checks of a size that the job's own has with another figure, or
// has not got; those of seams that are sewn in another way are left out where the
// own size has no check of the kind.
func measured(own, other *operator) []Check {
	out := []Check{}
	var mine []Check
	for _, c := range own.checked() {
		mine = append(mine, c)
	}
	for _, c := range other.checked() {
		if !slices.Contains(mine, c) {
			out = append(out, c)
		}
	}
	return out
}

// checked are the checks with the operations, by index, that they come after, not
// yet in steps.
func (o *operator) checked() iter.Seq2[int, Check] {
	return func(yield func(int, Check) bool) {
		for i, l := range o.lines {
			for _, c := range l.sized.Checks {
				for _, k := range o.span[i] {
					if o.ops[k].Pass == c.AfterPass && !yield(k, Check{AfterOperation: o.ops[k].ID,
						What: upperFirst(l.title) + ": " + c.What, Expect: c.Expect, Tolerance: c.Tolerance}) {
						return
					}
				}
			}
			if k, ok := o.pinned(i); ok && !yield(k, Check{AfterOperation: o.ops[k].ID, What: upperFirst(l.title) + ": above the hem of the garment",
				Expect: float64(o.raised(l)), Tolerance: raisedTolerance}) {
				return
			}
		}
	}
}
