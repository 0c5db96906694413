package seams

import (
	"fmt"
	"slices"
)

// Underlined is outer with under laid against its wrong side and both sewn as
// one, for the rules to judge like any cloth.
//
// Weight and thickness add. It is as sheer as the less sheer of the two, and
// stretches, in each direction, as the one that gives less; it creases as the
// one that creases less, since a second layer holds the first. It frays, slips
// and shrinks as the worse of the two. It bears the heat of the one that bears
// less, and steam where both do. Pile, a film, a direction, shine, holes that
// stay and the readiness to burn are there where either has them; it is
// openwork where both are. It is a knit where both are, woven where either is,
// and neither otherwise. Recovery is the lesser where both are knits. Fibre and widths stay those of outer,
// whose face is seen; where under is narrower, cut it with seams of its own.
//
// That layers add in weight and thickness is arithmetic; the rest is common
// practice, no source.
func Underlined(outer, under Cloth) Cloth {
	c := outer
	c.Name = outer.Name + "-over-" + under.Name
	c.Title = fmt.Sprintf("%s over %s", outer.Title, inSentence(under.Title))
	c.Like, c.Inferred, c.Estimates = "", nil, nil
	for _, key := range inherited() {
		if slices.Contains(outer.Estimates, key) || slices.Contains(under.Estimates, key) {
			c.Estimates = append(c.Estimates, key)
		}
	}
	c.Source = fmt.Sprintf("reckoned from %s and %s", outer.Name, under.Name)
	switch {
	case outer.Structure == under.Structure:
	case outer.Woven() || under.Woven():
		c.Structure = "woven"
	default:
		c.Structure = "nonwoven"
	}
	c.Weight = outer.Weight + under.Weight
	c.Thickness = outer.Thickness + under.Thickness
	c.Sheerness = min(outer.Sheerness, under.Sheerness)
	c.Crease = min(outer.Crease, under.Crease)
	c.Stretch = Stretch{Across: min(outer.Stretch.Across, under.Stretch.Across), Along: min(outer.Stretch.Along, under.Stretch.Along)}
	c.Recovery = min(outer.Recovery, under.Recovery)
	c.Fraying = max(outer.Fraying, under.Fraying)
	c.Slip = max(outer.Slip, under.Slip)
	c.Shrinkage = max(outer.Shrinkage, under.Shrinkage)
	c.HeatDots = min(outer.HeatDots, under.HeatDots)
	c.Steam = outer.Steam && under.Steam
	c.Pile = outer.Pile || under.Pile
	c.Coated = outer.Coated || under.Coated
	c.OneWay = outer.OneWay || under.OneWay
	c.Shine = outer.Shine || under.Shine
	c.HolesStay = outer.HolesStay || under.HolesStay
	c.Flammable = outer.Flammable || under.Flammable
	c.Lace = outer.Lace && under.Lace
	return c
}
