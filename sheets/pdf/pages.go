package pdf

import "bodkin/sheets/figure"

// placedSlab is a slab with its height on its page.
type placedSlab struct {
	slab
	y      float64
	repeat bool
}

// paginate deals the slabs out to pages with a body of the given height, each
// page as full as the best kind of page end allows. A step that fits on a page
// is kept whole; a longer one ends a page between its blocks or items, if it
// can. y is counted from the top of the body.
func paginate(slabs []slab, tall float64) [][]placedSlab {
	var pages [][]placedSlab
	whole := wholeSteps(slabs, tall)
	for at := 0; at < len(slabs); {
		until := at + 1 // up to the next slab that begins a page
		for until < len(slabs) && !slabs[until].fresh {
			until++
		}
		end := pageEnd(slabs[:until], at, tall, whole)
		pages = append(pages, stack(slabs[at:end]))
		at = end
	}
	return pages
}

// wholeSteps are the steps that fit on one page, together with whatever must
// not be left behind: the headings that lead up to them.
func wholeSteps(slabs []slab, tall float64) map[int]bool {
	whole := map[int]bool{}
	for from := 0; from < len(slabs); {
		to := from + 1
		for to < len(slabs) && bound(slabs[to-1], slabs[to]) {
			to++
		}
		fits := heightOf(slabs[from:to]) <= tall
		for _, s := range slabs[from:to] {
			if s.step != 0 {
				whole[s.step] = fits
			}
		}
		from = to
	}
	return whole
}

// bound reports whether two slabs in succession want to be on the same page.
func bound(a, b slab) bool { return a.keep || a.step != 0 && a.step == b.step }

// heightOf is the height of slabs that begin a page.
func heightOf(slabs []slab) float64 {
	h := 0.0
	for _, p := range stack(slabs) {
		h = p.y + p.height
	}
	return h
}

// stack sets slabs one below the other from the top of a page. The space above
// the first is dropped, and the line above a heading; a table that goes on
// there gets its head again.
func stack(slabs []slab) []placedSlab {
	var out []placedSlab
	y := 0.0
	for i, s := range slabs {
		switch {
		case i > 0:
			y += s.before
		case s.opener:
			s.height, s.ink = 0, nil
		case s.head != nil:
			h := s.head.again()
			h.panels, h.step = s.panels, s.step
			out = append(out, placedSlab{slab: h, repeat: true})
			y = h.height
		}
		out = append(out, placedSlab{slab: s, y: y})
		y += s.height
	}
	return out
}

// pageEnd is the index after the last slab of the page that begins at at: the
// last good end among those that fit, looking for the better kinds first.
func pageEnd(slabs []slab, at int, tall float64, whole map[int]bool) int {
	fit := at + 1 // even if it does not: it must go somewhere
	y := heightOf(slabs[at:fit])
	for fit < len(slabs) && y+slabs[fit].before+slabs[fit].height <= tall+1e-9 {
		y += slabs[fit].before + slabs[fit].height
		fit++
	}
	if fit == len(slabs) {
		return fit
	}
	for _, good := range []func(a, b slab) bool{
		func(a, b slab) bool {
			within := a.step != 0 && a.step == b.step
			return !a.keep && (!within || !whole[a.step] && a.rank >= rankItem)
		},
		func(a, b slab) bool { return !a.keep && (a.rank >= rankItem || a.step == 0) },
		func(a, b slab) bool { return !a.keep },
		func(a, b slab) bool { return a.marks == nil && (a.rank != rankLine || len(a.words) > 0) },
	} {
		for end := fit; end > at; end-- {
			if good(slabs[end-1], slabs[end]) {
				return end
			}
		}
	}
	return fit
}

// compose is the whole drawing: the pages with their panels, words, frame and
// the places that links and bookmarks lead to.
func (f *flow) compose(d *drawing) {
	d.places = map[string]place{}
	for n, slabs := range paginate(f.slabs, f.tall) {
		p := page{ink: f.panelsOf(slabs, d.body.Top)}
		for _, s := range slabs {
			y := d.body.Top + s.y
			s.onto(&p, y)
			for _, m := range s.marks {
				at := place{page: n, y: y}
				d.places[m.id] = at
				level := m.level - 1
				if k := len(d.bookmarks); k == 0 {
					level = 0
				} else {
					level = min(level, d.bookmarks[k-1].level+1)
				}
				if m.title != "" {
					d.bookmarks = append(d.bookmarks, bookmark{title: m.title, level: level, place: at})
				}
			}
		}
		d.pages = append(d.pages, p)
	}
	if len(d.pages) == 0 {
		d.pages = []page{{}}
	}
}

// panelsOf draws each panel from the top of its first slab on the page to the
// bottom of its last.
func (f *flow) panelsOf(slabs []placedSlab, top float64) []figure.Item {
	type stretch struct{ from, to float64 }
	var order []int
	found := map[int]stretch{}
	for _, s := range slabs {
		for _, id := range s.panels {
			st, ok := found[id]
			if !ok {
				order = append(order, id)
				st.from = top + s.y
			}
			st.to = top + s.y + s.height
			found[id] = st
		}
	}
	var ink []figure.Item
	for _, id := range order {
		p, st := f.panels[id], found[id]
		ink = append(ink, figure.Rect(figure.Point{X: p.left, Y: st.from}, p.width, st.to-st.from, figure.Stroke{}, figure.Fill{Tint: p.tint}))
	}
	return ink
}
