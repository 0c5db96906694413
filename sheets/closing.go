package sheets

import "strings"

// notices are estimates and limits that the reader should know of, and what the
// choice of needles rests on.
func (c *composer) notices() {
	w := c.say.closing
	var items []inline
	for _, n := range c.plan.Notices {
		words := plain(sentence(n.Text))
		if n.About != "" {
			words = say(w.notice, values{"about": strong(plain(upper(n.About))), "text": words})
		}
		items = append(items, words)
	}
	for _, n := range c.plan.Needles {
		if n.Source != "" && !c.brief && c.reader != Class {
			items = append(items, say(w.needle, values{"needle": strong(plain(n.Needle)), "source": plain(sentence(n.Source))}))
		}
	}
	if units := c.style.String(); c.plan.Units != "" && units != c.plan.Units {
		items = append(items, say(w.unitsMixed, values{"words": plain(c.plan.Units), "tables": plain(units)}))
	}
	if len(items) > 0 {
		c.heading(2, plain(w.notices))
		c.list(items...)
	}
}

// notes are the maker's own words, last, as she wrote them.
func (c *composer) notes() {
	lines := rewrite(c.plan.Notes)
	if len(lines) == 0 {
		return
	}
	c.heading(2, plain(c.say.closing.notes))
	c.written(lines)
}

// written are lines of the maker's own.
func (c *composer) written(lines []string) {
	c.open()
	c.out.WriteString(strings.Join(lines, "\n") + "\n") // spaces at an end may be a hard break of hers
}
