package order

// Names for "none" where an index is asked for.
const (
	Any     = -1 // in [Operation.Setting]: the attribute is left as it is
	Unset   = -1 // in [Attribute.Start]: not set to any value yet
	Nowhere = -1 // in [Problem.Start]: at no station yet, the first move is free
)

// A Problem is a set of operations to be put in order.
type Problem struct {
	Stations   []Station
	Operations []Operation

	// Moves[a][b] is the cost of going from station a to another station b.
	// The diagonal is not read. Nil means that moves are free.
	Moves [][]int64

	// Start is the station where the work begins, or Nowhere. Mind that the
	// zero value is the first station.
	Start int
}

// A Station has attributes, each set to one of its values. The values stay
// while another station is used.
type Station struct {
	Attributes []Attribute
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

// An Operation is done once, at one station, in one setting.
type Operation struct {
	// Station is the index of the station.
	Station int

	// Setting has one value for each attribute of the station, or Any. Nil
	// means Any throughout.
	Setting []int

	// After lists the operations that must come earlier.
	After []int

	// Rank is the place of the operation in the order in which one would tell
	// the work; orders of equal cost are told by rank as far as possible.
	Rank int

	// Group is the part of the work the operation belongs to; among orders of
	// equal cost the one that changes group less often is preferred.
	Group int
}

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
