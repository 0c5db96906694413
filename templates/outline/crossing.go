package outline

// stroke is one straight line of a flattened shape and the edge it belongs to.
type stroke struct {
	a, b Point
	edge string
}

// simple returns a [*ShapeError] where the outline meets itself anywhere but at
// the ends of neighbouring strokes. It looks at the outline flattened to within
// 0.02 mm.
func (o Outline) simple() error {
	var strokes []stroke
	for _, e := range o.Edges {
		line := e.Flatten(crossingTolerance)
		for i := range len(line) - 1 {
			strokes = append(strokes, stroke{line[i], line[i+1], e.Name})
		}
	}
	one, other, at, crossed := firstCrossing(strokes)
	if !crossed {
		return nil
	}
	if one == other {
		return &ShapeError{[]string{one}, "the outline crosses itself", at}
	}
	return &ShapeError{[]string{one, other}, "the outline crosses itself", at}
}

// firstCrossing returns the first two strokes of a closed shape, in order, that
// meet where they should not, by the names of their edges.
func firstCrossing(strokes []stroke) (one, other string, at Point, crossed bool) {
	n := len(strokes)
	for i, s := range strokes {
		for j := i + 1; j < n; j++ {
			t := strokes[j]
			if j == i+1 || i == 0 && j == n-1 {
				if doublesBack(s, t, j == i+1) {
					return s.edge, t.edge, s.b, true
				}
				continue
			}
			if apart(s, t) {
				continue
			}
			if p, ok := intersect(s.a, s.b, t.a, t.b); ok {
				return s.edge, t.edge, p, true
			}
		}
	}
	return "", "", Point{}, false
}

// doublesBack reports whether two neighbouring strokes run over each other.
func doublesBack(s, t stroke, inOrder bool) bool {
	if !inOrder {
		s, t = t, s
	}
	u, v := s.b.Sub(s.a).Unit(), t.b.Sub(t.a).Unit()
	return u.Dot(v) < 0 && u.Cross(v) < 1e-9 && u.Cross(v) > -1e-9
}

// apart reports whether the upright boxes round two strokes do not touch.
func apart(s, t stroke) bool {
	return max(s.a.X, s.b.X) < min(t.a.X, t.b.X) || max(t.a.X, t.b.X) < min(s.a.X, s.b.X) ||
		max(s.a.Y, s.b.Y) < min(t.a.Y, t.b.Y) || max(t.a.Y, t.b.Y) < min(s.a.Y, s.b.Y)
}

// intersect returns where the strokes a–b and c–d meet, ends included. Strokes
// on one line meet where they share a place.
func intersect(a, b, c, d Point) (Point, bool) {
	u, v, w := b.Sub(a), d.Sub(c), c.Sub(a)
	den := u.Cross(v)
	if scale := u.Norm() * v.Norm(); den > 1e-12*scale || den < -1e-12*scale {
		s, t := w.Cross(v)/den, w.Cross(u)/den
		if s < 0 || s > 1 || t < 0 || t > 1 {
			return Point{}, false
		}
		return a.Add(u.Scale(s)), true
	}
	for _, p := range [2]Point{c, d} {
		if clearance(p, a, b) < 1e-9 {
			return p, true
		}
	}
	for _, p := range [2]Point{a, b} {
		if clearance(p, c, d) < 1e-9 {
			return p, true
		}
	}
	return Point{}, false
}
