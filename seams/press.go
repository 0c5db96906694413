package seams

import (
	"slices"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Pressing says how a cloth is pressed; the first rule of the table whose
// condition holds is taken, so the table runs from special to general.
type Pressing struct {
	Name   string    `yaml:"pressing,required"`
	Title  string    `yaml:"title,required"`
	When   form.Text `yaml:"when,required"`
	Side   string    `yaml:"side,required" oneof:"wrong either none"` // that the iron may touch; none: it touches neither
	Cloth  string    `yaml:"cloth,required" oneof:"none dry damp"`    // press cloth between
	Over   string    `yaml:"over"`                                    // tool that lies under it; the plain board where left out
	Moves  string    `yaml:"moves,required" oneof:"lift slide hold"`  // lifted and lowered, slid, held above without touching
	Steam  bool      `yaml:"steam"`                                   // wanted, where cloth and iron allow it
	Text   string    `yaml:"text,required"`
	Good   string    `yaml:"good,required"` // how it looks when right
	Source string    `yaml:"source,required"`

	rule *formula.Formula
}

func (p *Pressing) prepare(facts formula.Names) {
	p.rule = formula.New(p.When, formula.Condition, facts)
}

func (p *Pressing) formulas() []*formula.Formula { return given(p.rule) }

func (l *loader) press(p Pressing, n *form.Node, s *Shelf) {
	if p.Over != "" {
		l.listed(n.At("over"), "tool", p.Over, names(s.Tools))
	}
	if p.Side == "none" && p.Moves == "slide" {
		l.fault(n.At("moves"), "", "write moves: hold, or the side that it touches", "an iron that touches neither side cannot slide")
	}
}

// Pressed is how the cloth in hand is pressed with the iron in the room.
type Pressed struct {
	*Pressing
	Dots  int  // hottest setting, ISO 3758; 0: no iron
	Steam bool // the cloth bears it, the rule wants it, and the iron gives it
}

// PressingFor is how the cloth of the facts is pressed: the first rule that
// holds, never hotter than the cloth bears or the iron gives, and with steam
// only where cloth, rule and iron agree. Where another cloth is in hand too,
// ask for each and take the lesser heat. Dots are 0 where the room has no iron.
// The error is a [form.Fault] in a rule, or [ErrNoRule].
func (s *Shelf) PressingFor(facts Facts) (Pressed, error) {
	facts = facts.usable()
	values := formula.ValuesOf(facts)
	for i := range s.Pressing {
		p := &s.Pressing[i]
		ok, err := p.rule.Holds(values)
		if err != nil {
			return Pressed{}, err
		}
		if !ok {
			continue
		}
		out := Pressed{Pressing: p}
		if facts.Workroom.Iron {
			out.Dots = min(facts.Cloth.HeatDots, facts.Workroom.Dots)
			out.Steam = p.Steam && facts.Cloth.Steam && facts.Workroom.Steam
		}
		return out, nil
	}
	return Pressed{}, ErrNoRule
}

// CoolFirst are the cloths in the order of pressing on one iron: from the
// coolest setting up, since an iron heats faster than it cools (a steam iron's
// manual); as given among those of one setting.
func CoolFirst(cloths []Cloth) []Cloth {
	out := slices.Clone(cloths)
	slices.SortStableFunc(out, func(a, b Cloth) int { return a.HeatDots - b.HeatDots })
	return out
}
