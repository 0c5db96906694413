package process

import (
	"errors"
	"regexp"
	"slices"
	"strconv"

	"bodkin/seams"
	"bodkin/seams/form"
)

// houseNames are the widths that a house may set: those that some construction
// asks for, and the planner's own.
func houseNames(shelf *seams.Shelf) ([]string, error) {
	ask := regexp.MustCompile(`house\('([a-z0-9_]+)'`)
	names := []string{"strip_join"}
	for i := range shelf.Constructions {
		c, err := shelf.Construction(shelf.Constructions[i].Name)
		if err != nil {
			return nil, err
		}
		texts := []form.Text{c.Allowance, c.AllowanceB, c.Finished}
		for _, s := range c.Sizes {
			texts = append(texts, s.Value)
		}
		if c.Strip != nil {
			texts = append(texts, c.Strip.Width, c.Strip.Ends)
		}
		if c.Elastic != nil {
			texts = append(texts, c.Elastic.Width, c.Elastic.Length)
		}
		for _, t := range texts {
			for _, m := range ask.FindAllStringSubmatch(t.Value, -1) {
				names = append(names, m[1])
			}
		}
	}
	slices.Sort(names)
	return slices.Compact(names), nil
}

// checkHouse refuses a house width that nothing asks for: it would be silently
// without effect.
func checkHouse(w *Workroom, shelf *seams.Shelf) form.Faults {
	if len(w.House) == 0 {
		return nil
	}
	names, err := houseNames(shelf)
	var faults form.Faults
	if errors.As(err, &faults) {
		return faults
	}
	for _, p := range w.House {
		if !slices.Contains(names, p.Key.Value) {
			faults = append(faults, form.FaultAt(p.Key.At, "no construction asks the house for "+strconv.Quote(p.Key.Value),
				form.Nearest(p.Key.Value, names), "the heads of the files in seams/shelf/constructions list the names"))
		}
	}
	return faults
}
