package process_test

import (
	"cmp"
	"slices"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

// Every choice among words that a garment offers beside its usual one can be
// planned, in the cloth that suits the garment, and the laws of a plan hold.
func TestEveryChoiceIsPlanned(t *testing.T) {
	shelf := loadShelf(t)
	able := roomsForAll()
	for at, name := range templates.Names() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			g := garmentOf(t, name)
			w := able[at%len(able)]
			for _, c := range g.Choices {
				for _, word := range c.Value.Words() {
					if word == c.Value.Default.Value {
						continue
					}
					in := chosenInput(g, w, shelf, form.Pairs[form.Text]{{Key: c.Key, Value: text(word)}})
					if err := planChosen(t, in, 2_000); err != nil {
						t.Errorf("%s %s in %s: %v", c.Key.Value, word, w.Name, err)
					}
				}
			}
		})
	}
}

// roomsForAll are the rooms in which every garment can be made: a yoke of two layers
// wants a machine and an iron.
func roomsForAll() []*process.Workroom {
	return slices.DeleteFunc(rooms(), func(w *process.Workroom) bool {
		return len(w.Machines) == 0 || w.Iron.Value == "none"
	})
}

// chosenInput is a garment with choices, in the cloth that suits it.
func chosenInput(g *templates.Garment, w *process.Workroom, shelf *seams.Shelf, choices form.Pairs[form.Text]) process.Input {
	j := jobFor(g, cmp.Or(g.Roles()[0].Usual, "cotton-poplin"), "cotton-lawn")
	j.Choices = choices
	return process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf}
}

// planChosen plans within a number of nodes and holds the plan to its laws.
func planChosen(t *testing.T, in process.Input, nodes int) error {
	t.Helper()
	p, err := process.Work(t.Context(), in, order.Options{Nodes: nodes})
	if err != nil {
		return err
	}
	checkOrder(t, p)
	checkSeams(t, p, in.Shelf)
	checkWords(t, p)
	return nil
}
