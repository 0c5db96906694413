package sheets

import "strings"

// cautions stand before anything is cut or switched on: what to do, its first
// sentence in bold, then what can happen.
func (c *composer) cautions() {
	var items []inline
	for _, k := range c.plan.Cautions {
		first, more := opens(sentence(k.Text))
		if c.brief {
			items = append(items, plain(first))
			continue
		}
		items = append(items, joined(" ", strong(plain(first)), plain(more), plain(sentence(k.Why))))
	}
	if len(items) == 0 {
		return
	}
	c.heading(2, plain(c.say.cautions))
	c.list(items...)
}

// opens parts the first sentence of a text from the rest.
func opens(text string) (first, more string) {
	if i := strings.Index(text, ". "); i >= 0 {
		return text[:i+1], text[i+2:]
	}
	return text, ""
}
