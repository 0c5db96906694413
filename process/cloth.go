package process

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
	"bodkin/templates"
)

// clothIn is a cloth of the job in its role.
type clothIn struct {
	role, title string       // title of the role in the garment
	cloth       seams.Cloth  // as it is sewn: two layers as one where something lies under it
	outer       seams.Cloth  // the layer that is seen; the cloth itself where nothing lies under it
	under       *seams.Cloth // nil where nothing lies under it
	told        bool         // of by the job, not on the shelf
	colour      string
	thread      string // colour that it is sewn with
	width       float64
}

// check finds what is wrong with a cloth of the job whatever the shelf holds.
func (c JobCloth) check(role form.Text) form.Faults {
	var own []string // what is told of a cloth of hers
	if c.Keys != nil {
		for _, k := range c.Keys.Keys() {
			if !slices.Contains([]string{"is", "like", "under", "colour", "width"}, k.Value) {
				own = append(own, k.Value)
			}
		}
	}
	at := func(key string) form.Place {
		k := slices.IndexFunc(c.Keys.Keys(), func(k form.Text) bool { return k.Value == key })
		return c.Keys.Keys()[k].At
	}
	switch {
	case c.Is.Value != "" && c.Like.Value != "":
		return form.Faults{form.FaultAt(c.Like.At, "a cloth is one of the shelf or is like one, not both", "",
			"write is: and nothing else of it, or like: and what differs")}
	case c.Is.Value != "" && len(own) > 0:
		return form.Faults{form.FaultAt(at(own[0]), fmt.Sprintf("%s is on the shelf with its own %s", c.Is.Value, own[0]), "",
			"write like: "+c.Is.Value+" where yours differs")}
	case c.Is.Value == "" && c.Like.Value == "" && len(own) == 0:
		return form.Faults{form.FaultAt(role.At, "the key \"is\" is missing", "",
			"add is: and a cloth of the shelf, or like: and what differs, or tell its properties")}
	}
	return nil
}

// lookUp finds the cloth on the shelf, or makes it from what is told of it. The
// error is [form.Faults].
func (c JobCloth) lookUp(r templates.Role, shelf *seams.Shelf) (clothIn, error) {
	in := clothIn{role: r.Name, title: r.Title, colour: c.Colour, width: float64(c.Width)}
	if c.Is.Value != "" {
		found, err := clothNamed(c.Is, shelf)
		if err != nil {
			return clothIn{}, err
		}
		in.cloth = *found
	} else {
		made, err := shelf.Tell(seams.Told{Name: "own-" + r.Name, Like: c.Like, Title: c.Title, Width: c.Width,
			Keys: c.Keys, Estimates: c.Estimates, Source: "as the job tells it"})
		if err != nil {
			return clothIn{}, err
		}
		in.cloth, in.told = made, true
	}
	in.outer = in.cloth
	if c.Under.Value != "" {
		under, err := clothNamed(c.Under, shelf)
		if err != nil {
			return clothIn{}, err
		}
		in.under, in.cloth = under, seams.Underlined(in.outer, *under)
	}
	if in.colour == "" {
		in.colour = "to match the " + lowerFirst(in.outer.Title)
	}
	if in.thread = c.Thread; in.thread == "" {
		in.thread = in.colour
	}
	if in.width == 0 && len(in.outer.Widths) > 0 {
		in.width = float64(in.outer.Widths[0])
	}
	return in, nil
}

func clothNamed(t form.Text, shelf *seams.Shelf) (*seams.Cloth, error) {
	c, err := shelf.Cloth(t.Value)
	if err != nil {
		var names []string
		for _, c := range shelf.Cloths {
			names = append(names, c.Name)
		}
		return nil, form.Faults{form.FaultAt(t.At, "no cloth "+strconv.Quote(t.Value)+" on the shelf",
			form.Nearest(t.Value, names), "bodkin list cloth shows what there is")}
	}
	return c, nil
}

// tell puts into the plan what the cloth is taken to be: what it was told of,
// what it takes over, what it resembles, what lies under it.
func (c clothIn) tell(u *ClothUse, shelf *seams.Shelf) {
	u.Name, u.Own, u.Like, u.Inferred = c.outer.Name, c.told || c.outer.Own, c.outer.Like, c.outer.Inferred
	if u.Inferred == nil {
		u.Inferred = []string{}
	}
	if c.under != nil {
		u.Under = &Underlay{Name: c.under.Name, Title: c.under.Title}
	}
	if u.Own || c.under != nil {
		if like, how := shelf.Resembles(c.cloth); like != nil {
			u.Resembles = &Resemblance{Name: like.Name, Title: like.Title, How: how}
		}
	}
}

// ownCloths are words on what each cloth is taken to be that is not simply on
// the shelf.
func (o *operator) ownCloths(plan *Plan) []Notice {
	var out []Notice
	told := map[string]bool{}
	for _, u := range plan.Cloths {
		c := clothRole(o.cloths, u.Role)
		if (!u.Own && c.under == nil) || told[c.cloth.Title] {
			continue
		}
		told[c.cloth.Title] = true
		var say []string
		if c.under != nil {
			say = append(say, fmt.Sprintf("The two layers are sewn as one cloth of %.0f g/m² and %s mm, and every choice goes by that",
				c.cloth.Weight, hundredths(c.cloth.Thickness)))
			if n := u.Under.LengthMM; n > 0 {
				say = append(say, fmt.Sprintf("Of the %s underneath, about %s of %s width is wanted besides (estimate)",
					lowerFirst(c.under.Title), length.Format(length.MM(n), o.style), length.Format(c.underWidth(), o.style)))
			}
		}
		if words := c.outer.InferredWords(); words != "" {
			say = append(say, upperFirst(words))
			if slices.Contains(u.Inferred, "thickness") && !slices.Contains(u.Inferred, "weight") {
				say = append(say, fmt.Sprintf("The thickness goes with the weight: %s mm", hundredths(c.outer.Thickness)))
			}
		}
		if r := u.Resembles; r != nil {
			say = append(say, fmt.Sprintf("Of the cloths on the shelf it is most like %s: %s", lowerFirst(r.Title), strings.Join(r.How, ", ")))
		}
		out = append(out, Notice{About: c.cloth.Title, Text: strings.Join(say, ". ") + "."})
	}
	return out
}

func hundredths(x float64) string {
	return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(x, 'f', 2, 64), "0"), ".")
}

// underWidth is the width of the cloth underneath, selvedge to selvedge.
func (c clothIn) underWidth() length.MM {
	if len(c.under.Widths) == 0 {
		return 0
	}
	return c.under.Widths[0]
}
