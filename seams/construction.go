package seams

import (
	"slices"

	"bodkin/seams/form"
)

// Construction is one way to sew a join, treat an edge or work a detail.
//
// Conditions and formulas are expr-lang over [Facts]; sizes are evaluated in
// file order and each later formula may use the earlier names. All in mm.
type Construction struct {
	Name     string   `yaml:"construction,required"`
	Title    string   `yaml:"title,required"`
	For      string   `yaml:"for,required" oneof:"join edge detail"`
	Kind     string   `yaml:"kind,required"` // see kindsOf
	ISO4916  ISO4916  `yaml:"iso4916"`
	Stitches []string `yaml:"stitches"` // ISO 4915 types it needs, besides hand work
	Tools    []string `yaml:"tools"`
	Iron     bool     `yaml:"iron"` // cannot be done without one
	Inside   string   `yaml:"inside" oneof:"enclosed neatened raw"`
	Layers   int      `yaml:"layers"` // plies at the thickest place of the seam itself
	// Covers says that it closes over what already lies there, so that at a
	// shared corner it waits for a turned edge.
	Covers bool `yaml:"covers"`

	Sizes      form.Pairs[form.Text] `yaml:"sizes"`
	Allowance  form.Text             `yaml:"allowance"`   // on the garment edge (both edges of a join)
	AllowanceB form.Text             `yaml:"allowance_b"` // on the second edge of a join where it differs
	Finished   form.Text             `yaml:"finished"`    // width seen or felt when done
	Strip      *Strip                `yaml:"strip"`       // what is cut extra: binding, band, facing
	Elastic    *Elastic              `yaml:"elastic"`

	RuledOut      []Rule `yaml:"ruled_out"`
	SpeaksFor     []Rule `yaml:"speaks_for"`
	SpeaksAgainst []Rule `yaml:"speaks_against"`

	// How it is made, and the source of all of it. Of those that come with bodkin
	// [Load] leaves them empty, and [Construction.Measure] reads them at need;
	// [LoadWhole] fills them.
	Passes []Pass       `yaml:"passes"`
	Checks []Check      `yaml:"checks"`
	Figure []FigureItem `yaml:"figure"`
	Stages []Stage      `yaml:"stages"`
	Differ []Difference `yaml:"differ"`
	Source string       `yaml:"source,required"`
	At     form.Place   `yaml:",place"`

	works *works // its formulas, set when it is loaded
	later *later // where it is written what is not read yet; nil where all is read
}

// kindsOf are the kinds of construction for a join, an edge or a detail.
func kindsOf(what string) []string {
	switch what {
	case "join":
		return []string{"seam"}
	case "edge":
		return []string{"hem", "binding", "facing", "band", "casing"}
	case "detail":
		return []string{"dart", "staystitch", "strip",
			"double-pointed-dart", "tuck", "pleat", "gathers",
			"patch-pocket", "in-seam-pocket", "slanted-pocket", "placket", "zip",
			"buttonhole", "button", "hook", "snap", "tie", "loop", "belt", "strap",
			"stand-collar", "flat-collar", "shirt-collar", "cuff", "front-band", "waistband", "vent", "lining", "lining-edge", "lining-armhole", "lining-hung", "lining-opening"}
	}
	return nil
}

// hasOwnPieces reports a kind of detail that the garment cuts pieces for, which
// are worked on as a strip is.
func hasOwnPieces(kind string) bool {
	return slices.Contains([]string{"stand-collar", "flat-collar", "shirt-collar", "cuff", "waistband", "lining", "lining-edge", "lining-hung"}, kind)
}

// ISO4916 is the standard's designation. The class (1 to 8) is certain; a full
// designation from memory stays in the data and off the sheet.
type ISO4916 struct {
	Class      int    `yaml:"class"`
	FromMemory string `yaml:"from_memory"`
}

// Rule is a condition, its weight where it has one, and the reason in words.
type Rule struct {
	When    form.Text `yaml:"when,required"`
	Worth   float64   `yaml:"worth"`
	Because string    `yaml:"because,required"`
}

// Strip is a length of cloth that a construction adds to the garment's pieces.
type Strip struct {
	On        string    `yaml:"on,required" oneof:"bias straight shaped"`
	Width     form.Text `yaml:"width,required"` // cut width
	Ends      form.Text `yaml:"ends"`           // added at each end, beyond the finished length
	Joins     string    `yaml:"joins" oneof:"diagonal straight"`
	Interface string    `yaml:"interface" oneof:"none half whole"` // of its width
}

// Elastic is a notion cut to a length less than the edge it draws in.
type Elastic struct {
	Width  form.Text `yaml:"width,required"`
	Length form.Text `yaml:"length,required"`
}

// Pass is one act inside a construction, in the order of the hands.
type Pass struct {
	Does   string    `yaml:"does,required"`                  // an act of the shelf: place, stitch, trim, press …
	Stitch string    `yaml:"stitch"`                         // ISO 4915 type, machine and hand stitching
	Thread string    `yaml:"thread" oneof:"garment applied"` // garment where left out: whose colour it takes
	Length form.Text `yaml:"stitch_mm"`                      // stitch length where it is not the cloth's own
	Foot   string    `yaml:"foot"`
	Row    string    `yaml:"row" oneof:"topstitch twin"` // a row of stitching that is meant to be seen, or by two needles; plain where left out
	Rows   float64   `yaml:"rows"`                       // runs along the seam; 0 means 1
	Run    string    `yaml:"run"`                        // the size that is one run of it, where that is not the whole line
	On     string    `yaml:"on" oneof:"garment strip"`   // garment where left out: what is in hand
	Only   string    `yaml:"only" oneof:"joined"`        // joined: left out where the strip is cut in one length
	When   form.Text `yaml:"when"`                       // the pass is left out where this is false
	After  string    `yaml:"after" oneof:"closing"`      // closing: waits for the join that closes a flat-worked edge
	Text   string    `yaml:"text,required"`              // words for the sheet, with {size}, {a}, {b}, {edge}, {strip}
	Good   string    `yaml:"good"`                       // how it looks when right
}

// Check is a measure taken at a point where it can still be mended.
type Check struct {
	AfterPass int       `yaml:"after_pass,required"` // from 1
	What      string    `yaml:"what,required"`
	Expect    form.Text `yaml:"expect,required"`
	Tolerance form.Text `yaml:"tolerance,required"`
}

// Stage is how the work lies after a pass, cut across, on the way to the
// finished section. A row of stitches is new where no stage before shows its
// number.
type Stage struct {
	After int          `yaml:"after,required"` // pass, from 1; each stage later than the one before
	Shows []FigureItem `yaml:"shows,required"`
}

// FigureItem is a line of the cross-section: x in mm to scale (formulas over
// the sizes), y in plies (formulas; one unit is one ply drawn apart).
type FigureItem struct {
	Ply     string        `yaml:"ply"`                      // a, b, strip, interfacing, elastic: a polyline through Through
	Stitch  string        `yaml:"stitch"`                   // a stitch type: drawn through Through[0] and Through[1]
	Size    string        `yaml:"size"`                     // a dimension line with this size's value, Through[0] to Through[1]
	Raw     bool          `yaml:"raw"`                      // the last point of the ply is a cut edge
	Right   string        `yaml:"right" oneof:"left right"` // side of the polyline, seen along it, that is the right side
	Row     int           `yaml:"row"`                      // stitching row number, 1 first
	When    form.Text     `yaml:"when"`                     // the line is left out where this is false
	Through [][]form.Text `yaml:"through,required"`
}
