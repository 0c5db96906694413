package templates

import (
	"bodkin/seams/form"
	"bodkin/seams/formula"
	"bodkin/seams/length"
)

// Garment is a parametric description as its file states it. Read one with
// [Load] or [Parse]; both check everything that does not depend on a size.
// It is not changed by [Garment.Make] and may be shared.
type Garment struct {
	Name     string                  `yaml:"garment,required"`
	Title    string                  `yaml:"title,required"`
	About    string                  `yaml:"about"`
	Source   string                  `yaml:"source,required"`
	Measures form.Pairs[Measure]     `yaml:"measures,required"`
	Choices  form.Pairs[Choice]      `yaml:"choices"`
	Cloths   form.Pairs[Cloth]       `yaml:"cloths,required"`
	Values   form.Pairs[form.Text]   `yaml:"values"`  // formulas by name, mm or plain numbers, in any order
	Lengths  form.Pairs[[]form.Text] `yaml:"lengths"` // chains of edges whose length what comes later may use by name
	Includes []Include               `yaml:"include"`
	Drafts   []PieceDraft            `yaml:"pieces,required"`
	Seams    []JoinDraft             `yaml:"joins"`
	Edges    []EdgeDraft             `yaml:"edges"`
	Details  []DetailDraft           `yaml:"details"`
	Checks   []Check                 `yaml:"checks"`
	Lined    bool                    `yaml:"lined"`
	Child    bool                    `yaml:"child"`
	Loose    bool                    `yaml:"loose"` // hangs free of the body, so that no seam is pulled

	formulas map[form.Place]*formula.Formula // compiled, by where each stands
	scopes   []*scope                        // the garment's own, then one for each include
	varies   bool                            // something stands under if:
	topology *topology
}

// Measure is a body measure that the garment is drafted to.
type Measure struct {
	Title    string    `yaml:"title,required"`
	How      string    `yaml:"how,required"` // how it is taken
	Default  length.MM `yaml:"default"`      // 0: none, it must be given
	Reckoned form.Text `yaml:"reckoned"`     // instead of a default: a formula over the measures above it, mm
	Least    length.MM `yaml:"least,required"`
	Most     length.MM `yaml:"most,required"`
}

// Choice is what the maker may decide: a length, a plain number, or one of some
// words.
type Choice struct {
	Title   string      `yaml:"title,required"`
	How     string      `yaml:"how"`
	OneOf   []form.Text `yaml:"one_of"`
	Default form.Text   `yaml:"default,required"`
	Least   form.Text   `yaml:"least"` // of a length or number, required there
	Most    form.Text   `yaml:"most"`
}

// Cloth is a role that a cloth plays in the garment.
type Cloth struct {
	Title    string    `yaml:"title,required"`
	Optional bool      `yaml:"optional"` // the main cloth serves where none is named
	Usual    form.Text `yaml:"usual"`    // a cloth of the shelf that suits it: the one that a new job names
	If       form.Text `yaml:"if"`
}

// PieceDraft says how a piece is drawn: x across, y along the grain and
// upwards, mm. A piece on the fold is drawn as its half.
type PieceDraft struct {
	Piece     form.Text               `yaml:"piece,required"`
	Title     string                  `yaml:"title,required"`
	Cloth     form.Text               `yaml:"cloth,required"`
	Cut       string                  `yaml:"cut,required" oneof:"fold pair one"`
	Count     int                     `yaml:"count"` // pieces, or pairs where cut is pair; 0 is 1
	Fold      form.Text               `yaml:"fold"`  // the edge on the fold
	Grain     string                  `yaml:"grain,required"`
	Bias      bool                    `yaml:"bias"`   // laid at 45 degrees: the lengthwise grain crosses the draft aslant
	Turned    bool                    `yaml:"turned"` // worn turned down, so that its upper end hangs lower: a collar
	Interface string                  `yaml:"interface" oneof:"none half whole"`
	Fit       *FitDraft               `yaml:"fit"`
	Points    form.Pairs[[]form.Text] `yaml:"points"` // [x, y]; may use NAME_x and NAME_y of points above
	Outline   []Stroke                `yaml:"outline"`
	Like      form.Text               `yaml:"like"`  // instead of points and outline: drawn as this piece is, with its darts
	Raise     form.Pairs[form.Text]   `yaml:"raise"` // of one that is like another: how far an edge lies further in, as a lining's hem does
	Marks     []MarkDraft             `yaml:"marks"`
	JoinsAt   []form.Text             `yaml:"joins_at"`   // how far from the fold, or from x 0, a seam along the grain is hidden: there it is joined where its cloth is too narrow
	JoinsHide string                  `yaml:"joins_hide"` // what hides it, such as "behind a pleat"
	If        form.Text               `yaml:"if"`         // drawn only where this holds
	from      origin
}

// Stroke draws a part of an edge from one point to the next, straight or with
// one or two control points. Strokes in a row with one name are one edge. The
// strokes that stand at some choices go round once there.
type Stroke struct {
	Edge  form.Text     `yaml:"edge,required"`
	From  form.Text     `yaml:"from,required"`
	To    form.Text     `yaml:"to,required"`
	Curve [][]form.Text `yaml:"curve"`
	Dart  form.Text     `yaml:"dart"` // the mouth of this dart: drawn so that it lies on the seam when the dart is pressed
	If    form.Text     `yaml:"if"`
}

// MarkDraft is a mark for the cloth: at a point of the draft, or on an edge so
// far after its start.
type MarkDraft struct {
	Mark  string    `yaml:"mark,required"`
	At    form.Text `yaml:"at"`
	Edge  form.Text `yaml:"edge"`
	After form.Text `yaml:"after"`
	If    form.Text `yaml:"if"`
}

// JoinDraft is a seam between two chains of edges, each written piece.edge. Both
// chains are walked in the order written; where a chain is one edge it runs as
// its partner does, from its from to its to, unless opposite is said.
type JoinDraft struct {
	Join       form.Text   `yaml:"join,required"`
	Title      string      `yaml:"title,required"`
	A          []form.Text `yaml:"a,required"`
	B          []form.Text `yaml:"b,required"`
	EachSide   bool        `yaml:"each_side"`
	Opposite   bool        `yaml:"opposite"`
	Strain     int         `yaml:"strain"` // 0 to 3
	InsideSeen bool        `yaml:"inside_seen"`
	Ease       []form.Text `yaml:"ease"`      // least and most by which a is longer than b
	Gather     []form.Text `yaml:"gather"`    // least and most times that a is as long as b
	Tolerance  form.Text   `yaml:"tolerance"` // 1 mm where absent
	Across     bool        `yaml:"across"`    // goes on, mirrored, over the centre
	Closed     bool        `yaml:"closed"`    // runs all the way round
	GoesOver   form.Text   `yaml:"goes_over"` // girth of the body that it must pass, with its spare
	Sew        form.Text   `yaml:"sew"`       // the construction that the design asks for
	If         form.Text   `yaml:"if"`
	from       origin
}

// EdgeDraft says what becomes of a free edge.
type EdgeDraft struct {
	Edge       form.Text   `yaml:"edge,required"`
	Title      string      `yaml:"title,required"`
	Kind       string      `yaml:"kind,required" oneof:"hem binding facing band casing"`
	Along      []form.Text `yaml:"along,required"`
	Across     bool        `yaml:"across"`    // goes on, mirrored, over the centre
	EachSide   bool        `yaml:"each_side"` // occurs left and right
	Closed     bool        `yaml:"closed"`    // runs all the way round
	ClosedBy   form.Text   `yaml:"closed_by"`
	Cloth      form.Text   `yaml:"cloth"`
	Depth      form.Text   `yaml:"depth"`   // finished
	Elastic    form.Text   `yaml:"elastic"` // width
	Grip       form.Text   `yaml:"grip"`    // body girth that the elastic holds
	Interface  string      `yaml:"interface" oneof:"none half whole"`
	Strain     int         `yaml:"strain"`
	InsideSeen bool        `yaml:"inside_seen"`
	Pieces     []form.Text `yaml:"pieces"`    // the pieces that are sewn on, such as a shaped facing's
	Fits       []form.Text `yaml:"fits"`      // their edges that are sewn to along, in its order
	GoesOver   form.Text   `yaml:"goes_over"` // girth of the body that it must pass, with its spare
	Stretch    form.Text   `yaml:"stretch"`   // so many times its length when it is pulled; 1 where absent
	Sew        form.Text   `yaml:"sew"`
	If         form.Text   `yaml:"if"`
	from       origin
}

// DetailDraft is something worked in a piece, in a join, or along an edge with
// pieces of its own. Which of the keys a kind needs stands in [kindsOfDetail].
type DetailDraft struct {
	Detail    form.Text     `yaml:"detail,required"`
	Title     string        `yaml:"title,required"`
	Kind      form.Text     `yaml:"kind,required"`
	Piece     form.Text     `yaml:"piece"` // in which it is worked
	In        form.Text     `yaml:"in"`    // the join in which it lies
	Along     []form.Text   `yaml:"along"` // the edges along which it is sewn, which it finishes
	EachSide  bool          `yaml:"each_side"`
	OneSide   bool          `yaml:"one_side"` // on the left or the right alone
	Across    bool          `yaml:"across"`   // goes on, mirrored, over the centre
	Closed    bool          `yaml:"closed"`   // runs all the way round
	ClosedBy  form.Text     `yaml:"closed_by"`
	Pieces    []form.Text   `yaml:"pieces"`  // its own pieces
	Fits      []form.Text   `yaml:"fits"`    // their edges that are sewn to along
	Beyond    []form.Text   `yaml:"beyond"`  // edges of its own that go on where along begins and ends, in the place of the garment's
	Ease      []form.Text   `yaml:"ease"`    // least and most by which along is longer than fits
	Gather    []form.Text   `yaml:"gather"`  // least and most times that along is as long as fits
	Opens     []form.Text   `yaml:"opens"`   // of a slit: the edges that it opens, so that what runs along them has ends there
	Takes     []form.Text   `yaml:"takes"`   // the edges that it shortens: by twice its depth each time, gathers to their length
	Length    form.Text     `yaml:"length"`  // of an opening, of a slit, of a pocket's mouth; of gathers as they are drawn up
	At        form.Text     `yaml:"at"`      // the end of the join that an opening reaches: from or to
	After     form.Text     `yaml:"after"`   // how far along the join it begins
	Depth     form.Text     `yaml:"depth"`   // finished
	Lap       form.Text     `yaml:"lap"`     // how far its own piece stands out beyond an opening
	Count     form.Text     `yaml:"count"`   // how many; on a piece drawn as its half, on the half
	Lines     [][]form.Text `yaml:"lines"`   // [point, point] of the piece: where it is marked; of several along one line, the first and the last
	Between   []form.Text   `yaml:"between"` // of a dart: the two edges beside its mouth
	Point     form.Text     `yaml:"point"`   // of a dart: the point of the draft where it ends
	Press     string        `yaml:"press"`   // words
	Toward    form.Text     `yaml:"toward"`  // of a dart: the edge towards which it is pressed
	GoesOver  form.Text     `yaml:"goes_over"`
	Interface string        `yaml:"interface" oneof:"none half whole"` // of what is turned
	Strain    int           `yaml:"strain"`
	Sew       form.Text     `yaml:"sew"`
	If        form.Text     `yaml:"if"`
	from      origin
	follows   bool // a dart that its piece has because it is drawn as another
}

// Check is a law of the garment that some sizes might break.
type Check struct {
	Holds   form.Text `yaml:"holds,required"`   // condition; may use NAME_length of joins and edges
	Because string    `yaml:"because,required"` // what is wrong otherwise, with {names} for figures
	Mend    string    `yaml:"mend,required"`
	If      form.Text `yaml:"if"`
	from    origin
}

// Role is a cloth role of a garment.
type Role struct {
	Name, Title string
	Optional    bool
	Usual       string // a cloth of the shelf that suits, or empty
}

// Roles returns the cloth roles in the file's order; the first is the main one.
func (g *Garment) Roles() []Role {
	roles := make([]Role, len(g.Cloths))
	for i, c := range g.Cloths {
		roles[i] = Role{c.Key.Value, c.Value.Title, c.Value.Optional, c.Value.Usual.Value}
	}
	return roles
}

// IsLength reports whether the choice is a length rather than a word or a
// plain number.
func (c Choice) IsLength() bool {
	if len(c.OneOf) > 0 {
		return false
	}
	_, err := length.Parse(c.Default.Value)
	return err == nil
}

// Words returns the words that the choice is among, none for lengths and
// numbers.
func (c Choice) Words() []string {
	words := make([]string, len(c.OneOf))
	for i, w := range c.OneOf {
		words[i] = w.Value
	}
	return words
}
