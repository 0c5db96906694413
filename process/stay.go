package process

import (
	"fmt"
	"math"
	"strings"

	"bodkin/seams"
	"bodkin/seams/length"
)

// laidAs tells of a line how its edges lie to the grain: how steeply off it,
// how much of them straight so, whether across the garment, and what the cloth
// gives along it, each length by its direction.
func (b *layer) laidAs(f *seams.LineFacts, edges []edgeOf, cloth seams.Cloth) {
	var all, across, stretch float64
	for _, e := range edges {
		for _, pe := range b.pieceOf(e.piece).Edges {
			if pe.Name != e.edge {
				continue
			}
			long := float64(pe.Length)
			off := min(pe.Bias, 90-pe.Bias)
			if f.Bias = max(f.Bias, off); off >= slants && pe.TightestRadius >= curvedBelow {
				f.Slanting += long
			}
			if all += long; pe.Bias > 45 {
				across += long
			}
			stretch += long * stretchAt(cloth, pe.Bias)
		}
	}
	if all > 0 {
		f.Across, f.Stretch = across > all/2, stretch/all
	}
}

// slants is how far off the grain, in degrees, a line counts as slanting: common
// practice, no source.
const slants = 20

// stretchAt is what a cloth gives in a direction so many degrees off the
// lengthwise grain, in %: the normal strain in a direction where the strains
// along and across are given and nothing shears (Mohr's circle). Woven cloth does
// shear on the bias, which is left out: rules ask for bias itself.
func stretchAt(c seams.Cloth, offGrain float64) float64 {
	sin, cos := math.Sincos(offGrain * math.Pi / 180)
	f := c.Facts()
	return f.StretchAlong*cos*cos + f.StretchAcross*sin*sin
}

// tape chooses what holds a line whose construction sizes a tape for it, or that
// would grow without one.
func (l *line) tape(shelf *seams.Shelf, r *room, quantity int) error {
	sizes := l.sizes()
	wide, sized := sizes["tape"]
	stay, err := shelf.StayFor(l.kind, l.facts)
	if err != nil || !sized && stay == nil {
		return err
	}
	long, ok := sizes["tape_length"]
	if !ok {
		if long = l.length; l.join != nil {
			long = float64(min(l.join.LengthA, l.join.LengthB)) // on the ply that the other is eased to
		}
	}
	on := l.under().Facts()
	vs, err := shelf.WeighTapes(seams.Facts{Cloth: on, Applied: on, Workroom: r.facts()})
	if err != nil {
		return err
	}
	f := Interfacing{Material: "selvedge", MaterialTitle: "A strip of the cloth's own selvedge", Because: []string{"no tape on the shelf suits this cloth"}, Rejected: []Rejected{},
		Attach: "Lay it along the seam line on the wrong side and catch it in the row."}
	if len(vs) > 0 && vs[0].Allowed() {
		f = chosen(vs, clothIn{cloth: l.under()})
		if !sized {
			wide = vs[0].Interfacing.Width
		}
	} else if !sized {
		wide = selvedge
	}
	if !sized {
		l.stayed, f.Because = true, append([]string{stay.Because}, f.Because...)
	}
	f.Name, f.Piece, f.Title, f.Part = l.name+"-tape", l.name, upperFirst(l.title), "seam line"
	f.Cut, f.Count, f.Tape = [2]float64{wide, long}, l.copies*quantity, true
	l.taped = &f
	return nil
}

// selvedge is the width in mm of a strip of selvedge that serves as a tape: common
// practice, no source.
const selvedge = 10

// stay lays the tape along a line whose construction does not do so itself, before
// its first pass.
func (o *operator) stay(i int, l *line) error {
	f := l.taped
	does, stitch := "baste", basting
	if f.Fusible {
		does, stitch = "fuse", ""
	}
	n := op{line: i, act: o.act(does), glue: f.HeatDots, cloths: []seams.Cloth{l.under()}}
	n.ID, n.Does, n.Part, n.Seam = l.name+".tape", does, l.part(), l.name
	n.Text = fmt.Sprintf("Cut the %s to %s, as long as the line is on the pattern, not as the cloth lies. %s",
		lowerFirst(strings.TrimPrefix(f.MaterialTitle, "A ")), length.Format(length.MM(f.Cut[1]), o.style), o.onPly(l)+f.Attach)
	n.Good = "The cloth fits the tape: it is neither stretched nor puckered along it."
	n.Length = f.Cut[1] * float64(l.copies)
	if err := o.settle(&n, stitch, 0, "", clothRole(o.cloths, l.role).thread); err != nil {
		return err
	}
	o.time(&n)
	o.span[i] = append(o.span[i], len(o.ops))
	o.ops = append(o.ops, n)
	return nil
}

// under is the cloth of the ply that a tape lies on: of two the second, to which
// the other is eased.
func (l *line) under() seams.Cloth {
	if l.work == joining {
		return l.applied
	}
	return l.cloth
}

// onPly says which of two plies a tape lies on; empty where there is one.
func (o *operator) onPly(l *line) string {
	if l.work != joining {
		return ""
	}
	return "It goes on the " + o.names(l)["b"] + ". "
}
