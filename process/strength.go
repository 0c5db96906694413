package process

import (
	"errors"
	"fmt"

	"bodkin/seams"
)

// Strength is what one row of a seam's stitching is reckoned to bear, and what
// the strain on the seam asks for, in N to the centimetre.
type Strength struct {
	Stitch   string  `json:"stitch"`
	StitchMM float64 `json:"stitch_mm"`
	Bears    float64 `json:"bears_n_per_cm"`
	Wanted   float64 `json:"wanted_n_per_cm"`
	Basis    string  `json:"basis"`
}

// strength reckons the strongest single row of a join in woven cloth that is
// under strain. It is nil where nothing pulls, in other cloth, and where no
// factor is published for any of its stitches.
func (o *operator) strength(line int) (*Strength, error) {
	l := o.lines[line]
	wanted := seams.SeamStrengthWanted(l.facts.Join.Strain)
	if l.work != joining || !l.cloth.Woven() || wanted == 0 {
		return nil, nil
	}
	var best *Strength
	for _, k := range o.span[line] {
		set := o.ops[k].Setting
		if set.Stitch == "" || set.StitchMM <= 0 {
			continue
		}
		st, err := o.shelf.Stitch(set.Stitch)
		if err != nil {
			return nil, err
		}
		thread, _, err := o.threadKind(&o.ops[k])
		if err != nil {
			return nil, err
		}
		bears, err := st.SeamStrength(10/set.StitchMM, seams.ThreadStrength(thread.Tex))
		if errors.Is(err, seams.ErrNoStrength) {
			continue
		}
		if err != nil {
			return nil, err
		}
		if best == nil || bears > best.Bears {
			best = &Strength{Stitch: st.Name, Bears: tenths(bears), Wanted: tenths(wanted), StitchMM: set.StitchMM,
				Basis: fmt.Sprintf("one row of %s at %s in %s: stitches to the cm × the strength of the thread, taken as spun polyester, × %v; the cloth is taken to be stronger, and a second row is not counted",
					st.Name, mmWords(set.StitchMM), lowerFirst(thread.Title), st.Strength)}
		}
	}
	return best, nil
}

// weakSeams warn of seams whose row is reckoned to bear less than the strain on
// them asks for, and say what would mend it.
func (o *operator) weakSeams(plan *Plan) []Notice {
	var out []Notice
	for i, x := range plan.Seams {
		s := x.Strength
		if s == nil || s.Bears >= s.Wanted {
			continue
		}
		// As many stitches more as strength is wanting, to a tenth of a mm below.
		mm := float64(int(10*s.StitchMM*s.Bears/s.Wanted)) / 10
		out = append(out, Notice{About: upperFirst(o.lines[i].title), Text: fmt.Sprintf(
			"One row is reckoned to bear about %.0f N to the cm, and a seam that is pulled like this should bear about %.0f (both estimates). Stitch it at %s, or with a stronger thread, unless a second row beside the first holds it too.",
			s.Bears, s.Wanted, mmWords(mm))})
	}
	return out
}
