package order

// Names for "none" where an index is asked for.
const (
	Any     = -1 // in [Way.Setting] and [Station.End]: the attribute is left as it is
	Unset   = -1 // in [Attribute.Start]: not set to any value yet
	Nowhere = -1 // in [Problem.Start]: at no station yet, the first move is free
	NoGroup = -1 // in [Operation.Group]: no matter which part is in hand
)

// A Problem is a set of operations to be put in order. Every cost in it is in
// one unit of the caller's choosing, from 0 to [MaxCost].
type Problem struct {
	Stations   []Station
	Operations []Operation

	// Moves[a][b] is the cost of going from station a to another station b.
	// The diagonal is not read. Nil means that moves are free.
	Moves [][]int64

	// Start is the station where the work begins, or Nowhere. Mind that the
	// zero value is the first station.
	Start int

	// Pick is the cost of an operation whose group is another than that of the
	// last operation before it that has a group. The first pick is free.
	Pick int64

	// Wishes are what an order had better keep to, and what it costs not to.
	Wishes []Wish

	// Done lists operations that are done already, in the order in which they
	// were done. They are not put in order again and what they cost is not
	// counted. The starts of the problem and its stations say how things stand
	// now, after them; see [Begin].
	Done []int
}

// A Wish costs something in an order where Then comes before First.
type Wish struct {
	First, Then int // operations
	Cost        int64
}

// A Station has attributes, each set to one of its values. The values stay
// while another station is used.
type Station struct {
	Attributes []Attribute

	// End has for each attribute the value that it is to have when all is
	// done, or Any. What changing it costs then is part of an order's cost;
	// going to the station for it is not. Nil means Any throughout.
	End []int
}

// An Attribute is one thing about a station that operations want set.
type Attribute struct {
	// Change[a][b] is the cost of going from value a to another value b; it
	// need not be symmetric. Its length is the number of values. The diagonal
	// is not read: a value that is already set costs nothing.
	Change [][]int64

	// First[b] is the cost of setting b when nothing is set yet. Nil means
	// that the first setting is free.
	First []int64

	// Start is the value set at the beginning, or Unset. Mind that the zero
	// value is the first value.
	Start int
}

// An Operation is done once, at one station, in one setting. Where there is a
// choice of stations or settings, Or has the other ways.
type Operation struct {
	// Station is the index of the station.
	Station int

	// Setting has one value for each attribute of the station, or Any. Nil
	// means Any throughout.
	Setting []int

	// Cost is what the operation costs in itself when done in this way.
	Cost int64

	// Or lists other ways in which it may be done.
	Or []Way

	// After lists the operations that must come earlier.
	After []int

	// Rank is the place of the operation in the order in which one would tell
	// the work; orders of equal cost are told by rank as far as possible.
	Rank int

	// Group is the part of the work the operation belongs to, or NoGroup;
	// among orders of equal cost the one that changes group less often is
	// preferred.
	Group int
}

// A Way is a station, setting and cost for an operation that can be done
// elsewhere or otherwise.
type Way struct {
	Station int
	Setting []int
	Cost    int64
}

// Way returns way k of the operation: 0 is its own, k is Or[k-1].
func (op Operation) Way(k int) Way {
	if k == 0 {
		return Way{op.Station, op.Setting, op.Cost}
	}
	return op.Or[k-1]
}

// Ways is the number of ways in which the operation can be done.
func (op Operation) Ways() int { return 1 + len(op.Or) }

// Uniform returns an n by n matrix of one cost with a zero diagonal, for
// [Problem.Moves] and [Attribute.Change].
func Uniform(n int, cost int64) [][]int64 {
	m := make([][]int64, n)
	for i := range m {
		m[i] = make([]int64, n)
		for j := range m[i] {
			if i != j {
				m[i][j] = cost
			}
		}
	}
	return m
}
