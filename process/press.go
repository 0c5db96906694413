package process

import (
	"fmt"
	"slices"

	"bodkin/seams"
)

// Pressed is how the iron meets the cloth in hand.
type Pressed struct {
	Side  string   `json:"side"`  // that the iron may touch: wrong, either, none
	Cloth string   `json:"cloth"` // press cloth between: none, dry, damp
	Over  []string `json:"over"`  // tools that lie under it or after it on it; none: the plain board
	Moves string   `json:"moves"` // lift, slide, hold
}

// narrowRing is the length in mm of a closed edge below which it does not go
// round an ironing board and wants a sleeve board: an estimate.
const narrowRing = 600

// pressed is how the cloths in hand are pressed together: where they differ, as
// the more delicate one asks. Steam tells whether all of them want and bear it.
func (o *operator) pressed(n *op) (how *Pressed, steam bool, err error) {
	how, steam = &Pressed{Side: "either", Cloth: "none", Over: []string{}, Moves: "slide"}, true
	for _, c := range n.cloths {
		p, err := o.shelf.PressingFor(o.factsOf(c))
		if err != nil {
			return nil, false, err
		}
		how.Side = stricter(how.Side, p.Side, "either", "wrong", "none")
		how.Cloth = stricter(how.Cloth, p.Cloth, "none", "damp", "dry") // dry: water may spot the one that asks for it
		how.Moves = stricter(how.Moves, p.Moves, "slide", "lift", "hold")
		if p.Over != "" && !slices.Contains(how.Over, p.Over) {
			how.Over = append(how.Over, p.Over)
		}
		steam = steam && p.Steam
	}
	if n.line >= 0 {
		if l := o.lines[n.line]; l.work == treating && l.facts.Edge.Closed && (!l.flat || n.closing) && !n.strip && l.length < narrowRing {
			how.Over = append(how.Over, "sleeve board")
		}
	}
	return how, steam, nil
}

// stricter is the one of two that stands later in the list.
func stricter(a, b string, list ...string) string {
	return list[max(slices.Index(list, a), slices.Index(list, b))]
}

// words are a sentence for the step; empty for plain pressing.
func (p *Pressed) words(c seams.Cloth) string {
	var say []string
	if p.Side == "wrong" {
		say = append(say, "iron on the wrong side")
	}
	if p.Side == "none" {
		say = append(say, "let the iron touch neither side")
	}
	if p.Cloth != "none" {
		say = append(say, "a "+p.Cloth+" cloth between")
	}
	for _, tool := range p.Over {
		switch tool {
		case "clapper": // comes after the iron
		case "press cloth":
			say = append(say, "face down on a folded press cloth or a towel")
		case "needle board":
			say = append(say, "face down on a needle board, a towel or a scrap of its own")
		default:
			say = append(say, "over a "+tool)
		}
	}
	switch {
	case p.Moves == "hold":
		say = append(say, "the iron held above it")
	case p.Moves == "lift":
		say = append(say, "lift and lower the iron, do not slide it")
	}
	if slices.Contains(p.Over, "clapper") {
		say = append(say, "then hold it under a clapper until it is cool")
	}
	if len(say) == 0 {
		return ""
	}
	return fmt.Sprintf(" For %s: %s.", lowerFirst(c.Title), listWords(say, "and"))
}
