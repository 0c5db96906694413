package sheets

import (
	"strings"

	"bodkin/process"
)

// cautions stand before anything is cut or switched on: what to do, its first
// sentence in bold, then what can happen.
func (c *composer) cautions() { c.cautionList(2, c.plan.Cautions) }

// cautionList writes cautions under a heading of their own, in brief the first
// sentence of each.
func (c *composer) cautionList(level int, all []process.Caution) {
	var items []inline
	for _, k := range all {
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
	c.heading(level, plain(c.say.cautions))
	c.list(items...)
}

// opens parts the first sentence of a text from the rest.
func opens(text string) (first, more string) {
	if i := strings.Index(text, ". "); i >= 0 {
		return text[:i+1], text[i+2:]
	}
	return text, ""
}
