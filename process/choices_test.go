package process_test

import (
	"slices"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/templates"
)

// Every choice among words that a garment offers beside its usual one can be
// planned, in the cloth that suits the garment, and the laws of a plan hold.
func TestEveryChoiceIsPlanned(t *testing.T) {
	shelf := loadShelf(t)
	able := slices.DeleteFunc(rooms(), func(w *process.Workroom) bool {
		return len(w.Machines) == 0 || w.Iron.Value == "none" // a yoke of two layers wants both
	})
	for at, name := range templates.Names() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			g := garmentOf(t, name)
			main := "cotton-poplin"
			if usual := g.Roles()[0].Usual; usual != "" {
				main = usual
			}
			w := able[at%len(able)]
			for _, c := range g.Choices {
				for _, word := range c.Value.Words() {
					if word == c.Value.Default.Value {
						continue
					}
					j := jobFor(g, main, "cotton-lawn")
					j.Choices = form.Pairs[form.Text]{{Key: c.Key, Value: text(word)}}
					p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf}, order.Options{Nodes: 2_000})
					if err != nil {
						t.Errorf("%s %s in %s: %v", c.Key.Value, word, w.Name, err)
						continue
					}
					checkOrder(t, p)
					checkSeams(t, p, shelf)
					checkWords(t, p)
				}
			}
		})
	}
}
