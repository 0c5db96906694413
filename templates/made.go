package templates

import (
	"bodkin/seams/length"
	"bodkin/templates/outline"
)

// Made is a garment at one size: true outlines, measured edges, walked joins.
// All lengths are mm. Slices are in the garment file's order.
type Made struct {
	Garment    *Garment
	Measures   []Value // as used, defaults filled in
	Choices    []Value
	Pieces     []Piece
	Joins      []Join
	Treatments []Treatment
	Details    []Detail
}

// Value is a measure or a choice as it was used.
type Value struct {
	Name, Title string
	MM          length.MM // for lengths
	Word        string    // for choices among words; empty for lengths
	Number      float64   // for plain numbers
	IsLength    bool
	Default     bool       // not given, taken from the garment
	From        *NamedSize // that the job names and this measure is from, or nil
}

// Piece is a cloth part. A piece cut on the fold is described by its half,
// whose fold edge lies on the fold.
type Piece struct {
	Name, Title string
	Cloth       string    // role: main, contrast, binding …
	Cut         string    // "fold", "pair", "one"
	Count       int       // pieces of cloth that come off the table: fold 1, pair 2, one as given
	Like        string    // the piece that it is drawn as, empty where it is drawn for itself
	FoldEdge    string    // name of the edge on the fold, empty otherwise
	JoinsAt     []float64 // where a seam along the grain may lie if the cloth is too narrow, mm from the fold or from x 0, rising
	JoinsHide   string    // what hides it; words
	Grain       string    // words: "parallel to the centre front" …
	Turned      bool      // worn turned down: its upper end hangs lower
	Bias        bool      // laid at 45 degrees to the grain, opened out in a single layer
	Outline     outline.Outline
	Edges       []PieceEdge      // in outline order, anticlockwise or as the outline runs
	Corners     []outline.Corner // where edges meet, in outline order: one edge ends and the next starts
	Marks       []Mark           // dart points, notches, drill points: inside or on the seam line
	Interface   string           // none, half, whole: what the garment wants steadied
}

// PieceEdge is a measured edge of a piece.
type PieceEdge struct {
	Name           string
	Length         length.MM
	TightestRadius length.MM // 1e6 where straight
	Turning        float64   // degrees, absolute, all bends added
	Hollow         bool      // curves into the cloth
	Raised         length.MM // how far it lies further in than on the piece that its own is drawn as
	Bias           float64   // degrees off the lengthwise grain at its middle, 0 to 90
	// Use is what becomes of it: "join NAME", "edge NAME", "fold", "dart NAME".
	Use string
}

// Mark is a point to be transferred to the cloth.
type Mark struct {
	Name string
	X, Y float64
}

// ChainPart is one edge of a chain, in walking order.
type ChainPart struct{ Piece, Edge string }

// Join is a seam between two chains of edges, walked against each other.
type Join struct {
	Name, Title      string
	A, B             []ChainPart
	EndsA, EndsB     []ChainPart // the edges of the pieces that go on from the ends of A and of B
	WaysA, WaysB     []Way       // A and B with the way each edge is walked
	Copies           int         // 2 when it occurs left and right
	LengthA, LengthB length.MM   // one copy
	Eased            length.MM   // LengthA - LengthB where the garment declares ease or gathers, else 0
	Across, Closed   bool        // one copy, whole, over the centre; all the way round
	Opened           []string    // details that leave a part of it open: a zip, a vent, a pocket in the seam
	OpenLength       length.MM   // of them together, in one copy
	TightestRadius   length.MM
	Turning          float64
	Strain           int
	InsideSeen       bool
	Insist           string // construction that the design itself asks for, or empty
}

// Treatment is what becomes of a free edge.
type Treatment struct {
	Name, Title    string
	Kind           string      // hem, binding, facing, band, casing
	Along          []ChainPart // in walking order; of one half where Across
	Across         bool        // the chain goes on mirrored over the centre
	Copies         int         // 2 when it occurs left and right
	Closed         bool        // one copy runs all the way round
	ClosedBy       string      // join that would close it if it is worked flat; empty: only in the round
	Length         length.MM   // one copy, whole
	TightestRadius length.MM
	Turning        float64 // degrees, one copy, absolute
	Hollow         bool
	Point          bool // it comes to a point in the cloth, as a V neck does
	Gives          bool // it is stretched when the garment is put on
	Bias           bool // part of the edge lies near the bias and stretches
	// Flare is the extra length in mm at 1 mm of depth, of one copy, whole: the
	// fullness of a turned-up hem is Flare × depth. Negative where the edge is
	// hollow and the turned edge too short.
	Flare      float64
	Cloth      string    // role of the applied cloth; empty where the garment's own
	Depth      length.MM // finished depth or width the design asks for, 0 if free
	Elastic    length.MM // width of elastic, 0 if none
	Grip       length.MM // body girth that the elastic holds
	Interface  string    // none, half, whole
	Strain     int
	InsideSeen bool
	Pieces     []string    // that are sewn on: a shaped facing's
	Fits       []ChainPart // their edges that are sewn to Along
	Ways       []Way       // Along with the way each edge is walked
	FitsWays   []Way       // Fits, walked beside it
	Opened     []string    // openings that cross it, so that it does not run all the way round
	Insist     string
}

// Detail is something worked in a piece, in a join, or along an edge. Which of
// the fields say something depends on its kind.
type Detail struct {
	Name, Title    string
	Kind           string // dart, tuck, pleat, patch-pocket, zip, waistband …
	Piece          string // in which it is worked, or empty
	Copies         int
	Count          int         // how many in one copy: buttons, pleats
	In             string      // join in which it lies
	End            string      // which end of the join an opening reaches: from, to, or neither
	After          length.MM   // how far along the join it begins
	Depth          length.MM   // finished, 0 if free
	Lap            length.MM   // by which its own piece stands out beyond an opening
	Along          []ChainPart // the edges that it is sewn to and finishes, in walking order
	Across         bool
	Closed         bool
	ClosedBy       string
	Pieces         []string           // its own
	Fits           []ChainPart        // their edges that are sewn to Along
	Ways           []Way              // Along with the way each edge is walked
	FitsWays       []Way              // Fits, walked beside it
	Beyond         []ChainPart        // edges of its own pieces that go on for the garment's where Along ends
	Takes          []ChainPart        // edges that it shortens
	Opened         []string           // openings that cross Along
	Eased          length.MM          // by which Along is longer than Fits
	Lines          [][2]outline.Point // where it is marked on Piece
	TightestRadius length.MM          // of Along
	Turning        float64            // of Along, degrees
	Strain         int
	Interface      string // of what is turned at an edge: none, half, whole
	Insist         string

	Length length.MM // of a dart one leg, else of the opening, slit, line or edge

	// Of a dart.
	Between [2]string        // edges of the piece on either side of its mouth
	Width   length.MM        // of the mouth on the seam line
	Press   string           // words: "down", "towards the centre"
	Point   outline.Point    // where it ends inside the piece
	Ends    [2]outline.Point // of its mouth, beside Between[0] and Between[1]
	Fold    outline.Point    // where its fold meets the mouth
}
