package sheets

import (
	"bodkin/process"
	"bodkin/sheets/figure"
)

// sideSample is how long a ply is drawn in the key to the sides, mm.
const sideSample = 12

// sidesFigure is the key to the right and the wrong side of the cloth, which
// every section is drawn by.
func (c *composer) sidesFigure() {
	w := c.say.class
	c.draw(func() figure.Figure {
		thin := figure.Stroke{Width: figure.Hairline}
		var items []figure.Item
		for i, words := range []string{w.rightUp, w.wrongUp} {
			x, y := float64(i)*42, 0.0 // both within the width of a phone
			line := []figure.Point{{X: x, Y: y}, {X: x + sideSample, Y: y}}
			items = append(items, figure.Ply(line, 2, 1, thin, figure.Fill{White: true}))
			heavy := y - 1
			if i == 1 {
				heavy = y + 1
			}
			items = append(items,
				figure.Line(figure.Point{X: x, Y: heavy}, figure.Point{X: x + sideSample, Y: heavy}, figure.Stroke{Width: figure.Bold}),
				figure.Text{At: figure.Point{X: x + sideSample + 3, Y: y + 1}, Size: sectionType, Words: words})
		}
		return figure.Fit(c.slug("sides"), w.sidesAlt, items, 1.5, c.measure)
	}, plain(w.sides))
}

// showWork is where a learner shows the work before going on: where something
// was measured that can still be mended, and when all is done.
func (c *composer) showWork(s process.Step) []inline {
	w := c.say.class
	last := c.plan.Steps[len(c.plan.Steps)-1].Number == s.Number
	for _, k := range c.plan.Checks {
		if k.AfterStep == s.Number {
			return []inline{joined(" ", strong(plain(w.show)), plain(w.showCheck))}
		}
	}
	if last {
		return []inline{joined(" ", strong(plain(w.show)), plain(w.showLast))}
	}
	return nil
}

// room is where a learner writes.
func (c *composer) room() { c.toFill(c.say.class.room, 1) }

// toFill are lines to write on, under what is to be written there.
func (c *composer) toFill(what string, lines int) {
	c.para(soft(plain(what)))
	for range lines {
		c.open()
		c.line("* * *")
	}
}
