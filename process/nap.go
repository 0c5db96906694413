package process

import (
	"slices"

	"bodkin/templates"
)

// layTurned notes the pieces that are worn turned down, as a collar is, and so lie
// the other way up than the rest in a cloth that has a direction: common practice,
// no source.
func layTurned(pieces []Piece, made *templates.Made, cloths []clothIn) {
	for i := range pieces {
		c := clothRole(cloths, pieces[i].Cloth).cloth
		k := slices.IndexFunc(made.Pieces, func(p templates.Piece) bool { return p.Name == pieces[i].Name })
		pieces[i].Turned = made.Pieces[k].Turned && (c.Pile || c.OneWay)
	}
}

// oneWay tells at the cutting of a cloth how its pieces lie if it has a direction.
func (o *operator) oneWay(c clothIn) string {
	if !c.cloth.Pile && !c.cloth.OneWay {
		return ""
	}
	text := " Lay every piece the same way up: the cloth has a direction."
	var turned []string
	for _, p := range o.pieces {
		if p.Cloth == c.role && p.Turned {
			turned = append(turned, lowerFirst(p.Title))
		}
	}
	if len(turned) > 0 {
		text += " Only what is worn turned down lies the other way up: the " + listWords(turned, "and the") + "."
	}
	return text
}
