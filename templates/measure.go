package templates

import (
	"math"

	"bodkin/seams/length"
	"bodkin/templates/outline"
)

const (
	// straightRadius stands for the radius of a straight line, mm, as rules
	// that compare radii expect it.
	straightRadius = 1e6
	// hollowTurn is the turn into the cloth, in degrees, from which an edge
	// counts as hollow rather than as straight drawn by hand.
	hollowTurn = 5
	// sharpCorner is the turn at a corner, in degrees, from which a strip
	// carried over it meets a point and no longer a curve.
	sharpCorner = 15
)

func mm(x float64) length.MM { return length.MM(x) }

// laid is how far the draft is turned from the lengthwise grain, degrees.
func (p *Piece) laid() float64 {
	if p.Bias {
		return 45
	}
	return 0
}

// measured takes the lengths and bends of an edge of a piece that is laid so
// many degrees off the grain.
func measured(e outline.Edge, laid float64, use string) PieceEdge {
	absolute, signed := e.Turning()
	_, along := e.At(e.Length() / 2)
	return PieceEdge{
		Name: e.Name, Length: mm(e.Length()), TightestRadius: radius(e.LeastRadius()),
		Turning: absolute, Hollow: signed < -hollowTurn, Bias: offGrain(along.Rotate(outline.Point{}, laid)), Use: use,
	}
}

func radius(r float64) length.MM { return mm(min(r, straightRadius)) }

// offGrain returns the angle between a direction and the lengthwise grain, which
// runs along y: 0 to 90 degrees.
func offGrain(along outline.Point) float64 {
	return math.Atan2(math.Abs(along.X), math.Abs(along.Y)) * 180 / math.Pi
}

// nearBias reports whether a fifth of the edges' length or more lies between 25
// and 65 degrees off the grain, where woven cloth stretches. The limits are
// common practice, no source.
func (w *workshop) nearBias(parts []ChainPart) bool {
	const fine = 0.1 // mm
	var all, bias float64
	for i, e := range w.edges(parts) {
		laid := w.piece(parts[i].Piece).laid()
		line := e.Flatten(fine)
		for i := range len(line) - 1 {
			step := line[i+1].Sub(line[i])
			all += step.Norm()
			if off := offGrain(step.Rotate(outline.Point{}, laid)); off > 25 && off < 65 {
				bias += step.Norm()
			}
		}
	}
	return bias >= all/5
}

// bends adds up the bends of a chain's edges.
type bends struct {
	length, absolute, signed float64
	tightest                 float64
}

func bendsOf(edges []outline.Edge) bends {
	b := bends{tightest: math.Inf(1)}
	for _, e := range edges {
		absolute, signed := e.Turning()
		b.length += e.Length()
		b.absolute += absolute
		b.signed += signed
		b.tightest = min(b.tightest, e.LeastRadius())
	}
	return b
}
