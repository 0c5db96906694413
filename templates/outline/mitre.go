package outline

// mitre forms the corner where two turned edges meet, so that both lie flat,
// edge to edge, when they are folded back. It reports false where the edges are
// no two hems, run on smoothly, or meet in a hollow, where the one is finished
// before the other is turned over it, and where one of them is
// narrower than the mitre's own seam, so that there is nothing to sew.
//
// Folded back, the two meet on the line from the corner to the place inside
// where their raw edges cross. Mirrored in the one edge and in the other, this
// line is where the mitre is sewn; what lies more than the mitre's own allowance
// beyond both is cut away.
func mitre(prev, next *run) (bool, error) {
	a, b := prev.allowance, next.allowance
	turn := degrees(angle(prev.end, next.start))
	if a.First || b.First || a.Manner != Turned || b.Manner != Turned || a.Width == 0 || b.Width == 0 || turn <= smooth ||
		min(a.Width, b.Width) < max(a.Mitre, b.Mitre) {
		return false, nil
	}
	at := prev.to
	fail := func(what string) (bool, error) {
		return false, &ShapeError{[]string{prev.name, next.name}, what, at}
	}
	along, away := prev.end, next.start
	raw, okRaw := Meet(at.Sub(along.right().Scale(a.Width)), along, at.Sub(away.right().Scale(b.Width)), away)
	square, okSquare := Meet(at.Add(along.right().Scale(a.Width)), along, at.Add(away.right().Scale(b.Width)), away)
	if !okRaw || !okSquare {
		return fail("they meet at too sharp an angle for two hems to be mitred")
	}
	in := at.Sub(raw.Reflect(at, at.Add(along))).Unit() // towards the corner along the one sewn line
	out := raw.Reflect(at, at.Add(away)).Sub(at).Unit() // away from it along the other
	wide := max(a.Mitre, b.Mitre)
	one, other := at.Add(in.right().Scale(wide)), at.Add(out.right().Scale(wide))
	v, ok := Meet(one, in, other, out)
	corner := []Point{v}
	var whole bool // the allowance takes in the whole corner, the hems being narrow
	if hollow := angle(in, out) < 0; ok && hollow {
		v := v.Sub(at)
		whole = v.Dot(along.right()) >= a.Width-gap || v.Dot(away.right()) >= b.Width-gap
	} else {
		whole = in.right().Dot(square.Sub(one)) <= gap || out.right().Dot(square.Sub(other)) <= gap
		if !ok || v.Distance(at) > mitreLimit*max(wide, gap) {
			corner = []Point{one, other}
		}
	}
	if whole {
		return false, nil
	}
	far := 4*(a.Width+b.Width) + wide + raw.Distance(at)
	first, last := corner[0], corner[len(corner)-1]
	cut, ok := meetsLast(appendNew(prev.line, prev.line[len(prev.line)-1].Add(prev.end.Scale(far))), prev.mitred, first, first.Sub(in.Scale(far)))
	rest, found := meetsLast(backwards(appendNew([]Point{next.line[0].Sub(next.start.Scale(far))}, next.line...)), next.mitred, last, last.Add(out.Scale(far)))
	if !ok || !found {
		return fail("the edges are too short here for two hems to be mitred")
	}
	prev.mitred, next.mitred = 1, len(corner)
	prev.line = appendNew(cut, first)
	next.line = appendNew([]Point{first, last}, backwards(rest)...)
	return true, nil
}

// meetsLast returns the line up to where the stroke from a to b last meets it,
// its first so many strokes left out.
func meetsLast(line []Point, but int, a, b Point) ([]Point, bool) {
	for i := len(line) - 2; i >= but; i-- {
		if p, ok := intersect(line[i], line[i+1], a, b); ok {
			return appendNew(line[:i+1:i+1], p), true
		}
	}
	return nil, false
}

// backwards is a line run the other way.
func backwards(line []Point) []Point {
	b := make([]Point, len(line))
	for i, p := range line {
		b[len(line)-1-i] = p
	}
	return b
}
