package process

import (
	"fmt"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
	"bodkin/templates"
)

// StartJob writes a commented job for a garment, ready to be changed: every
// measure and choice with its default or the middle of its range, every cloth,
// and nothing insisted on. Lengths are written in the given style.
func StartJob(g *templates.Garment, shelf *seams.Shelf, style length.Style) []byte {
	s := starter{style: style}
	s.line("# A job for bodkin: %s.", lowerFirst(g.Title))
	s.line("# Change what differs. Lengths carry their unit: mm, cm, m, in, yd, or 1 5/8 in.")
	s.line("make: %s", g.Name)
	s.line("title: %s", g.Title)
	s.line("units: %s", style)
	s.line("")
	s.line("size:   # body measures, over what will be worn under it")
	if !g.Child {
		s.line("  # named: women-50   # for what is not measured; bodkin list sizes shows the tables")
	}
	for _, m := range g.Measures {
		s.measure(m)
	}
	if len(g.Choices) > 0 {
		s.line("")
		s.line("choices:")
		for _, c := range g.Choices {
			s.choice(c)
		}
	}
	s.line("")
	s.line("cloth:   # bodkin list cloth shows the shelf; your own: {like: cotton-lawn, weight: 60 g/m2, …}")
	for i, r := range g.Roles() {
		c := startingCloth(shelf, r.Usual)
		s.line("  # %s", lowerFirst(r.Title))
		s.line("  %s: {is: %s, colour: %s, width: %s}", r.Name, c.Name, [2]string{"white", "grey"}[min(i, 1)], s.length(c.Widths[0]))
	}
	s.line("")
	s.line("# seams:   # only where you insist; bodkin chooses the rest and says why")
	for _, j := range g.Seams[:min(1, len(g.Seams))] {
		s.line("#   %s: french   # write french anyway to overrule what speaks against it", j.Join.Value)
	}
	s.line("quantity: 1")
	s.line("# favour: neat   # quick, neat or strong")
	s.line("# wishes: {region: 0.5}   # worth so many minutes of change: region, small, delicate, fitting, or a pair such as neck before side")
	s.line("# machines:   # how they stand now and are to be left, where that differs from the workroom's")
	s.line("#   straight-stitcher: {threaded: white, foot: zip foot, leave: white}")
	s.line("# notes: |")
	s.line("#   Markdown of your own, printed at the end.")
	return []byte(s.out.String())
}

type starter struct {
	out   strings.Builder
	style length.Style
}

func (s *starter) line(format string, args ...any) { fmt.Fprintf(&s.out, format+"\n", args...) }

func (s *starter) length(mm length.MM) string { return length.Format(mm, s.style) }

func (s *starter) measure(m form.Pair[templates.Measure]) {
	v := m.Value
	s.line("  # %s: %s; from %s to %s", lowerFirst(v.Title), v.How, s.length(v.Least), s.length(v.Most))
	switch {
	case v.Default != 0:
		s.line("  %s: %s", m.Key.Value, s.length(v.Default))
	case !v.Reckoned.IsZero():
		s.line("  # %s: reckoned from the others where it is left out", m.Key.Value)
	default:
		s.line("  %s: %s", m.Key.Value, s.length((v.Least+v.Most)/2))
	}
}

func (s *starter) choice(c form.Pair[templates.Choice]) {
	v := c.Value
	about := lowerFirst(v.Title)
	if v.How != "" {
		about += ": " + v.How
	}
	usual := v.Default.Value
	switch {
	case len(v.OneOf) > 0:
		about += "; one of " + listWords(v.Words(), "or")
	case v.IsLength():
		usual = s.lengthText(v.Default)
		about += fmt.Sprintf("; from %s to %s", s.lengthText(v.Least), s.lengthText(v.Most))
	default:
		about += fmt.Sprintf("; from %s to %s", v.Least.Value, v.Most.Value)
	}
	s.line("  # %s", about)
	s.line("  %s: %s", c.Key.Value, usual)
}

func (s *starter) lengthText(t form.Text) string {
	mm, err := length.Parse(t.Value)
	if err != nil {
		return t.Value
	}
	return s.length(mm)
}

// startingCloth is the cloth that a new job names: the one that the garment says
// suits it, else a light, firm woven that anyone can sew, the first of the shelf
// that is one.
func startingCloth(shelf *seams.Shelf, usual string) seams.Cloth {
	if k := slices.IndexFunc(shelf.Cloths, func(c seams.Cloth) bool { return c.Name == usual }); k >= 0 {
		return shelf.Cloths[k]
	}
	for _, c := range shelf.Cloths {
		if c.Woven() && c.Slip == 0 && c.Sheerness == 0 && c.Fraying <= 1 && c.Weight >= 80 && c.Weight <= 160 {
			return c
		}
	}
	return shelf.Cloths[0]
}
