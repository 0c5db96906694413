package sheets

import (
	"math"

	"bodkin/process"
)

// chalkTables tell how each piece is marked straight on the cloth: its points by
// how far down and how far in they lie, in the order of marking.
func (c *composer) chalkTables() {
	w := c.say.chalk
	told := false
	for _, p := range c.plan.Pieces {
		if len(p.Chalk.Points) == 0 {
			continue
		}
		if !told {
			c.cutHeading(w.title, c.say.also.chalk)
			if c.size == 0 {
				c.para(say(w.intro, values{"within": c.mm(p.Chalk.Within)}))
			}
			told = true
		}
		from := plain(w.left)
		switch {
		case p.Bias && p.Chalk.Fold != "":
			from = plain(w.middle)
		case p.Chalk.Fold != "":
			from = plain(w.fold)
		}
		c.para(say(w.piece, values{"piece": strong(plain(upper(p.Title))), "from": from}))
		var rows [][]inline
		for i, r := range p.Chalk.Points {
			if i > 0 && r.By != "begin" && r.Number == 1 {
				rows = append(rows, []inline{plain(number(1)), plain(w.again), plain(c.say.none), plain(c.say.none), c.chalkLine(p.Chalk.Points, i)})
				continue
			}
			rows = append(rows, []inline{plain(number(r.Number)), c.chalkCorner(r), c.chalked(r.Down), c.chalked(r.In), c.chalkLine(p.Chalk.Points, i)})
		}
		for _, r := range p.Chalk.Marks {
			rows = append(rows, []inline{plain(c.say.none), plain(lower(spoken(r.Name))), c.chalked(r.Down), c.chalked(r.In), plain(w.mark)})
		}
		c.table([]column{
			{title: plain(w.point), right: true}, {title: plain(w.where)}, {title: plain(w.down), right: true},
			{title: plain(w.in), right: true}, {title: plain(w.draw)},
		}, rows)
	}
}

// chalked is a distance to be measured on the cloth. What no chalk line could show
// is nothing.
func (c *composer) chalked(mm float64) inline {
	if math.Abs(mm) < chalkWide/2 {
		mm = 0
	}
	return c.mm(mm)
}

// chalkWide is the width of a sharp chalk line, mm: common practice, no source.
const chalkWide = 1.5

// chalkCorner says where a point is.
func (c *composer) chalkCorner(r process.ChalkPoint) inline {
	w := c.say.chalk
	pattern := w.corner
	switch {
	case r.Before == r.After && r.By == "smooth":
		pattern = w.along
	case r.Before == r.After:
		pattern = w.bend
	}
	return say(pattern, values{"before": plain(spoken(r.Before)), "after": plain(spoken(r.After))})
}

// chalkLine says how the chalk comes to the i-th point from the one before.
func (c *composer) chalkLine(points []process.ChalkPoint, i int) inline {
	w, r := c.say.chalk, points[i]
	if i == 0 || r.By == "begin" {
		return plain(w.begin)
	}
	v := values{"n": plain(number(points[i-1].Number)), "depth": c.mm(math.Abs(r.Depth))}
	switch {
	case r.By == "smooth":
		return say(w.smooth, v)
	case r.By == "bow" && r.Depth < 0:
		return say(w.hollow, v)
	case r.By == "bow":
		return say(w.round, v)
	}
	return say(w.straight, v)
}
