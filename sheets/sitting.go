package sheets

import (
	"slices"

	"bodkin/process"
)

// ComposeSitting writes the sheet of several garments made in one sitting: what
// each is, what to lay out for all, what to cut for each, how every seam is sewn,
// the steps in their one order, and why that order. The options are those of
// [Compose]. It is a pure function.
func ComposeSitting(s *process.Sitting, opts Options) Sheet {
	c := &sitter{composer: newComposer(s.Joint(), opts), sitting: s}
	c.garments = s.Garments
	c.heading(1, plain(upper(c.title())))
	c.opening()
	c.layOut()
	c.cautions()
	c.cutEach()
	if c.reader == Maker {
		c.glance()
	}
	c.theSteps()
	switch c.reader {
	case Maker:
		c.whyThisOrder(c.inTurn())
	case Class:
		c.glossary()
		c.easeOfReading()
	}
	if c.reader != Bench {
		c.notices()
	}
	c.notesOfEach()
	return Sheet{Title: c.title(), Markdown: c.page.out.Bytes(), Figures: c.drawings}
}

// sitter writes the sheet of a sitting as one plan of all its garments, and of each
// by itself what differs.
type sitter struct {
	*composer
	sitting *process.Sitting
}

// opening says what is made together, and of each garment the cloth and the size.
func (c *sitter) opening() {
	w := c.say.sitting
	var each []inline
	several := false
	for _, g := range c.sitting.Garments {
		several = several || g.Plan.Quantity > 1
		each = append(each, say(w.one, values{"label": strong(plain(g.Label)), "garment": plain(lower(g.Plan.GarmentName)), "count": c.count(g.Plan.Quantity, c.say.counts.garments)}))
	}
	c.para(joined(" ", say(w.made, values{"each": joined("; ", each...)}), c.inRoom()))
	if several {
		c.para(plain(w.several))
	}
	switch c.reader {
	case Bench:
		for _, g := range c.sitting.Garments {
			if len(g.Plan.Also) > 0 {
				c.heading(2, plain(upper(g.Label)))
				c.aside(g.Plan, c.sizesOfTheJob)
			}
		}
		c.para(plain(c.say.bench.intro))
		return
	case Class:
		c.toFill(c.say.class.name, 1)
		c.para(plain(c.say.class.intro))
		c.sidesFigure()
	default:
		c.para(c.summary())
	}
	for _, g := range c.sitting.Garments {
		c.heading(2, plain(upper(g.Label)))
		c.aside(g.Plan, func() {
			c.sizesOfTheJob()
			c.clothTable()
			c.sizeTable()
		})
	}
}

// ofEach writes of seams of a sitting garment by garment, of each as its own plan has
// them, but for their titles.
func (c *composer) ofEach(seams []process.Seam, write func(own []process.Seam)) {
	for _, g := range c.garments {
		var own []process.Seam
		for _, s := range seams {
			k := slices.IndexFunc(g.Plan.Seams, func(x process.Seam) bool { return g.Name(x.Name) == s.Name })
			if k >= 0 {
				x := g.Plan.Seams[k]
				x.Title = s.Title
				own = append(own, x)
			}
		}
		if len(own) > 0 {
			if len(own) < len(seams) { // another garment's stand beside them
				c.of = g.Label
			}
			c.aside(g.Plan, func() { write(own) })
			c.of = ""
		}
	}
}

// cutEach says what to cut, one garment after the other; for the bench only of
// those that are cut there.
func (c *sitter) cutEach() {
	cuts := map[int]bool{}
	for _, o := range c.told() {
		if o.Does == "cut" {
			cuts[o.Garment] = true
		}
	}
	if c.reader == Bench && len(cuts) == 0 {
		return
	}
	c.heading(2, plain(c.say.cutting.title))
	for _, g := range c.sitting.Garments {
		if c.reader == Bench && !cuts[g.Number] {
			continue
		}
		c.heading(3, plain(upper(g.Label)))
		c.deeper++
		c.aside(g.Plan, c.cuts)
		c.deeper--
	}
}

// inTurn sets the order beside finishing each garment before the next.
func (c *sitter) inTurn() inline {
	w, s := c.say.sitting, c.sitting
	pattern := w.inTurnLess
	more := tenth(s.InTurn) - tenth(s.Order.ChangeMinutes)
	switch {
	case more > 0:
		pattern = w.inTurnMore
	case more == 0:
		pattern = w.inTurnSame
	}
	words := say(pattern, values{"minutes": c.minutes(s.InTurn), "more": c.minutes(float64(max(more, -more)) / 10)})
	if !s.InTurnProved {
		words = joined(" ", words, plain(w.inTurnFound))
	}
	return words
}

// notesOfEach are the makers' own words on each garment, last.
func (c *sitter) notesOfEach() {
	for _, g := range c.sitting.Garments {
		if lines := rewrite(g.Plan.Notes); len(lines) > 0 {
			c.heading(2, say(c.say.sitting.notes, values{"label": plain(g.Label)}))
			c.written(lines)
		}
	}
}

// SittingOperationsCSV is [OperationsCSV] of all garments in their one order, each
// row with its garment's label first, empty for what serves all.
func SittingOperationsCSV(s *process.Sitting) []byte {
	p := s.Joint()
	rows := operationRows(p)
	for k := range rows {
		label := garmentColumn
		if k > 0 {
			label = labelOf(s, p.Operations[k-1].Garment)
		}
		rows[k] = slices.Insert(rows[k], 0, label)
	}
	return rowsOf(rows)
}

// SittingCutListCSV is [CutListCSV] of one garment after the other, each row with
// its garment's label first.
func SittingCutListCSV(s *process.Sitting) []byte {
	var all [][]string
	for _, g := range s.Garments {
		rows := cutRows(g.Plan)
		for k := range rows {
			label := g.Label
			if k == 0 {
				label = garmentColumn
			}
			rows[k] = slices.Insert(rows[k], 0, label)
		}
		if len(all) > 0 {
			rows = rows[1:]
		}
		all = append(all, rows...)
	}
	return rowsOf(all)
}

// SittingThreadCSV is [ThreadCSV] of all garments together.
func SittingThreadCSV(s *process.Sitting) []byte { return ThreadCSV(s.Joint()) }

// garmentColumn heads the labels of garments.
const garmentColumn = "garment"

func labelOf(s *process.Sitting, garment int) string {
	for _, g := range s.Garments {
		if g.Number == garment {
			return g.Label
		}
	}
	return ""
}
