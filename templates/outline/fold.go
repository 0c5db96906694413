package outline

import "math"

// Reverse returns the outline run the other way round, its first edge first.
func (o Outline) Reverse() Outline {
	n := len(o.Edges)
	r := Outline{make([]Edge, n)}
	for i, e := range o.Edges {
		r.Edges[(n-i)%n] = e.Reverse()
	}
	return r
}

// Mirror returns the reflection in the line through a and b, run in the same
// sense as before, its first edge first. Edges keep their names.
func (o Outline) Mirror(a, b Point) Outline {
	return o.Map(func(p Point) Point { return p.Reflect(a, b) })
}

// Unfold opens a half piece out about its fold edge, which vanishes: the other
// edges follow in order from the end of the fold, then their mirror images back,
// each named by rename. It returns a [*ShapeError] where there is no such edge,
// where it is not straight, or where the opened shape crosses itself.
func (o Outline) Unfold(fold string, rename func(string) string) (Outline, error) {
	at := -1
	for i, e := range o.Edges {
		if e.Name == fold {
			at = i
		}
	}
	if at < 0 {
		return Outline{}, &ShapeError{Edges: []string{fold}, What: "there is no such edge to unfold about"}
	}
	line := o.Edges[at]
	if absolute, _ := line.Turning(); absolute > 1e-6 || !math.IsInf(line.LeastRadius(), 1) {
		return Outline{}, &ShapeError{[]string{fold}, "a fold must be straight", line.From()}
	}
	var half []Edge
	for i := range len(o.Edges) - 1 {
		half = append(half, o.Edges[(at+1+i)%len(o.Edges)])
	}
	whole := append([]Edge(nil), half...)
	for i := range half {
		e := half[len(half)-1-i].Reverse().Map(func(p Point) Point { return p.Reflect(line.From(), line.To()) })
		e.Name = rename(e.Name)
		whole = append(whole, e)
	}
	return New(whole...)
}
