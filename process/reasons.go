package process

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"bodkin/seams"
)

// rejected tells why a runner-up lost: what rules it out, or else the one or
// two reasons in which it differs from the chosen one and that count most.
func rejected(l *line, v seams.Verdict) Rejected {
	r := Rejected{Construction: v.Construction.Name, Title: v.Construction.Title, Score: v.Score, RuledOut: !v.Allowed(), Because: []string{}}
	switch {
	case r.RuledOut:
		r.Because = append(r.Because, v.RuledOut...)
	case l.insisted && v.Score >= l.chosen.Score:
		asks := "the job"
		if l.byDesign {
			asks = "the garment's design"
		}
		r.Because = append(r.Because, "as much or more speaks for it, but "+asks+" asks for another")
	default:
		r.Because = append(r.Because, decisive(l.chosen, v)...)
		if even := l.even(v); even != "" {
			r.Because = append(r.Because[:min(1, len(r.Because))], even)
		}
	}
	return r
}

// even says why the chosen one was taken of two for which as much speaks; ""
// where more speaks for the chosen one.
func (l *line) even(v seams.Verdict) string {
	if v.Score != l.chosen.Score {
		return ""
	}
	minutes, ok := l.equals[v.Construction]
	if more := minutes - l.equals[l.construction]; ok && more > 0 {
		return fmt.Sprintf("it would do as well, but takes %.1f minutes more", more*float64(l.copies))
	}
	return "it would do as well: as much speaks for it, it takes as long, and the first by name is taken"
}

// mostDecisive is how many reasons are told of a runner-up.
const mostDecisive = 2

// decisive are the reasons in which two allowed constructions differ to the
// cost of the runner-up, those of the greatest worth, at most two: first what
// speaks against the runner-up, then what the chosen one has for it. Of equal
// worth the former is told. What the two share decides nothing and is left out.
func decisive(chosen, runner seams.Verdict) []string {
	type difference struct {
		worth float64
		has   bool // of the chosen one, for it
		words string
	}
	var differ []difference
	for _, r := range runner.Against {
		if !said(chosen.Against, r) {
			differ = append(differ, difference{r.Worth, false, r.Because})
		}
	}
	for _, r := range chosen.For {
		if !said(runner.For, r) {
			differ = append(differ, difference{r.Worth, true, r.Because})
		}
	}
	slices.SortStableFunc(differ, func(a, b difference) int { return cmp.Compare(b.worth, a.worth) })
	var out, has []string
	for _, d := range differ[:min(len(differ), mostDecisive)] {
		if d.has {
			has = append(has, d.words)
		} else {
			out = append(out, d.words)
		}
	}
	if len(has) > 0 {
		out = append(out, "the chosen one has this for it: "+strings.Join(has, "; and "))
	}
	return out
}

// said reports whether a reason is among others with at least its worth.
func said(among []seams.Reason, r seams.Reason) bool {
	return slices.ContainsFunc(among, func(o seams.Reason) bool { return o.Because == r.Because && o.Worth >= r.Worth })
}

// favoured marks the reasons that hold only because quick, neat or strong work
// is favoured: those that do not hold of the same place where nothing is.
func favoured(with, without []seams.Verdict, favour string) {
	mark := func(reasons, plain []seams.Reason) {
		for i, r := range reasons {
			if !slices.Contains(plain, r) {
				reasons[i].Because = favour + " work is favoured, and " + r.Because
			}
		}
	}
	for _, v := range with {
		k := slices.IndexFunc(without, func(o seams.Verdict) bool { return o.Construction == v.Construction })
		mark(v.For, without[k].For)
		mark(v.Against, without[k].Against)
	}
}
