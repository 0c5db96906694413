package seams

import "bodkin/seams/form"

// NeedleRule gives the machine needle for a cloth; the first rule of the table
// whose condition holds is taken, so the table runs from special to general.
type NeedleRule struct {
	Name   string    `yaml:"needle"`
	Title  string    `yaml:"title"`
	When   form.Text `yaml:"when"`
	NM     int       `yaml:"nm"`        // blade in hundredths of a mm
	US     int       `yaml:"us"`        // the same in the American numbering
	Point  string    `yaml:"point"`     // sharp, universal, ballpoint, jeans, stretch
	Stitch float64   `yaml:"stitch_mm"` // stitch length that goes with it for a plain seam
	Source string    `yaml:"source"`
}

// Thread is a kind of sewing thread.
type Thread struct {
	Name   string    `yaml:"thread"`
	Title  string    `yaml:"title"`
	Tex    float64   `yaml:"tex"`
	Ticket float64   `yaml:"ticket"` // metric ticket, 3000/Tex
	When   form.Text `yaml:"when"`   // first that holds is taken
	Source string    `yaml:"source"`
}

// Interfacing is a material that stiffens or steadies another.
type Interfacing struct {
	Name      string  `yaml:"interfacing"`
	Title     string  `yaml:"title"`
	Fusible   bool    `yaml:"fusible"`
	Self      bool    `yaml:"self"`      // cut from the garment's own cloth
	Weight    float64 `yaml:"weight"`    // g/m²
	Width     float64 `yaml:"width"`     // mm
	HeatDots  int     `yaml:"heat_dots"` // heat that it needs, 0 for sewn in
	RuledOut  []Rule  `yaml:"ruled_out"`
	SpeaksFor []Rule  `yaml:"speaks_for"`
	Trim      string  `yaml:"trim"`   // what becomes of it in the allowance
	Attach    string  `yaml:"attach"` // words: how it is put on
	Source    string  `yaml:"source"`
}
