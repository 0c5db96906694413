package process

import "bodkin/seams"

// crossed is what the thickest crossing of a line is made of.
type crossed struct {
	plies int   // under the foot, nothing trimmed away; those of the line itself where nothing crosses it
	over  *line // what it runs over there; nil where nothing
}

// thickest finds for every line the most plies that its rows run over.
func thickest(lines []*line, relations []relation) []crossed {
	out := make([]crossed, len(lines))
	for i := range lines {
		out[i] = thickestOf(i, lines, relations)
	}
	return out
}

// thickestOf finds the most plies that the rows of line i run over: where it
// crosses the end of a seam, a hem or a dart, each of its own plies there is as
// many as the other's. What lies on as a strip, or as a piece of its own such as a
// waistband, was cut in one, and is not multiplied; the ply that takes in a dart
// is one of two. Nothing is taken to be graded: plies at the thickest place of
// both constructions, which is arithmetic.
func thickestOf(i int, lines []*line, relations []relation) crossed {
	then := lines[i]
	own := max(then.construction.Layers, 1)
	out := crossed{plies: own}
	for _, r := range relations {
		first := lines[r.first]
		if r.then != i || then.work == onePiece || first.kind == "staystitch" || first.work == treating && then.work == treating {
			continue
		}
		other := max(first.construction.Layers, 1)
		plies := own * other
		switch {
		case first.work == onePiece, then.construction.Strip != nil, then.work == along:
			plies = own - 1 + other
		}
		if plies > out.plies {
			out = crossed{plies: plies, over: first}
		}
	}
	return out
}

// rowOf is a pass of a construction as the rules on needles and threads ask about it.
func rowOf(p *seams.Pass, plies int) seams.Row {
	return seams.Row{Layers: max(plies, 1), Stitch: p.Stitch, Topstitch: p.Row == "topstitch", Twin: p.Row == "twin"}
}
