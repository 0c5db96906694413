package seams

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Resembles is the cloth of the shelf, other than c itself, that c resembles
// most, and how: what they share and wherein they differ, in words. Nearest is
// the one of the least [Distance]; of two as near, the first by name. Nil where
// the shelf has no other cloth.
func (s *Shelf) Resembles(c Cloth) (nearest *Cloth, how []string) {
	for i := range s.Cloths {
		o := &s.Cloths[i]
		if o.Name == c.Name {
			continue
		}
		if nearest == nil || cmp.Or(cmp.Compare(Distance(c, *o), Distance(c, *nearest)), cmp.Compare(o.Name, nearest.Name)) < 0 {
			nearest = o
		}
	}
	if nearest == nil {
		return nil, nil
	}
	return nearest, c.beside(*nearest)
}

// Distance says how unlike two cloths are at the bench: 0 for the same in every
// property, the same both ways, and never less by a detour. It adds up
//
//	6    woven against knit, or either against neither
//	4    pile against none; openwork against close; coated against not
//	1    a doubling of weight; a doubling of thickness
//	1    each degree of sheerness
//	1/2  each degree of fraying and of slip, each dot of heat; another fibre
//	1    30 % of stretch across, and as much along
//	1/4  each degree of creasing; holes that stay, shine, one way, steam
//
// The weights are our own judgement of what changes the work: a cloth of
// another structure or with pile is sewn in another way, one a little heavier
// with another needle.
func Distance(a, b Cloth) float64 {
	d := math.Abs(math.Log2(a.Weight/b.Weight)) + math.Abs(math.Log2(a.Thickness/b.Thickness))
	if a.Structure != b.Structure {
		d += 6
	}
	if a.Fibre != b.Fibre {
		d += 0.5
	}
	degrees := func(x, y int, each float64) { d += each * math.Abs(float64(x-y)) }
	degrees(a.Sheerness, b.Sheerness, 1)
	degrees(a.Fraying, b.Fraying, 0.5)
	degrees(a.Slip, b.Slip, 0.5)
	degrees(a.HeatDots, b.HeatDots, 0.5)
	degrees(a.Crease, b.Crease, 0.25)
	d += (math.Abs(a.Stretch.Across-b.Stretch.Across) + math.Abs(a.Stretch.Along-b.Stretch.Along)) / 30
	unlike := func(x, y bool, worth float64) {
		if x != y {
			d += worth
		}
	}
	unlike(a.Pile, b.Pile, 4)
	unlike(a.Lace, b.Lace, 4)
	unlike(a.Coated, b.Coated, 4)
	unlike(a.HolesStay, b.HolesStay, 0.25)
	unlike(a.Shine, b.Shine, 0.25)
	unlike(a.OneWay, b.OneWay, 0.25)
	unlike(a.Steam, b.Steam, 0.25)
	return d
}

// beside tells what c and another share and wherein they differ, c first.
func (c Cloth) beside(o Cloth) []string {
	var how []string
	say := func(differ bool, format string, args ...any) {
		if differ {
			how = append(how, fmt.Sprintf(format, args...))
		}
	}
	structure := map[string]string{"woven": "woven", "knit": "knitted", "nonwoven": "neither woven nor knitted"}
	say(c.Structure == o.Structure, "both are %s", structure[c.Structure])
	say(c.Structure != o.Structure, "it is %s, the other %s", structure[c.Structure], structure[o.Structure])
	say(c.Fibre == o.Fibre, "both are of %s", c.Fibre)
	say(c.Fibre != o.Fibre, "it is of %s, the other of %s", c.Fibre, o.Fibre)
	say(c.Weight == o.Weight, "both weigh %.0f g/m²", c.Weight)
	say(c.Weight != o.Weight, "it weighs %.0f g/m², the other %.0f", c.Weight, o.Weight)
	say(c.Thickness != o.Thickness, "it is %.2g mm thick, the other %.2g", c.Thickness, o.Thickness)
	degree := func(name string, x, y int) {
		say(x > y, "it is more %s", name)
		say(x < y, "it is less %s", name)
	}
	degree("sheer", c.Sheerness, o.Sheerness)
	degree("apt to fray", c.Fraying, o.Fraying)
	degree("slippery", c.Slip, o.Slip)
	degree("apt to crease", c.Crease, o.Crease)
	say(c.Stretch != o.Stretch, "it stretches by %v %% across and %v %% along, the other by %v and %v",
		c.Stretch.Across, c.Stretch.Along, o.Stretch.Across, o.Stretch.Along)
	only := func(what string, x, y bool) {
		say(x && !y, "it alone %s", what)
		say(!x && y, "the other alone %s", what)
	}
	only("has pile", c.Pile, o.Pile)
	only("is openwork", c.Lace, o.Lace)
	only("is coated", c.Coated, o.Coated)
	only("lies one way", c.OneWay, o.OneWay)
	only("takes a shine from the iron", c.Shine, o.Shine)
	only("keeps needle holes", c.HolesStay, o.HolesStay)
	only("bears steam", c.Steam, o.Steam)
	say(c.HeatDots > o.HeatDots, "it bears a hotter iron")
	say(c.HeatDots < o.HeatDots, "it wants a cooler iron")
	return slices.Clip(how)
}
