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
	Name     string                `yaml:"garment,required"`
	Title    string                `yaml:"title,required"`
	About    string                `yaml:"about"`
	Source   string                `yaml:"source,required"`
	Measures form.Pairs[Measure]   `yaml:"measures,required"`
	Choices  form.Pairs[Choice]    `yaml:"choices"`
	Cloths   form.Pairs[Cloth]     `yaml:"cloths,required"`
	Values   form.Pairs[form.Text] `yaml:"values"` // formulas by name, mm or plain numbers, in any order
	Drafts   []PieceDraft          `yaml:"pieces,required"`
	Seams    []JoinDraft           `yaml:"joins"`
	Edges    []EdgeDraft           `yaml:"edges"`
	Details  []DetailDraft         `yaml:"details"`
	Checks   []Check               `yaml:"checks"`
	Lined    bool                  `yaml:"lined"`
	Child    bool                  `yaml:"child"`
	Loose    bool                  `yaml:"loose"` // hangs free of the body, so that no seam is pulled

	formulas map[form.Place]*formula.Formula // compiled, by where each stands
	order    []int                           // Values so that each follows those it uses
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
	Title    string `yaml:"title,required"`
	Optional bool   `yaml:"optional"` // the main cloth serves where none is named
}

// PieceDraft says how a piece is drawn: x across, y along the grain and
// upwards, mm. A piece on the fold is drawn as its half.
type PieceDraft struct {
	Piece     form.Text               `yaml:"piece,required"`
	Title     string                  `yaml:"title,required"`
	Cloth     form.Text               `yaml:"cloth,required"`
	Cut       string                  `yaml:"cut,required" oneof:"fold pair one"`
	Count     int                     `yaml:"count"` // pieces of cloth where cut is one; 0 is 1
	Fold      form.Text               `yaml:"fold"`  // the edge on the fold
	Grain     string                  `yaml:"grain,required"`
	Interface string                  `yaml:"interface" oneof:"none half whole"`
	Points    form.Pairs[[]form.Text] `yaml:"points,required"` // [x, y]; may use NAME_x and NAME_y of points above
	Outline   []Stroke                `yaml:"outline,required"`
	Marks     []MarkDraft             `yaml:"marks"`
}

// Stroke draws a part of an edge from one point to the next, straight or with
// one or two control points. Strokes in a row with one name are one edge.
type Stroke struct {
	Edge  form.Text     `yaml:"edge,required"`
	From  form.Text     `yaml:"from,required"`
	To    form.Text     `yaml:"to,required"`
	Curve [][]form.Text `yaml:"curve"`
	Dart  form.Text     `yaml:"dart"` // the mouth of this dart: drawn so that it lies on the seam when the dart is pressed
}

// MarkDraft is a mark for the cloth: at a point of the draft, or on an edge so
// far after its start.
type MarkDraft struct {
	Mark  string    `yaml:"mark,required"`
	At    form.Text `yaml:"at"`
	Edge  form.Text `yaml:"edge"`
	After form.Text `yaml:"after"`
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
	Tolerance  form.Text   `yaml:"tolerance"` // 1 mm where absent
	Sew        form.Text   `yaml:"sew"`       // the construction that the design asks for
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
	Sew        form.Text   `yaml:"sew"`
}

// DetailDraft is something worked inside a piece.
type DetailDraft struct {
	Detail   form.Text   `yaml:"detail,required"`
	Title    string      `yaml:"title,required"`
	Kind     string      `yaml:"kind,required" oneof:"dart"`
	Piece    form.Text   `yaml:"piece,required"`
	EachSide bool        `yaml:"each_side"`
	Between  []form.Text `yaml:"between,required"` // the two edges beside its mouth
	Point    form.Text   `yaml:"point,required"`   // the point of the draft where it ends
	Press    string      `yaml:"press,required"`   // words
	Toward   form.Text   `yaml:"toward,required"`  // the edge towards which it is pressed
}

// Check is a law of the garment that some sizes might break.
type Check struct {
	Holds   form.Text `yaml:"holds,required"`   // condition; may use NAME_length of joins and edges
	Because string    `yaml:"because,required"` // what is wrong otherwise, with {names} for figures
	Mend    string    `yaml:"mend,required"`
}

// Role is a cloth role of a garment.
type Role struct {
	Name, Title string
	Optional    bool
}

// Roles returns the cloth roles in the file's order; the first is the main one.
func (g *Garment) Roles() []Role {
	roles := make([]Role, len(g.Cloths))
	for i, c := range g.Cloths {
		roles[i] = Role{c.Key.Value, c.Value.Title, c.Value.Optional}
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
