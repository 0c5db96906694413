package seams

import (
	"fmt"
	"slices"
	"strconv"

	"bodkin/seams/form"
	"bodkin/seams/length"
)

// Told is what is told of a cloth outside the shelf: that it is like one of the
// shelf and what differs, or all its properties.
type Told struct {
	Name      string
	Like      form.Text  // a cloth of the shelf; empty where all properties are told
	Title     string     // where left out, in words: what it is like or what it is
	Width     length.MM  // selvedge to selvedge; 0 where not told
	Keys      *form.Node // a mapping, of which the keys of [Properties] are read
	Estimates []string   // keys whose figure is an estimate
	Source    string
}

// Tell is the cloth that is told of, held to what an entry of the shelf is held
// to. Where the weight is told and not the thickness of a cloth that is like
// another, thickness goes with weight. The error is [form.Faults].
func (s *Shelf) Tell(t Told) (Cloth, error) {
	c := Cloth{Name: t.Name, Source: t.Source}
	var from Cloth
	l := &loader{}
	keys := t.Keys.Only(properties()...)
	if t.Like.Value == "" {
		for _, key := range slices.DeleteFunc(whole(), func(key string) bool { return key == "title" || key == "widths" }) {
			if !has(keys, key) {
				l.fault(keys, "", "add "+key+": and its value, or like: and a cloth of the shelf", "the key %q is missing", key)
			}
		}
	} else if base, err := s.Cloth(t.Like.Value); err != nil {
		l.faults = append(l.faults, form.FaultAt(t.Like.At, "no cloth "+strconv.Quote(t.Like.Value)+" on the shelf",
			form.Nearest(t.Like.Value, names(s.Cloths)), "bodkin list cloth shows what there is"))
	} else {
		from = *base
		c.Like, c.Properties, c.Widths, c.Inferred = from.Name, from.Properties, slices.Clone(from.Widths), []string{}
	}
	if len(l.faults) > 0 {
		return Cloth{}, l.faults.Err()
	}
	if err := keys.Decode(&c.Properties); err != nil {
		return Cloth{}, err
	}
	if c.Like != "" {
		c.takenOver(from, keys)
	}
	if t.Width > 0 {
		c.Widths = []length.MM{t.Width}
		c.Inferred = slices.DeleteFunc(c.Inferred, func(key string) bool { return key == "widths" })
	}
	if len(c.Widths) == 0 {
		l.fault(t.Keys, "", "add width: from selvedge to selvedge, such as 140 cm", "the key %q is missing", "width")
		return Cloth{}, l.faults.Err()
	}
	switch {
	case t.Title != "":
		c.Title = t.Title
	case c.Like != "":
		c.Title = "Cloth like " + inSentence(from.Title)
	default:
		c.Title = c.described()
	}
	c.Estimates = t.Estimates
	l.cloth(c, t.Keys)
	return c, l.faults.Err()
}

// properties are the keys of [Properties].
func properties() []string {
	return slices.DeleteFunc(inherited(), func(key string) bool { return key == "widths" })
}

// described is a title for a cloth that nothing is like: Woven silk.
func (c Cloth) described() string {
	structure := map[string]string{"woven": "Woven", "knit": "Knitted", "nonwoven": "Nonwoven"}
	return fmt.Sprintf("%s %s", structure[c.Structure], c.Fibre)
}
