package sheets

// cautions stand before anything is cut or switched on.
func (c *composer) cautions() {
	var items []inline
	for _, k := range c.plan.Cautions {
		items = append(items, joined(" ", strong(plain(sentence(k.Text))), plain(sentence(k.Why))))
	}
	if len(items) == 0 {
		return
	}
	c.heading(2, plain(c.say.cautions))
	c.list(items...)
}
