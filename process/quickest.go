package process

import (
	"math"
	"slices"

	"bodkin/seams"
)

// equals are the allowed constructions of the highest score, each with the
// minutes that one copy of the line takes in it; nil where one is ahead.
func (r *room) equals(l *line, verdicts []seams.Verdict, shelf *seams.Shelf) (map[*seams.Construction]float64, error) {
	n := 0
	for n < len(verdicts) && verdicts[n].Allowed() && verdicts[n].Score == verdicts[0].Score {
		n++
	}
	if n < 2 {
		return nil, nil
	}
	out := map[*seams.Construction]float64{}
	for _, v := range verdicts[:n] {
		minutes, err := r.minutes(l, v.Construction, shelf)
		if err != nil {
			return nil, err
		}
		out[v.Construction] = minutes
	}
	return out, nil
}

// quickest is the index of the equal that takes the fewest minutes, of those
// that take as many the first.
func quickest(verdicts []seams.Verdict, equals map[*seams.Construction]float64) int {
	best := 0
	for k, v := range verdicts {
		if minutes, ok := equals[v.Construction]; ok && minutes < equals[verdicts[best].Construction] {
			best = k
		}
	}
	return best
}

// quickWorth is what the fewest minutes count for where quick work is favoured:
// among constructions whose scores lie within it, minutes decide. Our own
// judgement; it is as much as the shelf's rules give to quick work.
const quickWorth = 2

// quickWords are the words for it.
const quickWords = "quick work is favoured, and of all for which nearly as much speaks it takes the fewest minutes"

// hasten takes the construction of the fewest minutes where quick work is
// favoured: of those whose score lies within [quickWorth] of the best, and of
// what would be taken without the wish, so that a wish for quick work
// never makes a line take longer.
func (r *room) hasten(l *line, without *seams.Construction, shelf *seams.Shelf) error {
	verdicts := append([]seams.Verdict{l.chosen}, l.others...)
	best, fewest := 0, 0.0
	for k, v := range verdicts {
		near := v.Score >= l.chosen.Score-quickWorth || v.Construction == without
		if !v.Allowed() || !near {
			continue
		}
		minutes, err := r.minutes(l, v.Construction, shelf)
		if err != nil {
			return err
		}
		if k == 0 || minutes < fewest {
			best, fewest = k, minutes
		}
	}
	if best > 0 {
		v := &verdicts[best]
		v.Score += quickWorth
		v.For = append(slices.Clone(v.For), seams.Reason{Worth: quickWorth, Because: quickWords})
		l.take(verdicts, best)
	}
	return nil
}

// minutes is how long one copy of the line takes in a construction, reckoned as
// the plan reckons it, to a tenth: the hands by their acts, the stitches by the
// speed of the machine that forms them.
func (r *room) minutes(l *line, c *seams.Construction, shelf *seams.Shelf) (float64, error) {
	sized, err := c.Measure(l.facts)
	if err != nil {
		return 0, err
	}
	sum := 0.0
	for _, p := range sized.Passes {
		act, err := shelf.Act(p.Pass.Does)
		if err != nil {
			return 0, err
		}
		long := l.length * max(p.Pass.Rows, 1)
		hands, _ := seams.ActMinutes(*act, long, l.cloth)
		sum += hands
		if at := r.forming(p.Pass.Stitch); act.Station == "machine" && at >= 0 {
			stitch := p.StitchMM
			if stitch == 0 {
				needle, err := shelf.NeedleForRow(l.facts, rowOf(p.Pass, c.Layers))
				if err != nil {
					return 0, err
				}
				stitch = needle.Stitch
			}
			sum += seams.SewingMinutes(long, stitch, r.stations[at].machine.Speed)
		}
	}
	return math.Round(10*sum) / 10, nil
}
