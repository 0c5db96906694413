package templates

import "slices"

// over are the joins whose end lies within the i-th, so that it is sewn across
// them: a side and underarm seam in one runs over the armhole seam; a sleeve set
// in all round runs over the side seam.
func (g *Garment) over(i int) []string {
	t := g.topology
	within := append(t.within(t.joins[i].a), t.within(t.joins[i].b)...)
	var out []string
	for k, j := range t.joins {
		ends := []int{j.a.from, j.a.to, j.b.from, j.b.to}
		if k != i && slices.ContainsFunc(ends, func(n int) bool {
			return slices.ContainsFunc(within, func(m int) bool { return t.corners.same(m, n) })
		}) {
			out = append(out, g.Seams[k].Join.Value)
		}
	}
	return out
}

// within are the corners inside a chain; of a ring, its ends too.
func (t *topology) within(w walked) []int {
	var out []int
	for k, part := range w.parts {
		if k > 0 {
			out = append(out, t.corners.end(part, w.backward[k]))
		}
	}
	if t.corners.same(w.from, w.to) {
		out = append(out, w.from)
	}
	return out
}
