package process

import (
	"cmp"
	"slices"

	"bodkin/seams"
)

// alikeWorth is what it counts for a construction that the garment's other
// seams of its kind have it too: a slight preference of one point gives way to
// it, a real one does not. Our own judgement; that a garment keeps to few kinds
// of seam is common practice, no source.
const alikeWorth = 1.5

// alikeWords are the words for it.
const alikeWords = "most of the garment's other work of this kind is sewn so, and what is done again comes out more alike"

// group is what should look alike: one kind of work in one cloth.
type group struct{ kind, role string }

func (l *line) group() group { return group{l.kind, l.role} }

// alike keeps a garment to few kinds of construction: for each kind of work in
// a cloth the one that runs the greatest length, as chosen line by line, counts
// for something wherever else it is allowed. What is insisted on counts towards
// the greatest length and is not itself changed, nor is a line made slower
// where quick work is favoured.
func (r *room) alike(lines []*line, shelf *seams.Shelf) error {
	common := map[group]*seams.Construction{}
	for _, l := range lines {
		if common[l.group()] == nil {
			common[l.group()] = mostCommon(lines, l.group())
		}
	}
	for _, l := range lines {
		c := common[l.group()]
		k := slices.IndexFunc(l.others, func(v seams.Verdict) bool { return v.Construction == c })
		if l.insisted || k < 0 || !l.others[k].Allowed() || l.others[k].Score+alikeWorth <= l.chosen.Score {
			continue
		}
		if r.favour == quick {
			now, err := r.minutes(l, l.construction, shelf)
			if err != nil {
				return err
			}
			then, err := r.minutes(l, c, shelf)
			if err != nil {
				return err
			}
			if then > now {
				continue
			}
		}
		verdicts := append([]seams.Verdict{l.chosen}, l.others...)
		v := &verdicts[k+1]
		v.Score += alikeWorth
		v.For = append(slices.Clone(v.For), seams.Reason{Worth: alikeWorth, Because: alikeWords})
		l.take(verdicts, k+1)
	}
	return nil
}

// mostCommon is the construction that runs the greatest length in a group, of
// equal lengths the first by name.
func mostCommon(lines []*line, g group) *seams.Construction {
	type run struct {
		c      *seams.Construction
		length float64
	}
	var runs []run
	for _, l := range lines {
		if l.group() != g {
			continue
		}
		k := slices.IndexFunc(runs, func(r run) bool { return r.c == l.construction })
		if k < 0 {
			k = len(runs)
			runs = append(runs, run{c: l.construction})
		}
		runs[k].length += l.length * float64(l.copies)
	}
	return slices.MinFunc(runs, func(a, b run) int {
		return cmp.Or(cmp.Compare(b.length, a.length), cmp.Compare(a.c.Name, b.c.Name))
	}).c
}
