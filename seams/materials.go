package seams

import (
	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// NeedleRule gives the machine needle for a row of stitching in a cloth; its
// condition may ask about [Facts] and about layers, stitch, topstitch and twin
// of the [Row]. The first rule of the table whose condition holds is
// taken, so the table runs from special to general.
type NeedleRule struct {
	Name   string       `yaml:"needle,required"`
	Title  string       `yaml:"title,required"`
	When   form.Text    `yaml:"when"`
	NM     int          `yaml:"nm,required"` // blade in hundredths of a mm
	US     int          `yaml:"us,required"` // the same in the American numbering
	Point  string       `yaml:"point,required" oneof:"sharp universal ballpoint stretch jeans leather topstitch twin"`
	Stitch float64      `yaml:"stitch_mm,required"` // stitch length that goes with it for a plain seam
	Apart  float64      `yaml:"apart"`              // mm between the points of a twin needle
	Hints  []string     `yaml:"hints"`              // tension, foot, pressure, plate, in words
	Differ []Difference `yaml:"differ"`
	Source string       `yaml:"source,required"`

	rule *formula.Formula
}

// Thread is a kind of sewing thread, with the rule that asks for it, as for
// needles.
type Thread struct {
	Name   string    `yaml:"thread,required"`
	Title  string    `yaml:"title,required"`
	Tex    float64   `yaml:"tex,required"`
	Ticket float64   `yaml:"ticket,required"` // metric ticket, 3000/Tex
	When   form.Text `yaml:"when"`            // first that holds is taken
	Source string    `yaml:"source,required"`

	rule *formula.Formula
}

// Interfacing is a material that stiffens or steadies another. Its rules may
// ask about [Facts] and about its own weight and heat_dots.
type Interfacing struct {
	Name      string       `yaml:"interfacing,required"`
	Title     string       `yaml:"title,required"`
	For       string       `yaml:"for" oneof:"piece seam"` // piece where left out; seam: a tape along a line
	Fusible   bool         `yaml:"fusible"`
	Self      bool         `yaml:"self"`      // cut from the garment's own cloth
	Weight    float64      `yaml:"weight"`    // g/m²
	Width     float64      `yaml:"width"`     // mm
	HeatDots  int          `yaml:"heat_dots"` // heat that it needs, 0 for sewn in
	RuledOut  []Rule       `yaml:"ruled_out"`
	SpeaksFor []Rule       `yaml:"speaks_for"`
	Trim      string       `yaml:"trim,required"`   // what becomes of it in the allowance
	Attach    string       `yaml:"attach,required"` // words: how it is put on
	Differ    []Difference `yaml:"differ"`
	Source    string       `yaml:"source,required"`

	ruledOut, speaksFor []*formula.Formula
}
